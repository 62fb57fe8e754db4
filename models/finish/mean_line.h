/* The mean line of a profile: what a filter calls waviness and takes off.
 *
 * At a place x0 the line is the value of a polynomial that fits the heights
 * around it by least squares, each weighed by a Gaussian of its distance:
 *
 *     s(x) = exp(-pi (x / (a cutoff))^2)
 *
 * Degree 1 with a = sqrt(ln 2 / pi) = 0.4697 is, away from the ends, the
 * Gaussian filter of ISO 16610-21:2011; at the ends it keeps a straight line
 * straight, one of the ways of ISO 16610-28 (both from memory).  A wave of
 * length L passes into the line with the share 2^-(cutoff/L)^2.  Degree 2 with
 * a = 0.7309 is the regression of ISO 16610-31:2016 (from memory), a wave
 * passing with (1 + u) exp(-u), u = pi (a cutoff / L)^2.  Both pass one half at
 * the cut-off.
 *
 * The line is smooth, so it is computed at 32 places a cut-off and joined by
 * quintics: within 1e-5 of a wave's amplitude, at a cost that grows with the
 * number of points alone.
 */
#ifndef CG_MEAN_LINE_H
#define CG_MEAN_LINE_H

#include <stddef.h>

#include "status.h"

/* Shares of a wave's amplitude in the line; ratio: cut-off over wavelength. */
double cg_mean_line_gaussian_share(double ratio);
double cg_mean_line_quadratic_share(double ratio);

/* Each writes line[points] for height[points] at even `spacing` [m], with
 * `cutoff` [m].  CG_BAD_INPUT unless the cut-off holds 10 points and the trace
 * two cut-offs; CG_NO_MEMORY. */

/* ISO 16610-21. */
enum cg_status cg_mean_line_gaussian(const double *height, size_t points,
                                     double spacing, double cutoff,
                                     double *line, struct cg_error *error);

/* ISO 13565-1:1996 (from memory), for surfaces with deep valleys: heights
 * below a first Gaussian line are raised to it, and the line of what results
 * is the one sought. */
enum cg_status cg_mean_line_two_step(const double *height, size_t points,
                                     double spacing, double cutoff,
                                     double *line, struct cg_error *error);

/* ISO 16610-31: degree 2, each height weighed once more by Tukey's biweight
 * (1 - (r/c)^2)^2 of its distance r from the last line, c = 4.4478 times the
 * median of |r|, until c has settled to 1e-3.  CG_NUMERICAL when it does not,
 * or when no height near a place is left. */
enum cg_status cg_mean_line_robust(const double *height, size_t points,
                                   double spacing, double cutoff,
                                   double *line, struct cg_error *error);

/* Degree 2 without the second weighing; what the robust line starts from. */
enum cg_status cg_mean_line_quadratic(const double *height, size_t points,
                                      double spacing, double cutoff,
                                      double *line, struct cg_error *error);

#endif
