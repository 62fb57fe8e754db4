/* Where a use first comes to a level. */
#include "check_close.h"
#include "ring_choice.h"

static const double boost[] = {0.0, 25e3, 50e3, 75e3, 100e3};

START_TEST(crossing)
{
    static const double rises[] = {-1.0, -0.5, 0.25, 0.75, 1.75};
    check_close(cg_choice_crossing(boost, rises, 5, 0.0), 25e3 + 50e3 / 3.0,
                1e-14, "straight between two points");
    check_close(cg_choice_crossing(boost, rises, 5, 1.0), 75e3 + 6250.0,
                1e-14, "the same for the upper end");
    ck_assert_double_eq(cg_choice_crossing(boost, rises, 5, 0.75), 75e3);
    ck_assert(isnan(cg_choice_crossing(boost, rises, 5, 2.0)));
    ck_assert_double_eq(cg_choice_crossing(boost, rises, 5, -2.0), 0.0);
}
END_TEST

/* A use that falls again has stopped fitting all the same. */
START_TEST(the_first_crossing_counts)
{
    static const double dips[] = {-1.0, 0.5, -0.5, -0.2, 0.4};
    check_close(cg_choice_crossing(boost, dips, 5, 0.0), 25e3 / 1.5, 1e-14,
                "straight between two points");
}
END_TEST

START_TEST(words)
{
    ck_assert_str_eq(cg_ring_verdict_text(CG_RING_FITS), "fits");
    ck_assert_str_eq(cg_ring_verdict_text(CG_RING_MARGINAL), "marginal");
    ck_assert_str_eq(cg_ring_verdict_text(CG_RING_UNFIT), "unfit");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ring choice");
    TCase *all = tcase_create("crossing");
    tcase_add_test(all, crossing);
    tcase_add_test(all, the_first_crossing_counts);
    tcase_add_test(all, words);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
