#include "bore_finish.h"

#include <math.h>
#include <stdlib.h>

#include "constants.h"
#include "cycle.h"
#include "grit.h"
#include "operating.h"

static enum cg_status find_fuel(const struct cg_case *c,
                                struct cg_finish_verdict *verdict,
                                struct cg_error *error)
{
    struct cg_operating full = cg_operating_full(c);
    struct cg_cycle_input input;
    enum cg_status status = cg_operating_cycle_input(c, &full, &input, error);
    if (status != CG_OK)
        return status;
    /* Walls do not change what is breathed, so usual ones will do. */
    input.head_temperature = 450.0;
    input.piston_temperature = 500.0;
    input.liner_temperature = 420.0;
    struct cg_cycle *cycle = malloc(sizeof *cycle);
    if (cycle == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "cycle: out of memory");
    status = cg_cycle_run(&input, cycle, error);
    if (status == CG_OK) {
        double area = CG_PI * c->engine.bore * c->engine.stroke;
        verdict->fuel_flow = cycle->fuel_mass * 0.5 * c->engine.speed *
                             (double)c->engine.cylinders;
        verdict->fuel_per_area = cycle->fuel_mass / input.fuel->density / area;
    }
    free(cycle);
    return status;
}

/* A change already advised is not asked for twice. */
static void advise(struct cg_finish_verdict *verdict,
                   enum cg_honing_change change, enum cg_finish_reason reason,
                   int grit)
{
    for (int i = 0; i < verdict->advices; i++)
        if (verdict->advice[i].change == change)
            return;
    verdict->advice[verdict->advices++] =
        (struct cg_finish_advice){change, reason, grit};
}

/* The class for grooves `factor` times as deep, if it is another. */
static int coarser_than(int grit, double factor)
{
    double grain = cg_grit_grain(grit);
    int class = cg_grit_at_least(fmax(factor, 1.0 + 1e-6) * grain);
    return class < grit ? class : 0;
}

static int finer_than(int grit, double factor)
{
    double grain = cg_grit_grain(grit);
    int class = cg_grit_at_most(fmin(factor, 1.0 - 1e-6) * grain);
    return class > grit ? class : 0;
}

static void advise_oil(const struct cg_finish_case *finish,
                       const struct cg_core *core,
                       struct cg_finish_verdict *verdict)
{
    double factor = verdict->oil_needed / verdict->oil_held;
    if (verdict->oil_held > CG_FINISH_AMPLE * verdict->oil_needed) {
        /* the finer class must still hold what is needed */
        double grain = factor * cg_grit_grain(finish->base_grit);
        int class = cg_grit_at_least(grain);
        advise(verdict, CG_BASE_FINER, CG_FINISH_DEEP,
               class > finish->base_grit ? class : 0);
    } else if (!verdict->holds &&
               core->rvk * CG_FINISH_USUAL_VALLEYS / 2.0 >= verdict->oil_needed) {
        if (verdict->plateau) /* else the plateau stage is still to come */
            advise(verdict, CG_PLATEAU_SHORTER, CG_FINISH_WORN, 0);
    } else if (!verdict->holds) {
        advise(verdict, CG_BASE_COARSER, CG_FINISH_SHALLOW,
               coarser_than(finish->base_grit, factor));
    }
}

/* A base stage still wants more strokes.  Otherwise the plateau is there, and
 * may be rough in itself. */
static void advise_plateau(const struct cg_finish_case *finish,
                           const struct cg_core *core,
                           struct cg_finish_verdict *verdict)
{
    bool shorter =
        verdict->advices > 0 && verdict->advice[0].change == CG_PLATEAU_SHORTER;
    int finer =
        finer_than(finish->plateau_grit, fmin(CG_FINISH_MOST_RK / core->rk,
                                              CG_FINISH_MOST_RPK / core->rpk));
    if (!verdict->bends)
        advise(verdict, CG_PLATEAU_LONGER, CG_FINISH_STRAIGHT, 0);
    if (core->rk > CG_FINISH_MOST_RK)
        advise(verdict, verdict->plateau ? CG_PLATEAU_FINER : CG_PLATEAU_LONGER,
               CG_FINISH_ROUGH, verdict->plateau ? finer : 0);
    if (core->rpk > CG_FINISH_MOST_RPK)
        advise(verdict, shorter ? CG_PLATEAU_FINER : CG_PLATEAU_LONGER,
               CG_FINISH_PEAKS, shorter ? finer : 0);
    if (core->mr2 < CG_FINISH_LEAST_MR2 && !shorter)
        advise(verdict, CG_PLATEAU_LONGER, CG_FINISH_BARE, 0);
}

bool cg_finish_plateau(const struct cg_core *core, bool bends)
{
    bool base_still = core->rk > CG_FINISH_MOST_RK && core->rk > core->rvk;
    return bends && !base_still;
}

bool cg_finish_passes(const struct cg_finish_verdict *verdict)
{
    return verdict->holds && verdict->plateau;
}

void cg_finish_advise(const struct cg_case *c, const struct cg_core *core,
                      struct cg_finish_verdict *verdict)
{
    verdict->advices = 0;
    advise_oil(&c->bore.finish, core, verdict);
    advise_plateau(&c->bore.finish, core, verdict);
}

enum cg_status cg_finish_need(const struct cg_case *c,
                              struct cg_finish_verdict *verdict,
                              struct cg_error *error)
{
    const struct cg_finish_case *finish = &c->bore.finish;
    *verdict = (struct cg_finish_verdict){0};
    enum cg_status status = find_fuel(c, verdict, error);
    if (status == CG_OK)
        verdict->oil_needed =
            finish->reference_oil *
            pow(verdict->fuel_per_area / finish->reference_fuel,
                finish->fuel_exponent);
    return status;
}

void cg_finish_hold(const struct cg_case *c, const struct cg_core *core,
                    bool bends, struct cg_finish_verdict *verdict)
{
    verdict->oil_held = core->oil;
    verdict->holds = verdict->oil_held >= verdict->oil_needed;
    verdict->bends = bends;
    verdict->plateau = cg_finish_plateau(core, bends);
    cg_finish_advise(c, core, verdict);
}

enum cg_status cg_finish_judge(const struct cg_case *c,
                               const struct cg_core *core, bool bends,
                               struct cg_finish_verdict *verdict,
                               struct cg_error *error)
{
    enum cg_status status = cg_finish_need(c, verdict, error);
    if (status == CG_OK)
        cg_finish_hold(c, core, bends, verdict);
    return status;
}
