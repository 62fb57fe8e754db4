/* A duty's pieces, and the operating points that it comes by. */
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "duty_layout.h"

int cg_lay_cuts(double cells)
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

/* A row that says speed and load alone. */
static void ask(double speed, double load, double of[CG_CHANNELS])
{
    for (int k = 0; k < CG_CHANNELS; k++)
        of[k] = NAN;
    of[CG_CHANNEL_SPEED] = speed;
    of[CG_CHANNEL_LOAD] = load;
}

/* What a segment says at that part of it. */
static void ask_segment(const struct cg_segment *segment, double part,
                        double of[CG_CHANNELS])
{
    ask(between(segment->speed, segment->speed_end, part),
        between(segment->load, segment->load_end, part), of);
    of[CG_CHANNEL_HEAT] = cg_segment_heat(segment);
    of[CG_CHANNEL_COOLANT] = segment->coolant_temperature;
    if (segment->air > 0.0)
        of[CG_CHANNEL_WIND] = segment->air;
    of[CG_CHANNEL_NITROUS] = segment->nitrous;
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
        cg_lay_cuts(fmax(speed_rise / CG_RAMP_SPEED, load_rise / CG_RAMP_LOAD));
    double of[CG_CHANNELS];
    ask_segment(segment, 0.0, of);
    size_t before = 0, after = 0;
    enum cg_status status = cg_lay_point_at(c, run, of, &before, error);
    for (int i = 1; i <= cuts && status == CG_OK; i++) {
        ask_segment(segment, (double)i / cuts, of);
        double from = run->duration + segment->seconds * (i - 1) / cuts;
        double to = run->duration + segment->seconds * i / cuts;
        status = cg_lay_point_at(c, run, of, &after, error);
        if (status == CG_OK)
            status = cg_lay_piece(run, from, to, before, after, error);
        before = after;
    }
    run->duration += segment->seconds;
    return status;
}

/* Where the duty starts: a solved point, also where pieces begin at a place
 * between some. */
static enum cg_status add_start(const struct cg_case *c,
                                struct cg_duty_run *run, struct cg_error *error)
{
    double full[CG_CHANNELS], cruise[CG_CHANNELS];
    ask(c->engine.speed, 1.0, full);
    full[CG_CHANNEL_NITROUS] = cg_duty_nitrous(&c->duty);
    ask(c->duty.cruise_speed, c->duty.cruise_load, cruise);
    enum cg_status status =
        cg_lay_point_at(c, run, full, &run->full_load, error);
    if (c->duty.course == NULL)
        run->start_place = run->piece[0].start;
    run->start = run->start_place;
    if (status == CG_OK && c->duty.start == CG_START_CRUISE) {
        status = cg_lay_point_at(c, run, cruise, &run->start, error);
        run->start_place = run->mapped ? SIZE_MAX : run->start;
    } else if (status == CG_OK && run->mapped) {
        double first[CG_CHANNELS];
        memcpy(first, run->place[run->start_place].of, sizeof first);
        status = cg_lay_point_at(c, run, first, &run->start, error);
    }
    return status;
}

static void begin(const struct cg_case *c, struct cg_duty_run *run)
{
    run->course = c->duty.course != NULL;
    run->mapped = false;
    run->pieces = run->points = run->places = run->nodes = 0;
    run->duration = 0.0;
    run->film_scale = c->scale.film;
    run->friction_share = c->piston.friction_share;
}

enum cg_status cg_duty_lay_out(const struct cg_case *c, struct cg_duty_run *run,
                               struct cg_error *error)
{
    enum cg_status status = CG_OK;
    begin(c, run);
    if (c->duty.course != NULL)
        status = cg_lay_course(c, run, error);
    for (int i = 0;
         c->duty.course == NULL && i < c->duty.segments && status == CG_OK; i++)
        status = add_segment(c, run, &c->duty.segment[i], error);
    if (status == CG_OK && run->pieces == 0)
        status = cg_error_set(error, CG_BAD_INPUT,
                              "duty.segments: none given, at least one");
    return status == CG_OK ? add_start(c, run, error) : status;
}

enum cg_status cg_duty_lay_out_like(const struct cg_case *c,
                                    const struct cg_duty_run *like,
                                    struct cg_duty_run *run,
                                    struct cg_error *error)
{
    enum cg_status status = CG_OK;
    begin(c, run);
    run->mapped = like->mapped;
    run->nodes = like->nodes;
    run->duration = like->duration;
    run->full_load = like->full_load;
    run->start = like->start;
    run->start_place = like->start_place;
    for (size_t i = 0; i < like->points && status == CG_OK; i++)
        status = cg_lay_point(c, run, like->point[i].of, error);
    for (size_t i = 0; i < like->pieces && status == CG_OK; i++) {
        const struct cg_piece *piece = &like->piece[i];
        status = cg_lay_piece(run, piece->from, piece->to, piece->start,
                              piece->end, error);
    }
    for (size_t i = 0; i < like->places && status == CG_OK; i++) {
        status = cg_lay_place(c, run, like->place[i].of, error);
        if (status == CG_OK)
            run->place[i].at = like->place[i].at;
    }
    return status == CG_OK && run->mapped ? cg_lay_mixed(run, error) : status;
}
