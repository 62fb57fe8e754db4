/* The price of rings too wide, in gas. */
#include "case_of.h"
#include "check_close.h"
#include "gap_price.h"
#include "seal.h"

static struct cg_case c;
static struct cg_duty_run *run;
static struct cg_error error;

/* Gaps of an answer made up: 0.45 and 0.40 mm asked, too wide from 0.6 mm. */
static struct cg_fitting fitting_of(double top, double second)
{
    struct cg_fitting fitting = {.cylinders = 2};
    const double gap[CG_FIT_RINGS] = {top, second};
    fitting.asked[0] = (struct cg_fit_asked){.closure = 0.30e-3,
                                             .spread = 0.1e-3,
                                             .minimum_hot_gap = 0.05e-3,
                                             .too_wide = 0.6e-3};
    fitting.asked[1] = (struct cg_fit_asked){.closure = 0.25e-3,
                                             .spread = 0.1e-3,
                                             .minimum_hot_gap = 0.05e-3,
                                             .too_wide = 0.6e-3};
    for (int i = 0; i < fitting.cylinders; i++)
        for (int k = 0; k < CG_FIT_RINGS; k++) {
            struct cg_fit *fit = &fitting.cylinder[i].ring[k];
            cg_fit_ring(&fitting.asked[k], 1.0, 0.01e-3,
                        i == 1 ? gap[k] : 0.5e-3, fit);
            fitting.count[fit->state]++;
        }
    return fitting;
}

static struct cg_gap_prices priced(double top, double second)
{
    struct cg_gap_prices prices;
    struct cg_fitting fitting = fitting_of(top, second);
    enum cg_status status =
        cg_gap_prices_find(&c, run, &fitting, &prices, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return prices;
}

static void setup(void)
{
    c = case_of(CG_TEST_CONFIGS "/engines/iron_six.cfg", NULL, 0);
    run = run_of(&c);
}

static void teardown(void)
{
    cg_duty_run_free(run);
}

/* Whole engine, asked of the gas model itself. */
static double leak(double top, double second)
{
    struct cg_seal *seal;
    struct cg_seal_answer at;
    enum cg_status status =
        cg_seal_create(&c, run, run->full_load, &seal, &error);
    if (status == CG_OK)
        status = cg_seal_solve(seal, top, second, &at, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_seal_free(seal);
    return at.blow_by;
}

START_TEST(nothing_too_wide_has_no_price)
{
    struct cg_gap_prices prices = priced(0.55e-3, NAN);
    ck_assert(isnan(prices.asked));
    ck_assert(isnan(prices.ring[0][0].blow_by));
    ck_assert(isnan(prices.ring[1][0].volume));
}
END_TEST

START_TEST(the_price_is_of_that_ring_alone)
{
    struct cg_gap_prices prices = priced(0.85e-3, 0.5e-3);
    double asked = leak(0.45e-3, 0.40e-3), wide = leak(0.85e-3, 0.40e-3);
    check_close(prices.asked, asked / 6.0, 1e-6, "cg_seal_solve");
    check_close(prices.ring[1][0].blow_by, (wide - asked) / 6.0, 1e-6,
                "cg_seal_solve");
    ck_assert(isnan(prices.ring[1][1].blow_by));
    ck_assert(isnan(prices.ring[0][0].blow_by));
}
END_TEST

/* The top gap is the narrower of two openings in series: gas passes in
 * proportion to it as long as that holds. */
START_TEST(twice_as_wide_costs_about_twice)
{
    double once = priced(0.65e-3, NAN).ring[1][0].blow_by;
    double twice = priced(0.85e-3, NAN).ring[1][0].blow_by;
    ck_assert_double_gt(once, 0.0);
    check_close(twice / once, 2.0, 0.25, "an orifice: area");
}
END_TEST

START_TEST(both_rings_have_their_own)
{
    struct cg_gap_prices prices = priced(0.8e-3, 0.8e-3);
    ck_assert(isfinite(prices.ring[1][0].blow_by));
    ck_assert(isfinite(prices.ring[1][1].blow_by));
    ck_assert_double_eq(prices.ring[1][0].blow_by,
                        priced(0.8e-3, NAN).ring[1][0].blow_by);
    ck_assert_double_gt(prices.ring[1][0].volume, 0.0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("gap_price");
    TCase *tcase = tcase_create("gap_price");
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, nothing_too_wide_has_no_price);
    tcase_add_test(tcase, the_price_is_of_that_ring_alone);
    tcase_add_test(tcase, twice_as_wide_costs_about_twice);
    tcase_add_test(tcase, both_rings_have_their_own);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
