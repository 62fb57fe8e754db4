/* Figures of profiles whose material ratio curve is known in closed form. */
#include <check.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <stdlib.h>

#include "check_close.h"
#include "constants.h"
#include "grit.h"
#include "mean_line.h"
#include "surface.h"

#define CORE                                                                 \
    "ISO 13565-2:1996 / ISO 21920-2:2021, derived from the closed formula"

enum { POINTS = 200000 };

static double height[POINTS];
static struct cg_core core;
static struct cg_amplitude amplitude;
static struct cg_probability probability;

/* Measures `height`, which holds a curve's quantiles in falling order, as a
 * trace that runs through them. */
static void measure(void)
{
    struct cg_ratio_curve curve;
    cg_profile_amplitude(height, POINTS, 1e-6, 1.0, &amplitude);
    cg_ratio_curve_sort(height, POINTS, &curve);
    cg_ratio_curve_core(&curve, &core);
    cg_ratio_curve_probability(&curve, &probability);
}

static double ratio_of(int i)
{
    return (i + 0.5) / POINTS;
}

START_TEST(gaussian_heights)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = gsl_cdf_ugaussian_Qinv(ratio_of(i));
    measure();
    check_close(core.rk, 2.57396, 1e-4, CORE);
    check_close(core.mr1, 0.09905, 1e-3, CORE);
    check_close(core.mr2, 0.90095, 1e-4, CORE);
    check_close(core.a1, 0.04680, 1e-3, CORE);
    check_close(core.a2, 0.04680, 1e-3, CORE);
    check_close(core.rpk, 0.94503, 1e-3, CORE);
    check_close(core.rvk, 0.94503, 1e-3, CORE);
    check_close(amplitude.ra, sqrt(2.0 / CG_PI), 1e-4,
                "ISO 21920-2:2021, derived: sqrt(2/pi) sigma");
    check_close(amplitude.rq, 1.0, 1e-4, "ISO 21920-2:2021, by definition");
    check_close(probability.rpq, 1.0, 1e-3,
                "ISO 13565-3:1998, derived: one law, one line");
    ck_assert(!probability.bends);
}
END_TEST

START_TEST(uniform_heights)
{
    double most = 3.7;
    for (int i = 0; i < POINTS; i++)
        height[i] = most * (1.0 - ratio_of(i));
    measure();
    check_close(core.rk, most, 1e-6, CORE);
    check_within(core.mr1, 0.0, 1e-5, CORE);
    check_close(core.mr2, 1.0, 1e-5, CORE);
    check_within(core.a1, 0.0, 1e-9, CORE);
    check_within(core.a2, 0.0, 1e-9, CORE);
    check_within(core.rpk, 0.0, 1e-4, CORE);
    check_within(core.rvk, 0.0, 1e-4, CORE);
}
END_TEST

/* Not S-shaped: the flattest 40 % are at both ends, and the first counts. */
START_TEST(sine_heights)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = cos(CG_PI * ratio_of(i));
    measure();
    check_within(core.start, 0.0, 1e-4, CORE);
    check_close(core.rk, 1.7747, 1e-4, CORE);
    check_within(core.mr1, 0.0, 1e-5, CORE);
    check_close(core.mr2, 0.7307, 1e-4, CORE);
    check_within(core.a1, 0.0, 1e-9, CORE);
    check_close(core.a2, 0.05978, 1e-3, CORE);
    check_close(core.rvk, 0.44392, 1e-3, CORE);
    check_close(amplitude.ra, 2.0 / CG_PI, 1e-4,
                "ISO 21920-2:2021, derived: 2/pi of the amplitude");
    check_close(amplitude.rq, sqrt(0.5), 1e-4,
                "ISO 21920-2:2021, derived: sqrt(1/2) of the amplitude");
    check_close(amplitude.rz, 2.0, 1e-4, "ISO 21920-2:2021, by definition");
}
END_TEST

/* Share above z of the lower of two normal laws. */
static double plateau_ratio(double z, double plateau, double valley,
                            double between)
{
    return gsl_cdf_ugaussian_Q(z / plateau) *
           gsl_cdf_ugaussian_Q((z - between) / valley);
}

static void fill_plateau(double plateau, double valley, double between)
{
    for (int i = 0; i < POINTS; i++) {
        double low = -30.0 * valley, high = 10.0 * plateau;
        for (int pass = 0; pass < 80; pass++) {
            double middle = 0.5 * (low + high);
            if (plateau_ratio(middle, plateau, valley, between) > ratio_of(i))
                low = middle;
            else
                high = middle;
        }
        height[i] = low;
    }
}

START_TEST(two_process_plateau)
{
    fill_plateau(0.15, 1.0, 0.8);
    measure();
    check_close(core.start, 0.2295, 2e-3, CORE);
    check_close(core.rk, 0.46039, 1e-4, CORE);
    check_close(core.mr1, 0.08238, 1e-3, CORE);
    check_close(core.mr2, 0.83233, 1e-4, CORE);
    check_close(core.rpk, 0.14127, 1e-3, CORE);
    check_close(core.rvk, 0.87327, 1e-3, CORE);
    /* heights in um: 0.1 mm3/cm2 is 1 um deep */
    check_close(core.oil * 0.1, 0.007321, 1e-3, CORE);
}
END_TEST

/* The valleys alone are seen deep down, so their law comes out as it is; the
 * plateau's heights are cut by valleys too, so that its line is a little
 * steeper than the law alone, by the standard's definition also. */
START_TEST(two_process_probability)
{
    const char *why = "ISO 13565-3:1998, derived: slopes of the two laws and "
                      "where their lines meet";
    static const double law[][3] = {
        {0.15, 1.0, 0.8}, {0.1, 1.0, 0.5}, {0.2, 0.8, 0.8}, {0.1, 1.5, 2.0}};
    for (int i = 0; i < 4; i++) {
        const double *at = law[i];
        fill_plateau(at[0], at[1], at[2]);
        measure();
        ck_assert(probability.bends);
        check_close(probability.rvq, at[1], 0.005, why);
        check_close(probability.rpq, at[0], 0.15, why);
        double meet = gsl_cdf_ugaussian_P(at[2] / (at[1] - at[0]));
        check_within(probability.rmq, meet, 0.025, why);
    }
}
END_TEST

START_TEST(oil_volume)
{
    const char *why = "ISO 13565-2:1996, Vo = (100 - Mr2) Rvk / 2000 mm3/cm2 "
                      "(common form, from memory)";
    for (int i = 0; i < POINTS; i++) /* flat, then a straight valley */
        height[i] = ratio_of(i) < 0.8
                        ? 1.5 + 0.001 * (0.8 - ratio_of(i))
                        : 1.5 * (1.0 - (ratio_of(i) - 0.8) / 0.2);
    measure();
    check_close(core.rvk, 1.5, 0.002, why);
    check_close(core.mr2, 0.8, 0.001, why);
    check_close(core.oil * 0.1, 0.0150, 0.002, why);
    check_close(core.oil * 0.1,
                (100.0 - core.mr2 * 100.0) * core.rvk / 2000.0, 1e-12, why);
    check_close(core.oil, core.a2, 1e-12, why);
}
END_TEST

/* Three standard errors of single runs about the exact value. */
START_TEST(random_heights)
{
    const char *why = "derived: Monte Carlo of 200 runs about the closed "
                      "formula, three standard errors";
    static const struct {
        int points;
        double mean, error;
    } row[] = {{2000, 2.561, 0.034}, {8000, 2.571, 0.017},
               {100000, 2.575, 0.0048}};
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    for (int i = 0; i < 3; i++) {
        struct cg_ratio_curve curve;
        for (int k = 0; k < row[i].points; k++)
            height[k] = gsl_ran_gaussian(random, 1.0);
        cg_ratio_curve_sort(height, (size_t)row[i].points, &curve);
        cg_ratio_curve_core(&curve, &core);
        check_close(core.rk, row[i].mean, 3.0 * row[i].error, why);
        check_close(core.mr1, 1.0 - core.mr2, 0.35, why);
    }
    gsl_rng_free(random);
}
END_TEST

/* The share of a cosine that passes into the line, at the trace's middle. */
static double share(double ratio, int degree)
{
    static double wave[20001], line[20001];
    struct cg_error error;
    double cutoff = 0.8e-3, spacing = 1e-6;
    for (int i = 0; i <= 20000; i++)
        wave[i] = cos(2.0 * CG_PI * (i - 10000) * spacing * ratio / cutoff);
    if (degree == 1)
        ck_assert_int_eq(cg_mean_line_gaussian(wave, 20001, spacing, cutoff,
                                               line, &error),
                         CG_OK);
    else
        ck_assert_int_eq(cg_mean_line_quadratic(wave, 20001, spacing, cutoff,
                                                line, &error),
                         CG_OK);
    return line[10000];
}

START_TEST(filter_transmission)
{
    const char *why = "ISO 16610-21:2011, exp(-pi (0.4697 cutoff/L)^2) = "
                      "2^-(cutoff/L)^2 (from memory)";
    /* wavelength over cut-off: 1/2, 1, 2, 3, 5, 10 */
    check_within(share(2.0, 1), 0.0625, 2e-5, why);
    check_within(share(1.0, 1), 0.5, 2e-5, why);
    check_within(share(0.5, 1), 0.84090, 2e-5, why);
    check_within(share(1.0 / 3.0, 1), 0.92587, 2e-5, why);
    check_within(share(0.2, 1), 0.97265, 2e-5, why);
    check_within(share(0.1, 1), 0.99309, 2e-5, why);
    check_close(cg_mean_line_gaussian_share(1.0), 0.5, 1e-12, why);
    why = "ISO 16610-31:2016, degree 2, width 0.7309: (1 + u) exp(-u) (from "
          "memory, derived)";
    check_within(share(1.0, 2), 0.5, 5e-5, why);
    check_within(share(0.5, 2), 0.93312, 5e-5, why);
    check_within(share(2.0, 2), 0.00937, 5e-5, why);
    check_close(cg_mean_line_quadratic_share(1.0), 0.5, 1e-9, why);
}
END_TEST

START_TEST(grain_of_grit)
{
    const char *why = "FEPA 42-1 / ISO 8486, mean grain, from memory";
    static const struct {
        int grit;
        double grain; /* [um] */
    } at[] = {{80, 185},   {100, 129},  {120, 109},  {150, 82},  {180, 69},
              {220, 58},   {240, 44.5}, {280, 36.5}, {320, 29.2}, {400, 17.3},
              {500, 12.8}, {600, 9.3},  {800, 6.5},  {1000, 4.5}, {1200, 3.0}};
    for (size_t i = 0; i < sizeof at / sizeof *at; i++)
        check_close(cg_grit_grain(at[i].grit), at[i].grain * 1e-6, 1e-9, why);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("finish, closed formulas");
    TCase *heights = tcase_create("heights");
    tcase_set_timeout(heights, 60.0);
    tcase_add_test(heights, gaussian_heights);
    tcase_add_test(heights, uniform_heights);
    tcase_add_test(heights, sine_heights);
    tcase_add_test(heights, two_process_plateau);
    tcase_add_test(heights, two_process_probability);
    tcase_add_test(heights, oil_volume);
    tcase_add_test(heights, random_heights);
    tcase_add_test(heights, filter_transmission);
    tcase_add_test(heights, grain_of_grit);
    suite_add_tcase(suite, heights);
    return check_run(suite);
}
