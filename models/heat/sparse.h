/* Direct solution of the symmetric positive definite systems of a network by
 * L D L^T, of which only what is not zero is kept.  Nodes are eliminated in the
 * order of pivot_order.h, so that a body costs in proportion to its cells, and
 * one that touches many cells of another (a ring that passes all stations of
 * the liner) costs them once, at the end.  A. George and J. Liu, "Computer
 * Solution of Large Sparse Positive Definite Systems" (1981), ch. 5.
 */
#ifndef CG_SPARSE_H
#define CG_SPARSE_H

#include <stddef.h>

#include "status.h"

struct cg_sparse; /* opaque: a pattern, and the factors it last had */

/* The pattern of n rows with entries at (a[l], b[l]), a[l] != b[l], and their
 * mirror images; a pair may come more than once.  Caller frees.  Fails with
 * CG_NO_MEMORY. */
enum cg_status cg_sparse_create(size_t n, size_t links, const size_t *a,
                                const size_t *b, struct cg_sparse **sparse,
                                struct cg_error *error);
/* Accepts NULL. */
void cg_sparse_free(struct cg_sparse *sparse);

/* Number of stored entries [1]. */
size_t cg_sparse_size(const struct cg_sparse *sparse);

/* Factors the matrix with that diagonal [n] and with -scale link[l] added up at
 * (a[l], b[l]).  CG_NUMERICAL when a pivot is not positive (the text names the
 * row). */
enum cg_status cg_sparse_factor(struct cg_sparse *sparse,
                                const double *diagonal, const double *link,
                                double scale, struct cg_error *error);

/* Takes over the factors of one of the same pattern.  Cannot fail. */
void cg_sparse_take(struct cg_sparse *sparse, const struct cg_sparse *from);

/* Solves in place with the factors: x holds the right-hand side on entry and
 * the solution on return, n entries.  Cannot fail once factored. */
void cg_sparse_solve(const struct cg_sparse *sparse, double *x);

#endif
