/* What a ring's face hands the bore over a cycle when its film in mid-stroke is
 * known, as measured.
 *
 * The film follows the root of the ring's speed, as in hydrodynamic
 * lubrication at given load and viscosity (Hamrock, "Fundamentals of Fluid Film
 * Lubrication" (1994), slider bearing), down to where the roughness of face and
 * bore carries the ring (asperity.h); there metal conducts beside the oil.
 * Squeeze, which holds the film up a little longer, is left out.  Heat at a
 * given difference of temperature goes with the conductance, so that is what
 * is averaged: over time, more than that of the mean thickness.  Without
 * roughness and with a long rod it comes to B(1/4, 1/2)/pi = 1.6693 times that
 * of mid-stroke.
 *
 * A measured film is one with the oil there was: starved where oil is short.
 */
#ifndef CG_STROKE_FILM_H
#define CG_STROKE_FILM_H

#include <stddef.h>

#include "asperity.h"

struct cg_stroke_film {
    double film;                   /* where the ring is fastest [m] */
    double oil_conductivity;       /* [W/(m K)] */
    struct cg_asperity asperity;
    double face, bore;             /* conductivity of the metals [W/(m K)] */
};

/* Mean conductance [W/(m2 K)] over `points` equal steps of time, from the
 * ring's speed [m/s] (not all 0) and what presses its face on the bore
 * [Pa] > 0; *slope: d log(conductance) / d log(film) [1].  Cannot fail. */
double cg_stroke_film_conductance(const struct cg_stroke_film *in,
                                  size_t points, const double *speed,
                                  const double *pressure, double *slope);

#endif
