#include <stdio.h>

#include "evidence_table.h"
#include "find_tables.h"
#include "history.h"
#include "next_step.h"
#include "options.h"
#include "outputs.h"
#include "progress.h"
#include "report_find.h"
#include "sampling.h"
#include "spread_tables.h"

#define TABLES                                                                 \
    "summary.dat duties.dat history.dat clearance.dat stroke.dat cycle.dat "   \
    "film.dat log.dat "                                                        \
    "heat_balance.dat sensitivity.dat evidence.dat evidence_inputs.dat "            \
    "evidence_correlations.dat histogram.dat"

/* What is found, and what it is found with. */
struct finding {
    const struct cg_options *options;
    struct cg_updated_case updated;
    const struct cg_case *c; /* the updated one */
    struct cg_duty_run *run;
    struct cg_confidence_work *work; /* NULL without --samples */
    struct cg_answer answer;
    struct cg_answer without; /* the evidence, if there is any */
};

static enum cg_status sample(struct finding *finding, struct cg_error *error)
{
    const struct cg_options *options = finding->options;
    enum cg_status status = cg_confidence_begin(
        finding->c, finding->run, finding->answer.extremes.closure,
        options->samples, options->seed, &finding->work, error);
    if (status == CG_OK)
        status =
            cg_sampling_run(options, finding->work, &finding->answer, error);
    return status;
}

/* The answer, and its confidence where asked for. */
static enum cg_status find(struct finding *finding, double interval,
                           cg_instant_observer observer, void *context,
                           struct cg_error *error)
{
    const struct cg_options *options = finding->options;
    enum cg_status status =
        cg_answer_find(finding->c, finding->run, interval, observer, context,
                       &finding->answer, error);
    if (status == CG_OK && options->samples > 0)
        status = sample(finding, error);
    if (status == CG_OK)
        status =
            cg_answer_second(finding->c, finding->run, &finding->answer, error);
    return status;
}

/* The tables and the page come from one run of the duty. */
struct telling {
    struct finding *finding;
    const struct cg_history *history;
};

static enum cg_status write_tables(void *context, const struct cg_table_of *of,
                                   const char *dir, struct cg_error *error)
{
    const struct telling *telling = context;
    const struct finding *finding = telling->finding;
    enum cg_status status =
        cg_find_tables_write(dir, of, finding->c, finding->run,
                             &finding->answer, telling->history, error);
    if (status == CG_OK)
        status = cg_evidence_write(dir, of, &finding->updated, error);
    if (status == CG_OK)
        status = cg_histogram_write(dir, of, finding->work,
                                    &finding->answer, error);
    return status;
}

static enum cg_status tell(void *context, struct cg_report *report,
                           struct cg_error *error)
{
    const struct telling *telling = context;
    const struct finding *finding = telling->finding;
    (void)error;
    cg_report_find(report, &finding->updated, &finding->answer,
                   &finding->without, telling->history);
    return CG_OK;
}

static enum cg_status write_outputs(struct finding *finding,
                                    const struct cg_history *history,
                                    struct cg_error *error)
{
    struct telling telling = {finding, history};
    struct cg_table_of of;
    cg_table_of_set(finding->options->told, finding->c, &of);
    struct cg_outputs outputs = {.title = "Smallest safe cold ring gap",
                                 .of = &of,
                                 .run = "find",
                                 .tables = write_tables,
                                 .tell = tell,
                                 .context = &telling};
    return cg_outputs_write(finding->options, &outputs, error);
}

/* With tables, a page or drawings the duty is watched at the tables' interval; without,
 * only the answer is computed. */
static enum cg_status find_and_write(struct finding *finding,
                                     struct cg_error *error)
{
    const struct cg_options *options = finding->options;
    struct cg_history history;
    enum cg_status status;
    if (options->out == NULL && options->report == NULL &&
        !options->drawings) {
        status = find(finding, 0.0, NULL, NULL, error);
        return status == CG_OK ? write_outputs(finding, NULL, error) : status;
    }
    status = cg_history_begin(finding->c, finding->run, &history, error);
    if (status != CG_OK)
        return status;
    status = find(finding, history.interval, cg_history_observe, &history, error);
    if (status == CG_OK)
        status = write_outputs(finding, &history, error);
    cg_history_free(&history);
    return status;
}

static void tell_next_step(const struct finding *finding, double seconds)
{
    printf("Computed in %.0f ms.\n", seconds * 1e3);
    if (finding->options->out != NULL)
        cg_next_step_pictures(finding->options->out);
    else if (finding->answer.verdict.given)
        printf("Next: -o DIR writes tables, for pictures.\n");
    else
        printf("Next: -o DIR writes tables, for pictures; "
               "rings.top.cold_gap_mm judges a gap.\n");
}

/* The answer had there been no evidence. */
static enum cg_status find_without(struct finding *finding,
                                   struct cg_error *error)
{
    const struct cg_case *c = &finding->updated.prior;
    struct cg_duty_run *run;
    if (finding->updated.learned.entries == 0)
        return CG_OK;
    enum cg_status status = cg_duty_run_create(c, &run, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(c, run, 0.0, NULL, NULL, &finding->without, error);
    cg_duty_run_free(run);
    return status;
}

enum cg_status cg_command_find(const struct cg_options *options,
                               struct cg_error *error)
{
    double begin = cg_wall_clock();
    struct finding finding = {.options = options};
    const struct cg_answer *answer = &finding.answer;
    finding.c = &finding.updated.c;
    enum cg_status status =
        cg_updated_case_read(options->config, options->set, options->sets, false,
                       &finding.updated, error);
    if (status == CG_OK)
        status = cg_outputs_hold(options, options->out, TABLES, error);
    if (status == CG_OK)
        status = find_without(&finding, error);
    if (status == CG_OK)
        status = cg_duty_run_create(finding.c, &finding.run, error);
    if (status == CG_OK)
        status = find_and_write(&finding, error);
    cg_confidence_free(finding.work);
    cg_duty_run_free(finding.run);
    cg_updated_case_free(&finding.updated);
    cg_case_free(&finding.updated.c);
    if (status == CG_OK && cg_outputs_talk(options))
        tell_next_step(&finding, cg_wall_clock() - begin);
    if (status == CG_OK && !cg_answer_stands(answer)) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return status;
}
