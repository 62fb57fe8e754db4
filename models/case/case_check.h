/* Sense checks beyond the band of each single setting: parts that do not fit
 * together. */
#ifndef CG_CASE_CHECK_H
#define CG_CASE_CHECK_H

#include <stddef.h>

#include "case.h"

enum { CG_CASE_PROBLEMS = 32 };

struct cg_case_problem {
    const char *path;  /* the setting at fault, without unit */
    const char *other; /* the setting it does not fit, or NULL */
    const char *text;  /* what is wrong and what is allowed */
    double limit;      /* the number allowed, of `path` in SI; NaN: none */
};

/* The widest cold end gap that a case may give that ring [m]: by its setting's
 * band, and CG_GAP_MOST of the circumference (common practice, no source).
 * Compression rings only.  Cannot fail. */
#define CG_GAP_MOST 0.03
double cg_case_gap_most(const struct cg_case *c, enum cg_ring_place place);

/* Writes what does not fit, at most CG_CASE_PROBLEMS, and returns how many.
 * A field that is NaN (missing) raises no complaint.  All limits are plain
 * geometry or common practice, no source.  Cannot fail. */
size_t cg_case_check(const struct cg_case *c,
                     struct cg_case_problem problem[CG_CASE_PROBLEMS]);

#endif
