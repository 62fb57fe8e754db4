/* A mixture of normal distributions against closed forms. */
#include <gsl/gsl_cdf.h>

#include "check_close.h"
#include "normals.h"

#define PLAIN "the normal distribution itself, a limit"

START_TEST(equal_parts_are_one_normal)
{
    struct cg_normals m = {
        3, {0.2, 0.5, 0.3}, {1.5, 1.5, 1.5}, {2.0, 2.0, 2.0}};
    check_close(cg_normals_quantile(&m, 0.001),
                1.5 + 2.0 * gsl_cdf_ugaussian_Qinv(0.001), 1e-12, PLAIN);
    check_close(cg_normals_sd(&m), 2.0, 1e-12, PLAIN);
    check_close(cg_normals_above(&m, 3.5), gsl_cdf_ugaussian_Q(1.0), 1e-12,
                PLAIN);
}
END_TEST

/* Far apart, the outer part alone makes the tail. */
START_TEST(far_part_makes_the_tail)
{
    struct cg_normals m = {2, {0.9, 0.1}, {0.0, 100.0}, {1.0, 1.0}};
    check_close(cg_normals_quantile(&m, 0.001),
                100.0 + gsl_cdf_ugaussian_Qinv(0.01), 1e-12, PLAIN);
    check_close(cg_normals_mean(&m), 10.0, 1e-12, PLAIN);
    check_close(cg_normals_sd(&m), sqrt(1.0 + 0.9 * 0.1 * 1e4), 1e-12, PLAIN);
}
END_TEST

START_TEST(quantile_turns_chance_round)
{
    struct cg_normals m = {3, {0.6, 0.1, 0.3}, {0.0, 2.0, -1.0},
                           {1.0, 0.5, 3.0}};
    for (double above = 1e-6; above < 1.0; above *= 3.0)
        ck_assert_double_eq_tol(
            cg_normals_above(&m, cg_normals_quantile(&m, above)), above,
            1e-9 * above);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("normals");
    TCase *all = tcase_create("normal parts");
    tcase_add_test(all, equal_parts_are_one_normal);
    tcase_add_test(all, far_part_makes_the_tail);
    tcase_add_test(all, quantile_turns_chance_round);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
