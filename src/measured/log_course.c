#include "log_course.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "fuel.h"
#include "log_rows.h"
#include "plain_text.h"

/* What lambda and burn are held to: as fuel.lambda and combustion.burn50. */
#define LEAST_LAMBDA 0.6
#define MOST_LAMBDA 1.8
#define EARLIEST_BURN (-10.0)
#define LATEST_BURN 60.0

struct making {
    const char *path;
    const struct cg_case *c;
    const struct cg_log_column *column;
    struct cg_log_rows rows;
    size_t first, last; /* of the rows taken */
    struct cg_log_note note;
    struct cg_problems *problems;
};

static double time_of(const struct making *making, size_t row)
{
    return making->rows.row[row].value[CG_LOGGED_TIME];
}

static struct cg_where at_row(const struct making *making, size_t row)
{
    return (struct cg_where){making->path, (unsigned)making->rows.row[row].line,
                             NULL};
}

static bool is_asked(const struct making *making, enum cg_logged q)
{
    return making->column[q].unit != NULL;
}

/* Rows from `from` to `to`, not themselves, get values of a straight line; of
 * none at one end, the other end's. */
static void fill(struct making *making, int q, size_t from, size_t to,
                 bool begins, bool ends)
{
    struct cg_log_row *row = making->rows.row;
    size_t first = begins ? from : from + 1, last = ends ? to + 1 : to;
    for (size_t i = first; i < last; i++) {
        double part = begins ? 1.0
                      : ends
                          ? 0.0
                          : (time_of(making, i) - time_of(making, from)) /
                                (time_of(making, to) - time_of(making, from));
        double a = begins ? row[to].value[q] : row[from].value[q];
        double b = ends ? row[from].value[q] : row[to].value[q];
        row[i].value[q] = a + part * (b - a);
        making->note.filled++;
    }
}

/* A stretch without a value, between rows that have one. */
static void fill_gap(struct making *making, int q, size_t from, size_t to,
                     bool begins, bool ends)
{
    double length = time_of(making, to) - time_of(making, from);
    double most = cg_log_gap((enum cg_logged)q);
    if (length <= most) {
        fill(making, q, from, to, begins, ends);
        return;
    }
    cg_problem(making->problems, at_row(making, begins ? from : from + 1),
               making->column[q].heading,
               "no value for %.4g s from here; up to %g s are filled by a "
               "straight line",
               length, most);
}

static void fill_column(struct making *making, int q)
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
        cg_problem(making->problems, at_row(making, 0),
                   making->column[q].heading, "no value in the whole column");
    else if (before + 1 < rows)
        fill_gap(making, q, before, rows - 1, false, true);
}

/* Rows that a logger missed are a gap of every column. */
static void check_steps(struct making *making)
{
    double most = cg_log_gap(CG_LOGGED_TIME);
    for (size_t i = 1; i < making->rows.rows; i++) {
        double step = time_of(making, i) - time_of(making, i - 1);
        if (step > most)
            cg_problem(making->problems, at_row(making, i),
                       making->column[CG_LOGGED_TIME].heading,
                       "%.4g s after the line before; up to %g s are filled "
                       "by a straight line",
                       step, most);
    }
}

/* The manifold pressure at load 1 less that at load 0 [Pa]. */
static double whole_load(const struct cg_case *c)
{
    return c->charge.ambient_pressure + c->charge.boost -
           c->charge.closed_throttle;
}

static double load_of(const struct making *making, const double *value)
{
    const struct cg_charge_case *charge = &making->c->charge;
    double manifold = value[CG_LOGGED_MANIFOLD];
    if (is_asked(making, CG_LOGGED_LOAD))
        return fmax(value[CG_LOGGED_LOAD], 0.0);
    if (is_asked(making, CG_LOGGED_BOOST))
        manifold = charge->ambient_pressure + value[CG_LOGGED_BOOST];
    return fmax((manifold - charge->closed_throttle) / whole_load(making->c),
                0.0);
}

static double held(struct making *making, double value, double low, double high)
{
    making->note.held += value < low || value > high;
    return fmin(fmax(value, low), high);
}

static double lambda_of(struct making *making, const double *value)
{
    double lambda = value[CG_LOGGED_LAMBDA];
    if (is_asked(making, CG_LOGGED_RATIO))
        lambda = value[CG_LOGGED_RATIO] /
                 cg_fuel_stoichiometric(cg_fuel_find(making->c->fuel.name));
    return isnan(lambda) ? NAN
                         : held(making, lambda, LEAST_LAMBDA, MOST_LAMBDA);
}

static bool idles(const struct making *making, size_t row)
{
    const double *value = making->rows.row[row].value;
    return value[CG_LOGGED_SPEED] <
               CG_LOG_IDLE_SPEED * making->c->engine.speed &&
           load_of(making, value) < CG_LOG_IDLE_LOAD;
}

static bool stands(const struct making *making, size_t row)
{
    return making->rows.row[row].value[CG_LOGGED_SPEED] < CG_LOG_STANDS;
}

/* Leaves idling at both ends out but for a little, and all of an engine that
 * stands. */
static void trim(struct making *making)
{
    size_t rows = making->rows.rows, first = 0, last = rows - 1;
    while (first < rows && (idles(making, first) || stands(making, first)))
        first++;
    if (first == rows) {
        cg_problem(making->problems, at_row(making, 0),
                   making->column[CG_LOGGED_SPEED].heading,
                   "idles throughout; above %.0f rpm or %.0f %% of full load "
                   "is a run",
                   60.0 * CG_LOG_IDLE_SPEED * making->c->engine.speed,
                   100.0 * CG_LOG_IDLE_LOAD);
        return;
    }
    while (idles(making, last) || stands(making, last))
        last--;
    double begin = time_of(making, first) - CG_LOG_IDLE_BEFORE;
    double end = time_of(making, last) + CG_LOG_IDLE_AFTER;
    while (first > 0 && !stands(making, first - 1) &&
           time_of(making, first - 1) >= begin)
        first--;
    while (last + 1 < rows && !stands(making, last + 1) &&
           time_of(making, last + 1) <= end)
        last++;
    making->first = first;
    making->last = last;
    making->note.idle_begin = time_of(making, first) - time_of(making, 0);
    making->note.idle_end = time_of(making, rows - 1) - time_of(making, last);
}

/* What the model cannot run, of the rows taken. */
static void check_run(struct making *making)
{
    enum cg_logged q = is_asked(making, CG_LOGGED_LOAD)    ? CG_LOGGED_LOAD
                       : is_asked(making, CG_LOGGED_BOOST) ? CG_LOGGED_BOOST
                                                           : CG_LOGGED_MANIFOLD;
    for (size_t i = making->first; i <= making->last; i++) {
        const double *value = making->rows.row[i].value;
        double load = load_of(making, value);
        making->note.most_load = fmax(making->note.most_load, load);
        if (stands(making, i))
            cg_problem(making->problems, at_row(making, i),
                       making->column[CG_LOGGED_SPEED].heading,
                       "the engine stands inside the run; %.0f rpm and more "
                       "is allowed",
                       60.0 * CG_LOG_STANDS);
        if (load > CG_COURSE_MOST_LOAD)
            cg_problem(making->problems, at_row(making, i),
                       making->column[q].heading,
                       "%.0f %% of the load at charge.boost; up to %.0f %% is "
                       "allowed, charge.boost is to be what the engine makes",
                       100.0 * load, 100.0 * CG_COURSE_MOST_LOAD);
    }
}

static struct cg_course_row course_row(struct making *making, size_t i)
{
    const double *value = making->rows.row[i].value;
    double burn = value[CG_LOGGED_BURN50];
    struct cg_course_row row = {.time = time_of(making, i) -
                                        time_of(making, making->first)};
    row.of[CG_CHANNEL_SPEED] = value[CG_LOGGED_SPEED];
    row.of[CG_CHANNEL_LOAD] = load_of(making, value);
    row.of[CG_CHANNEL_HEAT] = NAN;
    row.of[CG_CHANNEL_COOLANT] = value[CG_LOGGED_COOLANT];
    row.of[CG_CHANNEL_LAMBDA] = lambda_of(making, value);
    row.of[CG_CHANNEL_BURN50] =
        isnan(burn) ? NAN : held(making, burn, EARLIEST_BURN, LATEST_BURN);
    row.of[CG_CHANNEL_OIL] = value[CG_LOGGED_OIL];
    row.of[CG_CHANNEL_AIR] = value[CG_LOGGED_AIR];
    row.of[CG_CHANNEL_SOAK] = row.of[CG_CHANNEL_NITROUS] = NAN;
    return row;
}

static void set_note(struct making *making)
{
    struct cg_log_note *note = &making->note;
    const char *slash = strrchr(making->path, '/');
    size_t rows = making->rows.rows;
    snprintf(note->file, sizeof note->file, "%s",
             slash != NULL ? slash + 1 : making->path);
    cg_plain_make(note->file);
    note->lines = rows + making->rows.repeated;
    note->first = time_of(making, 0);
    note->last = time_of(making, rows - 1);
    note->begin = time_of(making, making->first);
    note->interval =
        (note->last - note->first) / (double)(rows > 1 ? rows - 1 : 1);
}

/* The row of the highest that was found in the time taken. */
static size_t highest_row(const struct making *making)
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

/* What is asked for beside the run; `course` has all rows taken. */
static void find_highest(struct making *making, const struct cg_course *course)
{
    struct cg_log_highest *highest = &making->note.highest;
    size_t row = highest_row(making);
    if (row == SIZE_MAX) {
        cg_problem(making->problems, at_row(making, making->first),
                   making->column[CG_LOGGED_FOUND].heading,
                   "no value in the whole run");
        return;
    }
    highest->value = making->rows.row[row].value[CG_LOGGED_FOUND];
    highest->time = time_of(making, row);
    run_before(course, row - making->first, highest->of);
}

static enum cg_status make_course(struct making *making,
                                  struct cg_course **list,
                                  struct cg_course **course,
                                  struct cg_error *error)
{
    struct cg_course *made = NULL;
    enum cg_status status =
        cg_course_create(list, making->last - making->first + 1, &made, error);
    if (status != CG_OK)
        return status;
    for (size_t i = making->first; i <= making->last; i++)
        made->row[made->rows++] = course_row(making, i);
    set_note(making);
    if (is_asked(making, CG_LOGGED_FOUND))
        find_highest(making, made);
    made->log = making->note;
    status =
        cg_course_thin(making->c->engine.speed, &cg_thin_usual, made, error);
    if (status == CG_OK)
        *course = made;
    return status;
}

/* The rows are there: every step looks at what those before left.  Whether all
 * is well. */
static bool prepare(struct making *making)
{
    size_t before = making->problems->count;
    if (making->rows.rows < 2) {
        cg_problem(making->problems, (struct cg_where){making->path, 0, NULL},
                   NULL,
                   "no run, two lines under the headings and more are "
                   "allowed");
        return false;
    }
    check_steps(making);
    for (int q = CG_LOGGED_TIME + 1; q < CG_LOGGED_FOUND; q++)
        if (is_asked(making, (enum cg_logged)q))
            fill_column(making, q);
    if (making->problems->count > before)
        return false;
    trim(making);
    if (making->problems->count > before)
        return false;
    check_run(making);
    if (making->first == making->last)
        cg_problem(making->problems, at_row(making, making->first), NULL,
                   "one line is no run");
    return making->problems->count == before;
}

enum cg_status cg_log_read(const char *path, const struct cg_case *c,
                           const struct cg_log_column column[CG_LOGGED],
                           struct cg_course **list, struct cg_course **course,
                           struct cg_problems *problems, struct cg_error *error)
{
    struct making making = {
        .path = path, .c = c, .column = column, .problems = problems};
    size_t before = problems->count;
    *course = NULL;
    enum cg_status status =
        cg_log_rows_read(path, c, column, &making.rows, problems, error);
    if (status == CG_OK && problems->count == before && prepare(&making))
        status = make_course(&making, list, course, error);
    free(making.rows.row);
    return status;
}
