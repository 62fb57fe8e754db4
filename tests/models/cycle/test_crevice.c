/* Gas pressed into crevices, and the flame that comes to the bore last. */
#include <math.h>
#include <string.h>

#include "check_close.h"
#include "constants.h"
#include "cycle_case.h"

static struct cg_cycle cycle, other;

static void run(const struct cg_cycle_input *input, struct cg_cycle *out)
{
    struct cg_error error = {CG_OK, ""};
    ck_assert_msg(cg_cycle_run(input, out, &error) == CG_OK, "%s", error.text);
}

static struct cg_cycle_input with_crevice(void)
{
    struct cg_cycle_input input = rated();
    input.flame = true;
    input.crevice = (struct cg_zone_crevice){1.5e-6, 470.0, 1.0};
    return input;
}

static double law_heat(const struct cg_cycle *of)
{
    return of->heat_head + of->heat_piston + of->heat_liner;
}

START_TEST(energy_closes_with_crevices)
{
    static const double pressure[] = {35e3, 98e3, 330e3};
    static const double rpm[] = {900.0, 3500.0, 11000.0};
    for (int p = 0; p < 3; p++)
        for (int s = 0; s < 3; s++)
            for (int l = 0; l < 3; l++) {
                struct cg_cycle_input input = with_crevice();
                input.manifold_pressure = pressure[p];
                input.speed = rpm[s] / 60.0;
                input.crevice_in_law = 0.5 * l;
                run(&input, &cycle);
                check_within(cycle.energy_residual, 0.0, 1e-6, "first law");
                ck_assert_double_gt(cycle.heat_crevice, 0.0);
            }
}
END_TEST

/* Nothing burns, the bore sees the mean gas: the record has all there is in
 * integral of (h(T) - h(T_wall)) V/(R T_wall) dp while p rises. */
START_TEST(heat_is_that_of_the_mass_that_goes_in)
{
    struct cg_cycle_input input = with_crevice();
    input.flame = false;
    input.step_deg = 0.1;
    run(&input, &cycle);
    struct cg_poly vapour;
    struct cg_mixture gas[2];
    double moles[CG_SPECIES], fuel = cg_fuel_molar_mass(input.fuel);
    cg_fuel_poly(input.fuel, &vapour);
    cg_fuel_fresh(input.fuel, input.lambda, moles);
    cg_mixture_set(&gas[0], moles, fuel, &vapour);
    cg_fuel_burned(input.fuel, input.lambda, input.combustion_efficiency,
                   moles);
    cg_mixture_set(&gas[1], moles, fuel, &vapour);
    double residual = cycle.residual_mass / cycle.trapped_mass, sum = 0.0;
    for (size_t i = 1; i < cycle.points; i++) {
        const struct cg_cycle_point *a = &cycle.point[i - 1], *b = a + 1;
        if (a->crank_deg < input.intake_close_deg ||
            b->crank_deg > input.exhaust_open_deg || b->pressure < a->pressure)
            continue;
        double burned = residual +
                        (1.0 - residual) * 0.5 * (a->burned + b->burned);
        double t = 0.5 * (a->temperature + b->temperature), h = 0.0, r = 0.0;
        for (int k = 0; k < 2; k++) {
            double part = k == 1 ? burned : 1.0 - burned;
            h += part * (cg_mixture_enthalpy(&gas[k], t) -
                         cg_mixture_enthalpy(&gas[k], 470.0));
            r += part * gas[k].gas_constant;
        }
        sum += h * 1.5e-6 / (r * 470.0) * (b->pressure - a->pressure);
    }
    check_close(cycle.heat_crevice, sum, 2e-3, "by hand from the record");
}
END_TEST

/* Twice the room, nearly twice the heat; half the cooling, half. */
START_TEST(heat_follows_room_and_cooling)
{
    struct cg_cycle_input input = with_crevice();
    run(&input, &cycle);
    input.crevice.volume *= 2.0;
    run(&input, &other);
    ck_assert_double_gt(other.heat_crevice, 1.8 * cycle.heat_crevice);
    ck_assert_double_lt(other.heat_crevice, 2.0 * cycle.heat_crevice);
    input.crevice.share = 0.5;
    run(&input, &other);
    check_close(other.heat_crevice, cycle.heat_crevice, 1e-9,
                "volume times share");
}
END_TEST

/* What the correlation holds already is taken from it: with all of it in the
 * law the walls take in sum what they take without crevices. */
START_TEST(law_gives_up_what_it_holds)
{
    struct cg_cycle_input input = with_crevice();
    input.crevice.volume = 0.0;
    run(&input, &cycle);
    ck_assert_double_eq(cycle.heat_crevice, 0.0);
    double bare = law_heat(&cycle);
    input = with_crevice();
    input.crevice_in_law = 1.0;
    run(&input, &cycle);
    double total = law_heat(&cycle) + cycle.heat_crevice;
    /* the gas is no colder for it: within what the charge's own change does */
    check_close(total, bare, 0.02, "by definition");
    check_close(law_heat(&cycle) / cycle.residual.law_share, total, 1e-4,
                "by definition");
    input.crevice_in_law = 0.0;
    run(&input, &other);
    ck_assert_double_eq(other.residual.law_share, 1.0);
    ck_assert_double_gt(law_heat(&other) + other.heat_crevice, 1.05 * bare);
}
END_TEST

/* While it burns the bore sees gas between unburned and mean; before and after
 * the mean. */
START_TEST(bore_sees_less_of_the_flame)
{
    struct cg_cycle_input input = with_crevice();
    run(&input, &cycle);
    double most = 0.0;
    for (size_t i = 0; i < cycle.points; i++) {
        const struct cg_cycle_point *p = &cycle.point[i];
        double less = p->temperature - p->bore_temperature;
        ck_assert_double_ge(less, -1e-9);
        if (p->burned == 0.0 || p->crank_deg > input.exhaust_open_deg)
            ck_assert_double_eq(less, 0.0);
        most = fmax(most, less);
    }
    ck_assert_double_gt(most, 100.0);
    input.flame = false;
    run(&input, &other);
    ck_assert_double_lt(cycle.heat_liner, other.heat_liner);
}
END_TEST

/* Circle of radius r around a plug half way out of a unit circle: its share of
 * the area, by strips, and of the circumference. */
static double area_share(double r)
{
    enum { STRIPS = 20000 };
    double sum = 0.0;
    for (int i = 0; i < STRIPS; i++) {
        double x = -1.0 + 2.0 * (i + 0.5) / STRIPS;
        double flame = r * r - (x - 0.5) * (x - 0.5);
        if (flame > 0.0)
            sum += 2.0 * sqrt(fmin(flame, 1.0 - x * x)) * 2.0 / STRIPS;
    }
    return sum / CG_PI;
}

static double rim_share(double r)
{
    return acos(fmax(fmin(1.25 - r * r, 1.0), -1.0)) / CG_PI;
}

START_TEST(rim_is_about_the_square_of_the_area)
{
    for (double r = 0.1; r <= 1.5; r += 0.05) {
        double y = area_share(r);
        ck_assert_double_le(fabs(rim_share(r) - y * y), 0.2);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("crevice");
    TCase *all = tcase_create("crevice");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, energy_closes_with_crevices);
    tcase_add_test(all, heat_is_that_of_the_mass_that_goes_in);
    tcase_add_test(all, heat_follows_room_and_cooling);
    tcase_add_test(all, law_gives_up_what_it_holds);
    tcase_add_test(all, bore_sees_less_of_the_flame);
    tcase_add_test(all, rim_is_about_the_square_of_the_area);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
