#include <string.h>

#include "check_close.h"

#include "brought.h"
#include "brought_check.h"
#include "fresh.h"
#include "nitrous.h"
#include "setting.h"
#include "spray.h"

#define BY_HAND "worked by hand from the header"

/* Without boost, fuel that evaporates before the valve, or heated ports. */
static struct cg_case base_case(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.bore = 0.0863;
    c.engine.stroke = 0.0917;
    c.engine.speed = 6300.0 / 60.0;
    c.engine.cylinders = 4;
    ck_assert_ptr_null(cg_case_complete(&c));
    c.charge.charger = CG_CHARGER_NONE;
    c.charge.ambient_temperature = 300.0;
    c.charge.intake_heating = 0.0;
    c.charge.evaporation = 0.0;
    strcpy(c.fuel.name, "gasoline");
    c.duty.segments = 1;
    c.duty.segment[0] = (struct cg_segment){.seconds = 5.0,
                                            .speed = c.engine.speed,
                                            .speed_end = c.engine.speed,
                                            .load = 1.0,
                                            .load_end = 1.0,
                                            .heat_factor = 1.0,
                                            .coolant_temperature = NAN,
                                            .nitrous = 1.0};
    return c;
}

static struct cg_cycle_input input_of(const struct cg_case *c,
                                      const struct cg_operating *at)
{
    struct cg_cycle_input input;
    struct cg_error error = {CG_OK, ""};
    enum cg_status status = cg_operating_cycle_input(c, at, &input, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return input;
}

/* Masses over two turns of four cylinders; cold gas makes the charge denser,
 * and takes the room of as many moles of air. */
START_TEST(gas_from_a_cold_bottle)
{
    struct cg_case c = base_case();
    c.nitrous.flow = 0.030;
    c.nitrous.state = CG_NITROUS_GAS;
    c.nitrous.bottle = 260.0;
    struct cg_operating at = cg_operating_full(&c);
    struct cg_cycle_input input = input_of(&c, &at);
    double mass = 0.030 / (0.5 * 105.0 * 4.0);
    check_close(input.brought.nitrous, mass, 1e-12, BY_HAND);
    check_close(input.brought.displaced, mass * 28.965 / 44.013, 1e-4, BY_HAND);
    double air = cg_fresh_air(&input), t = input.manifold_temperature;
    double whole = c.charge.volumetric_efficiency * 101325.0 *
                   cg_crank_swept(&input.crank) / (287.05 * t);
    check_close(air, whole - mass * 28.965 / 44.013, 1e-4, BY_HAND);
    check_close(air * 1005.0 * (300.0 - t), mass * 850.0 * (t - 260.0), 1e-6,
                "what air loses nitrous gains");
}
END_TEST

START_TEST(liquid_takes_its_heat_of_evaporation)
{
    struct cg_case c = base_case();
    c.nitrous.flow = 0.030;
    c.nitrous.bottle = 273.0;
    struct cg_operating at = cg_operating_full(&c);
    struct cg_cycle_input input = input_of(&c, &at);
    double mass = input.brought.nitrous, t = input.manifold_temperature;
    check_close(cg_fresh_air(&input) * 1005.0 * (300.0 - t),
                mass * (850.0 * (t - 273.0) + 233e3), 1e-6,
                "what air loses nitrous gains");
    at.nitrous = 0.4;
    check_close(input_of(&c, &at).brought.nitrous, 0.4 * mass, 1e-12,
                "its share that is on");
    at.nitrous = 0.0;
    ck_assert_double_eq(input_of(&c, &at).manifold_temperature, 300.0);
}
END_TEST

START_TEST(lambda_of_its_own_or_the_engines)
{
    struct cg_case c = base_case();
    c.nitrous.flow = 0.030;
    struct cg_operating at = cg_operating_full(&c);
    check_close(input_of(&c, &at).brought.nitrous_lambda, c.fuel.lambda, 1e-14,
                "definition");
    c.nitrous.lambda = 0.77;
    c.scale.lambda = 1.03;
    check_close(input_of(&c, &at).brought.nitrous_lambda, 0.77 * 1.03, 1e-14,
                "definition");
    c.nitrous.flow = 0.0;
    c.nitrous.power = 60e3;
    c.nitrous.lambda = NAN;
    check_close(cg_brought_nitrous(&c),
                cg_nitrous_flow(cg_fuel_find("gasoline"), c.fuel.lambda, 60e3),
                1e-14, "definition");
}
END_TEST

/* Delay with the inverse of oxygen's share: at equal moles of air and nitrous
 * 0.20946 against (0.20946 + 0.5)/2. */
START_TEST(oxygen_shortens_the_delay)
{
    struct cg_case c = base_case();
    struct cg_operating at = cg_operating_full(&c);
    struct cg_cycle_input input = input_of(&c, &at);
    ck_assert_double_eq(cg_brought_delay(&input), 1.0);
    double air = cg_fresh_air(&input) / 28.965e-3;
    input.brought.nitrous = air * 44.013e-3;
    check_close(cg_brought_delay(&input), 2.0 * 0.20946 / 0.70946, 1e-4,
                BY_HAND);
}
END_TEST

/* It rises from from_load to load 1, and follows the speed. */
START_TEST(spray_by_load_and_speed)
{
    struct cg_case c = base_case();
    c.spray.flow = 0.008;
    c.spray.alcohol = 0.25;
    c.spray.from_load = 0.6;
    double rated = 0.008 / (0.5 * 105.0 * 4.0);
    struct cg_operating at = cg_operating_at(&c, 105.0, 1.0);
    check_close(input_of(&c, &at).brought.water, 0.75 * rated, 1e-12, BY_HAND);
    check_close(input_of(&c, &at).brought.alcohol, 0.25 * rated, 1e-12,
                BY_HAND);
    at.speed = 50.0;
    check_close(input_of(&c, &at).brought.water, 0.75 * rated, 1e-12,
                "a cycle's share stays");
    at.load = 0.8;
    check_close(input_of(&c, &at).brought.water, 0.375 * rated, 1e-9, BY_HAND);
    at.load = 0.5;
    ck_assert_double_eq(input_of(&c, &at).brought.water, 0.0);
}
END_TEST

/* Of 1 kg as liquid at the air's temperature: before, entering, closed. */
START_TEST(spray_heat_by_shares)
{
    struct cg_case c = base_case();
    c.spray.flow = 0.004;
    c.spray.before = 0.2;
    c.spray.closed = 0.5;
    struct cg_operating at = cg_operating_at(&c, 105.0, 1.0);
    struct cg_cycle_input input = input_of(&c, &at);
    double mass = input.brought.water, t = input.manifold_temperature;
    check_close(input.brought.entering, 0.3 * mass * 2442e3, 1e-12, BY_HAND);
    check_close(input.brought.closed, 0.5 * mass * 2442e3, 1e-12, BY_HAND);
    check_close(cg_fresh_air(&input) * 1005.0 * (300.0 - t),
                0.2 * mass * (2442e3 - 1880.0 * (300.0 - t)), 1e-6,
                "what air loses vapour takes");
    double octane = input.knock.octane;
    c.spray.alcohol = 1.0;
    ck_assert(input_of(&c, &at).knock.octane > octane);
    ck_assert(input_of(&c, &at).knock.octane < 107.0);
}
END_TEST

/* Where the mixture holds its air, alcohol takes the place of fuel that would
 * have cooled the charge itself. */
START_TEST(own_fuel_follows)
{
    struct cg_case c = base_case();
    c.charge.evaporation = 0.5;
    struct cg_operating at = cg_operating_full(&c);
    double dry = input_of(&c, &at).manifold_temperature;
    c.nitrous.flow = 0.020;
    c.nitrous.state = CG_NITROUS_GAS;
    c.nitrous.bottle = dry;
    struct cg_cycle_input input = input_of(&c, &at);
    double fuel = input.brought.nitrous * cg_nitrous_oxygen_as_air() /
                  (c.fuel.lambda * cg_fuel_stoichiometric(input.fuel));
    double t = input.manifold_temperature;
    check_close(
        (cg_fresh_air(&input) * 1005.0 + input.brought.nitrous * 850.0) *
            (dry - t),
        0.5 * fuel * input.fuel->latent_heat, 1e-6, "its fuel evaporates too");
}
END_TEST

static const char *first_trouble(const struct cg_case *c)
{
    struct cg_case_problem problem[CG_BROUGHT_PROBLEMS];
    return cg_brought_check(c, problem) > 0 ? problem[0].path : "";
}

START_TEST(what_cannot_be_is_refused)
{
    struct cg_case c = base_case();
    ck_assert_str_eq(first_trouble(&c), "nitrous.flow"); /* on, but none */
    c.nitrous.flow = 0.03;
    ck_assert_str_eq(first_trouble(&c), "");
    c.nitrous.power = 30e3;
    ck_assert_str_eq(first_trouble(&c), "nitrous.power");
    c.nitrous.power = 0.0;
    c.nitrous.flow = 0.40;
    ck_assert_str_eq(first_trouble(&c), "nitrous.flow");
    c.nitrous.flow = 0.03;
    c.duty.segment[0].speed = 3.0; /* much of it in little air */
    ck_assert_str_eq(first_trouble(&c), "nitrous.flow");
    c = base_case();
    c.duty.segment[0].nitrous = 0.0;
    c.nitrous.flow = 0.40; /* never on */
    ck_assert_str_eq(first_trouble(&c), "");
    c.spray.flow = 0.004;
    ck_assert_str_eq(first_trouble(&c), "");
    c.spray.before = 1.0;
    c.spray.closed = 0.1;
    ck_assert_str_eq(first_trouble(&c), "spray.closed");
    c.spray.closed = 0.0;
    ck_assert_str_eq(first_trouble(&c), "spray.before"); /* beyond saturation */
    c.spray.before = 0.0;
    c.spray.flow = 0.050; /* more water than fuel */
    ck_assert_str_eq(first_trouble(&c), "spray.flow");
    c.spray.alcohol = 1.0; /* more alcohol than burns */
    ck_assert_str_eq(first_trouble(&c), "spray.flow");
}
END_TEST

/* The limit named is where it is saturated. */
START_TEST(the_share_named_is_the_most)
{
    struct cg_case c = base_case();
    struct cg_case_problem problem[CG_BROUGHT_PROBLEMS];
    c.duty.segment[0].nitrous = 0.0;
    c.spray.flow = 0.006;
    c.spray.before = 1.0;
    c.spray.closed = 0.0;
    ck_assert_uint_eq(cg_brought_check(&c, problem), 1);
    c.spray.before = problem[0].limit;
    ck_assert_str_eq(first_trouble(&c), "");
    struct cg_operating at = cg_operating_at(&c, 105.0, 1.0);
    struct cg_charge_state charge;
    cg_operating_charge(&c, &at, &charge);
    check_close(cg_brought_humidity(&c, &charge), 1.0, 1e-6, "saturated");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("brought");
    TCase *all = tcase_create("brought");
    tcase_add_test(all, gas_from_a_cold_bottle);
    tcase_add_test(all, liquid_takes_its_heat_of_evaporation);
    tcase_add_test(all, lambda_of_its_own_or_the_engines);
    tcase_add_test(all, oxygen_shortens_the_delay);
    tcase_add_test(all, spray_by_load_and_speed);
    tcase_add_test(all, spray_heat_by_shares);
    tcase_add_test(all, own_fuel_follows);
    tcase_add_test(all, what_cannot_be_is_refused);
    tcase_add_test(all, the_share_named_is_the_most);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
