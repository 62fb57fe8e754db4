#include "pack_newton.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { UNKNOWNS = CG_PACK_VOLUMES + CG_PACK_RINGS };
enum { NEWTON_PASSES = 12 };
typedef double matrix[UNKNOWNS][UNKNOWNS + 1];

/* Gaussian elimination with row pivoting, in place, right-hand side in column
 * n; false if singular. */
static bool solve(matrix a, size_t n)
{
    for (size_t k = 0; k < n; k++) {
        size_t best = k;
        for (size_t i = k + 1; i < n; i++)
            if (fabs(a[i][k]) > fabs(a[best][k]))
                best = i;
        if (!(fabs(a[best][k]) > 0.0))
            return false;
        for (size_t j = k; best != k && j <= n; j++) {
            double keep = a[k][j];
            a[k][j] = a[best][j];
            a[best][j] = keep;
        }
        for (size_t i = k + 1; i < n; i++) {
            double factor = a[i][k] / a[k][k];
            for (size_t j = k + 1; factor != 0.0 && j <= n; j++)
                a[i][j] -= factor * a[k][j];
        }
    }
    for (size_t k = n; k-- > 0;) {
        for (size_t j = k + 1; j < n; j++)
            a[k][n] -= a[k][j] * a[j][n];
        a[k][n] /= a[k][k];
    }
    return true;
}

/* Balance of one volume: what a flow brings, and its slopes. */
static void add_flow(const struct cg_pack_base *base,
                     const struct cg_pack_flow *flow, double seconds,
                     size_t column, const double *scale, double *row)
{
    row[base->unknowns] += seconds * flow->rate;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        row[v] -= seconds * flow->by_pressure[v] * scale[v];
    if (column > 0)
        row[column] -= seconds * flow->by_lift * scale[column];
}

/* Residual and Jacobian in scaled unknowns: pressures over `scale`, lifts over
 * the travel; each row over the size of its own unknown. */
static void assemble(const struct cg_ring_pack *pack,
                     const struct cg_pack_base *base,
                     const struct cg_pack_point *point,
                     const struct cg_pack_rates *rates, const double *scale,
                     matrix a)
{
    enum { V = CG_PACK_VOLUMES };
    double h = base->diagonal;
    size_t n = base->unknowns;
    memset(a, 0, sizeof(matrix));
    for (size_t v = 0; v < V; v++) {
        double capacity = cg_pack_capacity(pack, v);
        a[v][v] = capacity * scale[v];
        a[v][n] = base->mass[v] - capacity * point->pressure[v];
    }
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        const struct cg_pack_flow *flow = &rates->flow[f];
        if (flow->rate == 0.0)
            continue;
        size_t from = cg_pack_from[f], to = cg_pack_to[f];
        size_t column = f < CG_PACK_PORTS ? base->column[f / CG_PACK_WAYS] : 0;
        if (from != CG_PACK_CYLINDER)
            add_flow(base, flow, -h, column, scale, a[from - 1]);
        if (to != CG_PACK_CRANKCASE)
            add_flow(base, flow, h, column, scale, a[to - 1]);
    }
    for (size_t v = 0; v < V; v++) {
        double size = 1.0 / (cg_pack_capacity(pack, v) * scale[v]);
        for (size_t j = 0; j <= n; j++)
            a[v][j] *= size;
    }
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        size_t own = base->column[k];
        if (own == 0)
            continue;
        const struct cg_pack_push *push = &rates->push[k];
        double *row = a[own], size = 1.0 / scale[own];
        row[n] = (base->lift[k] - point->lift[k] +
                  h * (base->speed[k] + h * push->acceleration)) *
                 size;
        row[own] = 1.0 - h * (push->by_speed + h * push->by_lift);
        for (size_t v = 0; v < V; v++)
            row[v] = -h * h * push->by_pressure[v] * scale[v] * size;
    }
}

/* Adds the solved change to the point; flows and pushes follow along their
 * slopes, so that they belong to the new point to second order.  Returns the
 * largest relative change. */
static double apply(const struct cg_pack_base *base, matrix a,
                    const double *scale, struct cg_pack_point *point,
                    struct cg_pack_rates *rates)
{
    enum { V = CG_PACK_VOLUMES };
    size_t n = base->unknowns;
    double change[UNKNOWNS], most = 0.0;
    assert(n >= V && n <= UNKNOWNS);
    for (size_t i = 0; i < n; i++)
        most = fmax(most, fabs(a[i][n]));
    double part = most > 0.5 ? 0.5 / most : 1.0;
    for (size_t i = 0; i < n; i++)
        change[i] = part * a[i][n] * scale[i];
    for (size_t v = 0; v < V; v++)
        point->pressure[v] += change[v];
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        struct cg_pack_push *push = &rates->push[k];
        size_t own = base->column[k];
        if (own > 0) {
            double before = point->speed[k];
            point->lift[k] += change[own];
            point->speed[k] = (point->lift[k] - base->lift[k]) / base->diagonal;
            push->acceleration += push->by_lift * change[own] +
                                  push->by_speed * (point->speed[k] - before);
        }
        for (size_t v = 0; v < V; v++)
            push->acceleration += push->by_pressure[v] * change[v];
    }
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        struct cg_pack_flow *flow = &rates->flow[f];
        if (flow->rate == 0.0)
            continue;
        size_t own = f < CG_PACK_PORTS ? base->column[f / CG_PACK_WAYS] : 0;
        if (own > 0)
            flow->rate += flow->by_lift * change[own];
        for (size_t v = 0; v < V; v++)
            flow->rate += flow->by_pressure[v] * change[v];
    }
    return most;
}

bool cg_pack_newton(const struct cg_ring_pack *pack,
                    const struct cg_pack_node *at,
                    const struct cg_pack_base *base, double enough,
                    struct cg_pack_point *point, struct cg_pack_rates *rates)
{
    matrix a;
    double scale[UNKNOWNS];
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        if (base->column[k] > 0)
            scale[base->column[k]] = pack->ring[k].travel;
    for (int pass = 0; pass < NEWTON_PASSES; pass++) {
        for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
            scale[v] = point->pressure[v];
        cg_pack_rates(pack, at, point, rates);
        assemble(pack, base, point, rates, scale, a);
        if (!solve(a, base->unknowns))
            return false;
        double change = apply(base, a, scale, point, rates);
        if (!(change < 1e6)) /* NaN too */
            return false;
        if (change < enough)
            return true;
    }
    return false;
}
