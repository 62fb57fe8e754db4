/* Oil held against fuel, and the advice on the stages of honing. */
#include <string.h>

#include "bore_finish.h"
#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "fuel.h"
#include "grit.h"
#include "honing.h"
#include "surface.h"

static const struct cg_core good = {
    .rk = 0.5e-6, .rpk = 0.15e-6, .rvk = 1.8e-6, .mr1 = 0.08, .mr2 = 0.79,
    .a2 = 0.189e-6, .oil = 0.189e-6};

static struct cg_finish_verdict judge(const struct cg_case *c,
                                      const struct cg_core *core)
{
    struct cg_finish_verdict verdict;
    struct cg_error error = {0};
    enum cg_status status = cg_finish_judge(c, core, true, &verdict, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return verdict;
}

/* The same fuel as `find` computes, spread over the swept walls. */
START_TEST(fuel_of_the_engine)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_finish_verdict verdict = judge(&c, &good);
    struct cg_duty_run *run = run_of(&c);
    const struct cg_performance *full =
        &run->point[run->full_load].performance;
    check_close(verdict.fuel_flow, full->fuel_flow, 1e-6, "the point's fuel");
    double area = CG_PI * c.engine.bore * c.engine.stroke;
    double volume = full->fuel_flow / cg_fuel_find(c.fuel.name)->density;
    double cycles = c.engine.speed / 2.0 * c.engine.cylinders;
    check_close(verdict.fuel_per_area, volume / cycles / area, 1e-6,
                "by hand");
    cg_duty_run_free(run);
}
END_TEST

START_TEST(rises_with_boost)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    double last = 0.0, last_fuel = 0.0;
    for (double boost = 0.0; boost <= 300e3; boost += 50e3) {
        c.charge.boost = boost;
        struct cg_finish_verdict verdict = judge(&c, &good);
        ck_assert_double_gt(verdict.oil_needed, last);
        ck_assert_double_gt(verdict.fuel_per_area, last_fuel);
        last = verdict.oil_needed;
        last_fuel = verdict.fuel_per_area;
    }
}
END_TEST

START_TEST(richer_and_alcohol_need_more)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    double usual = judge(&c, &good).oil_needed;
    c.fuel.lambda = 0.7;
    ck_assert_double_gt(judge(&c, &good).oil_needed, usual);
    strcpy(c.fuel.name, "methanol");
    ck_assert_double_gt(judge(&c, &good).oil_needed, 1.3 * usual);
}
END_TEST

/* The scale goes through its reference, and with exponent 1 is proportional. */
START_TEST(scale_through_reference)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_finish_verdict verdict = judge(&c, &good);
    double ratio = verdict.fuel_per_area / c.bore.finish.reference_fuel;
    check_close(verdict.oil_needed,
                c.bore.finish.reference_oil * sqrt(ratio), 1e-9, "the scale");
    c.bore.finish.fuel_exponent = 1.0;
    check_close(judge(&c, &good).oil_needed,
                c.bore.finish.reference_oil * ratio, 1e-9, "the scale");
    c.bore.finish.reference_fuel = verdict.fuel_per_area;
    check_close(judge(&c, &good).oil_needed, c.bore.finish.reference_oil,
                1e-9, "the scale");
}
END_TEST

/* An unboosted road engine's fuel is what the reference says it is. */
START_TEST(reference_is_unboosted)
{
    static const char *const set[] = {
        "engine.bore_mm=85.3", "engine.stroke_mm=87.7", "charge.boost_kPa=0",
        "charge.charger=none", "fuel.lambda=0.9"};
    struct cg_case c = case_of(PLAIN_FOUR, set, COUNT_OF(set));
    struct cg_finish_verdict verdict = judge(&c, &good);
    check_close(verdict.fuel_per_area, c.bore.finish.reference_fuel, 0.05,
                "derived: an unboosted 85.3 mm x 87.7 mm engine on gasoline");
}
END_TEST

/* One row: a core, the oil needed, and the changes asked for, in order. */
struct row {
    double rk, rpk, rvk, mr2, needed; /* um, 1 */
    int advices;
    struct cg_finish_advice advice[2];
};

static const struct row rows[] = {
    /* all well */
    {0.5, 0.15, 1.8, 0.80, 0.15, 0, {{0, 0, 0}}},
    /* shallow: 1.5 times as deep, 69 um of grain to 103.5 */
    {0.5, 0.15, 1.0, 0.80, 0.15, 1, {{CG_BASE_COARSER, CG_FINISH_SHALLOW, 120}}},
    /* none coarse enough: the coarsest */
    {0.5, 0.15, 0.1, 0.80, 0.30, 1, {{CG_BASE_COARSER, CG_FINISH_SHALLOW, 80}}},
    /* deep enough, but the plateau stage has left 8 % of valleys */
    {0.5, 0.15, 1.8, 0.92, 0.15, 1, {{CG_PLATEAU_SHORTER, CG_FINISH_WORN, 0}}},
    /* four times too much: a quarter of 69 um */
    {0.5, 0.15, 4.0, 0.70, 0.15, 1, {{CG_BASE_FINER, CG_FINISH_DEEP, 400}}},
    /* one stage only */
    {2.9, 0.6, 1.8, 0.80, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_ROUGH, 0}}},
    /* a plateau, but rough: 9.3 um of grain to 6.2 */
    {1.5, 0.2, 1.8, 0.80, 0.15, 1, {{CG_PLATEAU_FINER, CG_FINISH_ROUGH, 1000}}},
    /* peaks */
    {0.5, 0.5, 1.8, 0.80, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_PEAKS, 0}}},
    /* little area bears */
    {0.5, 0.15, 1.0, 0.60, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_BARE, 0}}},
    /* just within each limit, and just beyond it */
    {0.5, 0.15, 1.8, 0.92, 0.185, 1, {{CG_BASE_COARSER, CG_FINISH_SHALLOW, 80}}},
    {0.5, 0.15, 3.05, 0.70, 0.15, 1, {{CG_BASE_FINER, CG_FINISH_DEEP, 320}}},
    {0.5, 0.15, 2.95, 0.70, 0.15, 0, {{0, 0, 0}}},
    {1.02, 0.2, 1.8, 0.80, 0.15, 1, {{CG_PLATEAU_FINER, CG_FINISH_ROUGH, 800}}},
    {0.98, 0.29, 1.8, 0.80, 0.15, 0, {{0, 0, 0}}},
    {0.5, 0.31, 1.8, 0.80, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_PEAKS, 0}}},
    {0.5, 0.15, 1.0, 0.68, 0.15, 0, {{0, 0, 0}}},
    {0.5, 0.15, 1.0, 0.66, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_BARE, 0}}},
    /* shallow, and not honed to the end */
    {2.0, 0.5, 0.9, 0.80, 0.15, 2,
     {{CG_BASE_COARSER, CG_FINISH_SHALLOW, 100},
      {CG_PLATEAU_LONGER, CG_FINISH_ROUGH, 0}}},
    /* too long honed and still peaks: finer, not longer */
    {0.5, 0.6, 1.8, 0.92, 0.15, 2,
     {{CG_PLATEAU_SHORTER, CG_FINISH_WORN, 0},
      {CG_PLATEAU_FINER, CG_FINISH_PEAKS, 1000}}},
};

/* Heights of one law: no plateau stage was there, however fine the figures, so
 * none has taken too much either. */
static const struct row straight[] = {
    {0.5, 0.15, 1.8, 0.80, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_STRAIGHT, 0}}},
    {0.5, 0.15, 1.8, 0.92, 0.15, 1, {{CG_PLATEAU_LONGER, CG_FINISH_STRAIGHT, 0}}},
    {0.5, 0.15, 1.0, 0.80, 0.15, 2,
     {{CG_BASE_COARSER, CG_FINISH_SHALLOW, 120},
      {CG_PLATEAU_LONGER, CG_FINISH_STRAIGHT, 0}}},
};

static void check_advice(const struct row *row, bool bends)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_core core = {.rk = row->rk * 1e-6, .rpk = row->rpk * 1e-6,
                           .rvk = row->rvk * 1e-6, .mr2 = row->mr2};
    struct cg_finish_verdict verdict = {0};
    core.oil = core.rvk * (1.0 - core.mr2) / 2.0;
    verdict.oil_held = core.oil;
    verdict.oil_needed = row->needed * 1e-6;
    verdict.holds = verdict.oil_held >= verdict.oil_needed;
    verdict.bends = bends;
    verdict.plateau = cg_finish_plateau(&core, bends);
    cg_finish_advise(&c, &core, &verdict);
    ck_assert_int_eq(verdict.advices, row->advices);
    for (int i = 0; i < row->advices; i++) {
        ck_assert_int_eq(verdict.advice[i].change, row->advice[i].change);
        ck_assert_int_eq(verdict.advice[i].reason, row->advice[i].reason);
        ck_assert_int_eq(verdict.advice[i].grit, row->advice[i].grit);
    }
}

START_TEST(advice)
{
    check_advice(&rows[_i], true);
}
END_TEST

START_TEST(advice_of_one_law)
{
    check_advice(&straight[_i], false);
}
END_TEST

/* Oil alone does not pass: without a plateau the answer is no, and with one a
 * rough or peaked surface still runs in. */
START_TEST(no_plateau_does_not_pass)
{
    static const struct {
        double rk, rvk;
        bool bends, passes;
    } row[] = {{0.5, 1.8, true, true},   {0.5, 1.8, false, false},
               {1.01, 1.0, true, false}, {0.99, 0.9, true, true},
               {1.5, 1.8, true, true},   {2.9, 1.8, true, false},
               {2.9, 1.8, false, false}};
    for (size_t i = 0; i < COUNT_OF(row); i++) {
        struct cg_core core = {.rk = row[i].rk * 1e-6,
                               .rvk = row[i].rvk * 1e-6};
        struct cg_finish_verdict verdict = {.holds = true};
        verdict.plateau = cg_finish_plateau(&core, row[i].bends);
        ck_assert_int_eq(cg_finish_passes(&verdict), row[i].passes);
        verdict.holds = false;
        ck_assert(!cg_finish_passes(&verdict));
    }
}
END_TEST

/* On the simulated surface the advice helps: the coarser class holds what the
 * finer one did not. */
START_TEST(advice_helps)
{
    static double height[400 * 400];
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_honing honing = {320, 600, 0.8, 45.0};
    struct cg_error error;
    double held[2];
    c.bore.finish.base_grit = honing.base_grit;
    for (int i = 0; i < 2; i++) {
        struct cg_ratio_curve curve;
        struct cg_core core;
        cg_honing_cut(&honing, 400, 400, 5e-6, 11, height, &error);
        cg_ratio_curve_sort(height, 400 * 400, &curve);
        cg_ratio_curve_core(&curve, &core);
        struct cg_finish_verdict verdict = judge(&c, &core);
        held[i] = verdict.oil_held / verdict.oil_needed;
        if (i == 0) {
            ck_assert(!verdict.holds);
            ck_assert_int_eq(verdict.advice[0].change, CG_BASE_COARSER);
            honing.base_grit = verdict.advice[0].grit;
        }
    }
    ck_assert_double_gt(held[1], 1.0);
    ck_assert_double_gt(held[1], 1.5 * held[0]);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("bore finish");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 120.0);
    tcase_add_test(all, fuel_of_the_engine);
    tcase_add_test(all, rises_with_boost);
    tcase_add_test(all, richer_and_alcohol_need_more);
    tcase_add_test(all, scale_through_reference);
    tcase_add_test(all, reference_is_unboosted);
    tcase_add_loop_test(all, advice, 0, (int)COUNT_OF(rows));
    tcase_add_loop_test(all, advice_of_one_law, 0, (int)COUNT_OF(straight));
    tcase_add_test(all, no_plateau_does_not_pass);
    tcase_add_test(all, advice_helps);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
