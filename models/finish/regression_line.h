/* Local polynomial regression along a profile with Gaussian weights: the
 * machine behind the mean lines of mean_line.h. */
#ifndef CG_REGRESSION_LINE_H
#define CG_REGRESSION_LINE_H

#include <stddef.h>

#include "status.h"

/* Width of the Gaussian over the cut-off [1] that passes one half of a wave at
 * the cut-off: degree 1, sqrt(ln 2 / pi); degree 2, from (1 + u) exp(-u) = 1/2,
 * u = 1.6783469900166605, sqrt(u / pi). */
#define CG_WEIGHT_LINEAR 0.46971863934982566
#define CG_WEIGHT_QUADRATIC 0.7309134280946759

struct cg_regression;

/* Kernel and memory for traces of `points` heights; degree 1 or 2.  CG_BAD_INPUT
 * unless 10 spacings <= cutoff and two cut-offs fit the trace; CG_NO_MEMORY.
 * The caller frees. */
enum cg_status cg_regression_create(size_t points, double spacing,
                                    double cutoff, int degree,
                                    struct cg_regression **regression,
                                    struct cg_error *error);
void cg_regression_free(struct cg_regression *regression); /* accepts NULL */

/* line[points] through height[points]; weight[points] >= 0, or NULL for all
 * equal.  CG_NUMERICAL when the weights near a place leave nothing to fit. */
enum cg_status cg_regression_line(struct cg_regression *regression,
                                  const double *height, const double *weight,
                                  double *line, struct cg_error *error);

#endif
