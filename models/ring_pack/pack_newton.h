/* Newton's method for one stage of a step, for pack_stage.c alone. */
#ifndef CG_PACK_NEWTON_H
#define CG_PACK_NEWTON_H

#include <stdbool.h>

#include "pack_step.h"

/* What one stage starts from.  Unknowns: three pressures, then the lifts of
 * the rings that are free. */
struct cg_pack_base {
    double mass[CG_PACK_VOLUMES];
    double lift[CG_PACK_RINGS], speed[CG_PACK_RINGS];
    double diagonal;            /* step times the method's diagonal [s] */
    size_t column[CG_PACK_RINGS]; /* of a free ring; 0: seated */
    size_t unknowns;
};

/* Solves  mass = base + diagonal * flows,  lift and speed likewise,  from the
 * guess in `point`; rates: at the solution, to second order of the last change,
 * which is relative and less than `enough`.
 * False if it does not settle. */
bool cg_pack_newton(const struct cg_ring_pack *pack,
                    const struct cg_pack_node *at,
                    const struct cg_pack_base *base, double enough,
                    struct cg_pack_point *point, struct cg_pack_rates *rates);

#endif
