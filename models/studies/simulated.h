/* Simulated honed surfaces of the case's stones: a trace to measure like any
 * other, and two patches to look at side by side. */
#ifndef CG_SIMULATED_H
#define CG_SIMULATED_H

#include "case.h"
#include "surface.h"

enum { CG_PATCH_SIDE = 400 }; /* points along either side */
#define CG_PATCH_STEP 2.5e-6  /* so that the patch is 1 mm square [m] */

enum cg_stages { CG_STAGES_COARSE, CG_STAGES_PLATEAU, CG_STAGES };

struct cg_patch {
    double *height;             /* [side][side], rows along the bore [m] */
    struct cg_surface *surface; /* of all rows in one, no filter */
};

/* A trace along the bore, six cut-offs long.  The caller frees its heights.
 * CG_NO_MEMORY. */
enum cg_status cg_simulated_trace(const struct cg_case *c,
                                  enum cg_stages stages, double cutoff,
                                  unsigned long seed,
                                  struct cg_profile *profile,
                                  struct cg_error *error);

/* What the plateau-honed trace, by the standard filter and cut-off, holds;
 * *bends as cg_probability's.  CG_NO_MEMORY, and as cg_surface_measure. */
enum cg_status cg_simulated_core(const struct cg_case *c, unsigned long seed,
                                 struct cg_core *core, bool *bends,
                                 struct cg_error *error);

/* Both patches, of the same base stage; the caller frees them (accepts zeroed
 * ones).  CG_NO_MEMORY. */
enum cg_status cg_simulated_patches(const struct cg_case *c, unsigned long seed,
                                    struct cg_patch patch[CG_STAGES],
                                    struct cg_error *error);
void cg_simulated_free(struct cg_patch patch[CG_STAGES]);

#endif
