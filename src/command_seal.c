#include "config.h"
#include "options.h"
#include "progress.h"
#include "report_seal.h"
#include "seal_tables.h"

enum cg_status cg_command_seal(const struct cg_options *options,
                               struct cg_error *error)
{
    double begin = cg_wall_clock();
    struct cg_case c;
    struct cg_duty_run *run = NULL;
    struct cg_seal_study *study = NULL;
    enum cg_status status =
        cg_config_read(options->config, options->set, options->sets, &c, error);
    if (status == CG_OK)
        status = cg_duty_run_create(&c, &run, error);
    if (status == CG_OK)
        status = cg_seal_study_create(&c, run, &study, error);
    double seconds = cg_wall_clock() - begin;
    if (status == CG_OK && options->out != NULL)
        status =
            cg_seal_tables_write(options->out, options->config, study, error);
    if (status == CG_OK)
        cg_report_seal(study, options->config, options->inch, options->quiet,
                       seconds);
    cg_seal_study_free(study);
    cg_duty_run_free(run);
    return status;
}
