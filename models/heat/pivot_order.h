/* The order in which the nodes of a network are eliminated: next is always the
 * one with the fewest neighbours left, which then become neighbours of each
 * other.  W. F. Tinney and J. W. Walker, "Direct solutions of sparse network
 * equations by optimally ordered triangular factorization", Proc. IEEE 55
 * (1967), scheme 2; A. George and J. Liu, "Computer Solution of Large Sparse
 * Positive Definite Systems" (1981), ch. 5.
 */
#ifndef CG_PIVOT_ORDER_H
#define CG_PIVOT_ORDER_H

#include <stddef.h>
#include <stdint.h>

#include "status.h"

struct cg_pivot_order {
    size_t nodes, entries; /* entries: of the factor, without its diagonal */
    uint32_t *node;        /* [nodes] in the order of elimination */
    uint32_t *place;       /* [nodes] of a node in that order */
    size_t *start;         /* [nodes + 1] of a row in `column` */
    uint32_t *column;      /* [entries] places eliminated before that of the
                              row, and its neighbours then; rising */
};

/* Of `links` links between nodes a[l] and b[l] != a[l]; of equals the first
 * node comes first.  Caller frees.  Fails with CG_NO_MEMORY. */
enum cg_status cg_pivot_order_find(size_t nodes, size_t links, const size_t *a,
                                   const size_t *b,
                                   struct cg_pivot_order *order,
                                   struct cg_error *error);
void cg_pivot_order_free(
    struct cg_pivot_order *order); /* accepts a zeroed one */

#endif
