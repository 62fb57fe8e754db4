#include "check_close.h"

#include "charger_row.h"

#define ON_PAPER "worked on paper from the formula in the header"

/* 298 K, four times the pressure outside: 2 and 2, 2^(2/7) = 1.219014. */
static const struct cg_charger_row row = {2, {0.70, 0.75}, 0.5, 0.6};

START_TEST(two_with_a_cooler_between)
{
    struct cg_charged got = cg_charger_row(&row, 298.0, 4.0);
    /* 298 x 0.219014 / 0.70 = 93.237; 0.4 of it is left: 335.295 K;
     * x 0.219014 / 0.75 = 97.912 */
    check_close(got.work[0], 1005.0 * 93.237, 1e-5, ON_PAPER);
    check_close(got.work[1], 1005.0 * 97.912, 1e-5, ON_PAPER);
    check_close(got.rise, 37.295 + 97.912, 1e-5, ON_PAPER);
    check_close(got.pressure[0], 1.0, 1e-14, ON_PAPER);
    check_close(got.pressure[1], 2.0, 1e-14, ON_PAPER);
}
END_TEST

START_TEST(two_without_a_cooler)
{
    struct cg_charger_row bare = row;
    bare.between = 0.0;
    struct cg_charged got = cg_charger_row(&bare, 298.0, 4.0);
    /* 391.237 x 0.219014 / 0.75 = 114.248 */
    check_close(got.rise, 93.237 + 114.248, 1e-5, ON_PAPER);
}
END_TEST

/* Without losses and without a cooler the way to a pressure does not matter. */
START_TEST(perfect_ones_are_as_good_as_one)
{
    for (int i = 1; i < 10; i++) {
        struct cg_charger_row two = {2, {1.0, 1.0}, 0.1 * i, 0.0};
        struct cg_charger_row one = {1, {1.0, 0.3}, 0.1 * i, 0.7};
        struct cg_charged a = cg_charger_row(&two, 287.3, 3.7);
        struct cg_charged b = cg_charger_row(&one, 287.3, 3.7);
        check_close(a.rise, b.rise, 1e-13, "isentropic");
        check_close(a.work[0] + a.work[1], b.work[0], 1e-13, "isentropic");
        check_close(b.work[0], 1005.0 * b.rise, 1e-14, "first law");
        ck_assert_double_eq(b.work[1], 0.0);
    }
}
END_TEST

/* What leaves is what the chargers put in, less what the cooler took. */
START_TEST(heat_closes)
{
    struct cg_charged got = cg_charger_row(&row, 301.0, 3.1);
    double taken = 0.6 * got.work[0];
    check_close(1005.0 * got.rise, got.work[0] + got.work[1] - taken, 1e-13,
                "first law");
    check_close(got.pressure[0] + got.pressure[1], 2.1, 1e-14, "definition");
}
END_TEST

/* A perfect cooler between them and halves of the logarithm are the least work
 * (the textbook's rule for stages of one efficiency). */
START_TEST(equal_ratios_are_the_least_work)
{
    struct cg_charger_row cooled = {2, {0.7, 0.7}, 0.5, 1.0};
    struct cg_charged best = cg_charger_row(&cooled, 298.0, 4.0);
    for (int i = 1; i < 10; i++) {
        cooled.split = 0.1 * i;
        struct cg_charged got = cg_charger_row(&cooled, 298.0, 4.0);
        check_least(got.work[0] + got.work[1],
                    (best.work[0] + best.work[1]) * (1.0 - 1e-14),
                    "equal ratios");
        if (i != 5)
            ck_assert(got.work[0] + got.work[1] >
                      1.001 * (best.work[0] + best.work[1]));
    }
}
END_TEST

START_TEST(no_boost_no_rise)
{
    struct cg_charged got = cg_charger_row(&row, 298.0, 1.0);
    ck_assert(got.rise == 0.0 && got.work[0] == 0.0 && got.work[1] == 0.0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("charger row");
    TCase *all = tcase_create("charger row");
    tcase_add_test(all, two_with_a_cooler_between);
    tcase_add_test(all, two_without_a_cooler);
    tcase_add_test(all, perfect_ones_are_as_good_as_one);
    tcase_add_test(all, heat_closes);
    tcase_add_test(all, equal_ratios_are_the_least_work);
    tcase_add_test(all, no_boost_no_rise);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
