/* Tension left: the parameter's algebra, the anchor, and which way it goes. */
#include <math.h>

#include "check_close.h"
#include "constants.h"
#include "relaxation.h"

#define HOUR 3600.0

static struct cg_material spring(void)
{
    struct cg_material material = {
        .hot_limit = 523.15,
        .hot_limit_high = 563.15,
        .modulus = {2, {293.15, 693.15}, {210e9, 170e9}}};
    return material;
}

START_TEST(parameter_and_time_are_inverses)
{
    check_close(cg_larson_miller(517.0, HOUR), 517.0 * 20.0, 1e-14,
                "log10 of one hour is 0");
    double parameter = cg_larson_miller(481.7, 37.4 * HOUR);
    check_close(cg_larson_miller_time(parameter, 481.7), 37.4 * HOUR, 1e-12,
                "inverse");
    /* hotter, sooner */
    ck_assert_double_lt(cg_larson_miller_time(parameter, 500.0), 37.4 * HOUR);
}
END_TEST

START_TEST(anchor)
{
    struct cg_material material = spring();
    struct cg_band left =
        cg_relaxation_left(&material, material.hot_limit, 100.0 * HOUR);
    check_close(left.low, 0.9, 1e-13, "90 % after 100 h at the hot limit");
    left = cg_relaxation_left(&material, material.hot_limit_high, 100.0 * HOUR);
    check_close(left.high, 0.9, 1e-13, "the same for the upper end");
    /* equal parameters, equal tension */
    double other = cg_larson_miller_time(
        cg_larson_miller(material.hot_limit, 100.0 * HOUR), 498.0);
    check_close(cg_relaxation_left(&material, 498.0, other).low, 0.9, 1e-12,
                "time and temperature act through P alone");
}
END_TEST

/* 1750 K more of the parameter than at the limit: e times the loss, by log. */
START_TEST(scale)
{
    struct cg_material material = spring();
    double parameter =
        cg_larson_miller(material.hot_limit, 100.0 * HOUR) + 1750.0;
    double time = cg_larson_miller_time(parameter, 550.0);
    check_close(cg_relaxation_left(&material, 550.0, time).low,
                pow(0.9, exp(1.0)), 1e-9, "definition, as the header has it");
}
END_TEST

START_TEST(falls_with_temperature_and_time)
{
    struct cg_material material = spring();
    struct cg_band before = {1.0, 1.0};
    for (double kelvin = 300.0; kelvin < 900.0; kelvin += 50.0) {
        struct cg_band left = cg_relaxation_left(&material, kelvin, HOUR);
        ck_assert(left.low < before.low && left.high < before.high);
        ck_assert(left.low >= 0.0 && left.low < left.high);
        before = left;
    }
    before = (struct cg_band){1.0, 1.0};
    for (double hours = 0.01; hours < 2e4; hours *= 10.0) {
        struct cg_band left =
            cg_relaxation_left(&material, 470.0, hours * HOUR);
        ck_assert(left.low < before.low && left.high < before.high);
        before = left;
    }
}
END_TEST

START_TEST(hot_pressure)
{
    struct cg_material material = spring();
    double left = cg_relaxation_left(&material, 493.15, 20.0 * HOUR).low;
    check_close(cg_relaxation_pressure(&material, 190e3, 493.15, 20.0 * HOUR),
                190e3 * left * 190.0 / 210.0, 1e-13,
                "tension left times the modulus kept");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("relaxation");
    TCase *all = tcase_create("relaxation");
    tcase_add_test(all, parameter_and_time_are_inverses);
    tcase_add_test(all, anchor);
    tcase_add_test(all, scale);
    tcase_add_test(all, falls_with_temperature_and_time);
    tcase_add_test(all, hot_pressure);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
