/* The material ratio curve on probability paper: height over the normal score
 * of the ratio, on which heights of one normal law lie on a straight line of
 * slope -Rq.  A plateau finish is two laws, so two lines with a bend: Rpq is
 * the slope of the plateau's line, Rvq that of the valleys', Rmq the ratio
 * where they meet (ISO 13565-3:1998, ISO 21920-2:2021).
 *
 * The standard finds the two straight stretches by fitting a general conic and
 * by its second derivative.  Here a hyperbola stands for the conic (the curve
 * runs from one asymptote into the other),
 *
 *     z(s) = m - (p + v)/2 (s - c) - (v - p)/2 sqrt((s - c)^2 + w^2)
 *
 * with w up to 0.5, and straight lines are then fitted by least squares at
 * least 2 w away from its bend c, within scores of -3..3.  The figures thus
 * differ by some per cent from an instrument's that follows the standard to the
 * letter, by more where the valleys are far from a normal law.
 */
#ifndef CG_MATERIAL_PROBABILITY_H
#define CG_MATERIAL_PROBABILITY_H

#include <stdbool.h>

#include "material_ratio.h"

struct cg_score_line {
    double from, to;   /* scores it was fitted between */
    double level;      /* height at score 0 [m] */
    double slope;      /* fall of height per score [m] */
};

struct cg_probability {
    bool bends;        /* two lines; otherwise one, and no rmq */
    double rpq, rvq;   /* [m]; equal when there is one line */
    double rmq;        /* [1]; NaN when there is one line */
    struct cg_score_line plateau, valley; /* equal when there is one line */
};

/* Normal score of a ratio 0 < ratio < 1, rising with it, and back. */
double cg_ratio_score(double ratio);
double cg_score_ratio(double score);

/* Two lines are taken when the valleys' slope is at least 1.5 times the
 * plateau's and they meet between ratios of 40 % and 99.5 %: less is no
 * plateau.  Cannot fail. */
void cg_ratio_curve_probability(const struct cg_ratio_curve *curve,
                                struct cg_probability *probability);

#endif
