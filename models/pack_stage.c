#include "pack_stage.h"

#include <math.h>
#include <string.h>

enum { NEWTON_PASSES = 12 };
/* Relative change after which a stage is solved: what is left is of its square,
 * far below the error of a step. */
#define NEWTON_ENOUGH 1e-4

/* The method: diagonal, the weights of its stages (the last row is the step),
 * their places, and the second-order weights of the first two. */
#define DIAGONAL 0.43586652150845899942
#define FIRST (-0.25 * (DIAGONAL * (6.0 * DIAGONAL - 16.0) + 1.0))
#define SECOND (0.25 * (DIAGONAL * (6.0 * DIAGONAL - 20.0) + 5.0))
static const double weight[CG_PACK_STAGES][CG_PACK_STAGES] = {
    {DIAGONAL, 0.0, 0.0},
    {0.5 * (1.0 - DIAGONAL), DIAGONAL, 0.0},
    {FIRST, SECOND, DIAGONAL}};
static const double place_of[CG_PACK_STAGES] = {
    DIAGONAL, 0.5 * (1.0 + DIAGONAL), 1.0};
static const double lower_order[CG_PACK_STAGES] = {
    DIAGONAL / (1.0 - DIAGONAL),
    (1.0 - 2.0 * DIAGONAL) / (1.0 - DIAGONAL), 0.0};

/* What one stage starts from.  Unknowns: three pressures, then the lifts of
 * the rings that are free. */
struct base {
    double mass[CG_PACK_VOLUMES];
    double lift[CG_PACK_RINGS], speed[CG_PACK_RINGS];
    double diagonal;            /* step times DIAGONAL [s] */
    size_t column[CG_PACK_RINGS]; /* of a free ring; 0: seated */
    size_t unknowns;
};

typedef double cg_pack_matrix[CG_PACK_UNKNOWNS][CG_PACK_UNKNOWNS + 1];

/* Gaussian elimination with row pivoting, in place, right-hand side in column
 * n; false if singular. */
static bool solve(cg_pack_matrix a, size_t n)
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
static void add_flow(const struct base *base, const struct cg_pack_flow *flow,
                     double seconds, size_t column, const double *scale,
                     double *row)
{
    row[base->unknowns] += seconds * flow->rate;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        row[v] -= seconds * flow->by_pressure[v] * scale[v];
    if (column > 0)
        row[column] -= seconds * flow->by_lift * scale[column];
}

/* Residual and Jacobian in scaled unknowns: pressures over `scale`, lifts over
 * the travel; each row over the size of its own unknown. */
static void assemble(const struct cg_ring_pack *pack, const struct base *base,
                     const struct cg_pack_point *point,
                     const struct cg_pack_rates *rates, const double *scale,
                     cg_pack_matrix a)
{
    enum { V = CG_PACK_VOLUMES };
    double h = base->diagonal;
    size_t n = base->unknowns;
    memset(a, 0, sizeof(cg_pack_matrix));
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
        size_t column =
            f < CG_PACK_PORTS ? base->column[f / CG_PACK_WAYS] : 0;
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
                  h * (base->speed[k] + h * push->rate)) * size;
        row[own] = 1.0 - h * (push->by_speed + h * push->by_lift);
        for (size_t v = 0; v < V; v++)
            row[v] = -h * h * push->by_pressure[v] * scale[v] * size;
    }
}

/* Adds the solved change to the point; flows and pushes follow along their
 * slopes, so that they belong to the new point to second order.  Returns the
 * largest relative change. */
static double apply(const struct base *base, cg_pack_matrix a,
                    const double *scale, struct cg_pack_point *point,
                    struct cg_pack_rates *rates)
{
    enum { V = CG_PACK_VOLUMES };
    size_t n = base->unknowns;
    double change[CG_PACK_UNKNOWNS], most = 0.0;
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
            point->speed[k] =
                (point->lift[k] - base->lift[k]) / base->diagonal;
            push->rate += push->by_lift * change[own] +
                          push->by_speed * (point->speed[k] - before);
        }
        for (size_t v = 0; v < V; v++)
            push->rate += push->by_pressure[v] * change[v];
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

/* Newton's method from the guess in `point`. */
static bool settle(const struct cg_ring_pack *pack,
                   const struct cg_pack_node *at, const struct base *base,
                   struct cg_pack_point *point, struct cg_pack_rates *rates)
{
    cg_pack_matrix a;
    double scale[CG_PACK_UNKNOWNS];
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
        if (change < NEWTON_ENOUGH)
            return true;
    }
    return false;
}

/* Adds to the masses what flows carry in `seconds`. */
static void carry(const double flow[CG_PACK_FLOWS], double seconds,
                  double mass[CG_PACK_VOLUMES])
{
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        size_t from = cg_pack_from[f], to = cg_pack_to[f];
        double moved = seconds * flow[f];
        if (from != CG_PACK_CYLINDER)
            mass[from - 1] -= moved;
        if (to != CG_PACK_CRANKCASE)
            mass[to - 1] += moved;
    }
}

/* The base of a stage, and a guess of its point: flows and pushes go on as
 * they were in the stage before. */
static void begin(const struct cg_ring_pack *pack,
                  const struct cg_pack_state *state, size_t stage,
                  double seconds, const struct cg_pack_trial *trial,
                  struct base *base, struct cg_pack_point *guess)
{
    base->diagonal = seconds * DIAGONAL;
    base->unknowns = CG_PACK_VOLUMES;
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        base->column[k] =
            state->seating[k] == CG_RING_FREE ? base->unknowns++ : 0;
    memcpy(base->mass, state->mass, sizeof base->mass);
    memcpy(base->lift, state->lift, sizeof base->lift);
    memcpy(base->speed, state->speed, sizeof base->speed);
    for (size_t j = 0; j < stage; j++) {
        double share = seconds * weight[stage][j];
        carry(trial->flow[j], share, base->mass);
        for (size_t k = 0; k < CG_PACK_RINGS; k++) {
            base->lift[k] += share * trial->stage[j].speed[k];
            base->speed[k] += share * trial->push[j][k];
        }
    }
    const double *flow = stage > 0 ? trial->flow[stage - 1] : state->flow;
    const double *push = stage > 0 ? trial->push[stage - 1] : state->push;
    double mass[CG_PACK_VOLUMES];
    memcpy(mass, base->mass, sizeof mass);
    carry(flow, base->diagonal, mass);
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        guess->pressure[v] =
            fmax(mass[v], 0.5 * state->mass[v]) / cg_pack_capacity(pack, v);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        bool free = state->seating[k] == CG_RING_FREE;
        guess->speed[k] =
            free ? base->speed[k] + base->diagonal * push[k] : 0.0;
        guess->lift[k] = free ? base->lift[k] +
                                    base->diagonal * guess->speed[k]
                              : state->lift[k];
    }
}

/* The step's flows in sum, the masses they leave, and the error. */
static void finish(const struct cg_ring_pack *pack,
                   const struct cg_pack_control *control,
                   const struct cg_pack_state *state, double seconds,
                   struct cg_pack_trial *trial)
{
    double wrong[CG_PACK_VOLUMES] = {0.0};
    memcpy(trial->mass, state->mass, sizeof trial->mass);
    for (size_t f = 0; f < CG_PACK_FLOWS; f++) {
        size_t from = cg_pack_from[f], to = cg_pack_to[f];
        double moved = 0.0, other = 0.0;
        for (size_t j = 0; j < CG_PACK_STAGES; j++) {
            moved += weight[CG_PACK_STAGES - 1][j] * trial->flow[j][f];
            other += lower_order[j] * trial->flow[j][f];
        }
        moved *= seconds;
        other *= seconds;
        trial->moved[f] = moved;
        if (from != CG_PACK_CYLINDER) {
            trial->mass[from - 1] -= moved;
            wrong[from - 1] -= moved - other;
        }
        if (to != CG_PACK_CRANKCASE) {
            trial->mass[to - 1] += moved;
            wrong[to - 1] += moved - other;
        }
    }
    trial->error = 0.0;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        trial->error =
            fmax(trial->error, fabs(wrong[v]) / (control->mass_tolerance *
                                                 fabs(trial->mass[v])));
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        double off = 0.0;
        for (size_t j = 0; j < CG_PACK_STAGES; j++)
            off += seconds *
                   (weight[CG_PACK_STAGES - 1][j] - lower_order[j]) *
                   trial->stage[j].speed[k];
        trial->error =
            fmax(trial->error, fabs(off) / (control->lift_tolerance *
                                            pack->ring[k].travel));
    }
}

bool cg_pack_try(const struct cg_ring_pack *pack,
                 const struct cg_pack_control *control,
                 const struct cg_pack_state *state, double degrees,
                 struct cg_pack_trial *trial)
{
    double seconds = degrees / (360.0 * pack->speed);
    struct cg_pack_rates rates;
    trial->degrees = degrees;
    for (size_t stage = 0; stage < CG_PACK_STAGES; stage++) {
        struct cg_pack_node at;
        struct base base;
        begin(pack, state, stage, seconds, trial, &base,
              &trial->stage[stage]);
        cg_pack_at(pack, state->angle_deg + place_of[stage] * degrees, &at);
        if (!settle(pack, &at, &base, &trial->stage[stage], &rates))
            return false;
        for (size_t f = 0; f < CG_PACK_FLOWS; f++)
            trial->flow[stage][f] = rates.flow[f].rate;
        for (size_t k = 0; k < CG_PACK_RINGS; k++)
            trial->push[stage][k] = state->seating[k] == CG_RING_FREE
                                        ? rates.push[k].rate
                                        : 0.0;
    }
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        trial->push[CG_PACK_STAGES - 1][k] = rates.push[k].rate;
    finish(pack, control, state, seconds, trial);
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        if (!(trial->mass[v] > 0.0))
            return false;
    return isfinite(trial->error);
}
