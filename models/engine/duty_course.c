/* A course laid out: by its own points, or by a map. */
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "duty_layout.h"

struct laying {
    const struct cg_case *c;
    struct cg_duty_run *run;
    double of[CG_CHANNELS]; /* of the place added last */
    size_t last;            /* that place; SIZE_MAX: none yet */
};

enum { NO_LIMIT = 1 << 30 };

/* The place of a row, which may be that added last. */
static enum cg_status place_at(struct laying *laying,
                               const double of[CG_CHANNELS], size_t *place,
                               struct cg_error *error)
{
    struct cg_duty_run *run = laying->run;
    bool again = laying->last != SIZE_MAX;
    for (int k = 0; k < CG_CHANNELS; k++)
        again = again && cg_lay_same(of[k], laying->of[k]);
    *place = laying->last;
    if (again)
        return CG_OK;
    memcpy(laying->of, of, sizeof laying->of);
    if (!run->mapped) {
        enum cg_status status =
            cg_lay_point_at(laying->c, run, of, place, error);
        laying->last = *place;
        return status;
    }
    enum cg_status status = cg_lay_place(laying->c, run, of, error);
    if (status != CG_OK)
        return status;
    laying->last = *place = run->places - 1;
    return cg_regime_map_find(&run->map, of, &run->place[*place].at, error);
}

/* How many times the widest cell the largest change between two rows is: of the
 * map, or what cg_duty_run_create says of ramps. */
static double cells_between(const struct laying *laying,
                            const struct cg_course_row *a,
                            const struct cg_course_row *b)
{
    double most = 0.0;
    for (int k = 0; k < CG_CHANNELS; k++) {
        double cell = laying->c->duty.course->fine.cells * cg_map_cell[k];
        double rise = fabs(b->of[k] - a->of[k]);
        if (k == CG_CHANNEL_SPEED)
            rise /= laying->c->engine.speed;
        if (!laying->run->mapped && k == CG_CHANNEL_SPEED)
            cell = CG_RAMP_SPEED;
        if (!laying->run->mapped && k == CG_CHANNEL_LOAD)
            cell = CG_RAMP_LOAD;
        most = fmax(most, rise / cell);
    }
    return most;
}

static enum cg_status add_rows(struct laying *laying,
                               const struct cg_course_row *a,
                               const struct cg_course_row *b,
                               struct cg_error *error)
{
    int cuts = cg_lay_cuts(cells_between(laying, a, b));
    double length = b->time - a->time;
    size_t before = 0, after = 0;
    enum cg_status status = place_at(laying, a->of, &before, error);
    for (int i = 1; i <= cuts && status == CG_OK; i++) {
        double part = (double)i / cuts, of[CG_CHANNELS];
        for (int k = 0; k < CG_CHANNELS; k++)
            of[k] =
                i < cuts ? a->of[k] + part * (b->of[k] - a->of[k]) : b->of[k];
        status = place_at(laying, of, &after, error);
        if (status == CG_OK)
            status =
                cg_lay_piece(laying->run, a->time + length * (i - 1) / cuts,
                             i < cuts ? a->time + length * part : b->time,
                             before, after, error);
        before = after;
    }
    return status;
}

static enum cg_status add_course(const struct cg_case *c,
                                 struct cg_duty_run *run, size_t most,
                                 struct cg_error *error)
{
    const struct cg_course *course = c->duty.course;
    struct laying laying = {.c = c, .run = run, .last = SIZE_MAX};
    enum cg_status status =
        place_at(&laying, course->row[0].of, &run->start_place, error);
    for (size_t i = 0; i + 1 < course->rows && status == CG_OK; i++) {
        if (!run->mapped && run->points > most)
            return CG_OK; /* too many: the caller looks */
        if (course->row[i + 1].time > course->row[i].time)
            status =
                add_rows(&laying, &course->row[i], &course->row[i + 1], error);
    }
    run->duration = cg_duty_seconds(&c->duty);
    return status;
}

/* The nodes of the map become points, at the same numbers. */
static enum cg_status add_nodes(const struct cg_case *c,
                                struct cg_duty_run *run, struct cg_error *error)
{
    enum cg_status status = CG_OK;
    run->nodes = run->map.nodes;
    for (size_t i = 0; i < run->nodes && status == CG_OK; i++) {
        double of[CG_CHANNELS];
        cg_regime_map_node(&run->map, i, of);
        status = cg_lay_point(c, run, of, error);
    }
    return status == CG_OK ? cg_lay_mixed(run, error) : status;
}

static enum cg_status map_course(const struct cg_case *c,
                                 struct cg_duty_run *run,
                                 struct cg_error *error)
{
    run->mapped = true;
    run->points = run->pieces = run->places = 0;
    enum cg_status status = cg_regime_map_begin(c->duty.course, c->engine.speed,
                                                1.0, &run->map, error);
    if (status == CG_OK)
        status = add_course(c, run, NO_LIMIT, error);
    return status;
}

enum cg_status cg_lay_course(const struct cg_case *c, struct cg_duty_run *run,
                             struct cg_error *error)
{
    enum cg_status status = add_course(c, run, CG_POINTS_UNMAPPED, error);
    if (status != CG_OK || run->points <= CG_POINTS_UNMAPPED)
        return status;
    status = map_course(c, run, error);
    size_t nodes = run->map.nodes;
    if (status != CG_OK || run->pieces > 8 * nodes)
        return status == CG_OK ? add_nodes(c, run, error) : status;
    run->mapped = false;
    run->points = run->pieces = run->places = 0;
    status = add_course(c, run, nodes, error);
    if (status != CG_OK || run->points <= nodes)
        return status;
    status = map_course(c, run, error);
    return status == CG_OK ? add_nodes(c, run, error) : status;
}
