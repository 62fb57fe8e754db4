#include "check_close.h"
#include "cycle_case.h"

#include "fresh.h"
#include "knock.h"
#include "spray.h"

static struct cg_cycle cycle, other;

static void run(const struct cg_cycle_input *input, struct cg_cycle *out)
{
    struct cg_error error = {CG_OK, ""};
    enum cg_status status = cg_cycle_run(input, out, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
}

/* Boosted; 12 mg of water a cycle, a quarter of the fuel. */
static struct cg_cycle_input wet(double entering, double closed)
{
    struct cg_cycle_input input = rated();
    const double water = 12e-6, whole = water * CG_WATER_EVAPORATION;
    input.manifold_pressure = 180e3;
    input.exhaust_pressure = 180e3;
    input.manifold_temperature = 330.0;
    input.knock = (struct cg_knock_law){98.0, 1.0, 0.0};
    input.brought = (struct cg_brought){
        .water = water, .entering = entering * whole, .closed = closed * whole};
    return input;
}

static double heat(const struct cg_cycle *c)
{
    return c->heat_head + c->heat_piston + c->heat_liner;
}

/* Vapour pressures of the handbooks. */
START_TEST(saturation)
{
    check_close(cg_water_saturation(293.15), 2339.0, 0.01, "IAPWS");
    check_close(cg_water_saturation(333.15), 19947.0, 0.01, "IAPWS");
    check_close(cg_water_saturation(373.15), 101418.0, 0.01, "IAPWS");
    check_close(cg_alcohol_saturation(337.8), 101325.0, 0.02,
                "boiling point 64.7 C");
}
END_TEST

START_TEST(the_law_takes_all_once)
{
    struct cg_evaporation law;
    cg_evaporation_set(&law, 3.0, -140.0, -20.0);
    check_close(cg_evaporation_between(&law, -360.0, 360.0), 3.0, 1e-14,
                "definition");
    check_close(cg_evaporation_between(&law, -140.0, -80.0), 1.5, 1e-12,
                "symmetry");
    double sum = 0.0;
    for (int i = 0; i < 1200; i++)
        sum += 0.1 * cg_evaporation_rate(&law, -139.95 + 0.1 * i);
    check_close(sum, 3.0, 1e-9, "the rate is the law's slope");
    ck_assert_double_eq(cg_evaporation_rate(&law, -150.0), 0.0);
    ck_assert(fabs(cg_evaporation_rate(&law, -10.0)) < 1e-12);
}
END_TEST

START_TEST(mass_and_energy_close)
{
    static const double shares[][2] = {{0, 0}, {1, 0}, {0, 1}, {0.3, 0.4}};
    for (size_t i = 0; i < 4; i++) {
        struct cg_cycle_input input = wet(shares[i][0], shares[i][1]);
        double latent = input.brought.entering + input.brought.closed;
        run(&input, &cycle);
        check_within(cycle.energy_residual, 0.0, 1e-6, "first law");
        check_close(cycle.trapped_mass,
                    cycle.air_mass + cycle.fuel_mass + 12e-6 +
                        cycle.residual_mass,
                    1e-7, "inflow is integrated");
        struct cg_fuel fuel = cg_fresh_fuel(&input);
        double moles[CG_SPECIES], mole = cg_fuel_molar_mass(&fuel);
        struct cg_poly vapour;
        struct cg_mixture fresh, burned;
        cg_fuel_poly(&fuel, &vapour);
        cg_fresh_moles(&input, &fuel, moles);
        cg_mixture_set(&fresh, moles, mole, &vapour);
        cg_fuel_burn(&fuel, input.combustion_efficiency, moles);
        cg_mixture_set(&burned, moles, mole, &vapour);
        double mass = cycle.air_mass + cycle.fuel_mass + 12e-6;
        double out = cg_mixture_enthalpy(&burned, cycle.exhaust_temperature) -
                     cg_mixture_enthalpy(&burned, 298.15);
        double in = cg_mixture_enthalpy(&fresh, input.manifold_temperature) -
                    cg_mixture_enthalpy(&fresh, 298.15);
        check_close(cycle.gross_work + cycle.pumping_work + heat(&cycle) +
                        cycle.unburned_energy + mass * out,
                    cycle.fuel_energy + mass * in +
                        cycle.fuel_mass * fuel.latent_heat - latent,
                    1e-4, "first law, by parts: the spray's heat is paid");
    }
}
END_TEST

/* The mean gas of a cycle without walls, and its end gas, are cooled alike:
 * T falls by q/cp, and by what compression makes of that. */
START_TEST(the_end_gas_is_cooled_as_the_charge_is)
{
    struct cg_cycle_input input = wet(0.0, 0.8);
    input.heat_factor = 0.0;
    run(&input, &cycle);
    struct cg_fuel fuel = cg_fresh_fuel(&input);
    struct cg_poly vapour;
    struct cg_mixture fresh;
    struct cg_end_gas gas;
    struct cg_evaporation law;
    double moles[CG_SPECIES];
    cg_fuel_poly(&fuel, &vapour);
    cg_fresh_moles(&input, &fuel, moles);
    cg_mixture_set(&fresh, moles, cg_fuel_molar_mass(&fuel), &vapour);
    double start = cg_wiebe_from_burn(9.0, 28.0).start_deg;
    cg_evaporation_set(&law, input.brought.closed, -140.0, start);
    size_t i = 0;
    while (cycle.point[i].crank_deg < -140.0)
        i++;
    cg_end_gas_begin(&input.knock, &fresh, &fresh, 0.0, cycle.point[i].pressure,
                     cycle.point[i].temperature, &gas);
    for (; cycle.point[i + 1].crank_deg <= start + 1e-9; i++)
        cg_end_gas_step(&input.knock, cycle.point[i + 1].pressure, 1e-4,
                        cg_evaporation_between(&law, cycle.point[i].crank_deg,
                                               cycle.point[i + 1].crank_deg) /
                            cycle.trapped_mass,
                        &gas);
    /* the residual's cp is not that of the fresh gas */
    check_close(gas.temperature, cycle.point[i].temperature, 5e-3, "derived");
}
END_TEST

/* The more of it evaporates in the closed cylinder, the less knock. */
START_TEST(spray_holds_knock_back)
{
    struct cg_cycle_input input = wet(0.0, 0.0);
    run(&input, &other);
    for (int i = 1; i <= 4; i++) {
        input = wet(0.0, 0.25 * i);
        run(&input, &cycle);
        check_most(cycle.knock_integral, 0.97 * other.knock_integral,
                   "cooler end gas");
        check_close(cycle.knock_unretarded, cycle.knock_integral, 0.01,
                    "the search's own steps");
        other = cycle;
    }
}
END_TEST

/* A blend is as good as its parts: heat, need and mass are those of both. */
START_TEST(alcohol_is_fuel)
{
    struct cg_cycle_input input = wet(0.0, 0.0);
    const struct cg_fuel *own = input.fuel, *alcohol = cg_spray_alcohol();
    input.brought.water = 0.0;
    run(&input, &other);
    input.brought.alcohol = 20e-6;
    run(&input, &cycle);
    check_close(cycle.air_mass, other.air_mass, 1e-14, "same air");
    double left =
        cycle.air_mass / input.lambda - 20e-6 * cg_fuel_stoichiometric(alcohol);
    double gasoline = left / cg_fuel_stoichiometric(own);
    check_close(cycle.fuel_mass, gasoline + 20e-6, 1e-9, "lambda is held");
    check_close(cycle.fuel_energy,
                gasoline * own->heating_value + 20e-6 * alcohol->heating_value,
                1e-9, "both burn");
    check_within(cycle.energy_residual, 0.0, 1e-6, "first law");
    struct cg_fuel half = cg_fuel_blend(own, alcohol, 0.5);
    double air =
        0.5 * (cg_fuel_stoichiometric(own) + cg_fuel_stoichiometric(alcohol));
    check_close(cg_fuel_stoichiometric(&half), air, 1e-12, "by mass");
    half = cg_fuel_blend(own, alcohol, 0.0);
    check_close(cg_fuel_molar_mass(&half), cg_fuel_molar_mass(own), 1e-14,
                "none of it");
}
END_TEST

START_TEST(more_alcohol_than_burns_is_refused)
{
    struct cg_cycle_input input = wet(0.0, 0.0);
    struct cg_error error;
    input.brought.alcohol = 1e-3;
    ck_assert_int_eq(cg_cycle_run(&input, &cycle, &error), CG_BAD_INPUT);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("spray");
    TCase *all = tcase_create("spray");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, saturation);
    tcase_add_test(all, the_law_takes_all_once);
    tcase_add_test(all, mass_and_energy_close);
    tcase_add_test(all, the_end_gas_is_cooled_as_the_charge_is);
    tcase_add_test(all, spray_holds_knock_back);
    tcase_add_test(all, alcohol_is_fuel);
    tcase_add_test(all, more_alcohol_than_burns_is_refused);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
