/* The joint law of the uncertain inputs against its own definition. */
#include <math.h>
#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#include "check_close.h"
#include "input_law.h"
#include "setting.h"
#include "uncertain.h"

#define IDENTITY "by definition"

static const size_t row[] = {0, 1, 2, 3};
enum { INPUTS = 4 };

/* Four inputs, three of them tied. */
static struct cg_case tied(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    cg_input_correlate(&c, 0, 1, 0.6);
    cg_input_correlate(&c, 2, 0, -0.5);
    cg_input_correlate(&c, 1, 2, 0.2);
    return c;
}

static struct cg_input_law law_of(const struct cg_case *c)
{
    struct cg_input_law law;
    struct cg_error error = {0};
    enum cg_status status = cg_input_law_fill(c, row, INPUTS, &law, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return law;
}

START_TEST(factor_and_inverse)
{
    struct cg_case c = tied();
    struct cg_input_law law = law_of(&c);
    for (size_t i = 0; i < INPUTS; i++)
        for (size_t j = 0; j < INPUTS; j++) {
            double product = 0.0, unit = 0.0;
            for (size_t k = 0; k < INPUTS; k++) {
                product += law.factor[i][k] * law.factor[j][k];
                unit += law.inverse[i][k] * cg_input_correlation(&c, k, j);
            }
            check_within(product, cg_input_correlation(&c, i, j), 1e-14,
                         "R = L L'");
            check_within(unit, i == j ? 1.0 : 0.0, 1e-13, "Q R = 1");
            ck_assert(j <= i || law.factor[i][j] == 0.0);
        }
}
END_TEST

/* Without correlations nothing is touched, not by a bit. */
START_TEST(independent_scores_stay_as_they_are)
{
    static const double u[INPUTS] = {0.3, -1.7, 2.9, 1e-7};
    struct cg_case c;
    cg_case_begin(&c);
    ck_assert(!cg_inputs_correlated(&c));
    struct cg_input_law law = law_of(&c);
    double z[INPUTS];
    cg_input_law_scores(&law, u, z);
    ck_assert_mem_eq(z, u, sizeof u);
    for (size_t i = 0; i < INPUTS; i++)
        ck_assert_double_eq(cg_input_law_redraw(&law, z, i, 0.77), 0.77);
}
END_TEST

START_TEST(correlated_only_where_both_are_uncertain)
{
    struct cg_case c = tied();
    ck_assert(cg_inputs_correlated(&c));
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    ck_assert(!cg_inputs_correlated(&c));
}
END_TEST

/* Scores drawn, and one of them drawn anew: both have the stated covariance,
 * within four standard errors of a sample's covariance. */
START_TEST(drawn_scores_have_the_stated_covariance)
{
    enum { DRAWS = 40000 };
    struct cg_case c = tied();
    struct cg_input_law law = law_of(&c);
    double sum[2][INPUTS][INPUTS] = {{{0.0}}};
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    ck_assert_ptr_nonnull(random);
    gsl_rng_set(random, 11);
    for (int n = 0; n < DRAWS; n++) {
        double u[INPUTS], z[INPUTS];
        for (size_t i = 0; i < INPUTS; i++)
            u[i] = gsl_ran_gaussian(random, 1.0);
        cg_input_law_scores(&law, u, z);
        for (int again = 0; again < 2; again++) {
            for (size_t i = 0; i < INPUTS; i++)
                for (size_t j = 0; j < INPUTS; j++)
                    sum[again][i][j] += z[i] * z[j] / DRAWS;
            z[1] = cg_input_law_redraw(&law, z, 1,
                                       gsl_ran_gaussian(random, 1.0));
        }
    }
    gsl_rng_free(random);
    for (int again = 0; again < 2; again++)
        for (size_t i = 0; i < INPUTS; i++)
            for (size_t j = 0; j < INPUTS; j++) {
                double r = cg_input_correlation(&c, i, j);
                check_within(sum[again][i][j], r,
                             4.0 * sqrt((1.0 + r * r) / DRAWS), IDENTITY);
            }
}
END_TEST

/* Two inputs: mean r z, variance 1 - r^2 (Bishop 2006, sec. 2.3.1). */
START_TEST(redrawn_given_one_other)
{
    struct cg_case c;
    struct cg_input_law law;
    cg_case_begin(&c);
    cg_input_correlate(&c, 0, 1, -0.8);
    ck_assert_int_eq(cg_input_law_fill(&c, row, 2, &law, NULL), CG_OK);
    double z[2] = {1.5, 99.0};
    check_close(cg_input_law_redraw(&law, z, 1, 0.0), -1.2, 1e-14, "Bishop");
    check_close(cg_input_law_redraw(&law, z, 1, 1.0), -1.2 + 0.6, 1e-13,
                "Bishop");
}
END_TEST

START_TEST(impossible_correlations)
{
    struct cg_case c;
    struct cg_input_law law;
    struct cg_error error = {0};
    cg_case_begin(&c);
    cg_input_correlate(&c, 0, 1, 0.9);
    cg_input_correlate(&c, 1, 2, 0.9);
    cg_input_correlate(&c, 0, 2, -0.9);
    ck_assert_int_eq(cg_input_law_fill(&c, row, 3, &law, &error),
                     CG_BAD_INPUT);
    ck_assert_ptr_nonnull(strstr(error.text, "positive definite"));
    ck_assert_int_eq(cg_input_law_fill(&c, row, 2, &law, &error), CG_OK);
    ck_assert_int_eq(cg_input_law_fill(&c, row, 0, &law, &error), CG_OK);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("input_law");
    TCase *all = tcase_create("input_law");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_add_test(all, factor_and_inverse);
    tcase_add_test(all, independent_scores_stay_as_they_are);
    tcase_add_test(all, correlated_only_where_both_are_uncertain);
    tcase_add_test(all, drawn_scores_have_the_stated_covariance);
    tcase_add_test(all, redrawn_given_one_other);
    tcase_add_test(all, impossible_correlations);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
