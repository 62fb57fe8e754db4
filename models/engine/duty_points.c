/* The points, places and pieces of a run as they are added, and what is read of
 * them. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "duty_layout.h"

bool cg_lay_same(double a, double b)
{
    return a == b || (isnan(a) && isnan(b));
}

static bool same_point(const struct cg_operating *a,
                       const struct cg_operating *b)
{
    return a->speed == b->speed && a->load == b->load &&
           a->heat_factor == b->heat_factor &&
           a->coolant_temperature == b->coolant_temperature &&
           a->cooling_flow == b->cooling_flow &&
           a->oil_temperature == b->oil_temperature && a->soak == b->soak &&
           a->nitrous == b->nitrous &&
           cg_lay_same(a->lambda, b->lambda) &&
           cg_lay_same(a->burn50_deg, b->burn50_deg) &&
           cg_lay_same(a->air_temperature, b->air_temperature);
}

/* Room for one item more in an array that doubles. */
static enum cg_status make_room(void **array, size_t count, size_t *allocated,
                                size_t size, struct cg_error *error)
{
    if (count < *allocated)
        return CG_OK;
    size_t wanted = 2 * count + 16;
    void *grown = realloc(*array, wanted * size);
    if (grown == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    *array = grown;
    *allocated = wanted;
    return CG_OK;
}

enum cg_status cg_lay_point(const struct cg_case *c, struct cg_duty_run *run,
                            const double of[CG_CHANNELS],
                            struct cg_error *error)
{
    if (run->points == run->points_made) {
        void *array = run->point;
        enum cg_status status =
            make_room(&array, run->points, &run->points_allocated,
                      sizeof *run->point, error);
        run->point = array;
        if (status == CG_OK)
            status =
                cg_point_create(run->thermal, &run->point[run->points], error);
        if (status != CG_OK)
            return status;
        run->points_made++;
    }
    struct cg_operating_point *point = &run->point[run->points++];
    point->operating = cg_operating_of(c, of);
    memcpy(point->of, of, sizeof point->of);
    return CG_OK;
}

size_t cg_duty_run_index(const struct cg_duty_run *run,
                         const struct cg_operating *operating)
{
    size_t index = 0;
    while (index < run->points &&
           !same_point(&run->point[index].operating, operating))
        index++;
    return index;
}

enum cg_status cg_lay_point_at(const struct cg_case *c, struct cg_duty_run *run,
                               const double of[CG_CHANNELS], size_t *index,
                               struct cg_error *error)
{
    struct cg_operating operating = cg_operating_of(c, of);
    *index = cg_duty_run_index(run, &operating);
    return *index < run->points ? CG_OK : cg_lay_point(c, run, of, error);
}

enum cg_status cg_lay_place(const struct cg_case *c, struct cg_duty_run *run,
                            const double of[CG_CHANNELS],
                            struct cg_error *error)
{
    void *array = run->place;
    enum cg_status status = make_room(
        &array, run->places, &run->places_allocated, sizeof *run->place, error);
    run->place = array;
    if (status != CG_OK)
        return status;
    struct cg_place *place = &run->place[run->places++];
    place->operating = cg_operating_of(c, of);
    memcpy(place->of, of, sizeof place->of);
    return CG_OK;
}

enum cg_status cg_lay_piece(struct cg_duty_run *run, double from, double to,
                            size_t start, size_t end, struct cg_error *error)
{
    void *array = run->piece;
    enum cg_status status = make_room(
        &array, run->pieces, &run->pieces_allocated, sizeof *run->piece, error);
    run->piece = array;
    if (status == CG_OK)
        run->piece[run->pieces++] = (struct cg_piece){from, to, start, end};
    return status;
}

enum cg_status cg_lay_mixed(struct cg_duty_run *run, struct cg_error *error)
{
    enum cg_status status = CG_OK;
    for (int i = 0; i < 2 && status == CG_OK; i++)
        if (run->mixed[i].station == NULL)
            status = cg_point_create(run->thermal, &run->mixed[i], error);
    return status;
}

const struct cg_operating_point *
cg_duty_run_place(const struct cg_duty_run *run, size_t place,
                  struct cg_operating_point *mixed)
{
    if (!run->mapped)
        return &run->point[place];
    const struct cg_place *at = &run->place[place];
    cg_point_blend(&at->at, run->point, &at->operating, run->thermal, mixed);
    return mixed;
}

struct cg_operating cg_duty_run_operating(const struct cg_duty_run *run,
                                          size_t place)
{
    return run->mapped ? run->place[place].operating
                       : run->point[place].operating;
}

struct cg_point_seen cg_duty_run_see(const struct cg_duty_run *run,
                                     size_t place)
{
    const struct cg_map_place alone = {1, {place}, {1.0}};
    return cg_point_see(run->mapped ? &run->place[place].at : &alone,
                        run->point);
}

bool cg_duty_run_comes_by(const struct cg_duty_run *run, size_t point)
{
    bool near = false;
    for (size_t i = 0; i < run->places && !near; i++)
        for (size_t k = 0; k < run->place[i].at.corners; k++)
            near = near || (run->place[i].at.node[k] == point &&
                            run->place[i].at.weight[k] >= 0.5);
    return near;
}
