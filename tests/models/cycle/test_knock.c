#include <stdlib.h>
#include <string.h>

#include "check_close.h"
#include "cycle_case.h"
#include "fuel.h"

static const double atmosphere = 101325.0;
static const struct cg_knock_law ninety = {90.0, 1.0, 0.0};

static struct cg_mixture argon(void)
{
    struct cg_mixture gas;
    const double moles[CG_SPECIES] = {[CG_AR] = 1.0};
    cg_mixture_set(&gas, moles, 0.0, NULL);
    return gas;
}

static struct cg_mixture air(void)
{
    struct cg_mixture gas;
    const double moles[CG_SPECIES] = {[CG_N2] = 0.79, [CG_O2] = 0.21};
    cg_mixture_set(&gas, moles, 0.0, NULL);
    return gas;
}

/* 17.68 0.9^3.402 30^-1.7 e^4.75 = 17.68 0.69877 0.0030824 115.584 ms */
START_TEST(held_gas_fires_after_its_delay)
{
    struct cg_mixture gas = argon();
    struct cg_end_gas end;
    double tau = cg_knock_delay(&ninety, 30.0 * atmosphere, 800.0);
    check_close(tau, 4.4016e-3, 2e-5, "by hand");
    cg_end_gas_begin(&ninety, &gas, &gas, 0.3, 30.0 * atmosphere, 800.0, &end);
    for (int i = 0; i < 40; i++)
        cg_end_gas_step(&ninety, 30.0 * atmosphere, 0.05 * tau, 0.0, &end);
    check_close(end.integral, 2.0, 1e-12, "derived");
    check_close(end.temperature, 800.0, 1e-14, "derived");
}
END_TEST

/* cp/R = 2.5: T = T0 (p/p0)^0.4. */
START_TEST(compressed_at_constant_entropy)
{
    struct cg_mixture gas = argon();
    struct cg_end_gas end;
    cg_end_gas_begin(&ninety, &gas, &gas, 0.0, 1e5, 340.0, &end);
    cg_end_gas_step(&ninety, 7e5, 1e-3, 0.0, &end);
    cg_end_gas_step(&ninety, 40e5, 1e-3, 0.0, &end);
    check_close(end.temperature, 340.0 * pow(40.0, 0.4), 1e-6, "derived");
}
END_TEST

/* From 1 to 50 bar in 10 ms, in so many steps out of `all`. */
static void press(struct cg_end_gas *end, int from, int to, int all)
{
    for (int i = from; i < to; i++)
        cg_end_gas_step(&ninety, 1e5 * pow(50.0, (i + 1.0) / all), 10e-3 / all, 0.0,
                        end);
}

static struct cg_end_gas begun(void)
{
    struct cg_mixture gas = air();
    struct cg_end_gas end;
    cg_end_gas_begin(&ninety, &gas, &gas, 0.0, 1e5, 340.0, &end);
    return end;
}

START_TEST(parts_add_up)
{
    struct cg_end_gas whole = begun(), part = begun();
    press(&whole, 0, 64, 64);
    press(&part, 0, 40, 64);
    double first = part.integral;
    part.integral = 0.0;
    press(&part, 40, 64, 64);
    ck_assert_double_gt(first, 0.0);
    check_close(first + part.integral, whole.integral, 1e-14, "definition");
}
END_TEST

START_TEST(second_order_in_the_step)
{
    double at[4];
    for (int i = 0; i < 4; i++) {
        struct cg_end_gas end = begun();
        press(&end, 0, 40 << i, 40 << i);
        at[i] = end.integral;
    }
    check_close((at[0] - at[1]) / (at[1] - at[2]), 4.0, 0.05, "derived");
    check_close((at[1] - at[2]) / (at[2] - at[3]), 4.0, 0.02, "derived");
}
END_TEST

/* Boosted until it knocks, on pump fuel. */
static struct cg_cycle_input boosted(void)
{
    struct cg_cycle_input input = rated();
    input.manifold_pressure = 230e3;
    input.exhaust_pressure = 230e3;
    input.manifold_temperature = 325.0;
    input.knock = (struct cg_knock_law){98.0, 1.0, 15.0};
    return input;
}

static struct cg_cycle *run(const struct cg_cycle_input *input)
{
    struct cg_cycle *cycle = malloc(sizeof *cycle);
    struct cg_error error = {CG_OK, ""};
    ck_assert_ptr_nonnull(cycle);
    enum cg_status status = cg_cycle_run(input, cycle, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return cycle;
}

static double burn_of(const struct cg_cycle_input *input)
{
    struct cg_cycle *cycle = run(input);
    double burn50 = cycle->burn50_deg;
    free(cycle);
    return burn50;
}

START_TEST(burn_stands_at_the_limit)
{
    struct cg_cycle_input input = boosted();
    struct cg_cycle *cycle = run(&input);
    ck_assert_double_gt(cycle->knock_unretarded, 1.05);
    ck_assert_double_gt(cycle->burn50_deg, input.burn50_deg + 1.0);
    ck_assert_double_lt(cycle->burn50_deg, input.burn50_deg + 15.0);
    check_within(cycle->knock_integral, 1.0, 0.01, "definition");
    check_within(cycle->energy_residual, 0.0, 1e-6, "derived");
    /* the same burn asked for outright */
    struct cg_cycle_input asked = input;
    asked.burn50_deg = cycle->burn50_deg;
    asked.knock.retard_most = 0.0;
    struct cg_cycle *same = run(&asked);
    check_close(same->gross_work, cycle->gross_work, 1e-6, "definition");
    check_close(same->knock_integral, cycle->knock_integral, 1e-5,
                "definition");
    free(same);
    free(cycle);
}
END_TEST

START_TEST(below_the_limit_nothing_moves)
{
    struct cg_cycle_input free_burn = rated(), held = rated();
    held.knock = (struct cg_knock_law){98.0, 1.0, 15.0};
    struct cg_cycle *a = run(&free_burn), *b = run(&held);
    ck_assert_double_eq(b->burn50_deg, held.burn50_deg);
    ck_assert_double_lt(b->knock_integral, 1.0);
    ck_assert(isnan(a->knock_integral));
    ck_assert_double_eq(a->gross_work, b->gross_work);
    ck_assert_double_eq(a->heat_piston, b->heat_piston);
    free(a);
    free(b);
}
END_TEST

START_TEST(past_the_latest_it_knocks)
{
    struct cg_cycle_input input = boosted();
    input.crank.compression_ratio = 14.0;
    input.manifold_pressure = 300e3;
    input.exhaust_pressure = 300e3;
    struct cg_cycle *cycle = run(&input);
    ck_assert_double_eq(cycle->burn50_deg, input.burn50_deg + 15.0);
    ck_assert_double_gt(cycle->knock_integral, CG_KNOCK_PREDICTED);
    free(cycle);
}
END_TEST

START_TEST(moves_as_a_tuner_knows)
{
    struct cg_cycle_input base = boosted(), other = base;
    double at = burn_of(&base);
    other.knock.octane += 2.0;
    ck_assert_double_lt(burn_of(&other), at - 0.2);
    other = base;
    other.manifold_pressure -= 10e3;
    other.exhaust_pressure -= 10e3;
    ck_assert_double_lt(burn_of(&other), at - 0.2);
    other = base;
    other.manifold_temperature += 7.0;
    ck_assert_double_gt(burn_of(&other), at + 0.2);
    other = base;
    other.crank.compression_ratio += 0.3;
    ck_assert_double_gt(burn_of(&other), at + 0.2);
    other = base;
    other.speed *= 0.9;
    ck_assert_double_gt(burn_of(&other), at + 0.2);
    /* octane and factor scale one delay */
    other = base;
    other.knock.octane = 93.0;
    other.knock.delay_factor = pow(98.0 / 93.0, 3.402);
    check_within(burn_of(&other), at, 1e-3, "derived");
}
END_TEST

/* What is sought comes the same from anywhere, and without steps. */
START_TEST(smooth_and_the_same_from_anywhere)
{
    struct cg_cycle_input input = boosted();
    struct cg_cycle *cycle = run(&input);
    struct cg_cycle_input begun = input;
    begun.guess = cycle->residual;
    begun.guess.knock.burn50_deg += 1.5;
    check_within(burn_of(&begun), cycle->burn50_deg, 1e-3, "definition");
    free(cycle);
    double at[9];
    for (int i = 0; i < 9; i++) {
        struct cg_cycle_input moved = input;
        moved.manifold_pressure += 50.0 * i;
        at[i] = burn_of(&moved);
    }
    for (int i = 1; i < 8; i++) {
        ck_assert_double_gt(at[i + 1], at[i]);
        check_within(at[i + 1] - 2.0 * at[i] + at[i - 1], 0.0, 1e-3,
                     "definition");
    }
}
END_TEST

static double octane_asked(const struct cg_cycle_input *input)
{
    struct cg_cycle *cycle = run(input);
    double octane =
        input->knock.octane * pow(cycle->knock_integral, 1.0 / 3.402);
    free(cycle);
    return octane;
}

/* S. Russ, "A Review of the Effect of Engine Operating Conditions on
 * Borderline Knock", SAE 960497 (1996; the name from memory),
 * abstract: one octane number for a
 * degree of spark, one for 7 K of intake air, 3 to 4 for 10 kPa of intake
 * pressure, 5 for a unit of compression ratio; without bands.  The law's
 * p^-1.7 alone makes 5 of 10 kPa, so it passes the third by half: a guard of
 * twice and half, no check. */
START_TEST(octane_asked_for_moves_about_as_found)
{
    struct cg_cycle_input base = rated();
    base.speed = 1500.0 / 60.0;
    base.knock = (struct cg_knock_law){98.0, 1.0, 0.0};
    double at = octane_asked(&base);
    struct cg_cycle_input late = base, warm = base, less = base, high = base;
    late.burn50_deg += 5.0;
    warm.manifold_temperature += 7.0;
    less.manifold_pressure -= 10e3;
    high.crank.compression_ratio += 1.0;
    const double moves[4][2] = {{(at - octane_asked(&late)) / 5.0, 1.0},
                                {octane_asked(&warm) - at, 1.0},
                                {at - octane_asked(&less), 3.5},
                                {octane_asked(&high) - at, 5.0}};
    for (int i = 0; i < 4; i++) {
        printf("octane asked for moves by %.2f, found %.1f\n", moves[i][0],
               moves[i][1]);
        ck_assert_double_gt(moves[i][0], 0.5 * moves[i][1]);
        ck_assert_double_lt(moves[i][0], 2.0 * moves[i][1]);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("knock");
    TCase *all = tcase_create("all");
    tcase_add_test(all, held_gas_fires_after_its_delay);
    tcase_add_test(all, compressed_at_constant_entropy);
    tcase_add_test(all, parts_add_up);
    tcase_add_test(all, second_order_in_the_step);
    tcase_add_test(all, burn_stands_at_the_limit);
    tcase_add_test(all, below_the_limit_nothing_moves);
    tcase_add_test(all, past_the_latest_it_knocks);
    tcase_add_test(all, moves_as_a_tuner_knows);
    tcase_add_test(all, smooth_and_the_same_from_anywhere);
    tcase_add_test(all, octane_asked_for_moves_about_as_found);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
