#include "pack_cycle.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

enum {
    START = (CG_PACK_NODES - 1) / 2, /* node of firing top dead centre */
    STEPS_MOST = 20000               /* in a cycle */
};
#define CONFIRMED 0.1 /* of the travel: from here a lift counts */

/* A ring's leaving and coming back, followed through a cycle. */
struct lift_log {
    double peak_deg;             /* of the cylinder pressure, after the start */
    double left[CG_PACK_RINGS];  /* when it last left its lower flank */
    bool counted[CG_PACK_RINGS]; /* that lift stands in the sum */
};

static double peak_after_start(const struct cg_ring_pack *pack)
{
    size_t best = START;
    for (size_t i = START; i < CG_PACK_NODES; i++)
        if (pack->node[i].pressure > pack->node[best].pressure)
            best = i;
    return cg_pack_angle(best);
}

/* `since`: degrees after the start at the step's end. */
static void log_lifts(const struct cg_ring_pack *pack, double since,
                      const struct cg_pack_state *state,
                      const enum cg_seating before[CG_PACK_RINGS],
                      const struct cg_pack_move *move,
                      struct lift_log *lift_log, struct cg_pack_cycle *cycle)
{
    double pressure[CG_PACK_REGIONS];
    cg_pack_pressures(pack, state, pressure);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        if (before[k] == CG_SEATED_BELOW)
            cycle->seated_share[k] += move->degrees / 720.0;
        if (cg_pack_load(&pack->ring[k], k, pressure) < 0.0)
            cycle->given_way_deg[k] += move->degrees;
        if (before[k] == CG_SEATED_BELOW && state->seating[k] == CG_RING_FREE) {
            lift_log->left[k] = since;
            lift_log->counted[k] = false;
        }
        if (!(state->lift[k] > CONFIRMED * pack->ring[k].travel))
            continue;
        cycle->lifts[k] += !lift_log->counted[k];
        lift_log->counted[k] = true;
        if (since >= lift_log->peak_deg)
            cycle->unseat_deg[k] =
                fmin(cycle->unseat_deg[k],
                     fmax(lift_log->left[k], lift_log->peak_deg));
    }
}

static void add_move(const struct cg_pack_move *move,
                     struct cg_pack_cycle *cycle, struct cg_pack_record *row)
{
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        double mass = move->flow[f];
        if (mass > 0.0)
            cycle->forward[f] += mass;
        else
            cycle->back[f] -= mass;
        if (cg_pack_from[f] == CG_PACK_CYLINDER) {
            cycle->from_cylinder += mass;
            cycle->turnover += fmax(mass, 0.0);
        }
        if (cg_pack_to[f] == CG_PACK_CRANKCASE)
            cycle->to_crankcase += mass;
        if (row != NULL)
            row->flow[f] += mass;
    }
}

static void note(const struct cg_ring_pack *pack,
                 const struct cg_pack_state *state, struct cg_pack_record *row)
{
    cg_pack_pressures(pack, state, row->pressure);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        row->lift[k] = state->lift[k];
        row->load[k] = cg_pack_load(&pack->ring[k], k, row->pressure);
    }
}

/* From one node to the next. */
static enum cg_status
to_node(const struct cg_ring_pack *pack, const struct cg_pack_control *control,
        size_t node, double turns_deg, double *step_deg,
        struct cg_pack_state *state, struct lift_log *lift_log,
        struct cg_pack_cycle *cycle, struct cg_pack_record *row,
        struct cg_error *error)
{
    double end = cg_pack_angle(node);
    if (row != NULL)
        memset(row, 0, sizeof *row);
    while (state->angle_deg < end) {
        struct cg_pack_move move;
        enum cg_seating before[CG_PACK_RINGS];
        memcpy(before, state->seating, sizeof before);
        enum cg_status status =
            cg_pack_step(pack, control, end, step_deg, state, &move, error);
        if (status != CG_OK)
            return status;
        if (++cycle->steps > STEPS_MOST)
            return cg_error_set(error, CG_NUMERICAL,
                                "ring pack: the rings flutter without end "
                                "at %.3f deg",
                                state->angle_deg);
        add_move(&move, cycle, row);
        log_lifts(pack, state->angle_deg + turns_deg, state, before, &move,
                  lift_log, cycle);
    }
    if (row != NULL)
        note(pack, state, row);
    return CG_OK;
}

enum cg_status cg_pack_cycle_run(const struct cg_ring_pack *pack,
                                 const struct cg_pack_control *control,
                                 struct cg_pack_state *state,
                                 struct cg_pack_cycle *cycle,
                                 struct cg_pack_record *record,
                                 struct cg_error *error)
{
    struct lift_log lift_log = {.peak_deg = peak_after_start(pack)};
    double step = 0.5 * control->longest_deg, before = 0.0, after = 0.0;
    enum cg_status status = CG_OK;
    memset(cycle, 0, sizeof *cycle);
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        cycle->unseat_deg[k] = 720.0;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        before += state->mass[v];
    size_t stride = control->stride;
    for (size_t i = START + stride; i < CG_PACK_NODES && status == CG_OK;
         i += stride)
        status = to_node(pack, control, i, 0.0, &step, state, &lift_log, cycle,
                         record != NULL ? &record[i] : NULL, error);
    state->angle_deg = cg_pack_angle(0);
    for (size_t i = stride; i <= START && status == CG_OK; i += stride)
        status = to_node(pack, control, i, 720.0, &step, state, &lift_log,
                         cycle, record != NULL ? &record[i] : NULL, error);
    if (status != CG_OK)
        return status;
    if (record != NULL)
        record[0] = record[CG_PACK_NODES - 1];
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        after += state->mass[v];
    double lost = cycle->from_cylinder - cycle->to_crankcase;
    cycle->residual = (lost - (after - before)) / fmax(cycle->turnover, 1e-300);
    return CG_OK;
}
