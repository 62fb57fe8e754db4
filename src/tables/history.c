#include "history.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "geometry.h"
#include "growth.h"

static size_t stations_of(const struct cg_history *history)
{
    return history->run->thermal->bore.grid.stations;
}

static enum cg_status moment_create(size_t stations, struct cg_moment *moment,
                                    struct cg_error *error)
{
    assert(stations > 0);
    moment->bore_strain = malloc(2 * stations * sizeof *moment->bore_strain);
    if (moment->bore_strain == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    moment->bore_temperature = moment->bore_strain + stations;
    return CG_OK;
}

static enum cg_status set_depths(struct cg_history *history,
                                 struct cg_error *error)
{
    double top = cg_ring_turn(history->c, CG_RING_TOP);
    double bottom = top + history->c->engine.stroke;
    size_t stations = stations_of(history);
    history->depth = malloc((stations + 2) * sizeof *history->depth);
    if (history->depth == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    history->depth[history->depths++] = top;
    for (size_t i = 0; i < stations; i++) {
        double at = cg_station_depth(&history->run->thermal->bore.grid, i);
        if (at > top && at < bottom)
            history->depth[history->depths++] = at;
    }
    history->depth[history->depths++] = bottom;
    return CG_OK;
}

enum cg_status cg_history_begin(const struct cg_case *c,
                                const struct cg_duty_run *run,
                                struct cg_history *history,
                                struct cg_error *error)
{
    memset(history, 0, sizeof *history);
    history->c = c;
    history->run = run;
    history->interval = c->solver.table_step;
    enum cg_status status =
        moment_create(stations_of(history), &history->tightest, error);
    if (status == CG_OK)
        status = set_depths(history, error);
    if (status != CG_OK)
        cg_history_free(history);
    return status;
}

void cg_history_free(struct cg_history *history)
{
    for (size_t i = 0; i < history->moments; i++)
        free(history->moment[i].bore_strain);
    free(history->moment);
    free(history->tightest.bore_strain);
    free(history->depth);
    memset(history, 0, sizeof *history);
}

static void fill(const struct cg_history *history,
                 const struct cg_instant *instant, struct cg_moment *moment)
{
    const struct cg_thermal *thermal = history->run->thermal;
    const double *temperature = instant->temperature;
    moment->time = instant->time;
    moment->load = instant->load;
    moment->speed = instant->speed;
    moment->manifold_pressure = instant->manifold_pressure;
    moment->crown = temperature[thermal->piston.node[0]];
    moment->groove_top = temperature[thermal->piston.groove[CG_RING_TOP]];
    moment->ring_top = cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP);
    moment->ring_second =
        cg_thermal_ring_mean(thermal, temperature, CG_RING_SECOND);
    moment->ring_strain =
        cg_growth_ring(history->c, thermal, temperature, CG_RING_TOP);
    cg_growth_bore(history->c, thermal, temperature, moment->bore_strain);
    cg_clearance_hot(history->c, thermal, temperature, moment->bore_strain,
                     &moment->clearance);
    moment->skirt = cg_clearance_skirt(history->c, thermal, temperature,
                                       moment->bore_strain)
                        .temperature;
    for (size_t s = 0; s < stations_of(history); s++)
        moment->bore_temperature[s] =
            temperature[cg_thermal_liner_node(thermal, s, 0)];
}

static enum cg_status keep(struct cg_history *history,
                           const struct cg_instant *instant,
                           struct cg_error *error)
{
    if (history->moments == history->capacity) {
        size_t capacity = history->capacity > 0 ? 2 * history->capacity : 256;
        struct cg_moment *grown =
            realloc(history->moment, capacity * sizeof *grown);
        if (grown == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "out of memory");
        history->moment = grown;
        history->capacity = capacity;
    }
    struct cg_moment *next = &history->moment[history->moments];
    enum cg_status status =
        moment_create(stations_of(history), next, error);
    if (status != CG_OK)
        return status;
    fill(history, instant, next);
    history->moments++;
    return CG_OK;
}

enum cg_status cg_history_observe(void *context,
                                const struct cg_instant *instant,
                                struct cg_error *error)
{
    struct cg_history *history = context;
    if (instant->table)
        return keep(history, instant, error);
    fill(history, instant, &history->tightest); /* so far */
    return CG_OK;
}

void cg_history_gaps(const struct cg_history *history,
                     const struct cg_moment *moment, double cold_gap,
                     double *least, double *at_top)
{
    const struct cg_case *c = history->c;
    const struct cg_thermal *thermal = history->run->thermal;
    struct cg_closure closure =
        cg_growth_closure(c, thermal, moment->bore_strain, moment->ring_strain,
                          CG_RING_TOP, c->margin.residual);
    double top = cg_ring_turn(c, CG_RING_TOP);
    *least = cg_growth_gap(
        c, cold_gap,
        cg_growth_at_depth(thermal, moment->bore_strain, closure.depth),
        moment->ring_strain);
    *at_top = cg_growth_gap(
        c, cold_gap, cg_growth_at_depth(thermal, moment->bore_strain, top),
        moment->ring_strain);
}
