/* Direct solution of symmetric positive definite systems stored by envelope
 * (skyline): row i is kept from its first non-zero up to the diagonal, and
 * the factors L D L^T fill exactly the same envelope.
 * A. Jennings, "A compact storage scheme for the solution of symmetric linear
 * simultaneous equations", Computer Journal 9 (1966); A. George and J. Liu,
 * "Computer Solution of Large Sparse Positive Definite Systems" (1981), ch. 4.
 *
 * With 1-D bodies numbered end to end the rows are short, so that both factor
 * and solve cost in proportion to the number of cells.
 */
#ifndef CG_ENVELOPE_H
#define CG_ENVELOPE_H

#include <stddef.h>

#include "status.h"

struct cg_envelope; /* opaque: invariant first[i] <= i, offsets match */

/* An envelope for `n` rows whose first stored column is first[i] <= i.
 * Caller frees.  Fails with CG_NO_MEMORY. */
enum cg_status cg_envelope_create(size_t n, const size_t *first,
                                  struct cg_envelope **envelope,
                                  struct cg_error *error);
/* Accepts NULL. */
void cg_envelope_free(struct cg_envelope *envelope);

/* Number of stored entries [1]. */
size_t cg_envelope_size(const struct cg_envelope *envelope);

/* All entries to zero, ready for adding. */
void cg_envelope_clear(struct cg_envelope *envelope);

/* Adds `value` to entry (row, column); either triangle may be named; the entry
 * must lie in the envelope (assert). */
void cg_envelope_add(struct cg_envelope *envelope, size_t row, size_t column,
                     double value);

/* Factors in place into L D L^T.  CG_NUMERICAL when a pivot is not positive
 * (the text names the row). */
enum cg_status cg_envelope_factor(struct cg_envelope *envelope,
                                  struct cg_error *error);

/* Takes over the factors of an envelope of the same shape. */
void cg_envelope_take(struct cg_envelope *envelope,
                      const struct cg_envelope *from);

/* Solves in place with the factors: x holds the right-hand side on entry and
 * the solution on return, n entries.  Cannot fail once factored. */
void cg_envelope_solve(const struct cg_envelope *envelope, double *x);

#endif
