/* Every setting at both ends of its band, in an engine that is sound else, and
 * pairs of settings at their ends or anywhere between: the whole of `find`
 * answers with finite figures and closed heat, or says why it does not.
 * CG_PAIRS and CG_SEED in the environment draw more pairs (tests/sanitized.sh
 * does), or others. */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_rng.h>

#include "any_case.h"
#include "check_close.h"
#include "summary.h"

static const char *const duties[] = {"duty.name=settled",
                                     "duty.name=dyno_pull"};

/* All that `find` prints and writes of an answer. */
static void check_answer(const struct cg_case *c,
                         const struct cg_answer *answer, const char *who)
{
    size_t count;
    const struct cg_summary_key *key = cg_summary_keys(&count);
    for (size_t i = 0; i < count; i++) {
        bool none = answer->file_to_top.from == CG_ADVICE_NONE ||
                    answer->file_to_second.from == CG_ADVICE_NONE;
        if (none && strncmp(key[i].key, "file_to", 7) == 0)
            continue; /* no gap will do */
        if (c->combustion.ignition == CG_IGNITION_COMPRESSION &&
            strcmp(key[i].key, "knock_integral") == 0)
            continue; /* has none */
        ck_assert_msg(isfinite(key[i].get(c, answer)), "%s: %s", key[i].key,
                      who);
    }
    const double figures[] = {answer->skirt.cold,
                              answer->skirt.spread,
                              answer->skirt.pressure,
                              answer->sigma,
                              answer->shop_rule,
                              answer->settled_closure,
                              answer->verdict.need,
                              answer->verdict.chance_less,
                              answer->verdict.chance_touch,
                              answer->second_verdict.need};
    for (size_t i = 0; i < COUNT_OF(figures); i++)
        ck_assert_msg(isfinite(figures[i]), "figure %zu: %s", i, who);
    ck_assert_msg(fabs(answer->ledger.residual) < 1e-9,
                  "heat does not close, %g: %s", answer->ledger.residual, who);
    check_finite(&answer->extremes, who);
}

static enum outcome find(const char *engine, const char *const *set,
                         size_t sets)
{
    static struct cg_case c;
    static struct cg_answer answer;
    static size_t calls;
    struct cg_duty_run *run = NULL;
    struct cg_error error = {CG_OK, ""};
    char who[1024];
    describe(engine, set, sets, who, sizeof who);
    if (any_case(engine, set, sets, &c, who) == REFUSED)
        return REFUSED;
    if (calls++ % 5 != 0) /* the other duties are runs of the same kind */
        c.survive.duties = 0;
    enum cg_status status = cg_duty_run_create(&c, &run, &error);
    if (status == CG_OK)
        status = cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error);
    if (status == CG_OK)
        status = cg_answer_second(&c, run, &answer, &error);
    cg_duty_run_free(run);
    enum outcome outcome = outcome_of(status, &error, who);
    if (outcome == ANSWERED)
        check_answer(&c, &answer, who);
    cg_case_free(&c);
    return outcome;
}

START_TEST(every_setting_at_both_ends)
{
    size_t count, outcomes[3] = {0};
    const struct cg_setting *setting = cg_settings(&count);
    for (size_t i = 0; i < 2 * count; i++) {
        char text[ANY_ROOM];
        const char *set[] = {duties[0], text};
        if (setting_at(&setting[i / 2], (double)(i % 2), text))
            outcomes[find("boosted_four.cfg", set, 2)]++;
    }
    printf("ends: %zu refused, %zu failed, %zu answered\n", outcomes[REFUSED],
           outcomes[FAILED], outcomes[ANSWERED]);
    ck_assert_uint_eq(outcomes[FAILED], 0);
    ck_assert(outcomes[ANSWERED] > count); /* the walk must not be hollow */
}
END_TEST

/* An end of the band as often as somewhere between. */
static double share_of_band(gsl_rng *rng)
{
    unsigned long kind = gsl_rng_uniform_int(rng, 4);
    return kind < 2 ? (double)kind : gsl_rng_uniform(rng);
}

START_TEST(pairs_of_settings)
{
    size_t count, outcomes[3] = {0}, wanted = from_environment("CG_PAIRS", 150);
    const struct cg_setting *setting = cg_settings(&count);
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(rng, (unsigned long)from_environment("CG_SEED", 1));
    for (size_t drawn = 0; drawn < wanted;) {
        char one[ANY_ROOM], other[ANY_ROOM];
        size_t i = gsl_rng_uniform_int(rng, count);
        size_t j = gsl_rng_uniform_int(rng, count);
        const char *set[] = {duties[drawn % 8 == 7], one, other};
        if (i == j || !setting_at(&setting[i], share_of_band(rng), one) ||
            !setting_at(&setting[j], share_of_band(rng), other))
            continue;
        outcomes[find(any_engines[drawn % COUNT_OF(any_engines)], set, 3)]++;
        drawn++;
    }
    gsl_rng_free(rng);
    printf("pairs: %zu refused, %zu failed, %zu answered\n", outcomes[REFUSED],
           outcomes[FAILED], outcomes[ANSWERED]);
    ck_assert_uint_eq(outcomes[FAILED], 0);
    ck_assert(outcomes[ANSWERED] > wanted / 3);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("band ends");
    TCase *tcase = tcase_create("band ends");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(tcase, 3600);
    tcase_add_test(tcase, every_setting_at_both_ends);
    tcase_add_test(tcase, pairs_of_settings);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
