/* Everything that is read from one trace of a bore's surface: the filter, the
 * amplitudes, the material ratio curve and its figures.
 *
 * A filter's line leans on one side only at the ends, where a valley draws it
 * down.  A filtered trace of six cut-offs or more therefore loses half a
 * cut-off at either end, the run-up and run-out of ISO 4288:1996 (from
 * memory), which leaves five or more; a shorter one is evaluated whole. */
#ifndef CG_SURFACE_H
#define CG_SURFACE_H

#include "material_probability.h"
#include "material_ratio.h"
#include "profile.h"

/* Of roughness filters: ISO 13565-1:1996 [m]. */
#define CG_SURFACE_USUAL_CUTOFF 0.8e-3

enum cg_filter {
    CG_FILTER_STANDARD, /* amplitudes by the Gaussian, all else two-step */
    CG_FILTER_GAUSSIAN, /* ISO 16610-21 */
    CG_FILTER_ROBUST,   /* ISO 16610-31 */
    CG_FILTER_NONE,     /* heights as they stand, about their mean */
    CG_FILTERS
};

/* "standard", "gaussian", "robust", "none". */
const char *cg_filter_name(enum cg_filter filter);

struct cg_surface {
    struct cg_profile level;  /* leveled (no filter: its mean taken off) */
    double *line;             /* [points] taken off before the ratio curve */
    size_t first, evaluated;  /* the points that the figures are of */
    struct cg_ratio_curve curve; /* [evaluated] */
    enum cg_filter filter;
    double cutoff;            /* [m] */
    struct cg_amplitude amplitude;
    struct cg_core core;
    struct cg_probability probability;
};

/* Measures a trace; its heights are copied.  `cutoff` [m] is the filter's, and
 * the length of Rz's sections with no filter too.  CG_BAD_INPUT as
 * cg_profile_check and the filter, CG_NUMERICAL, CG_NO_MEMORY.  The caller
 * frees; a failed call leaves nothing to free. */
enum cg_status cg_surface_measure(const struct cg_profile *profile,
                                  enum cg_filter filter, double cutoff,
                                  struct cg_surface **surface,
                                  struct cg_error *error);
void cg_surface_free(struct cg_surface *surface); /* accepts NULL */

#endif
