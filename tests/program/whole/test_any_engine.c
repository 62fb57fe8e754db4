/* Thousands of invented engines from the whole bands of the settings: each is
 * refused with a reason or answered with finite figures and closed balances.
 * CG_ENGINES, CG_DIESELS and CG_SEED in the environment draw more, or
 * others. */
#include <gsl/gsl_rng.h>
#include <string.h>

#include "any_case.h"
#include "check_close.h"

enum { CHANGES = 40 };

static const char *const duties[] = {"dyno_pull", "drag_pass", "settled",
                                     "lean_event", "cold_start_abuse",
                                     "cold_start_air"};
static const char *const diesel_duties[] = {
    "dyno_pull", "haul_grade", "settled", "tow_grade", "cold_start_abuse"};

/* What a diesel is refused with: config_ignition.c. */
static bool is_of_spark(const char *path)
{
    static const char *const list[] = {"fuel.octane",
                                       "combustion.burn50",
                                       "combustion.retard",
                                       "combustion.knock_delay",
                                       "combustion.burn_duration",
                                       "charge.closed_throttle",
                                       "charge.evaporation",
                                       "charge.wall_evaporation",
                                       "uncertainty.octane",
                                       "uncertainty.retard",
                                       "combustion.ignition",
                                       "cooling.medium"};
    bool found = strncmp(path, "nitrous.", 8) == 0 ||
                 strncmp(path, "spray.", 6) == 0;
    for (size_t i = 0; i < COUNT_OF(list); i++)
        found = found || strcmp(path, list[i]) == 0;
    return found;
}

struct draw {
    char text[CHANGES][ANY_ROOM];
    const char *set[CHANGES];
    size_t sets;
    const char *engine;
};

static void put(struct draw *d, const char *set)
{
    snprintf(d->text[d->sets], ANY_ROOM, "%s", set);
    d->set[d->sets] = d->text[d->sets];
    d->sets++;
}

static void put_at(struct draw *d, const char *path, double share)
{
    if (setting_at(cg_setting_find(path), share, d->text[d->sets])) {
        d->set[d->sets] = d->text[d->sets];
        d->sets++;
    }
}

static void draw_chargers(gsl_rng *rng, struct draw *d)
{
    if (strcmp(d->engine, "plain_four.cfg") == 0 ||
        gsl_rng_uniform_int(rng, 4) > 0)
        return;
    put_at(d, "charge.second_charger", gsl_rng_uniform(rng));
    put_at(d, "charge.split", gsl_rng_uniform(rng));
    put_at(d, "charge.between_effectiveness", gsl_rng_uniform(rng));
}

/* Nitrous, spray and a second charger, mixed: drawn alone they hardly ever meet.
 * Flows that a car's engine may stand; true: nitrous is on. */
static bool draw_brought(gsl_rng *rng, struct draw *d)
{
    if (gsl_rng_uniform_int(rng, 4) == 0) {
        put_at(d, "spray.flow", 0.05 * gsl_rng_uniform(rng));
        put_at(d, "spray.alcohol", gsl_rng_uniform(rng));
        put_at(d, "spray.before", 0.4 * gsl_rng_uniform(rng));
        put_at(d, "spray.closed", 0.6 * gsl_rng_uniform(rng));
    }
    if (gsl_rng_uniform_int(rng, 4) > 0)
        return false;
    put_at(d, gsl_rng_uniform_int(rng, 4) > 0 ? "nitrous.flow" : "nitrous.power",
           0.15 * gsl_rng_uniform(rng));
    put_at(d, "nitrous.state", gsl_rng_uniform(rng));
    put_at(d, "nitrous.bottle", gsl_rng_uniform(rng));
    if (gsl_rng_uniform_int(rng, 2) == 0)
        put_at(d, "nitrous.lambda", gsl_rng_uniform(rng));
    return true;
}

/* Few settings at their extremes more often than all at once: parts that are
 * all drawn alone hardly ever fit together. */
static void draw_engine(gsl_rng *rng, bool diesel, struct draw *d)
{
    size_t count;
    const struct cg_setting *setting = cg_settings(&count);
    size_t engines = diesel ? COUNT_OF(any_engines) - ANY_SPARKS : ANY_SPARKS;
    d->engine = any_engines[gsl_rng_uniform_int(rng, engines) +
                            (diesel ? ANY_SPARKS : 0)];
    d->sets = 0;
    size_t wanted = 1 + gsl_rng_uniform_int(rng, 12);
    while (d->sets < wanted) {
        const struct cg_setting *s = &setting[gsl_rng_uniform_int(rng, count)];
        /* cells cost time and are tested for convergence elsewhere */
        if (strncmp(s->path, "solver.", 7) == 0 ||
            (diesel && is_of_spark(s->path)) ||
            !setting_at(s, gsl_rng_uniform(rng), d->text[d->sets]))
            continue;
        d->set[d->sets] = d->text[d->sets];
        d->sets++;
    }
    draw_chargers(rng, d);
    char duty[ANY_ROOM];
    if (diesel)
        snprintf(duty, sizeof duty, "duty.name=%s",
                 diesel_duties[gsl_rng_uniform_int(rng,
                                                   COUNT_OF(diesel_duties))]);
    else
        snprintf(duty, sizeof duty, "duty.name=%s",
                 draw_brought(rng, d)
                     ? "nitrous_pull"
                     : duties[gsl_rng_uniform_int(rng, COUNT_OF(duties))]);
    put(d, duty);
}

/* More boost never cools the top ring, nor the crown; unless the burn is
 * retarded with it, by more than anyone's rule does or at the knock limit. */
#define MUCH_RETARD 8.0
static bool retarded_by_knock(const struct cg_case *c,
                              const struct cg_duty_run *run)
{
    bool retarded = false;
    for (size_t i = 0; i < run->points; i++)
        retarded |=
            run->point[i].performance.burn50_deg > c->combustion.burn50_deg;
    return retarded && isnan(c->combustion.retard_deg_per_100kPa) &&
           c->combustion.ignition == CG_IGNITION_SPARK;
}

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
    bool retarded = retarded_by_knock(&more, run);
    cg_duty_run_free(run);
    ck_assert_msg(status == CG_OK, "%s: %s", error.text, who);
    ck_assert_msg(retarded ||
                      (after.ring_top_max > before->ring_top_max - 0.05 &&
                       after.crown_max > before->crown_max - 0.05),
                  "ring %+g K, crown %+g K by 20 kPa more: %s",
                  after.ring_top_max - before->ring_top_max,
                  after.crown_max - before->crown_max, who);
}

/* The case's own answer, and that a higher boost does not cool. */
static enum outcome answer_case(const struct cg_case *c, const char *who)
{
    struct cg_error error = {CG_OK, ""};
    struct cg_duty_run *run;
    struct cg_extremes extremes;
    struct cg_heat_ledger ledger = {0};
    enum cg_status status = cg_duty_run_create(c, &run, &error);
    if (status == CG_OK) {
        status = cg_answer_extremes(c, run, 0.0, NULL, NULL, &extremes,
                                    &ledger, &error);
        cg_duty_run_free(run);
    }
    enum outcome outcome = outcome_of(status, &error, who);
    if (outcome != ANSWERED)
        return outcome;
    check_finite(&extremes, who);
    ck_assert_msg(fabs(ledger.residual) < 1e-9, "heat does not close: %s", who);
    check_boost_heats(c, &extremes, who);
    return ANSWERED;
}

static enum outcome try_engine(const struct draw *d, const char *who)
{
    struct cg_case c;
    if (any_case(d->engine, d->set, d->sets, &c, who) == REFUSED)
        return REFUSED;
    enum outcome outcome = answer_case(&c, who);
    cg_case_free(&c);
    return outcome;
}

static void try_many(bool diesel, size_t wanted)
{
    size_t seed = from_environment("CG_SEED", 2), count[3] = {0};
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(rng, (unsigned long)seed);
    for (size_t i = 0; i < wanted; i++) {
        struct draw d;
        char who[4096];
        draw_engine(rng, diesel, &d);
        describe(d.engine, d.set, d.sets, who, sizeof who);
        count[try_engine(&d, who)]++;
    }
    gsl_rng_free(rng);
    printf("%zu refused, %zu failed, %zu answered\n", count[REFUSED],
           count[FAILED], count[ANSWERED]);
    /* the draw must not be hollow */
    ck_assert(count[ANSWERED] > wanted / 5);
    ck_assert_uint_eq(count[FAILED], 0);
}

START_TEST(any_engine_is_answered_or_refused)
{
    try_many(false, from_environment("CG_ENGINES", 300));
}
END_TEST

START_TEST(any_diesel_is_answered_or_refused)
{
    try_many(true, from_environment("CG_DIESELS", 200));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("any engine");
    TCase *tcase = tcase_create("any engine");
    tcase_set_timeout(tcase, 3600);
    tcase_add_test(tcase, any_engine_is_answered_or_refused);
    tcase_add_test(tcase, any_diesel_is_answered_or_refused);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
