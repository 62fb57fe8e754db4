/* The transient of a network whose conditions are held, as a series in time.
 *
 * With d the distance from the settled state, d' = -A d, A = C^-1 K.  Take a
 * time a and  X = a A (1 + a A)^-1,  whose eigenvalues x lie in [0, 1).  Then
 *
 *   exp(-A t) = exp(-(t/a) X / (1 - X))
 *
 * and the function exp(-s x / (1 - x)) is smooth on the whole of [0, 1], its
 * end included, so that its Chebyshev series converges fast and evenly for
 * slow and stiff parts alike (W. J. Cody, G. Meinardus and R. S. Varga,
 * "Chebyshev rational approximations to e^-x in [0, inf)", J. Approx. Theory 2
 * (1969), on such approximations; J. P. Boyd, "Chebyshev and Fourier Spectral
 * Methods" (2001), on the mapping).  To need no settled state, the series is
 * taken of (1 - exp) / x, applied to u = X d = -a (C + a K)^-1 r:
 *
 *   T(t) = T0 + sum_k c_k(t/a) w_k
 *   w_0 = a (C + a K)^-1 r0, w_k = T*_k(X) w_0,
 *   T*_k the Chebyshev polynomials on [0, 1]
 *
 * X w = w - (C + a K)^-1 C w: one factored matrix and one solution a term give
 * the temperatures at every time up to the horizon.
 */
#ifndef CG_CHEBYSHEV_H
#define CG_CHEBYSHEV_H

#include "heat_matrix.h"
#include "network.h"
#include "status.h"

struct cg_chebyshev; /* opaque: the vectors and their number match a, horizon */

/* Workspace for a network of fixed shape; `matrix` must outlive it.  Caller
 * frees.  Fails with CG_NO_MEMORY. */
enum cg_status cg_chebyshev_create(const struct cg_network *network,
                                   struct cg_heat_matrix *matrix,
                                   struct cg_chebyshev **series,
                                   struct cg_error *error);
/* Accepts NULL. */
void cg_chebyshev_free(struct cg_chebyshev *series);

/* The series from temperature [K] and net heat rate [W] of the network, whose
 * conductances the matrix has read, for times from `first` to *horizon [s].
 * Where more terms than there is space for would be needed to keep the error at
 * any node at these times below tolerance [K], sets *horizon to 0: the caller
 * then tries a shorter one.  *worst is the node of the largest entry of the
 * last term.  Fails as cg_heat_matrix_factor does. */
enum cg_status cg_chebyshev_begin(struct cg_chebyshev *series,
                                  const struct cg_network *network,
                                  const double *temperature, const double *rate,
                                  double tolerance, double first,
                                  double *horizon, size_t *worst,
                                  struct cg_error *error);

/* Temperatures [K] at `time` [s] after the start, up to the horizon.  Cannot
 * fail. */
void cg_chebyshev_at(const struct cg_chebyshev *series, double time,
                     double *temperature);

/* Mean temperatures [K] from the start to `time` [s].  Their net heat times
 * that time is, to rounding, the heat stored by cg_chebyshev_at(time).  Cannot
 * fail. */
void cg_chebyshev_mean(const struct cg_chebyshev *series, double time,
                       double *temperature);

#endif
