#include "check_close.h"
#include "cycle_case.h"

#include "fresh.h"
#include "nitrous.h"

#define PUBLISHED "NIST-JANAF (1998), NIST WebBook"

static struct cg_cycle cycle, other;

static void run(const struct cg_cycle_input *input, struct cg_cycle *out)
{
    struct cg_error error = {CG_OK, ""};
    enum cg_status status = cg_cycle_run(input, out, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
}

/* 60 mg a cycle: an eighth of the air. */
static struct cg_cycle_input fed(void)
{
    struct cg_cycle_input input = rated();
    input.brought =
        (struct cg_brought){.nitrous = 60e-6, .nitrous_lambda = 0.8};
    return input;
}

static double heat(const struct cg_cycle *c)
{
    return c->heat_head + c->heat_piston + c->heat_liner;
}

START_TEST(published_heats)
{
    check_close(cg_nitrous_decomposition(), 1.864e6, 2e-4, PUBLISHED);
    check_close(cg_nitrous_evaporation(184.67), 374e3, 1e-12, PUBLISHED);
    check_close(cg_nitrous_evaporation(273.0), 233e3, 1e-12, PUBLISHED);
    check_close(cg_nitrous_evaporation(293.0), 170e3, 1e-12, PUBLISHED);
    ck_assert_double_eq(cg_nitrous_evaporation(CG_NITROUS_CRITICAL), 0.0);
    ck_assert_double_eq(cg_nitrous_evaporation(320.0), 0.0);
    for (double t = 185.0; t < 309.0; t += 1.0)
        ck_assert(cg_nitrous_evaporation(t) > cg_nitrous_evaporation(t + 1.0));
}
END_TEST

/* 82.05 kJ/mol at 298.15 K; cp 38.6 J/(mol K). */
START_TEST(the_gas_is_nitrous)
{
    double moles[CG_SPECIES] = {[CG_N2O] = 1.0};
    struct cg_mixture gas;
    cg_mixture_set(&gas, moles, 0.0, NULL);
    check_close(44.013e-3 * cg_mixture_enthalpy(&gas, 298.15), 82.05e3, 1e-6,
                PUBLISHED);
    check_close(44.013e-3 * cg_mixture_cp(&gas, 298.15), 38.6, 2e-3, PUBLISHED);
    check_close(cg_mixture_cp(&gas, 999.999), cg_mixture_cp(&gas, 1000.001),
                1e-5, "the ranges meet");
    check_close(cg_mixture_enthalpy(&gas, 999.999),
                cg_mixture_enthalpy(&gas, 1000.001), 1e-5, "the ranges meet");
}
END_TEST

/* A third of what is left when it has come apart is oxygen. */
START_TEST(a_third_is_oxygen)
{
    struct cg_cycle_input input = fed();
    struct cg_fuel fuel = cg_fresh_fuel(&input);
    double moles[CG_SPECIES] = {[CG_N2O] = 1.0, [CG_O2] = 1e3};
    cg_fuel_burn(&fuel, 1.0, moles);
    double oxygen = 1e3 - moles[CG_O2]; /* the fuel took this much */
    double without[CG_SPECIES] = {[CG_O2] = 1e3};
    cg_fuel_burn(&fuel, 1.0, without);
    double given = oxygen - (1e3 - without[CG_O2]);
    check_close(moles[CG_N2], 1.0, 1e-14, "N2O -> N2 + O2/2");
    check_close(-given / (moles[CG_N2] - given), 1.0 / 3.0, 1e-9, PUBLISHED);
    /* 4.3 kg of air hold its half mole of O2 for each 44 g: by hand,
     * 0.5/0.20946 x 28.965/44.013 */
    check_close(cg_nitrous_oxygen_as_air(), 1.5710, 1e-4, "by hand");
}
END_TEST

static void atoms(const struct cg_fuel *fuel, const double *n, double out[4])
{
    out[0] = n[CG_CO2] + n[CG_CO] + n[CG_FUEL] * fuel->carbon;
    out[1] = 2.0 * (n[CG_H2O] + n[CG_H2]) + n[CG_FUEL] * fuel->hydrogen;
    out[2] = 2.0 * (n[CG_O2] + n[CG_CO2]) + n[CG_CO] + n[CG_H2O] + n[CG_N2O] +
             n[CG_FUEL] * fuel->oxygen;
    out[3] = 2.0 * (n[CG_N2] + n[CG_N2O]);
}

/* No atom is made or lost, rich or lean, with water and alcohol beside it. */
START_TEST(atoms_close)
{
    static const double lambdas[] = {0.6, 0.8, 1.0, 1.3};
    for (int i = 0; i < 16; i++) {
        struct cg_cycle_input input = fed();
        double moles[CG_SPECIES], before[4], after[4];
        input.lambda = lambdas[i % 4];
        input.brought.nitrous_lambda = lambdas[i / 4];
        input.brought.water = 1e-5 * (i % 3);
        input.brought.alcohol = 1e-5 * (i % 2);
        struct cg_fuel fuel = cg_fresh_fuel(&input);
        cg_fresh_moles(&input, &fuel, moles);
        atoms(&fuel, moles, before);
        cg_fuel_burn(&fuel, 0.97, moles);
        atoms(&fuel, moles, after);
        for (int k = 0; k < 4; k++)
            check_close(after[k], before[k], 1e-12, "atoms");
        for (int s = 0; s < CG_SPECIES; s++)
            ck_assert_double_ge(moles[s], -1e-12);
    }
}
END_TEST

/* Fuel for the air and for the nitrous, each at its own lambda; oxygen in all
 * over what all the fuel needs lies between. */
START_TEST(masses_close)
{
    struct cg_cycle_input input = fed();
    run(&input, &cycle);
    double need = cg_fuel_stoichiometric(input.fuel);
    double air = cycle.air_mass / (input.lambda * need);
    double mole = cg_fuel_molar_mass(input.fuel);
    double per_fuel = 2.0 * 44.013e-3 *
                      (input.fuel->carbon + 0.25 * input.fuel->hydrogen) / mole;
    check_close(cycle.fuel_mass, air + 60e-6 / (0.8 * per_fuel), 1e-9,
                "by hand");
    check_close(cycle.trapped_mass,
                cycle.air_mass + cycle.fuel_mass + 60e-6 + cycle.residual_mass,
                1e-7, "inflow is integrated");
    check_close(cycle.fuel_energy,
                cycle.fuel_mass * input.fuel->heating_value + 60e-6 * 1.86422e6,
                1e-5, "by hand");
}
END_TEST

/* What comes in is work, heat, what is not burned, and sensible in what leaves.
 */
START_TEST(energy_closes)
{
    for (int i = 0; i < 4; i++) {
        struct cg_cycle_input input = fed();
        input.brought.nitrous *= i;
        input.brought.nitrous_lambda = i == 2 ? 1.2 : 0.8;
        run(&input, &cycle);
        check_within(cycle.energy_residual, 0.0, 1e-6, "first law");
        struct cg_fuel fuel = cg_fresh_fuel(&input);
        double moles[CG_SPECIES], mole = cg_fuel_molar_mass(&fuel);
        struct cg_poly vapour;
        struct cg_mixture fresh, burned;
        cg_fuel_poly(&fuel, &vapour);
        cg_fresh_moles(&input, &fuel, moles);
        cg_mixture_set(&fresh, moles, mole, &vapour);
        cg_fuel_burn(&fuel, input.combustion_efficiency, moles);
        cg_mixture_set(&burned, moles, mole, &vapour);
        double mass = cycle.air_mass + cycle.fuel_mass + input.brought.nitrous;
        double out = cg_mixture_enthalpy(&burned, cycle.exhaust_temperature) -
                     cg_mixture_enthalpy(&burned, 298.15);
        double in = cg_mixture_enthalpy(&fresh, input.manifold_temperature) -
                    cg_mixture_enthalpy(&fresh, 298.15);
        check_close(cycle.gross_work + cycle.pumping_work + heat(&cycle) +
                        cycle.unburned_energy + mass * out,
                    cycle.fuel_energy + mass * in +
                        cycle.fuel_mass * fuel.latent_heat,
                    1e-4, "first law, by parts");
    }
}
END_TEST

START_TEST(more_of_it_is_more_pressure_heat_and_work)
{
    struct cg_cycle_input input = rated();
    run(&input, &other);
    for (int i = 1; i <= 5; i++) {
        input = fed();
        input.brought.nitrous = 20e-6 * i;
        input.brought.displaced = 0.6 * input.brought.nitrous;
        run(&input, &cycle);
        ck_assert(cycle.peak_pressure > 1.02 * other.peak_pressure);
        ck_assert(cycle.gross_work > 1.02 * other.gross_work);
        ck_assert(heat(&cycle) > 1.02 * heat(&other));
        other = cycle;
    }
}
END_TEST

/* 50 kW: 9.30 kg burn one of gasoline, so that a kilogram releases
 * 44/9.30 + 1.864 MJ, and 30 % of it reach the crankshaft. */
START_TEST(flow_by_the_power_asked_for)
{
    const struct cg_fuel *fuel = cg_fuel_find("gasoline");
    double want = 50e3 / (0.3 * (44.0 / 9.300 + 1.864) * 1e6);
    check_close(cg_nitrous_flow(fuel, 0.8, 50e3), want, 2e-3, "by hand");
    check_close(cg_nitrous_flow(fuel, 1.25, 50e3),
                50e3 / (0.3 * (44.0 / 9.300 / 1.25 + 1.864) * 1e6), 2e-3,
                "by hand");
}
END_TEST

START_TEST(what_means_nothing_is_refused)
{
    struct cg_cycle_input input = fed();
    struct cg_error error;
    input.brought.nitrous_lambda = 0.4;
    ck_assert_int_eq(cg_cycle_run(&input, &cycle, &error), CG_BAD_INPUT);
    input = fed();
    input.brought.displaced = 1.0;
    ck_assert_int_eq(cg_cycle_run(&input, &cycle, &error), CG_BAD_INPUT);
    input = fed();
    input.brought.nitrous = NAN;
    ck_assert_int_eq(cg_cycle_run(&input, &cycle, &error), CG_BAD_INPUT);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("nitrous");
    TCase *all = tcase_create("nitrous");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, published_heats);
    tcase_add_test(all, the_gas_is_nitrous);
    tcase_add_test(all, a_third_is_oxygen);
    tcase_add_test(all, atoms_close);
    tcase_add_test(all, masses_close);
    tcase_add_test(all, energy_closes);
    tcase_add_test(all, more_of_it_is_more_pressure_heat_and_work);
    tcase_add_test(all, flow_by_the_power_asked_for);
    tcase_add_test(all, what_means_nothing_is_refused);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
