/* Profiles and what is read from them: leveling, amplitudes, the curve. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "check_close.h"
#include "constants.h"
#include "surface.h"

enum { POINTS = 12000 };

static double height[POINTS];
static struct cg_profile profile = {height, POINTS, 0.5e-6};
static struct cg_error error;

/* A plateau with valleys, a triangle of 40 um every 160, and texture. */
static void fill(double tilt)
{
    for (int i = 0; i < POINTS; i++) {
        double x = i % 320, valley = fmax(1.0 - fabs(x - 160.0) / 40.0, 0.0);
        height[i] = 0.2e-6 * sin(i * 1.7) - 2e-6 * valley + tilt * i;
    }
}

static struct cg_surface *measure(enum cg_filter filter)
{
    struct cg_surface *surface = NULL;
    ck_assert_int_eq(
        cg_surface_measure(&profile, filter, 0.8e-3, &surface, &error), CG_OK);
    return surface;
}

START_TEST(tilt_is_taken_off)
{
    for (int filter = CG_FILTER_STANDARD; filter < CG_FILTER_NONE; filter++) {
        fill(0.0);
        struct cg_surface *flat = measure((enum cg_filter)filter);
        fill(3e-9);
        struct cg_surface *tilted = measure((enum cg_filter)filter);
        check_close(tilted->amplitude.ra, flat->amplitude.ra, 1e-9, "tilt");
        check_close(tilted->core.rk, flat->core.rk, 1e-6, "tilt");
        check_close(tilted->core.oil, flat->core.oil, 1e-6, "tilt");
        cg_surface_free(flat);
        cg_surface_free(tilted);
    }
}
END_TEST

START_TEST(without_filter_heights_stand)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = 7e-6 + 1e-9 * i;
    struct cg_surface *surface = measure(CG_FILTER_NONE);
    check_close(surface->amplitude.rt, 1e-9 * (POINTS - 1), 1e-9, "a ramp");
    check_close(surface->core.rk, 1e-9 * POINTS, 1e-6, "a ramp is uniform");
    cg_surface_free(surface);
}
END_TEST

/* Twice the heights are twice every height and the same shares. */
START_TEST(scales)
{
    fill(0.0);
    struct cg_surface *one = measure(CG_FILTER_STANDARD);
    for (int i = 0; i < POINTS; i++)
        height[i] *= 2.0;
    struct cg_surface *two = measure(CG_FILTER_STANDARD);
    check_close(two->amplitude.rz, 2.0 * one->amplitude.rz, 1e-9, "scale");
    check_close(two->core.rpk, 2.0 * one->core.rpk, 1e-9, "scale");
    check_close(two->core.rvk, 2.0 * one->core.rvk, 1e-9, "scale");
    check_close(two->core.mr2, one->core.mr2, 1e-9, "scale");
    check_close(two->probability.rvq, 2.0 * one->probability.rvq, 1e-6,
                "scale");
    cg_surface_free(one);
    cg_surface_free(two);
}
END_TEST

/* Upside down, peaks are valleys. */
START_TEST(mirrors)
{
    static double falling[2001], rising[2001];
    struct cg_ratio_curve curve;
    struct cg_core up, down;
    for (int i = 0; i <= 2000; i++) {
        double x = (i - 1000.0) / 1000.0;
        falling[i] = -x - 0.3 * x * x * x + 0.1 * x * x;
        rising[i] = -falling[i];
    }
    cg_ratio_curve_sort(falling, 2001, &curve);
    cg_ratio_curve_core(&curve, &up);
    cg_ratio_curve_sort(rising, 2001, &curve);
    cg_ratio_curve_core(&curve, &down);
    check_close(down.rk, up.rk, 2e-3, "mirror");
    check_close(down.a1, up.a2, 1e-2, "mirror");
    check_close(down.mr1, 1.0 - up.mr2, 1e-2, "mirror");
}
END_TEST

START_TEST(ratio_and_height_invert)
{
    struct cg_ratio_curve curve;
    fill(0.0);
    cg_ratio_curve_sort(height, POINTS, &curve);
    for (int i = 1; i < 100; i++) {
        double ratio = i / 100.0;
        double at = cg_ratio_curve_height(&curve, ratio);
        check_within(cg_ratio_curve_ratio(&curve, at), ratio, 1e-3,
                     "there and back");
    }
    ck_assert_double_eq(cg_ratio_curve_ratio(&curve, 1.0), 0.0);
    ck_assert_double_eq(cg_ratio_curve_ratio(&curve, -1.0), 1.0);
}
END_TEST

/* Six cut-offs and more lose half a cut-off at either end, fewer nothing. */
START_TEST(six_cutoffs_lose_their_ends)
{
    fill(0.0);
    struct cg_profile trace = {height, 0, 1e-6};
    const double cutoff = 1e-4;
    for (int sixths = 0; sixths < 2; sixths++) {
        struct cg_surface *surface = NULL;
        trace.points = sixths == 0 ? 595 : 605;
        ck_assert_int_eq(cg_surface_measure(&trace, CG_FILTER_GAUSSIAN, cutoff,
                                            &surface, &error), CG_OK);
        ck_assert_uint_eq(surface->evaluated, sixths == 0 ? 595 : 505);
        ck_assert_uint_eq(surface->first, sixths == 0 ? 0 : 50);
        cg_surface_free(surface);
    }
}
END_TEST

/* A straight slope leveled is flat, and what lies on it stays. */
START_TEST(leveling)
{
    for (int i = 0; i < POINTS; i++)
        height[i] = 2.0 + 0.37 * i + (i % 2 == 0 ? 1.0 : -1.0);
    cg_profile_level(height, POINTS);
    for (int i = 0; i < POINTS; i++)
        check_within(height[i], i % 2 == 0 ? 1.0 : -1.0, 2e-3,
                     "line of least squares");
}
END_TEST

/* Rz: the mean over sections as long as the cut-off. */
START_TEST(sections)
{
    struct cg_amplitude amplitude;
    memset(height, 0, sizeof height);
    for (int i = 0; i < 5; i++) {
        height[i * 1600 + 3] = (i + 1) * 1e-6;
        height[i * 1600 + 9] = -1e-6;
    }
    cg_profile_amplitude(height, 8000, 0.5e-6, 0.8e-3, &amplitude);
    ck_assert_uint_eq(amplitude.sections, 5);
    check_close(amplitude.rz, (2.0 + 3.0 + 4.0 + 5.0 + 6.0) / 5.0 * 1e-6,
                1e-12, "ISO 4287:1997, by definition");
    check_close(amplitude.rt, 6e-6, 1e-12, "ISO 4287:1997, by definition");
    cg_profile_amplitude(height, 1000, 0.5e-6, 0.8e-3, &amplitude);
    ck_assert_uint_eq(amplitude.sections, 1);
}
END_TEST

static void refused(const char *words)
{
    struct cg_surface *surface = NULL;
    ck_assert_int_eq(cg_surface_measure(&profile, CG_FILTER_GAUSSIAN, 0.8e-3,
                                        &surface, &error),
                     CG_BAD_INPUT);
    ck_assert_ptr_null(surface);
    ck_assert_msg(strstr(error.text, words) != NULL, "%s", error.text);
}

START_TEST(refusals)
{
    fill(0.0);
    height[77] = NAN;
    refused("point 78");
    height[77] = -INFINITY;
    refused("point 78");
    for (int i = 0; i < POINTS; i++)
        height[i] = 2e-6;
    refused("equal");
    for (int i = 0; i < POINTS; i++)
        height[i] = 2e-9 * i;
    refused("straight line");
    profile.points = 99;
    refused("too few");
    profile.points = 0;
    refused("too few");
    profile.points = POINTS;
    profile.spacing = NAN;
    refused("spacing");
    profile.spacing = 0.5e-6;
}
END_TEST

START_TEST(names_of_filters)
{
    ck_assert_str_eq(cg_filter_name(CG_FILTER_STANDARD), "standard");
    ck_assert_str_eq(cg_filter_name(CG_FILTER_GAUSSIAN), "gaussian");
    ck_assert_str_eq(cg_filter_name(CG_FILTER_ROBUST), "robust");
    ck_assert_str_eq(cg_filter_name(CG_FILTER_NONE), "none");
}
END_TEST

START_TEST(normal_scores)
{
    static const double row[][2] = {
        {0.5, 0.0}, {0.9, 1.281552}, {0.05, -1.644854}, {0.001, -3.090232}};
    for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
        check_within(cg_ratio_score(row[i][0]), row[i][1], 1e-6,
                     "table of the normal distribution");
        check_close(cg_score_ratio(row[i][1]), row[i][0], 2e-6,
                    "table of the normal distribution");
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("surface");
    TCase *all = tcase_create("all");
    tcase_add_test(all, tilt_is_taken_off);
    tcase_add_test(all, without_filter_heights_stand);
    tcase_add_test(all, scales);
    tcase_add_test(all, mirrors);
    tcase_add_test(all, ratio_and_height_invert);
    tcase_add_test(all, leveling);
    tcase_add_test(all, six_cutoffs_lose_their_ends);
    tcase_add_test(all, sections);
    tcase_add_test(all, refusals);
    tcase_add_test(all, names_of_filters);
    tcase_add_test(all, normal_scores);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
