#include "options.h"
#include "outputs.h"
#include "plain_text.h"
#include "report_sheet.h"
#include "sampling.h"
#include "sheet_tables.h"
#include "updated_case.h"

#define TABLES "sheet.dat sheet.csv"

/* The answer for the engine of the config, with samples where asked for. */
static enum cg_status find_answer(const struct cg_options *options,
                                  const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  struct cg_answer *answer,
                                  struct cg_error *error)
{
    struct cg_confidence_work *work = NULL;
    enum cg_status status =
        cg_answer_find(c, run, 0.0, NULL, NULL, answer, error);
    if (status == CG_OK && options->samples > 0) {
        status = cg_confidence_begin(c, run, answer->extremes.closure,
                                     options->samples, options->seed, &work,
                                     error);
        if (status == CG_OK)
            status = cg_sampling_run(options, work, answer, error);
    }
    if (status == CG_OK)
        status = cg_answer_second(c, run, answer, error);
    cg_confidence_free(work);
    return status;
}

/* All that the sheet says of what was measured. */
static enum cg_status find(const struct cg_options *options,
                           struct cg_sheet *sheet, struct cg_error *error)
{
    struct cg_duty_run *run = NULL;
    enum cg_status status = cg_duty_run_create(&sheet->c, &run, error);
    if (status == CG_OK)
        status = find_answer(options, &sheet->c, run, &sheet->answer, error);
    if (status == CG_OK) {
        cg_fitting_find(&sheet->c, &sheet->answer, &sheet->gauged,
                        &sheet->fitting);
        status = cg_gap_prices_find(&sheet->c, run, &sheet->fitting,
                                    &sheet->prices, error);
    }
    cg_duty_run_free(run);
    return status;
}

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    return cg_sheet_tables_write(dir, of, context, error);
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    (void)error;
    cg_report_sheet(report, context);
    return CG_OK;
}

enum cg_status cg_command_sheet(const struct cg_options *options,
                                struct cg_error *error)
{
    struct cg_sheet sheet = {0};
    if (options->measured == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "sheet: nothing measured, give --measured "
                            "FILE.csv");
    struct cg_plain measured = cg_plain(options->measured);
    sheet.measured = measured.text;
    struct cg_updated_case updated;
    enum cg_status status = cg_updated_case_read(options->config, options->set,
                                           options->sets, false, &updated,
                                           error);
    sheet.c = updated.c;
    cg_updated_case_free(&updated);
    if (status == CG_OK)
        status = cg_measured_read(options->measured, &sheet.c, &sheet.gauged,
                                  &sheet.dialect, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = find(options, &sheet, error);
    struct cg_table_of of;
    cg_table_of_set(options->told, &sheet.c, &of);
    struct cg_outputs outputs = {.title = "Fitting sheet",
                                 .of = &of,
                                 .run = "sheet",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = &sheet};
    if (status == CG_OK)
        status = cg_outputs_write(options, &outputs, error);
    cg_case_free(&sheet.c);
    if (status != CG_OK)
        return status;
    if (sheet.fitting.count[CG_FIT_TOO_SMALL] > 0 ||
        sheet.fitting.count[CG_FIT_FILE] > 0 || sheet.answer.verdict.beyond ||
        sheet.answer.second_verdict.beyond ||
        cg_answer_past(&sheet.answer) < sheet.answer.duties) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return CG_OK;
}
