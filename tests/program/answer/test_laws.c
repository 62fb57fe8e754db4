/* A risk that means what it says: whichever law of gas heat and film is the
 * truth, the gap answered leaves less than the minimum hot gap with a chance of
 * at most ten times the risk accepted, all other inputs drawn.
 *
 * The truth's closures are drawn by sampling the case by that law alone; the
 * gap is the answer's, first order, over all laws. */
#include <stdio.h>

#include "case_of.h"
#include "check_close.h"
#include "confidence.h"
#include "law.h"

static const char *const engines[] = {"plain_four", "boosted_four", "iron_six",
                                      "big_eight"};
static const char *const duties[] = {"settled", "dyno_pull"};

/* Wide enough that some dozens of samples tell ten times it. */
#define RISK 0.01

enum { SAMPLES = 60 };

/* Margin [m] of each sample by the law alone; returns how many leave less. */
static size_t less_than_minimum(const struct cg_case *c, double gap)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_confidence_work *work;
    struct cg_confidence_workspace *workspace;
    struct cg_error error = {0};
    double closure = extremes_of(c).closure;
    enum cg_status status =
        cg_confidence_begin(c, run, closure, SAMPLES, 1, &work, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    status = cg_confidence_workspace_create(work, &workspace, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    for (size_t i = 0; i < cg_confidence_items(work); i++)
        cg_confidence_run(work, workspace, i);
    struct cg_answer answer = {.laws = {1, {1.0}, {0.0}, {1e-5}}};
    answer.extremes.closure = closure;
    ck_assert_int_eq(cg_confidence_end(work, &answer, &error), CG_OK);
    size_t good, less = 0;
    const double *found = cg_confidence_closures(work, &good);
    for (size_t i = 0; i < good; i++)
        less += gap - found[i] < c->margin.residual;
    cg_confidence_workspace_free(workspace);
    cg_confidence_free(work);
    cg_duty_run_free(run);
    return less;
}

START_TEST(ten_times_the_risk)
{
    char file[256], duty[64];
    const char *engine = engines[_i / 2];
    const char *const set[] = {duty, "margin.risk=0.01"};
    size_t count;
    const struct cg_law *laws = cg_laws(&count);
    snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg", engine);
    snprintf(duty, sizeof duty, "duty.name=%s", duties[_i % 2]);
    struct cg_case c = case_of(file, set, COUNT_OF(set));
    const struct cg_law *own = cg_law_of(&c);
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer answer;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error),
                     CG_OK);
    cg_duty_run_free(run);
    for (size_t i = 0; i < count; i++) {
        /* A computed film takes minutes over a pull. */
        if (laws[i].film_law == CG_FILM_REYNOLDS && _i % 2 == 1)
            continue;
        struct cg_case truth = c;
        cg_law_take(own, &laws[i], &truth);
        truth.uncertainty.other_laws = false;
        size_t less = less_than_minimum(&truth, answer.top.cold_gap);
        printf("%s, %s: gap %.3f mm; by %s, film law %d: %zu of %d leave less\n",
               engine, duties[_i % 2], answer.top.cold_gap * 1e3,
               laws[i].heat_transfer, laws[i].film_law, less, SAMPLES);
        ck_assert_msg((double)less <= 10.0 * RISK * SAMPLES, "%zu", less);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("laws");
    TCase *all = tcase_create("risk");
    tcase_set_timeout(all, 300);
    tcase_add_loop_test(all, ten_times_the_risk, 0,
                        (int)(COUNT_OF(engines) * COUNT_OF(duties)));
    suite_add_tcase(suite, all);
    return check_run(suite);
}
