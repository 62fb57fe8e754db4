#include "check_close.h"

#include "viscosity.h"

/* 95.3 and 14.1 mm2/s at 40 and 100 C. */
static double oil(double kelvin)
{
    return cg_viscosity_walther(95.3e-6, 14.1e-6, kelvin);
}

START_TEST(given_points_come_back)
{
    check_close(oil(313.15), 95.3e-6, 1e-12, "round trip");
    check_close(oil(373.15), 14.1e-6, 1e-12, "round trip");
    check_close(cg_viscosity_walther(22.7e-6, 4.6e-6, 313.15), 22.7e-6, 1e-12,
                "round trip");
}
END_TEST

/* The law is a straight line in log10 T and log10 log10 (nu + 0.7). */
START_TEST(straight_on_walther_paper)
{
    double x[3] = {283.0, 341.7, 457.9}, y[3];
    for (int i = 0; i < 3; i++) {
        y[i] = log10(log10(oil(x[i]) * 1e6 + 0.7));
        x[i] = log10(x[i]);
    }
    check_close((y[2] - y[1]) / (x[2] - x[1]), (y[1] - y[0]) / (x[1] - x[0]),
                1e-10, "ASTM D341");
}
END_TEST

START_TEST(thins_with_heat)
{
    for (double kelvin = 240.0; kelvin < 600.0; kelvin += 13.7)
        ck_assert_double_lt(oil(kelvin + 13.7), oil(kelvin));
}
END_TEST

START_TEST(held_outside_its_range)
{
    ck_assert_double_eq(oil(200.0), oil(233.15));
    ck_assert_double_lt(oil(234.0), oil(233.15));
    ck_assert_double_eq(oil(900.0), oil(623.15));
    ck_assert_double_gt(oil(623.15), 0.0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("viscosity");
    TCase *all = tcase_create("viscosity");
    tcase_add_test(all, given_points_come_back);
    tcase_add_test(all, straight_on_walther_paper);
    tcase_add_test(all, thins_with_heat);
    tcase_add_test(all, held_outside_its_range);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
