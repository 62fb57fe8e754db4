/* Sampling itself, on functions whose moments, quantiles and shares are known
 * in closed form. */
#include <math.h>
#include <stdlib.h>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sort.h>

#include "check_close.h"
#include "constants.h"
#include "sample.h"

#define IDENTITY "by definition"

typedef double (*function)(const double *score, size_t inputs);

static struct cg_sample *sample_of(function f, size_t samples, size_t inputs,
                                   unsigned long seed)
{
    struct cg_sample *sample;
    double score[CG_SAMPLE_INPUTS];
    ck_assert_int_eq(
        cg_sample_create(samples, inputs, inputs, seed, &sample, NULL), CG_OK);
    for (size_t j = 0; j < samples; j++) {
        cg_sample_point(sample, j, score);
        sample->value[j] = f(score, inputs);
        for (size_t i = 0; j < sample->swaps && i < inputs; i++) {
            double kept = score[i];
            score[i] = cg_sample_swap(sample, j, i);
            sample->swapped_value[j * inputs + i] = f(score, inputs);
            score[i] = kept;
        }
    }
    return sample;
}

static struct cg_sample_sum sum_of(struct cg_sample *sample,
                                   double probability)
{
    struct cg_sample_sum sum;
    struct cg_error error = {0};
    ck_assert_msg(cg_sample_add_up(sample, probability, &sum, &error) == CG_OK,
                  "%s", error.text);
    return sum;
}

/* Inputs uniform over -pi .. pi. */
static double ishigami(const double *score, size_t inputs)
{
    double x[3];
    (void)inputs;
    for (int i = 0; i < 3; i++)
        x[i] = CG_PI * (2.0 * gsl_cdf_ugaussian_P(score[i]) - 1.0);
    return sin(x[0]) + 7.0 * pow(sin(x[1]), 2.0) +
           0.1 * pow(x[2], 4.0) * sin(x[0]);
}

START_TEST(ishigami_function)
{
    const char *const source =
        "T. Ishigami and T. Homma (1990), a = 7, b = 0.1; A. Saltelli et al., "
        "\"Global Sensitivity Analysis: The Primer\" (2008)";
    static const double total[] = {0.5576, 0.4424, 0.2437};
    struct cg_sample *sample = sample_of(ishigami, 65536, 3, 1);
    struct cg_sample_sum sum = sum_of(sample, 0.5);
    double b = 0.1, error;
    check_close(sum.mean, 3.5, 1e-3, source);
    check_close(sum.sd * sum.sd,
                7.0 * 7.0 / 8.0 + b * pow(CG_PI, 4.0) / 5.0 +
                    b * b * pow(CG_PI, 8.0) / 18.0 + 0.5,
                2e-3, source);
    for (size_t i = 0; i < 3; i++)
        check_within(cg_sample_total_effect(sample, &sum, i, &error),
                     total[i], 0.008, source);
    cg_sample_free(sample);
}
END_TEST

/* The share's own error must cover what it is off, seed by seed; being that
 * of plain random sampling, it may be too wide, not too narrow. */
START_TEST(error_of_a_share)
{
    double squares = 0.0, claimed = 0.0;
    for (unsigned long seed = 1; seed <= 30; seed++) {
        struct cg_sample *sample = sample_of(ishigami, 2000, 3, seed);
        struct cg_sample_sum sum = sum_of(sample, 0.5);
        double error;
        double off = cg_sample_total_effect(sample, &sum, 0, &error) - 0.5576;
        squares += off * off / 30.0;
        claimed += error * error / 30.0;
        cg_sample_free(sample);
    }
    check_band(sqrt(squares / claimed), 0.2, 1.2, "own statement");
}
END_TEST

/* Weights 1, 2, 3, ...: normal with known variance. */
static double weighted(const double *score, size_t inputs)
{
    double sum = 5.0;
    for (size_t i = 0; i < inputs; i++)
        sum += (double)(i + 1) * score[i];
    return sum;
}

START_TEST(linear_function)
{
    struct cg_sample *sample = sample_of(weighted, 20000, 4, 3);
    double sd = sqrt(1.0 + 4.0 + 9.0 + 16.0), error;
    struct cg_sample_sum sum = sum_of(sample, 0.99);
    check_close(sum.mean, 5.0, 3e-3, IDENTITY);
    check_close(sum.sd, sd, 3e-3, IDENTITY);
    check_within(sum.quantile, 5.0 + sd * gsl_cdf_ugaussian_Pinv(0.99),
                 3.0 * sum.quantile_error, IDENTITY);
    check_band(sum.quantile_error, 1e-6, 0.03 * sd, "20000 samples");
    for (size_t i = 0; i < 4; i++) {
        /* nothing works with anything: total effect is first order */
        double first = pow((double)(i + 1) / sd, 2.0);
        check_within(cg_sample_total_effect(sample, &sum, i, &error), first,
                     0.02, "JCGM 100:2008, 5.1");
    }
    cg_sample_free(sample);
}
END_TEST

static double skewed(const double *score, size_t inputs)
{
    return exp(0.5 * weighted(score, inputs) / sqrt(14.0));
}

/* Over many seeds the quantile is off by what it says it is, in the middle
 * and in the tail, of a normal and of a skewed law. */
START_TEST(error_of_a_quantile_is_honest)
{
    static const struct {
        function f;
        double probability;
    } law[] = {{weighted, 0.5}, {weighted, 0.9}, {weighted, 0.99},
               {skewed, 0.9},   {skewed, 0.99},  {skewed, 0.998}};
    enum { SEEDS = 100, SAMPLES = 4000 };
    double squares = 0.0, claimed = 0.0, bias = 0.0;
    double want = 5.0 + sqrt(14.0) *
                            gsl_cdf_ugaussian_Pinv(law[_i].probability);
    if (law[_i].f == skewed)
        want = exp(0.5 * want / sqrt(14.0));
    for (unsigned long seed = 1; seed <= SEEDS; seed++) {
        struct cg_sample *sample = sample_of(law[_i].f, SAMPLES, 3, seed);
        struct cg_sample_sum sum = sum_of(sample, law[_i].probability);
        double off = sum.quantile - want;
        squares += off * off / SEEDS;
        bias += off / SEEDS;
        claimed += sum.quantile_error * sum.quantile_error / SEEDS;
        cg_sample_free(sample);
    }
    check_band(sqrt(claimed / squares), 0.75, 1.6, "own statement");
    check_within(bias, 0.0, 0.4 * sqrt(claimed), "own statement");
}
END_TEST

START_TEST(quantile_between_values)
{
    const char *const source = "R. J. Hyndman and Y. Fan (1996), type 8";
    static const double value[] = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
    check_close(cg_sample_quantile(value, 10, 0.5), 5.5, 1e-12, source);
    check_close(cg_sample_quantile(value, 10, 0.9), 9.0 + 19.0 / 30.0, 1e-12,
                source);
    check_close(cg_sample_quantile(value, 10, 0.25), 2.0 + 11.0 / 12.0, 1e-12,
                source);
    ck_assert_double_eq(cg_sample_quantile(value, 10, 0.999), 10.0);
    ck_assert_double_eq(cg_sample_quantile(value, 10, 1e-6), 1.0);
    ck_assert_double_eq(cg_sample_quantile(value, 1, 0.3), 1.0);
}
END_TEST

/* The first 2^k points of a replicate lie one in each of 2^k equal parts of
 * every input's range. */
START_TEST(points_are_balanced)
{
    enum { POINTS = 32 };
    struct cg_sample *sample;
    double score[CG_SAMPLE_INPUTS], u[POINTS];
    const size_t inputs = 20;
    ck_assert_int_eq(cg_sample_create(POINTS * CG_SAMPLE_REPLICATES, inputs,
                                      inputs, 7, &sample, NULL), CG_OK);
    for (size_t i = 0; i < inputs; i++)
        for (size_t r = 0; r < CG_SAMPLE_REPLICATES; r++) {
            for (size_t p = 0; p < POINTS; p++) {
                cg_sample_point(sample, p * CG_SAMPLE_REPLICATES + r, score);
                u[p] = gsl_cdf_ugaussian_P(score[i]);
            }
            gsl_sort(u, 1, POINTS);
            for (size_t p = 1; p < POINTS; p++)
                check_close(u[p] - u[p - 1], 1.0 / POINTS, 1e-9,
                            "I. M. Sobol (1967)");
        }
    cg_sample_free(sample);
}
END_TEST

START_TEST(seeds)
{
    struct cg_sample *a, *b, *other;
    double x[3], y[3], z[3];
    ck_assert_int_eq(cg_sample_create(100, 3, 2, 5, &a, NULL), CG_OK);
    ck_assert_int_eq(cg_sample_create(100, 3, 2, 5, &b, NULL), CG_OK);
    ck_assert_int_eq(cg_sample_create(100, 3, 2, 6, &other, NULL), CG_OK);
    for (size_t j = 0; j < 100; j++) {
        cg_sample_point(a, j, x);
        cg_sample_point(b, j, y);
        cg_sample_point(other, j, z);
        ck_assert_mem_eq(x, y, sizeof x);
        for (size_t i = 0; i < 3; i++) {
            ck_assert(isfinite(x[i]));
            ck_assert_double_ne(x[i], z[i]);
        }
        for (size_t i = 0; i < 2; i++)
            ck_assert_double_ne(cg_sample_swap(a, j, i), x[i]);
    }
    cg_sample_free(a);
    cg_sample_free(b);
    cg_sample_free(other);
}
END_TEST

/* Failed runs are left out, and told when they are many. */
START_TEST(failures)
{
    struct cg_sample *sample = sample_of(weighted, 1000, 3, 1);
    struct cg_sample_sum sum;
    struct cg_error error = {0};
    double share_error;
    for (size_t j = 0; j < 10; j++)
        sample->value[100 * j] = NAN;
    sum = sum_of(sample, 0.9);
    ck_assert_uint_eq(sum.failures, 10);
    ck_assert_uint_eq(sum.good, 990);
    ck_assert(isfinite(sum.mean) && isfinite(sum.quantile_error));
    ck_assert(isfinite(
        cg_sample_total_effect(sample, &sum, 0, &share_error)));
    sample->value[1] = NAN;
    ck_assert_int_eq(cg_sample_add_up(sample, 0.9, &sum, &error),
                     CG_NUMERICAL);
    ck_assert_str_eq(error.text, "11 of 1000 samples failed");
    cg_sample_free(sample);
}
END_TEST

static double constant(const double *score, size_t inputs)
{
    (void)score;
    (void)inputs;
    return 2.0;
}

START_TEST(nothing_varies_and_few_samples)
{
    static const size_t samples[] = {2, 3, 15, 16, 17};
    for (size_t i = 0; i < sizeof samples / sizeof samples[0]; i++) {
        struct cg_sample *sample = sample_of(constant, samples[i], 1, 1);
        struct cg_sample_sum sum = sum_of(sample, 0.999);
        double error;
        ck_assert_double_eq(sum.mean, 2.0);
        ck_assert_double_eq(sum.sd, 0.0);
        ck_assert_double_eq(sum.quantile, 2.0);
        ck_assert_double_eq(sum.quantile_error, 0.0);
        ck_assert_double_eq(cg_sample_total_effect(sample, &sum, 0, &error),
                            0.0);
        cg_sample_free(sample);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sample");
    TCase *all = tcase_create("sample");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, ishigami_function);
    tcase_add_test(all, error_of_a_share);
    tcase_add_test(all, linear_function);
    tcase_add_loop_test(all, error_of_a_quantile_is_honest, 0, 6);
    tcase_add_test(all, quantile_between_values);
    tcase_add_test(all, points_are_balanced);
    tcase_add_test(all, seeds);
    tcase_add_test(all, failures);
    tcase_add_test(all, nothing_varies_and_few_samples);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
