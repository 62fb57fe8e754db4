/* Correlated inputs in the spread of a real case. */
#define _POSIX_C_SOURCE 200809L /* mkstemp */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_errno.h>

#include "case_of.h"
#include "check_close.h"
#include "confidence.h"
#include "input_law.h"
#include "sampling.h"

/* JCGM 100:2008, equation 16. */
#define SUM "the sum of correlated inputs"

/* A short settled duty in which nothing is uncertain. */
static struct cg_case certain(void)
{
    const char *const set = "duty.name=settled";
    struct cg_case c = case_of(BOOSTED_FOUR, &set, 1);
    hold(&c, 2.0, 1.0);
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    return c;
}

static struct cg_answer answer_of(const struct cg_case *c, size_t samples)
{
    struct cg_options options = {.quiet = true, .threads = 2};
    struct cg_duty_run *run = run_of(c);
    struct cg_confidence_work *work = NULL;
    struct cg_answer answer;
    ck_assert_int_eq(cg_answer_find(c, run, 0.0, NULL, NULL, &answer, NULL),
                     CG_OK);
    if (samples > 0) {
        ck_assert_int_eq(cg_confidence_begin(c, run, answer.extremes.closure,
                                             samples, 1, &work, NULL),
                         CG_OK);
        ck_assert_int_eq(cg_sampling_run(&options, work, &answer, NULL),
                         CG_OK);
    }
    cg_confidence_free(work);
    cg_duty_run_free(run);
    return answer;
}

static const struct cg_contribution *
contribution(const struct cg_answer *answer, const char *name)
{
    for (size_t i = 0; i < answer->contributions; i++)
        if (strcmp(answer->contribution[i].name, name) == 0)
            return &answer->contribution[i];
    ck_abort_msg("%s", name);
    return NULL;
}

/* Two inputs that only add, of equal shift: r near 1 doubles the spread of
 * one, r near -1 makes it vanish. */
START_TEST(two_equal_inputs_double_or_cancel)
{
    struct cg_case c = certain();
    c.uncertainty.gap_measure = 0.01e-3;
    double one = answer_of(&c, 0).sigma;
    c.uncertainty.bore_size = 0.01e-3 / 3.14159265358979323846;
    check_close(answer_of(&c, 0).sigma, sqrt(2.0) * one, 1e-12, SUM);
    size_t a = row_of("gap_measure"), b = row_of("bore_size");
    cg_input_correlate(&c, a, b, 1.0 - 1e-9);
    struct cg_answer together = answer_of(&c, 0);
    check_close(together.sigma, 2.0 * one, 1e-8, SUM);
    check_close(contribution(&together, "bore_size")->share, 0.5, 1e-12,
                "shares of a covariance");
    cg_input_correlate(&c, a, b, -1.0 + 1e-9);
    check_within(answer_of(&c, 0).sigma, 0.0, 1e-4 * one, SUM);
}
END_TEST

/* Narrow spreads, so that the closure is straight: first order and sampling
 * must agree, and both differ from the independent case as they should. */
START_TEST(sampled_and_first_order_agree)
{
    struct cg_case c = certain();
    c.margin.risk = 0.02;
    c.uncertainty.heat_factor = 0.04;
    c.uncertainty.film = 0.06;
    c.uncertainty.flank = 0.06;
    c.uncertainty.gap_measure = 0.002e-3;
    double apart = answer_of(&c, 0).sigma;
    cg_input_correlate(&c, row_of("heat_factor"), row_of("film"), 0.7);
    cg_input_correlate(&c, row_of("film"), row_of("gap_measure"), -0.4);
    struct cg_answer answer = answer_of(&c, 4000);
    ck_assert_double_gt(fabs(answer.sigma / apart - 1.0), 0.05);
    check_close(answer.confidence.sd, answer.sigma, 0.03, "first order");
    check_within(answer.confidence.sampled.spread,
                 answer.confidence.first_order.spread,
                 0.02 * answer.confidence.first_order.spread +
                     3.0 * answer.confidence.quantile_error,
                 "first order");
    double sum = 0.0;
    for (size_t i = 0; i < answer.contributions; i++)
        sum += answer.contribution[i].share;
    check_close(sum, 1.0, 1e-12, "shares of a covariance");

    /* On a straight closure the total effect is shift^2 / (Q_ii s^2). */
    static const char *const name[] = {"heat_factor", "film", "flank",
                                       "gap_measure"};
    size_t row[COUNT_OF(name)];
    struct cg_input_law law;
    for (size_t i = 0; i < COUNT_OF(name); i++)
        row[i] = row_of(name[i]);
    ck_assert_int_eq(cg_input_law_fill(&c, row, COUNT_OF(name), &law, NULL),
                     CG_OK);
    for (size_t i = 0; i < COUNT_OF(name); i++) {
        const struct cg_contribution *to = contribution(&answer, name[i]);
        double straight = to->shift * to->shift / law.inverse[i][i] /
                          (answer.sigma * answer.sigma);
        /* as far as the sampled variance may be off, and its own statement */
        check_within(to->total_effect, straight,
                     0.06 * straight + 3.0 * to->total_effect_error,
                     "a straight closure");
    }
}
END_TEST

/* The same figures as with no matrix at all, to the last bit. */
START_TEST(none_stated_changes_nothing)
{
    const char *const set = "duty.name=settled";
    struct cg_case c = case_of(BOOSTED_FOUR, &set, 1);
    hold(&c, 2.0, 1.0);
    memset(c.correlation, 0, sizeof c.correlation); /* but those of the laws */
    c.uncertainty.other_laws = false;
    struct cg_case zero = c;
    cg_input_correlate(&zero, 0, 1, 0.0);
    struct cg_answer a = answer_of(&c, 100), b = answer_of(&zero, 100);
    double squares = 0.0;
    for (size_t i = 0; i < a.contributions; i++)
        squares += a.contribution[i].shift * a.contribution[i].shift;
    check_close(a.sigma, sqrt(squares), 1e-14, SUM);
    ck_assert_double_eq(a.sigma, b.sigma);
    ck_assert_double_eq(a.confidence.quantile, b.confidence.quantile);
}
END_TEST

START_TEST(read_from_a_config)
{
    char path[] = "/tmp/correlation_XXXXXX";
    FILE *file = fdopen(mkstemp(path), "w");
    ck_assert_ptr_nonnull(file);
    fprintf(file, "engine = { bore_mm = 86.0; stroke_mm = 86.0; "
                  "speed_rpm = 6500; };\n"
                  "uncertainty = { film_pct = 20.0; correlations = (\n"
                  "  { a = \"heat_factor\"; b = \"film\"; r = 0.4; },\n"
                  "  { b = \"boost\"; a = \"oil\"; r = -0.25; } ); };\n");
    fclose(file);
    struct cg_case c = case_of(path, NULL, 0);
    struct cg_case none =
        case_of(CG_TEST_CONFIGS "/../tests/program/defaults.cfg", NULL, 0);
    remove(path);
    check_close(c.uncertainty.film, 0.2, 1e-15, "as written");
    for (size_t i = 0; i < CG_INPUTS; i++)
        for (size_t j = 0; j < i; j++) {
            double r = cg_input_correlation(&c, i, j);
            ck_assert_double_eq(r, cg_input_correlation(&c, j, i));
            size_t low = row_of("heat_factor"), high = row_of("film");
            double want = j == low && i == high ? 0.4
                          : j == row_of("boost") && i == row_of("oil")
                              ? -0.25
                              : cg_input_correlation(&none, i, j);
            ck_assert_double_eq(r, want);
        }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("correlation");
    TCase *all = tcase_create("correlation");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(all, 120);
    tcase_add_test(all, two_equal_inputs_double_or_cancel);
    tcase_add_test(all, sampled_and_first_order_agree);
    tcase_add_test(all, none_stated_changes_nothing);
    tcase_add_test(all, read_from_a_config);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
