/* The matrix  share C + time K  of a thermal network, factored and kept:
 * C the heat capacities on the diagonal, K the conductances.  An implicit time
 * step needs share 1 and some time; the settled state needs share 0.
 */
#ifndef CG_HEAT_MATRIX_H
#define CG_HEAT_MATRIX_H

#include <stdbool.h>

#include "network.h"
#include "status.h"

struct cg_heat_matrix; /* opaque: factors match the conductances last read */

/* A matrix with space for the network's nodes and links; nothing is read yet.
 * Caller frees.  Fails with CG_NO_MEMORY. */
enum cg_status cg_heat_matrix_create(const struct cg_network *network,
                                     struct cg_heat_matrix **matrix,
                                     struct cg_error *error);
/* Accepts NULL. */
void cg_heat_matrix_free(struct cg_heat_matrix *matrix);

/* Reads the network's conductances [W/K].  Kept factors stay good when none of
 * them has changed.  Cannot fail. */
void cg_heat_matrix_read(struct cg_heat_matrix *matrix,
                         const struct cg_network *network);

/* Factors share [1] x C + time [s] x K of the conductances last read, unless
 * just these factors are at hand.  CG_NUMERICAL when the matrix is not
 * positive definite (the text gives the row, which is the node's index). */
enum cg_status cg_heat_matrix_factor(struct cg_heat_matrix *matrix,
                                     const struct cg_network *network,
                                     double share, double time,
                                     struct cg_error *error);

/* Whether factors for this share and time are at hand: of the conductances last
 * read, which need not be the network's present ones.  Cannot fail. */
bool cg_heat_matrix_has(const struct cg_heat_matrix *matrix, double share,
                        double time);

/* Takes over conductances and factors from the matrix of a network with the
 * same nodes and links.  Cannot fail. */
void cg_heat_matrix_take(struct cg_heat_matrix *matrix,
                         const struct cg_heat_matrix *from);

/* Solves in place, nodes entries.  Cannot fail once factored. */
void cg_heat_matrix_solve(struct cg_heat_matrix *matrix, double *x);

/* How often the matrix was factored, and solved with, since its creation. */
long cg_heat_matrix_factorings(const struct cg_heat_matrix *matrix);
long cg_heat_matrix_solutions(const struct cg_heat_matrix *matrix);

#endif
