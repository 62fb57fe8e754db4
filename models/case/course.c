#include "course.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case.h"

enum cg_status cg_course_create(struct cg_course **list, size_t rows,
                                struct cg_course **course,
                                struct cg_error *error)
{
    struct cg_course *made = calloc(1, sizeof *made);
    if (made != NULL)
        made->row = malloc((rows > 0 ? rows : 1) * sizeof *made->row);
    if (made == NULL || made->row == NULL) {
        free(made);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    made->fine = (struct cg_course_fine){.band = 1.0, .cells = 1.0};
    made->next = *list;
    *list = *course = made;
    return CG_OK;
}

enum cg_status cg_course_hold(const double of[CG_CHANNELS],
                              struct cg_course **list,
                              struct cg_course **course, struct cg_error *error)
{
    struct cg_course *made = NULL;
    enum cg_status status = cg_course_create(list, 2, &made, error);
    if (status != CG_OK)
        return status;
    for (; made->rows < 2; made->rows++) {
        made->row[made->rows].time = (double)made->rows;
        memcpy(made->row[made->rows].of, of, sizeof made->row[0].of);
    }
    *course = made;
    return CG_OK;
}

void cg_courses_free(struct cg_course *list)
{
    while (list != NULL) {
        struct cg_course *next = list->next;
        free(list->row);
        free(list->all);
        free(list);
        list = next;
    }
}

static struct cg_course_row row_of(const struct cg_segment *segment, bool end,
                                   double time, double coolant)
{
    struct cg_course_row row = {.time = time};
    double own = segment->coolant_temperature;
    for (int k = 0; k < CG_CHANNELS; k++)
        row.of[k] = NAN;
    row.of[CG_CHANNEL_SPEED] = end ? segment->speed_end : segment->speed;
    row.of[CG_CHANNEL_LOAD] = end ? segment->load_end : segment->load;
    row.of[CG_CHANNEL_HEAT] = cg_segment_heat(segment);
    row.of[CG_CHANNEL_COOLANT] = isnan(own) ? coolant : own;
    row.of[CG_CHANNEL_WIND] = segment->air > 0.0 ? segment->air : 1.0;
    row.of[CG_CHANNEL_NITROUS] = segment->nitrous;
    return row;
}

static bool same_row(const struct cg_course_row *a,
                     const struct cg_course_row *b)
{
    bool same = a->time == b->time;
    for (int k = 0; k < CG_CHANNELS; k++)
        same = same &&
               (a->of[k] == b->of[k] || (isnan(a->of[k]) && isnan(b->of[k])));
    return same;
}

/* A course in which the cooling air is all along as the case says it. */
static void still(struct cg_course *course)
{
    bool moves = false;
    for (size_t i = 0; i < course->rows; i++)
        moves = moves || course->row[i].of[CG_CHANNEL_WIND] != 1.0;
    for (size_t i = 0; i < course->rows && !moves; i++)
        course->row[i].of[CG_CHANNEL_WIND] = NAN;
}

/* Whether a segment has a coolant of its own. */
static bool has_coolant(const struct cg_segment *segment, size_t segments)
{
    for (size_t i = 0; i < segments; i++)
        if (!isnan(segment[i].coolant_temperature))
            return true;
    return false;
}

enum cg_status cg_course_of_segments(const struct cg_segment *segment,
                                     size_t segments, double coolant,
                                     struct cg_course **list,
                                     struct cg_course **course,
                                     struct cg_error *error)
{
    struct cg_course *made = NULL;
    double time = 0.0,
           otherwise = has_coolant(segment, segments) ? coolant : NAN;
    enum cg_status status = cg_course_create(list, 2 * segments, &made, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < segments; i++) {
        struct cg_course_row row = row_of(&segment[i], false, time, otherwise);
        if (made->rows == 0 || !same_row(&row, &made->row[made->rows - 1]))
            made->row[made->rows++] = row;
        time += segment[i].seconds;
        made->row[made->rows++] = row_of(&segment[i], true, time, otherwise);
        made->knock_heat = fmax(made->knock_heat, segment[i].knock_heat);
    }
    still(made);
    *course = made;
    return CG_OK;
}

bool cg_course_same(const struct cg_course *a, const struct cg_course *b)
{
    if (a == NULL || b == NULL)
        return a == b;
    return a->rows == b->rows && a->fine.cells == b->fine.cells &&
           memcmp(a->row, b->row, a->rows * sizeof *a->row) == 0;
}

/* The last row at or before a time, not the course's last. */
static size_t row_before(const struct cg_course *course, double time)
{
    size_t low = 0, high = course->rows - 1;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (course->row[middle].time <= time)
            low = middle;
        else
            high = middle;
    }
    return low;
}

void cg_course_at(const struct cg_course *course, double time,
                  double of[CG_CHANNELS])
{
    if (course->rows < 2) {
        memcpy(of, course->row[0].of, sizeof course->row[0].of);
        return;
    }
    const struct cg_course_row *a = &course->row[row_before(course, time)];
    const struct cg_course_row *b = a + 1;
    double length = b->time - a->time;
    double part = length > 0.0 ? (time - a->time) / length : 1.0;
    part = fmin(fmax(part, 0.0), 1.0);
    for (int k = 0; k < CG_CHANNELS; k++)
        of[k] = a->of[k] + part * (b->of[k] - a->of[k]);
}
