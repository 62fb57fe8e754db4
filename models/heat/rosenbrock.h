/* One step of a Rosenbrock scheme for C dT/dt = r(T, t), r the net heat into
 * the nodes, linear in T with the conductances K:
 *
 *   (C + a K) U_i = a [ r(T0 + sum_j<i a_ij U_j, t + alpha_i h)
 *                       + (1/h) C sum_j<i c_ij U_j + gamma_i h dr/dt ]
 *   T1 = T0 + sum_j m_j U_j,   a = h / 4;   K and dr/dt at the start
 *
 * Six stages within the step, order 4, L-stable, one matrix a step.  The last
 * U is the error estimate (order 3 without it): the scheme RODASP of
 * G. Steinebach, "Order reduction of ROW methods for DAEs and method of lines
 * applications", TH Darmstadt preprint 1741 (1995), in the notation of
 * E. Hairer and G. Wanner, "Solving Ordinary Differential Equations II"
 * (1996), sec. IV.7 (coefficients from memory; the tests find the order and
 * the damping).
 *
 * The heat that enters by each side is one more unknown of the same scheme,
 * so that heat in is heat stored, to rounding.
 */
#ifndef CG_ROSENBROCK_H
#define CG_ROSENBROCK_H

#include <stdbool.h>
#include <stddef.h>

#include "heat_matrix.h"
#include "network.h"
#include "status.h"
#include "stepper.h"

enum { CG_ROSENBROCK_STAGES = 6 };

/* Workspace, and what the last step tried has found. */
struct cg_rosenbrock {
    size_t nodes;
    struct cg_heat_matrix *matrix;       /* not owned */
    double *block;                       /* holds all the vectors below */
    bool steady;                         /* nothing changes over the interval */
    double *rate;                        /* net heat at the start [W] */
    double *drift;                       /* h dr/dt [W] */
    double *stage[CG_ROSENBROCK_STAGES]; /* U_i [K] */
    double *start, *result;              /* T0, T1 [K] */
    double *scratch;
    double heat_at_start[CG_SIDES]; /* [W] */
    double heat[CG_SIDES];          /* entered over the step [J] */
};

/* Workspace for a network of fixed shape; `matrix` must outlive it.  Caller
 * frees.  Fails with CG_NO_MEMORY. */
enum cg_status cg_rosenbrock_create(const struct cg_network *network,
                                    struct cg_heat_matrix *matrix,
                                    struct cg_rosenbrock **step,
                                    struct cg_error *error);
/* Accepts NULL. */
void cg_rosenbrock_free(struct cg_rosenbrock *step);

/* Begins an interval at temperature [K]: sets the drive's conditions at `time`
 * [s], and from them the matrix and the rate.  Cannot fail. */
void cg_rosenbrock_begin(struct cg_rosenbrock *step, struct cg_network *network,
                         const struct cg_drive *drive, double time,
                         const double *temperature);

/* Tries a step of h [s] from `time` at temperature [K].  May be tried again
 * with another h.  Fails as cg_heat_matrix_factor does. */
enum cg_status cg_rosenbrock_try(struct cg_rosenbrock *step,
                                 struct cg_network *network,
                                 const struct cg_drive *drive, double time,
                                 double h, const double *temperature,
                                 struct cg_error *error);

/* The estimated error of the step tried at every node [K]. */
const double *cg_rosenbrock_estimate(const struct cg_rosenbrock *step);

/* Temperatures [K] at the share `part` of the step tried, by the scheme's own
 * continuous extension (order 3 inside). */
void cg_rosenbrock_inside(const struct cg_rosenbrock *step, double part,
                          double *temperature);

/* Takes the step tried, which ends at `time` [s]: temperature [K], the
 * network's conditions, matrix and rate move there.  Cannot fail. */
void cg_rosenbrock_take(struct cg_rosenbrock *step, struct cg_network *network,
                        const struct cg_drive *drive, double time,
                        double *temperature);

#endif
