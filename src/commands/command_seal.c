#include "options.h"
#include "outputs.h"
#include "page_seal.h"
#include "progress.h"
#include "report_seal.h"
#include "seal_tables.h"
#include "taught.h"

#define TABLES "seal.dat seal_cycle.dat seal_gap.dat"

/* What the tables and the page are made from. */
struct telling {
    const struct cg_options *options;
    const struct cg_seal_study *study;
};

static enum cg_status write_tables(void *context, const char *dir,
                                   struct cg_error *error)
{
    const struct telling *telling = context;
    struct cg_table_of of;
    cg_table_of_set(telling->options->told, telling->study->c, &of);
    return cg_seal_tables_write(dir, &of, telling->study, error);
}

static enum cg_status fill_page(void *context, struct cg_page *page,
                                struct cg_error *error)
{
    (void)error;
    cg_page_seal(page, ((struct telling *)context)->study);
    return CG_OK;
}

static enum cg_status write_outputs(const struct cg_options *options,
                                    const struct cg_seal_study *study,
                                    struct cg_error *error)
{
    struct telling telling = {options, study};
    struct cg_outputs outputs = {.title = "Gas past the rings",
                                 .run = "seal",
                                 .tables = write_tables,
                                 .fill = fill_page,
                                 .context = &telling};
    return cg_outputs_write(options, &outputs, error);
}

enum cg_status cg_command_seal(const struct cg_options *options,
                               struct cg_error *error)
{
    double begin = cg_wall_clock();
    struct cg_taught taught;
    struct cg_duty_run *run = NULL;
    struct cg_seal_study *study = NULL;
    enum cg_status status =
        cg_taught_read(options->config, options->set, options->sets, false,
                       &taught, error);
    const struct cg_case *c = &taught.c;
    cg_taught_free(&taught);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = cg_duty_run_create(c, &run, error);
    if (status == CG_OK)
        status = cg_seal_study_create(c, run, &study, error);
    double seconds = cg_wall_clock() - begin;
    if (status == CG_OK)
        status = write_outputs(options, study, error);
    if (status == CG_OK)
        cg_report_seal(study, options->told, options->inch, options->quiet,
                       seconds);
    if (status == CG_OK && (!study->answer.verdict.safe ||
                            study->answer.second_verdict.beyond)) {
        error->text[0] = '\0'; /* the screen has said it */
        status = CG_NOT_SAFE;
    }
    cg_seal_study_free(study);
    cg_duty_run_free(run);
    return status;
}
