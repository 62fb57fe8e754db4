/* What a logger left out, on straight lines. */
#include <math.h>
#include <stdint.h>

#include "log_making.h"

/* Rows from `from` to `to`, not themselves, get values of a straight line; of
 * none at one end, the other end's. */
static void fill(struct cg_log_making *making, int q, size_t from, size_t to,
                 bool begins, bool ends)
{
    struct cg_log_row *row = making->rows.row;
    size_t first = begins ? from : from + 1, last = ends ? to + 1 : to;
    for (size_t i = first; i < last; i++) {
        double part =
            begins ? 1.0
            : ends ? 0.0
                   : (cg_log_time(making, i) - cg_log_time(making, from)) /
                         (cg_log_time(making, to) - cg_log_time(making, from));
        double a = begins ? row[to].value[q] : row[from].value[q];
        double b = ends ? row[from].value[q] : row[to].value[q];
        row[i].value[q] = a + part * (b - a);
        row[i].filled |= 1u << q;
    }
}

/* A stretch without a value, between rows that have one. */
static void fill_gap(struct cg_log_making *making, int q, size_t from,
                     size_t to, bool begins, bool ends)
{
    double length = cg_log_time(making, to) - cg_log_time(making, from);
    double most = cg_log_gap((enum cg_logged)q);
    if (length <= most) {
        fill(making, q, from, to, begins, ends);
        return;
    }
    cg_problem(making->problems, cg_log_at(making, begins ? from : from + 1),
               making->column[q].heading,
               "no value for %.4g s from here; up to %g s are filled by a "
               "straight line",
               length, most);
}

void cg_log_fill(struct cg_log_making *making, int q)
{
    const struct cg_log_row *row = making->rows.row;
    size_t rows = making->rows.rows, before = SIZE_MAX;
    for (size_t i = 0; i < rows; i++) {
        if (isnan(row[i].value[q]))
            continue;
        if (before == SIZE_MAX && i > 0)
            fill_gap(making, q, 0, i, true, false);
        else if (before != SIZE_MAX && i > before + 1)
            fill_gap(making, q, before, i, false, false);
        before = i;
    }
    if (before == SIZE_MAX)
        cg_problem(making->problems, cg_log_at(making, 0),
                   making->column[q].heading, "no value in the whole column");
    else if (before + 1 < rows)
        fill_gap(making, q, before, rows - 1, false, true);
}

void cg_log_check_steps(struct cg_log_making *making)
{
    double most = cg_log_gap(CG_LOGGED_TIME);
    for (size_t i = 1; i < making->rows.rows; i++) {
        double step = cg_log_time(making, i) - cg_log_time(making, i - 1);
        if (step > most)
            cg_problem(making->problems, cg_log_at(making, i),
                       making->column[CG_LOGGED_TIME].heading,
                       "%.4g s after the line before; up to %g s are filled "
                       "by a straight line",
                       step, most);
    }
}
