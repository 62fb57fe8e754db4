/* One step of TR-BDF2 for C dT/dt = r(T, t), r the net heat into the nodes.
 *
 * With gamma = 2 - sqrt 2, d = gamma / 2, w = sqrt 2 / 4 and a = d h:
 *
 *   trapezium to t + gamma h   C u = a (r0 + r1)             T1 = T0 + u
 *   BDF2 to t + h              C v = h w (r0 + r1) + a r2    T2 = T0 + v
 *
 * r is linear in T.  With M = C + a K, and o the net heat at T0 under the
 * conditions of the stage (o = r0 while nothing changes):
 *
 *   M u = a (r0 + o1)              r1 = C u / a - r0
 *   M v = h w (r0 + r1) + a o2     r2 = (C v / h - w (r0 + r1)) / d
 *
 * The rates come from the stage equations, so that the heat of the step,
 * h (w r0 + w r1 + d r2), is the heat stored, to rounding.
 *
 * Error estimate against the third-order weights ((1-w)/3, (3w+1)/3, d/3),
 * filtered by M so that nodes already at rest do not count:
 *
 *   M e = h (A r0 + B r1 + D r2)   A = (4w-1)/3, B = -1/3, D = 2d/3
 *
 * R. E. Bank et al., IEEE Trans. CAD 4 (1985); M. E. Hosea and L. F. Shampine,
 * Appl. Numer. Math. 20 (1996).
 */
#ifndef CG_TR_BDF2_H
#define CG_TR_BDF2_H

#include <stdbool.h>
#include <stddef.h>

#include "heat_matrix.h"
#include "network.h"
#include "status.h"
#include "stepper.h"

/* Workspace, and what the last step tried has found. */
struct cg_tr_bdf2 {
    size_t nodes;
    struct cg_heat_matrix *matrix;
    double *block;            /* holds all the vectors below */
    bool steady;              /* nothing changes over the stretch */
    double *rate[3];          /* r0, r1, r2 [W] */
    double *result;           /* T2 [K] */
    double heat[3][CG_SIDES]; /* heat by side at the three times [W] */
    double *estimate;         /* e [K] */
    double *first, *second;   /* u, v [K] */
    double *open;             /* o [W] */
    double *filtered[2];      /* h M^-1 r at the two ends of the step [K] */
    double filtered_step;     /* step h of filtered[0]; 0: not known [s] */
};

/* Workspace for a network of fixed shape; caller frees.  Fails with
 * CG_NO_MEMORY. */
enum cg_status cg_tr_bdf2_create(const struct cg_network *network,
                                 struct cg_tr_bdf2 **step,
                                 struct cg_error *error);
/* Accepts NULL. */
void cg_tr_bdf2_free(struct cg_tr_bdf2 *step);

/* Weights of r0, r1, r2 over a step [1]: the heat of a step is h times their
 * sum of products with `rate` or `heat`. */
extern const double cg_tr_bdf2_weight[3];

/* Begins a stretch at temperature [K]: sets the drive's conditions at `time`
 * [s], and rate[0] and heat[0] from them.  Cannot fail. */
void cg_tr_bdf2_begin(struct cg_tr_bdf2 *step, struct cg_network *network,
                      const struct cg_drive *drive, double time,
                      const double *temperature);

/* Tries a step of h [s] from `time` at temperature [K]; leaves the network at
 * the conditions of time + h.  May be tried again with another h.  Fails as
 * cg_heat_matrix_factor does. */
enum cg_status cg_tr_bdf2_try(struct cg_tr_bdf2 *step,
                              struct cg_network *network,
                              const struct cg_drive *drive, double time,
                              double h, const double *temperature,
                              struct cg_error *error);

/* Takes the step tried: temperature [K] and rate[0], heat[0] move to its end.
 * Cannot fail. */
void cg_tr_bdf2_take(struct cg_tr_bdf2 *step, double h, double *temperature);

#endif
