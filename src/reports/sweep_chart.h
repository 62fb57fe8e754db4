/* The picture of a sweep over boost: gap to file to, what it is made of, and the
 * shop rule. */
#ifndef CG_SWEEP_CHART_H
#define CG_SWEEP_CHART_H

#include <stdbool.h>
#include <stddef.h>

#include "case.h"

/* A point with an answer. */
struct cg_sweep_boost {
    double boost;                              /* gauge [Pa] */
    double file_to, closure, spread, residual; /* [m] */
};

/* What is drawn, in order of boost. */
struct cg_sweep_boosts {
    struct cg_sweep_boost *point;
    size_t count;
    const struct cg_case *c; /* that is varied */
    bool inch;
};

/* Sorts the points; the drawing's text, which the caller frees, NULL: out of
 * memory; `words`: what it shows. */
char *cg_sweep_chart_boost(struct cg_sweep_boosts *of, char words[512]);

#endif
