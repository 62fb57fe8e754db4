#include "answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_cdf.h>

#include "case_check.h"
#include "growth.h"
#include "less_boost.h"
#include "spread.h"

double cg_shop_rule(double bore, double boost)
{
    static const double at[] = {0.0, 1e5, 2e5, CG_SHOP_RULE_END};
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

static double need_of(const struct cg_gap_sum *sum)
{
    return sum->closure + sum->spread + sum->residual;
}

static struct cg_ring_advice advise(const struct cg_case *c,
                                    enum cg_ring_place place, double rule,
                                    double need, double earned)
{
    return cg_advise(&(struct cg_advice_says){
        .need = need,
        .rule = rule,
        .maker = c->ring[place].maker_minimum,
        .earned = earned,
        .most = cg_case_gap_most(c, place),
        .past_rule = place == CG_RING_TOP && c->charge.boost > CG_SHOP_RULE_END,
        .step = c->margin.filing_step});
}

/* The second ring's own safe gap; or the wider one that gas between the rings
 * asks for, up to the trade's rule; or, while that is not known, the rule. */
static void set_second(const struct cg_case *c, struct cg_answer *answer)
{
    const struct cg_margin_case *margin = &c->margin;
    struct cg_gap_sum own = answer->duty[answer->hardest_second].second;
    double step = margin->filing_step;
    double most =
        step * floor(cg_case_gap_most(c, CG_RING_SECOND) / step + 1e-9);
    answer->second_rule_top = cg_answer_top_gap(answer);
    double ruled = cg_advice_second_rule(answer->second_rule_top,
                                         margin->second_factor, most);
    answer->second_rule = cg_gap_round_up(ruled, step);
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
    bool gas = answer->second_reason == CG_SECOND_SEATING ||
               answer->second_reason == CG_SECOND_BEST;
    answer->file_to_second =
        advise(c, CG_RING_SECOND, ruled,
               gas ? answer->second.cold_gap : need_of(&own), NAN);
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
                  double temperature, const struct cg_gap_sum *sum,
                  const struct cg_normals *laws,
                  const struct cg_ring_advice *advice,
                  struct cg_verdict *verdict)
{
    const struct cg_ring_case *ring = &c->ring[place];
    verdict->need = need_of(sum);
    verdict->given = !isnan(ring->cold_gap);
    verdict->gap = verdict->given                   ? ring->cold_gap
                   : advice->from == CG_ADVICE_NONE ? sum->cold_gap
                                                    : advice->file_to;
    verdict->hot_gap_min = verdict->gap - sum->closure;
    verdict->fits =
        cg_advice_fits(verdict->gap, verdict->need, advice->at_least);
    verdict->most = cg_case_gap_most(c, place);
    verdict->beyond = advice->from == CG_ADVICE_NONE &&
                      !(verdict->given && verdict->fits != CG_FITS_NOT);
    if (verdict->beyond)
        verdict->fits = CG_FITS_NOT;
    verdict->safe = verdict->fits != CG_FITS_NOT;
    verdict->chance_less =
        cg_normals_above(laws, verdict->hot_gap_min - c->margin.residual);
    verdict->chance_touch = cg_normals_above(laws, verdict->hot_gap_min);
    verdict->touches = verdict->hot_gap_min < 0.0;
    if (verdict->touches)
        cg_gap_butting(
            c->engine.bore, ring->depth,
            cg_curve_at(&c->ring_material[place].modulus, temperature),
            -verdict->hot_gap_min, ring->pressure, &verdict->butting);
}

/* Of the points that the duty comes by, its start and rated full load; of a
 * map, of the places that the duty comes by. */
static struct cg_knock_seen worst_knock(const struct cg_duty_run *run)
{
    struct cg_knock_seen worst = {0.0, 0.0, 0.0, 0.0};
    size_t count = run->mapped ? run->places : run->points;
    for (size_t i = 0; i < count; i++) {
        struct cg_point_seen seen = cg_duty_run_see(run, i);
        struct cg_operating at = cg_duty_run_operating(run, i);
        if (seen.knock_integral > worst.integral)
            worst = (struct cg_knock_seen){seen.knock_integral, seen.burn50_deg,
                                           at.speed, at.load};
    }
    return worst;
}

enum cg_status cg_answer_settled_closure(const struct cg_case *c,
                                         const struct cg_duty_run *run,
                                         const double *settled, double *closure,
                                         struct cg_error *error)
{
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
    const struct cg_duty_answer *hard = &answer->duty[answer->hardest_second];
    struct cg_gap_sum need = hard->second;
    set_second(c, answer);
    judge(c, CG_RING_SECOND, hard->extremes.ring_second_max, &need, &hard->laws,
          &answer->file_to_second, &answer->second_verdict);
}

/* The duty asked for is the first of those to survive. */
static void take_own(const struct cg_case *c, struct cg_answer *answer)
{
    struct cg_duty_answer *own = &answer->duty[0];
    memcpy(own->name, c->duty.name, sizeof own->name);
    own->extremes = answer->extremes;
    own->laws = answer->laws;
    own->sigma = answer->sigma;
    own->judged = true;
    own->block = answer->block;
    own->top = answer->top;
    own->second =
        add_up(answer->extremes.second_closure, answer->top.spread, &c->margin);
    if (answer->duties == 0)
        answer->duties = 1;
}

static void find_hardest(struct cg_answer *answer)
{
    const struct cg_duty_answer *duty = answer->duty;
    answer->hardest = answer->hardest_second = 0;
    for (size_t i = 1; i < answer->duties; i++) {
        if (need_of(&duty[i].top) > need_of(&duty[answer->hardest].top))
            answer->hardest = i;
        if (need_of(&duty[i].second) >
            need_of(&duty[answer->hardest_second].second))
            answer->hardest_second = i;
    }
}

double cg_answer_most_closure(const struct cg_answer *answer)
{
    double most = -INFINITY;
    for (size_t i = 0; i < answer->duties; i++)
        most = fmax(most, answer->duty[i].extremes.closure);
    return most;
}

void cg_answer_add_up(const struct cg_case *c, double spread,
                      struct cg_answer *answer)
{
    spread = fmax(spread, cg_evidence_allowance(c, answer->extremes.closure));
    answer->shop_rule = cg_shop_rule(c->engine.bore, c->charge.boost);
    answer->top = add_up(answer->extremes.closure, spread, &c->margin);
    take_own(c, answer);
    find_hardest(answer);
    const struct cg_duty_answer *hard = &answer->duty[answer->hardest];
    answer->earned = cg_evidence_earned(c, cg_answer_most_closure(answer),
                                        need_of(&hard->top));
    answer->file_to_top = advise(c, CG_RING_TOP, answer->shop_rule,
                                 need_of(&hard->top), answer->earned.gap);
    judge(c, CG_RING_TOP, hard->extremes.ring_at, &hard->top, &hard->laws,
          &answer->file_to_top, &answer->verdict);
    add_up_second(c, answer);
}

static double spread_of(const struct cg_case *c, const struct cg_normals *laws)
{
    return fmax(cg_normals_quantile(laws, c->margin.risk), 0.0);
}

size_t cg_answer_own_duties(const struct cg_answer *answer)
{
    return isnan(answer->less_boost) ? answer->duties : answer->duties - 1;
}

const struct cg_duty_case *cg_answer_duty(const struct cg_case *c,
                                          const struct cg_answer *answer,
                                          size_t i)
{
    size_t of = i < cg_answer_own_duties(answer) ? i : answer->less_of;
    return of == 0 ? &c->duty : &c->survive.duty[of - 1];
}

/* One more duty to survive, alone, with `boost`; known: a run of the case with
 * that boost; NULL, with less, of which no error of its course is told. */
static enum cg_status find_duty(const struct cg_case *c,
                                const struct cg_duty_run *known,
                                const struct cg_duty_case *duty, double boost,
                                struct cg_duty_answer *out,
                                struct cg_error *error)
{
    struct cg_case alone = *c;
    struct cg_answer found;
    struct cg_duty_run *run = NULL;
    memset(&found, 0, sizeof found);
    alone.duty = *duty;
    alone.survive.duties = 0;
    alone.charge.boost = boost;
    enum cg_status status = cg_duty_run_create_like(&alone, known, &run, error);
    if (status == CG_OK)
        status = cg_answer_extremes(&alone, run, 0.0, NULL, NULL,
                                    &found.extremes, NULL, error);
    if (status == CG_OK)
        status = cg_spread_find(&alone, run, &found, error);
    if (status == CG_OK) {
        cg_limits_judge(&alone, run, &found.extremes, &out->limits);
        if (known != NULL)
            status = cg_course_error_find(&alone, run, &out->course, error);
    }
    cg_duty_run_free(run);
    if (status != CG_OK)
        return status;
    double spread = fmax(spread_of(c, &found.laws),
                         cg_evidence_allowance(c, found.extremes.closure));
    *out = (struct cg_duty_answer){
        .extremes = found.extremes,
        .top = add_up(found.extremes.closure, spread, &c->margin),
        .second = add_up(found.extremes.second_closure, spread, &c->margin),
        .laws = found.laws,
        .sigma = found.sigma,
        .limits = out->limits,
        .course = out->course,
        .judged = c->survive.named,
        .block = found.block};
    memcpy(out->name, duty->name, sizeof out->name);
    return CG_OK;
}

/* The duty that closes most, with the boost that may close more. */
static enum cg_status find_less(const struct cg_case *c,
                                const struct cg_duty_run *run,
                                struct cg_answer *answer,
                                struct cg_error *error)
{
    struct cg_duty_answer *less = &answer->duty[answer->duties];
    double boost, most = answer->extremes.closure;
    enum cg_status status = cg_less_boost_find(c, run, &boost, error);
    if (status != CG_OK || isnan(boost))
        return status;
    for (size_t i = 1; i < answer->duties; i++)
        if (answer->duty[i].extremes.closure > most) {
            most = answer->duty[i].extremes.closure;
            answer->less_of = i;
        }
    status = find_duty(c, NULL, cg_answer_duty(c, answer, answer->less_of),
                       boost, less, error);
    if (status != CG_OK)
        return status;
    strcpy(less->name, CG_LESS_BOOST_NAME);
    answer->less_boost = boost;
    answer->duties++;
    return CG_OK;
}

static enum cg_status find_others(const struct cg_case *c,
                                  const struct cg_duty_run *run,
                                  struct cg_answer *answer,
                                  struct cg_error *error)
{
    enum cg_status status = CG_OK;
    answer->duties = 1;
    answer->less_boost = NAN;
    for (int i = 0; i < c->survive.duties && status == CG_OK; i++)
        status = find_duty(c, run, &c->survive.duty[i], c->charge.boost,
                           &answer->duty[answer->duties++], error);
    if (status == CG_OK && answer->duties > 1)
        status = find_less(c, run, answer, error);
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
        status = cg_spread_find(c, run, answer, error);
    if (status == CG_OK)
        status = find_others(c, run, answer, error);
    if (status == CG_OK)
        status = cg_answer_settled_closure(c, run,
                                           run->point[run->full_load].settled,
                                           &answer->settled_closure, error);
    if (status == CG_OK)
        status = cg_course_error_find(c, run, &answer->duty[0].course, error);
    if (status != CG_OK)
        return status;

    const struct cg_operating_point *full = &run->point[run->full_load];
    /* rounding leaves a little less than none at a risk of a half */
    answer->quantile = fmax(gsl_cdf_ugaussian_Qinv(c->margin.risk), 0.0);
    answer->performance = full->performance;
    answer->balance = cg_heat_balance_at(c, run->thermal, full);
    answer->knock = worst_knock(run);
    cg_limits_judge(c, run, &answer->extremes, &answer->duty[0].limits);
    for (int r = 0; r < CG_RINGS; r++)
        answer->film[r] = full->film[r];
    for (int r = 0; r < CG_RING_OIL; r++)
        answer->film_mean[r] = full->film_mean[r];
    answer->duration = run->duration;
    set_skirt(c, answer);
    cg_answer_add_up(c, spread_of(c, &answer->laws), answer);
    return CG_OK;
}

size_t cg_answer_past(const struct cg_answer *answer)
{
    size_t i = 0;
    while (i < answer->duties &&
           !(answer->duty[i].judged &&
             cg_limits_first(&answer->duty[i].limits) != CG_PAST_LIMITS))
        i++;
    return i;
}

struct cg_band cg_answer_block(const struct cg_answer *answer)
{
    struct cg_band need = {NAN, NAN};
    for (size_t i = 0; i < answer->duties; i++) {
        const struct cg_duty_answer *duty = &answer->duty[i];
        double rest = duty->top.spread + duty->top.residual;
        need.low = fmax(need.low, duty->block.low + rest);
        need.high = fmax(need.high, duty->block.high + rest);
    }
    return need;
}

bool cg_answer_stands(const struct cg_answer *answer)
{
    const struct cg_verdict *top = &answer->verdict,
                            *second = &answer->second_verdict;
    const struct cg_skirt_answer *skirt = &answer->skirt;
    return top->fits == CG_FITS && second->fits == CG_FITS &&
           cg_answer_past(answer) == answer->duties &&
           (skirt->taken || !skirt->too_tight);
}

double cg_answer_top_gap(const struct cg_answer *answer)
{
    const struct cg_verdict *own = &answer->verdict;
    if (own->given && own->fits == CG_FITS)
        return own->gap;
    return answer->file_to_top.from == CG_ADVICE_NONE
               ? cg_answer_needed(answer)->cold_gap
               : answer->file_to_top.file_to;
}

const struct cg_gap_sum *cg_answer_needed(const struct cg_answer *answer)
{
    return &answer->duty[answer->hardest].top;
}

enum cg_status cg_answer_second(const struct cg_case *c,
                                struct cg_duty_run *run,
                                struct cg_answer *answer,
                                struct cg_error *error)
{
    struct cg_seal *seal;
    double own = need_of(&answer->duty[answer->hardest_second].second);
    enum cg_status status =
        cg_seal_create(c, run, cg_second_gap_point(run), &seal, error);
    if (status == CG_NO_MEMORY)
        return status;
    memset(&answer->seating, 0, sizeof answer->seating);
    if (status == CG_OK) {
        cg_second_gap_find(seal, &cg_pack_control_quick,
                           cg_answer_top_gap(answer), fmax(own, 0.0),
                           &answer->seating);
        cg_seal_free(seal);
    }
    add_up_second(c, answer); /* the top ring's verdict may be a sampled one */
    return CG_OK;
}
