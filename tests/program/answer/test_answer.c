/* The answer as a whole: that it adds up, keeps its energy, judges a given
 * gap rightly and comes out the same twice, on the shipped engines. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "geometry.h"
#include "growth.h"
#include "history.h"
#include "joint.h"
#include "uncertain.h"

#define IDENTITY "by definition"

static const char *const engines[] = {"boosted_four", "iron_six", "big_eight",
                                      "plain_four"};
static const char *const duties[] = {
    "dyno_pull", "drag_pass",        "road_lap",  "tow_grade",
    "settled",   "cold_start_abuse", "lean_event"};

static struct cg_answer answer_of(const struct cg_case *c)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_answer answer;
    struct cg_error error = {0};
    enum cg_status status =
        cg_answer_find(c, run, 0.0, NULL, NULL, &answer, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_duty_run_free(run);
    return answer;
}

static struct cg_case pull(void)
{
    return case_of(BOOSTED_FOUR, NULL, 0);
}

static void check_sum(const struct cg_gap_sum *sum, double step, bool ruled)
{
    check_within(sum->closure + sum->spread + sum->residual + sum->rounding,
                 sum->cold_gap, 1e-15, IDENTITY);
    check_within(remainder(sum->cold_gap, step), 0.0, 1e-12, IDENTITY);
    if (!ruled)
        check_band(sum->rounding, -1e-12, step, "rounding up to a step");
}

/* Every shipped engine through every shipped duty. */
START_TEST(every_engine_through_every_duty)
{
    char file[256], duty[64];
    const char *const set = duty;
    snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg",
             engines[(size_t)_i / COUNT_OF(duties)]);
    snprintf(duty, sizeof duty, "duty.name=%s",
             duties[(size_t)_i % COUNT_OF(duties)]);
    struct cg_case c = case_of(file, &set, 1);
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer answer;
    struct cg_error error = {0};
    ck_assert_int_eq(
        cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error), CG_OK);

    check_sum(&answer.top, c.margin.filing_step, false);
    check_sum(&answer.second, c.margin.filing_step, true);
    check_within(answer.ledger.residual, 0.0, 1e-9, "first law, the walls");
    for (size_t i = 0; i < run->points; i++)
        check_within(run->point[i].performance.energy_residual, 0.0, 1e-6,
                     "first law, the cycle");
    ck_assert_double_ge(answer.file_to_second.file_to,
                        answer.file_to_top.file_to);
    ck_assert_double_gt(answer.sigma, 0.0);
    check_band(answer.extremes.time, 0.0, run->duration, duty);
    /* what must be in this order in any engine under load */
    ck_assert_double_gt(answer.extremes.crown_max,
                        answer.extremes.groove_top_max);
    ck_assert_double_gt(answer.extremes.groove_top_max,
                        answer.extremes.ring_top_max);
    ck_assert_double_gt(answer.extremes.ring_top_max,
                        answer.extremes.ring_second_max);
    cg_duty_run_free(run);
}
END_TEST

START_TEST(two_runs_are_equal_to_the_bit)
{
    struct cg_case c = pull();
    struct cg_answer a = answer_of(&c), b = answer_of(&c);
    ck_assert_mem_eq(&a.extremes, &b.extremes, sizeof a.extremes);
    ck_assert_mem_eq(&a.top, &b.top, sizeof a.top);
    ck_assert_mem_eq(&a.second, &b.second, sizeof a.second);
    ck_assert_mem_eq(&a.performance, &b.performance, sizeof a.performance);
    ck_assert_mem_eq(&a.ledger, &b.ledger, sizeof a.ledger);
    ck_assert_double_eq(a.sigma, b.sigma);
    for (size_t i = 0; i < a.contributions; i++) {
        ck_assert_str_eq(a.contribution[i].name, b.contribution[i].name);
        ck_assert_double_eq(a.contribution[i].shift, b.contribution[i].shift);
    }
}
END_TEST

/* The run is not changed by having been used. */
START_TEST(a_run_can_be_used_again)
{
    struct cg_case c = pull();
    struct cg_duty_run *run = run_of(&c);
    struct cg_extremes first, again;
    ck_assert_int_eq(cg_answer_extremes(&c, run, 0.0, NULL, NULL, &first,
                                        NULL, NULL), CG_OK);
    ck_assert_int_eq(cg_answer_extremes(&c, run, 0.0, NULL, NULL, &again,
                                        NULL, NULL), CG_OK);
    ck_assert_mem_eq(&first, &again, sizeof first);
    cg_duty_run_free(run);
}
END_TEST

/* Closure, from the temperatures it was found at, by the gap's own formula. */
START_TEST(closure_by_hand)
{
    for (size_t i = 0; i < COUNT_OF(engines); i++) {
        char file[256];
        snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg",
                 engines[i]);
        struct cg_case c = case_of(file, NULL, 0);
        struct cg_extremes e = extremes_of(&c);
        double around = CG_PI * c.engine.bore;
        double ring = cg_material_strain(&c.ring_material[CG_RING_TOP],
                                         e.ring_at);
        double cold = e.closure_then + c.margin.residual;
        /* pi D (1 + e_bore) - (pi D - g)(1 + e_ring), in the plain order */
        double hot = around + e.bore_growth - (around - cold) * (1.0 + ring);
        check_within(hot, c.margin.residual, 1e-12, "geometry");
        check_within(e.ring_growth, (around - cold) * ring, 1e-12, "geometry");
        check_within(e.closure_then, e.ring_growth - e.bore_growth, 1e-12,
                     "geometry");
    }
}
END_TEST

/* Made-up bore strains with the least place anywhere, also at either turn:
 * against a plain search in small steps. */
START_TEST(closure_by_search)
{
    struct cg_case c = pull();
    struct cg_duty_run *run = run_of(&c);
    const struct cg_thermal *thermal = run->thermal;
    size_t stations = thermal->bore.grid.stations;
    double *strain = malloc(stations * sizeof *strain);
    ck_assert_ptr_nonnull(strain);
    const double ring = 2.1e-3, residual = 0.07e-3;
    for (double phase = 0.0; phase < 6.3; phase += 0.37)
        for (int place = CG_RING_TOP; place <= CG_RING_SECOND; place++) {
            for (size_t s = 0; s < stations; s++)
                strain[s] = 1e-3 + 4e-4 * sin(phase + 0.13 * (double)s);
            struct cg_closure got = cg_growth_closure(
                &c, thermal, strain, ring, (enum cg_ring_place)place,
                residual);
            double top = cg_ring_offset(&c, (enum cg_ring_place)place) +
                         0.5 * c.ring[place].width;
            double most = -INFINITY, where = 0.0, at_top = 0.0;
            for (int i = 0; i <= 100000; i++) {
                double depth = top + c.engine.stroke * i / 100000;
                double e = cg_growth_at_depth(thermal, strain, depth);
                double cold =
                    (residual + CG_PI * c.engine.bore * (ring - e)) /
                    (1.0 + ring);
                if (i == 0)
                    at_top = cold - residual;
                if (cold - residual > most) {
                    most = cold - residual;
                    where = depth;
                }
            }
            check_within(got.closure, most, 5e-10, "search");
            check_within(got.depth, where, 2e-6, "search");
            check_within(got.at_top, at_top, 1e-12, "search");
        }
    free(strain);
    cg_duty_run_free(run);
}
END_TEST

/* An iron bore with no block at one temperature per station: the bore's
 * growth must be expansion times rise of the area-mean temperature. */
START_TEST(bore_growth_by_hand)
{
    struct cg_case c = case_of(PLAIN_FOUR, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    const struct cg_operating_point *full = &run->point[run->full_load];
    size_t stations = run->thermal->bore.grid.stations;
    double *strain = malloc(stations * sizeof *strain);
    ck_assert_ptr_nonnull(strain);
    cg_growth_bore(&c, run->thermal, full->settled, strain);
    for (size_t s = 0; s < stations; s++) {
        double sum = 0.0, area = 0.0;
        size_t nodes = run->thermal->bore.liner_nodes;
        double inner = 0.5 * c.engine.bore, wall = c.bore.wall_thickness;
        for (size_t i = 0; i < nodes; i++) {
            /* nodes on the faces stand for half a cell */
            double cell = wall / (double)(nodes - 1);
            double at = inner + cell * (double)i;
            double from = fmax(at - 0.5 * cell, inner);
            double to = fmin(at + 0.5 * cell, inner + wall);
            double part = to * to - from * from;
            sum += part *
                   full->settled[cg_thermal_liner_node(run->thermal, s, i)];
            area += part;
        }
        check_close(strain[s],
                    cg_material_strain(&c.bore_material, sum / area), 1e-9,
                    "free hollow cylinder, Timoshenko and Goodier");
    }
    free(strain);
    cg_duty_run_free(run);
}
END_TEST

START_TEST(spread_is_the_root_of_summed_squares)
{
    struct cg_case c = pull();
    memset(c.correlation, 0, sizeof c.correlation); /* squares add so alone */
    c.uncertainty.other_laws = false;
    struct cg_answer answer = answer_of(&c);
    double variance = 0.0, share = 0.0;
    for (size_t i = 0; i < answer.contributions; i++) {
        const struct cg_contribution *at = &answer.contribution[i];
        variance += at->shift * at->shift;
        share += at->share;
        check_close(at->share * answer.sigma * answer.sigma,
                    at->shift * at->shift, 1e-12, IDENTITY);
        if (i > 0)
            ck_assert_double_le(fabs(at->shift), fabs(at[-1].shift));
    }
    check_close(answer.sigma, sqrt(variance), 1e-12, "the root of the sum");
    check_close(share, 1.0, 1e-12, IDENTITY);
}
END_TEST

/* One input alone: sigma is its shift, and the rest are gone. */
START_TEST(one_uncertain_input_alone)
{
    struct cg_case c = pull();
    struct cg_answer all = answer_of(&c);
    double flank = 0.0, spread = c.uncertainty.flank;
    for (size_t i = 0; i < all.contributions; i++)
        if (strcmp(all.contribution[i].name, "flank") == 0)
            flank = all.contribution[i].shift;
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    struct cg_answer none = answer_of(&c);
    ck_assert_double_eq(none.sigma, 0.0);
    ck_assert_double_eq(none.top.spread, 0.0);
    ck_assert_double_eq(none.top.closure, all.top.closure);
    c.uncertainty.flank = spread;
    struct cg_answer one = answer_of(&c);
    check_close(one.sigma, fabs(flank), 1e-12, IDENTITY);
    ck_assert_str_eq(one.contribution[0].name, "flank");
    check_close(one.contribution[0].share, 1.0, 1e-12, IDENTITY);
}
END_TEST

/* Measuring errors act by plain geometry: pi for the bore, 1 for the gap. */
START_TEST(measuring_errors_by_geometry)
{
    struct cg_case c = pull();
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    c.uncertainty.bore_size = 0.0071e-3;
    c.uncertainty.gap_measure = 0.0137e-3;
    struct cg_answer answer = answer_of(&c);
    check_close(answer.sigma,
                hypot(CG_PI * 0.0071e-3, 0.0137e-3), 1e-12, "geometry");
}
END_TEST

static const struct {
    double risk, quantile;
} quantiles[] = {
    {0.5, 0.0},       {0.1, 1.281552},   {0.05, 1.644854},
    {0.01, 2.326348}, {0.001, 3.090232}, {1e-6, 4.753424},
};

START_TEST(tighter_risk_wants_a_larger_gap)
{
    struct cg_case c = pull();
    c.uncertainty.other_laws = false; /* one normal, not a mixture */
    double before = 0.0;
    for (size_t i = 0; i < COUNT_OF(quantiles); i++) {
        c.margin.risk = quantiles[i].risk;
        struct cg_answer answer = answer_of(&c);
        check_within(answer.top.spread / answer.sigma, quantiles[i].quantile,
                     1e-6, "table of the normal distribution");
        ck_assert_double_gt(answer.top.cold_gap, before);
        before = answer.top.cold_gap;
    }
}
END_TEST

START_TEST(residual_comes_on_top)
{
    struct cg_case c = pull();
    struct cg_answer a = answer_of(&c);
    c.margin.residual += 0.1e-3;
    struct cg_answer b = answer_of(&c);
    /* the ring's arc is shorter by the wider gap: 0.2 % of it at most */
    check_within(b.top.closure, a.top.closure, 0.0003e-3, "geometry");
    check_within(b.top.cold_gap - a.top.cold_gap, 0.1e-3, 1e-12, IDENTITY);
}
END_TEST

START_TEST(a_given_gap_is_judged_on_both_sides_of_the_need)
{
    struct cg_case c = pull();
    struct cg_answer answer = answer_of(&c);
    double need =
        answer.top.closure + answer.top.spread + answer.top.residual;
    ck_assert(!answer.verdict.given);
    const double tiny = 1e-9;
    c.ring[CG_RING_TOP].cold_gap = need - tiny;
    struct cg_verdict below = answer_of(&c).verdict;
    c.ring[CG_RING_TOP].cold_gap = need + tiny;
    struct cg_verdict above = answer_of(&c).verdict;
    ck_assert(below.given && !below.safe);
    ck_assert(above.given && above.safe);
    /* at the need the chance is the accepted risk */
    check_close(above.chance_less, c.margin.risk, 1e-3, IDENTITY);
    ck_assert_double_lt(above.chance_touch, above.chance_less);
    ck_assert(!above.touches && above.butting.hoop_stress == 0.0);

    c.ring[CG_RING_TOP].cold_gap = answer.top.cold_gap;
    struct cg_answer own = answer_of(&c);
    ck_assert(own.verdict.safe);
    /* giving a gap does not move the answer itself */
    ck_assert_double_eq(own.top.cold_gap, answer.top.cold_gap);
    ck_assert_double_eq(own.file_to_top.file_to, answer.file_to_top.file_to);
}
END_TEST

START_TEST(butting_has_its_figures)
{
    const char *const set[] = {"duty.name=cold_start_abuse"};
    struct cg_case c = case_of(CG_TEST_CONFIGS "/engines/iron_six.cfg", set, 1);
    c.ring[CG_RING_TOP].cold_gap = 0.10e-3;
    struct cg_answer answer = answer_of(&c);
    const struct cg_verdict *v = &answer.verdict;
    ck_assert(v->given && !v->safe && v->touches);
    ck_assert_double_lt(v->hot_gap_min, 0.0);
    ck_assert_double_gt(v->chance_touch, 0.5);
    double modulus = cg_curve_at(&c.ring_material[CG_RING_TOP].modulus,
                                 answer.extremes.ring_at);
    double stress = modulus * -v->hot_gap_min / (CG_PI * c.engine.bore);
    double pressure =
        2.0 * stress * c.ring[CG_RING_TOP].depth / c.engine.bore;
    check_close(v->butting.hoop_stress, stress, 1e-12, "thin hoop");
    check_close(v->butting.wall_pressure, pressure, 1e-12, "thin hoop");
    check_close(v->butting.times_tension,
                pressure / c.ring[CG_RING_TOP].pressure, 1e-12, IDENTITY);
    /* a tenth of a millimetre of overlap is far beyond the ring's tension */
    ck_assert_double_gt(v->butting.times_tension, 10.0);
}
END_TEST

/* Before the gas between the rings is looked at: the larger of the second
 * ring's own need and the trade's rule. */
START_TEST(second_ring_rule)
{
    struct cg_case c = pull();
    for (double factor = 0.5; factor < 2.1; factor += 0.5) {
        c.margin.second_factor = factor;
        struct cg_answer a = answer_of(&c);
        double own = a.extremes.second_closure + a.top.spread +
                     c.margin.residual;
        double ruled = factor * a.file_to_top.file_to;
        ck_assert_double_ge(a.second.cold_gap, fmax(own, ruled) - 1e-12);
        ck_assert_double_lt(a.second.cold_gap,
                            fmax(own, ruled) + c.margin.filing_step);
        check_sum(&a.second, c.margin.filing_step, true);
        ck_assert_msg((a.second_reason == CG_SECOND_RULE) == (ruled > own),
                      "factor %.1f: reason %d", factor, a.second_reason);
    }
}
END_TEST

/* The angle at which the top ring lifts with this pair of gaps, second ring
 * held, solved with short steps. */
static double unseats(const struct cg_case *c, struct cg_duty_run *run,
                      double top, double second)
{
    struct cg_seal *seal;
    struct cg_seal_answer at;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_seal_create(c, run, cg_second_gap_point(run), &seal,
                                    &error),
                     CG_OK);
    seal->pack.ring[1].pinned = true;
    enum cg_status status = cg_seal_solve(seal, top, second, &at, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_seal_free(seal);
    return at.settled.cycle.unseat_deg[0];
}

/* The second gap by the gas: its own need, or the smallest step that keeps the
 * top ring seated; the rule put far off. */
START_TEST(second_ring_by_the_gas)
{
    static const double asked[] = {90.0, 130.0, 136.0, 140.0};
    struct cg_case c = pull();
    c.margin.second_factor = 4.0;
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer a = answer_of(&c);
    struct cg_error error = {0};
    double own = c.margin.filing_step *
                 ceil((a.extremes.second_closure + a.top.spread +
                       c.margin.residual) /
                          c.margin.filing_step - 1e-9);
    double last = 0.0;
    for (size_t i = 0; i < COUNT_OF(asked); i++) {
        c.seal.seated_to_deg = asked[i];
        ck_assert_int_eq(cg_answer_second(&c, run, &a, &error), CG_OK);
        check_sum(&a.second, c.margin.filing_step, true);
        double gap = a.second.cold_gap;
        ck_assert_double_ge(gap, own - 1e-12);
        ck_assert_double_ge(gap, last);
        last = gap;
        double at = unseats(&c, run, cg_answer_top_gap(&a), gap);
        ck_assert_msg(at > asked[i] - 0.5, "%g deg asked, %g", asked[i], at);
        if (gap <= own + 1e-12) {
            ck_assert_int_eq(a.second_reason, CG_SECOND_OWN);
            continue;
        }
        ck_assert_int_eq(a.second_reason, CG_SECOND_SEATING);
        at =
            unseats(&c, run, cg_answer_top_gap(&a), gap - c.margin.filing_step);
        ck_assert_msg(at < asked[i] + 0.5, "%g deg asked, %g with a step less",
                      asked[i], at);
    }
    ck_assert_double_gt(last, own + 2.0 * c.margin.filing_step);
    cg_duty_run_free(run);
}
END_TEST

/* No wider than the trade's rule, whatever the gas asks for; nor is the rule
 * then the smaller of its two. */
START_TEST(second_ring_up_to_the_rule)
{
    struct cg_case c = pull();
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer a = answer_of(&c);
    struct cg_error error = {0};
    c.seal.seated_to_deg = 150.0;
    for (double top = 0.5e-3; top < 1.0e-3; top += 0.2e-3) {
        c.ring[CG_RING_TOP].cold_gap = top;
        ck_assert_int_eq(cg_answer_find(&c, run, 0.0, NULL, NULL, &a, &error),
                         CG_OK);
        ck_assert_int_eq(a.verdict.fits, CG_FITS);
        ck_assert_int_eq(cg_answer_second(&c, run, &a, &error), CG_OK);
        double rule = c.margin.second_factor * top;
        check_close(a.second_rule_top, top, 1e-12, "definition");
        ck_assert_double_ge(a.second_rule, rule - 1e-12);
        ck_assert_double_lt(a.second_rule, rule + c.margin.filing_step);
        ck_assert_double_gt(a.seating.gap, a.second_rule);
        ck_assert_int_eq(a.second_reason, CG_SECOND_LIMITED);
        ck_assert_double_eq(a.second.cold_gap, a.second_rule);
        check_sum(&a.second, c.margin.filing_step, true);
    }
    cg_duty_run_free(run);
}
END_TEST

/* More than any gap can give: the best, and it says so. */
START_TEST(second_ring_out_of_reach)
{
    struct cg_case c = pull();
    c.margin.second_factor = 4.0;
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer a = answer_of(&c);
    struct cg_error error = {0};
    c.seal.seated_to_deg = 180.0;
    ck_assert_int_eq(cg_answer_second(&c, run, &a, &error), CG_OK);
    ck_assert_int_eq(a.second_reason, CG_SECOND_BEST);
    ck_assert(!a.seating.reached);
    ck_assert_double_le(a.seating.gap, a.seating.most);
    double widest = unseats(&c, run, cg_answer_top_gap(&a), a.seating.most);
    double chosen = unseats(&c, run, cg_answer_top_gap(&a), a.second.cold_gap);
    check_within(chosen, widest - 0.5, 1.0, "a wider one gains little");
    cg_duty_run_free(run);
}
END_TEST

/* An aim just within what the widest gap does, and one just out of reach, ask
 * for the same. */
START_TEST(second_ring_hangs_on_no_hair)
{
    struct cg_case c = pull();
    c.margin.second_factor = 4.0;
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer a = answer_of(&c);
    struct cg_error error = {0};
    double top = cg_answer_top_gap(&a), gap[2];
    double widest = unseats(&c, run, top, CG_SECOND_MOST * top);
    for (int i = 0; i < 2; i++) {
        c.seal.seated_to_deg = widest + (i == 0 ? -0.4 : 0.4);
        ck_assert_int_eq(cg_answer_second(&c, run, &a, &error), CG_OK);
        gap[i] = a.seating.gap;
    }
    check_within(gap[0], gap[1], 1e-9, "less than a degree past the aim");
    cg_duty_run_free(run);
}
END_TEST

/* Steps ten times finer must leave the sensitivities alone. */
START_TEST(sensitivities_do_not_hang_on_the_tolerance)
{
    for (size_t i = 0; i < COUNT_OF(engines); i++) {
        char file[256];
        snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg",
                 engines[i]);
        struct cg_case c = case_of(file, NULL, 0);
        struct cg_answer coarse = answer_of(&c);
        c.solver.tolerance *= 0.1;
        struct cg_answer fine = answer_of(&c);
        check_close(coarse.sigma, fine.sigma, 0.01, engines[i]);
        for (size_t k = 0; k < fine.contributions; k++)
            for (size_t j = 0; j < coarse.contributions; j++)
                if (strcmp(fine.contribution[k].name,
                           coarse.contribution[j].name) == 0)
                    ck_assert_msg(
                        fabs(coarse.contribution[j].shift -
                             fine.contribution[k].shift) <=
                            0.02 * fabs(fine.contribution[k].shift) +
                                0.002 * fine.sigma,
                        "%s, %s: %.4g um against %.4g um", engines[i],
                        fine.contribution[k].name,
                        coarse.contribution[j].shift * 1e6,
                        fine.contribution[k].shift * 1e6);
    }
}
END_TEST

/* The short cut behind the spread (gas side and films kept at the nominal
 * walls) against solving the moved case from the start. */
START_TEST(short_cut_of_the_spread)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_answer answer = answer_of(&c);
    for (size_t i = 0; i < count; i++) {
        struct cg_case moved = c;
        if (inputs[i].direct)
            continue;
        cg_uncertain_move(&inputs[i], 1.0, &moved);
        double whole = extremes_of(&moved).closure - answer.top.closure;
        for (size_t k = 0; k < answer.contributions; k++)
            if (strcmp(answer.contribution[k].name, inputs[i].name) == 0)
                check_within(answer.contribution[k].shift * 1e6, whole * 1e6,
                             0.1 * fabs(whole * 1e6) + 0.3, inputs[i].name);
    }
}
END_TEST

/* Correlations: the case's own is the nominal run, the others are near what
 * their own nominal run gives. */
START_TEST(correlations_side_by_side)
{
    struct cg_case c = pull();
    struct cg_answer answer = answer_of(&c);
    ck_assert_uint_ge(answer.correlations, 3);
    for (size_t i = 0; i < answer.correlations; i++) {
        char set[64];
        const char *const list = set;
        snprintf(set, sizeof set, "combustion.heat_transfer=%s",
                 answer.correlation[i].name);
        struct cg_case other = case_of(BOOSTED_FOUR, &list, 1);
        double whole = extremes_of(&other).closure;
        if (strcmp(c.combustion.heat_transfer,
                   answer.correlation[i].name) == 0)
            ck_assert_double_eq(answer.correlation[i].closure, whole);
        check_within(answer.correlation[i].closure - answer.top.closure,
                     whole - answer.top.closure,
                     0.15 * fabs(whole - answer.top.closure), set);
    }
}
END_TEST

START_TEST(no_boost_and_no_load)
{
    struct cg_case c = case_of(PLAIN_FOUR, NULL, 0);
    hold(&c, 20.0, 0.0);
    struct cg_answer answer = answer_of(&c);
    check_sum(&answer.top, c.margin.filing_step, false);
    ck_assert(isfinite(answer.top.closure) && isfinite(answer.sigma));
    ck_assert_double_ge(answer.top.cold_gap, c.margin.residual);
    hold(&c, 20.0, 1.0);
    ck_assert_double_gt(answer_of(&c).top.closure, answer.top.closure);
    check_close(answer.shop_rule, 0.0040 * c.engine.bore, 1e-12,
                "common practice, no source");
}
END_TEST

/* How far joint and temperatures disagree at full load, relative; *open
 * counts the stations without contact. */
static double joint_disagreement(const struct cg_case *c, size_t *open)
{
    struct cg_duty_run *run = run_of(c);
    const struct cg_operating_point *full = &run->point[run->full_load];
    double most = 0.0;
    *open = 0;
    for (size_t s = 0; s < run->thermal->bore.grid.stations; s++) {
        struct cg_bore_growth growth;
        cg_growth_station(c, run->thermal, full->settled, s, &growth);
        double asked =
            cg_joint_coefficient(&c->bore, growth.contact_pressure);
        most = fmax(most, fabs(full->joint[s] - asked) / asked);
        *open += growth.open;
    }
    cg_duty_run_free(run);
    return most;
}

/* A pressed liner in aluminium: the less interference, the more stations lose
 * contact when hot, the hotter the bore and the tighter the ring. */
START_TEST(a_pressed_seat_opens_little_by_little)
{
    double closure_before = INFINITY, liner_before = INFINITY;
    size_t open_before = 1000, open = 0, first = 0;
    for (int um = 0; um <= 150; um += 10) {
        char interference[40];
        const char *const set[] = {"bore.seat=pressed", interference};
        snprintf(interference, sizeof interference, "bore.interference_um=%d",
                 um);
        struct cg_case c = case_of(BOOSTED_FOUR, set, 2);
        c.duty.start = CG_START_SETTLED;
        hold(&c, 5.0, 1.0);
        check_within(joint_disagreement(&c, &open), 0.0, 0.02, interference);
        struct cg_extremes e = extremes_of(&c);
        ck_assert_msg(e.closure < closure_before, "%s", interference);
        ck_assert_msg(e.liner_top_max <= liner_before + 0.05, "%s",
                      interference);
        ck_assert_msg(open <= open_before, "%s", interference);
        closure_before = e.closure;
        liner_before = e.liner_top_max;
        open_before = open;
        first = um == 0 ? open : first;
    }
    ck_assert_uint_gt(first, 4);
    ck_assert_uint_eq(open, 0);
}
END_TEST

/* A wet liner has no block to be carried along by: it grows by itself, less
 * than one cast into aluminium, so the ring needs more gap. */
START_TEST(wet_seat)
{
    const char *const set = "bore.seat=wet";
    struct cg_case wet = case_of(BOOSTED_FOUR, &set, 1), cast = pull();
    struct cg_duty_run *run = run_of(&wet);
    ck_assert(!run->thermal->bore.has_block);
    cg_duty_run_free(run);
    struct cg_answer a = answer_of(&wet), b = answer_of(&cast);
    check_sum(&a.top, wet.margin.filing_step, false);
    ck_assert_double_gt(a.top.closure, b.top.closure);
}
END_TEST

/* Full load from cold: the ring is hot before the bore is, so it needs more
 * gap than the same load reached warm and settled; but for an engine without
 * boost, whose ring takes as long as the bore. */
START_TEST(cold_start_abuse_is_the_hardest)
{
    for (size_t i = 0; i < COUNT_OF(engines); i++) {
        char file[256];
        const char *const set[] = {"duty.name=cold_start_abuse"};
        snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg",
                 engines[i]);
        struct cg_case cold = case_of(file, set, 1);
        struct cg_case warm = case_of(file, NULL, 0);
        hold(&warm, 300.0, 1.0);
        struct cg_extremes a = extremes_of(&cold), b = extremes_of(&warm);
        ck_assert_msg(a.closure > b.closure || warm.charge.boost <= 0.0,
                      "%s: cold %.1f um, settled %.1f um", engines[i],
                      a.closure * 1e6, b.closure * 1e6);
        ck_assert_double_lt(a.bore_at, b.bore_at);
    }
}
END_TEST

/* A cold engine at the first instant: everything at ambient, so the closure
 * is that of ring and bore of one temperature near 20 C. */
static enum cg_status first_instant(void *context,
                                    const struct cg_instant *instant,
                                    struct cg_error *error)
{
    double *least = context;
    (void)error;
    if (instant->time == 0.0)
        *least = instant->temperature[0];
    return CG_OK;
}

START_TEST(cold_start_begins_at_ambient)
{
    struct cg_case c = pull();
    c.duty.start = CG_START_COLD;
    struct cg_duty_run *run = run_of(&c);
    double first = 0.0;
    ck_assert_int_eq(cg_duty_run_go(&c, run, 0.0, first_instant, &first, NULL,
                                    NULL), CG_OK);
    ck_assert_double_eq(first, c.charge.ambient_temperature);
    cg_duty_run_free(run);
}
END_TEST

/* The tables' history and the answer tell the same: watching at an interval
 * moves nothing that matters, and the smallest hot gap is the verdict's. */
START_TEST(history_agrees_with_the_answer)
{
    struct cg_case c = pull();
    c.ring[CG_RING_TOP].cold_gap = 0.31e-3;
    struct cg_answer plain = answer_of(&c), watched;
    struct cg_duty_run *run = run_of(&c);
    struct cg_history history;
    ck_assert_int_eq(cg_history_begin(&c, run, &history, NULL), CG_OK);
    ck_assert_int_eq(cg_answer_find(&c, run, history.interval,
                                    cg_history_observe, &history, &watched,
                                    NULL), CG_OK);
    ck_assert_double_eq(plain.top.cold_gap, watched.top.cold_gap);
    check_within(plain.top.closure, watched.top.closure, 0.05e-6,
                 "instants added between steps");
    double least, at_top;
    cg_history_gaps(&history, &history.tightest, 0.31e-3, &least, &at_top);
    check_within(least, watched.verdict.hot_gap_min, 1e-6, IDENTITY);
    ck_assert_double_ge(at_top, least);
    check_within(history.tightest.time, watched.extremes.time, 1e-12,
                 IDENTITY);
    for (size_t i = 0; i < history.moments; i++) {
        cg_history_gaps(&history, &history.moment[i], 0.31e-3, &least,
                        &at_top);
        ck_assert_double_ge(least, watched.verdict.hot_gap_min - 1e-6);
        if (i > 0)
            ck_assert_double_gt(history.moment[i].time,
                                history.moment[i - 1].time);
    }
    check_within(history.moment[history.moments - 1].time, run->duration,
                 1e-9, IDENTITY);
    cg_history_free(&history);
    cg_duty_run_free(run);
}
END_TEST

START_TEST(shop_rule)
{
    const char *const practice = "common practice, no source";
    check_close(cg_shop_rule(0.1, -20e3), 0.40e-3, 1e-12, practice);
    check_close(cg_shop_rule(0.1, 0.0), 0.40e-3, 1e-12, practice);
    check_close(cg_shop_rule(0.1, 50e3), 0.45e-3, 1e-12, practice);
    check_close(cg_shop_rule(0.1, 100e3), 0.50e-3, 1e-12, practice);
    check_close(cg_shop_rule(0.1, 150e3), 0.575e-3, 1e-12, practice);
    check_close(cg_shop_rule(0.1, 250e3), 0.70e-3, 1e-12, practice);
    check_close(cg_shop_rule(0.1, 900e3), 0.75e-3, 1e-12, practice);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("answer");
    TCase *all = tcase_create("answer");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, every_engine_through_every_duty, 0,
                        (int)(COUNT_OF(engines) * COUNT_OF(duties)));
    tcase_add_test(all, two_runs_are_equal_to_the_bit);
    tcase_add_test(all, a_run_can_be_used_again);
    tcase_add_test(all, closure_by_hand);
    tcase_add_test(all, closure_by_search);
    tcase_add_test(all, bore_growth_by_hand);
    tcase_add_test(all, spread_is_the_root_of_summed_squares);
    tcase_add_test(all, one_uncertain_input_alone);
    tcase_add_test(all, measuring_errors_by_geometry);
    tcase_add_test(all, tighter_risk_wants_a_larger_gap);
    tcase_add_test(all, residual_comes_on_top);
    tcase_add_test(all, a_given_gap_is_judged_on_both_sides_of_the_need);
    tcase_add_test(all, butting_has_its_figures);
    tcase_add_test(all, second_ring_rule);
    tcase_add_test(all, second_ring_by_the_gas);
    tcase_add_test(all, second_ring_out_of_reach);
    tcase_add_test(all, second_ring_hangs_on_no_hair);
    tcase_add_test(all, second_ring_up_to_the_rule);
    tcase_add_test(all, sensitivities_do_not_hang_on_the_tolerance);
    tcase_add_test(all, short_cut_of_the_spread);
    tcase_add_test(all, correlations_side_by_side);
    tcase_add_test(all, no_boost_and_no_load);
    tcase_add_test(all, a_pressed_seat_opens_little_by_little);
    tcase_add_test(all, wet_seat);
    tcase_add_test(all, cold_start_abuse_is_the_hardest);
    tcase_add_test(all, cold_start_begins_at_ambient);
    tcase_add_test(all, history_agrees_with_the_answer);
    tcase_add_test(all, shop_rule);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
