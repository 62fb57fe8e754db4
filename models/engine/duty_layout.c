/* A duty's pieces, and the operating points that it comes by. */
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "duty_run.h"

/* Both not given, or equal. */
static bool same(double a, double b)
{
    return a == b || (isnan(a) && isnan(b));
}

static bool same_point(const struct cg_operating *a,
                       const struct cg_operating *b)
{
    return a->speed == b->speed && a->load == b->load &&
           a->heat_factor == b->heat_factor &&
           a->coolant_temperature == b->coolant_temperature &&
           a->oil_temperature == b->oil_temperature && a->soak == b->soak &&
           a->nitrous == b->nitrous &&
           same(a->lambda, b->lambda) && same(a->burn50_deg, b->burn50_deg) &&
           same(a->air_temperature, b->air_temperature);
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

/* One point more, unsolved; those left by an earlier layout are used again. */
static enum cg_status add_point(struct cg_duty_run *run,
                                const struct cg_operating *operating,
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
    run->point[run->points++].operating = *operating;
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

/* The same, added if new. */
static enum cg_status point_at(struct cg_duty_run *run,
                               const struct cg_operating *operating,
                               size_t *index, struct cg_error *error)
{
    *index = cg_duty_run_index(run, operating);
    return *index < run->points ? CG_OK : add_point(run, operating, error);
}

static enum cg_status add_piece(struct cg_duty_run *run, double from, double to,
                                size_t start, size_t end,
                                struct cg_error *error)
{
    void *array = run->piece;
    enum cg_status status = make_room(
        &array, run->pieces, &run->pieces_allocated, sizeof *run->piece, error);
    run->piece = array;
    if (status == CG_OK)
        run->piece[run->pieces++] = (struct cg_piece){from, to, start, end};
    return status;
}

/* Cuts of what rises by these shares of the widest cells. */
static int cuts_of(double cells)
{
    int cuts = (int)ceil(cells - 1e-9);
    return cuts < 1 ? 1 : cuts;
}

/* Exact at both ends, so that a ramp's end and what goes on from there are one
 * point. */
static double between(double from, double to, double part)
{
    return (1.0 - part) * from + part * to;
}

static struct cg_operating
point_in(const struct cg_case *c, const struct cg_segment *segment, double part)
{
    struct cg_operating at = cg_operating_at(
        c, between(segment->speed, segment->speed_end, part),
        between(segment->load, segment->load_end, part));
    at.heat_factor = cg_segment_heat(segment);
    at.nitrous = segment->nitrous;
    if (!isnan(segment->coolant_temperature))
        at.coolant_temperature =
            segment->coolant_temperature + c->moved.coolant;
    return at;
}

static enum cg_status add_segment(const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  const struct cg_segment *segment,
                                  struct cg_error *error)
{
    double speed_rise =
        fabs(segment->speed_end - segment->speed) / c->engine.speed;
    double load_rise = fabs(segment->load_end - segment->load);
    int cuts =
        cuts_of(fmax(speed_rise / CG_RAMP_SPEED, load_rise / CG_RAMP_LOAD));
    struct cg_operating point = point_in(c, segment, 0.0);
    size_t before = 0, after = 0;
    enum cg_status status = point_at(run, &point, &before, error);
    for (int i = 1; i <= cuts && status == CG_OK; i++) {
        point = point_in(c, segment, (double)i / cuts);
        double from = run->duration + segment->seconds * (i - 1) / cuts;
        double to = run->duration + segment->seconds * i / cuts;
        status = point_at(run, &point, &after, error);
        if (status == CG_OK)
            status = add_piece(run, from, to, before, after, error);
        before = after;
    }
    run->duration += segment->seconds;
    return status;
}

/* A course as it is laid out: by its own points, or by a map. */
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
    struct cg_operating operating = cg_operating_of(laying->c, of);
    bool again = laying->last != SIZE_MAX;
    for (int k = 0; k < CG_CHANNELS; k++)
        again = again && same(of[k], laying->of[k]);
    *place = laying->last;
    if (again)
        return CG_OK;
    memcpy(laying->of, of, sizeof laying->of);
    if (!run->mapped) {
        enum cg_status status = point_at(run, &operating, place, error);
        laying->last = *place;
        return status;
    }
    void *array = run->place;
    enum cg_status status = make_room(
        &array, run->places, &run->places_allocated, sizeof *run->place, error);
    run->place = array;
    if (status != CG_OK)
        return status;
    run->place[run->places].operating = operating;
    laying->last = *place = run->places;
    return cg_regime_map_find(&run->map, of, &run->place[run->places++].at,
                              error);
}

/* How many times the widest cell the largest change between two rows is: of the
 * map, or what cg_duty_run_create says of ramps. */
static double cells_between(const struct laying *laying,
                            const struct cg_course_row *a,
                            const struct cg_course_row *b)
{
    double most = 0.0;
    for (int k = 0; k < CG_CHANNELS; k++) {
        double cell = cg_map_cell[k], rise = fabs(b->of[k] - a->of[k]);
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
    int cuts = cuts_of(cells_between(laying, a, b));
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
            status = add_piece(laying->run, a->time + length * (i - 1) / cuts,
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
    for (size_t i = 0; i < run->map.nodes && status == CG_OK; i++) {
        double of[CG_CHANNELS];
        cg_regime_map_node(&run->map, i, of);
        struct cg_operating operating = cg_operating_of(c, of);
        status = add_point(run, &operating, error);
    }
    for (int i = 0; i < 2 && status == CG_OK; i++)
        if (run->mixed[i].station == NULL)
            status = cg_point_create(run->thermal, &run->mixed[i], error);
    return status;
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

/* By its own points while these are few, or fewer than the map's: those are
 * exact, and a short log through many channels comes by more corners than it
 * has rows. */
static enum cg_status lay_out_course(const struct cg_case *c,
                                     struct cg_duty_run *run,
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

/* Where the duty starts: a solved point, also where pieces begin at a place
 * between some. */
static enum cg_status add_start(const struct cg_case *c,
                                struct cg_duty_run *run, struct cg_error *error)
{
    struct cg_operating full = cg_operating_full(c);
    struct cg_operating cruise =
        cg_operating_at(c, c->duty.cruise_speed, c->duty.cruise_load);
    enum cg_status status = point_at(run, &full, &run->full_load, error);
    if (c->duty.course == NULL)
        run->start_place = run->piece[0].start;
    run->start = run->start_place;
    if (status == CG_OK && c->duty.start == CG_START_CRUISE) {
        status = point_at(run, &cruise, &run->start, error);
        run->start_place = run->mapped ? SIZE_MAX : run->start;
    } else if (status == CG_OK && run->mapped) {
        struct cg_operating first = run->place[run->start_place].operating;
        status = point_at(run, &first, &run->start, error);
    }
    return status;
}

enum cg_status cg_duty_lay_out(const struct cg_case *c, struct cg_duty_run *run,
                               struct cg_error *error)
{
    enum cg_status status = CG_OK;
    run->course = c->duty.course != NULL;
    run->mapped = false;
    run->pieces = run->points = run->places = 0;
    run->duration = 0.0;
    run->film_scale = c->scale.film;
    run->friction_share = c->piston.friction_share;
    if (c->duty.course != NULL)
        status = lay_out_course(c, run, error);
    for (int i = 0;
         c->duty.course == NULL && i < c->duty.segments && status == CG_OK; i++)
        status = add_segment(c, run, &c->duty.segment[i], error);
    if (status == CG_OK && run->pieces == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "duty.segments: none given, at least one");
    return status == CG_OK ? add_start(c, run, error) : status;
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
