#include "check_close.h"

#include <math.h>
#include <stddef.h>

#include "constants.h"
#include "cycle_case.h"

static struct cg_cycle cycle, other;

/* A heavy truck's cylinder at its rated speed.  Invented. */
static struct cg_cycle_input truck(void)
{
    struct cg_cycle_input input = rated();
    input.crank = (struct cg_crank){0.128, 0.155, 0.255, 16.5};
    input.speed = 1900.0 / 60.0;
    input.manifold_pressure = 280e3;
    input.manifold_temperature = 325.0;
    input.exhaust_pressure = 290e3;
    input.fuel = cg_fuel_find("diesel");
    input.lambda = 1.6;
    input.combustion_efficiency = 0.99;
    input.injection = (struct cg_injection){true, -6.0, 1.0};
    return input;
}

static void run(const struct cg_cycle_input *input, struct cg_cycle *out)
{
    struct cg_error error = {CG_OK, ""};
    ck_assert_msg(cg_cycle_run(input, out, &error) == CG_OK, "%s", error.text);
}

static double heat(const struct cg_cycle *c)
{
    return c->heat_head + c->heat_piston + c->heat_liner;
}

START_TEST(energy_and_mass_close)
{
    const double pressures[] = {60e3, 101e3, 250e3, 700e3};
    const double speeds[] = {600.0, 2000.0, 4800.0};
    const double lambdas[] = {1.15, 2.0, 10.0};
    const double ratios[] = {12.0, 17.0, 23.0};
    size_t correlations;
    const struct cg_heat_transfer *all = cg_heat_transfers(&correlations);
    for (int i = 0; i < 4 * 3 * 3 * 3; i++)
        for (size_t c = 0; c < correlations; c++) {
            struct cg_cycle_input input = truck();
            input.correlation = &all[c];
            input.manifold_pressure = pressures[i % 4];
            input.exhaust_pressure = pressures[i % 4] + 10e3;
            input.speed = speeds[i / 4 % 3] / 60.0;
            input.lambda = lambdas[i / 12 % 3];
            input.crank.compression_ratio = ratios[i / 36];
            input.crevice =
                (struct cg_zone_crevice){1e-6 * (i % 2), 500.0, 0.75};
            run(&input, &cycle);
            check_within(cycle.energy_residual, 0.0, 1e-6, all[c].name);
            check_close(cycle.trapped_mass,
                        cycle.air_mass + cycle.residual_mass, 1e-7,
                        "air alone is compressed");
            check_close(cycle.fuel_mass * input.lambda *
                            cg_fuel_stoichiometric(input.fuel),
                        cycle.air_mass, 1e-12, "lambda");
        }
}
END_TEST

/* From outside: what came in, by its enthalpy, is work, heat and what leaves as
 * burned gas; all of the fuel has come in. */
START_TEST(exhaust_closes_the_balance)
{
    struct cg_cycle_input input = truck();
    run(&input, &cycle);
    double moles[CG_SPECIES], fuel_mass = cg_fuel_molar_mass(input.fuel);
    struct cg_poly vapour;
    struct cg_mixture air, fuel, burned;
    cg_fuel_poly(input.fuel, &vapour);
    cg_fuel_fresh(input.fuel, input.lambda, moles);
    moles[CG_FUEL] = 0.0;
    cg_mixture_set(&air, moles, 0.0, NULL);
    double alone[CG_SPECIES] = {[CG_FUEL] = 1.0};
    cg_mixture_set(&fuel, alone, fuel_mass, &vapour);
    cg_fuel_burned(input.fuel, input.lambda, 0.99, moles);
    cg_mixture_set(&burned, moles, fuel_mass, &vapour);
    double in = cycle.air_mass * cg_mixture_enthalpy(&air, 325.0) +
                cycle.fuel_mass * (cg_mixture_enthalpy(&fuel, 298.15) -
                                   input.fuel->latent_heat);
    double out = (cycle.air_mass + cycle.fuel_mass) *
                 cg_mixture_enthalpy(&burned, cycle.exhaust_temperature);
    double work = cycle.gross_work + cycle.pumping_work;
    check_within((in - out - work - heat(&cycle)) / cycle.fuel_energy, 0.0,
                 1e-4, "first law");
    check_close(cycle.unburned_energy, 0.01 * cycle.fuel_energy, 0.02,
                "1 % stays unburned, and the heat of its evaporation");
}
END_TEST

/* The place of the burn is where the delay, followed along the cycle's own
 * points, has run off. */
START_TEST(it_fires_when_the_delay_is_over)
{
    const double pressures[] = {101e3, 180e3, 400e3};
    for (int i = 0; i < 3; i++) {
        struct cg_cycle_input input = truck();
        input.manifold_pressure = pressures[i];
        run(&input, &cycle);
        double sum = 0.0, second = 1.0 / (360.0 * input.speed);
        const struct cg_cycle_point *p = cycle.point;
        for (size_t j = 0; p[j].crank_deg < cycle.ignition_deg; j++) {
            double from = fmax(p[j].crank_deg, -6.0);
            double to = fmin(p[j + 1].crank_deg, cycle.ignition_deg);
            if (to > from)
                sum += (to - from) * second /
                       cg_injected_delay(
                           0.5 * (p[j].pressure + p[j + 1].pressure),
                           0.5 * (p[j].temperature + p[j + 1].temperature));
        }
        check_close(sum, 1.0, 0.02, "integral of the delay");
        ck_assert(cycle.burn50_deg > cycle.ignition_deg);
    }
}
END_TEST

START_TEST(what_moves_the_burn)
{
    struct cg_cycle_input input = truck();
    run(&input, &cycle);
    input.injection.start_deg = -10.0;
    run(&input, &other);
    ck_assert(other.burn50_deg < cycle.burn50_deg - 2.0);
    ck_assert(other.peak_pressure > cycle.peak_pressure);
    ck_assert(heat(&other) > heat(&cycle));
    input = truck();
    input.injection.delay_factor = 2.0;
    run(&input, &other);
    ck_assert(other.ignition_deg > cycle.ignition_deg);
    ck_assert(other.premixed_share >= cycle.premixed_share);
    input = truck();
    input.manifold_temperature = 250.0;
    run(&input, &other);
    ck_assert(other.ignition_deg > cycle.ignition_deg);
}
END_TEST

/* Too cold to fire: it burns from the latest angle on, and nothing jumps. */
START_TEST(a_cold_charge_fires_late)
{
    struct cg_cycle_input input = truck();
    input.crank.compression_ratio = 12.0;
    input.manifold_pressure = 60e3;
    input.manifold_temperature = 235.0;
    input.speed = 4500.0 / 60.0;
    run(&input, &cycle);
    ck_assert(cycle.ignition_deg == CG_IGNITION_LATEST);
    check_within(cycle.energy_residual, 0.0, 1e-6, "first law");
}
END_TEST

START_TEST(all_is_continuous)
{
    struct cg_cycle_input input = truck();
    double before = NAN;
    for (int i = 0; i < 60; i++) {
        input.manifold_temperature = 320.0 + 0.05 * i;
        run(&input, &cycle);
        double moved = cycle.ignition_deg - before;
        ck_assert(!(fabs(moved) > 4e-3));
        before = cycle.ignition_deg;
    }
}
END_TEST

/* A rough cycle's burn and heat are near the full one's. */
START_TEST(rough_cycles)
{
    struct cg_cycle_input input = truck();
    run(&input, &cycle);
    input.rough = true;
    run(&input, &other);
    check_close(heat(&other), heat(&cycle), 0.03, "as cycle.h says");
    check_within(other.ignition_deg, cycle.ignition_deg, 0.05, "its burn");
}
END_TEST

/* At the same load, boosted or not, a diesel gives its walls less: its air in
 * excess is cooler and does more work.  Counted by work that holds at any
 * lambda; of the fuel, nearer its smoke limit, the two come together. */
static void heat_at_equal_load(double manifold, double lambda)
{
    struct cg_cycle_input diesel = truck(), spark = rated();
    diesel.manifold_pressure = manifold;
    diesel.exhaust_pressure = manifold + 10e3;
    diesel.lambda = lambda;
    spark.crank = diesel.crank;
    spark.crank.compression_ratio = 9.0;
    spark.speed = diesel.speed;
    spark.manifold_temperature = diesel.manifold_temperature;
    spark.exhaust_pressure = diesel.exhaust_pressure;
    spark.lambda = 1.0;
    run(&diesel, &cycle);
    double low = 30e3, high = 600e3;
    for (int i = 0; i < 40; i++) {
        spark.manifold_pressure = 0.5 * (low + high);
        run(&spark, &other);
        if (other.imep_net < cycle.imep_net)
            low = spark.manifold_pressure;
        else
            high = spark.manifold_pressure;
    }
    check_close(other.imep_net, cycle.imep_net, 1e-6, "the same load");
    ck_assert(heat(&cycle) < heat(&other));
    if (lambda > 1.9)
        ck_assert(heat(&cycle) / cycle.fuel_energy <
                  heat(&other) / other.fuel_energy);
}

START_TEST(heat_below_spark_at_equal_load)
{
    for (double lambda = 1.3; lambda < 3.0; lambda *= 1.5) {
        heat_at_equal_load(101e3, lambda);
        heat_at_equal_load(280e3, lambda);
    }
}
END_TEST

START_TEST(what_is_refused)
{
    struct cg_error error;
    struct cg_cycle_input input = truck();
    input.injection.start_deg = 40.0;
    ck_assert(cg_cycle_run(&input, &cycle, &error) == CG_BAD_INPUT);
    input = truck();
    input.knock.octane = 98.0;
    ck_assert(cg_cycle_run(&input, &cycle, &error) == CG_BAD_INPUT);
    input = truck();
    input.latent_charge = 0.5;
    ck_assert(cg_cycle_run(&input, &cycle, &error) == CG_BAD_INPUT);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("injected burn");
    TCase *all = tcase_create("injected burn");
    tcase_add_test(all, energy_and_mass_close);
    tcase_add_test(all, exhaust_closes_the_balance);
    tcase_add_test(all, it_fires_when_the_delay_is_over);
    tcase_add_test(all, what_moves_the_burn);
    tcase_add_test(all, a_cold_charge_fires_late);
    tcase_add_test(all, all_is_continuous);
    tcase_add_test(all, rough_cycles);
    tcase_add_test(all, heat_below_spark_at_equal_load);
    tcase_add_test(all, what_is_refused);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
