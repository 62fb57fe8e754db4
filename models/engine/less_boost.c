#include "less_boost.h"

#include <math.h>
#include <stdlib.h>

#include "cycle.h"
#include "operating_point.h"

enum { TRIES = 12, CORRECTIONS = 8 };
#define NEAR 0.005         /* of the integral, from 1, walls as asked for */
#define SETTLED_NEAR 0.01  /* the same with the walls there */
#define RETARDED                                                               \
    0.1 /* burn later than asked for by less is at its place [deg] */

/* Logarithm of the integral of the burn asked for, with `boost`. */
static enum cg_status log_integral(const struct cg_case *c,
                                   const struct cg_operating_point *at,
                                   double boost, struct cg_cycle *cycle,
                                   double *value, struct cg_error *error)
{
    struct cg_case less = *c;
    struct cg_cycle_input input;
    less.charge.boost = boost;
    enum cg_status status =
        cg_operating_cycle_input(&less, &at->operating, &input, error);
    if (status != CG_OK)
        return status;
    input.head_temperature = at->input.head_temperature;
    input.piston_temperature = at->input.piston_temperature;
    input.liner_temperature = at->input.liner_temperature;
    input.crevice.temperature = at->input.crevice.temperature;
    status = cg_cycle_run(&input, cycle, error);
    if (status == CG_OK)
        *value = log(cycle->knock_unretarded);
    return status;
}

/* A bracket that the straight line narrows; `slope` of the logarithm [1/Pa]. */
static enum cg_status search(const struct cg_case *c,
                             const struct cg_operating_point *at,
                             struct cg_cycle *cycle, double *boost,
                             double *slope, struct cg_error *error)
{
    double low = 0.0, high = c->charge.boost, below, value;
    double above = log(at->performance.knock_unretarded);
    enum cg_status status = log_integral(c, at, low, cycle, &below, error);
    if (status != CG_OK || !(below < 0.0) || !(above > 0.0))
        return status;
    for (int i = 0; i < TRIES; i++) {
        double step = -below / (above - below);
        double x = low + (high - low) * fmin(fmax(step, 0.02), 0.98);
        status = log_integral(c, at, x, cycle, &value, error);
        if (status != CG_OK)
            return status;
        *boost = x;
        *slope = (above - below) / (high - low);
        if (fabs(value) < NEAR)
            return CG_OK;
        if (value < 0.0) {
            low = x;
            below = value;
        } else {
            high = x;
            above = value;
        }
    }
    return CG_OK;
}

/* Logarithm of the integral with the walls as they are with that boost. */
static enum cg_status log_settled(const struct cg_case *c, double boost,
                                  double *value, struct cg_error *error)
{
    struct cg_case less = *c;
    struct cg_duty_run *run;
    less.charge.boost = boost;
    less.duty.start = CG_START_SETTLED;
    less.duty.course = NULL;
    less.duty.segments = 1;
    less.duty.segment[0] = (struct cg_segment){
        .seconds = 1.0,
        .speed = c->engine.speed,
        .speed_end = c->engine.speed,
        .load = 1.0,
        .load_end = 1.0,
        .heat_factor = 1.0,
        .nitrous = cg_duty_nitrous(&c->duty),
        .coolant_temperature = NAN /* as in less.cooling */};
    enum cg_status status = cg_duty_run_create(&less, &run, error);
    if (status != CG_OK)
        return status;
    *value = log(run->point[run->full_load].performance.knock_unretarded);
    cg_duty_run_free(run);
    return CG_OK;
}

/* The walls are cooler with less boost: on by the slope with those found there,
 * between what was too little and too much, until the integral is near 1. */
static enum cg_status correct(const struct cg_case *c, double slope,
                              double *boost, struct cg_error *error)
{
    double low = 0.0, high = c->charge.boost, value;
    for (int i = 0; i < CORRECTIONS; i++) {
        enum cg_status status = log_settled(c, *boost, &value, error);
        if (status != CG_OK)
            return status;
        if (i > 0 && fabs(value) < SETTLED_NEAR)
            return CG_OK;
        if (value < 0.0)
            low = *boost;
        else
            high = *boost;
        double next = *boost - value / slope;
        *boost = next >= low && next <= high ? next : 0.5 * (low + high);
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "the boost below which knock retards no spark: not "
                        "found, about %.0f kPa",
                        *boost / 1e3);
}

enum cg_status cg_less_boost_find(const struct cg_case *c,
                                  const struct cg_duty_run *run, double *boost,
                                  struct cg_error *error)
{
    const struct cg_operating_point *at = &run->point[run->full_load];
    *boost = NAN;
    if (at->input.injection.on ||
        !isnan(c->combustion.retard_deg_per_100kPa) || !(c->charge.boost > 0) ||
        !(at->performance.burn50_deg > c->combustion.burn50_deg + RETARDED))
        return CG_OK;
    struct cg_cycle *cycle = malloc(sizeof *cycle);
    if (cycle == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    double slope = NAN;
    enum cg_status status = search(c, at, cycle, boost, &slope, error);
    free(cycle);
    if (status == CG_OK && !isnan(*boost))
        status = correct(c, slope, boost, error);
    return status;
}
