#include "rings_answer.h"

#include <stdbool.h>
#include <stdio.h>

#include "constants.h"

enum { LOAD = 96 };

#define NO_GAP "no gap in range will do"
#define NO_LIMIT "no limit is met at the boosts looked at"

/* How a limit is told: shown = (SI - shift) / scale. */
struct told {
    const char *name, *unit;
    double scale, shift;
    const char *format;
};

static struct told told_of(enum cg_ring_limit limit, bool inch)
{
    struct told heat = {"", "C", 1.0, CG_ZERO_CELSIUS, "%.0f"};
    struct told pressure = {"peak pressure", "bar", 1e5, 0.0, "%.0f"};
    struct told rise = {"pressure rise", "bar/deg", 1e5, 0.0, "%.1f"};
    if (inch) {
        heat = (struct told){"", "F", 1.0 / 1.8,
                             CG_ZERO_CELSIUS - 32.0 / 1.8, "%.0f"};
        pressure.unit = "psi";
        rise.unit = "psi/deg";
        pressure.scale = rise.scale = CG_PSI;
        rise.format = "%.0f";
    }
    switch (limit) {
    case CG_LIMIT_RING_HEAT:
        heat.name = "ring temperature";
        return heat;
    case CG_LIMIT_FACE_HEAT:
        heat.name = "face temperature";
        return heat;
    case CG_LIMIT_PRESSURE:
        return pressure;
    case CG_LIMIT_RISE:
        return rise;
    case CG_LIMIT_TENSION:
    case CG_RING_LIMITS:
        break;
    }
    return (struct told){"tension lost", "%", 0.01, 0.0, "%.1f"};
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
    struct told told = told_of(limit, inch);
    char load[24], low[24], high[24];
    const struct cg_band *band = &choice->limit[limit];
    snprintf(load, sizeof load, told.format,
             (choice->load[limit] - told.shift) / told.scale);
    snprintf(low, sizeof low, told.format,
             (band->low - told.shift) / told.scale);
    snprintf(high, sizeof high, told.format,
             (band->high - told.shift) / told.scale);
    snprintf(text, LOAD, "%s of %s-%s %s", load, low, high, told.unit);
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
    return limit == CG_RING_LIMITS ? "none" : told_of(limit, false).name;
}

static void write_reason(const struct cg_ring_choice *choice,
                         const char *loads, char text[CG_REASON])
{
    enum cg_ring_limit limit = limit_of(choice);
    snprintf(text, CG_REASON, "%s%s %s: %s",
             choice->verdict == CG_RING_FITS ? "next: " : "",
             told_of(limit, false).name, loads, failure_of(choice, limit));
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
        limit == CG_LIMIT_TENSION) {
        cg_ring_reason(choice, inch, text); /* no units, or one */
        return;
    }
    load_text(choice, limit, inch, first);
    load_text(choice, limit, !inch, other);
    snprintf(loads, sizeof loads, "%s (%s)", first, other);
    write_reason(choice, loads, text);
}
