/* Thousands of invented engines from the whole bands of the settings: each is
 * refused with a reason or answered with finite figures and closed balances.
 * CG_ENGINES and CG_SEED in the environment draw more, or others. */
#include <gsl/gsl_rng.h>
#include <stdlib.h>
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "setting.h"
#include "unit.h"

enum { CHANGES = 40, ROOM = 128 };

static const char *const engines[] = {"plain_four.cfg", "boosted_four.cfg",
                                      "iron_six.cfg", "big_eight.cfg"};
static const char *const duties[] = {"dyno_pull", "drag_pass", "settled",
                                     "lean_event", "cold_start_abuse"};

struct draw {
    char text[CHANGES][ROOM];
    const char *set[CHANGES];
    size_t sets;
    const char *engine;
};

static size_t from_environment(const char *name, size_t otherwise)
{
    const char *text = getenv(name);
    return text != NULL ? strtoul(text, NULL, 10) : otherwise;
}

/* A setting anywhere in its band, as a user would write it; false: not one
 * that a draw can move. */
static bool draw_setting(gsl_rng *rng, const struct cg_setting *s, char *text)
{
    double at = s->low + (s->high - s->low) * gsl_rng_uniform(rng);
    const char *bar = s->unit[0] != '\0' ? "_" : "";
    char word[CG_NAME_LENGTH];
    switch (s->kind) {
    case CG_REAL:
        snprintf(text, ROOM, "%s%s%s=%.9g", s->path, bar, s->unit, at);
        return isfinite(at);
    case CG_COUNT:
        snprintf(text, ROOM, "%s=%d", s->path, (int)at);
        return true;
    case CG_SWITCH:
        snprintf(text, ROOM, "%s=%s", s->path, at > 0.5 ? "true" : "false");
        return true;
    case CG_CHOICE:
        cg_setting_word(
            s, (int)gsl_rng_uniform_int(rng, (unsigned long)s->high + 1), word);
        snprintf(text, ROOM, "%s=%s", s->path, word);
        return true;
    default:
        return false;
    }
}

/* Few settings at their extremes more often than all at once: parts that are
 * all drawn alone hardly ever fit together. */
static void draw_engine(gsl_rng *rng, struct draw *d)
{
    size_t count;
    const struct cg_setting *setting = cg_settings(&count);
    d->engine = engines[gsl_rng_uniform_int(rng, COUNT_OF(engines))];
    d->sets = 0;
    size_t wanted = 1 + gsl_rng_uniform_int(rng, 12);
    while (d->sets < wanted) {
        const struct cg_setting *s = &setting[gsl_rng_uniform_int(rng, count)];
        /* cells cost time and are tested for convergence elsewhere */
        if (strncmp(s->path, "solver.", 7) == 0 ||
            !draw_setting(rng, s, d->text[d->sets]))
            continue;
        d->set[d->sets] = d->text[d->sets];
        d->sets++;
    }
    snprintf(d->text[d->sets], ROOM, "duty.name=%s",
             duties[gsl_rng_uniform_int(rng, COUNT_OF(duties))]);
    d->set[d->sets] = d->text[d->sets];
    d->sets++;
}

static void describe(const struct draw *d, char *text, size_t size)
{
    size_t used = (size_t)snprintf(text, size, "%s", d->engine);
    for (size_t i = 0; i < d->sets && used < size; i++)
        used +=
            (size_t)snprintf(text + used, size - used, " --set %s", d->set[i]);
}

static void check_finite(const struct cg_extremes *e, const char *who)
{
    const double lengths[] = {e->closure,         e->time,
                              e->depth,           e->ring_growth,
                              e->bore_growth,     e->second_closure,
                              e->clearance.skirt, e->clearance.land[0]};
    const double kelvins[] = {
        e->ring_at,         e->bore_at,          e->ring_top_max,
        e->ring_second_max, e->groove_top_max,   e->crown_max,
        e->liner_top_max,   e->coolant_side_max, e->liner_coolest};
    for (size_t i = 0; i < COUNT_OF(lengths); i++)
        ck_assert_msg(isfinite(lengths[i]), "length %zu: %s", i, who);
    for (size_t i = 0; i < COUNT_OF(kelvins); i++)
        ck_assert_msg(kelvins[i] > 200.0 && kelvins[i] < 5000.0,
                      "temperature %zu is %g K: %s", i, kelvins[i], who);
}

enum outcome { REFUSED, FAILED, ANSWERED };

/* More boost never cools the top ring, nor the crown; unless the burn is
 * retarded with it by more than anyone does. */
#define MUCH_RETARD 8.0
static void check_boost_heats(const struct cg_case *c,
                              const struct cg_extremes *before, const char *who)
{
    struct cg_case more = *c;
    more.charge.boost += 20e3;
    if (more.charge.charger == CG_CHARGER_NONE ||
        c->combustion.retard_deg_per_100kPa > MUCH_RETARD)
        return;
    struct cg_duty_run *run;
    struct cg_extremes after;
    struct cg_error error = {CG_OK, ""};
    if (cg_duty_run_create(&more, &run, &error) != CG_OK)
        return; /* at the end of the bands */
    enum cg_status status =
        cg_answer_extremes(&more, run, 0.0, NULL, NULL, &after, NULL, &error);
    cg_duty_run_free(run);
    ck_assert_msg(status == CG_OK, "%s: %s", error.text, who);
    ck_assert_msg(after.ring_top_max > before->ring_top_max - 0.05 &&
                      after.crown_max > before->crown_max - 0.05,
                  "ring %+g K, crown %+g K by 20 kPa more: %s",
                  after.ring_top_max - before->ring_top_max,
                  after.crown_max - before->crown_max, who);
}

static enum outcome try_engine(const struct draw *d, const char *who)
{
    struct cg_case c;
    struct cg_error error = {CG_OK, ""};
    char file[256];
    snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s", d->engine);
    enum cg_status status = cg_config_try(file, d->set, d->sets, &c, &error);
    if (status != CG_OK) {
        ck_assert_msg(status == CG_BAD_INPUT && error.text[0] != '\0',
                      "%d %s: %s", status, error.text, who);
        return REFUSED;
    }
    struct cg_duty_run *run;
    struct cg_extremes extremes;
    struct cg_heat_ledger ledger = {0};
    status = cg_duty_run_create(&c, &run, &error);
    if (status == CG_OK) {
        status = cg_answer_extremes(&c, run, 0.0, NULL, NULL, &extremes,
                                    &ledger, &error);
        cg_duty_run_free(run);
    }
    if (status == CG_BAD_INPUT && error.text[0] != '\0')
        return REFUSED; /* such as a piston past 1500 K */
    if (status != CG_OK) {
        ck_assert_msg(status == CG_NUMERICAL && error.text[0] != '\0',
                      "%d %s: %s", status, error.text, who);
        fprintf(stderr, "%s\n    %s\n", error.text, who);
        return FAILED;
    }
    check_finite(&extremes, who);
    ck_assert_msg(fabs(ledger.residual) < 1e-9, "heat does not close: %s", who);
    check_boost_heats(&c, &extremes, who);
    return ANSWERED;
}

START_TEST(any_engine_is_answered_or_refused)
{
    size_t wanted = from_environment("CG_ENGINES", 300);
    size_t seed = from_environment("CG_SEED", 2), count[3] = {0};
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(rng, (unsigned long)seed);
    for (size_t i = 0; i < wanted; i++) {
        struct draw d;
        char who[4096];
        draw_engine(rng, &d);
        describe(&d, who, sizeof who);
        count[try_engine(&d, who)]++;
    }
    gsl_rng_free(rng);
    printf("%zu refused, %zu failed, %zu answered\n", count[REFUSED],
           count[FAILED], count[ANSWERED]);
    /* the draw must not be hollow */
    ck_assert(count[ANSWERED] > wanted / 5);
    ck_assert(count[FAILED] * 100 <= wanted);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("any engine");
    TCase *tcase = tcase_create("any engine");
    tcase_set_timeout(tcase, 3600);
    tcase_add_test(tcase, any_engine_is_answered_or_refused);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
