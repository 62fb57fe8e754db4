#include "duty_limits.h"

#include <math.h>

#include "answer.h"
#include "boiling.h"
#include "coolant_side.h"
#include "outside.h"
#include "relaxation.h"

double cg_crown_limit(const struct cg_case *c)
{
    return fmax(CG_CROWN_LIMIT, c->piston_material.hot_limit);
}

static struct cg_limit_seen at_once(double reached, double limit)
{
    return (struct cg_limit_seen){
        .reached = reached, .limit = limit, .past = reached > limit};
}

/* What softens: passed for as long as the hottest of it may last. */
static struct cg_limit_seen in_time(double reached, double limit,
                                    double seconds)
{
    double allowed = cg_softening_time(limit, reached);
    return (struct cg_limit_seen){reached, limit, seconds, allowed,
                                  reached > limit && seconds > allowed};
}

/* Takes one more piece, whose integral runs straight from `begin` to `end`,
 * into the longest time over the limit on end; `now` is that under way [s]. */
static void go_on(const struct cg_piece *piece, double begin, double end,
                  struct cg_limit_seen *knock, double *now)
{
    double length = piece->to - piece->from, limit = knock->limit;
    double part = length * (fmax(begin, end) - limit) / fabs(end - begin);
    if (begin > limit)
        *now += end > limit ? length : part;
    else
        *now = end > limit ? part : 0.0;
    knock->seconds = fmax(knock->seconds, *now);
    if (!(end > limit))
        *now = 0.0;
}

/* Knock integral at a place; what it shows is taken in. */
static double see_place(const struct cg_duty_run *run, size_t place,
                        struct cg_limits *limits)
{
    struct cg_point_seen seen = cg_duty_run_see(run, place);
    struct cg_operating at = cg_duty_run_operating(run, place);
    if (seen.knock_integral > limits->of[CG_PAST_KNOCK].reached) {
        limits->of[CG_PAST_KNOCK].reached = seen.knock_integral;
        limits->knock_speed = at.speed;
        limits->knock_load = at.load;
    }
    limits->peak_pressure = fmax(limits->peak_pressure, seen.peak_pressure);
    limits->peak_rise = fmax(limits->peak_rise, seen.peak_rise);
    return seen.knock_integral;
}

/* Whether the engine at that place runs as at rated speed and full load. */
static bool is_rated(const struct cg_duty_run *run, size_t place)
{
    const struct cg_operating *full = &run->point[run->full_load].operating;
    struct cg_operating at = cg_duty_run_operating(run, place);
    return at.speed >= full->speed && at.load >= full->load;
}

/* Of the points that the duty goes through. */
static void judge_knock(const struct cg_case *c, const struct cg_duty_run *run,
                        struct cg_limits *limits)
{
    struct cg_limit_seen *knock = &limits->of[CG_PAST_KNOCK];
    double now = 0.0;
    bool rated = false;
    *knock = (struct cg_limit_seen){.limit = CG_KNOCK_PREDICTED};
    for (size_t i = 0; i < run->pieces; i++) {
        const struct cg_piece *piece = &run->piece[i];
        double begin = see_place(run, piece->start, limits);
        double end = see_place(run, piece->end, limits);
        rated = rated || is_rated(run, piece->start) ||
                is_rated(run, piece->end);
        go_on(piece, begin, end, knock, &now);
    }
    rated = rated && run->point[run->full_load].performance.knock_integral >
                         knock->limit;
    knock->allowed = rated ? 0.0 : CG_KNOCK_SECONDS;
    knock->past = knock->reached > knock->limit &&
                  (rated || knock->seconds > knock->allowed) &&
                  cg_duty_knock_heat(&c->duty) == 0.0;
}

/* Heat that the coolant takes from the hottest wall: that of a point's settled
 * state, but no hotter than the duty makes it. */
static double flux_at(const struct cg_case *c, const struct cg_duty_run *run,
                      size_t point, double hottest)
{
    double wall =
        cg_coolant_side(c, run->thermal, run->point[point].settled);
    return c->cooling.coolant_coefficient *
           (fmin(wall, hottest) -
            run->point[point].operating.coolant_temperature);
}

/* The coolant as given, and the most heat that it takes; of a map, at the
 * points around what it ran through. */
static void judge_coolant(const struct cg_case *c,
                          const struct cg_duty_run *run,
                          const struct cg_extremes *extremes,
                          struct cg_limits *limits)
{
    double boils = cg_boiling_point(c->cooling.coolant_pressure,
                                    c->cooling.coolant_glycol);
    double hottest = extremes->coolant_side_max;
    double most = 0.0, flux = 0.0, seconds = 0.0;
    for (size_t i = 0; i < 2 * run->pieces; i++) {
        const struct cg_piece *piece = &run->piece[i / 2];
        size_t place = i % 2 == 0 ? piece->start : piece->end;
        double coolant =
            cg_duty_run_operating(run, place).coolant_temperature;
        most = fmax(most, coolant);
        if (coolant > boils)
            seconds += 0.5 * (piece->to - piece->from);
        if (!run->mapped)
            flux = fmax(flux, flux_at(c, run, place, hottest));
    }
    for (size_t i = 0; run->mapped && i < run->nodes; i++)
        flux = fmax(flux, flux_at(c, run, i, hottest));
    limits->of[CG_PAST_COOLANT] = at_once(most, boils);
    limits->of[CG_PAST_COOLANT].seconds = seconds;
    limits->of[CG_PAST_FLUX] = at_once(flux, CG_CRITICAL_FLUX);
}

void cg_limits_judge(const struct cg_case *c, const struct cg_duty_run *run,
                     const struct cg_extremes *extremes,
                     struct cg_limits *limits)
{
    const struct cg_extremes *e = extremes;
    const struct cg_face *face = &c->ring_face[CG_RING_TOP];
    double crown = cg_crown_limit(c);
    *limits = (struct cg_limits){.knock_speed = 0.0};
    limits->of[CG_PAST_MELTS] = at_once(
        e->crown_max, crown > CG_CROWN_LIMIT ? INFINITY : CG_ALUMINIUM_MELTS);
    limits->of[CG_PAST_CROWN] = in_time(e->crown_max, crown, e->crown_over);
    limits->of[CG_PAST_GROOVE] = in_time(
        e->groove_top_max, c->piston_material.hot_limit, e->groove_over);
    limits->of[CG_PAST_FACE] = at_once(
        e->face_top_max,
        face->temperature.high > 0.0 ? face->temperature.high : INFINITY);
    limits->of[CG_PAST_GRIPS] =
        at_once(1.0 - e->clearance.side[CG_RING_TOP] /
                          c->ring[CG_RING_TOP].side_clearance,
                1.0);
    judge_knock(c, run, limits);
    limits->of[CG_PAST_PRESSURE] =
        at_once(limits->peak_pressure,
                c->combustion.ignition == CG_IGNITION_COMPRESSION
                    ? CG_CYLINDER_MOST
                    : INFINITY);
    if (cg_air_cooled(c)) /* air neither boils nor parts from the wall */
        limits->of[CG_PAST_COOLANT] = limits->of[CG_PAST_FLUX] =
            at_once(0.0, INFINITY);
    else
        judge_coolant(c, run, e, limits);
}

enum cg_past cg_limits_first(const struct cg_limits *limits)
{
    int first = 0;
    while (first < CG_PAST_LIMITS && !limits->of[first].past)
        first++;
    return (enum cg_past)first;
}
