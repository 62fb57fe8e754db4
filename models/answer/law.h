/* Which law of gas heat and of ring film is right is not known: each has been
 * calibrated by itself on the same facts (tests/calibration), and weighs as
 * well as it explains them.  The table is models/case/calibrated.h. */
#ifndef CG_LAW_H
#define CG_LAW_H

#include <stddef.h>

#include "calibrated.h"
#include "case.h"

struct cg_law {
    const char *heat_transfer;
    int film_law;  /* enum cg_film_law */
    double weight; /* of all laws sum to 1 */
    /* Of the constants in the order of cg_law_input. */
    double ln_value[CG_CALIBRATED]; /* over the default */
    double spread[CG_CALIBRATED];   /* one standard deviation of the ln */
    double correlation[CG_CALIBRATED][CG_CALIBRATED];
};

const struct cg_law *cg_laws(size_t *count);

/* Row of cg_uncertains of a calibrated constant, 0 .. CG_CALIBRATED - 1. */
size_t cg_law_input(size_t constant);

/* The law that the case goes by, or NULL: one that was not calibrated, or
 * that is held to be right (uncertainty.other_laws). */
const struct cg_law *cg_law_of(const struct cg_case *c);

/* The case with another law in place of its own (`from`): names, constants,
 * their spreads and correlations.  What the builder set of constants and
 * spreads keeps its ratio to the default.  Correlations stay where the builder
 * or evidence gave other ones than those of `from`.  Cannot fail. */
void cg_law_take(const struct cg_law *from, const struct cg_law *to,
                 struct cg_case *c);

/* Paths of the settings that a calibrated constant is the default of,
 * [CG_CALIBRATED_SETTINGS]; NULL: no more. */
const char *const *cg_law_settings(size_t constant);

/* Defaults are those of the first law.  Where the case goes by another that was
 * calibrated, held to be right or not: gives it the other's constant, or
 * spread, and the correlations of its law.  Cannot fail. */
void cg_law_default_value(size_t constant, struct cg_case *c);
void cg_law_default_spread(size_t constant, struct cg_case *c);
void cg_law_correlate(struct cg_case *c);

#endif
