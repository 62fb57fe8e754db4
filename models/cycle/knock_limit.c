#include "knock_limit.h"

#include <math.h>
#include <string.h>

/* Steps from intake closing to the earliest burn, on to the burn at hand, and
 * in it: within 1 % of the integral by the cycle's own steps (tested). */
enum { CLOSED_STEPS = 12, WAITING_STEPS = 3, BURNING_STEPS = 16 };

/* In `steps` steps of one phase; y and end gas follow. */
static void run(const struct cg_zone *zone, const struct cg_knock_law *law,
                enum cg_phase phase, double from_deg, double to_deg, int steps,
                double *y, struct cg_end_gas *gas)
{
    double half = 0.5 * (to_deg - from_deg) / steps;
    struct cg_zone_node node[3];
    if (!(half > 0.0))
        return;
    cg_zone_node(zone, phase, from_deg, &node[2]);
    for (int i = 0; i < steps; i++) {
        struct cg_zone_gas unused[3];
        node[0] = node[2];
        cg_zone_node(zone, phase, from_deg + half * (2 * i + 1), &node[1]);
        cg_zone_node(zone, phase, from_deg + half * (2 * i + 2), &node[2]);
        cg_zone_step(zone, phase, node, y, unused);
        double taken = cg_evaporation_between(
            &zone->closed, node[0].angle_deg, node[2].angle_deg);
        cg_end_gas_step(law, cg_zone_pressure(zone, &node[2], y),
                        2.0 * half * zone->degree_time, taken / y[CG_ZONE_MASS],
                        gas);
    }
}

void cg_knock_limit_begin(const struct cg_knock_law *law,
                          const struct cg_zone *zone, double earliest_deg,
                          double burn_duration_deg, double close_deg,
                          const double *y, struct cg_knock_limit *limit)
{
    double start =
        cg_wiebe_from_burn(earliest_deg, burn_duration_deg).start_deg;
    struct cg_zone_node node;
    limit->law = law;
    limit->zone = zone;
    limit->earliest_deg = earliest_deg;
    limit->burn_duration_deg = burn_duration_deg;
    memcpy(limit->state, y, sizeof limit->state);
    cg_zone_node(zone, CG_PHASE_COMPRESSION, close_deg, &node);
    cg_end_gas_begin(
        law, &zone->fresh, &zone->burned, y[CG_ZONE_BURNED] / y[CG_ZONE_MASS],
        cg_zone_pressure(zone, &node, y), y[CG_ZONE_TEMPERATURE], &limit->gas);
    run(zone, law, CG_PHASE_COMPRESSION, close_deg, start, CLOSED_STEPS,
        limit->state, &limit->gas);
}

double cg_knock_limit_integral(const struct cg_knock_limit *limit,
                               double burn50_deg)
{
    struct cg_zone zone = *limit->zone;
    struct cg_end_gas gas = limit->gas;
    double y[CG_ZONE_VARIABLES];
    double start =
        cg_wiebe_from_burn(limit->earliest_deg, limit->burn_duration_deg)
            .start_deg;
    memcpy(y, limit->state, sizeof y);
    zone.wiebe = cg_wiebe_from_burn(burn50_deg, limit->burn_duration_deg);
    double end = fmin(cg_wiebe_angle(&zone.wiebe, CG_KNOCK_BURNED),
                      zone.exhaust_open_deg);
    run(&zone, limit->law, CG_PHASE_COMPRESSION, start, zone.wiebe.start_deg,
        WAITING_STEPS, y, &gas);
    cg_zone_ignite(&zone, zone.wiebe.start_deg, y);
    run(&zone, limit->law, CG_PHASE_BURN, zone.wiebe.start_deg, end,
        BURNING_STEPS, y, &gas);
    return gas.integral;
}

/* Newton's steps from where a like cycle ended, with the slope as the last two
 * integrals make it, which is right to a tenth: a step leaves that much of
 * itself.  False if they lead out of the range or nowhere. */
static bool go_on(const struct cg_knock_limit *limit, double tolerance,
                  struct cg_knock_start *start)
{
    const int most = 6;
    double low = limit->earliest_deg, high = low + limit->law->retard_most;
    double at = start->burn50_deg, before = NAN, value_before = NAN;
    if (!(start->slope < 0.0 && at > low && at < high))
        return false;
    for (int i = 0; i < most; i++) {
        double value = log(cg_knock_limit_integral(limit, at));
        double slope = (value - value_before) / (at - before);
        if (slope < 0.0)
            start->slope = slope;
        double next = at - value / start->slope;
        if (!(next > low && next < high))
            return false;
        if (fabs(next - at) < 10.0 * tolerance) {
            start->burn50_deg = next;
            return true;
        }
        before = at;
        value_before = value;
        at = next;
    }
    return false;
}

/* Regula falsi on the integral's logarithm, which is nearly straight; an end
 * that stays is halved (the Illinois rule: M. Dowell and P. Jarratt, BIT 11,
 * 1971). */
static void between(const struct cg_knock_limit *limit, double tolerance,
                    double low, double high, double at_low, double at_high,
                    struct cg_knock_start *start)
{
    const int most = 60;
    double last = low;
    int side = 0;
    for (int i = 0; i < most; i++) {
        double at = high - at_high * (high - low) / (at_high - at_low);
        double value = log(cg_knock_limit_integral(limit, at));
        start->slope = (at_high - at_low) / (high - low);
        start->burn50_deg = at;
        if (!(fabs(at - last) > tolerance) || value == 0.0)
            return;
        last = at;
        if (value > 0.0) {
            low = at;
            at_low = value;
            at_high *= side > 0 ? 0.5 : 1.0;
            side = 1;
        } else {
            high = at;
            at_high = value;
            at_low *= side < 0 ? 0.5 : 1.0;
            side = -1;
        }
    }
}

double cg_knock_limit_find(const struct cg_knock_limit *limit, double tolerance,
                           struct cg_knock_start *start)
{
    if (go_on(limit, tolerance, start))
        return start->burn50_deg;
    double low = limit->earliest_deg, high = low + limit->law->retard_most;
    double at_low = log(cg_knock_limit_integral(limit, low));
    *start = (struct cg_knock_start){low, 0.0};
    if (!(at_low > 0.0))
        return low;
    double at_high = log(cg_knock_limit_integral(limit, high));
    if (at_high < 0.0)
        between(limit, tolerance, low, high, at_low, at_high, start);
    else
        start->burn50_deg = high;
    return start->burn50_deg;
}
