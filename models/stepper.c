#include "stepper.h"

#include <assert.h>
#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "heat_matrix.h"
#include "tr_bdf2.h"

/* Step control, chosen by measurement on an engine-like network: a new step
 * size costs a factoring, about as much as two steps with the old one. */
static const double SAFETY = 0.9;
static const double WORTH_GROWING = 2;
static const double LARGEST_GROWTH = 5;
static const double LARGEST_CUT = 0.2;
static const double AIMED_STEPS = 8; /* from here steps are fitted to `to` */

struct cg_stepper {
    struct cg_tr_bdf2 *step;
    double *slope;  /* [nodes] dT/dt for the watch [K/s]; scratch */
    char *grounded; /* [nodes] has a way to a bath */
    double pace;    /* step size wished for when the last run ended [s] */
};

/* One call of cg_stepper_run. */
struct run {
    struct cg_tr_bdf2 *step;
    struct cg_network *network;
    const struct cg_drive *drive;
    const struct cg_step_control *control;
    double from, to, time, h; /* [s] */
    double tolerance;         /* [K]; 1 when the step is fixed */
    double *temperature;
    size_t worst;  /* node of the largest estimate */
    double excess; /* largest estimate over the tolerance [1] */
    double heat[CG_SIDES], turnover; /* over the stretch so far [J] */
    long steps, rejected;
    cg_step_watch watch;
    void *watch_context;
    double *slope;
};

void cg_stepper_free(struct cg_stepper *stepper)
{
    if (stepper == NULL)
        return;
    cg_tr_bdf2_free(stepper->step);
    free(stepper->slope);
    free(stepper->grounded);
    free(stepper);
}

enum cg_status cg_stepper_create(const struct cg_network *network,
                                 struct cg_stepper **stepper,
                                 struct cg_error *error)
{
    enum cg_status status = CG_NO_MEMORY;
    struct cg_stepper *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto out;
    made->slope = calloc(network->nodes + 1, sizeof *made->slope);
    made->grounded = calloc(network->nodes + 1, sizeof *made->grounded);
    if (made->slope == NULL || made->grounded == NULL)
        goto out;
    status = cg_tr_bdf2_create(network, &made->step, error);
    if (status != CG_OK)
        goto out;
    *stepper = made;
    return CG_OK;

out:
    cg_stepper_free(made);
    return cg_error_set(error, status, "no memory for the stepper");
}

enum cg_status cg_stepper_settle(struct cg_stepper *stepper,
                                 const struct cg_network *network,
                                 double *temperature, struct cg_error *error)
{
    struct cg_heat_matrix *matrix = stepper->step->matrix;
    size_t floating = cg_network_find_floating(network, stepper->grounded);
    if (floating < network->nodes)
        return cg_error_set(error, CG_NUMERICAL,
                            "no settled state: node %s has no way to a bath",
                            network->name[floating]);
    cg_heat_matrix_read(matrix, network);
    enum cg_status status = cg_heat_matrix_factor(matrix, network, 0, 1, error);
    if (status != CG_OK)
        return status;
    /* K T = b from zero, then once more on what is left over. */
    double *settled = stepper->slope, *rest = stepper->step->open;
    memset(settled, 0, network->nodes * sizeof *settled);
    for (int pass = 0; pass < 2; pass++) {
        cg_network_net_heat(network, settled, rest);
        cg_heat_matrix_solve(matrix, rest);
        for (size_t i = 0; i < network->nodes; i++)
            settled[i] += rest[i];
    }
    for (size_t i = 0; i < network->nodes; i++)
        if (!isfinite(settled[i]))
            return cg_error_set(error, CG_NUMERICAL,
                                "settled temperature of node %s is not finite",
                                network->name[i]);
    memcpy(temperature, settled, network->nodes * sizeof *temperature);
    return CG_OK;
}

/* Rounds h so that whole steps reach `to`; far from it h stays. */
static double fit_step(double h, double left)
{
    double count = ceil(left / h - 1e-9);
    if (!(count < AIMED_STEPS))
        return h;
    double fitted = left / fmax(count, 1);
    /* Keep h, and with it the factors, when it fits already. */
    return fabs(fitted - h) <= 1e-9 * h ? h : fitted;
}

/* The largest entry of `rate` [W] as dT/dt [K/s]; fills slope. */
static double largest_slope(const struct cg_network *network,
                            const double *rate, double *slope)
{
    double largest = 0;
    for (size_t i = 0; i < network->nodes; i++) {
        slope[i] = rate[i] / network->capacity[i];
        largest = fmax(largest, fabs(slope[i]));
    }
    return largest;
}

/* A first step [s] whose local error, 0.04 h^3 times the third derivative of
 * T, is near the tolerance.  Conditions are taken as they stand: T'' and T'''
 * follow from T' by the linear net heat, d(net heat) = -K dT. */
static double choose_first_step(struct run *run)
{
    const struct cg_step_control *control = run->control;
    double span = run->to - run->from;
    if (control->first_step > 0)
        return fmin(control->first_step, span);
    struct cg_tr_bdf2 *step = run->step;
    const struct cg_network *network = run->network;
    double *shifted = step->estimate, *derivative = step->open;
    memcpy(derivative, step->rate[0], step->nodes * sizeof *derivative);
    for (int order = 2; order <= 3; order++) {
        for (size_t i = 0; i < step->nodes; i++)
            shifted[i] =
                run->temperature[i] + derivative[i] / network->capacity[i];
        cg_network_net_heat(network, shifted, derivative);
        for (size_t i = 0; i < step->nodes; i++)
            derivative[i] -= step->rate[0][i];
    }
    double third = largest_slope(network, derivative, run->slope);
    double h = cbrt(control->tolerance / (0.04 * third));
    /* A drive may start at rest: look before leaping. */
    return fmin(h, step->steady ? span : span / 16);
}

/* The estimate of the step just tried, against the tolerance. */
static void judge(struct run *run)
{
    const double *estimate = run->step->estimate;
    double worst = 0;
    run->worst = 0;
    for (size_t i = 0; i < run->step->nodes; i++) {
        double size = fabs(estimate[i]);
        if (size <= worst)
            continue;
        worst = size;
        run->worst = i;
        if (!isfinite(size))
            break;
    }
    run->excess = worst / run->tolerance;
}

/* The next step size by the estimate of third order; the old one, with its
 * factors, unless the change is worth a factoring. */
static double next_step(double h, double excess)
{
    if (!isfinite(excess))
        return LARGEST_CUT * h;
    double factor = SAFETY / cbrt(fmax(excess, 1e-12));
    if (excess > 1)
        return h * fmax(factor, LARGEST_CUT);
    if (factor >= 1 && factor <= WORTH_GROWING)
        return h;
    return h * fmin(factor, LARGEST_GROWTH);
}

static double limit_step(const struct run *run, double h)
{
    double most = run->control->max_step;
    return most > 0 ? fmin(h, most) : h;
}

static void add_heat(struct run *run, double h)
{
    for (size_t s = 0; s < CG_SIDES; s++) {
        double heat = 0;
        for (size_t k = 0; k < 3; k++)
            heat += cg_tr_bdf2_weight[k] * run->step->heat[k][s];
        run->heat[s] += h * heat;
        run->turnover += fabs(h * heat);
    }
}

static enum cg_status show(const struct run *run, struct cg_error *error)
{
    if (run->watch == NULL)
        return CG_OK;
    largest_slope(run->network, run->step->rate[0], run->slope);
    return run->watch(run->watch_context, run->time, run->temperature,
                      run->slope, error);
}

/* One attempt; moves on when the error allows. */
static enum cg_status advance(struct run *run, struct cg_error *error)
{
    double left = run->to - run->time;
    bool fixed = run->control->fixed_step > 0;
    double h = fixed ? run->h : fit_step(run->h, left);
    bool last = h >= left * (1 - 1e-9);
    struct cg_error inner;
    enum cg_status status =
        cg_tr_bdf2_try(run->step, run->network, run->drive, run->time, h,
                       run->temperature, &inner);
    if (status != CG_OK)
        return cg_error_set(error, status, "at %.6g s: %.400s", run->time,
                            inner.text);
    judge(run);
    bool good = isfinite(run->excess) && (fixed || run->excess <= 1);
    if (!fixed || !good)
        run->h = limit_step(run, next_step(h, run->excess));
    if (!good) {
        run->rejected++;
        return CG_OK;
    }
    add_heat(run, h);
    cg_tr_bdf2_take(run->step, h, run->temperature);
    run->time = last ? run->to : run->time + h;
    run->steps++;
    return show(run, error);
}

static enum cg_status march(struct run *run, struct cg_error *error)
{
    const struct cg_step_control *control = run->control;
    long most = control->max_steps > 0 ? control->max_steps : 1000000;
    double least = 16 * DBL_EPSILON * fmax(fabs(run->from), fabs(run->to));
    while (run->time < run->to) {
        const char *name = run->network->name[run->worst];
        if (run->steps + run->rejected >= most)
            return cg_error_set(error, CG_NUMERICAL,
                                "at %.6g s: more than %ld steps (node %s)",
                                run->time, most, name);
        if (!(run->h > least))
            return cg_error_set(error, CG_NUMERICAL,
                                "at %.6g s: step size down to %.3g s, error "
                                "%.3g of the tolerance at node %s",
                                run->time, run->h, run->excess, name);
        enum cg_status status = advance(run, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}

static void close_ledger(const struct run *run, double stored, long factorings,
                         struct cg_heat_ledger *ledger)
{
    double in = 0;
    for (size_t s = 0; s < CG_SIDES; s++) {
        ledger->in[s] += run->heat[s];
        in += ledger->in[s];
    }
    ledger->stored += stored;
    ledger->turnover =
        fmax(ledger->turnover + run->turnover, fabs(ledger->stored));
    ledger->residual =
        ledger->turnover > 0 ? (in - ledger->stored) / ledger->turnover : 0;
    ledger->steps += run->steps;
    ledger->rejected += run->rejected;
    ledger->factorings += factorings;
}

double cg_stepper_pace(const struct cg_stepper *stepper)
{
    return stepper->pace;
}

enum cg_status
cg_stepper_run(struct cg_stepper *stepper, struct cg_network *network,
               const struct cg_drive *drive, double from, double to,
               const struct cg_step_control *control, double *temperature,
               struct cg_heat_ledger *ledger, cg_step_watch watch,
               void *watch_context, struct cg_error *error)
{
    assert(to >= from);
    assert(control->fixed_step > 0 || control->tolerance > 0);
    struct run run = {
        .step = stepper->step,
        .network = network,
        .drive = drive,
        .control = control,
        .from = from,
        .to = to,
        .time = from,
        .tolerance = control->fixed_step > 0 ? 1 : control->tolerance,
        .temperature = temperature,
        .watch = watch,
        .watch_context = watch_context,
        .slope = stepper->slope,
    };
    double before = cg_network_stored_heat(network, temperature);
    long factorings = cg_heat_matrix_factorings(stepper->step->matrix);
    cg_tr_bdf2_begin(run.step, network, drive, from, temperature);
    enum cg_status status = show(&run, error);
    if (status != CG_OK)
        return status;
    if (control->fixed_step > 0)
        run.h = (to - from) /
                fmax(1, ceil((to - from) / control->fixed_step - 1e-9));
    else
        run.h = limit_step(&run, choose_first_step(&run));
    status = march(&run, error);
    stepper->pace = run.h;
    if (ledger != NULL) {
        double stored = cg_network_stored_heat(network, temperature) - before;
        factorings =
            cg_heat_matrix_factorings(stepper->step->matrix) - factorings;
        close_ledger(&run, stored, factorings, ledger);
    }
    return status;
}
