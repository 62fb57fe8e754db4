/* The material ratio curve (Abbott's bearing curve) of a profile and what
 * ISO 13565-2:1996 and ISO 21920-2:2021 read from it (both from memory).
 *
 * The curve gives the height above which a share Mr of the trace lies.  A
 * window 40 % wide slides along it; where the curve drops least across it (the
 * first such place if several do, to 1e-4) lies the core.  A straight line of
 * least squares in height through that stretch is carried to Mr = 0 and 1: the
 * two heights bound the core.  What stands above is peak, what lies below is
 * valley; each is replaced by a right triangle of equal area.
 */
#ifndef CG_MATERIAL_RATIO_H
#define CG_MATERIAL_RATIO_H

#include <stddef.h>

#include "status.h"

struct cg_ratio_curve {
    double *height; /* [points] [m], falling */
    size_t points;
};

struct cg_core {
    double rk, rpk, rvk;  /* core, reduced peaks, reduced valleys [m] */
    double mr1, mr2;      /* where the core's bounds cut the curve [1] */
    double a1, a2;        /* areas of peaks and valleys per length [m] */
    double oil;           /* Vo: held in the valleys, per area [m3/m2]; it is
                             rvk (1 - mr2) / 2, the same as a2 */
    double start;         /* of the 40 % window [1] */
    double top, bottom;   /* heights that bound the core [m] */
};

/* Sorts `height` in place and takes it over for the curve's life.  points >=
 * 2.  Cannot fail. */
void cg_ratio_curve_sort(double *height, size_t points,
                         struct cg_ratio_curve *curve);

/* Height [m] at a ratio 0..1, and the ratio of a height; straight lines
 * between points, of which the i-th of n stands for (i + 1/2)/n.  Neither can
 * fail. */
double cg_ratio_curve_height(const struct cg_ratio_curve *curve, double ratio);
double cg_ratio_curve_ratio(const struct cg_ratio_curve *curve, double height);

/* Cannot fail. */
void cg_ratio_curve_core(const struct cg_ratio_curve *curve,
                         struct cg_core *core);

#endif
