#include "check_close.h"

#include "constants.h"
#include "material.h"

static const struct cg_curve rising = {
    4, {293.15, 373.15, 473.15, 573.15}, {11.3, 12.1, 12.7, 13.2}};

START_TEST(curve_passes_through_its_points)
{
    for (int i = 0; i < rising.points; i++)
        ck_assert_double_eq(cg_curve_at(&rising, rising.temperature[i]),
                            rising.value[i]);
}
END_TEST

START_TEST(curve_is_straight_between_points)
{
    check_close(cg_curve_at(&rising, 333.15), 11.7, 1e-14, "halfway");
    check_close(cg_curve_at(&rising, 398.15), 12.25, 1e-14, "a quarter");
    check_close(cg_curve_at(&rising, 548.15), 13.075, 1e-14, "three quarters");
}
END_TEST

START_TEST(curve_holds_its_end_values)
{
    ck_assert_double_eq(cg_curve_at(&rising, 290.0), 11.3);
    ck_assert_double_eq(cg_curve_at(&rising, 580.0), 13.2);
    ck_assert_double_eq(cg_curve_at(&rising, 1.0), 11.3);
    ck_assert_double_eq(cg_curve_at(&rising, 2000.0), 13.2);
}
END_TEST

START_TEST(one_point_is_a_constant)
{
    const struct cg_curve flat = {1, {293.15}, {46.9}};
    ck_assert_double_eq(cg_curve_at(&flat, 100.0), 46.9);
    ck_assert_double_eq(cg_curve_at(&flat, 900.0), 46.9);
}
END_TEST

START_TEST(full_curve_is_searched_to_its_end)
{
    struct cg_curve full = {CG_CURVE_POINTS, {0}, {0}};
    for (int i = 0; i < CG_CURVE_POINTS; i++) {
        full.temperature[i] = 300.0 + 37.0 * i;
        full.value[i] = (double)i * i;
    }
    for (int i = 0; i + 1 < CG_CURVE_POINTS; i++)
        check_close(cg_curve_at(&full, 318.5 + 37.0 * i),
                    0.5 * (i * i + (i + 1) * (i + 1)), 1e-13, "halfway");
}
END_TEST

START_TEST(nan_temperature_is_not_hidden)
{
    ck_assert(isnan(cg_curve_at(&rising, (double)NAN)));
}
END_TEST

START_TEST(strain_counts_from_twenty_celsius)
{
    struct cg_material metal = {.expansion = {3,
                                              {373.15, 473.15, 573.15},
                                              {10.4e-6, 10.8e-6, 11.2e-6}}};
    ck_assert_double_eq(cg_material_strain(&metal, CG_COLD_TEMPERATURE), 0.0);
    check_close(cg_material_strain(&metal, 473.15), 10.8e-6 * 180, 1e-13,
                "mean coefficient times rise");
    check_close(cg_material_strain(&metal, 423.15), 10.6e-6 * 130, 1e-13,
                "mean coefficient, not the slope");
    check_close(cg_material_strain(&metal, 273.15), -10.4e-6 * 20, 1e-13,
                "shrinks below 20 C by the first value");
}
END_TEST

START_TEST(strain_slope_exceeds_the_mean_coefficient)
{
    /* d/dT [m(T)(T - T0)] = m + m'(T - T0): the local coefficient at 200 C
     * of a mean that climbs 0.4e-6 per 100 K. */
    struct cg_material metal = {
        .expansion = {2, {373.15, 573.15}, {10.4e-6, 11.2e-6}}};
    double slope = (cg_material_strain(&metal, 474.15) -
                    cg_material_strain(&metal, 472.15)) /
                   2;
    check_close(slope, 10.8e-6 + 0.4e-8 * 180, 1e-9, "product rule");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("material");
    TCase *tcase = tcase_create("material");
    tcase_add_test(tcase, curve_passes_through_its_points);
    tcase_add_test(tcase, curve_is_straight_between_points);
    tcase_add_test(tcase, curve_holds_its_end_values);
    tcase_add_test(tcase, one_point_is_a_constant);
    tcase_add_test(tcase, full_curve_is_searched_to_its_end);
    tcase_add_test(tcase, nan_temperature_is_not_hidden);
    tcase_add_test(tcase, strain_counts_from_twenty_celsius);
    tcase_add_test(tcase, strain_slope_exceeds_the_mean_coefficient);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
