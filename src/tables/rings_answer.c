#include "rings_answer.h"

#include <stdbool.h>
#include <stdio.h>

#include "quantity.h"

enum { LOAD = 96 };

#define NO_GAP "no gap in range will do"
#define NO_LIMIT "no limit is met at the boosts looked at"

static const struct {
    const char *name;
    enum cg_kind kind;
} limits[CG_RING_LIMITS] = {
    [CG_LIMIT_RING_HEAT] = {"ring temperature", CG_SHOW_TEMPERATURE},
    [CG_LIMIT_TENSION] = {"tension lost", CG_SHOW_SHARE},
    [CG_LIMIT_FACE_HEAT] = {"face temperature", CG_SHOW_TEMPERATURE},
    [CG_LIMIT_PRESSURE] = {"peak pressure", CG_SHOW_PEAK_PRESSURE},
    [CG_LIMIT_RISE] = {"pressure rise", CG_SHOW_RISE},
};

const char *cg_ring_limit_name(enum cg_ring_limit limit)
{
    return limits[limit].name;
}

/* Heat takes the metal's tension; the rest is the face's own failure. */
static const char *failure_of(const struct cg_ring_choice *choice,
                              enum cg_ring_limit limit)
{
    if (limit == CG_LIMIT_RING_HEAT || limit == CG_LIMIT_TENSION)
        return "the ring goes slack";
    return choice->face->failure;
}

/* "99 of 90-120 bar" */
static void load_text(const struct cg_ring_choice *choice,
                      enum cg_ring_limit limit, bool inch, char text[LOAD])
{
    enum cg_kind kind = limits[limit].kind;
    const struct cg_band *band = &choice->limit[limit];
    snprintf(
        text, LOAD, "%.20s of %.20s-%.20s %s",
        cg_quantity_bare(cg_quantity(kind, choice->load[limit]), inch).text,
        cg_quantity_bare(cg_quantity(kind, band->low), inch).text,
        cg_quantity_bare(cg_quantity(kind, band->high), inch).text,
        cg_kind_unit(kind, inch));
}

/* The limit that a ring is told by; CG_RING_LIMITS: none. */
static enum cg_ring_limit limit_of(const struct cg_ring_choice *choice)
{
    return choice->verdict == CG_RING_FITS ? choice->first : choice->worst;
}

const char *cg_ring_limit_told(const struct cg_ring_choice *choice)
{
    if (choice->no_gap)
        return "no gap";
    enum cg_ring_limit limit = limit_of(choice);
    return limit == CG_RING_LIMITS ? "none" : limits[limit].name;
}

static void write_reason(const struct cg_ring_choice *choice, const char *loads,
                         char text[CG_REASON])
{
    enum cg_ring_limit limit = limit_of(choice);
    snprintf(text, CG_REASON, "%s%s %s: %s",
             choice->verdict == CG_RING_FITS ? "with more boost, " : "",
             limits[limit].name, loads, failure_of(choice, limit));
}

void cg_ring_reason(const struct cg_ring_choice *choice, bool inch,
                    char text[CG_REASON])
{
    char loads[LOAD];
    if (choice->no_gap) {
        snprintf(text, CG_REASON, NO_GAP);
        return;
    }
    if (limit_of(choice) == CG_RING_LIMITS) {
        snprintf(text, CG_REASON, "%s", NO_LIMIT);
        return;
    }
    load_text(choice, limit_of(choice), inch, loads);
    write_reason(choice, loads, text);
}

void cg_ring_reason_both(const struct cg_ring_choice *choice, bool inch,
                         char text[CG_REASON])
{
    enum cg_ring_limit limit = limit_of(choice);
    char first[LOAD], other[LOAD], loads[2 * LOAD + 4];
    if (choice->no_gap || limit == CG_RING_LIMITS ||
        !cg_kind_converts(limits[limit].kind)) {
        cg_ring_reason(choice, inch, text); /* no units, or one */
        return;
    }
    load_text(choice, limit, inch, first);
    load_text(choice, limit, !inch, other);
    snprintf(loads, sizeof loads, "%s (%s)", first, other);
    write_reason(choice, loads, text);
}
