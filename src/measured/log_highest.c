/* The highest of a column of a log, and how the engine ran then. */
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "log_course.h"
#include "log_making.h"

/* The row of the highest that was found in the time taken. */
static size_t highest_row(const struct cg_log_making *making)
{
    const struct cg_log_row *row = making->rows.row;
    size_t best = SIZE_MAX;
    for (size_t i = making->first; i <= making->last; i++)
        if (!isnan(row[i].value[CG_LOGGED_FOUND]) &&
            (best == SIZE_MAX ||
             row[i].value[CG_LOGGED_FOUND] > row[best].value[CG_LOGGED_FOUND]))
            best = i;
    return best;
}

/* How the engine ran up to a row of the course, by channel: a probe lags, and
 * is often hottest after the throttle was shut, so that the means are of the
 * rows at nearly the highest load. */
static void run_before(const struct cg_course *course, size_t row, double *of)
{
    double begin = course->row[row].time - CG_LOG_PROBE_LAG, most = 0.0;
    size_t from = row, count = 0;
    while (from > 0 && course->row[from - 1].time >= begin)
        from--;
    for (size_t i = from; i <= row; i++)
        most = fmax(most, course->row[i].of[CG_CHANNEL_LOAD]);
    memset(of, 0, CG_CHANNELS * sizeof *of);
    for (size_t i = from; i <= row; i++) {
        if (course->row[i].of[CG_CHANNEL_LOAD] < CG_LOG_PROBE_LOAD * most)
            continue;
        count++;
        for (int k = 0; k < CG_CHANNELS; k++)
            of[k] += (course->row[i].of[k] - of[k]) / (double)count;
    }
}

void cg_log_find_highest(struct cg_log_making *making,
                         const struct cg_course *course)
{
    struct cg_log_highest *highest = &making->note.highest;
    size_t row = highest_row(making);
    if (row == SIZE_MAX) {
        cg_problem(making->problems, cg_log_at(making, making->first),
                   making->column[CG_LOGGED_FOUND].heading,
                   "no value in the whole run");
        return;
    }
    highest->value = making->rows.row[row].value[CG_LOGGED_FOUND];
    highest->time = cg_log_time(making, row);
    run_before(course, row - making->first, highest->of);
}
