/* An interval in steps of the Rosenbrock scheme. */
#include "interval.h"

#include <math.h>
#include <string.h>

/* Where the matrix stays the same, a new step size costs a factoring. */
static const double WORTH_GROWING = 1.5;
static const double SAFETY = 0.9;
static const double LARGEST_GROWTH = 4;
static const double LARGEST_CUT = 0.2;
static const double AIMED_STEPS = 8; /* from here steps are fitted to `to` */

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

/* The largest estimate of the step just tried, against the tolerance if there
 * is one. */
static double judge(struct cg_interval *interval)
{
    const double *estimate = cg_rosenbrock_estimate(interval->step);
    double worst = 0;
    interval->worst = 0;
    for (size_t i = 0; i < interval->network->nodes; i++) {
        double size = fabs(estimate[i]);
        if (size <= worst)
            continue;
        worst = size;
        interval->worst = i;
        if (!isfinite(size))
            break;
    }
    bool fixed = interval->control->fixed_step > 0;
    return fixed ? worst : worst / interval->control->tolerance;
}

/* The next step size by the estimate of fourth order. */
static double next_step(const struct cg_interval *interval, double h,
                        double excess)
{
    if (!isfinite(excess))
        return LARGEST_CUT * h;
    double factor = SAFETY / pow(fmax(excess, 1e-12), 0.25);
    if (excess > 1)
        return h * fmax(factor, LARGEST_CUT);
    const struct cg_drive *drive = interval->drive;
    bool same_matrix = drive == NULL || drive->conductance_fixed;
    if (same_matrix && factor >= 1 && factor <= WORTH_GROWING)
        return h;
    return h * fmin(factor, LARGEST_GROWTH);
}

static double limit_step(const struct cg_interval *interval, double h)
{
    double most = interval->control->max_step;
    return most > 0 ? fmin(h, most) : h;
}

/* A step [s] with an estimate near the tolerance, conditions as they stand: the
 * estimate is about h^4 / 300 times the fourth derivative of T, and the
 * derivatives follow from T' by the linear net heat, d(net heat) = -K dT. */
static double promising_step(struct cg_interval *interval)
{
    const struct cg_network *network = interval->network;
    const double *rate = interval->step->rate;
    double *shifted = interval->scratch[0], *derivative = interval->scratch[1];
    memcpy(derivative, rate, network->nodes * sizeof *derivative);
    for (int order = 2; order <= 4; order++) {
        for (size_t i = 0; i < network->nodes; i++)
            shifted[i] =
                interval->temperature[i] + derivative[i] / network->capacity[i];
        cg_network_net_heat(network, shifted, derivative);
        for (size_t i = 0; i < network->nodes; i++)
            derivative[i] -= rate[i];
    }
    double fourth = 0;
    for (size_t i = 0; i < network->nodes; i++)
        fourth = fmax(fourth, fabs(derivative[i]) / network->capacity[i]);
    return pow(300 * interval->control->tolerance / fourth, 0.25);
}

static double first_step(struct cg_interval *interval)
{
    const struct cg_step_control *control = interval->control;
    double span = interval->to - interval->from;
    if (control->fixed_step > 0)
        return span / fmax(1, ceil(span / control->fixed_step - 1e-9));
    if (control->first_step > 0)
        return limit_step(interval, fmin(control->first_step, span));
    /* A drive may start at rest: look before leaping. */
    double h = fmin(promising_step(interval), span / 4);
    return limit_step(interval, h);
}

/* One attempt; moves on when the error allows. */
static enum cg_status advance(struct cg_interval *interval,
                              struct cg_error *error)
{
    double left = interval->to - interval->time;
    bool fixed = interval->control->fixed_step > 0;
    double h = fixed ? interval->h : fit_step(interval->h, left);
    bool last = h >= left * (1 - 1e-9);
    struct cg_error inner;
    enum cg_status status =
        cg_rosenbrock_try(interval->step, interval->network, interval->drive,
                          interval->time, h, interval->temperature, &inner);
    if (status != CG_OK)
        return cg_error_set(error, status, "at %.6g s: %.400s", interval->time,
                            inner.text);
    double excess = judge(interval);
    bool good = isfinite(excess) && (fixed || excess <= 1);
    if (!fixed || !good)
        interval->h = limit_step(interval, next_step(interval, h, excess));
    if (!good) {
        interval->rejected++;
        return CG_OK;
    }
    interval->start = interval->time;
    interval->length = h;
    interval->time = last ? interval->to : interval->time + h;
    cg_interval_add_heat(interval, interval->step->heat);
    cg_rosenbrock_take(interval->step, interval->network, interval->drive,
                       interval->time, interval->temperature);
    interval->steps++;
    return cg_interval_show(interval, interval->time, interval->temperature,
                            error);
}

enum cg_status cg_interval_driven(struct cg_interval *interval,
                                  struct cg_error *error)
{
    interval->h = first_step(interval);
    while (interval->time < interval->to) {
        enum cg_status status = cg_interval_check(interval, error);
        if (status == CG_OK)
            status = advance(interval, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}
