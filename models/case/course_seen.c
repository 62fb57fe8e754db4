/* A course as one of its instants sees it. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "course.h"

enum { MOST_KNOTS = 512 };
#define FIRST 0.25  /* the shortest mean [s] */
#define GROWTH 0.12 /* of the time since [1] */
#define AFTER 2.0   /* what is kept of the time after [s] */
#define EVERY 8.0   /* before the instant, where rows are wanted [s] */
#define WATCH 3.0   /* before the instant [s] */

/* The rows looked at. */
struct rows {
    const struct cg_course_row *row;
    size_t count;
};

/* Times of the knots, the last first; returns how many. */
static size_t set_knots(const struct rows *rows, double time, double knot[])
{
    double begin = rows->row[0].time, end = rows->row[rows->count - 1].time;
    size_t count = 0;
    double at = fmin(time + AFTER, end);
    for (; at > time; at -= FIRST)
        knot[count++] = at;
    for (at = time; at > begin && count < MOST_KNOTS - 1;
         at -= fmax(FIRST, GROWTH * (time - at)))
        knot[count++] = at;
    knot[count++] = begin;
    return count;
}

/* Adds what the rows from a to b [s], within one line of them, weigh in the hat
 * that is 1 at `middle` and 0 at `foot`. */
static void add_line(const struct cg_course_row *from,
                     const struct cg_course_row *to, double a, double b,
                     double middle, double foot, double *weight,
                     double sum[CG_CHANNELS])
{
    double length = to->time - from->time, width = middle - foot;
    /* Simpson: exact for a line times a line. */
    const double at[3] = {a, 0.5 * (a + b), b}, part[3] = {1, 4, 1};
    for (int i = 0; i < 3; i++) {
        double hat = (at[i] - foot) / width * part[i] * (b - a) / 6.0;
        double along = (at[i] - from->time) / length;
        *weight += hat;
        for (int k = 0; k < CG_CHANNELS; k++)
            sum[k] += hat * (from->of[k] + along * (to->of[k] - from->of[k]));
    }
}

/* Half a hat, of the rows between its middle and foot. */
static void add_side(const struct rows *rows, double middle, double foot,
                     double *weight, double sum[CG_CHANNELS])
{
    double low = fmin(middle, foot), high = fmax(middle, foot);
    size_t first = 0, last = rows->count - 1;
    while (last - first > 1) {
        size_t half = first + (last - first) / 2;
        if (rows->row[half].time <= low)
            first = half;
        else
            last = half;
    }
    for (size_t i = first; i + 1 < rows->count && rows->row[i].time < high;
         i++) {
        const struct cg_course_row *from = &rows->row[i], *to = from + 1;
        double a = fmax(from->time, low), b = fmin(to->time, high);
        if (b > a)
            add_line(from, to, a, b, middle, foot, weight, sum);
    }
}

/* The mean about a knot: by the hat that reaches to both of its neighbours. */
static struct cg_course_row mean_at(const struct rows *rows, double before,
                                    double at, double after)
{
    struct cg_course_row row = {.time = at};
    double weight = 0.0;
    if (before < at)
        add_side(rows, at, before, &weight, row.of);
    if (after > at)
        add_side(rows, at, after, &weight, row.of);
    for (int k = 0; k < CG_CHANNELS; k++)
        row.of[k] /= weight;
    return row;
}

/* Rows as they are, from a time to another. */
static void copy_rows(const struct rows *rows, double from, double to,
                      struct cg_course *made)
{
    for (size_t i = 0; i < rows->count; i++)
        if (rows->row[i].time > from && rows->row[i].time <= to)
            made->row[made->rows++] = rows->row[i];
}

enum cg_status cg_course_seen(const struct cg_course *course, double time,
                              enum cg_seen_by by, struct cg_course **list,
                              struct cg_course **seen, struct cg_error *error)
{
    struct rows rows = {course->row, course->rows};
    double knot[MOST_KNOTS + 64];
    bool whole = by != CG_SEEN_MEANS;
    if (by == CG_SEEN_ALL && course->all_rows > 0)
        rows = (struct rows){course->all, course->all_rows};
    size_t count = set_knots(&rows, time, knot);
    struct cg_course *made = NULL;
    enum cg_status status = cg_course_create(
        list, 1 + count + (whole ? rows.count : 0), &made, error);
    if (status != CG_OK)
        return status;
    made->row[made->rows++] = rows.row[0];
    for (size_t i = count; i-- > 0;) {
        if (whole && knot[i] > time - EVERY)
            break;
        made->row[made->rows++] =
            mean_at(&rows, knot[i + 1 < count ? i + 1 : i], knot[i],
                    knot[i > 0 ? i - 1 : 0]);
    }
    if (whole)
        copy_rows(&rows, made->row[made->rows - 1].time, time + AFTER, made);
    if (made->rows == 1) { /* of an instant at the start no row need be near */
        struct cg_course_row *end = &made->row[made->rows++];
        end->time = fmin(time + AFTER, rows.row[rows.count - 1].time);
        cg_course_at(course, end->time, end->of);
    }
    made->watch = time - WATCH;
    made->knock_heat = course->knock_heat;
    made->fine = course->fine;
    *seen = made;
    return CG_OK;
}
