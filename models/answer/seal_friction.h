/* What the compression rings rub away: the film of each ring over the cycle
 * under the gas load that the ring pack gives it.
 *
 * Mixed lubrication (film.h), whatever law the heat model's film follows.
 * Gas at the face's edges is that of the places above and below, behind it
 * that of the groove.  A ring that gas pushes off the bore rubs nothing.
 */
#ifndef CG_SEAL_FRICTION_H
#define CG_SEAL_FRICTION_H

#include "duty_run.h"
#include "film.h"
#include "seal.h"

struct cg_seal_friction {
    double power[CG_PACK_RINGS];    /* of the whole engine [W] */
    double boundary[CG_PACK_RINGS]; /* share by metal contact [1] */
    double minimum[CG_PACK_RINGS];  /* least film [m] */
    double mixed[CG_PACK_RINGS];    /* share of time in mixed friction [1] */
};

/* For the pair of gaps that `seal` solved last, made of `run` at `point`.
 * Errors as cg_ring_film_solve, CG_NO_MEMORY. */
enum cg_status cg_seal_friction_find(const struct cg_seal *seal,
                                     const struct cg_duty_run *run,
                                     size_t point,
                                     struct cg_seal_friction *friction,
                                     struct cg_error *error);

#endif
