#include "pack_stage.h"

#include <math.h>
#include <string.h>

#include "pack_newton.h"

/* The method: diagonal, the weights of its stages (the last row is the step),
 * their places, and the second-order weights of the first two. */
#define DIAGONAL 0.43586652150845899942
#define FIRST (-0.25 * (DIAGONAL * (6.0 * DIAGONAL - 16.0) + 1.0))
#define SECOND (0.25 * (DIAGONAL * (6.0 * DIAGONAL - 20.0) + 5.0))
static const double weight[CG_PACK_STAGES][CG_PACK_STAGES] = {
    {DIAGONAL, 0.0, 0.0},
    {0.5 * (1.0 - DIAGONAL), DIAGONAL, 0.0},
    {FIRST, SECOND, DIAGONAL}};
static const double place_of[CG_PACK_STAGES] = {DIAGONAL,
                                                0.5 * (1.0 + DIAGONAL), 1.0};
static const double lower_order[CG_PACK_STAGES] = {
    DIAGONAL / (1.0 - DIAGONAL), (1.0 - 2.0 * DIAGONAL) / (1.0 - DIAGONAL),
    0.0};

/* Adds to the masses what flows carry in `seconds`. */
static void carry(const double flow[CG_PACK_FLOWS], double seconds,
                  double mass[CG_PACK_VOLUMES])
{
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        size_t from = cg_pack_from[f], to = cg_pack_to[f];
        double moved = seconds * flow[f];
        if (from != CG_PACK_CYLINDER)
            mass[from - 1] -= moved;
        if (to != CG_PACK_CRANKCASE)
            mass[to - 1] += moved;
    }
}

/* The base of a stage, and a guess of its point: flows and pushes go on as
 * they were in the stage before. */
static void begin(const struct cg_ring_pack *pack,
                  const struct cg_pack_state *state, size_t stage,
                  double seconds, const struct cg_pack_trial *trial,
                  struct cg_pack_base *base, struct cg_pack_point *guess)
{
    base->diagonal = seconds * DIAGONAL;
    base->unknowns = CG_PACK_VOLUMES;
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        base->column[k] =
            state->seating[k] == CG_RING_FREE ? base->unknowns++ : 0;
    memcpy(base->mass, state->mass, sizeof base->mass);
    memcpy(base->lift, state->lift, sizeof base->lift);
    memcpy(base->speed, state->speed, sizeof base->speed);
    for (size_t j = 0; j < stage; j++) {
        double share = seconds * weight[stage][j];
        carry(trial->flow[j], share, base->mass);
        for (size_t k = 0; k < CG_PACK_RINGS; k++) {
            base->lift[k] += share * trial->stage[j].speed[k];
            base->speed[k] += share * trial->push[j][k];
        }
    }
    const double *flow = stage > 0 ? trial->flow[stage - 1] : state->flow;
    const double *push = stage > 0 ? trial->push[stage - 1] : state->push;
    double mass[CG_PACK_VOLUMES];
    memcpy(mass, base->mass, sizeof mass);
    carry(flow, base->diagonal, mass);
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        guess->pressure[v] =
            fmax(mass[v], 0.5 * state->mass[v]) / cg_pack_capacity(pack, v);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        bool free = state->seating[k] == CG_RING_FREE;
        guess->speed[k] =
            free ? base->speed[k] + base->diagonal * push[k] : 0.0;
        guess->lift[k] = free ? base->lift[k] + base->diagonal * guess->speed[k]
                              : state->lift[k];
    }
}

/* The step's flows in sum, the masses they leave, and the error. */
static void finish(const struct cg_ring_pack *pack,
                   const struct cg_pack_control *control,
                   const struct cg_pack_state *state, double seconds,
                   struct cg_pack_trial *trial)
{
    double wrong[CG_PACK_VOLUMES] = {0.0};
    memcpy(trial->mass, state->mass, sizeof trial->mass);
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        size_t from = cg_pack_from[f], to = cg_pack_to[f];
        double moved = 0.0, other = 0.0;
        for (size_t j = 0; j < CG_PACK_STAGES; j++) {
            moved += weight[CG_PACK_STAGES - 1][j] * trial->flow[j][f];
            other += lower_order[j] * trial->flow[j][f];
        }
        moved *= seconds;
        other *= seconds;
        trial->moved[f] = moved;
        if (from != CG_PACK_CYLINDER) {
            trial->mass[from - 1] -= moved;
            wrong[from - 1] -= moved - other;
        }
        if (to != CG_PACK_CRANKCASE) {
            trial->mass[to - 1] += moved;
            wrong[to - 1] += moved - other;
        }
    }
    trial->error = 0.0;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        trial->error =
            fmax(trial->error, fabs(wrong[v]) / (control->mass_tolerance *
                                                 fabs(trial->mass[v])));
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        double off = 0.0;
        for (size_t j = 0; j < CG_PACK_STAGES; j++)
            off += seconds * (weight[CG_PACK_STAGES - 1][j] - lower_order[j]) *
                   trial->stage[j].speed[k];
        trial->error = fmax(trial->error, fabs(off) / (control->lift_tolerance *
                                                       pack->ring[k].travel));
    }
}

bool cg_pack_try(const struct cg_ring_pack *pack,
                 const struct cg_pack_control *control,
                 const struct cg_pack_state *state, double degrees,
                 struct cg_pack_trial *trial)
{
    double seconds = degrees / (360.0 * pack->speed);
    struct cg_pack_rates rates;
    trial->degrees = degrees;
    for (size_t stage = 0; stage < CG_PACK_STAGES; stage++) {
        struct cg_pack_node at;
        struct cg_pack_base base;
        begin(pack, state, stage, seconds, trial, &base, &trial->stage[stage]);
        cg_pack_at(pack, state->angle_deg + place_of[stage] * degrees, &at);
        if (!cg_pack_newton(pack, &at, &base, control->stage_tolerance,
                            &trial->stage[stage], &rates))
            return false;
        for (size_t f = 0; f < CG_PACK_FLOWS; f++)
            trial->flow[stage][f] = rates.flow[f].rate;
        for (size_t k = 0; k < CG_PACK_RINGS; k++)
            trial->push[stage][k] = state->seating[k] == CG_RING_FREE
                                        ? rates.push[k].acceleration
                                        : 0.0;
    }
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        trial->push[CG_PACK_STAGES - 1][k] = rates.push[k].acceleration;
    finish(pack, control, state, seconds, trial);
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        if (!(trial->mass[v] > 0.0))
            return false;
    return isfinite(trial->error);
}
