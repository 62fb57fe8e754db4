/* A roughness profile: heights at even distances along a straight trace. */
#ifndef CG_PROFILE_H
#define CG_PROFILE_H

#include <stddef.h>

#include "status.h"

enum { CG_PROFILE_FEWEST = 100 };

#define CG_PROFILE_USUAL_SPACING 0.5e-6 /* ISO 3274:1996, from memory [m] */

struct cg_profile {
    double *height; /* [points] [m], up from the metal; the caller's */
    size_t points;
    double spacing; /* [m] */
};

struct cg_amplitude {
    double ra, rq;   /* mean deviation, root of the mean square [m] */
    double rz;       /* highest to lowest, mean over the sections [m] */
    double rt;       /* highest to lowest of the whole [m] */
    size_t sections; /* that rz is the mean of */
};

/* CG_BAD_INPUT when there are fewer than CG_PROFILE_FEWEST points, a height is
 * not finite, all heights are equal, or the spacing is not positive; otherwise
 * the lowest and highest height [m]. */
enum cg_status cg_profile_check(const struct cg_profile *profile,
                                double *low, double *high,
                                struct cg_error *error);

/* Takes the mean off.  Cannot fail. */
void cg_profile_center(double *height, size_t points);

/* Takes the straight line of least squares off, so that the trace lies level
 * about zero.  Cannot fail. */
void cg_profile_level(double *height, size_t points);

/* Amplitudes of `height` about zero: Ra, Rq, Rz, Rt of ISO 21920-2:2021 (Rz as
 * the mean over sections, ISO 4287:1997 likewise).  Sections are as long as
 * `section` [m] at least; a shorter trace is one section.  points > 0.  Cannot
 * fail. */
void cg_profile_amplitude(const double *height, size_t points, double spacing,
                          double section, struct cg_amplitude *amplitude);

#endif
