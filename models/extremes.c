/* Watches a duty and keeps its extremes. */
#include <math.h>
#include <stdlib.h>

#include "answer.h"
#include "boiling.h"
#include "constants.h"
#include "geometry.h"
#include "growth.h"

struct seen {
    const struct cg_case *c;
    const struct cg_thermal *thermal;
    struct cg_extremes *extremes;
    double *strain; /* [stations] */
    double boiling_point;
    cg_instant_watch watch;
    void *context;
};

static void raise_to(double *most, double value)
{
    if (value > *most)
        *most = value;
}

static double surface_at(const struct cg_thermal *thermal,
                         const double *temperature, double depth)
{
    double place = depth / cg_station_height(&thermal->bore.grid);
    size_t last = thermal->bore.grid.stations - 1;
    size_t station = place < (double)last ? (size_t)place : last;
    return temperature[cg_thermal_liner_node(thermal, station, 0)];
}

static double coolest(const struct cg_case *c, const struct cg_thermal *thermal,
                      const double *temperature)
{
    double top = cg_ring_offset(c, CG_RING_TOP);
    double least = INFINITY;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        double depth = cg_station_depth(&thermal->bore.grid, s);
        if (depth >= top && depth <= top + c->engine.stroke)
            least = fmin(least,
                         temperature[cg_thermal_liner_node(thermal, s, 0)]);
    }
    return least;
}

static void note_tightest(struct seen *seen, const struct cg_instant *instant,
                          const struct cg_closure *closure)
{
    struct cg_extremes *out = seen->extremes;
    const double *temperature = instant->temperature;
    double around = CG_PI * seen->c->engine.bore;
    double bore_strain =
        cg_growth_at_depth(seen->thermal, seen->strain, closure->depth);
    out->closure = closure->closure;
    out->time = instant->time;
    out->depth = closure->depth;
    out->speed = instant->speed;
    out->load = instant->load;
    out->ring_at =
        cg_thermal_ring_mean(seen->thermal, temperature, CG_RING_TOP);
    out->bore_at = surface_at(seen->thermal, temperature, closure->depth);
    out->bore_growth = around * bore_strain;
    out->ring_growth = closure->closure + out->bore_growth;
    out->liner_coolest = coolest(seen->c, seen->thermal, temperature);
}

/* Whether a station's middle has coolant behind it; of a jacket shorter than a
 * station, the one that holds the jacket's middle. */
static bool is_wet(const struct cg_case *c, const struct cg_bore_grid *grid,
                   size_t station)
{
    double half = 0.5 * fmax(c->bore.jacket_length, cg_station_height(grid));
    double middle = c->bore.jacket_top + 0.5 * c->bore.jacket_length;
    return fabs(cg_station_depth(grid, station) - middle) <= half;
}

static void note_temperatures(struct seen *seen,
                              const struct cg_instant *instant)
{
    const struct cg_thermal *thermal = seen->thermal;
    const double *temperature = instant->temperature;
    struct cg_extremes *out = seen->extremes;
    size_t outer = thermal->bore.per_station - 1;
    raise_to(&out->ring_top_max,
             cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP));
    raise_to(&out->ring_second_max,
             cg_thermal_ring_mean(thermal, temperature, CG_RING_SECOND));
    raise_to(&out->groove_top_max,
             temperature[thermal->piston.groove[CG_RING_TOP]]);
    raise_to(&out->crown_max, temperature[thermal->piston.node[0]]);
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        raise_to(&out->liner_top_max,
                 temperature[cg_thermal_liner_node(thermal, s, 0)]);
        /* Only where there is coolant can it boil. */
        if (is_wet(seen->c, &thermal->bore.grid, s))
            raise_to(&out->coolant_side_max,
                     temperature[cg_thermal_liner_node(thermal, s, outer)]);
    }
    if (isnan(out->boiling_time) &&
        out->coolant_side_max > seen->boiling_point)
        out->boiling_time = instant->time;
}

static void note_clearance(struct seen *seen, const double *temperature)
{
    struct cg_extremes *out = seen->extremes;
    struct cg_clearance clearance;
    cg_clearance_hot(seen->c, seen->thermal, temperature, seen->strain,
                     &clearance);
    cg_clearance_least(&clearance, &out->clearance);
    struct cg_skirt_growth skirt = cg_clearance_skirt(
        seen->c, seen->thermal, temperature, seen->strain);
    if (skirt.closure > out->skirt.closure)
        out->skirt = skirt;
}

static enum cg_status see(void *context, const struct cg_instant *instant,
                          struct cg_error *error)
{
    struct seen *seen = context;
    const struct cg_case *c = seen->c;
    const double *temperature = instant->temperature;
    struct cg_extremes *out = seen->extremes;

    cg_growth_bore(c, seen->thermal, temperature, seen->strain);
    double top = cg_growth_ring(c, seen->thermal, temperature, CG_RING_TOP);
    struct cg_closure closure =
        cg_growth_closure(c, seen->thermal, seen->strain, top, CG_RING_TOP,
                          c->margin.residual);
    /* By more than rounding, so that a settled duty is tightest at once. */
    if (closure.closure > out->closure + 1e-9)
        note_tightest(seen, instant, &closure);

    double second =
        cg_growth_ring(c, seen->thermal, temperature, CG_RING_SECOND);
    raise_to(&out->second_closure,
             cg_growth_closure(c, seen->thermal, seen->strain, second,
                               CG_RING_SECOND, c->margin.residual)
                 .closure);

    note_clearance(seen, temperature);
    note_temperatures(seen, instant);
    return seen->watch != NULL ? seen->watch(seen->context, instant, error)
                               : CG_OK;
}

enum cg_status cg_answer_extremes(const struct cg_case *c,
                                  struct cg_duty_run *run, double interval,
                                  cg_instant_watch watch, void *context,
                                  struct cg_extremes *extremes,
                                  struct cg_heat_ledger *ledger,
                                  struct cg_error *error)
{
    struct cg_extremes found = {.closure = -INFINITY,
                                .second_closure = -INFINITY,
                                .boiling_time = NAN,
                                .skirt.closure = -INFINITY};
    cg_clearance_begin(&found.clearance);
    struct seen seen = {
        .c = c,
        .thermal = run->thermal,
        .extremes = &found,
        .boiling_point = cg_boiling_point(c->cooling.coolant_pressure,
                                          c->cooling.coolant_glycol),
        .watch = watch,
        .context = context};
    seen.strain =
        malloc(run->thermal->bore.grid.stations * sizeof *seen.strain);
    if (seen.strain == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    enum cg_status status =
        cg_duty_run_go(c, run, interval, see, &seen, ledger, error);
    free(seen.strain);
    if (status == CG_OK)
        *extremes = found;
    return status;
}
