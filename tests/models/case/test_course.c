#include <math.h>
#include <stdlib.h>

#include "case.h"
#include "check_close.h"
#include "course_lag.h"
#include "operating.h"
#include "setting.h"

/* Something that never repeats, from -1 to 1. */
static double noise(size_t i)
{
    return 2.0 *
               fmod(0.5 + 0.6180339887 * (double)i * (double)(1 + i % 7), 1.0) -
           1.0;
}

static const struct cg_segment three[] = {
    {2.0, 50.0, 90.0, 0.2, 1.0, 1.0, NAN, 0.0, 0.0, 0.0},
    {3.0, 90.0, 90.0, 1.0, 1.0, 1.1, 340.0, 1.5, 0.0, 0.0},
    {1.0, 80.0, 60.0, 0.0, 0.0, 1.0, NAN, 0.0, 0.0, 0.0}};

static struct cg_course *course_of_three(struct cg_course **list)
{
    struct cg_course *course = NULL;
    ck_assert_int_eq(
        cg_course_of_segments(three, 3, 360.0, list, &course, NULL), CG_OK);
    return course;
}

START_TEST(segments_become_rows)
{
    struct cg_course *list = NULL, *course = course_of_three(&list);
    double of[CG_CHANNELS];
    ck_assert_uint_eq(course->rows, 6); /* two jumps, both ends of either */
    ck_assert_double_eq(course->knock_heat, 1.5);
    cg_course_at(course, 1.0, of);
    ck_assert_double_eq_tol(of[CG_CHANNEL_SPEED], 70.0, 1e-12);
    ck_assert_double_eq_tol(of[CG_CHANNEL_LOAD], 0.6, 1e-12);
    ck_assert_double_eq_tol(of[CG_CHANNEL_COOLANT], 360.0, 1e-12);
    cg_course_at(course, 3.0, of);
    ck_assert_double_eq_tol(of[CG_CHANNEL_HEAT], 1.65, 1e-12);
    ck_assert_double_eq_tol(of[CG_CHANNEL_COOLANT], 340.0, 1e-12);
    cg_course_at(course, 5.5, of);
    ck_assert_double_eq_tol(of[CG_CHANNEL_SPEED], 70.0, 1e-12);
    ck_assert(isnan(of[CG_CHANNEL_LAMBDA]));
    struct cg_duty_case duty = {.course = course};
    ck_assert_double_eq_tol(cg_duty_seconds(&duty), 6.0, 1e-12);
    ck_assert_double_eq_tol(cg_duty_slowest(&duty), 50.0, 1e-12);
    ck_assert_double_eq_tol(cg_duty_knock_heat(&duty), 1.5, 1e-12);
    cg_courses_free(list);
}
END_TEST

/* A log of 20 s at 100 rows a second: swings, a jump, noise of 0.4 % of load.
 */
static struct cg_course *noisy(double noise_of, struct cg_course **list)
{
    const size_t rows = 2001;
    struct cg_course *course = NULL;
    ck_assert_int_eq(cg_course_create(list, rows, &course, NULL), CG_OK);
    for (size_t i = 0; i < rows; i++) {
        double t = 0.01 * (double)i;
        struct cg_course_row row = {
            .time = t,
            .of = {60.0 + 30.0 * sin(0.4 * t) + 0.2 * noise_of * noise(i),
                   t < 10.0 ? 0.05 * t : 1.0 - 0.03 * (t - 10.0), NAN, 360.0,
                   NAN, NAN, NAN, NAN, NAN}};
        row.of[CG_CHANNEL_LOAD] += 0.004 * noise_of * noise(i + 5);
        course->row[course->rows++] = row;
    }
    return course;
}

START_TEST(thinned_within_the_band)
{
    struct cg_course *list = NULL, *course = noisy(1.0, &list);
    ck_assert_int_eq(cg_course_thin(100.0, &cg_thin_usual, course, NULL),
                     CG_OK);
    ck_assert_uint_eq(course->all_rows, 2001);
    ck_assert_uint_lt(course->rows, 1000);
    ck_assert_double_eq(course->row[course->rows - 1].time, 20.0);
    double sum[2] = {0.0, 0.0}, before[2] = {0.0, 0.0};
    for (size_t i = 0; i < course->all_rows; i++) {
        double of[CG_CHANNELS];
        cg_course_at(course, course->all[i].time, of);
        for (int k = 0; k < 2; k++) {
            double unit = k == CG_CHANNEL_SPEED ? 100.0 : 1.0;
            double off = course->all[i].of[k] - of[k];
            ck_assert_double_le(fabs(off),
                                cg_thin_usual.off[k] * unit * (1 + 1e-9));
            sum[k] += 0.5 * 0.01 * (off + before[k]);
            before[k] = off;
            /* between two rows kept it may run ahead by what one line leaves */
            ck_assert_double_le(fabs(sum[k]),
                                3.0 * cg_thin_usual.sum[k] * unit);
        }
    }
    cg_courses_free(list);
}
END_TEST

START_TEST(straight_lines_need_their_ends_alone)
{
    struct cg_course *list = NULL, *course = noisy(0.0, &list);
    for (size_t i = 0; i < course->rows; i++)
        course->row[i].of[CG_CHANNEL_SPEED] = 60.0;
    ck_assert_int_eq(cg_course_thin(100.0, &cg_thin_usual, course, NULL),
                     CG_OK);
    /* 20 s in stretches of at most 4 s, and the step of the load */
    ck_assert_uint_le(course->rows, 12);
    cg_courses_free(list);
    list = NULL;
    course = course_of_three(&list);
    ck_assert_int_eq(cg_course_thin(100.0, &cg_thin_usual, course, NULL),
                     CG_OK);
    ck_assert_uint_eq(course->rows, 6); /* jumps stay */
    cg_courses_free(list);
}
END_TEST

/* Integral of a channel over the time from a to b [s]. */
static double integral(const struct cg_course *course, int k, double a,
                       double b)
{
    const int steps = 20000;
    double sum = 0.0, of[CG_CHANNELS];
    for (int i = 0; i < steps; i++) {
        cg_course_at(course, a + (b - a) * (i + 0.5) / steps, of);
        sum += of[k];
    }
    return sum * (b - a) / steps;
}

START_TEST(seen_from_an_instant)
{
    struct cg_course *list = NULL, *course = noisy(1.0, &list), *seen = NULL;
    ck_assert_int_eq(
        cg_course_seen(course, 15.0, CG_SEEN_MEANS, &list, &seen, NULL), CG_OK);
    ck_assert_uint_lt(seen->rows, 60);
    ck_assert_double_eq(seen->row[0].time, 0.0);
    for (int k = 0; k < 2; k++)
        ck_assert_double_eq(seen->row[0].of[k], course->row[0].of[k]);
    ck_assert_double_eq(seen->row[seen->rows - 1].time, 17.0);
    ck_assert_double_eq(seen->watch, 12.0);
    ck_assert(isnan(seen->row[3].of[CG_CHANNEL_LAMBDA]));
    for (int k = 0; k < 2; k++) {
        double whole = integral(course, k, 0.0, 15.0);
        ck_assert_double_le(fabs(integral(seen, k, 0.0, 15.0) - whole),
                            0.005 * whole);
    }
    struct cg_course *all = NULL;
    ck_assert_int_eq(cg_course_thin(100.0, &cg_thin_usual, course, NULL),
                     CG_OK);
    ck_assert_int_eq(
        cg_course_seen(course, 19.5, CG_SEEN_ALL, &list, &all, NULL), CG_OK);
    double last = all->row[all->rows - 1].time;
    ck_assert_double_eq(last, 20.0);
    /* every row of the last seconds */
    ck_assert_double_eq_tol(last - all->row[all->rows - 2].time, 0.01, 1e-9);
    ck_assert_uint_gt(all->rows, 800);
    cg_courses_free(list);
}
END_TEST

/* Two pulls, with a cruise between them. */
static struct cg_case pulls(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.speed = 100.0;
    c.charge.boost = 1e5;
    c.duty.start = CG_START_COLD;
    c.duty.segments = 3;
    c.duty.segment[0] =
        (struct cg_segment){10.0, 60.0, 60.0, 1.0, 1.0, 1.0, NAN,
                            0.0,  0.0,  0.0};
    c.duty.segment[1] =
        (struct cg_segment){20.0, 60.0, 60.0, 0.1, 0.1, 1.0, NAN,
                            0.0,  0.0,  0.0};
    c.duty.segment[2] = c.duty.segment[0];
    return c;
}

static double lagged(const struct cg_case *c, double time,
                     enum cg_course_channel k)
{
    struct cg_course *list = NULL, *course = NULL;
    double of[CG_CHANNELS];
    ck_assert(cg_case_lags(c));
    ck_assert_int_eq(cg_course_lag(c, &c->duty, &list, &course, NULL), CG_OK);
    cg_course_at(course, time, of);
    cg_courses_free(list);
    return of[k];
}

/* Above ambient by 1 - exp(-t/T); shut, it is shut at once. */
START_TEST(boost_builds)
{
    struct cg_case c = pulls();
    const struct cg_charge_case *in = &c.charge;
    double whole = in->ambient_pressure + in->boost - in->closed_throttle;
    double ambient = (in->ambient_pressure - in->closed_throttle) / whole;
    ck_assert(!cg_case_lags(&c));
    c.charge.boost_time = 0.8;
    for (double t = 0.4; t < 5.0; t += 0.9)
        ck_assert_double_eq_tol(
            lagged(&c, t, CG_CHANNEL_LOAD),
            1.0 - (1.0 - ambient) * exp(-t / 0.8), 0.012);
    ck_assert_double_eq_tol(lagged(&c, 12.0, CG_CHANNEL_LOAD), 0.1, 1e-9);
    ck_assert_double_eq_tol(lagged(&c, 29.9, CG_CHANNEL_LOAD), 0.1, 1e-9);
    ck_assert_double_eq_tol(lagged(&c, 40.0, CG_CHANNEL_LOAD), 1.0, 0.011);
    ck_assert(isnan(lagged(&c, 5.0, CG_CHANNEL_SOAK)));
}
END_TEST

/* What a first-order body of 1 s that was at rest at `from` is at: for an hour
 * asked for the whole, or straight up, or straight down before it is there. */
static double by_hand(double t, double from, double a, double slope)
{
    double there = a + slope * t;
    return fmin(there, there - slope + (from - a + slope) * exp(-t));
}

START_TEST(boost_by_the_formula)
{
    struct cg_case c = pulls();
    const struct cg_charge_case *in = &c.charge;
    double whole = in->ambient_pressure + in->boost - in->closed_throttle;
    double ambient = (in->ambient_pressure - in->closed_throttle) / whole;
    const struct cg_segment asked[] = {
        {3600.0, 60.0, 60.0, 1.0, 1.0, 1.0, NAN, 0.0, 0.0, 0.0},
        {4.0, 60.0, 60.0, ambient, 1.0, 1.0, NAN, 0.0, 0.0, 0.0},
        {40.0, 60.0, 60.0, ambient - 0.1, 1.0, 1.0, NAN, 0.0, 0.0, 0.0},
        {300.0, 60.0, 60.0, 1.0, ambient, 1.0, NAN, 0.0, 0.0, 0.0}};
    c.charge.boost_time = 1.0;
    c.duty.segments = 1;
    for (size_t s = 0; s < sizeof asked / sizeof asked[0]; s++) {
        struct cg_course *list = NULL, *course = NULL;
        double slope = (asked[s].load_end - asked[s].load) / asked[s].seconds;
        double begins = fmax(ambient - asked[s].load, 0.0);
        begins = begins > 0.0 ? begins / slope : 0.0;
        double a = asked[s].load + slope * begins;
        c.duty.segment[0] = asked[s];
        ck_assert_int_eq(cg_course_lag(&c, &c.duty, &list, &course, NULL),
                         CG_OK);
        ck_assert_uint_le(course->all_rows, 100);
        for (double t = begins; t < asked[s].seconds; t += 0.05) {
            double of[CG_CHANNELS];
            cg_course_at(course, t, of);
            ck_assert_double_eq_tol(of[CG_CHANNEL_LOAD],
                                    by_hand(t - begins, ambient, a, slope),
                                    0.012);
        }
        for (size_t i = 0; i < course->all_rows; i++)
            if (course->all[i].time >= begins)
                ck_assert_double_eq_tol(
                    course->all[i].of[CG_CHANNEL_LOAD],
                    by_hand(course->all[i].time - begins, ambient, a, slope),
                    1e-9);
        cg_courses_free(list);
    }
}
END_TEST

/* The core warms over a pull, cools between, and is warmer in the second. */
START_TEST(a_cooler_soaks)
{
    struct cg_case c = pulls();
    c.charge.cooler_soak = 0.5;
    c.charge.soak_time = 20.0;
    double first = 1.0 - exp(-10.0 / 20.0);
    double between = first * exp(-20.0 / 20.0);
    double second = 1.0 - (1.0 - between) * exp(-10.0 / 20.0);
    ck_assert_double_eq_tol(lagged(&c, 9.99, CG_CHANNEL_SOAK), first, 0.02);
    ck_assert_double_eq_tol(lagged(&c, 29.9, CG_CHANNEL_SOAK), between, 0.02);
    ck_assert_double_eq_tol(lagged(&c, 40.0, CG_CHANNEL_SOAK), second, 0.02);

    struct cg_operating cold = cg_operating_at(&c, 60.0, 1.0), warm = cold;
    struct cg_charge_state a, b;
    warm.soak = second;
    cg_operating_charge(&c, &cold, &a);
    cg_operating_charge(&c, &warm, &b);
    ck_assert_double_eq_tol(b.manifold_temperature - a.manifold_temperature,
                            0.5 * second * c.charge.cooler_effectiveness *
                                cg_operating_rise(&c, 1.0),
                            1e-9);
    c.duty.start = CG_START_SETTLED; /* it has soaked */
    ck_assert_double_eq_tol(lagged(&c, 0.0, CG_CHANNEL_SOAK), 1.0, 1e-9);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("course");
    TCase *tests = tcase_create("course");
    tcase_add_test(tests, segments_become_rows);
    tcase_add_test(tests, thinned_within_the_band);
    tcase_add_test(tests, straight_lines_need_their_ends_alone);
    tcase_add_test(tests, seen_from_an_instant);
    tcase_add_test(tests, boost_builds);
    tcase_add_test(tests, boost_by_the_formula);
    tcase_add_test(tests, a_cooler_soaks);
    suite_add_tcase(suite, tests);
    return check_run(suite);
}
