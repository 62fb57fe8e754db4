#include "finish_order.h"

#include <stdlib.h>

#include "simulated.h"

/* Changes of grit that are followed. */
enum { MOST_CHANGES = 8 };

void cg_finish_order_bands(const struct cg_case *c, double oil_needed,
                           struct cg_finish_order *order)
{
    const struct cg_finish_case *finish = &c->bore.finish;
    double per_oil = 2.0 / CG_FINISH_USUAL_VALLEYS;
    order->rpk = (struct cg_band){0.0, CG_FINISH_MOST_RPK};
    order->rk = (struct cg_band){0.0, CG_FINISH_MOST_RK};
    order->mr1 = (struct cg_band){0.0, CG_ORDER_MOST_MR1};
    order->mr2 =
        (struct cg_band){CG_FINISH_LEAST_MR2, 1.0 - CG_FINISH_USUAL_VALLEYS};
    order->oil = (struct cg_band){oil_needed, CG_FINISH_AMPLE * oil_needed};
    order->rvk =
        (struct cg_band){per_oil * order->oil.low, per_oil * order->oil.high};
    order->crosshatch_deg = finish->crosshatch_deg;
    order->base_grit = finish->base_grit;
    order->plateau_grit = finish->plateau_grit;
}

/* What the stones of a case leave, measured as `finish` measures it. */
static enum cg_status simulate(const struct cg_case *c, unsigned long seed,
                               struct cg_finish_verdict *verdict,
                               struct cg_error *error)
{
    struct cg_core core;
    bool bends;
    enum cg_status status = cg_simulated_core(c, seed, &core, &bends, error);
    if (status == CG_OK)
        cg_finish_hold(c, &core, bends, verdict);
    return status;
}

/* Takes the first grit that the advice names; false: it names none. */
static bool change_stones(const struct cg_finish_verdict *verdict,
                          struct cg_finish_case *finish)
{
    for (int i = 0; i < verdict->advices; i++) {
        const struct cg_finish_advice *advice = &verdict->advice[i];
        bool base = advice->change == CG_BASE_COARSER ||
                    advice->change == CG_BASE_FINER;
        if (advice->grit == 0)
            continue;
        if (base)
            finish->base_grit = advice->grit;
        else
            finish->plateau_grit = advice->grit;
        return true;
    }
    return false;
}

enum cg_status cg_finish_order_find(const struct cg_case *c, unsigned long seed,
                                    struct cg_finish_order *order,
                                    struct cg_error *error)
{
    struct cg_case *stones = malloc(sizeof *stones);
    if (stones == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "finish: out of memory");
    *stones = *c;
    enum cg_status status = cg_finish_need(c, &order->need, error);
    bool changed = true;
    for (int i = 0; changed && status == CG_OK; i++) {
        status = simulate(stones, seed, &order->need, error);
        changed = status == CG_OK && i < MOST_CHANGES &&
                  change_stones(&order->need, &stones->bore.finish);
    }
    if (status == CG_OK) {
        cg_finish_order_bands(stones, order->need.oil_needed, order);
        order->passes = cg_finish_passes(&order->need);
    }
    free(stones);
    return status;
}
