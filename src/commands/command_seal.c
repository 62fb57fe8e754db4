#include <stdio.h>

#include "options.h"
#include "outputs.h"
#include "progress.h"
#include "report_seal.h"
#include "seal_tables.h"
#include "updated_case.h"

#define TABLES "seal.dat seal_cycle.dat seal_gap.dat"

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    return cg_seal_tables_write(dir, of, context, error);
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    (void)error;
    cg_report_seal(report, context);
    return CG_OK;
}

static enum cg_status write_outputs(const struct cg_options *options,
                                    struct cg_seal_study *study,
                                    struct cg_error *error)
{
    struct cg_table_of of;
    cg_table_of_set(options->told, study->c, &of);
    struct cg_outputs outputs = {.title = "Gas past the rings",
                                 .of = &of,
                                 .run = "seal",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = study};
    return cg_outputs_write(options, &outputs, error);
}

enum cg_status cg_command_seal(const struct cg_options *options,
                               struct cg_error *error)
{
    double begin = cg_wall_clock();
    struct cg_updated_case updated;
    struct cg_duty_run *run = NULL;
    struct cg_seal_study *study = NULL;
    enum cg_status status = cg_updated_case_read(
        options->config, options->set, options->sets, false, &updated, error);
    const struct cg_case *c = &updated.c;
    cg_updated_case_free(&updated);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = cg_duty_run_create(c, &run, error);
    if (status == CG_OK)
        status = cg_seal_study_create(c, run, &study, error);
    double seconds = cg_wall_clock() - begin;
    if (status == CG_OK)
        status = write_outputs(options, study, error);
    if (status == CG_OK && cg_outputs_talk(options))
        printf("\nComputed in %.0f ms.\n", seconds * 1e3);
    if (status == CG_OK && (study->answer.verdict.fits != CG_FITS ||
                            study->answer.second_verdict.beyond)) {
        error->text[0] = '\0'; /* the screen has said it */
        status = CG_NOT_SAFE;
    }
    cg_seal_study_free(study);
    cg_duty_run_free(run);
    cg_case_free(&updated.c);
    return status;
}
