#include "evidence_gap.h"

#include <math.h>

/* Closures of the same run in two computations differ by less [m]. */
#define SAME 1e-6

double cg_evidence_allowance(const struct cg_case *c, double closure)
{
    if (!(c->ends.touched > 0.0))
        return -INFINITY;
    return fmax(c->ends.touched - closure, c->ends.beyond);
}

struct cg_ends_case cg_evidence_ends(const struct cg_evidence *evidence,
                                     const struct cg_learned *learned)
{
    struct cg_ends_case ends = {.touched = 0.0};
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &evidence->entry[i];
        double gap = entry->cold_gap, closure = learned->closure[i];
        if (entry->what != CG_EVIDENCE_ENDS || entry->engine != 0)
            continue;
        if (!entry->touched) {
            ends.clear[ends.clear_runs++] =
                (struct cg_clear_run){gap, closure, i};
            continue;
        }
        ends.touched = fmax(ends.touched, gap);
        ends.beyond = fmax(ends.beyond, gap - closure);
    }
    return ends;
}

bool cg_evidence_as_hard(double run, double closure)
{
    return run >= closure - SAME;
}

struct cg_earned cg_evidence_earned(const struct cg_case *c, double closure,
                                    double need)
{
    struct cg_earned earned = {NAN, 0};
    for (size_t i = 0; i < c->ends.clear_runs; i++) {
        const struct cg_clear_run *run = &c->ends.clear[i];
        double gap = fmax(run->gap, need);
        if (cg_evidence_as_hard(run->closure, closure) && !(gap >= earned.gap))
            earned = (struct cg_earned){gap, run->entry}; /* NaN: the first */
    }
    return earned;
}
