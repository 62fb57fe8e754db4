/* A simulated honed surface, invented for teaching: what a base stage leaves,
 * and what a plateau stage makes of it.  It is a drawing of the process, not a
 * prediction of any machine's or stone's finish.
 *
 * Grooves run straight across in two directions, crosshatch_deg between them,
 * each as far from the circumference.  In each direction they lie at random
 * (Poisson), V-shaped, with random depths (a gamma law) in proportion to the
 * grain of the grit, in a texture of its own; a point is as deep as the deepest
 * of them.  The plateau stage is a surface of the same kind from its own grit,
 * laid at the height that leaves plateau_share of the base above it; the lower
 * of the two is what remains, as on a real plateau surface.
 */
#ifndef CG_HONING_H
#define CG_HONING_H

#include <stddef.h>

#include "status.h"

struct cg_honing {
    int base_grit;
    int plateau_grit;     /* 0: one stage alone */
    double plateau_share; /* of the area, that the plateau stage has cut [1] */
    double crosshatch_deg;
};

/* Fills height[rows][columns] [m] at even steps [m]: rows along the bore's
 * axis, columns along its circumference.  One column is a trace along the
 * bore.  Equal seeds give equal surfaces, and the base is the same with and
 * without plateau stage.  CG_NO_MEMORY. */
enum cg_status cg_honing_cut(const struct cg_honing *honing, size_t rows,
                             size_t columns, double step, unsigned long seed,
                             double *height, struct cg_error *error);

#endif
