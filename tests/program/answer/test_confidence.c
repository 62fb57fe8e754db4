/* The confidence by sampling against first order, against itself, and against
 * what is known where one input alone is uncertain. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>

#include "case_of.h"
#include "check_close.h"
#include "confidence.h"
#include "constants.h"
#include "sampling.h"

#define IDENTITY "by definition"

/* A short duty from a settled start: cheap, and its closure is smooth. */
static struct cg_case settled(void)
{
    const char *const set = "duty.name=settled";
    struct cg_case c = case_of(BOOSTED_FOUR, &set, 1);
    hold(&c, 2.0, 1.0);
    return c;
}

/* Every spread made `factor` times as wide. */
static void widen(struct cg_case *c, double factor)
{
    double spread[sizeof c->uncertainty / sizeof(double)];
    memcpy(spread, &c->uncertainty, sizeof spread);
    for (size_t i = 0; i < COUNT_OF(spread); i++)
        spread[i] *= factor;
    memcpy(&c->uncertainty, spread, sizeof spread);
}

struct found {
    struct cg_answer answer;
    double *closure;
    size_t count;
};

static struct found sample(const struct cg_case *c, size_t samples,
                           unsigned long seed, int threads)
{
    struct cg_options options = {.quiet = true, .threads = threads};
    struct cg_duty_run *run = run_of(c);
    struct cg_confidence_work *work;
    struct found found;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_answer_find(c, run, 0.0, NULL, NULL, &found.answer,
                                    &error), CG_OK);
    ck_assert_int_eq(cg_confidence_begin(c, run, found.answer.extremes.closure,
                                         samples, seed, &work, &error),
                     CG_OK);
    ck_assert_msg(cg_sampling_run(&options, work, &found.answer, &error) ==
                      CG_OK, "%s", error.text);
    const double *closure = cg_confidence_closures(work, &found.count);
    found.closure = malloc(found.count * sizeof *closure);
    ck_assert_ptr_nonnull(found.closure);
    memcpy(found.closure, closure, found.count * sizeof *closure);
    cg_confidence_free(work);
    cg_duty_run_free(run);
    return found;
}

static void check_same(const struct found *a, const struct found *b)
{
    ck_assert_uint_eq(a->count, b->count);
    ck_assert_mem_eq(a->closure, b->closure, a->count * sizeof *a->closure);
    ck_assert_double_eq(a->answer.top.cold_gap, b->answer.top.cold_gap);
    ck_assert_double_eq(a->answer.top.spread, b->answer.top.spread);
    ck_assert_double_eq(a->answer.confidence.quantile_error,
                        b->answer.confidence.quantile_error);
    for (size_t i = 0; i < a->answer.contributions; i++) {
        double one = a->answer.contribution[i].total_effect;
        double other = b->answer.contribution[i].total_effect;
        ck_assert(one == other || (isnan(one) && isnan(other)));
    }
}

/* Narrow spreads make the closure straight in its inputs: both ways must then
 * say the same, within 2 % of the spread and the sampling's own error. */
START_TEST(agrees_with_first_order_on_a_mild_case)
{
    struct cg_case c = settled();
    widen(&c, 0.2);
    c.margin.risk = 0.02;
    struct found found = sample(&c, 4000, 1, 2);
    const struct cg_confidence *at = &found.answer.confidence;
    double spread = at->first_order.spread;
    ck_assert(!at->few);
    ck_assert_uint_eq(at->failures, 0);
    check_close(at->sd, found.answer.sigma, 0.03, "first order");
    check_within(at->mean, at->first_order.closure, 0.05 * spread,
                 "first order");
    check_within(at->sampled.spread, spread,
                 0.02 * spread + 3.0 * at->quantile_error, "first order");
    check_band(at->quantile_error, 0.0, 0.03 * spread, "4000 samples");
    for (size_t i = 0; i < found.answer.contributions; i++) {
        const struct cg_contribution *to = &found.answer.contribution[i];
        check_within(to->total_effect, to->share,
                     0.01 + 3.0 * to->total_effect_error, to->name);
    }
    free(found.closure);
}
END_TEST

/* The wide spreads of a real case: near, not equal. */
START_TEST(is_near_first_order_on_a_real_case)
{
    struct cg_case c = settled();
    c.margin.risk = 0.01;
    struct found found = sample(&c, 2000, 1, 2);
    const struct cg_confidence *at = &found.answer.confidence;
    check_close(at->sd, found.answer.sigma, 0.15, "first order");
    check_close(at->sampled.spread, at->first_order.spread, 0.2, "first order");
    free(found.closure);
}
END_TEST

START_TEST(the_sampled_spread_is_used_and_adds_up)
{
    struct cg_case c = settled();
    c.margin.risk = 0.05;
    c.ring[CG_RING_TOP].cold_gap = 0.20e-3;
    struct found found = sample(&c, 400, 2, 2);
    const struct cg_answer *answer = &found.answer;
    const struct cg_confidence *at = &answer->confidence;
    ck_assert(!at->few);
    ck_assert_double_eq(answer->top.spread, at->sampled.spread);
    check_within(answer->top.spread + answer->extremes.closure, at->quantile,
                 1e-15, IDENTITY);
    check_within(answer->top.closure + answer->top.spread +
                     answer->top.residual + answer->top.rounding,
                 answer->top.cold_gap, 1e-15, IDENTITY);
    check_within(remainder(answer->top.cold_gap, c.margin.filing_step), 0.0,
                 1e-12, IDENTITY);
    ck_assert_double_ge(answer->second.cold_gap, answer->top.cold_gap);
    size_t less = 0;
    double mean = 0.0;
    for (size_t j = 0; j < found.count; j++) {
        less += found.closure[j] > 0.20e-3 - c.margin.residual;
        mean += found.closure[j] / (double)found.count;
    }
    check_close(answer->verdict.chance_less,
                (double)less / (double)found.count, 1e-12, IDENTITY);
    check_close(at->mean, mean, 1e-9, IDENTITY);
    free(found.closure);
}
END_TEST

/* Too few samples to see the risk: never a smaller gap than first order's. */
START_TEST(few_samples_do_not_shrink_the_gap)
{
    struct cg_case c = settled();
    c.margin.risk = 1e-5;
    struct found found = sample(&c, 50, 1, 1);
    const struct cg_confidence *at = &found.answer.confidence;
    ck_assert(at->few);
    ck_assert_double_lt(at->sampled.spread, at->first_order.spread);
    ck_assert_double_eq(found.answer.top.spread, at->first_order.spread);
    ck_assert_double_eq(found.answer.top.cold_gap, at->first_order.cold_gap);
    free(found.closure);
}
END_TEST

START_TEST(seeds_and_threads)
{
    struct cg_case c = settled();
    c.margin.risk = 0.05;
    struct found one = sample(&c, 300, 7, 1), again = sample(&c, 300, 7, 1);
    struct found two = sample(&c, 300, 7, 2), five = sample(&c, 300, 7, 5);
    struct found other = sample(&c, 300, 8, 1);
    check_same(&one, &again);
    check_same(&one, &two);
    check_same(&one, &five);
    ck_assert_mem_ne(one.closure, other.closure,
                     one.count * sizeof *one.closure);
    check_close(other.answer.confidence.mean, one.answer.confidence.mean, 0.1,
                "300 samples of the same");
    free(one.closure);
    free(again.closure);
    free(two.closure);
    free(five.closure);
    free(other.closure);
}
END_TEST

/* Only the bore's size is uncertain: normal, with pi times its spread. */
START_TEST(a_direct_input_alone)
{
    struct cg_case c = settled();
    double spread = c.uncertainty.bore_size;
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    c.uncertainty.bore_size = spread;
    c.margin.risk = 0.05;
    struct found found = sample(&c, 640, 1, 2);
    const struct cg_confidence *at = &found.answer.confidence;
    check_close(at->sd, CG_PI * spread, 0.01, "geometry");
    check_close(at->sampled.spread,
                CG_PI * spread * gsl_cdf_ugaussian_Qinv(0.05), 0.03,
                "normal law");
    ck_assert_str_eq(found.answer.contribution[0].name, "bore_size");
    check_close(found.answer.contribution[0].total_effect, 1.0, 0.03,
                IDENTITY);
    free(found.closure);
}
END_TEST

/* One lognormal input that moves the case: every sample is a run of its own
 * case, and the shares of all others are none. */
START_TEST(a_moving_input_alone)
{
    struct cg_case c = settled();
    double spread = c.uncertainty.ring_expansion;
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    c.uncertainty.ring_expansion = spread;
    c.margin.risk = 0.05;
    struct found found = sample(&c, 640, 1, 2);
    struct cg_case moved = c;
    moved.scale.ring_expansion =
        exp(spread * gsl_cdf_ugaussian_Qinv(0.05));
    check_close(found.answer.confidence.quantile, extremes_of(&moved).closure,
                0.01, "monotone: the quantile of a function is the function "
                "of the quantile");
    check_close(found.answer.contribution[0].total_effect, 1.0,
                0.02 + 3.0 * found.answer.contribution[0].total_effect_error,
                IDENTITY);
    for (size_t i = 1; i < found.answer.contributions; i++)
        ck_assert_double_eq(found.answer.contribution[i].total_effect, 0.0);
    free(found.closure);
}
END_TEST

START_TEST(nothing_uncertain)
{
    struct cg_case c = settled();
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    struct found found = sample(&c, 20, 1, 1);
    const struct cg_confidence *at = &found.answer.confidence;
    check_within(at->sd, 0.0, 1e-15, IDENTITY);
    check_within(at->quantile, found.answer.extremes.closure, 0.3e-6,
                 "coarser steps");
    check_within(found.answer.top.spread, 0.0, 0.3e-6, IDENTITY);
    free(found.closure);
}
END_TEST

/* Cycles run anew for inputs as good as certain: what the
 * sampling's short cuts alone do to the closure. */
START_TEST(short_cuts_of_the_samples)
{
    static const char *const duty[] = {"duty.name=settled",
                                       "duty.name=dyno_pull",
                                       "duty.name=cold_start_abuse"};
    for (size_t i = 0; i < COUNT_OF(duty); i++) {
        struct cg_case c = case_of(BOOSTED_FOUR, &duty[i], 1);
        memset(&c.uncertainty, 0, sizeof c.uncertainty);
        c.uncertainty.heat_factor = 1e-9;
        struct found found = sample(&c, 2, 1, 2);
        check_within(found.answer.confidence.mean,
                     found.answer.extremes.closure, 0.3e-6, duty[i]);
        free(found.closure);
    }
}
END_TEST

/* Spreads so wide that cycles fail: an error with its reason, no answer. */
START_TEST(many_failures)
{
    struct cg_case c = settled();
    c.uncertainty.charge_temperature = 300.0;
    struct cg_options options = {.quiet = true, .threads = 2};
    struct cg_duty_run *run = run_of(&c);
    struct cg_confidence_work *work;
    struct cg_answer answer;
    struct cg_error error = {0};
    memset(&answer, 0, sizeof answer);
    ck_assert_int_eq(cg_confidence_begin(&c, run, 0.0, 100, 1, &work, NULL),
                     CG_OK);
    ck_assert_int_eq(cg_sampling_run(&options, work, &answer, &error),
                     CG_NUMERICAL);
    ck_assert_ptr_nonnull(strstr(error.text, " of 100 samples failed; the "
                                             "first: "));
    ck_assert_uint_eq(answer.confidence.samples, 0);
    cg_confidence_free(work);
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("confidence");
    TCase *all = tcase_create("confidence");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(all, 120);
    tcase_add_test(all, agrees_with_first_order_on_a_mild_case);
    tcase_add_test(all, is_near_first_order_on_a_real_case);
    tcase_add_test(all, the_sampled_spread_is_used_and_adds_up);
    tcase_add_test(all, few_samples_do_not_shrink_the_gap);
    tcase_add_test(all, seeds_and_threads);
    tcase_add_test(all, a_direct_input_alone);
    tcase_add_test(all, a_moving_input_alone);
    tcase_add_test(all, nothing_uncertain);
    tcase_add_test(all, short_cuts_of_the_samples);
    tcase_add_test(all, many_failures);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
