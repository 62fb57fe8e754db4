#include "check_close.h"

#include "constants.h"
#include "cylinder.h"
#include "ring_gap.h"

START_TEST(equal_growth_only_scales_the_gap)
{
    check_close(cg_gap_hot(0.0863, 0.37e-3, 1.7e-3, 1.7e-3), 0.37e-3 * 1.0017,
                1e-14, "similar figures");
}
END_TEST

START_TEST(hot_gap_is_the_difference_of_the_arcs)
{
    double bore = 0.0921, gap = 0.41e-3, bore_strain = 1.23e-3,
           ring_strain = 2.31e-3;
    double want = CG_PI * bore * (1 + bore_strain) -
                  (CG_PI * bore - gap) * (1 + ring_strain);
    check_close(cg_gap_hot(bore, gap, bore_strain, ring_strain), want, 1e-11,
                "the two arcs");
}
END_TEST

START_TEST(cold_gap_inverts_hot_gap)
{
    for (double hot = -0.2e-3; hot < 0.5e-3; hot += 0.07e-3) {
        double cold = cg_gap_cold_for(0.0945, hot, 1.4e-3, 2.6e-3);
        check_within(cg_gap_hot(0.0945, cold, 1.4e-3, 2.6e-3), hot, 1e-17,
                     "there and back");
    }
}
END_TEST

START_TEST(ends_that_do_not_touch_press_nothing)
{
    struct cg_butting butting = {1, 1, 1};
    cg_gap_butting(0.086, 3.1e-3, 200e9, -0.05e-3, 0.15e6, &butting);
    ck_assert_double_eq(butting.hoop_stress, 0.0);
    ck_assert_double_eq(butting.wall_pressure, 0.0);
    ck_assert_double_eq(butting.times_tension, 0.0);
}
END_TEST

START_TEST(butting_balances_half_a_ring)
{
    struct cg_butting butting;
    cg_gap_butting(0.086, 3.1e-3, 200e9, 0.1e-3, 0.15e6, &butting);
    /* 0.1 mm in 270.2 mm of arc: 0.370e-3 of strain. */
    check_close(butting.hoop_stress, 74.03e6, 1e-3, "E s / (pi D), by hand");
    /* per metre of ring width: pressure times diameter against two walls */
    check_close(butting.wall_pressure * 0.086, 2 * butting.hoop_stress * 3.1e-3,
                1e-13, "balance of forces");
    check_close(butting.times_tension, butting.wall_pressure / 0.15e6, 1e-13,
                "multiple of the ring's own pressure");
}
END_TEST

START_TEST(butting_is_proportional_to_overlap)
{
    struct cg_butting one, three;
    cg_gap_butting(0.0995, 3.3e-3, 110e9, 0.04e-3, 0.12e6, &one);
    cg_gap_butting(0.0995, 3.3e-3, 110e9, 0.12e-3, 0.12e6, &three);
    check_close(three.wall_pressure, 3 * one.wall_pressure, 1e-13, "linear");
    check_close(three.hoop_stress, 3 * one.hoop_stress, 1e-13, "linear");
}
END_TEST

/* Pressure that shortens the outer radius of a closed ring by the share
 * overlap / (pi D), by the thick-cylinder solution, over the thin-ring value.
 */
static double thick_over_thin(double depth)
{
    double bore = 0.086, overlap = 0.1e-3;
    struct cg_layer ring = {bore / 2 - depth, bore / 2, 200e9, 0.29, 0};
    double needed = -overlap / (CG_PI * bore) * (bore / 2);
    double thick = needed / cg_lame_displacement(&ring, 0, 1, bore / 2);
    struct cg_butting butting;
    cg_gap_butting(bore, depth, 200e9, overlap, 0.15e6, &butting);
    return thick / butting.wall_pressure;
}

START_TEST(butting_is_the_thin_limit_of_lame)
{
    check_close(thick_over_thin(3e-6), 1.0, 1e-4, "thin limit");
    /* (1/2 + nu) depth / radius, the next term of the expansion */
    check_close(thick_over_thin(0.3e-3) - 1, 0.79 * 0.3 / 43, 0.02,
                "first correction");
    check_band(thick_over_thin(3e-3), 1.05, 1.06, "what the header promises");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ring_gap");
    TCase *tcase = tcase_create("ring_gap");
    tcase_add_test(tcase, equal_growth_only_scales_the_gap);
    tcase_add_test(tcase, hot_gap_is_the_difference_of_the_arcs);
    tcase_add_test(tcase, cold_gap_inverts_hot_gap);
    tcase_add_test(tcase, ends_that_do_not_touch_press_nothing);
    tcase_add_test(tcase, butting_balances_half_a_ring);
    tcase_add_test(tcase, butting_is_proportional_to_overlap);
    tcase_add_test(tcase, butting_is_the_thin_limit_of_lame);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
