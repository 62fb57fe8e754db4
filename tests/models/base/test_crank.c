#include "check_close.h"

#include "constants.h"
#include "crank.h"
#include "wiebe.h"

static const struct cg_crank crank = {0.0863, 0.0917, 0.1521, 10.37};

START_TEST(depth_at_the_dead_centres)
{
    check_within(cg_crank_depth(&crank, 0.0), 0.0, 1e-18, "definition");
    check_close(cg_crank_depth(&crank, 180.0), 0.0917, 1e-14, "stroke");
    check_close(cg_crank_depth(&crank, -180.0), 0.0917, 1e-14, "stroke");
    check_close(cg_crank_depth(&crank, 63.1), cg_crank_depth(&crank, -63.1),
                1e-14, "symmetry");
}
END_TEST

START_TEST(depth_by_the_triangle)
{
    /* Pin height over the crank centre: r cos + sqrt(l2 - r2 sin2). */
    double r = 0.5 * 0.0917, l = 0.1521;
    for (double angle = -350.0; angle < 360.0; angle += 23.7) {
        double t = angle * CG_PI / 180.0;
        double s = r * sin(t);
        double want = r + l - r * cos(t) - sqrt(l * l - s * s);
        check_within(cg_crank_depth(&crank, angle), want, 1e-16, "triangle");
    }
}
END_TEST

START_TEST(long_rod_is_harmonic)
{
    struct cg_crank harmonic = crank;
    harmonic.rod = 1e6;
    double want = 0.5 * 0.0917 * (1.0 - cos(71.3 * CG_PI / 180.0));
    check_close(cg_crank_depth(&harmonic, 71.3), want, 1e-6, "cosine law");
}
END_TEST

START_TEST(rates_are_derivatives)
{
    const double step = 1e-3, radians = step * CG_PI / 180.0;
    for (double angle = -341.3; angle < 360.0; angle += 37.9) {
        double rate = (cg_crank_depth(&crank, angle + step) -
                       cg_crank_depth(&crank, angle - step)) / (2 * radians);
        double second = (cg_crank_depth_rate(&crank, angle + step) -
                         cg_crank_depth_rate(&crank, angle - step)) /
                        (2 * radians);
        check_within(cg_crank_depth_rate(&crank, angle), rate, 1e-9,
                     "central difference");
        check_within(cg_crank_depth_second(&crank, angle), second, 1e-9,
                     "central difference");
    }
}
END_TEST

START_TEST(volumes)
{
    double top = cg_crank_volume(&crank, 0.0);
    check_close(cg_crank_volume(&crank, 180.0) / top, 10.37, 1e-13,
                "compression ratio");
    check_close(cg_crank_volume(&crank, 180.0) - top, cg_crank_swept(&crank),
                1e-13, "swept volume");
    check_close(top, cg_crank_clearance(&crank), 1e-15, "clearance");
    check_close(cg_crank_mean_speed(&crank, 100.0), 18.34, 1e-14,
                "two strokes a revolution");
}
END_TEST

START_TEST(wiebe_keeps_its_marks)
{
    struct cg_wiebe wiebe = cg_wiebe_from_burn(8.7, 27.3);
    check_close(cg_wiebe_burned(&wiebe, 8.7), 0.5, 1e-13, "half burned");
    double low = -40.0, high = 80.0, at10, at90;
    for (int i = 0; i < 60; i++) {
        double middle = 0.5 * (low + high);
        *(cg_wiebe_burned(&wiebe, middle) < 0.1 ? &low : &high) = middle;
    }
    at10 = low;
    low = -40.0, high = 80.0;
    for (int i = 0; i < 60; i++) {
        double middle = 0.5 * (low + high);
        *(cg_wiebe_burned(&wiebe, middle) < 0.9 ? &low : &high) = middle;
    }
    at90 = low;
    check_close(at90 - at10, 27.3, 1e-12, "10 % to 90 %");
    check_close(cg_wiebe_burned(&wiebe, wiebe.start_deg + wiebe.duration_deg),
                0.999, 1e-5, "99.9 % at the end");
    ck_assert(cg_wiebe_burned(&wiebe, wiebe.start_deg - 1.0) == 0.0);
    ck_assert(cg_wiebe_rate(&wiebe, wiebe.start_deg - 1.0) == 0.0);
}
END_TEST

START_TEST(wiebe_rate_is_the_derivative)
{
    struct cg_wiebe laws[2] = {cg_wiebe_from_burn(8.7, 27.3),
                               {-13.0, 55.0, 5.0, 2.6}};
    for (int i = 0; i < 2; i++)
        for (double angle = -10.0; angle < 60.0; angle += 3.7) {
            double rate = (cg_wiebe_burned(&laws[i], angle + 1e-4) -
                           cg_wiebe_burned(&laws[i], angle - 1e-4)) / 2e-4;
            check_within(cg_wiebe_rate(&laws[i], angle), rate, 1e-10,
                         "central difference");
        }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("crank and burn law");
    TCase *tcase = tcase_create("crank");
    tcase_add_test(tcase, depth_at_the_dead_centres);
    tcase_add_test(tcase, depth_by_the_triangle);
    tcase_add_test(tcase, long_rod_is_harmonic);
    tcase_add_test(tcase, rates_are_derivatives);
    tcase_add_test(tcase, volumes);
    tcase_add_test(tcase, wiebe_keeps_its_marks);
    tcase_add_test(tcase, wiebe_rate_is_the_derivative);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
