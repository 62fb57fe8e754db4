/* Evidence on real engines: what was planted must be found again. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#include "case_of.h"
#include "check_close.h"
#include "evidence.h"
#include "evidence_gap.h"
#include "evidence_work.h"
#include "input_law.h"
#include "uncertain.h"

static const struct cg_evidence_entry plug = {
    .what = CG_EVIDENCE_GROOVE_TOP, .spread = 10.0, .time = NAN};

/* A short settled duty: cheap, and all bodies are at their hottest. */
static struct cg_case settled(const char *file)
{
    const char *const set = "duty.name=settled";
    struct cg_case c = case_of(file, &set, 1);
    hold(&c, 2.0, 1.0);
    memset(c.correlation, 0, sizeof c.correlation); /* inputs by themselves */
    return c;
}

static struct cg_evidence evidence_of(struct cg_case *run,
                                      const struct cg_evidence_entry *entry,
                                      size_t entries)
{
    struct cg_evidence evidence = {.entries = entries, .runs = 1, .run = run};
    memcpy(evidence.entry, entry, entries * sizeof *entry);
    return evidence;
}

static struct cg_learned learned(const struct cg_evidence *evidence)
{
    struct cg_learned lesson;
    struct cg_error error = {0};
    ck_assert_msg(cg_evidence_learn(evidence, &lesson, &error) == CG_OK, "%s",
                  error.text);
    return lesson;
}

/* The line with which evidence is refused. */
static const char *refused(const struct cg_evidence *evidence)
{
    static struct cg_error error;
    struct cg_learned lesson;
    ck_assert_msg(cg_evidence_learn(evidence, &lesson, &error) == CG_BAD_INPUT,
                  "%s", error.text);
    return error.text;
}

/* What the entries would see in this very case: y [entries]. */
static void see(struct cg_case *c, const struct cg_evidence_entry *entry,
                size_t entries, double *y)
{
    struct cg_evidence evidence = evidence_of(c, entry, entries);
    struct cg_evidence_work *work = calloc(1, sizeof *work);
    struct cg_error error = {0};
    ck_assert_ptr_nonnull(work);
    double none[1] = {0.0};
    work->evidence = &evidence;
    work->wide = 1.0;
    ck_assert_msg(cg_evidence_values(work, none, y, &error) == CG_OK, "%s",
                  error.text);
    cg_duty_run_free(work->run[0]);
    free(work);
}

static struct cg_answer answer_of(const struct cg_case *c)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_answer answer;
    ck_assert_int_eq(cg_answer_find(c, run, 0.0, NULL, NULL, &answer, NULL),
                     CG_OK);
    cg_duty_run_free(run);
    return answer;
}

/* Three bodies of an engine whose gas-side heat is 1.2 times the model's: the
 * factor is found within the spread that is stated for it, and the closure
 * comes nearer to the engine's own, with less spread. */
START_TEST(planted_heat_factor_is_found)
{
    static const char *const file[] = {PLAIN_FOUR, BOOSTED_FOUR, IRON_SIX};
    static const double factor[] = {1.2, 0.85};
    for (size_t f = 0; f < COUNT_OF(file); f++)
        for (size_t k = 0; k < COUNT_OF(factor); k++) {
            struct cg_evidence_entry entry[3] = {plug, plug, plug};
            struct cg_case c = settled(file[f]), truth = c, updated = c;
            double y[3];
            entry[1].what = CG_EVIDENCE_CROWN;
            entry[2].what = CG_EVIDENCE_LINER;
            entry[2].depth = 0.01;
            entry[2].spread = 5.0;
            truth.combustion.heat_factor *= factor[k];
            see(&truth, entry, 3, y);
            for (size_t i = 0; i < 3; i++)
                entry[i].temperature = y[i];
            struct cg_evidence evidence = evidence_of(&c, entry, 3);
            struct cg_learned lesson = learned(&evidence);
            size_t heat = row_of("heat_factor");
            double width = sqrt(lesson.covariance[heat][heat]);
            check_within(lesson.mean[heat],
                         log(factor[k]) / c.uncertainty.heat_factor, width,
                         file[f]);
            check_band(width, 0.1, 0.8, file[f]);
            cg_learned_apply(&lesson, &updated);
            struct cg_answer before = answer_of(&c), after =
                answer_of(&updated);
            double closure = answer_of(&truth).extremes.closure;
            ck_assert_double_lt(fabs(after.extremes.closure - closure),
                                0.5 * fabs(before.extremes.closure - closure));
            check_within(after.extremes.closure, closure, after.sigma,
                         file[f]);
        }
}
END_TEST

/* Boost, coolant, oil and air known: what was fitted is then the updated case
 * itself. */
static void know_conditions(struct cg_case *c)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        if (cg_uncertain_is_condition(&inputs[i]))
            *(double *)((char *)c + inputs[i].spread) = 0.0;
}

START_TEST(the_updated_case_is_what_was_fitted)
{
    struct cg_case c = settled(BOOSTED_FOUR), updated;
    struct cg_evidence_entry entry[2] = {plug, plug};
    double y[2];
    know_conditions(&c);
    entry[1].what = CG_EVIDENCE_LINER;
    entry[1].depth = 0.02;
    see(&c, entry, 2, y);
    entry[0].temperature = y[0] + 20.0;
    entry[1].temperature = y[1] - 5.0;
    struct cg_evidence evidence = evidence_of(&c, entry, 2);
    struct cg_learned lesson = learned(&evidence);
    for (size_t i = 0; i < 2; i++)
        ck_assert_double_eq(lesson.before[i], y[i]);
    updated = c;
    cg_learned_apply(&lesson, &updated);
    see(&updated, entry, 2, y);
    for (size_t i = 0; i < 2; i++)
        check_within(y[i], lesson.after[i], 0.02, "the same case");
}
END_TEST

static void move_all(const double *score, bool conditions, struct cg_case *c)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        if (cg_uncertain_is_condition(&inputs[i]) == conditions)
            cg_uncertain_move(&inputs[i], score[i], c);
}

/* Engines drawn from the prior, measured with noise under conditions of their
 * own: the errors of heat factor and closure, over the spreads stated, are
 * standard normal. */
START_TEST(stated_spread_covers_the_truth)
{
    enum { ENGINES = 40 };
    struct cg_case base = settled(BOOSTED_FOUR);
    struct cg_evidence_entry entry[2] = {plug, plug};
    size_t heat = row_of("heat_factor");
    double heat_squares = 0.0, closure_squares = 0.0;
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    ck_assert_ptr_nonnull(random);
    gsl_rng_set(random, 3);
    entry[1].what = CG_EVIDENCE_CROWN;
    base.uncertainty.bore_size = base.uncertainty.gap_measure = 0.0;
    for (int engine = 0; engine < ENGINES; engine++) {
        double score[CG_INPUTS], y[2];
        struct cg_case truth = base, asked, updated = base;
        for (size_t i = 0; i < CG_INPUTS; i++)
            score[i] = gsl_ran_gaussian(random, 1.0);
        move_all(score, false, &truth);
        asked = truth;
        move_all(score, true, &truth);
        see(&truth, entry, 2, y);
        for (size_t i = 0; i < 2; i++)
            entry[i].temperature =
                y[i] + gsl_ran_gaussian(random, entry[i].spread);
        struct cg_evidence evidence = evidence_of(&base, entry, 2);
        struct cg_learned lesson = learned(&evidence);
        heat_squares += pow(lesson.mean[heat] - score[heat], 2.0) /
                        lesson.covariance[heat][heat] / ENGINES;
        for (size_t i = 0; i < CG_INPUTS; i++)
            score[i] = gsl_ran_gaussian(random, 1.0);
        move_all(score, true, &asked);
        cg_learned_apply(&lesson, &updated);
        struct cg_answer answer = answer_of(&updated);
        closure_squares += pow((extremes_of(&asked).closure -
                                answer.extremes.closure) / answer.sigma,
                               2.0) / ENGINES;
    }
    gsl_rng_free(random);
    check_within(heat_squares, 1.0, 3.0 * sqrt(2.0 / ENGINES), "chi-square");
    check_within(closure_squares, 1.0, 3.0 * sqrt(2.0 / ENGINES),
                 "chi-square");
}
END_TEST

/* A measurement that says nothing leaves all as it was, correlations too. */
START_TEST(without_information_nothing_changes)
{
    struct cg_case c = settled(BOOSTED_FOUR), updated = c;
    size_t heat = row_of("heat_factor"), film = row_of("film");
    cg_input_correlate(&c, heat, film, 0.4);
    struct cg_evidence_entry entry = plug;
    entry.temperature = 500.0;
    entry.spread = 1e7;
    struct cg_evidence evidence = evidence_of(&c, &entry, 1);
    struct cg_learned lesson = learned(&evidence);
    for (size_t i = 0; i < CG_INPUTS; i++) {
        check_within(lesson.mean[i], 0.0, 1e-4, "no information");
        for (size_t j = 0; j < CG_INPUTS; j++)
            check_within(lesson.covariance[i][j],
                         cg_input_correlation(&c, i, j), 1e-9,
                         "no information");
    }
    lesson = (struct cg_learned){.entries = 0};
    struct cg_case same = updated;
    cg_learned_apply(&lesson, &updated);
    ck_assert_mem_eq(&same, &updated, sizeof same);
}
END_TEST

START_TEST(evidence_never_widens)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    struct cg_evidence_entry entry[3] = {plug, plug, plug};
    double y[3], before[CG_INPUTS];
    size_t count;
    (void)cg_uncertains(&count);
    entry[1].what = CG_EVIDENCE_RING_TOP;
    entry[2].what = CG_EVIDENCE_RING_SECOND;
    see(&c, entry, 3, y);
    for (size_t i = 0; i < 3; i++)
        entry[i].temperature = y[i] + 3.0;
    for (size_t i = 0; i < count; i++)
        before[i] = 1.0;
    for (size_t entries = 1; entries <= 3; entries++) {
        struct cg_evidence evidence = evidence_of(&c, entry, entries);
        struct cg_learned lesson = learned(&evidence);
        for (size_t i = 0; i < count; i++) {
            double now = lesson.covariance[i][i];
            ck_assert_double_le(now, before[i] + 2e-3); /* slopes bend */
            before[i] = now;
        }
    }
}
END_TEST

START_TEST(order_does_not_matter)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    struct cg_evidence_entry entry[3] = {plug, plug, plug}, back[3];
    double y[3];
    entry[1].what = CG_EVIDENCE_CROWN;
    entry[2].what = CG_EVIDENCE_ENDS;
    see(&c, entry, 3, y);
    entry[0].temperature = y[0] + 15.0;
    entry[1].temperature = y[1] - 2.0;
    entry[2].cold_gap = y[2] + 0.01e-3;
    entry[2].touched = true;
    entry[2].spread = 0.02e-3;
    for (size_t i = 0; i < 3; i++)
        back[i] = entry[2 - i];
    struct cg_evidence one = evidence_of(&c, entry, 3);
    struct cg_evidence other = evidence_of(&c, back, 3);
    struct cg_learned a = learned(&one), b = learned(&other);
    for (size_t i = 0; i < CG_INPUTS; i++) {
        check_within(a.mean[i], b.mean[i], 0.01, "symmetry");
        check_within(a.covariance[i][i], b.covariance[i][i], 0.01,
                     "symmetry");
    }
    for (size_t i = 0; i < 3; i++)
        ck_assert_double_eq(a.before[i], b.before[2 - i]);
}
END_TEST

/* Touched where the model leaves some gap: more closure; not touched where it
 * leaves none: less.  Either narrows the closure's spread. */
START_TEST(signs_move_the_closure)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    know_conditions(&c);
    struct cg_answer before = answer_of(&c);
    for (int touched = 0; touched < 2; touched++) {
        struct cg_evidence_entry entry = {
            .what = CG_EVIDENCE_ENDS, .spread = 0.01e-3, .time = NAN,
            .touched = touched == 1,
            .cold_gap = before.extremes.closure +
                        (touched == 1 ? 0.02e-3 : -0.02e-3)};
        struct cg_evidence evidence = evidence_of(&c, &entry, 1);
        struct cg_learned lesson = learned(&evidence);
        struct cg_case updated = c;
        cg_learned_apply(&lesson, &updated);
        struct cg_answer after = answer_of(&updated);
        double moved = after.extremes.closure - before.extremes.closure;
        ck_assert(touched == 1 ? moved > 0.01e-3 : moved < -0.01e-3);
        ck_assert_double_lt(after.sigma, before.sigma);
        check_within(entry.cold_gap - after.extremes.closure, lesson.after[0],
                     0.3e-6, "the same case, another residual");
    }
}
END_TEST

/* A probe and the coolant tell of the gas-side heat, opposite ways: what was
 * planted is found within the spread stated. */
START_TEST(what_is_read_on_the_engine)
{
    const double factor[] = {1.25, 0.8};
    for (size_t k = 0; k < COUNT_OF(factor); k++) {
        struct cg_evidence_entry entry[2] = {
            {.what = CG_EVIDENCE_PROBE, .spread = 5.0, .time = NAN},
            {.what = CG_EVIDENCE_COOLANT, .spread = 0.003, .time = NAN}};
        struct cg_case c = settled(BOOSTED_FOUR), truth = c;
        know_conditions(&c);
        double y[2], own[2];
        truth.combustion.heat_factor *= factor[k];
        see(&c, entry, 2, own);
        see(&truth, entry, 2, y);
        ck_assert((y[0] < own[0]) == (factor[k] > 1.0));
        ck_assert((y[1] > own[1]) == (factor[k] > 1.0));
        entry[0].temperature = y[0];
        entry[1].share = y[1];
        struct cg_evidence evidence = evidence_of(&c, entry, 2);
        struct cg_learned lesson = learned(&evidence);
        size_t heat = row_of("heat_factor");
        double width = sqrt(lesson.covariance[heat][heat]);
        check_within(lesson.mean[heat],
                     log(factor[k]) / c.uncertainty.heat_factor, width,
                     "planted");
        check_band(width, 0.05, 0.9, "it teaches");
        check_within(lesson.before[0], own[0], 1e-9, "the case's own");
        check_within(lesson.before[1], own[1], 1e-12, "the case's own");
    }
}
END_TEST

/* Conditions of a run are not learned; but what they have in common with what
 * is learned goes with it (a new run's, given the posterior). */
START_TEST(conditions_are_each_runs_own)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    size_t heat = row_of("heat_factor"), boost = row_of("boost");
    struct cg_evidence_entry entry = plug;
    double y;
    see(&c, &entry, 1, &y);
    /* of the 49 K that all inputs move the groove, 24 K are the heat's */
    entry.temperature = y + 40.0;
    struct cg_evidence evidence = evidence_of(&c, &entry, 1);
    struct cg_learned lesson = learned(&evidence);
    ck_assert_double_gt(lesson.mean[heat], 0.3);
    ck_assert_double_eq(lesson.mean[boost], 0.0);
    ck_assert_double_eq(lesson.covariance[boost][boost], 1.0);
    ck_assert_double_eq(lesson.covariance[boost][heat], 0.0);
    cg_input_correlate(&c, heat, boost, -0.6);
    lesson = learned(&evidence);
    check_close(lesson.mean[boost], -0.6 * lesson.mean[heat], 1e-12,
                "regression");
    check_close(lesson.covariance[boost][boost],
                1.0 - 0.36 + 0.36 * lesson.covariance[heat][heat], 1e-12,
                "regression");
    check_close(lesson.covariance[boost][heat],
                -0.6 * lesson.covariance[heat][heat], 1e-12, "regression");
}
END_TEST

START_TEST(contradictions_are_refused)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    struct cg_evidence_entry entry[10] = {plug, plug, plug};
    double y[3];
    entry[1].what = CG_EVIDENCE_RING_TOP;
    see(&c, entry, 3, y);
    entry[0].temperature = y[0] - 35.0;
    entry[1].temperature = y[1];
    entry[1].spread = 20.0;
    entry[2].temperature = y[2] + 35.0;
    struct cg_evidence evidence = evidence_of(&c, entry, 3);
    const char *text = refused(&evidence);
    ck_assert_msg(strstr(text, "evidence[0] (groove_top") != NULL, "%s", text);
    ck_assert_msg(strstr(text, "evidence[2] (groove_top") != NULL, "%s", text);
    ck_assert_msg(strstr(text, "contradict each other") != NULL, "%s", text);

    /* 10 K of the measurement and the spread of the prior: no more than seven
     * of both can be 250 K */
    entry[0].temperature = y[0] + 250.0;
    evidence = evidence_of(&c, entry, 1);
    text = refused(&evidence);
    ck_assert_msg(strstr(text, "evidence[0] (groove_top") != NULL &&
                      strstr(text, "contradicts the model") != NULL,
                  "%s", text);

    /* ends that touched and did not */
    struct cg_evidence_entry ends[2] = {{.what = CG_EVIDENCE_ENDS,
                                         .spread = 0.01e-3,
                                         .time = NAN,
                                         .touched = true,
                                         .cold_gap = 0.35e-3,
                                         .line = 7}};
    ends[1] = ends[0];
    ends[1].touched = false;
    ends[1].cold_gap = 0.25e-3;
    ends[1].line = 0;
    evidence = evidence_of(&c, ends, 2);
    text = refused(&evidence);
    ck_assert_msg(strstr(text, "contradict each other") != NULL &&
                      strstr(text, "at 0.35 mm, line 7)") != NULL &&
                      strstr(text, "at 0.25 mm)") != NULL,
                  "%s", text);

    /* ten entries at one: no chance is small, but the spread of the heat is */
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    c.uncertainty.heat_factor = 0.03;
    struct cg_case hot = c;
    hot.combustion.heat_factor *= exp(0.03 * 4.8);
    see(&hot, entry, 1, y);
    for (size_t i = 0; i < 10; i++) {
        entry[i] = plug;
        entry[i].spread = 2.0;
        entry[i].temperature = y[0];
    }
    evidence = evidence_of(&c, entry, 10);
    text = refused(&evidence);
    ck_assert_msg(strstr(text, "uncertainty.heat_factor by 4.") != NULL, "%s",
                  text);
}
END_TEST

START_TEST(nothing_uncertain)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    struct cg_evidence_entry entry = plug;
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    entry.temperature = 500.0;
    struct cg_evidence evidence = evidence_of(&c, &entry, 1);
    ck_assert_ptr_nonnull(strstr(refused(&evidence), "no input has a spread"));
}
END_TEST

/* Most entries agree on warmer than expected, one says colder: no single one
 * is far from it, nor is the model, but all together are. */
START_TEST(one_against_all_the_rest)
{
    struct cg_case c = settled(BOOSTED_FOUR);
    struct cg_evidence_entry entry[11];
    double y;
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    c.uncertainty.heat_factor = 0.1;
    struct cg_case hot = c;
    see(&c, &plug, 1, &y);
    hot.combustion.heat_factor *= exp(0.1);
    double moved;
    see(&hot, &plug, 1, &moved);
    moved -= y; /* by one standard deviation of the heat */
    for (size_t i = 0; i < COUNT_OF(entry); i++) {
        entry[i] = plug;
        entry[i].spread = 2.0 * moved;
        entry[i].temperature = y + (i == 4 ? -6.5 : 4.0) * moved;
    }
    struct cg_evidence evidence = evidence_of(&c, entry, COUNT_OF(entry));
    const char *text = refused(&evidence);
    ck_assert_msg(strstr(text, "evidence[4] (groove_top") == text &&
                      strstr(text, "contradicts the rest of the evidence") !=
                          NULL,
                  "%s", text);
}
END_TEST

START_TEST(no_evidence_teaches_nothing)
{
    struct cg_evidence evidence = {.entries = 0};
    struct cg_learned lesson = learned(&evidence);
    ck_assert_uint_eq(lesson.entries, 0);
    for (size_t i = 0; i < CG_INPUTS; i++)
        ck_assert_double_eq(lesson.mean[i], 0.0);
}
END_TEST

/* The same engine measured in two runs.  With all conditions known that is one
 * run with both readings; else two runs tell more, for each blurs by
 * conditions of its own. */
START_TEST(two_runs_of_one_engine)
{
    struct cg_case c = settled(BOOSTED_FOUR), run[2];
    struct cg_evidence_entry entry[2] = {plug, plug};
    size_t heat = row_of("heat_factor");
    double y[2], width[2][2];
    entry[0].spread = entry[1].spread = 3.0;
    /* of the engine's own inputs the heat alone: what else moves the groove is
     * the same in both runs and would hide what their conditions blur */
    double spread = c.uncertainty.heat_factor, blur = 4.0 * c.uncertainty.boost;
    memset(&c.uncertainty, 0, sizeof c.uncertainty);
    c.uncertainty.heat_factor = spread;
    c.uncertainty.boost = blur;
    /* at the knock limit more boost hardly moves the groove */
    c.combustion.retard_deg_per_100kPa = 6.0;
    for (int known = 0; known < 2; known++) {
        if (known == 1)
            know_conditions(&c);
        see(&c, entry, 2, y);
        entry[0].temperature = y[0] + 12.0;
        entry[1].temperature = y[1] + 8.0;
        run[0] = run[1] = c;
        struct cg_evidence evidence = evidence_of(run, entry, 2);
        struct cg_learned one = learned(&evidence);
        evidence.runs = 2;
        evidence.entry[1].run = 1;
        struct cg_learned two = learned(&evidence);
        width[known][0] = one.covariance[heat][heat];
        width[known][1] = two.covariance[heat][heat];
        for (size_t i = 0; i < 2; i++)
            ck_assert_double_eq(two.before[i], y[i]);
        if (known == 1)
            check_within(two.mean[heat], one.mean[heat], 1e-3,
                         "the same readings of the same engine");
    }
    ck_assert_double_lt(width[0][1], 0.98 * width[0][0]);
    check_within(width[1][1], width[1][0], 1e-3,
                 "the same readings of the same engine");
}
END_TEST

/* Keeps the groove's temperature at one time. */
struct moment {
    const struct cg_duty_run *run;
    double time, groove, highest;
};

static enum cg_status observer(void *context, const struct cg_instant *instant,
                            struct cg_error *error)
{
    struct moment *moment = context;
    double now = instant->temperature[moment->run->thermal->piston.groove[0]];
    (void)error;
    moment->highest = fmax(moment->highest, now);
    if (fabs(instant->time - moment->time) < 1e-9)
        moment->groove = now;
    return CG_OK;
}

START_TEST(an_instant_is_that_instant)
{
    static const double times[] = {0.0, 0.37, 5.0, 11.111, 17.5};
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    for (size_t i = 0; i < COUNT_OF(times); i++) {
        struct cg_duty_run *run = run_of(&c);
        struct moment moment = {run, times[i], NAN, 0.0};
        double step = times[i] > 0.0 ? times[i] : 1.0;
        ck_assert_int_eq(
            cg_duty_run_go(&c, run, step, observer, &moment, NULL, NULL),
            CG_OK);
        struct cg_evidence_entry entry[2] = {plug, plug};
        double y[2];
        entry[0].time = times[i];
        see(&c, entry, 2, y);
        check_within(y[0], moment.groove, 0.05, "the same instant");
        check_within(y[1], moment.highest, 0.05, "the same duty");
        cg_duty_run_free(run);
    }
}
END_TEST

static const struct cg_evidence_entry ends = {
    .what = CG_EVIDENCE_ENDS, .spread = 0.01e-3, .time = NAN};

static struct cg_answer taught(const struct cg_case *c,
                               const struct cg_learned *lesson)
{
    struct cg_case updated = *c;
    cg_learned_apply(lesson, &updated);
    return answer_of(&updated);
}

/* Whatever the gap that touched: answered, and the gap needed is no less than
 * it and the minimum hot gap; a wider one never asks for less, and where the
 * model is too low it is less sure than it was. */
START_TEST(what_touched_is_answered)
{
    static const char *const file[] = {PLAIN_FOUR, IRON_SIX};
    for (size_t f = 0; f < COUNT_OF(file); f++) {
        struct cg_case c = settled(file[f]);
        struct cg_answer before = answer_of(&c);
        double least = 0.0;
        for (int k = 1; k <= 3; k++) {
            struct cg_evidence_entry entry = ends;
            entry.touched = true;
            entry.cold_gap = before.extremes.closure + 0.25e-3 * k;
            struct cg_evidence evidence = evidence_of(&c, &entry, 1);
            struct cg_learned lesson = learned(&evidence);
            struct cg_answer after = taught(&c, &lesson);
            ck_assert(lesson.too_low && lesson.lowest == 0);
            ck_assert_double_ge(after.extremes.closure,
                                before.extremes.closure);
            ck_assert_double_ge(after.sigma, before.sigma);
            ck_assert_double_ge(after.verdict.need, entry.cold_gap +
                                                        c.margin.residual -
                                                        1e-12);
            ck_assert_double_ge(after.top.cold_gap, least);
            least = after.top.cold_gap;
        }
    }
}
END_TEST

/* Where a duty closes more than the run that touched, by that much more. */
START_TEST(a_harder_duty_asks_for_more_than_touched)
{
    struct cg_case c = {.ends = {.touched = 0.6e-3, .beyond = 0.4e-3}};
    check_within(cg_evidence_allowance(&c, 0.1e-3), 0.5e-3, 1e-12, "sum");
    check_within(cg_evidence_allowance(&c, 0.2e-3), 0.4e-3, 1e-12, "sum");
    check_within(cg_evidence_allowance(&c, 0.3e-3), 0.4e-3, 1e-12, "sum");
    c.ends.touched = 0.0;
    ck_assert(cg_evidence_allowance(&c, 0.3e-3) < 0.0);
}
END_TEST

/* Clear runs never ask for more, however many. */
START_TEST(more_clear_runs_never_ask_for_more)
{
    struct cg_case c = settled(PLAIN_FOUR);
    struct cg_evidence_entry entry[3] = {ends, ends, ends};
    double need = answer_of(&c).verdict.need;
    for (size_t entries = 1; entries <= 3; entries++) {
        entry[entries - 1].cold_gap =
            answer_of(&c).extremes.closure + 0.02e-3 * (double)entries;
        struct cg_evidence evidence = evidence_of(&c, entry, entries);
        struct cg_learned lesson = learned(&evidence);
        double now = taught(&c, &lesson).verdict.need;
        ck_assert_double_le(now, need + 0.5e-6); /* slopes bend */
        need = now;
    }
}
END_TEST

/* What a run earns: its own gap or the model's figure, whichever is larger, and
 * nothing for a harder duty, by another engine, or by ends that touched. */
START_TEST(a_clear_run_earns_its_gap)
{
    struct cg_case c = settled(PLAIN_FOUR);
    struct cg_evidence_entry entry = ends;
    entry.cold_gap = answer_of(&c).top.cold_gap + 0.05e-3;
    struct cg_evidence evidence = evidence_of(&c, &entry, 1);
    struct cg_learned lesson = learned(&evidence);
    struct cg_answer after = taught(&c, &lesson);
    double closure = after.extremes.closure, need = after.top.cold_gap;
    struct cg_case updated = c;
    cg_learned_apply(&lesson, &updated);
    struct cg_earned earned = cg_evidence_earned(&updated, closure, need);
    ck_assert_double_eq(earned.gap, entry.cold_gap);
    ck_assert_uint_eq(earned.entry, 0);
    ck_assert_double_eq(cg_evidence_earned(&updated, closure, 2e-3).gap, 2e-3);
    ck_assert(isnan(cg_evidence_earned(&updated, closure + 5e-6, need).gap));
    ck_assert(isnan(cg_evidence_earned(&c, closure, need).gap));
    evidence.entry[0].engine = 1;
    updated.ends = cg_evidence_ends(&evidence, &lesson);
    ck_assert(isnan(cg_evidence_earned(&updated, closure, need).gap));
    evidence.entry[0].engine = 0;
    evidence.entry[0].touched = true;
    updated.ends = cg_evidence_ends(&evidence, &lesson);
    ck_assert(isnan(cg_evidence_earned(&updated, closure, need).gap));
}
END_TEST

/* Another engine without scatter teaches as the engine itself; with more and
 * more of it less, and at last nothing. */
START_TEST(other_engines_teach_by_their_scatter)
{
    static const double scatter[] = {0.0, 0.05, 0.2, 1e6};
    struct cg_case c = settled(PLAIN_FOUR);
    struct cg_evidence_entry entry[2] = {plug, ends};
    size_t heat = row_of("heat_factor");
    double y, width = 0.0;
    see(&c, &plug, 1, &y);
    entry[0].temperature = y + 20.0;
    entry[1].cold_gap = answer_of(&c).extremes.closure;
    struct cg_evidence own = evidence_of(&c, entry, 2);
    struct cg_learned full = learned(&own);
    for (size_t k = 0; k < COUNT_OF(scatter); k++) {
        struct cg_case other = c;
        other.uncertainty.engine = scatter[k];
        struct cg_evidence evidence = evidence_of(&other, entry, 2);
        evidence.entry[0].engine = evidence.entry[1].engine = 1;
        evidence.engine[0] = 1;
        struct cg_learned lesson = learned(&evidence);
        double now = lesson.covariance[heat][heat];
        if (k == 0) {
            ck_assert_double_eq(lesson.mean[heat], full.mean[heat]);
            ck_assert_double_eq(now, full.covariance[heat][heat]);
        } else {
            ck_assert_double_gt(now, width);
        }
        width = now;
    }
    check_within(width, 1.0, 1e-6, "nothing is taught");
}
END_TEST

/* Touched wide and clear narrow: at odds in the same run, not in an easier one,
 * nor in another engine. */
START_TEST(ends_at_odds)
{
    struct cg_case c = settled(PLAIN_FOUR), run[2] = {c, c};
    struct cg_evidence_entry entry[2] = {ends, ends};
    double closure = answer_of(&c).extremes.closure;
    entry[0].touched = true;
    entry[0].cold_gap = closure + 0.3e-3;
    entry[1].cold_gap = closure + 0.1e-3;
    entry[1].run = 1;
    struct cg_evidence evidence = evidence_of(run, entry, 2);
    evidence.runs = 2;
    ck_assert_ptr_nonnull(strstr(refused(&evidence), "contradict each other"));
    hold(&run[1], 2.0, 0.3);
    struct cg_learned lesson = learned(&evidence);
    ck_assert(lesson.too_low);
    ck_assert_double_ge(taught(&c, &lesson).verdict.need,
                        entry[0].cold_gap + c.margin.residual - 1e-12);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("evidence");
    TCase *all = tcase_create("evidence");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(all, 300);
    tcase_add_test(all, planted_heat_factor_is_found);
    tcase_add_test(all, the_updated_case_is_what_was_fitted);
    tcase_add_test(all, stated_spread_covers_the_truth);
    tcase_add_test(all, without_information_nothing_changes);
    tcase_add_test(all, evidence_never_widens);
    tcase_add_test(all, order_does_not_matter);
    tcase_add_test(all, signs_move_the_closure);
    tcase_add_test(all, what_is_read_on_the_engine);
    tcase_add_test(all, conditions_are_each_runs_own);
    tcase_add_test(all, contradictions_are_refused);
    tcase_add_test(all, nothing_uncertain);
    tcase_add_test(all, an_instant_is_that_instant);
    tcase_add_test(all, one_against_all_the_rest);
    tcase_add_test(all, no_evidence_teaches_nothing);
    tcase_add_test(all, two_runs_of_one_engine);
    tcase_add_test(all, what_touched_is_answered);
    tcase_add_test(all, a_harder_duty_asks_for_more_than_touched);
    tcase_add_test(all, more_clear_runs_never_ask_for_more);
    tcase_add_test(all, a_clear_run_earns_its_gap);
    tcase_add_test(all, other_engines_teach_by_their_scatter);
    tcase_add_test(all, ends_at_odds);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
