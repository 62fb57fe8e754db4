/* Hot clearances of the piston, and the skirt's margin. */
#include <stdlib.h>
#include <string.h>

#include "alloy_choice.h"
#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "geometry.h"
#include "growth.h"

/* Everything at one temperature: clearances are sums of free growth. */
START_TEST(uniform_temperature)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    size_t nodes = run->thermal->network->nodes;
    size_t stations = run->thermal->bore.grid.stations;
    double *temperature = malloc((nodes + stations) * sizeof *temperature);
    double *strain = temperature + nodes, kelvin = 413.15;
    for (size_t i = 0; i < nodes; i++)
        temperature[i] = kelvin;
    cg_growth_bore(&c, run->thermal, temperature, strain);
    struct cg_clearance hot;
    cg_clearance_hot(&c, run->thermal, temperature, strain, &hot);

    double piston = cg_material_strain(&c.piston_material, kelvin);
    double bore = cg_material_strain(&c.bore_material, kelvin);
    double ring = cg_material_strain(&c.ring_material[CG_RING_TOP], kelvin);
    double d = c.engine.bore;
    check_within(hot.skirt,
                 d * (1 + bore) - (d - c.piston.skirt_clearance) * (1 + piston),
                 1e-12, "free growth");
    check_within(hot.land[CG_RING_SECOND],
                 d * (1 + bore) - (d - c.piston.land_clearance) * (1 + piston),
                 1e-12, "free growth");
    const struct cg_ring_case *top = &c.ring[CG_RING_TOP];
    check_within(hot.side[CG_RING_TOP],
                 top->side_clearance * (1 + piston) +
                     top->width * (piston - ring),
                 1e-12, "the groove grows with the piston");
    check_within(hot.back[CG_RING_TOP],
                 top->back_clearance * (1 + piston) +
                     top->depth * (piston - ring) - 0.5 * d * (piston - bore),
                 1e-12, "the root comes nearer to the bore");
    free(temperature);
    cg_duty_run_free(run);
}
END_TEST

/* With the closure as cold clearance, just none is left at the worst. */
START_TEST(closure_leaves_none)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    c.piston.skirt_clearance = extremes_of(&c).skirt.closure;
    check_within(extremes_of(&c).clearance.skirt, 0.0, 1e-9, "definition");
}
END_TEST

/* The skirt's spring: a ring of the whole wall, its formula, both ways. */
START_TEST(skirt_springs_as_a_ring)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    double kelvin = 293.15, overlap = 0.037e-3;
    double pressure = cg_skirt_pressure(&c, kelvin, overlap);
    check_close(cg_skirt_overlap(&c, kelvin, pressure), overlap, 1e-13,
                "inverse");
    /* 0.149 F R^3 / (E I): Timoshenko, Strength of Materials, part I (1955),
     * thin ring; from memory */
    double wall = c.piston.skirt_thickness, length = c.piston.skirt_length;
    double radius = 0.5 * (c.engine.bore - wall);
    double force = overlap * 74e9 * length * pow(wall, 3) / 12.0 /
                   (0.149 * pow(radius, 3));
    double area =
        c.engine.bore * sin(0.5 * CG_PI * c.piston.skirt_share) * length;
    check_close(pressure, force / area, 2e-3, "Timoshenko (1955)");
}
END_TEST

static struct cg_skirt_answer skirt_of(const struct cg_case *c)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_answer answer;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_answer_find(c, run, 0.0, NULL, NULL, &answer, &error),
                     CG_OK);
    cg_duty_run_free(run);
    return answer.skirt;
}

START_TEST(adds_up_and_takes_the_same_risk)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_skirt_answer a = skirt_of(&c);
    check_within(a.closure + a.spread - a.give + a.rounding, a.cold, 1e-15,
                 "sum");
    ck_assert(a.rounding >= 0.0 && a.rounding < c.margin.filing_step);
    check_close(a.spread, 3.0902 * a.sigma, 1e-4, "normal quantile of 0.001");
    c.margin.risk = 0.1;
    ck_assert_double_lt(skirt_of(&c).cold, a.cold);
    c.margin.skirt_pressure = 0.0;
    ck_assert_double_eq(skirt_of(&c).give, 0.0);
}
END_TEST

/* With nothing uncertain but the alloy's growth, the spread is that. */
START_TEST(own_spread)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    double expansion = c.margin.skirt_expansion;
    c.uncertainty = (struct cg_uncertainty_case){.bore_size = 4e-6};
    double growth = extremes_of(&c).skirt.growth;
    check_close(skirt_of(&c).sigma,
                sqrt(pow(expansion * growth, 2) + 2.0 * 16e-12), 1e-9,
                "squares add: growth, bore and piston as measured");
}
END_TEST

/* Common practice, no source: 2618 wants more cold clearance than 4032 in the
 * same engine, but not half as much again; eutectic, which grows a little more
 * than 4032, lies between. */
START_TEST(order_of_alloys)
{
    static const char *const set[] = {"piston.alloy=4032", "piston.alloy=2618",
                                      "piston.alloy=eutectic"};
    double closure[3];
    for (int i = 0; i < 3; i++) {
        struct cg_case c = case_of(IRON_SIX, &set[i], 1);
        closure[i] = extremes_of(&c).skirt.closure;
    }
    ck_assert_double_gt(closure[1], closure[2]);
    ck_assert_double_gt(closure[2], closure[0]);
    ck_assert_double_lt(closure[1], 1.5 * closure[0]);
}
END_TEST

/* The trade's figures run in engines everywhere: with the wide end of its band
 * a hot skirt may spring, but nominally by no more than the pressure allowed. */
START_TEST(trade_figures_live)
{
    static const char *const file[] = {PLAIN_FOUR, BOOSTED_FOUR, IRON_SIX};
    struct cg_case c = case_of(file[_i], NULL, 0);
    struct cg_skirt_answer a = skirt_of(&c);
    check_close(a.given, 0.5 * (a.trade.low + a.trade.high), 1e-12,
                "the middle is the default");
    c.piston.skirt_clearance = a.trade.high;
    a = skirt_of(&c);
    ck_assert_msg(a.pressure < c.margin.skirt_pressure, "%s: %.0f kPa",
                  file[_i], a.pressure / 1e3);
}
END_TEST

START_TEST(alloy_choice_is_find)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_alloy_choice choice;
    struct cg_error error = {0};
    ck_assert_int_eq(
        cg_alloy_choice_run(&c, &c.piston_material, &choice, &error), CG_OK);
    ck_assert(choice.own);
    ck_assert_double_eq(choice.skirt.cold, skirt_of(&c).cold);
}
END_TEST

/* The skirt is gauged a third up from its lower edge: where the bore opens
 * evenly downwards, at top dead centre, it is that depth that counts. */
START_TEST(gauged_a_third_up)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    const struct cg_thermal *thermal = run->thermal;
    size_t nodes = thermal->network->nodes;
    size_t stations = thermal->bore.grid.stations;
    double *temperature = malloc((nodes + stations) * sizeof *temperature);
    double *strain = temperature + nodes, slope = 1e-2;
    for (size_t i = 0; i < nodes; i++)
        temperature[i] = CG_COLD_TEMPERATURE;
    for (size_t s = 0; s < stations; s++)
        strain[s] = slope * cg_station_depth(&thermal->bore.grid, s);
    struct cg_clearance hot;
    cg_clearance_hot(&c, thermal, temperature, strain, &hot);
    double depth = cg_skirt_offset(&c) + c.piston.skirt_length * 2.0 / 3.0;
    check_within(hot.skirt - c.piston.skirt_clearance,
                 c.engine.bore * slope * depth, 1e-9, "definition");
    free(temperature);
    cg_duty_run_free(run);
}
END_TEST

/* An alloy of which the trade says nothing is looked at with the clearance
 * that the case has. */
START_TEST(an_alloy_without_a_figure_keeps_the_clearance)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_material alloy = c.piston_material;
    struct cg_alloy_choice choice;
    struct cg_error error = {0};
    alloy.skirt_per_bore = (struct cg_band){NAN, NAN};
    strcpy(alloy.name, "own_make");
    c.piston.skirt_clearance = 0.071e-3;
    ck_assert_int_eq(cg_alloy_choice_run(&c, &alloy, &choice, &error), CG_OK);
    ck_assert(!choice.own && choice.alloy == &alloy);
    ck_assert_double_eq(choice.skirt.given, 0.071e-3);
    ck_assert(isnan(choice.skirt.trade.low));
    ck_assert_int_eq(
        cg_alloy_choice_run(&c, &c.piston_material, &choice, &error), CG_OK);
    ck_assert(choice.own);
    ck_assert_double_ne(choice.skirt.given, 0.071e-3);
    strcpy(c.cooling.oil_grade, "lard");
    ck_assert_int_eq(cg_alloy_choice_run(&c, &alloy, &choice, &error),
                     CG_BAD_INPUT);
    ck_assert_str_eq(error.text, "cooling.oil_grade: no grade \"lard\"");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("clearance");
    TCase *all = tcase_create("clearance");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, uniform_temperature);
    tcase_add_test(all, closure_leaves_none);
    tcase_add_test(all, skirt_springs_as_a_ring);
    tcase_add_test(all, adds_up_and_takes_the_same_risk);
    tcase_add_test(all, own_spread);
    tcase_add_test(all, order_of_alloys);
    tcase_add_loop_test(all, trade_figures_live, 0, 3);
    tcase_add_test(all, alloy_choice_is_find);
    tcase_add_test(all, gauged_a_third_up);
    tcase_add_test(all, an_alloy_without_a_figure_keeps_the_clearance);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
