#include "rings_answer.h"

#include <stdbool.h>
#include <stdio.h>

#include "constants.h"

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
        pressure.scale = rise.scale = 6894.757293168361;
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

void cg_ring_reason(const struct cg_ring_choice *choice, bool inch,
                    char text[CG_REASON])
{
    bool fits = choice->verdict == CG_RING_FITS;
    enum cg_ring_limit limit = fits ? choice->first : choice->worst;
    if (limit == CG_RING_LIMITS) {
        snprintf(text, CG_REASON, "no limit is met at the boosts looked at");
        return;
    }
    struct told told = told_of(limit, inch);
    char load[24], low[24], high[24];
    const struct cg_band *band = &choice->limit[limit];
    snprintf(load, sizeof load, told.format,
             (choice->load[limit] - told.shift) / told.scale);
    snprintf(low, sizeof low, told.format,
             (band->low - told.shift) / told.scale);
    snprintf(high, sizeof high, told.format,
             (band->high - told.shift) / told.scale);
    snprintf(text, CG_REASON, "%s%s %s of %s-%s %s: %s",
             fits ? "next: " : "", told.name, load, low, high,
             told.unit, failure_of(choice, limit));
}
