#include "pack_step.h"

#include <math.h>
#include <string.h>

#include "pack_stage.h"

/* A ring counts as beyond its travel, or as pushed off its flank, from here:
 * keeps rounding from making instants of its own. */
#define BEYOND 1e-10   /* [m] */
#define PUSHED_OFF 1.0 /* [m/s2]; a ring's own inertia is some thousands */

#define INSTANT 1e-6 /* to which lifting and landing are located [deg] */
enum { LOCATE_PASSES = 60 };

const struct cg_pack_control cg_pack_control_usual = {.mass_tolerance = 1e-4,
                                                      .lift_tolerance = 5e-3,
                                                      .stage_tolerance = 1e-4,
                                                      .longest_deg = 1.0,
                                                      .shortest_deg = 1e-9,
                                                      .stride = 1,
                                                      .repeat = 1e-7,
                                                      .cycles_most = 120};
const struct cg_pack_control cg_pack_control_quick = {.mass_tolerance = 2e-3,
                                                      .lift_tolerance = 3e-2,
                                                      .stage_tolerance = 3e-3,
                                                      .longest_deg = 4.0,
                                                      .shortest_deg = 1e-9,
                                                      .stride = 4,
                                                      .repeat = 1e-3,
                                                      .cycles_most = 30};

void cg_pack_pressures(const struct cg_ring_pack *pack,
                       const struct cg_pack_state *state,
                       double pressure[CG_PACK_REGIONS])
{
    struct cg_pack_node at;
    cg_pack_at(pack, state->angle_deg, &at);
    pressure[CG_PACK_CYLINDER] = at.pressure;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        pressure[v + 1] = state->mass[v] / cg_pack_capacity(pack, v);
    pressure[CG_PACK_CRANKCASE] = pack->crankcase_pressure;
}

/* How far past its seating ring k is; positive: it changes.  Free: [m] beyond
 * the travel; seated: [m/s2] off the flank. */
static double seating_excess(const struct cg_ring_pack *pack, size_t k,
                             enum cg_seating seating, double lift, double push)
{
    switch (seating) {
    case CG_SEATED_BELOW:
        return pack->ring[k].pinned ? -PUSHED_OFF : push - PUSHED_OFF;
    case CG_SEATED_ABOVE:
        return -push - PUSHED_OFF;
    case CG_RING_FREE:
        break;
    }
    return fmax(-lift, lift - pack->ring[k].travel) - BEYOND;
}

static void change_seating(const struct cg_ring_pack *pack, size_t k,
                           struct cg_pack_state *state)
{
    if (state->seating[k] != CG_RING_FREE) {
        state->seating[k] = CG_RING_FREE;
        return;
    }
    bool below = state->lift[k] < 0.5 * pack->ring[k].travel;
    state->seating[k] = below ? CG_SEATED_BELOW : CG_SEATED_ABOVE;
    state->lift[k] = below ? 0.0 : pack->ring[k].travel;
    state->speed[k] = 0.0;
}

void cg_pack_seat(const struct cg_ring_pack *pack, struct cg_pack_state *state)
{
    struct cg_pack_node at;
    struct cg_pack_point point;
    struct cg_pack_rates rates;
    double pressure[CG_PACK_REGIONS];
    cg_pack_at(pack, state->angle_deg, &at);
    cg_pack_pressures(pack, state, pressure);
    memcpy(point.pressure, &pressure[1], sizeof point.pressure);
    memcpy(point.lift, state->lift, sizeof point.lift);
    memcpy(point.speed, state->speed, sizeof point.speed);
    cg_pack_rates(pack, &at, &point, &rates);
    for (size_t f = 0; f < CG_PACK_FLOWS; f++)
        state->flow[f] = rates.flow[f].rate;
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        state->push[k] = rates.push[k].acceleration;
        if (state->seating[k] != CG_RING_FREE &&
            seating_excess(pack, k, state->seating[k], state->lift[k],
                           state->push[k]) > 0.0)
            state->seating[k] = CG_RING_FREE;
    }
}

void cg_pack_state_set(const struct cg_ring_pack *pack, double angle_deg,
                       const double pressure[CG_PACK_VOLUMES],
                       struct cg_pack_state *state)
{
    memset(state, 0, sizeof *state);
    state->angle_deg = angle_deg;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        state->mass[v] = pressure[v] * cg_pack_capacity(pack, v);
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        state->seating[k] = CG_SEATED_BELOW;
    cg_pack_seat(pack, state);
}

static double excess_at_end(const struct cg_ring_pack *pack,
                            const struct cg_pack_state *state,
                            const struct cg_pack_trial *trial, size_t k)
{
    size_t end = CG_PACK_STAGES - 1;
    return seating_excess(pack, k, state->seating[k], trial->stage[end].lift[k],
                          trial->push[end][k]);
}

/* The ring that changes its seating within the tried step, the one furthest
 * past; CG_PACK_RINGS for none. */
static size_t changing(const struct cg_ring_pack *pack,
                       const struct cg_pack_state *state,
                       const struct cg_pack_trial *trial)
{
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        if (excess_at_end(pack, state, trial, k) > 0.0)
            return k;
    return CG_PACK_RINGS;
}

/* Cuts the tried step back to the first instant at which a ring changes its
 * seating: regula falsi with halving (Illinois), the far end kept.  False if
 * a shorter step finds no solution. */
static bool locate(const struct cg_ring_pack *pack,
                   const struct cg_pack_control *control,
                   const struct cg_pack_state *state,
                   struct cg_pack_trial *trial, size_t *ring)
{
    double low = 0.0, high = trial->degrees;
    double at_low = seating_excess(pack, *ring, state->seating[*ring],
                                   state->lift[*ring], state->push[*ring]);
    double at_high = excess_at_end(pack, state, trial, *ring);
    int side = 0;
    for (int pass = 0; pass < LOCATE_PASSES && high - low > INSTANT; pass++) {
        struct cg_pack_trial shorter;
        double middle =
            at_low < 0.0 ? (low * at_high - high * at_low) / (at_high - at_low)
                         : 0.5 * (low + high);
        middle = fmin(fmax(middle, low + 0.4 * INSTANT), high - 0.4 * INSTANT);
        if (!cg_pack_try(pack, control, state, middle, &shorter))
            return false;
        size_t now = changing(pack, state, &shorter);
        if (now == CG_PACK_RINGS) {
            low = middle;
            at_low = excess_at_end(pack, state, &shorter, *ring);
            if (side == -1)
                at_high *= 0.5;
            side = -1;
            continue;
        }
        if (now != *ring) { /* the other ring was first: begin with it */
            *ring = now;
            low = 0.0;
            at_low = seating_excess(pack, now, state->seating[now],
                                    state->lift[now], state->push[now]);
            side = 0;
        } else {
            if (side == 1)
                at_low *= 0.5;
            side = 1;
        }
        high = middle;
        at_high = excess_at_end(pack, state, &shorter, *ring);
        *trial = shorter;
    }
    return true;
}

static void take(const struct cg_ring_pack *pack,
                 const struct cg_pack_trial *trial, double end_deg,
                 bool reaches_end, struct cg_pack_state *state,
                 struct cg_pack_move *move)
{
    const struct cg_pack_point *end = &trial->stage[CG_PACK_STAGES - 1];
    memcpy(state->mass, trial->mass, sizeof state->mass);
    memcpy(state->flow, trial->flow[CG_PACK_STAGES - 1], sizeof state->flow);
    state->angle_deg =
        reaches_end ? end_deg : state->angle_deg + trial->degrees;
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        state->push[k] = trial->push[CG_PACK_STAGES - 1][k];
        if (state->seating[k] == CG_RING_FREE) {
            state->lift[k] = end->lift[k];
            state->speed[k] = end->speed[k];
        }
        /* Twice: a ring that lands may be pushed off again at once. */
        for (int pass = 0; pass < 2; pass++)
            if (seating_excess(pack, k, state->seating[k], state->lift[k],
                               state->push[k]) > 0.0)
                change_seating(pack, k, state);
    }
    move->degrees = trial->degrees;
    memcpy(move->flow, trial->moved, sizeof move->flow);
}

enum cg_status cg_pack_step(const struct cg_ring_pack *pack,
                            const struct cg_pack_control *control,
                            double end_deg, double *step_deg,
                            struct cg_pack_state *state,
                            struct cg_pack_move *move, struct cg_error *error)
{
    double rest = end_deg - state->angle_deg;
    double degrees = fmin(*step_deg, rest);
    struct cg_pack_trial trial;
    for (;;) {
        bool solved = cg_pack_try(pack, control, state, degrees, &trial);
        if (solved && trial.error > 1.0 && degrees > control->shortest_deg) {
            degrees *= fmax(0.8 / cbrt(trial.error), 0.2);
            continue;
        }
        size_t ring = solved ? changing(pack, state, &trial) : CG_PACK_RINGS;
        if (solved && ring < CG_PACK_RINGS)
            solved = locate(pack, control, state, &trial, &ring);
        if (solved)
            break;
        degrees *= 0.25;
        if (degrees < control->shortest_deg)
            return cg_error_set(
                error, CG_NUMERICAL,
                "ring pack: no solution at %.3f deg, inter-ring pressure "
                "%.4g Pa, lifts %.3g and %.3g m",
                state->angle_deg, state->mass[1] / cg_pack_capacity(pack, 1),
                state->lift[0], state->lift[1]);
    }
    double next = trial.degrees *
                  fmin(fmax(0.8 / cbrt(fmax(trial.error, 1e-3)), 0.3), 4.0);
    if (trial.degrees >= rest) /* cut short by the node alone */
        next = fmax(next, *step_deg);
    *step_deg = fmin(fmax(next, control->shortest_deg), control->longest_deg);
    take(pack, &trial, end_deg, trial.degrees >= rest, state, move);
    return CG_OK;
}
