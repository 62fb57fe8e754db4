#include <string.h>

#include "check_close.h"

#include "operating.h"
#include "setting.h"

#define BY_HAND "worked by hand from the formula in the header"

static struct cg_case base_case(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.bore = 0.0863;
    c.engine.stroke = 0.0917;
    c.engine.speed = 6300.0 / 60.0;
    c.engine.cylinders = 4;
    ck_assert_ptr_null(cg_case_complete(&c));
    c.charge.ambient_temperature = 294.7;
    c.charge.ambient_pressure = 99.3e3;
    c.charge.boost = 137e3;
    c.charge.closed_throttle = 33e3;
    c.charge.compressor_efficiency = 0.71;
    c.charge.cooler_effectiveness = 0.63;
    c.charge.intake_heating = 7.3;
    c.charge.evaporation = 0.0;
    c.charge.charger = CG_CHARGER_TURBINE;
    c.charge.exhaust_base = 11e3;
    c.charge.turbine_ratio = 0.83;
    strcpy(c.fuel.name, "gasoline");
    c.fuel.lambda = 0.84;
    return c;
}

static struct cg_charge_state charge_at(const struct cg_case *c, double load)
{
    struct cg_operating operating =
        cg_operating_at(c, c->engine.speed, load);
    struct cg_charge_state charge;
    cg_operating_charge(c, &operating, &charge);
    return charge;
}

START_TEST(manifold_pressure_runs_straight_with_load)
{
    struct cg_case c = base_case();
    check_close(charge_at(&c, 0.0).manifold_pressure, 33e3, 1e-14, BY_HAND);
    check_close(charge_at(&c, 1.0).manifold_pressure, 236.3e3, 1e-14, BY_HAND);
    check_close(charge_at(&c, 0.37).manifold_pressure,
                33e3 + 0.37 * 203.3e3, 1e-14, BY_HAND);
}
END_TEST

START_TEST(compressor_and_cooler)
{
    struct cg_case c = base_case();
    struct cg_charge_state charge = charge_at(&c, 1.0);
    /* (236.3/99.3)^(0.4/1.4) = 1.281079; over 0.71: rise 116.667 K */
    double rise = 294.7 * (pow(236.3 / 99.3, 0.4 / 1.4) - 1.0) / 0.71;
    check_close(rise, 116.667, 1e-5, "worked on paper");
    check_close(charge.compressor_work, 1005.0 * rise, 1e-13, BY_HAND);
    check_close(charge.manifold_temperature,
                294.7 + 0.37 * rise + 7.3, 1e-13, BY_HAND);
    c.charge.cooler_effectiveness = 0.0;
    check_close(charge_at(&c, 1.0).manifold_temperature, 294.7 + rise + 7.3,
                1e-13, BY_HAND);
    c.charge.cooler_effectiveness = 1.0;
    check_close(charge_at(&c, 1.0).manifold_temperature, 302.0, 1e-13,
                BY_HAND);
}
END_TEST

START_TEST(no_compression_below_ambient)
{
    struct cg_case c = base_case();
    struct cg_charge_state charge = charge_at(&c, 0.2);
    ck_assert_double_lt(charge.manifold_pressure, c.charge.ambient_pressure);
    ck_assert_double_eq(charge.compressor_work, 0.0);
    check_close(charge.manifold_temperature, 302.0, 1e-13, BY_HAND);
    check_close(charge.exhaust_pressure,
                99.3e3 + 11e3 * charge.manifold_pressure / 99.3e3, 1e-13,
                BY_HAND);
}
END_TEST

START_TEST(back_pressure_by_charger)
{
    struct cg_case c = base_case();
    double plain = 99.3e3 + 11e3 * 236.3 / 99.3;
    check_close(charge_at(&c, 1.0).exhaust_pressure, plain + 0.83 * 137e3,
                1e-13, BY_HAND);
    c.charge.charger = CG_CHARGER_BELT;
    check_close(charge_at(&c, 1.0).exhaust_pressure, plain, 1e-13, BY_HAND);
    ck_assert_double_gt(charge_at(&c, 1.0).compressor_work, 1e5);
}
END_TEST

/* A turbine, a cooler, a belt: what each costs is its own. */
START_TEST(two_chargers_in_a_row)
{
    struct cg_case c = base_case();
    c.charge.second_charger = CG_CHARGER_BELT;
    c.charge.split = 0.4;
    c.charge.second_efficiency = 0.58;
    c.charge.between_effectiveness = 0.45;
    double first = pow(236.3 / 99.3, 0.4), second = pow(236.3 / 99.3, 0.6);
    double rise = 294.7 * (pow(first, 0.4 / 1.4) - 1.0) / 0.71;
    double more = (294.7 + 0.55 * rise) * (pow(second, 0.4 / 1.4) - 1.0) / 0.58;
    struct cg_charge_state got = charge_at(&c, 1.0);
    check_close(got.manifold_temperature,
                294.7 + 0.37 * (0.55 * rise + more) + 7.3, 1e-12, BY_HAND);
    check_close(got.belt_work, 1005.0 * more, 1e-12, BY_HAND);
    check_close(got.compressor_work, 1005.0 * (rise + more), 1e-12, BY_HAND);
    double plain = 99.3e3 + 11e3 * 236.3 / 99.3;
    check_close(got.exhaust_pressure, plain + 0.83 * 99.3e3 * (first - 1.0),
                1e-12, BY_HAND);
    c.charge.second_charger = CG_CHARGER_TURBINE;
    check_close(charge_at(&c, 1.0).exhaust_pressure, plain + 0.83 * 137e3,
                1e-12, BY_HAND);
    ck_assert_double_eq(charge_at(&c, 1.0).belt_work, 0.0);
    ck_assert_double_eq(charge_at(&c, 0.2).compressor_work, 0.0);
}
END_TEST

START_TEST(evaporation_cools_by_the_latent_heat)
{
    struct cg_case c = base_case();
    double dry = charge_at(&c, 1.0).manifold_temperature;
    const struct cg_fuel *fuel = cg_fuel_find("methanol");
    strcpy(c.fuel.name, "methanol");
    c.charge.evaporation = 0.4;
    double drop = 0.4 * fuel->latent_heat /
                  (0.84 * cg_fuel_stoichiometric(fuel) * 1005.0);
    check_close(dry - charge_at(&c, 1.0).manifold_temperature, drop, 1e-11,
                BY_HAND);
    ck_assert_double_gt(drop, 50.0);
}
END_TEST

START_TEST(mixture_by_load)
{
    struct cg_case c = base_case();
    ck_assert_double_eq(charge_at(&c, 0.0).lambda, 1.0);
    ck_assert_double_eq(charge_at(&c, 0.6).lambda, 1.0);
    check_close(charge_at(&c, 0.8).lambda, 0.92, 1e-13, BY_HAND);
    check_close(charge_at(&c, 1.0).lambda, 0.84, 1e-13, BY_HAND);
}
END_TEST

START_TEST(cycle_input_carries_the_case)
{
    struct cg_case c = base_case();
    struct cg_operating operating = cg_operating_at(&c, 87.3, 1.0);
    struct cg_cycle_input input;
    struct cg_error error;
    operating.heat_factor = 1.31;
    c.combustion.heat_factor = 0.93;
    c.combustion.burn50_deg = 7.7;
    c.combustion.retard_deg_per_100kPa = 4.1;
    ck_assert_int_eq(
        cg_operating_cycle_input(&c, &operating, &input, &error), CG_OK);
    ck_assert_double_eq(input.speed, 87.3);
    check_close(input.heat_factor, 0.93 * 1.31, 1e-14, BY_HAND);
    check_close(input.burn50_deg, 7.7 + 4.1 * 1.37, 1e-14, BY_HAND);
    check_close(input.manifold_pressure, 236.3e3, 1e-14, BY_HAND);
    ck_assert_str_eq(input.fuel->name, "gasoline");
    ck_assert_str_eq(input.correlation->name, c.combustion.heat_transfer);
    const char *const practice = "common practice, no source";
    check_close(input.intake_close_deg, -140.0, 1e-14, practice);
    check_close(input.exhaust_open_deg, 130.0, 1e-14, practice);
    /* no more than 15 degrees, however high the boost */
    c.combustion.retard_deg_per_100kPa = 12.0;
    cg_operating_cycle_input(&c, &operating, &input, &error);
    check_close(input.burn50_deg, 7.7 + 15.0, 1e-14, practice);
    c.combustion.retard_deg_per_100kPa = 4.1;
    /* at part load no retard is taken back below no boost */
    operating.load = 0.2;
    cg_operating_cycle_input(&c, &operating, &input, &error);
    ck_assert_double_eq(input.burn50_deg, 7.7);
    ck_assert_double_eq(input.knock.retard_most, 0.0);
    /* without the rule the cycle finds the burn */
    c.combustion.retard_deg_per_100kPa = NAN;
    c.combustion.knock_delay = 1.2;
    c.fuel.octane = 94.0;
    operating.load = 1.0;
    cg_operating_cycle_input(&c, &operating, &input, &error);
    ck_assert_double_eq(input.burn50_deg, 7.7);
    ck_assert_double_eq(input.knock.retard_most, CG_RETARD_MOST);
    ck_assert_double_eq(input.knock.delay_factor, 1.2);
    ck_assert_double_eq(input.knock.octane, 94.0);
}
END_TEST

START_TEST(unknown_names_are_refused)
{
    struct cg_case c = base_case();
    struct cg_operating operating = cg_operating_at(&c, 87.3, 1.0);
    struct cg_cycle_input input;
    struct cg_error error;
    strcpy(c.fuel.name, "lamp oil");
    ck_assert_int_eq(
        cg_operating_cycle_input(&c, &operating, &input, &error),
        CG_BAD_INPUT);
    ck_assert_ptr_nonnull(strstr(error.text, "lamp oil"));
    c = base_case();
    strcpy(c.combustion.heat_transfer, "guess");
    ck_assert_int_eq(
        cg_operating_cycle_input(&c, &operating, &input, &error),
        CG_BAD_INPUT);
    ck_assert_ptr_nonnull(strstr(error.text, "guess"));
}
END_TEST

START_TEST(friction)
{
    /* 0.4 + 0.005 x 80 + 0.09 x 15 + 0.0009 x 225 = 2.3525 bar */
    check_close(cg_friction_mep(80e5, 15.0), 2.3525e5, 1e-13, BY_HAND);
    check_close(cg_friction_mep(0.0, 0.0), 0.4e5, 1e-13, BY_HAND);
}
END_TEST

/* What a course says of its own comes first; what it leaves to the case does
 * not change, and a burn as it was logged is not retarded further. */
START_TEST(a_course_says_mixture_burn_and_air)
{
    struct cg_case c = base_case();
    double of[CG_CHANNELS] = {80.0, 1.0, NAN, 351.0, 0.93, 17.0, 378.0, 331.0,
                              NAN, NAN};
    struct cg_charge_state usual, own;
    struct cg_cycle_input input;
    struct cg_error error;
    struct cg_operating at = cg_operating_of(&c, of);
    cg_operating_charge(&c, &at, &own);
    ck_assert_double_eq(own.lambda, 0.93);
    c.charge.ambient_temperature += 50.0; /* the air was measured */
    cg_operating_charge(&c, &at, &usual);
    ck_assert_double_eq(own.manifold_temperature, usual.manifold_temperature);
    ck_assert_int_eq(cg_operating_cycle_input(&c, &at, &input, &error), CG_OK);
    ck_assert_double_eq(input.burn50_deg, 17.0);
    ck_assert_double_eq(input.knock.retard_most, 0.0);
    ck_assert_double_eq(at.coolant_temperature, 351.0);
    ck_assert_double_eq(at.oil_temperature, 378.0);
    ck_assert_double_eq(at.heat_factor, 1.0);
    for (int k = CG_CHANNEL_COOLANT; k < CG_CHANNELS; k++)
        of[k] = NAN;
    struct cg_operating bare = cg_operating_of(&c, of);
    struct cg_operating same = cg_operating_at(&c, 80.0, 1.0);
    ck_assert_double_eq(bare.coolant_temperature, same.coolant_temperature);
    ck_assert_double_eq(bare.oil_temperature, same.oil_temperature);
    ck_assert(isnan(bare.lambda) && isnan(bare.burn50_deg) &&
              isnan(bare.air_temperature));
}
END_TEST

/* Before the valve, on the walls, in the cylinder: nothing is left over. */
START_TEST(latent_heat_comes_from_somewhere)
{
    struct cg_case c = base_case();
    struct cg_operating at = cg_operating_at(&c, c.engine.speed, 1.0);
    struct cg_cycle_input input;
    struct cg_error error;
    for (int i = 0; i <= 2; i++) {
        c.charge.evaporation = 0.37;
        c.charge.wall_evaporation = 0.5 * i;
        ck_assert(cg_operating_cycle_input(&c, &at, &input, &error) == CG_OK);
        check_close(0.37 + input.latent_walls + input.latent_charge, 1.0,
                    1e-14, "definition");
        check_within(input.latent_walls, 0.63 * 0.5 * i, 1e-14, "definition");
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("operating");
    TCase *all = tcase_create("operating");
    tcase_add_test(all, manifold_pressure_runs_straight_with_load);
    tcase_add_test(all, compressor_and_cooler);
    tcase_add_test(all, no_compression_below_ambient);
    tcase_add_test(all, back_pressure_by_charger);
    tcase_add_test(all, two_chargers_in_a_row);
    tcase_add_test(all, latent_heat_comes_from_somewhere);
    tcase_add_test(all, evaporation_cools_by_the_latent_heat);
    tcase_add_test(all, mixture_by_load);
    tcase_add_test(all, cycle_input_carries_the_case);
    tcase_add_test(all, unknown_names_are_refused);
    tcase_add_test(all, friction);
    tcase_add_test(all, a_course_says_mixture_burn_and_air);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
