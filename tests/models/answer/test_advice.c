/* What to file to: the largest of model, maker and rule, unless evidence has
 * earned less than the rule; and how a gap is judged against it. */
#include <math.h>

#include "advice.h"
#include "check_close.h"

#define IDENTITY "by definition"
#define STEP 0.01e-3

static struct cg_ring_advice advice_of(double need, double rule, double maker,
                                       double earned)
{
    return cg_advise(&(struct cg_advice_says){.need = need,
                                              .rule = rule,
                                              .maker = maker,
                                              .earned = earned,
                                              .most = 5e-3,
                                              .step = STEP});
}

START_TEST(the_largest_and_its_name)
{
    static const struct {
        double need, rule, maker, earned, file_to;
        enum cg_advice_from from;
    } rows[] = {
        {0.46e-3, 0.50e-3, NAN, NAN, 0.50e-3, CG_ADVICE_RULE},
        {0.70e-3, 0.50e-3, NAN, NAN, 0.70e-3, CG_ADVICE_MODEL},
        {0.46e-3, 0.50e-3, 0.55e-3, NAN, 0.55e-3, CG_ADVICE_MAKER},
        {0.46e-3, 0.50e-3, 0.40e-3, NAN, 0.50e-3, CG_ADVICE_RULE},
        {0.70e-3, 0.50e-3, 0.55e-3, NAN, 0.70e-3, CG_ADVICE_MODEL},
        {0.30e-3, 0.50e-3, NAN, 0.40e-3, 0.40e-3, CG_ADVICE_EVIDENCE},
        {0.45e-3, 0.50e-3, NAN, 0.40e-3, 0.45e-3, CG_ADVICE_EVIDENCE},
        {0.60e-3, 0.50e-3, NAN, 0.40e-3, 0.60e-3, CG_ADVICE_MODEL},
        {0.30e-3, 0.50e-3, 0.45e-3, 0.40e-3, 0.45e-3, CG_ADVICE_EVIDENCE},
        {0.30e-3, 0.50e-3, 0.55e-3, 0.40e-3, 0.55e-3, CG_ADVICE_MAKER},
        {0.30e-3, 0.50e-3, NAN, 0.60e-3, 0.50e-3, CG_ADVICE_RULE},
        {0.50e-3, 0.50e-3 * (1.0 + 1e-13), NAN, NAN, 0.50e-3, CG_ADVICE_MODEL},
        {-0.1e-3, 0.50e-3, NAN, NAN, 0.50e-3, CG_ADVICE_RULE},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct cg_ring_advice advice = advice_of(rows[i].need, rows[i].rule,
                                                 rows[i].maker, rows[i].earned);
        check_within(advice.file_to, rows[i].file_to, 1e-12, IDENTITY);
        ck_assert_msg(advice.from == rows[i].from, "row %zu: from %s", i,
                      cg_advice_word(advice.from));
    }
}
END_TEST

/* What to file to is in whole steps; a given gap need only reach the figure
 * itself. */
START_TEST(rounded_up_to_the_step)
{
    struct cg_ring_advice advice = advice_of(0.333e-3, 0.4521e-3, NAN, NAN);
    check_within(advice.file_to, 0.46e-3, 1e-12, IDENTITY);
    check_within(advice.at_least, 0.4521e-3, 1e-15, IDENTITY);
    ck_assert_int_eq(cg_advice_fits(0.455e-3, 0.333e-3, advice.at_least),
                     CG_FITS);
}
END_TEST

START_TEST(a_gap_is_judged_in_three)
{
    ck_assert_int_eq(cg_advice_fits(0.32e-3, 0.33e-3, 0.45e-3), CG_FITS_NOT);
    ck_assert_int_eq(cg_advice_fits(0.33e-3, 0.33e-3, 0.45e-3), CG_FITS_BELOW);
    ck_assert_int_eq(cg_advice_fits(0.44e-3, 0.33e-3, 0.45e-3), CG_FITS_BELOW);
    ck_assert_int_eq(cg_advice_fits(0.45e-3, 0.33e-3, 0.45e-3), CG_FITS);
    ck_assert_int_eq(cg_advice_fits(0.45e-3 * (1.0 - 1e-13), 0.33e-3, 0.45e-3),
                     CG_FITS);
}
END_TEST

/* A rule is no way out where the model finds that no gap will do. */
START_TEST(none_where_no_gap_will_do)
{
    struct cg_ring_advice advice = advice_of(6e-3, 7e-3, 8e-3, NAN);
    ck_assert(isnan(advice.file_to));
    ck_assert_int_eq(advice.from, CG_ADVICE_NONE);
}
END_TEST

START_TEST(the_second_rises_with_the_top)
{
    double last = 0.0;
    for (double top = 0.2e-3; top < 1.5e-3; top += 0.1e-3) {
        double second = cg_advice_second_rule(top, 1.2, 1.0e-3);
        ck_assert_double_ge(second, last);
        check_within(second, fmin(1.2 * top, 1.0e-3), 1e-12, IDENTITY);
        last = second;
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("advice");
    TCase *all = tcase_create("advice");
    tcase_add_test(all, the_largest_and_its_name);
    tcase_add_test(all, rounded_up_to_the_step);
    tcase_add_test(all, a_gap_is_judged_in_three);
    tcase_add_test(all, none_where_no_gap_will_do);
    tcase_add_test(all, the_second_rises_with_the_top);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
