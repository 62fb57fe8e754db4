/* Cases drawn from the whole bands of the settings, and what must hold of each:
 * refused with a reason, or answered with finite figures. */
#ifndef CG_ANY_CASE_H
#define CG_ANY_CASE_H

#include <stdlib.h>

#include "case_of.h"
#include "setting.h"

enum { ANY_ROOM = 128 };

static const char *const any_engines[] = {
    "plain_four.cfg", "boosted_four.cfg", "iron_six.cfg",    "big_eight.cfg",
    "air_twin.cfg",   "truck_six.cfg",    "pickup_eight.cfg"};
enum { ANY_SPARKS = 5 }; /* the first of them */

enum outcome { REFUSED, FAILED, ANSWERED };

static inline size_t from_environment(const char *name, size_t otherwise)
{
    const char *text = getenv(name);
    return text != NULL ? strtoul(text, NULL, 10) : otherwise;
}

/* The setting at `share` of its band, 0 to 1, as a user would write it; false:
 * a name, which has none. */
static inline bool setting_at(const struct cg_setting *s, double share,
                              char text[ANY_ROOM])
{
    double at = s->low + (s->high - s->low) * share;
    const char *bar = s->unit[0] != '\0' ? "_" : "";
    char word[CG_NAME_LENGTH];
    switch (s->kind) {
    case CG_REAL:
        snprintf(text, ANY_ROOM, "%s%s%s=%.9g", s->path, bar, s->unit, at);
        return isfinite(at);
    case CG_COUNT:
        snprintf(text, ANY_ROOM, "%s=%d", s->path, (int)at);
        return true;
    case CG_SWITCH:
        snprintf(text, ANY_ROOM, "%s=%s", s->path, at > 0.5 ? "true" : "false");
        return true;
    case CG_CHOICE:
        cg_setting_word(s, (int)fmin(share * (s->high + 1.0), s->high), word);
        snprintf(text, ANY_ROOM, "%s=%s", s->path, word);
        return true;
    default:
        return false;
    }
}

/* The words of a user who would see the same. */
static inline void describe(const char *engine, const char *const *set,
                            size_t sets, char *text, size_t size)
{
    size_t used = (size_t)snprintf(text, size, "%s", engine);
    for (size_t i = 0; i < sets && used < size; i++)
        used += (size_t)snprintf(text + used, size - used, " --set %s", set[i]);
}

/* The case of a shipped engine with overrides; REFUSED or ANSWERED. */
static inline enum outcome any_case(const char *engine, const char *const *set,
                                    size_t sets, struct cg_case *c,
                                    const char *who)
{
    struct cg_error error = {CG_OK, ""};
    char file[256];
    snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s", engine);
    enum cg_status status = cg_config_try(file, set, sets, NULL, c, &error);
    ck_assert_msg(status == CG_OK ||
                      (status == CG_BAD_INPUT && error.text[0] != '\0'),
                  "%d %s: %s", status, error.text, who);
    return status == CG_OK ? ANSWERED : REFUSED;
}

/* What a status of the computation amounts to; none but these may come. */
static inline enum outcome
outcome_of(enum cg_status status, const struct cg_error *error, const char *who)
{
    if (status == CG_OK)
        return ANSWERED;
    ck_assert_msg((status == CG_BAD_INPUT || status == CG_NUMERICAL) &&
                      error->text[0] != '\0',
                  "%d %s: %s", status, error->text, who);
    if (status == CG_BAD_INPUT)
        return REFUSED; /* such as a piston past 1500 K */
    fprintf(stderr, "%s\n    %s\n", error->text, who);
    return FAILED;
}

static inline void check_finite(const struct cg_extremes *e, const char *who)
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

#endif
