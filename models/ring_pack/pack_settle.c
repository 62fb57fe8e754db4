#include "pack_settle.h"

#include <math.h>
#include <string.h>

enum { START = (CG_PACK_NODES - 1) / 2 };

/* Moves on along the change only while it dies away evenly at a rate that is
 * worth it. */
#define SLOW 0.05
#define HARDLY 0.995

struct past {
    double mass[CG_PACK_PERIOD + 1][CG_PACK_VOLUMES]; /* log; 0: the latest */
    int known;
};

static void remember(const struct cg_pack_state *state, struct past *past)
{
    memmove(past->mass[1], past->mass[0],
            CG_PACK_PERIOD * sizeof past->mass[0]);
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        past->mass[0][v] = log(state->mass[v]);
    if (past->known < CG_PACK_PERIOD + 1)
        past->known++;
}

static double change_over(const struct past *past, int period)
{
    double most = 0.0;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        most = fmax(most, fabs(past->mass[0][v] - past->mass[period][v]));
    return most;
}

/* The shortest period that has repeated; 0: none yet. */
static int period_of(const struct past *past, double repeat)
{
    for (int period = 1; period < past->known; period++)
        if (change_over(past, period) < repeat)
            return period;
    return 0;
}

/* Where the last two changes, along one direction and each `rate` times the
 * one before, will end.  False if they are not like that. */
static bool move_on(const struct cg_ring_pack *pack, const struct past *past,
                    struct cg_pack_state *state)
{
    double product = 0.0, square = 0.0, latest = 0.0;
    if (past->known < 3)
        return false;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++) {
        double now = past->mass[0][v] - past->mass[1][v];
        double before = past->mass[1][v] - past->mass[2][v];
        product += now * before;
        square += before * before;
        latest += now * now;
    }
    double rate = product / square;
    bool straight = product * product > 0.8 * square * latest;
    if (!(straight && rate > SLOW && rate < HARDLY))
        return false;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++) {
        double more =
            (past->mass[0][v] - past->mass[1][v]) * rate / (1.0 - rate);
        state->mass[v] *= exp(fmin(fmax(more, -2.0), 2.0));
    }
    cg_pack_seat(pack, state);
    return true;
}

/* As when the engine has just taken up load: no gas has gathered yet. */
static void first_guess(const struct cg_ring_pack *pack,
                        struct cg_pack_state *state)
{
    double land = pack->crankcase_pressure;
    cg_pack_state_set(
        pack, 0.0, (double[]){pack->node[START].pressure, land, land}, state);
}

/* Adds one cycle's share to the mean. */
static void add_cycle(const struct cg_pack_cycle *one, double share,
                      struct cg_pack_cycle *mean)
{
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        mean->forward[f] += share * one->forward[f];
        mean->back[f] += share * one->back[f];
    }
    mean->from_cylinder += share * one->from_cylinder;
    mean->to_crankcase += share * one->to_crankcase;
    mean->turnover += share * one->turnover;
    if (fabs(one->residual) > fabs(mean->residual))
        mean->residual = one->residual;
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        mean->unseat_deg[k] = fmin(mean->unseat_deg[k], one->unseat_deg[k]);
        if (one->lifts[k] > mean->lifts[k])
            mean->lifts[k] = one->lifts[k];
        mean->seated_share[k] += share * one->seated_share[k];
        mean->given_way_deg[k] += share * one->given_way_deg[k];
    }
    mean->steps += one->steps;
}

/* Once through the period, for its mean. */
static enum cg_status take_mean(const struct cg_ring_pack *pack,
                                const struct cg_pack_control *control,
                                struct cg_pack_state *state,
                                struct cg_pack_settled *settled,
                                struct cg_pack_record *record,
                                struct cg_error *error)
{
    struct cg_pack_cycle mean = {.unseat_deg = {720.0, 720.0}};
    for (int i = 0; i < settled->period; i++) {
        struct cg_pack_cycle one;
        enum cg_status status =
            cg_pack_cycle_run(pack, control, state, &one, record, error);
        if (status != CG_OK)
            return status;
        settled->cycles++;
        add_cycle(&one, 1.0 / settled->period, &mean);
    }
    settled->cycle = mean;
    return CG_OK;
}

enum cg_status cg_pack_settle(const struct cg_ring_pack *pack,
                              const struct cg_pack_control *control, bool warm,
                              struct cg_pack_state *state,
                              struct cg_pack_settled *settled,
                              struct cg_pack_record *record,
                              struct cg_error *error)
{
    struct past past = {.known = 0};
    double change = INFINITY;
    if (!warm)
        first_guess(pack, state);
    cg_pack_seat(pack, state);
    remember(state, &past);
    for (settled->cycles = 0; settled->cycles < control->cycles_most;) {
        enum cg_status status = cg_pack_cycle_run(
            pack, control, state, &settled->cycle, record, error);
        if (status != CG_OK)
            return status;
        settled->cycles++;
        remember(state, &past);
        change = change_over(&past, 1);
        settled->period = period_of(&past, control->repeat);
        if (settled->period > 0) {
            settled->change = change_over(&past, settled->period);
            return settled->period == 1 ? CG_OK
                                        : take_mean(pack, control, state,
                                                    settled, record, error);
        }
        if (move_on(pack, &past, state)) {
            past.known = 0;
            remember(state, &past);
        }
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "ring pack: after %d cycles one still differs from "
                        "the next by %.1e: the rings do not move alike from "
                        "cycle to cycle",
                        settled->cycles, change);
}
