/* Which rows of a course straight lines between the others stand for. */
#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "course.h"

/* Small against what moves a closure by a micrometre: over a second, which no
 * ring is faster than, the sums are a thousandth of the speed and the load
 * (tested over logs with noise on them). */
const struct cg_thin_band cg_thin_usual = {.off = {[CG_CHANNEL_SPEED] = 0.005,
                                                   [CG_CHANNEL_LOAD] = 0.01,
                                                   [CG_CHANNEL_HEAT] = 0.002,
                                                   [CG_CHANNEL_COOLANT] = 0.5,
                                                   [CG_CHANNEL_LAMBDA] = 0.01,
                                                   [CG_CHANNEL_BURN50] = 0.5,
                                                   [CG_CHANNEL_OIL] = 0.5,
                                                   [CG_CHANNEL_AIR] = 0.5,
                                                   [CG_CHANNEL_SOAK] = 0.01,
                                                   [CG_CHANNEL_WIND] = 0.01,
                                                   [CG_CHANNEL_NITROUS] = 0.01},
                                           .sum = {[CG_CHANNEL_SPEED] = 0.001,
                                                   [CG_CHANNEL_LOAD] = 0.001,
                                                   [CG_CHANNEL_HEAT] = 0.001,
                                                   [CG_CHANNEL_COOLANT] = 0.5,
                                                   [CG_CHANNEL_LAMBDA] = 0.005,
                                                   [CG_CHANNEL_BURN50] = 0.1,
                                                   [CG_CHANNEL_OIL] = 0.5,
                                                   [CG_CHANNEL_AIR] = 0.5,
                                                   [CG_CHANNEL_SOAK] = 0.02,
                                                   [CG_CHANNEL_WIND] = 0.005,
                                                   [CG_CHANNEL_NITROUS] = 0.001}};

enum { AHEAD = 1500 }; /* rows */

/* The search ahead from one row. */
struct search {
    const struct cg_course_row *from;
    double unit[CG_CHANNELS]; /* of the band */
    double left[CG_CHANNELS]; /* sum of what was left out up to it */
    double low[CG_CHANNELS], high[CG_CHANNELS]; /* slopes still inside */
    double passed[CG_CHANNELS];                 /* integral of the rows since */
};

static void begin(const struct cg_course_row *from, struct search *search)
{
    search->from = from;
    for (int k = 0; k < CG_CHANNELS; k++) {
        search->low[k] = -INFINITY;
        search->high[k] = INFINITY;
        search->passed[k] = 0.0;
    }
}

/* Takes in one more row; false where no line stays inside any more.  *good: the
 * line to this very row does, and its sum fits. */
static bool go_on(const struct cg_thin_band *band,
                  const struct cg_course_row *to, struct search *search,
                  bool *good)
{
    double length = to->time - search->from->time;
    double step = to->time - to[-1].time;
    bool open = true;
    *good = true;
    for (int k = 0; k < CG_CHANNELS; k++) {
        double a = search->from->of[k], b = to->of[k];
        double off = band->off[k] * search->unit[k];
        double most = band->sum[k] * search->unit[k];
        if (isnan(b))
            continue;
        search->passed[k] += 0.5 * step * (to[-1].of[k] + b);
        double slope = (b - a) / length;
        double sum =
            search->left[k] + search->passed[k] - 0.5 * length * (a + b);
        *good = *good && slope >= search->low[k] && slope <= search->high[k] &&
                fabs(sum) <= most;
        search->low[k] = fmax(search->low[k], (b - off - a) / length);
        search->high[k] = fmin(search->high[k], (b + off - a) / length);
        open = open && search->low[k] <= search->high[k];
    }
    return open;
}

/* What the line to that row leaves out is added to what was left before. */
static void leave_out(const struct cg_course_row *from,
                      const struct cg_course_row *to, struct search *search)
{
    for (int k = 0; k < CG_CHANNELS; k++) {
        double all = 0.0;
        if (isnan(to->of[k]))
            continue;
        for (const struct cg_course_row *at = from + 1; at <= to; at++)
            all += 0.5 * (at->time - at[-1].time) * (at[-1].of[k] + at->of[k]);
        search->left[k] +=
            all - 0.5 * (to->time - from->time) * (from->of[k] + to->of[k]);
    }
}

/* The row that the next line from row i goes to. */
static size_t next_of(const struct cg_course *course, size_t i,
                      const struct cg_thin_band *band, struct search *search)
{
    const struct cg_course_row *row = course->row;
    size_t last = i + 1;
    if (row[last].time == row[i].time) /* a jump stays one */
        return last;
    begin(&row[i], search);
    for (size_t j = i + 1; j < course->rows && j <= last + AHEAD; j++) {
        bool good, open;
        if (row[j].time == row[j - 1].time)
            break;
        open = go_on(band, &row[j], search, &good);
        if (good)
            last = j;
        if (!open)
            break;
    }
    leave_out(&row[i], &row[last], search);
    return last;
}

enum cg_status cg_course_thin(double rated_speed,
                              const struct cg_thin_band *band,
                              struct cg_course *course, struct cg_error *error)
{
    struct search search;
    assert(course->all == NULL); /* the whole is kept once */
    if (course->rows < 3)
        return CG_OK;
    struct cg_course_row *kept = malloc(course->rows * sizeof *kept);
    if (kept == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    size_t count = 0, i = 0;
    for (int k = 0; k < CG_CHANNELS; k++) {
        search.unit[k] = k == CG_CHANNEL_SPEED ? rated_speed : 1.0;
        search.left[k] = 0.0;
    }
    kept[count++] = course->row[0];
    while (i + 1 < course->rows) {
        i = next_of(course, i, band, &search);
        kept[count++] = course->row[i];
    }
    course->all = course->row;
    course->all_rows = course->rows;
    course->row = kept;
    course->rows = count;
    return CG_OK;
}

/* A copy of rows of the course, in a band so many times the usual one. */
static enum cg_status copy_thinned(const struct cg_course *course,
                                   const struct cg_course_row *row, size_t rows,
                                   double rated_speed, double wider,
                                   struct cg_course **list,
                                   struct cg_course **copy,
                                   struct cg_error *error)
{
    struct cg_thin_band band = cg_thin_usual;
    struct cg_course *made = NULL;
    for (int k = 0; k < CG_CHANNELS; k++) {
        band.off[k] *= wider;
        band.sum[k] *= wider;
    }
    enum cg_status status = cg_course_create(list, rows, &made, error);
    if (status != CG_OK)
        return status;
    memcpy(made->row, row, rows * sizeof *made->row);
    made->rows = rows;
    made->knock_heat = course->knock_heat;
    made->log = course->log;
    status = cg_course_thin(rated_speed, &band, made, error);
    if (status == CG_OK)
        *copy = made;
    return status;
}

enum cg_status cg_course_rough(const struct cg_course *course,
                               double rated_speed, struct cg_course **list,
                               struct cg_course **rough, struct cg_error *error)
{
    const double wider = 10.0;
    return copy_thinned(course, course->row, course->rows, rated_speed, wider,
                        list, rough, error);
}

enum cg_status cg_course_finer(const struct cg_course *course,
                               double rated_speed,
                               const struct cg_course_fine *fine,
                               struct cg_course **list,
                               struct cg_course **finer, struct cg_error *error)
{
    bool thinned = course->all_rows > 0;
    enum cg_status status =
        copy_thinned(course, thinned ? course->all : course->row,
                     thinned ? course->all_rows : course->rows, rated_speed,
                     fine->band, list, finer, error);
    if (status == CG_OK)
        (*finer)->fine = *fine;
    return status;
}
