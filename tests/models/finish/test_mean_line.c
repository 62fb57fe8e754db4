/* Mean lines: straight traces stay, the fast way equals the plain sum, deep
 * grooves are passed by. */
#include <check.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "check_close.h"
#include "constants.h"
#include "mean_line.h"
#include "regression_line.h"

enum { POINTS = 6000 };

static double height[POINTS], line[POINTS];
static struct cg_error error;
static const double spacing = 0.7e-6, cutoff = 0.8e-3;

typedef enum cg_status (*filter)(const double *, size_t, double, double,
                                 double *, struct cg_error *);
static const filter filters[] = {cg_mean_line_gaussian, cg_mean_line_two_step,
                                 cg_mean_line_robust, cg_mean_line_quadratic};

static void fill_random(void)
{
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    for (int i = 0; i < POINTS; i++)
        height[i] = gsl_ran_gaussian(random, 1e-6);
    gsl_rng_free(random);
}

START_TEST(straight_stays)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = 3e-6 + 2.385e-9 * i;
    for (int k = 0; k < 4; k++) {
        ck_assert_int_eq(
            filters[k](height, POINTS, spacing, cutoff, line, &error), CG_OK);
        for (int i = 0; i < POINTS; i++)
            check_within(line[i], height[i], 1e-13, "a straight trace");
    }
}
END_TEST

START_TEST(parabola_stays_of_degree_two)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = 1e-12 * (i - 2000.0) * (i - 2000.0);
    ck_assert_int_eq(cg_mean_line_quadratic(height, POINTS, spacing, cutoff,
                                            line, &error),
                     CG_OK);
    for (int i = 0; i < POINTS; i++)
        check_within(line[i], height[i], 1e-13, "a parabola");
}
END_TEST

/* The line by its definition, without places and quintics. */
static double plain(int at, int degree)
{
    double width = degree == 1 ? CG_WEIGHT_LINEAR : CG_WEIGHT_QUADRATIC;
    double s[5] = {0}, t[3] = {0};
    for (int i = 0; i < POINTS; i++) {
        double u = (i - at) * spacing / cutoff, power = 1.0;
        double weight = exp(-CG_PI * u * u / (width * width));
        for (int k = 0; k < 5; k++, power *= u) {
            s[k] += weight * power;
            if (k < 3)
                t[k] += weight * power * height[i];
        }
    }
    if (degree == 1)
        return (t[0] * s[2] - t[1] * s[1]) / (s[0] * s[2] - s[1] * s[1]);
    double a = s[2] * s[4] - s[3] * s[3], b = s[2] * s[3] - s[1] * s[4];
    double c = s[1] * s[3] - s[2] * s[2];
    return (t[0] * a + t[1] * b + t[2] * c) /
           (s[0] * a + s[1] * b + s[2] * c);
}

START_TEST(equals_the_plain_sum)
{
    static const int at[] = {0, 1, 17, 700, 2999, 3000, 5980, POINTS - 1};
    fill_random();
    for (int degree = 1; degree <= 2; degree++) {
        ck_assert_int_eq(filters[degree == 1 ? 0 : 3](
                             height, POINTS, spacing, cutoff, line, &error),
                         CG_OK);
        for (int k = 0; k < 8; k++) {
            double want = plain(at[k], degree);
            check_within(line[at[k]], want, 1e-5 * 1e-6,
                         "the definition summed, heights of 1 um");
        }
    }
}
END_TEST

/* The two steps by hand, from the one-step line. */
START_TEST(two_steps)
{
    static double raised[POINTS], want[POINTS];
    fill_random();
    cg_mean_line_gaussian(height, POINTS, spacing, cutoff, line, &error);
    for (int i = 0; i < POINTS; i++)
        raised[i] = fmax(height[i], line[i]);
    cg_mean_line_gaussian(raised, POINTS, spacing, cutoff, want, &error);
    ck_assert_int_eq(cg_mean_line_two_step(height, POINTS, spacing, cutoff,
                                           line, &error),
                     CG_OK);
    for (int i = 0; i < POINTS; i += 7)
        check_within(line[i], want[i], 1e-18, "ISO 13565-1:1996");
}
END_TEST

/* A groove 10 um deep draws the Gaussian line down most, the robust not. */
START_TEST(grooves_passed_by)
{
    double deepest[3] = {0.0, 0.0, 0.0};
    fill_random();
    for (int i = 0; i < POINTS; i++)
        height[i] = 0.1 * height[i] - (i % 1500 - 700 < 100 &&
                                   i % 1500 >= 700 ? 10e-6 : 0.0);
    for (int k = 0; k < 3; k++) {
        filters[k](height, POINTS, spacing, cutoff, line, &error);
        for (int i = 0; i < POINTS; i++)
            deepest[k] = fmin(deepest[k], line[i]);
    }
    ck_assert_double_lt(deepest[0], -0.5e-6);
    ck_assert_double_gt(deepest[1], 0.3 * deepest[0]);
    ck_assert_double_gt(deepest[2], -0.05e-6);
}
END_TEST

/* Without outliers the robust line scatters about the plain one of degree 2
 * by less than that scatters itself, whose variance over that of one height is
 * 1.6875 / (0.7309 sqrt 2) times spacing over cut-off (the square of the kernel
 * summed up). */
START_TEST(robust_without_outliers)
{
    static double want[POINTS];
    double squares = 0.0, count = POINTS - 2000.0;
    fill_random();
    ck_assert_int_eq(
        cg_mean_line_robust(height, POINTS, spacing, cutoff, line, &error),
        CG_OK);
    cg_mean_line_quadratic(height, POINTS, spacing, cutoff, want, &error);
    for (int i = 1000; i < POINTS - 1000; i++)
        squares += (line[i] - want[i]) * (line[i] - want[i]);
    double own = 1e-6 * sqrt(1.6875 / (0.7309 * sqrt(2.0)) * spacing / cutoff);
    check_band(sqrt(squares / count), 0.0, own, "scatter of the line");
    ck_assert_double_gt(squares, 0.0);
}
END_TEST

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(const double *of)
{
    static double sorted[POINTS];
    memcpy(sorted, of, sizeof sorted);
    qsort(sorted, POINTS, sizeof *sorted, by_size);
    return 0.5 * (sorted[POINTS / 2 - 1] + sorted[POINTS / 2]);
}

/* The robust line by its definition, from the weighed line of degree 2. */
START_TEST(robust_by_its_weights)
{
    static double want[POINTS], far[POINTS], weight[POINTS];
    struct cg_regression *regression = NULL;
    fill_random();
    for (int i = 0; i < POINTS; i += 300)
        height[i] -= 4.6e-6;
    ck_assert_int_eq(cg_regression_create(POINTS, spacing, cutoff, 2,
                                          &regression, &error), CG_OK);
    cg_regression_line(regression, height, NULL, want, &error);
    double last = -1.0;
    for (;;) {
        for (int i = 0; i < POINTS; i++)
            far[i] = fabs(height[i] - want[i]);
        double reach = 4.4478 * median(far);
        if (fabs(reach - last) <= 1e-3 * last)
            break; /* settled; never in the first round */
        last = reach;
        for (int i = 0; i < POINTS; i++)
            weight[i] = far[i] < reach ? pow(1.0 - pow(far[i] / reach, 2), 2)
                                       : 0.0;
        cg_regression_line(regression, height, weight, want, &error);
    }
    cg_regression_free(regression);
    ck_assert_int_eq(
        cg_mean_line_robust(height, POINTS, spacing, cutoff, line, &error),
        CG_OK);
    for (int i = 0; i < POINTS; i++)
        check_within(line[i], want[i], 1e-12,
                     "ISO 16610-31:2016, c = 4.4478 medians, from memory; by "
                     "hand");
}
END_TEST

/* Most heights equal: the median distance is 0, and the line lies on them. */
START_TEST(robust_flat_with_grooves)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = i % 600 < 20 ? -5e-6 : 0.0;
    ck_assert_int_eq(
        cg_mean_line_robust(height, POINTS, spacing, cutoff, line, &error),
        CG_OK);
    for (int i = 0; i < POINTS; i++)
        check_within(line[i], 0.0, 1e-7, "a flat trace with grooves");
}
END_TEST

START_TEST(refusals)
{
    fill_random();
    for (int k = 0; k < 4; k++) {
        ck_assert_int_eq(
            filters[k](height, POINTS, 81e-6, cutoff, line, &error),
            CG_BAD_INPUT);
        ck_assert_ptr_nonnull(strstr(error.text, "too coarse"));
        ck_assert_int_eq(
            filters[k](height, 2285, spacing, cutoff, line, &error),
            CG_BAD_INPUT);
        ck_assert_ptr_nonnull(strstr(error.text, "too short"));
        ck_assert_int_eq(
            filters[k](height, 2286, spacing, cutoff, line, &error), CG_OK);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("mean line");
    TCase *lines = tcase_create("lines");
    tcase_set_timeout(lines, 60.0);
    tcase_add_test(lines, straight_stays);
    tcase_add_test(lines, parabola_stays_of_degree_two);
    tcase_add_test(lines, equals_the_plain_sum);
    tcase_add_test(lines, two_steps);
    tcase_add_test(lines, grooves_passed_by);
    tcase_add_test(lines, robust_without_outliers);
    tcase_add_test(lines, robust_by_its_weights);
    tcase_add_test(lines, robust_flat_with_grooves);
    tcase_add_test(lines, refusals);
    suite_add_tcase(suite, lines);
    return check_run(suite);
}
