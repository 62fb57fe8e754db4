/* What to take off: needs by bore, steps, states, carrying between bores. */
#include "check_close.h"

#include "constants.h"
#include "fitting.h"
#include "ring_gap.h"

#define IDENTITY "by definition"

static const struct cg_fit_asked asked = {.closure = 0.252e-3,
                                          .spread = 0.153e-3,
                                          .minimum_hot_gap = 0.05e-3,
                                          .at_least = 0.52e-3,
                                          .too_wide = 0.8e-3};

static struct cg_fit judged(double gap)
{
    struct cg_fit fit;
    cg_fit_ring(&asked, 1.0, 0.01e-3, gap, &fit);
    return fit;
}

/* The need in a bore is what the gap's own geometry asks of it. */
START_TEST(need_follows_the_geometry_of_the_gap)
{
    double bore = 0.0865, ring = 2.6e-3, wall = 1.3e-3, hot = 0.05e-3;
    double cold = cg_gap_cold_for(bore, hot, wall, ring);
    struct cg_fit_asked like = {.closure = cold - hot, .minimum_hot_gap = hot};
    for (double ratio = 0.99; ratio <= 1.01; ratio += 0.0025)
        check_within(cg_fit_need(&like, ratio),
                     cg_gap_cold_for(bore * ratio, hot, wall, ring), 5e-9,
                     "cg_gap_cold_for in that bore");
}
END_TEST

START_TEST(need_is_never_negative)
{
    struct cg_fit_asked loose = {.closure = -0.3e-3,
                                 .minimum_hot_gap = 0.05e-3};
    ck_assert_double_eq(cg_fit_need(&loose, 1.0), 0.0);
}
END_TEST

/* The ring's arc stays; only the bore around it changes. */
START_TEST(carrying_keeps_the_ring)
{
    double small = 0.086498, large = 0.086515, gap = 0.42e-3;
    double arc = CG_PI * large - gap;
    check_close(gap + cg_fit_carry(large, small), CG_PI * small - arc, 1e-12,
                "arc of the ring");
    check_close(cg_fit_carry(small, large), CG_PI * 17e-6, 1e-10, IDENTITY);
    ck_assert_double_eq(cg_fit_carry(small, small), 0.0);
}
END_TEST

START_TEST(every_state_at_its_gap)
{
    ck_assert_int_eq(judged(NAN).state, CG_FIT_UNKNOWN);
    ck_assert_int_eq(judged(0.02e-3).state, CG_FIT_TOO_SMALL);
    ck_assert_int_eq(judged(0.454e-3).state, CG_FIT_TOO_SMALL);
    ck_assert_int_eq(judged(0.456e-3).state, CG_FIT_FILE);
    ck_assert_int_eq(judged(0.519e-3).state, CG_FIT_FILE);
    ck_assert_int_eq(judged(0.52e-3).state, CG_FIT_FITS);
    ck_assert_int_eq(judged(0.8e-3).state, CG_FIT_FITS);
    ck_assert_int_eq(judged(0.801e-3).state, CG_FIT_TOO_WIDE);
}
END_TEST

START_TEST(nothing_is_said_of_a_gap_not_measured)
{
    struct cg_fit fit = judged(NAN);
    ck_assert(isnan(fit.gap) && isnan(fit.steps) && isnan(fit.take_off) &&
              isnan(fit.then));
    check_close(fit.asked, 0.52e-3, 1e-12, IDENTITY);
}
END_TEST

/* Whole steps, enough, and not one more than it takes. */
START_TEST(steps_are_enough_and_no_more)
{
    for (double gap = 0.2e-3; gap < 0.52e-3; gap += 0.00137e-3) {
        struct cg_fit fit = judged(gap);
        ck_assert_double_eq(fit.steps, floor(fit.steps));
        ck_assert_double_ge(fit.then, fit.asked * (1 - 1e-9));
        ck_assert_double_lt(fit.then - 0.01e-3, fit.asked);
        check_within(fit.then, gap + fit.take_off, 1e-18, IDENTITY);
    }
}
END_TEST

/* 0.42 and ten steps of 0.01 are 0.52 to a builder, whatever the binary says;
 * a hair less than that takes a step. */
START_TEST(rounding_does_not_add_a_step)
{
    ck_assert_double_eq(judged(0.42e-3).steps, 10.0);
    ck_assert_double_eq(judged(0.4199e-3).steps, 11.0);
    ck_assert_double_eq(judged(0.52e-3 * (1 - 1e-12)).steps, 0.0);
    ck_assert_double_eq(judged(0.52e-3 * (1 - 1e-7)).steps, 1.0);
}
END_TEST

/* A three with one bore larger, one gap measured away from home. */
static void three(struct cg_case *c, struct cg_answer *answer,
                  struct cg_gauged *gauged)
{
    *c = (struct cg_case){0};
    *answer = (struct cg_answer){0};
    c->engine.bore = 0.0863;
    c->margin = (struct cg_margin_case){.residual = 0.05e-3,
                                        .filing_step = 0.01e-3,
                                        .second_factor = 1.2,
                                        .wide_factor = 1.5};
    answer->duties = 1;
    answer->duty[0].top =
        (struct cg_gap_sum){0.46e-3, 0.25e-3, 0.153e-3, 0.05e-3, 0.007e-3};
    answer->file_to_top = (struct cg_ring_advice){
        .file_to = 0.46e-3, .at_least = 0.453e-3, .from = CG_ADVICE_MODEL};
    answer->second =
        (struct cg_gap_sum){0.45e-3, 0.19e-3, 0.153e-3, 0.05e-3, 0.057e-3};
    answer->file_to_second = (struct cg_ring_advice){
        .file_to = 0.56e-3, .at_least = 0.552e-3, .from = CG_ADVICE_RULE};
    *gauged = (struct cg_gauged){3,
                                 {{true, 0.0863, {0.46e-3, 0.56e-3}, 0},
                                  {true, 0.08634, {0.44e-3, NAN}, 1},
                                  {true, NAN, {0.4e-3, 0.9e-3}, 0}}};
}

START_TEST(engine_as_a_whole)
{
    struct cg_case c;
    struct cg_answer answer;
    struct cg_gauged gauged;
    struct cg_fitting found;
    three(&c, &answer, &gauged);
    cg_fitting_find(&c, &answer, &gauged, &found);
    ck_assert_int_eq(found.smallest, 0);
    ck_assert_int_eq(found.largest, 1);
    check_close(found.asked[0].too_wide, 1.5 * 0.453e-3, 1e-12,
                "1.5 times the need, which is what to file to");
    check_close(found.asked[1].too_wide, 1.5 * 0.56e-3, 1e-12, IDENTITY);
    /* carried from 86.300 to 86.340 it opens by 0.126 mm */
    check_close(found.cylinder[1].ring[0].gap, 0.44e-3 + CG_PI * 40e-6, 1e-10,
                "arc of the ring");
    ck_assert_double_eq(found.cylinder[1].ring[0].measured, 0.44e-3);
    check_close(found.cylinder[1].ring[0].need,
                0.403e-3 * 0.08634 / 0.0863 + 0.05e-3, 1e-12, IDENTITY);
    check_close(found.cylinder[2].bore, 0.0863, 1e-15, "engine.bore");
    ck_assert(isnan(found.cylinder[2].opens));
    ck_assert_int_eq(found.count[CG_FIT_FITS], 3);
    ck_assert_int_eq(found.count[CG_FIT_TOO_SMALL], 1);
    ck_assert_int_eq(found.count[CG_FIT_TOO_WIDE], 1);
    ck_assert_int_eq(found.count[CG_FIT_UNKNOWN], 1);
}
END_TEST

/* A need that is only rounded up asks for no more than itself, and carries from
 * bore to bore; what the rule or gas asks for more stays. */
START_TEST(rounding_up_is_no_reason)
{
    struct cg_case c;
    struct cg_answer answer;
    struct cg_gauged gauged;
    struct cg_fitting found;
    three(&c, &answer, &gauged);
    cg_fitting_find(&c, &answer, &gauged, &found);
    ck_assert_double_eq(found.asked[0].at_least, 0.0);
    ck_assert_double_eq(found.asked[1].at_least, 0.56e-3);
    answer.file_to_second = answer.file_to_top;
    answer.second = answer.duty[0].top;
    cg_fitting_find(&c, &answer, &gauged, &found);
    ck_assert_double_eq(found.asked[1].at_least, 0.0);
    answer.file_to_second.file_to = answer.file_to_second.at_least = 0.5e-3;
    cg_fitting_find(&c, &answer, &gauged, &found);
    ck_assert_double_eq(found.asked[1].at_least, 0.5e-3);
}
END_TEST

START_TEST(no_bore_measured_at_all)
{
    struct cg_case c;
    struct cg_answer answer;
    struct cg_gauged gauged;
    struct cg_fitting found;
    three(&c, &answer, &gauged);
    for (int i = 0; i < gauged.cylinders; i++)
        gauged.cylinder[i] =
            (struct cg_gauged_cylinder){false, NAN, {NAN, NAN}, 0};
    cg_fitting_find(&c, &answer, &gauged, &found);
    ck_assert_int_eq(found.smallest, -1);
    ck_assert_int_eq(found.largest, -1);
    ck_assert_int_eq(found.count[CG_FIT_UNKNOWN], 6);
}
END_TEST

START_TEST(words)
{
    static const char *const word[CG_FIT_STATES] = {
        [CG_FIT_UNKNOWN] = "not_measured", [CG_FIT_TOO_SMALL] = "too_small",
        [CG_FIT_FILE] = "file",            [CG_FIT_FITS] = "fits",
        [CG_FIT_TOO_WIDE] = "too_wide"};
    for (int state = 0; state < CG_FIT_STATES; state++)
        ck_assert_str_eq(cg_fit_word((enum cg_fit_state)state), word[state]);
    ck_assert_str_eq(cg_fit_ring_word(0), "top");
    ck_assert_str_eq(cg_fit_ring_word(1), "second");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("fitting");
    TCase *tcase = tcase_create("fitting");
    tcase_add_test(tcase, need_follows_the_geometry_of_the_gap);
    tcase_add_test(tcase, need_is_never_negative);
    tcase_add_test(tcase, carrying_keeps_the_ring);
    tcase_add_test(tcase, every_state_at_its_gap);
    tcase_add_test(tcase, nothing_is_said_of_a_gap_not_measured);
    tcase_add_test(tcase, steps_are_enough_and_no_more);
    tcase_add_test(tcase, rounding_does_not_add_a_step);
    tcase_add_test(tcase, engine_as_a_whole);
    tcase_add_test(tcase, rounding_up_is_no_reason);
    tcase_add_test(tcase, no_bore_measured_at_all);
    tcase_add_test(tcase, words);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
