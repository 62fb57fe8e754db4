/* The run in a log: what of it is taken, and what the model cannot run. */
#include <math.h>

#include "log_course.h"
#include "log_making.h"

double cg_log_time(const struct cg_log_making *making, size_t row)
{
    return making->rows.row[row].value[CG_LOGGED_TIME];
}

struct cg_where cg_log_at(const struct cg_log_making *making, size_t row)
{
    return (struct cg_where){making->path, (unsigned)making->rows.row[row].line,
                             NULL};
}

bool cg_log_asked(const struct cg_log_making *making, enum cg_logged q)
{
    return making->column[q].unit != NULL;
}

/* The manifold pressure at load 1 less that at load 0 [Pa]. */
static double whole_load(const struct cg_case *c)
{
    return c->charge.ambient_pressure + c->charge.boost -
           c->charge.closed_throttle;
}

double cg_log_load(const struct cg_log_making *making, const double *value)
{
    const struct cg_charge_case *charge = &making->c->charge;
    double manifold = value[CG_LOGGED_MANIFOLD];
    if (cg_log_asked(making, CG_LOGGED_LOAD))
        return fmax(value[CG_LOGGED_LOAD], 0.0);
    if (cg_log_asked(making, CG_LOGGED_BOOST))
        manifold = charge->ambient_pressure + value[CG_LOGGED_BOOST];
    return fmax((manifold - charge->closed_throttle) / whole_load(making->c),
                0.0);
}

static bool idles(const struct cg_log_making *making, size_t row)
{
    const double *value = making->rows.row[row].value;
    return value[CG_LOGGED_SPEED] <
               CG_LOG_IDLE_SPEED * making->c->engine.speed &&
           cg_log_load(making, value) < CG_LOG_IDLE_LOAD;
}

static bool stands(const struct cg_log_making *making, size_t row)
{
    return making->rows.row[row].value[CG_LOGGED_SPEED] < CG_LOG_STANDS;
}

static void tell_no_run(struct cg_log_making *making)
{
    double speed = 0.0, load = 0.0;
    for (size_t i = 0; i < making->rows.rows; i++) {
        const double *value = making->rows.row[i].value;
        speed = fmax(speed, value[CG_LOGGED_SPEED]);
        load = fmax(load, cg_log_load(making, value));
    }
    cg_problem(
        making->problems, cg_log_at(making, 0),
        making->column[CG_LOGGED_SPEED].heading,
        "%s throughout, %.4g rpm and %.0f %% of full load at most; above "
        "%.0f rpm or %.0f %% is a run, in the unit that duty.columns "
        "names and without a sign between thousands",
        speed < CG_LOG_STANDS ? "stands" : "idles", 60.0 * speed, 100.0 * load,
        60.0 * CG_LOG_IDLE_SPEED * making->c->engine.speed,
        100.0 * CG_LOG_IDLE_LOAD);
}

void cg_log_trim(struct cg_log_making *making)
{
    size_t rows = making->rows.rows, first = 0, last = rows - 1;
    while (first < rows && (idles(making, first) || stands(making, first)))
        first++;
    if (first == rows) {
        tell_no_run(making);
        return;
    }
    while (idles(making, last) || stands(making, last))
        last--;
    double begin = cg_log_time(making, first) - CG_LOG_IDLE_BEFORE;
    double end = cg_log_time(making, last) + CG_LOG_IDLE_AFTER;
    while (first > 0 && !stands(making, first - 1) &&
           cg_log_time(making, first - 1) >= begin)
        first--;
    while (last + 1 < rows && !stands(making, last + 1) &&
           cg_log_time(making, last + 1) <= end)
        last++;
    making->first = first;
    making->last = last;
    making->note.idle_begin =
        cg_log_time(making, first) - cg_log_time(making, 0);
    making->note.idle_end =
        cg_log_time(making, rows - 1) - cg_log_time(making, last);
}

void cg_log_check_run(struct cg_log_making *making)
{
    enum cg_logged q = cg_log_asked(making, CG_LOGGED_LOAD) ? CG_LOGGED_LOAD
                       : cg_log_asked(making, CG_LOGGED_BOOST)
                           ? CG_LOGGED_BOOST
                           : CG_LOGGED_MANIFOLD;
    for (size_t i = making->first; i <= making->last; i++) {
        const double *value = making->rows.row[i].value;
        double load = cg_log_load(making, value);
        making->note.most_load = fmax(making->note.most_load, load);
        if (stands(making, i))
            cg_problem(making->problems, cg_log_at(making, i),
                       making->column[CG_LOGGED_SPEED].heading,
                       "the engine stands inside the run; %.0f rpm and more "
                       "is allowed",
                       60.0 * CG_LOG_STANDS);
        if (load > CG_COURSE_MOST_LOAD)
            cg_problem(making->problems, cg_log_at(making, i),
                       making->column[q].heading,
                       "%.0f %% of the load at charge.boost; up to %.0f %% is "
                       "allowed, charge.boost is to be what the engine makes",
                       100.0 * load, 100.0 * CG_COURSE_MOST_LOAD);
    }
}
