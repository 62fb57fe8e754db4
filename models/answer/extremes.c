/* Watches a duty and keeps its extremes. */
#include <math.h>
#include <stdlib.h>

#include "answer.h"
#include "boiling.h"
#include "choke.h"
#include "constants.h"
#include "coolant_side.h"
#include "follow.h"
#include "geometry.h"
#include "growth.h"
#include "outside.h"

/* What is followed; clearances as their negatives.  Moved cases ask for the
 * first ones alone, and for no instant. */
enum quantity {
    CLOSURE,
    SKIRT_CLOSURE,
    MOVED_QUANTITIES,
    SECOND_CLOSURE = MOVED_QUANTITIES,
    RING_TOP,
    RING_SECOND,
    FACE_TOP,
    GROOVE_TOP,
    CROWN,
    LINER_TOP,
    COOLANT_SIDE,
    SKIRT,
    LAND,
    SIDE = LAND + CG_RINGS,
    BACK = SIDE + CG_RINGS,
    QUANTITIES = BACK + CG_RINGS
};

struct seen {
    const struct cg_case *c;
    const struct cg_duty_run *run;
    const struct cg_thermal *thermal;
    struct cg_extremes *extremes;
    struct cg_follow follow;
    double *strain; /* [stations], of the state read last */
    struct cg_closure closure;    /* likewise */
    struct cg_skirt_growth skirt; /* likewise */
    double watch; /* from when on [s] */
    struct cg_peaks peaks;
    cg_instant_observer observer;
    void *context;
    enum cg_status status; /* of the observer at the tightest instant */
    struct cg_error *error;
};

static bool of_moved(const struct seen *seen)
{
    return seen->follow.count == MOVED_QUANTITIES;
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

static void read_clearances(const struct seen *seen, const double *temperature,
                            double *value)
{
    struct cg_clearance clearance;
    cg_clearance_hot(seen->c, seen->thermal, temperature, seen->strain,
                     &clearance);
    value[SKIRT] = -clearance.skirt;
    for (int r = 0; r < CG_RINGS; r++) {
        value[LAND + r] = -clearance.land[r];
        value[SIDE + r] = -clearance.side[r];
        value[BACK + r] = -clearance.back[r];
    }
}

static struct cg_closure closure_of(const struct seen *seen,
                                    const double *temperature,
                                    enum cg_ring_place place)
{
    return cg_growth_closure(
        seen->c, seen->thermal, seen->strain,
        cg_growth_ring(seen->c, seen->thermal, temperature, place), place,
        seen->c->margin.residual);
}

static void read(void *context, const double *temperature, double *value)
{
    struct seen *seen = context;
    const struct cg_case *c = seen->c;
    const struct cg_thermal *thermal = seen->thermal;
    cg_growth_bore(c, thermal, temperature, seen->strain);
    seen->closure = closure_of(seen, temperature, CG_RING_TOP);
    seen->skirt =
        cg_clearance_skirt(c, thermal, temperature, seen->strain);
    value[CLOSURE] = seen->closure.closure;
    value[SKIRT_CLOSURE] = seen->skirt.closure;
    if (of_moved(seen))
        return;
    value[SECOND_CLOSURE] =
        closure_of(seen, temperature, CG_RING_SECOND).closure;
    value[RING_TOP] = cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP);
    value[RING_SECOND] =
        cg_thermal_ring_mean(thermal, temperature, CG_RING_SECOND);
    value[FACE_TOP] = temperature[thermal->ring[CG_RING_TOP].face];
    value[GROOVE_TOP] = temperature[thermal->piston.groove[CG_RING_TOP]];
    value[CROWN] = temperature[thermal->piston.node[0]];
    value[LINER_TOP] =
        cg_thermal_bore_at(thermal, temperature, cg_ring_turn(c, CG_RING_TOP));
    value[COOLANT_SIDE] = cg_coolant_side(c, thermal, temperature);
    read_clearances(seen, temperature, value);
}

static void note_tightest(struct seen *seen, const struct cg_instant *instant)
{
    struct cg_extremes *out = seen->extremes;
    const double *temperature = instant->temperature;
    out->time = instant->time;
    out->closure_then = seen->closure.closure;
    out->depth = seen->closure.depth;
    out->speed = instant->speed;
    out->load = instant->load;
    out->ring_at =
        cg_thermal_ring_mean(seen->thermal, temperature, CG_RING_TOP);
    out->bore_at = cg_thermal_bore_at(seen->thermal, temperature, out->depth);
    out->bore_growth =
        CG_PI * seen->c->engine.bore *
            cg_growth_at_depth(seen->thermal, seen->strain, out->depth) +
        cg_choke_gap(seen->c);
    out->liner_coolest = coolest(seen->c, seen->thermal, temperature);
}

static void record(void *context, size_t k, const struct cg_instant *instant)
{
    struct seen *seen = context;
    if (k == SKIRT_CLOSURE)
        seen->extremes->skirt = seen->skirt;
    if (k != CLOSURE || of_moved(seen))
        return;
    note_tightest(seen, instant);
    struct cg_instant shown = *instant;
    shown.step = CG_STEP_NONE;
    shown.table = false;
    if (seen->observer != NULL && seen->status == CG_OK)
        seen->status = seen->observer(seen->context, &shown, seen->error);
}

/* At the ends of the solver's steps. */
static void see_peak(struct seen *seen, const struct cg_instant *instant)
{
    struct cg_peak now = {instant->time, seen->follow.begin.value[CLOSURE],
                          instant->speed, instant->load};
    if (instant->step == CG_STEP_END)
        cg_peaks_see(&now, &seen->peaks);
}

/* The tightest instant first, then those peaks that stand apart from it and
 * close half as much at least. */
static void take_peaks(struct cg_peaks *peaks, struct cg_extremes *out)
{
    cg_peaks_end(peaks);
    out->peak[out->peaks++] = (struct cg_peak){out->time, out->closure,
                                               out->speed, out->load};
    for (int i = 0; i < peaks->count && out->peaks < CG_PEAKS; i++)
        if (fabs(peaks->peak[i].time - out->time) >= CG_PEAKS_APART &&
            peaks->peak[i].closure > 0.5 * out->closure)
            out->peak[out->peaks++] = peaks->peak[i];
}

static enum cg_status see(void *context, const struct cg_instant *instant,
                          struct cg_error *error)
{
    struct seen *seen = context;
    seen->error = error;
    if (instant->time >= seen->watch) {
        cg_follow_see(&seen->follow, seen->run, instant);
        if (!of_moved(seen))
            see_peak(seen, instant);
    }
    if (seen->status == CG_OK && seen->observer != NULL && instant->table)
        seen->status = seen->observer(seen->context, instant, error);
    return seen->status;
}

/* Two closures that differ by what the solver's tolerance makes of them are
 * one; a look between instants must promise that much. */
static void set_tolerances(struct seen *seen)
{
    const struct cg_case *c = seen->c;
    double kelvin = c->solver.tolerance;
    double metre = kelvin * CG_PI * c->engine.bore *
                   cg_curve_at(&c->ring_material[CG_RING_TOP].expansion,
                               cg_outside_temperature(c));
    for (size_t k = 0; k < QUANTITIES; k++)
        seen->follow.tolerance[k] =
            k >= RING_TOP && k <= COOLANT_SIDE ? kelvin : metre;
    seen->follow.limit[COOLANT_SIDE] =
        cg_air_cooled(c) ? INFINITY
                         : cg_boiling_point(c->cooling.coolant_pressure,
                                            c->cooling.coolant_glycol);
    seen->follow.level[CROWN] = cg_crown_limit(c);
    seen->follow.level[GROOVE_TOP] = c->piston_material.hot_limit;
}

static void take_found(const struct seen *seen)
{
    const double *most = seen->follow.most;
    struct cg_extremes *out = seen->extremes;
    out->closure = most[CLOSURE];
    out->skirt.closure = most[SKIRT_CLOSURE];
    if (of_moved(seen))
        return;
    out->ring_growth = out->closure_then + out->bore_growth;
    out->second_closure = most[SECOND_CLOSURE];
    out->ring_top_max = most[RING_TOP];
    out->ring_second_max = most[RING_SECOND];
    out->face_top_max = most[FACE_TOP];
    out->groove_top_max = most[GROOVE_TOP];
    out->crown_max = most[CROWN];
    out->liner_top_max = most[LINER_TOP];
    out->coolant_side_max = most[COOLANT_SIDE];
    out->crown_over = seen->follow.over[CROWN];
    out->groove_over = seen->follow.over[GROOVE_TOP];
    out->boiling_point = seen->follow.limit[COOLANT_SIDE];
    out->boiling_time = seen->follow.passed[COOLANT_SIDE];
    out->clearance.skirt = -most[SKIRT];
    for (int r = 0; r < CG_RINGS; r++) {
        out->clearance.land[r] = -most[LAND + r];
        out->clearance.side[r] = -most[SIDE + r];
        out->clearance.back[r] = -most[BACK + r];
    }
}

static enum cg_status watch(const struct cg_case *c, struct cg_duty_run *run,
                            size_t quantities, double interval,
                            cg_instant_observer observer, void *context,
                            struct cg_extremes *extremes,
                            struct cg_heat_ledger *ledger,
                            struct cg_error *error)
{
    struct cg_extremes found = {.time = NAN};
    struct seen seen = {.c = c,
                        .run = run,
                        .thermal = run->thermal,
                        .extremes = &found,
                        .watch = c->duty.course != NULL
                                     ? c->duty.course->watch
                                     : 0.0,
                        .observer = observer,
                        .context = context};
    enum cg_status status =
        cg_follow_begin(run, quantities, &seen.follow, error);
    seen.strain =
        malloc(run->thermal->bore.grid.stations * sizeof *seen.strain);
    if (status == CG_OK && seen.strain == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    seen.follow.read = read;
    seen.follow.record = record;
    seen.follow.context = &seen;
    set_tolerances(&seen);
    if (status == CG_OK)
        status = cg_duty_run_go(c, run, interval, see, &seen, ledger, error);
    if (status == CG_OK) {
        take_found(&seen);
        if (!of_moved(&seen)) {
            take_peaks(&seen.peaks, &found);
            run->tightest = found.time;
        }
        *extremes = found;
    }
    free(seen.strain);
    cg_follow_free(&seen.follow);
    return status;
}

enum cg_status cg_answer_extremes(const struct cg_case *c,
                                  struct cg_duty_run *run, double interval,
                                  cg_instant_observer observer, void *context,
                                  struct cg_extremes *extremes,
                                  struct cg_heat_ledger *ledger,
                                  struct cg_error *error)
{
    return watch(c, run, QUANTITIES, interval, observer, context, extremes,
                 ledger, error);
}

enum cg_status cg_answer_closures(const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  struct cg_extremes *extremes,
                                  struct cg_error *error)
{
    return watch(c, run, MOVED_QUANTITIES, 0.0, NULL, NULL, extremes, NULL,
                 error);
}
