#include "evidence_gap.h"

#include <math.h>

/* Closures of the same run in two computations differ by less [m]. */
#define SAME 1e-6

double cg_evidence_allowance(const struct cg_case *c, double closure)
{
    const struct cg_touched_case *touched = &c->touched;
    if (!(touched->gap > 0.0))
        return -INFINITY;
    return fmax(touched->gap - closure, touched->beyond);
}

/* Of the engine itself. */
static bool is_sign(const struct cg_evidence_entry *entry, bool touched)
{
    return entry->what == CG_EVIDENCE_ENDS && entry->engine == 0 &&
           entry->touched == touched;
}

struct cg_touched_case cg_evidence_touched(const struct cg_evidence *evidence,
                                           const struct cg_learned *learned)
{
    struct cg_touched_case touched = {0.0, 0.0};
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &evidence->entry[i];
        if (!is_sign(entry, true))
            continue;
        touched.gap = fmax(touched.gap, entry->cold_gap);
        touched.beyond =
            fmax(touched.beyond, entry->cold_gap - learned->closure[i]);
    }
    return touched;
}

struct cg_earned cg_evidence_earned(const struct cg_evidence *evidence,
                                    const struct cg_learned *learned,
                                    double closure, double need)
{
    struct cg_earned earned = {NAN, 0};
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &evidence->entry[i];
        if (!is_sign(entry, false) ||
            !(learned->closure[i] >= closure - SAME))
            continue;
        double gap = fmax(entry->cold_gap, need);
        if (!(gap >= earned.gap)) /* NaN: the first */
            earned = (struct cg_earned){gap, i};
    }
    return earned;
}
