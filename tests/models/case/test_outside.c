#include <string.h>

#include "check_close.h"

#include "constants.h"
#include "operating.h"
#include "outside.h"
#include "setting.h"

#define BY_HAND "worked by hand from the formula in the header"

static struct cg_case air_case(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.bore = 0.0963;
    c.engine.stroke = 0.0917;
    c.engine.speed = 5400.0 / 60.0;
    ck_assert_ptr_null(cg_case_complete(&c));
    c.cooling.medium = CG_MEDIUM_AIR;
    c.charge.ambient_temperature = CG_ZERO_CELSIUS + 5.0;
    c.charge.ambient_pressure = 101.325e3;
    c.cooling.air.rise = 20.0; /* so that it is air of 25 C */
    c.cooling.air.speed = 30.0;
    return c;
}

START_TEST(coolant_flows_as_it_is_given)
{
    struct cg_case c = air_case();
    c.cooling.medium = CG_MEDIUM_COOLANT;
    ck_assert_double_eq(cg_outside_flow(&c, 0.3 * c.engine.speed), 1.0);
    ck_assert_double_eq(cg_outside_temperature(&c),
                        c.cooling.coolant_temperature);
    struct cg_outside outside = cg_outside_of(&c);
    ck_assert_double_eq(outside.behind, c.cooling.coolant_coefficient);
    ck_assert_double_eq(outside.top, c.bore.jacket_top);
}
END_TEST

START_TEST(air_has_its_own)
{
    struct cg_case c = air_case();
    struct cg_outside outside = cg_outside_of(&c);
    ck_assert_double_eq(outside.behind, c.cooling.air.fins);
    ck_assert_double_eq(outside.above, c.cooling.air.deck);
    ck_assert_double_eq(outside.below, c.cooling.air.lower);
    ck_assert_double_eq(outside.head, c.cooling.air.head);
    ck_assert_double_eq(outside.length, c.cooling.air.length);
    check_close(cg_outside_temperature(&c), 298.15, 1e-12, BY_HAND);
}
END_TEST

START_TEST(air_goes_with_its_mass_flow)
{
    struct cg_case c = air_case();
    double speed = c.engine.speed;
    check_close(cg_outside_flow(&c, speed), 1.0, 1e-12, BY_HAND);
    c.cooling.air.speed = 60.0;
    check_close(cg_outside_flow(&c, speed), 1.569168, 1e-6, BY_HAND);
    c.charge.ambient_pressure *= 0.5; /* half the density: as before */
    check_close(cg_outside_flow(&c, speed), 1.0, 1e-12, BY_HAND);
}
END_TEST

/* In a stream the engine's speed does not matter, a fan's air goes with it. */
START_TEST(fan_follows_the_engine)
{
    struct cg_case c = air_case();
    double speed = c.engine.speed;
    ck_assert_double_eq(cg_outside_flow(&c, 0.5 * speed),
                        cg_outside_flow(&c, speed));
    c.cooling.air.drive = CG_AIR_FAN;
    check_close(cg_outside_flow(&c, speed), 1.0, 1e-12, BY_HAND);
    check_close(cg_outside_flow(&c, 2.0 * speed), 1.569168, 1e-6, BY_HAND);
    check_close(cg_operating_at(&c, 2.0 * speed, 0.4).cooling_flow, 1.569168,
                1e-6, BY_HAND);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside");
    TCase *all = tcase_create("outside");
    tcase_add_test(all, coolant_flows_as_it_is_given);
    tcase_add_test(all, air_has_its_own);
    tcase_add_test(all, air_goes_with_its_mass_flow);
    tcase_add_test(all, fan_follows_the_engine);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
