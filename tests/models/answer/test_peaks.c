#include <math.h>

#include "check_close.h"
#include "peaks.h"

static void see_all(double (*closure)(double), double end,
                    struct cg_peaks *peaks)
{
    *peaks = (struct cg_peaks){.count = 0};
    for (int i = 0; i <= (int)(end * 100.0 + 0.5); i++) {
        struct cg_peak now = {0.01 * i, closure(0.01 * i), 0.0, 0.0};
        cg_peaks_see(&now, peaks);
    }
    cg_peaks_end(peaks);
}

/* Peaks at 2.5, 12.5, 22.5 ... of rising height, with a ripple on each. */
static double laps(double t)
{
    return sin(2.0 * 3.14159265358979 * t / 10.0) + 0.02 * t +
           0.05 * sin(40.0 * t);
}

static double falling(double t)
{
    return -t;
}

static double rising(double t)
{
    return t;
}

START_TEST(the_tightest_of_every_lap)
{
    struct cg_peaks peaks;
    see_all(laps, 70.0, &peaks);
    ck_assert_int_eq(peaks.count, CG_PEAKS);
    for (int i = 0; i < CG_PEAKS; i++) {
        ck_assert_double_le(fabs(peaks.peak[i].time - (62.5 - 10.0 * i)), 0.6);
        if (i > 0)
            ck_assert_double_lt(peaks.peak[i].closure,
                                peaks.peak[i - 1].closure);
    }
}
END_TEST

START_TEST(ends_are_instants_too)
{
    struct cg_peaks peaks;
    see_all(falling, 20.0, &peaks);
    ck_assert_int_eq(peaks.count, 1);
    ck_assert_double_eq(peaks.peak[0].time, 0.0);
    see_all(rising, 20.0, &peaks);
    ck_assert_int_eq(peaks.count, 1);
    ck_assert_double_eq_tol(peaks.peak[0].time, 20.0, 1e-9);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("peaks");
    TCase *tests = tcase_create("peaks");
    tcase_add_test(tests, the_tightest_of_every_lap);
    tcase_add_test(tests, ends_are_instants_too);
    suite_add_tcase(suite, tests);
    return check_run(suite);
}
