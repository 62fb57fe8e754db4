#include <stdio.h>
#include <time.h>

#include "config.h"
#include "find_tables.h"
#include "history.h"
#include "options.h"
#include "report_find.h"

static double wall_clock(void)
{
    struct timespec now;
    timespec_get(&now, TIME_UTC);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* With tables the duty is watched at the table's interval; without, only the
 * answer is computed. */
static enum cg_status answer_with_tables(const struct cg_options *options,
                                         const struct cg_case *c,
                                         struct cg_duty_run *run,
                                         struct cg_answer *answer,
                                         struct cg_error *error)
{
    struct cg_history history;
    enum cg_status status = cg_history_begin(c, run, &history, error);
    if (status != CG_OK)
        return status;
    status = cg_answer_find(c, run, history.interval, cg_history_watch,
                            &history, answer, error);
    if (status == CG_OK)
        status = cg_find_tables_write(options->out, options->config, c, run,
                                      answer, &history, error);
    cg_history_free(&history);
    return status;
}

enum cg_status cg_command_find(const struct cg_options *options,
                               struct cg_error *error)
{
    double begin = wall_clock();
    struct cg_case c;
    struct cg_answer answer;
    struct cg_duty_run *run = NULL;
    enum cg_status status = cg_config_read(options->config, options->set,
                                           options->sets, &c, error);
    if (status == CG_OK)
        status = cg_duty_run_create(&c, &run, error);
    if (status == CG_OK && options->out != NULL)
        status = answer_with_tables(options, &c, run, &answer, error);
    else if (status == CG_OK)
        status = cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, error);
    cg_duty_run_free(run);
    if (status != CG_OK)
        return status;
    cg_report_find(&c, options->config, &answer, options->inch, options->quiet,
                   wall_clock() - begin);
    if (answer.verdict.given && !answer.verdict.safe) {
        error->text[0] = '\0'; /* the screen has said it */
        return CG_NOT_SAFE;
    }
    return CG_OK;
}
