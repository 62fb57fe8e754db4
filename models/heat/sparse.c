/* Column by column, in the order of the pivots, with g_jk = l_jk d_k:
 *
 *   g_ij = a_ij - sum_k l_ik g_jk      k < j where l_jk is not zero
 *   d_j  = g_jj,  l_ij = g_ij / d_j
 *
 * Where l_ik and l_jk are not zero, l_ij is not either: a column's sums fill
 * its own pattern and nothing else.
 */
#include "sparse.h"

#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "pivot_order.h"

struct cg_sparse {
    size_t n, links, entries;
    struct cg_pivot_order order;
    size_t *start;   /* [n + 1] where a column of L begins */
    uint32_t *row;   /* [entries] below the diagonal, rising */
    double *entry;   /* [entries] of L */
    uint32_t *at;    /* [entries] where the entries of a row of L stand */
    size_t *link_at; /* [links] entry that a link is added to */
    double *pivot;   /* [n] d */
    double *inverse; /* [n] 1 / d */
    double *work;    /* [n] */
};

void cg_sparse_free(struct cg_sparse *sparse)
{
    if (sparse == NULL)
        return;
    cg_pivot_order_free(&sparse->order);
    free(sparse->start);
    free(sparse->row);
    free(sparse->entry);
    free(sparse->at);
    free(sparse->link_at);
    free(sparse->pivot);
    free(sparse->inverse);
    free(sparse->work);
    free(sparse);
}

/* Columns from the rows of the order. */
static void fill_columns(struct cg_sparse *sparse)
{
    const struct cg_pivot_order *order = &sparse->order;
    size_t n = sparse->n, *start = sparse->start;
    for (size_t q = 0; q < sparse->entries; q++)
        start[order->column[q] + 1]++;
    for (size_t k = 0; k < n; k++)
        start[k + 1] += start[k];
    for (size_t i = 0; i < n; i++)
        for (size_t q = order->start[i]; q < order->start[i + 1]; q++) {
            size_t p = start[order->column[q]]++;
            sparse->row[p] = (uint32_t)i;
            sparse->at[q] = (uint32_t)p;
        }
    for (size_t k = n; k > 0; k--) /* each has moved on to the next */
        start[k] = start[k - 1];
    start[0] = 0;
}

static size_t entry_of(const struct cg_sparse *sparse, size_t a, size_t b)
{
    size_t i = sparse->order.place[a], j = sparse->order.place[b];
    size_t row = i > j ? i : j, column = i > j ? j : i;
    size_t p = sparse->start[column];
    while (sparse->row[p] != row)
        p++;
    return p;
}

enum cg_status cg_sparse_create(size_t n, size_t links, const size_t *a,
                                const size_t *b, struct cg_sparse **sparse,
                                struct cg_error *error)
{
    struct cg_sparse *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto no_memory;
    enum cg_status status =
        cg_pivot_order_find(n, links, a, b, &made->order, error);
    if (status != CG_OK) {
        cg_sparse_free(made);
        return status;
    }
    made->n = n;
    made->links = links;
    made->entries = made->order.entries;
    made->start = calloc(n + 1, sizeof *made->start);
    made->row = calloc(made->entries + 1, sizeof *made->row);
    made->entry = calloc(made->entries + 1, sizeof *made->entry);
    made->at = calloc(made->entries + 1, sizeof *made->at);
    made->link_at = calloc(links + 1, sizeof *made->link_at);
    made->pivot = calloc(n + 1, sizeof *made->pivot);
    made->inverse = calloc(n + 1, sizeof *made->inverse);
    made->work = calloc(n + 1, sizeof *made->work);
    if (made->start == NULL || made->row == NULL || made->entry == NULL ||
        made->at == NULL || made->link_at == NULL || made->pivot == NULL ||
        made->inverse == NULL || made->work == NULL)
        goto no_memory;
    fill_columns(made);
    for (size_t l = 0; l < links; l++)
        made->link_at[l] = entry_of(made, a[l], b[l]);
    *sparse = made;
    return CG_OK;

no_memory:
    cg_sparse_free(made);
    return cg_error_set(error, CG_NO_MEMORY,
                        "no memory for a matrix of %zu rows", n);
}

size_t cg_sparse_size(const struct cg_sparse *sparse)
{
    return sparse->entries + sparse->n;
}

/* out[row] -= entry times value, where the rows are listed */
static inline void minus_column(const struct cg_sparse *sparse, size_t from,
                                size_t to, double value, double *restrict out)
{
    const uint32_t *restrict row = sparse->row;
    const double *restrict entry = sparse->entry;
    size_t p = from;
    for (; p + 2 <= to; p += 2) {
        out[row[p]] -= entry[p] * value;
        out[row[p + 1]] -= entry[p + 1] * value;
    }
    if (p < to)
        out[row[p]] -= entry[p] * value;
}

/* Column j, with its sums in `work`; returns the pivot. */
static double sum_column(struct cg_sparse *sparse, size_t j, double pivot)
{
    const struct cg_pivot_order *order = &sparse->order;
    for (size_t q = order->start[j]; q < order->start[j + 1]; q++) {
        size_t k = order->column[q], p = sparse->at[q];
        double g = sparse->entry[p] * sparse->pivot[k];
        pivot -= sparse->entry[p] * g;
        minus_column(sparse, p + 1, sparse->start[k + 1], g, sparse->work);
    }
    return pivot;
}

enum cg_status cg_sparse_factor(struct cg_sparse *sparse,
                                const double *diagonal, const double *link,
                                double scale, struct cg_error *error)
{
    double *entry = sparse->entry, *work = sparse->work;
    memset(entry, 0, sparse->entries * sizeof *entry);
    for (size_t l = 0; l < sparse->links; l++)
        entry[sparse->link_at[l]] -= scale * link[l];
    for (size_t j = 0; j < sparse->n; j++) {
        size_t from = sparse->start[j], to = sparse->start[j + 1];
        for (size_t p = from; p < to; p++)
            work[sparse->row[p]] = entry[p];
        double pivot = sum_column(sparse, j, diagonal[sparse->order.node[j]]);
        if (!(pivot > 0))
            return cg_error_set(error, CG_NUMERICAL,
                                "matrix not positive definite: pivot %g in "
                                "row %u",
                                pivot, (unsigned)sparse->order.node[j]);
        double inverse = 1 / pivot;
        sparse->pivot[j] = pivot;
        sparse->inverse[j] = inverse;
        for (size_t p = from; p < to; p++)
            entry[p] = work[sparse->row[p]] * inverse;
    }
    return CG_OK;
}

void cg_sparse_take(struct cg_sparse *sparse, const struct cg_sparse *from)
{
    size_t n = from->n;
    assert(sparse->n == n && sparse->entries == from->entries);
    memcpy(sparse->entry, from->entry, from->entries * sizeof(double));
    memcpy(sparse->pivot, from->pivot, n * sizeof(double));
    memcpy(sparse->inverse, from->inverse, n * sizeof(double));
}

/* Sum of the entries of row i of L times x, four at a time. */
static inline double row_times(const struct cg_sparse *sparse, size_t i,
                               const double *x)
{
    const uint32_t *at = sparse->at, *column = sparse->order.column;
    const double *entry = sparse->entry;
    size_t q = sparse->order.start[i], end = sparse->order.start[i + 1];
    double even = 0, odd = 0;
    for (; q + 4 <= end; q += 4) {
        even += entry[at[q]] * x[column[q]];
        odd += entry[at[q + 1]] * x[column[q + 1]];
        even += entry[at[q + 2]] * x[column[q + 2]];
        odd += entry[at[q + 3]] * x[column[q + 3]];
    }
    for (; q < end; q++)
        even += entry[at[q]] * x[column[q]];
    return even + odd;
}

/* The same of column k. */
static inline double column_times(const struct cg_sparse *sparse, size_t k,
                                  const double *x)
{
    const uint32_t *row = sparse->row;
    const double *entry = sparse->entry;
    size_t p = sparse->start[k], end = sparse->start[k + 1];
    double even = 0, odd = 0;
    for (; p + 4 <= end; p += 4) {
        even += entry[p] * x[row[p]];
        odd += entry[p + 1] * x[row[p + 1]];
        even += entry[p + 2] * x[row[p + 2]];
        odd += entry[p + 3] * x[row[p + 3]];
    }
    for (; p < end; p++)
        even += entry[p] * x[row[p]];
    return even + odd;
}

void cg_sparse_solve(const struct cg_sparse *sparse, double *x)
{
    const uint32_t *node = sparse->order.node;
    double *work = sparse->work;
    for (size_t i = 0; i < sparse->n; i++)
        work[i] = x[node[i]] - row_times(sparse, i, work);
    for (size_t k = sparse->n; k-- > 0;) {
        double value =
            work[k] * sparse->inverse[k] - column_times(sparse, k, work);
        x[node[k]] = work[k] = value;
    }
}
