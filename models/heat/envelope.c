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
#include <stdlib.h>
#include <string.h>

enum {
    PANEL = 6,     /* long rows taken together; measured best of 4 to 16 */
    LONG_ROW = 24, /* columns from which the detour by the panel pays */
    SIGHT = 64,    /* how many rows ahead a long row looks for company */
    SUMS = 8       /* sums kept apart in long dot products */
};

struct cg_envelope {
    size_t n;
    size_t *first;    /* [n] first stored column of the row */
    size_t *start;    /* [n + 1] where the row begins in `entry` */
    double *entry;    /* rows end to end without their diagonals */
    double *diagonal; /* [n] a_ii, then d_i */
    double *inverse;  /* [n] 1 / d_i */
    double *work;     /* [n] the row g being factored */
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
    free(envelope->work);
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
    made->work = calloc(n + 1, sizeof *made->work);
    made->swept = calloc(n + 1, sizeof *made->swept);
    made->panel = calloc(n + 1, sizeof *made->panel);
    if (made->first == NULL || made->start == NULL || made->entry == NULL ||
        made->diagonal == NULL || made->inverse == NULL || made->work == NULL ||
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
        envelope->entry[envelope->start[row] + column - envelope->first[row]] +=
            value;
}

/* Adds up the separate sums of a dot product. */
static inline double gather(const double *sum)
{
    return ((sum[0] + sum[2]) + (sum[4] + sum[6])) +
           ((sum[1] + sum[3]) + (sum[5] + sum[7]));
}

/* value - sum a b.  The last terms come last and singly: they are the ones
 * just computed, and the earlier sums need not wait for them.  They are
 * written out because compilers turn a short loop into vector loads, which
 * stall on numbers just stored one by one. */
static inline double minus_dot(double value, const double *a, const double *b,
                               size_t n)
{
    size_t k = 0;
    if (n >= 12) {
        double sum[SUMS] = {0};
        for (; k + SUMS <= n; k += SUMS) {
#pragma omp simd
            for (size_t p = 0; p < SUMS; p++)
                sum[p] += a[k + p] * b[k + p];
        }
        value -= gather(sum);
    }
    for (; k + 3 <= n; k += 3) {
        value -= a[k] * b[k];
        value -= a[k + 1] * b[k + 1];
        value -= a[k + 2] * b[k + 2];
    }
    if (k < n)
        value -= a[k] * b[k];
    if (k + 1 < n)
        value -= a[k + 1] * b[k + 1];
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
    size_t end = i + SIGHT < envelope->n ? i + SIGHT : envelope->n;
    for (size_t r = i; r < end && count < PANEL; r++)
        if (envelope->first[r] + LONG_ROW <= i && envelope->swept[r] == 0)
            rows[count++] = r;
    if (count > 1)
        sweep_panel(envelope, rows, count, i);
}

/* One line of forward substitution, value - sum_k l_jk y_k over k < j, where
 * y[0] stands for column `first`.  The newest y comes in a register (`last`):
 * waiting for it to return from memory would double the time. */
static inline double substitute(const struct cg_envelope *envelope, size_t j,
                                size_t first, const double *y, double last,
                                double value)
{
    size_t other = envelope->first[j];
    size_t k = other > first ? other : first;
    if (k == j)
        return value;
    const double *row = envelope->entry + envelope->start[j];
    value = minus_dot(value, row + (k - other), y + (k - first), j - 1 - k);
    return value - row[j - 1 - other] * last;
}

/* For a row that holds g: g to `g`, l = g / d to `row`; returns
 * value - sum g l. */
static double divide(double *restrict row, double *restrict g,
                     const double *restrict inverse, size_t n, double value)
{
    size_t k = 0;
    double sum[SUMS] = {0};
    for (; k + SUMS <= n; k += SUMS) {
#pragma omp simd
        for (size_t p = 0; p < SUMS; p++) {
            g[k + p] = row[k + p];
            row[k + p] *= inverse[k + p];
            sum[p] += row[k + p] * g[k + p];
        }
    }
    value -= gather(sum);
    for (; k < n; k++) {
        g[k] = row[k];
        row[k] *= inverse[k];
        value -= row[k] * g[k];
    }
    return value;
}

/* g_ij for the columns the panel has not done, then l_ij and d_i. */
static void factor_row(struct cg_envelope *envelope, size_t i)
{
    size_t first = envelope->first[i];
    double *row = envelope->entry + envelope->start[i];
    double *g = envelope->work;
    double pivot = envelope->diagonal[i], last = 0;
    size_t j = first;
    if (envelope->swept[i] > first) {
        j = envelope->swept[i];
        pivot = divide(row, g, envelope->inverse + first, j - first, pivot);
        last = g[j - 1 - first];
    }
    for (; j < i; j++) {
        last = substitute(envelope, j, first, g, last, row[j - first]);
        g[j - first] = last;
        row[j - first] = last * envelope->inverse[j];
        pivot -= last * row[j - first];
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

void cg_envelope_take(struct cg_envelope *envelope,
                      const struct cg_envelope *from)
{
    size_t n = from->n;
    assert(envelope->n == n && envelope->start[n] == from->start[n]);
    memcpy(envelope->entry, from->entry, from->start[n] * sizeof(double));
    memcpy(envelope->diagonal, from->diagonal, n * sizeof(double));
    memcpy(envelope->inverse, from->inverse, n * sizeof(double));
}

/* out -= a times value */
static inline void minus_scaled(double *restrict out, const double *restrict a,
                                double value, size_t n)
{
    for (size_t k = 0; k < n; k++)
        out[k] -= a[k] * value;
}

/* Backward substitution, two rows at a time: half the trips to memory for the
 * entries of x that both change. */
static void solve_backward(const struct cg_envelope *envelope, double *x)
{
    size_t i = envelope->n;
    for (; i >= 2; i -= 2) {
        size_t lo = i - 2, hi = i - 1;
        size_t first_lo = envelope->first[lo], first_hi = envelope->first[hi];
        const double *row_lo = envelope->entry + envelope->start[lo];
        const double *row_hi = envelope->entry + envelope->start[hi];
        double value_hi = x[hi];
        if (first_hi == hi) {
            minus_scaled(x + first_lo, row_lo, x[lo], lo - first_lo);
            continue;
        }
        double value_lo = x[lo] - row_hi[lo - first_hi] * value_hi;
        x[lo] = value_lo;
        size_t both = first_lo > first_hi ? first_lo : first_hi;
        minus_scaled(x + first_lo, row_lo, value_lo, both - first_lo);
        minus_scaled(x + first_hi, row_hi, value_hi, both - first_hi);
        const double *restrict a = row_lo + (both - first_lo);
        const double *restrict b = row_hi + (both - first_hi);
        double *restrict out = x + both;
        for (size_t k = 0; k < lo - both; k++)
            out[k] -= a[k] * value_lo + b[k] * value_hi;
    }
}

void cg_envelope_solve(const struct cg_envelope *envelope, double *x)
{
    size_t n = envelope->n;
    double last = 0;
    for (size_t i = 0; i < n; i++) {
        last = substitute(envelope, i, 0, x, last, x[i]);
        x[i] = last;
    }
    for (size_t i = 0; i < n; i++)
        x[i] *= envelope->inverse[i];
    solve_backward(envelope, x);
}
