#include "answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_cdf.h>

#include "case_check.h"
#include "evidence_gap.h"
#include "growth.h"
#include "spread.h"

double cg_shop_rule(double bore, double boost)
{
    static const double at[] = {0.0, 1e5, 2e5, 3e5};
    static const double ratio[] = {0.0040, 0.0050, 0.0065, 0.0075};
    if (!(boost > 0.0))
        return ratio[0] * bore;
    for (int i = 1; i < 4; i++)
        if (boost < at[i])
            return bore * (ratio[i - 1] + (ratio[i] - ratio[i - 1]) *
                                              (boost - at[i - 1]) /
                                              (at[i] - at[i - 1]));
    return ratio[3] * bore;
}

/* closure + spread + residual, rounded up to the filing step. */
static struct cg_gap_sum add_up(double closure, double spread,
                                const struct cg_margin_case *margin)
{
    double exact = fmax(closure + spread + margin->residual, 0.0);
    double rounded = cg_gap_round_up(exact, margin->filing_step);
    return (struct cg_gap_sum){rounded, closure, spread, margin->residual,
                               rounded - (closure + spread + margin->residual)};
}

/* The top gap that the trade's rule for the second goes by: the one that will
 * be in the engine, or the one advised. */
static double ruling_top(const struct cg_answer *answer)
{
    const struct cg_verdict *own = &answer->verdict;
    double top =
        answer->seating.gap > 0.0 ? answer->seating.top : answer->top.cold_gap;
    return own->given && own->safe ? top : fmax(top, answer->shop_rule);
}

/* The second ring's own safe gap; or the wider one that gas between the rings
 * asks for, up to the trade's rule; or, while that is not known, the rule. */
static void set_second(const struct cg_case *c, struct cg_answer *answer)
{
    const struct cg_margin_case *margin = &c->margin;
    struct cg_gap_sum own =
        add_up(answer->extremes.second_closure, answer->top.spread, margin);
    answer->second_rule_top = ruling_top(answer);
    double ruled = margin->second_factor * answer->second_rule_top;
    double most = cg_case_gap_most(c, CG_RING_SECOND), step = margin->filing_step;
    answer->second_rule = fmin(cg_gap_round_up(ruled, step),
                               step * floor(most / step + 1e-9));
    answer->second = own;
    answer->second_reason = CG_SECOND_OWN;
    double wider = answer->second_rule;
    enum cg_second_reason reason = CG_SECOND_RULE;
    if (answer->seating.gap > answer->second_rule * (1.0 + 1e-9)) {
        reason = CG_SECOND_LIMITED;
    } else if (answer->seating.gap > 0.0) {
        wider = answer->seating.gap;
        reason = answer->seating.reached ? CG_SECOND_SEATING : CG_SECOND_BEST;
    }
    if (wider > own.cold_gap * (1.0 + 1e-9)) {
        answer->second.rounding += wider - own.cold_gap;
        answer->second.cold_gap = wider;
        answer->second_reason = reason;
    } else if (reason == CG_SECOND_BEST || reason == CG_SECOND_LIMITED) {
        answer->second_reason = reason;
    }
}

static void set_skirt(const struct cg_case *c, struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    const struct cg_band *trade = &c->piston_material.skirt_per_bore;
    struct cg_skirt_answer *out = &answer->skirt;
    out->closure = e->skirt.closure;
    out->spread = answer->quantile * out->sigma;
    out->give =
        cg_skirt_overlap(c, e->skirt.temperature, c->margin.skirt_pressure);
    double exact = fmax(out->closure + out->spread - out->give, 0.0);
    out->cold = cg_gap_round_up(exact, c->margin.filing_step);
    out->rounding = out->cold - (out->closure + out->spread - out->give);
    out->given = c->piston.skirt_clearance;
    out->taken = c->piston.skirt_taken;
    out->enough = out->given >= exact * (1.0 - 1e-9);
    out->pressure = cg_skirt_pressure(c, e->skirt.temperature,
                                      fmax(-e->clearance.skirt, 0.0));
    out->too_tight = out->pressure > c->margin.skirt_pressure;
    out->trade = (struct cg_band){trade->low * c->engine.bore,
                                  trade->high * c->engine.bore};
}

/* What a given gap of that ring leaves, against the need of its sum. */
static void judge(const struct cg_case *c, enum cg_ring_place place,
                  double temperature, double closure,
                  const struct cg_gap_sum *sum, const struct cg_normals *laws,
                  struct cg_verdict *verdict)
{
    const struct cg_ring_case *ring = &c->ring[place];
    struct cg_normals off = *laws;
    for (size_t i = 0; i < off.parts; i++)
        off.sd[i] = fmax(off.sd[i], 1e-12);
    verdict->need = sum->closure + sum->spread + sum->residual;
    verdict->given = !isnan(ring->cold_gap);
    verdict->gap = verdict->given ? ring->cold_gap : sum->cold_gap;
    verdict->hot_gap_min = verdict->gap - closure;
    bool enough = verdict->gap >= verdict->need * (1.0 - 1e-9);
    verdict->most = cg_case_gap_most(c, place);
    verdict->beyond = sum->cold_gap > verdict->most * (1.0 + 1e-9) &&
                      !(verdict->given && enough);
    verdict->safe = enough && !verdict->beyond;
    verdict->chance_less =
        cg_normals_above(&off, verdict->hot_gap_min - c->margin.residual);
    verdict->chance_touch = cg_normals_above(&off, verdict->hot_gap_min);
    verdict->touches = verdict->hot_gap_min < 0.0;
    if (verdict->touches)
        cg_gap_butting(
            c->engine.bore, ring->depth,
            cg_curve_at(&c->ring_material[place].modulus, temperature),
            -verdict->hot_gap_min, ring->pressure, &verdict->butting);
}

static struct cg_knock_seen worst_knock(const struct cg_duty_run *run)
{
    struct cg_knock_seen worst = {0.0, 0.0, 0.0, 0.0};
    for (size_t i = 0; i < run->points; i++) {
        const struct cg_operating_point *point = &run->point[i];
        if (point->performance.knock_integral > worst.integral)
            worst = (struct cg_knock_seen){
                point->performance.knock_integral,
                point->performance.burn50_deg, point->operating.speed,
                point->operating.load};
    }
    return worst;
}

/* Closure with everything settled at rated speed and full load. */
static enum cg_status settled_closure(const struct cg_case *c,
                                      const struct cg_duty_run *run,
                                      double *closure, struct cg_error *error)
{
    const double *settled = run->point[run->full_load].settled;
    double *strain = malloc(run->thermal->bore.grid.stations * sizeof *strain);
    if (strain == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    cg_growth_bore(c, run->thermal, settled, strain);
    double ring = cg_growth_ring(c, run->thermal, settled, CG_RING_TOP);
    *closure = cg_growth_closure(c, run->thermal, strain, ring, CG_RING_TOP,
                                 c->margin.residual)
                   .closure;
    free(strain);
    return CG_OK;
}

static void add_up_second(const struct cg_case *c, struct cg_answer *answer)
{
    set_second(c, answer);
    judge(c, CG_RING_SECOND, answer->extremes.ring_second_max,
          answer->extremes.second_closure, &answer->second, &answer->laws,
          &answer->second_verdict);
}

void cg_answer_add_up(const struct cg_case *c, double spread,
                      struct cg_answer *answer)
{
    spread = fmax(spread, cg_evidence_allowance(c, answer->extremes.closure));
    answer->top = add_up(answer->extremes.closure, spread, &c->margin);
    judge(c, CG_RING_TOP, answer->extremes.ring_at, answer->extremes.closure,
          &answer->top, &answer->laws, &answer->verdict);
    add_up_second(c, answer);
}

static enum cg_status find_spread(const struct cg_case *c,
                                  const struct cg_duty_run *run,
                                  struct cg_answer *answer,
                                  struct cg_error *error)
{
    struct cg_spread *spread = NULL;
    struct cg_duty_run *workspace = NULL;
    enum cg_status status =
        cg_spread_create(c, run, answer->extremes.closure, &spread, error);
    if (status == CG_OK)
        status = cg_spread_workspace(spread, &workspace, error);
    if (status == CG_OK)
        status = cg_spread_first_order(spread, workspace, answer, error);
    if (status == CG_OK)
        status = cg_spread_correlations(spread, workspace, answer, error);
    cg_duty_run_free(workspace);
    cg_spread_free(spread);
    return status;
}

enum cg_status cg_answer_find(const struct cg_case *c, struct cg_duty_run *run,
                              double interval, cg_instant_observer observer,
                              void *context, struct cg_answer *answer,
                              struct cg_error *error)
{
    memset(answer, 0, sizeof *answer);
    enum cg_status status =
        cg_answer_extremes(c, run, interval, observer, context,
                           &answer->extremes, &answer->ledger, error);
    if (status == CG_OK)
        status = find_spread(c, run, answer, error);
    if (status == CG_OK)
        status = settled_closure(c, run, &answer->settled_closure, error);
    if (status != CG_OK)
        return status;

    const struct cg_operating_point *full = &run->point[run->full_load];
    /* rounding leaves a little less than none at a risk of a half */
    answer->quantile = fmax(gsl_cdf_ugaussian_Qinv(c->margin.risk), 0.0);
    answer->shop_rule = cg_shop_rule(c->engine.bore, c->charge.boost);
    answer->performance = full->performance;
    answer->balance = cg_heat_balance_at(c, run->thermal, full);
    answer->knock = worst_knock(run);
    for (int r = 0; r < CG_RINGS; r++)
        answer->film[r] = full->film[r];
    for (int r = 0; r < CG_RING_OIL; r++)
        answer->film_mean[r] = full->film_mean[r];
    answer->duration = run->duration;
    set_skirt(c, answer);
    cg_answer_add_up(c, fmax(cg_normals_quantile(&answer->laws, c->margin.risk),
                             0.0),
                     answer);
    return CG_OK;
}

bool cg_answer_stands(const struct cg_answer *answer)
{
    const struct cg_verdict *top = &answer->verdict,
                            *second = &answer->second_verdict;
    const struct cg_skirt_answer *skirt = &answer->skirt;
    return top->safe && second->safe && (skirt->taken || !skirt->too_tight);
}

double cg_answer_top_gap(const struct cg_answer *answer)
{
    const struct cg_verdict *own = &answer->verdict;
    return own->given && own->safe ? own->gap : answer->top.cold_gap;
}

enum cg_status cg_answer_second(const struct cg_case *c,
                                struct cg_duty_run *run, double top,
                                struct cg_answer *answer,
                                struct cg_error *error)
{
    struct cg_seal *seal;
    double own = answer->extremes.second_closure + answer->top.spread +
                 c->margin.residual;
    enum cg_status status =
        cg_seal_create(c, run, cg_second_gap_point(run), &seal, error);
    if (status == CG_NO_MEMORY)
        return status;
    memset(&answer->seating, 0, sizeof answer->seating);
    if (status == CG_OK) {
        cg_second_gap_find(seal, top, fmax(own, 0.0), &answer->seating);
        cg_seal_free(seal);
    }
    add_up_second(c, answer); /* the top ring's verdict may be a sampled one */
    return CG_OK;
}
