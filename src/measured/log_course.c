#include "log_course.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "fuel.h"
#include "log_making.h"
#include "operating.h"
#include "plain_text.h"
#include "setting.h"

static double held(struct cg_log_making *making, double value, double low,
                   double high)
{
    making->note.held += value < low || value > high;
    return fmin(fmax(value, low), high);
}

/* Held to the band of the setting that says the same, as leanest the engine's. */

static double lambda_of(struct cg_log_making *making, const double *value)
{
    double lambda = value[CG_LOGGED_LAMBDA];
    if (cg_log_asked(making, CG_LOGGED_RATIO))
        lambda = value[CG_LOGGED_RATIO] /
                 cg_fuel_stoichiometric(cg_fuel_find(making->c->fuel.name));
    double least = cg_setting_find(CG_LOG_AS_LAMBDA)->low;
    return isnan(lambda)
               ? NAN
               : held(making, lambda, least, cg_lambda_most(making->c));
}

/* What a sensor shows past an end is that end. */
static double share_of(double value)
{
    return isnan(value) ? NAN : fmin(fmax(value, 0.0), 1.0);
}

static struct cg_course_row course_row(struct cg_log_making *making, size_t i)
{
    const double *value = making->rows.row[i].value;
    const struct cg_setting *as_burn = cg_setting_find(CG_LOG_AS_BURN50);
    double burn = value[CG_LOGGED_BURN50];
    struct cg_course_row row = {.time = cg_log_time(making, i) -
                                        cg_log_time(making, making->first)};
    row.of[CG_CHANNEL_SPEED] = value[CG_LOGGED_SPEED];
    row.of[CG_CHANNEL_LOAD] = cg_log_load(making, value);
    row.of[CG_CHANNEL_HEAT] = NAN;
    row.of[CG_CHANNEL_COOLANT] = value[CG_LOGGED_COOLANT];
    row.of[CG_CHANNEL_LAMBDA] = lambda_of(making, value);
    row.of[CG_CHANNEL_BURN50] =
        isnan(burn) ? NAN : held(making, burn, as_burn->low, as_burn->high);
    row.of[CG_CHANNEL_OIL] = value[CG_LOGGED_OIL];
    row.of[CG_CHANNEL_AIR] = value[CG_LOGGED_AIR];
    row.of[CG_CHANNEL_SOAK] = row.of[CG_CHANNEL_WIND] = NAN;
    row.of[CG_CHANNEL_NITROUS] = share_of(value[CG_LOGGED_NITROUS]);
    return row;
}

/* By what a column becomes, of the rows taken. */
static void count_filled(struct cg_log_making *making)
{
    static const enum cg_course_channel channel[CG_LOGGED_FOUND] = {
        [CG_LOGGED_SPEED] = CG_CHANNEL_SPEED,
        [CG_LOGGED_BOOST] = CG_CHANNEL_LOAD,
        [CG_LOGGED_MANIFOLD] = CG_CHANNEL_LOAD,
        [CG_LOGGED_LOAD] = CG_CHANNEL_LOAD,
        [CG_LOGGED_LAMBDA] = CG_CHANNEL_LAMBDA,
        [CG_LOGGED_RATIO] = CG_CHANNEL_LAMBDA,
        [CG_LOGGED_BURN50] = CG_CHANNEL_BURN50,
        [CG_LOGGED_COOLANT] = CG_CHANNEL_COOLANT,
        [CG_LOGGED_OIL] = CG_CHANNEL_OIL,
        [CG_LOGGED_AIR] = CG_CHANNEL_AIR,
        [CG_LOGGED_NITROUS] = CG_CHANNEL_NITROUS};
    for (size_t i = making->first; i <= making->last; i++)
        for (int q = CG_LOGGED_TIME + 1; q < CG_LOGGED_FOUND; q++)
            making->note.filled[channel[q]] +=
                (making->rows.row[i].filled >> q) & 1u;
}

static void set_note(struct cg_log_making *making)
{
    struct cg_log_note *note = &making->note;
    const char *slash = strrchr(making->path, '/');
    size_t rows = making->rows.rows;
    snprintf(note->file, sizeof note->file, "%s",
             slash != NULL ? slash + 1 : making->path);
    cg_plain_make(note->file);
    note->repeated = making->rows.repeated;
    note->lines = rows + note->repeated;
    note->taken = making->last - making->first + 1;
    count_filled(making);
    note->first = cg_log_time(making, 0);
    note->last = cg_log_time(making, rows - 1);
    note->begin = cg_log_time(making, making->first);
    note->interval =
        (note->last - note->first) / (double)(rows > 1 ? rows - 1 : 1);
}

static enum cg_status make_course(struct cg_log_making *making,
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
    if (cg_log_asked(making, CG_LOGGED_FOUND))
        cg_log_find_highest(making, made);
    made->log = making->note;
    status =
        cg_course_thin(making->c->engine.speed, &cg_thin_usual, made, error);
    if (status == CG_OK)
        *course = made;
    return status;
}

/* The rows are there: every step looks at what those before left.  Whether all
 * is well. */
static bool prepare(struct cg_log_making *making)
{
    size_t before = making->problems->count;
    if (making->rows.rows < 2) {
        cg_problem(making->problems, (struct cg_where){making->path, 0, NULL},
                   NULL,
                   "no run, two lines under the headings and more are "
                   "allowed");
        return false;
    }
    cg_log_check_steps(making);
    for (int q = CG_LOGGED_TIME + 1; q < CG_LOGGED_FOUND; q++)
        if (cg_log_asked(making, (enum cg_logged)q))
            cg_log_fill(making, q);
    if (making->problems->count > before)
        return false;
    cg_log_trim(making);
    if (making->problems->count > before)
        return false;
    cg_log_check_run(making);
    if (making->first == making->last)
        cg_problem(making->problems, cg_log_at(making, making->first), NULL,
                   "one line is no run");
    return making->problems->count == before;
}

enum cg_status cg_log_read(const char *path, const struct cg_case *c,
                           const struct cg_log_column column[CG_LOGGED],
                           struct cg_course **list, struct cg_course **course,
                           struct cg_problems *problems, struct cg_error *error)
{
    struct cg_log_making making = {
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
