/* L D L^T factors of a symmetric positive definite matrix in its envelope.
 *
 * Row by row (A. Jennings, Computer Journal 9, 1966), with g_ij = l_ij d_j:
 *
 *   g_ij = a_ij - sum_k l_jk g_ik      k from max(first_i, first_j) to j-1
 *   l_ij = g_ij / d_j
 *   d_i  = a_ii - sum_j g_ij l_ij
 *
 * The first line is a forward substitution with the rows above, one long
 * chain of dependent sums.  A body that touches many cells of another (a ring
 * that passes all liner stations) has a long row; several of them are taken
 * through the substitution side by side, so that the processor's vector units
 * have independent work.
 */
#include "envelope.h"

#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum {
    PANEL = 8,    /* long rows taken together */
    LONG_ROW = 24 /* columns from which the detour by the panel pays */
};

struct cg_envelope {
    size_t n;
    size_t *first;    /* [n] first stored column of the row */
    size_t *start;    /* [n + 1] where the row begins in `entry` */
    double *entry;    /* rows end to end without their diagonals */
    double *diagonal; /* [n] a_ii, then d_i */
    double *inverse;  /* [n] 1 / d_i */
    size_t *swept;    /* [n] columns already substituted while factoring */
    double (*panel)[PANEL]; /* [n] long rows side by side */
};

void cg_envelope_free(struct cg_envelope *envelope)
{
    if (envelope == NULL)
        return;
    free(envelope->first);
    free(envelope->start);
    free(envelope->entry);
    free(envelope->diagonal);
    free(envelope->inverse);
    free(envelope->swept);
    free(envelope->panel);
    free(envelope);
}

enum cg_status cg_envelope_create(size_t n, const size_t *first,
                                  struct cg_envelope **envelope,
                                  struct cg_error *error)
{
    size_t size = 0;
    for (size_t i = 0; i < n; i++) {
        assert(first[i] <= i);
        size += i - first[i];
    }
    struct cg_envelope *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto no_memory;
    made->n = n;
    made->first = calloc(n + 1, sizeof *made->first);
    made->start = calloc(n + 1, sizeof *made->start);
    made->entry = calloc(size + 1, sizeof *made->entry);
    made->diagonal = calloc(n + 1, sizeof *made->diagonal);
    made->inverse = calloc(n + 1, sizeof *made->inverse);
    made->swept = calloc(n + 1, sizeof *made->swept);
    made->panel = calloc(n + 1, sizeof *made->panel);
    if (made->first == NULL || made->start == NULL || made->entry == NULL ||
        made->diagonal == NULL || made->inverse == NULL ||
        made->swept == NULL || made->panel == NULL)
        goto no_memory;
    for (size_t i = 0; i < n; i++) {
        made->first[i] = first[i];
        made->start[i + 1] = made->start[i] + (i - first[i]);
    }
    *envelope = made;
    return CG_OK;

no_memory:
    cg_envelope_free(made);
    return cg_error_set(error, CG_NO_MEMORY,
                        "no memory for a matrix of %zu rows", n);
}

size_t cg_envelope_size(const struct cg_envelope *envelope)
{
    return envelope->start[envelope->n] + envelope->n;
}

void cg_envelope_clear(struct cg_envelope *envelope)
{
    size_t n = envelope->n;
    memset(envelope->entry, 0, envelope->start[n] * sizeof(double));
    memset(envelope->diagonal, 0, n * sizeof(double));
}

void cg_envelope_add(struct cg_envelope *envelope, size_t row, size_t column,
                     double value)
{
    if (row < column) {
        size_t swap = row;
        row = column;
        column = swap;
    }
    assert(row < envelope->n && column >= envelope->first[row]);
    if (row == column)
        envelope->diagonal[row] += value;
    else
        envelope->entry[envelope->start[row] + column -
                        envelope->first[row]] += value;
}

/* value - sum a b.  The last terms come last and singly: they are the ones
 * just computed, and the earlier sums need not wait for them. */
static inline double minus_dot(double value, const double *restrict a,
                               const double *restrict b, size_t n)
{
    size_t k = 0;
    if (n >= 12) {
        double s0 = 0, s1 = 0, s2 = 0, s3 = 0;
        double s4 = 0, s5 = 0, s6 = 0, s7 = 0;
        for (; k + 8 <= n; k += 8) {
            s0 += a[k] * b[k];
            s1 += a[k + 1] * b[k + 1];
            s2 += a[k + 2] * b[k + 2];
            s3 += a[k + 3] * b[k + 3];
            s4 += a[k + 4] * b[k + 4];
            s5 += a[k + 5] * b[k + 5];
            s6 += a[k + 6] * b[k + 6];
            s7 += a[k + 7] * b[k + 7];
        }
        value -= ((s0 + s2) + (s4 + s6)) + ((s1 + s3) + (s5 + s7));
    }
    for (; k < n; k++)
        value -= a[k] * b[k];
    return value;
}

/* Forward substitution of up to PANEL long rows through all columns below
 * `end`; rows above `end` are final. */
static void sweep_panel(struct cg_envelope *envelope, const size_t *rows,
                        size_t count, size_t end)
{
    double(*panel)[PANEL] = envelope->panel;
    size_t from = end;
    for (size_t p = 0; p < count; p++)
        if (envelope->first[rows[p]] < from)
            from = envelope->first[rows[p]];
    memset(panel[from], 0, (end - from) * sizeof *panel);
    for (size_t p = 0; p < count; p++) {
        size_t first = envelope->first[rows[p]];
        const double *row = envelope->entry + envelope->start[rows[p]];
        for (size_t j = first; j < end; j++)
            panel[j][p] = row[j - first];
    }
    for (size_t j = from; j < end; j++) {
        size_t first = envelope->first[j];
        size_t k = first > from ? first : from;
        const double *row = envelope->entry + envelope->start[j];
        double sum[PANEL];
        memcpy(sum, panel[j], sizeof sum);
        for (; k < j; k++) {
            double factor = row[k - first];
#pragma omp simd
            for (size_t p = 0; p < PANEL; p++)
                sum[p] -= factor * panel[k][p];
        }
        memcpy(panel[j], sum, sizeof sum);
    }
    for (size_t p = 0; p < count; p++) {
        size_t first = envelope->first[rows[p]];
        double *row = envelope->entry + envelope->start[rows[p]];
        for (size_t j = first; j < end; j++)
            row[j - first] = panel[j][p];
        envelope->swept[rows[p]] = end;
    }
}

/* Takes row i and the next long rows together up to column i - 1. */
static void sweep_long_rows(struct cg_envelope *envelope, size_t i)
{
    size_t rows[PANEL];
    size_t count = 0;
    for (size_t r = i; r < envelope->n && count < PANEL; r++)
        if (envelope->first[r] + LONG_ROW <= i && envelope->swept[r] == 0)
            rows[count++] = r;
    if (count > 1)
        sweep_panel(envelope, rows, count, i);
}

/* g_ij for the columns the panel has not done, then l_ij and d_i. */
static void factor_row(struct cg_envelope *envelope, size_t i)
{
    size_t first = envelope->first[i];
    double *row = envelope->entry + envelope->start[i];
    size_t j = envelope->swept[i] > first ? envelope->swept[i] : first;
    for (; j < i; j++) {
        size_t other = envelope->first[j];
        const double *row_j = envelope->entry + envelope->start[j];
        size_t k = other > first ? other : first;
        if (k < j)
            row[j - first] = minus_dot(row[j - first], row_j + (k - other),
                                       row + (k - first), j - k);
    }
    double pivot = envelope->diagonal[i];
    for (j = first; j < i; j++) {
        double g = row[j - first];
        row[j - first] = g * envelope->inverse[j];
        pivot -= g * row[j - first];
    }
    envelope->diagonal[i] = pivot;
    envelope->inverse[i] = 1 / pivot;
}

enum cg_status cg_envelope_factor(struct cg_envelope *envelope,
                                  struct cg_error *error)
{
    size_t n = envelope->n;
    memset(envelope->swept, 0, n * sizeof *envelope->swept);
    for (size_t i = 0; i < n; i++) {
        if (envelope->first[i] + LONG_ROW <= i && envelope->swept[i] == 0)
            sweep_long_rows(envelope, i);
        factor_row(envelope, i);
        if (!(envelope->diagonal[i] > 0))
            return cg_error_set(error, CG_NUMERICAL,
                                "matrix not positive definite: pivot %g in "
                                "row %zu",
                                envelope->diagonal[i], i);
    }
    return CG_OK;
}

void cg_envelope_solve(const struct cg_envelope *envelope, double *x)
{
    size_t n = envelope->n;
    for (size_t i = 0; i < n; i++) {
        size_t first = envelope->first[i];
        x[i] = minus_dot(x[i], envelope->entry + envelope->start[i], x + first,
                         i - first);
    }
    for (size_t i = 0; i < n; i++)
        x[i] *= envelope->inverse[i];
    for (size_t i = n; i-- > 0;) {
        size_t first = envelope->first[i];
        const double *row = envelope->entry + envelope->start[i];
        double value = x[i];
        double *out = x + first;
        for (size_t k = 0; k < i - first; k++)
            out[k] -= row[k] * value;
    }
}
