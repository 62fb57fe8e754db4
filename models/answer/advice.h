/* What to file to: the largest of the gap needed by the model, the least that
 * the ring's maker allows, and the shop rule.  The rule knows neither block nor
 * ring nor duty, but has broken rings behind it; metal filed off does not come
 * back, and a ring whose ends touch breaks.  What evidence has earned stands in
 * the rule's place where it is less.
 */
#ifndef CG_ADVICE_H
#define CG_ADVICE_H

#include <stdbool.h>

/* Where the figure comes from; of equal ones the first. */
enum cg_advice_from {
    CG_ADVICE_MODEL,    /* the gap needed, in the hardest duty */
    CG_ADVICE_MAKER,    /* the maker's minimum */
    CG_ADVICE_RULE,     /* the shop rule */
    CG_ADVICE_EVIDENCE, /* less than the rule, which evidence has earned */
    CG_ADVICE_NONE      /* no gap that a case may give will do */
};

/* What there is to choose from, cold gaps [m]. */
struct cg_advice_says {
    double need;    /* by the model, unrounded */
    double rule;    /* the shop rule */
    double maker;   /* NaN: none given */
    double earned;  /* NaN: none */
    double most;    /* the widest that a case may give */
    double step;    /* filing step */
    bool past_rule; /* the boost is past the shop rule's end */
};

/* For one ring. */
struct cg_ring_advice {
    double file_to;  /* cold [m], a multiple of the filing step; NaN: none */
    double at_least; /* the same unrounded: what a given gap is held against */
    double rule, maker, earned; /* as in cg_advice_says */
    bool past_rule;             /* likewise */
    enum cg_advice_from from;
};

/* "model", "maker", "rule", "evidence", "none". */
const char *cg_advice_word(enum cg_advice_from from);

/* The gap to use for one ring.  Equal but for the last bits is equal.  Cannot
 * fail. */
struct cg_ring_advice cg_advise(const struct cg_advice_says *says);

/* How a gap is judged. */
enum cg_fits {
    CG_FITS_NOT,   /* too small: below the model's need */
    CG_FITS_BELOW, /* safe by the model, but less than to file to */
    CG_FITS
};

/* Of a gap [m] against a need and what to file to at least [m], each but for
 * the last bits.  Cannot fail. */
enum cg_fits cg_advice_fits(double gap, double need, double at_least);

/* The least second gap [m] that goes with a top gap as filed: the shop rule of
 * the second ring, `factor` (margin.second_factor) times the top gap, so that
 * it rises with that and, since no top gap is filed below the shop rule, with
 * boost; no wider than `most`.  Cannot fail. */
double cg_advice_second_rule(double top, double factor, double most);

#endif
