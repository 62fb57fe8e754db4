/* A stretch in steps of the Rosenbrock scheme. */
#include "stretch.h"

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
static double judge(struct cg_stretch *stretch)
{
    const double *estimate = cg_rosenbrock_estimate(stretch->step);
    double worst = 0;
    stretch->worst = 0;
    for (size_t i = 0; i < stretch->network->nodes; i++) {
        double size = fabs(estimate[i]);
        if (size <= worst)
            continue;
        worst = size;
        stretch->worst = i;
        if (!isfinite(size))
            break;
    }
    bool fixed = stretch->control->fixed_step > 0;
    return fixed ? worst : worst / stretch->control->tolerance;
}

/* The next step size by the estimate of fourth order. */
static double next_step(const struct cg_stretch *stretch, double h,
                        double excess)
{
    if (!isfinite(excess))
        return LARGEST_CUT * h;
    double factor = SAFETY / pow(fmax(excess, 1e-12), 0.25);
    if (excess > 1)
        return h * fmax(factor, LARGEST_CUT);
    const struct cg_drive *drive = stretch->drive;
    bool same_matrix = drive == NULL || drive->conductance_fixed;
    if (same_matrix && factor >= 1 && factor <= WORTH_GROWING)
        return h;
    return h * fmin(factor, LARGEST_GROWTH);
}

static double limit_step(const struct cg_stretch *stretch, double h)
{
    double most = stretch->control->max_step;
    return most > 0 ? fmin(h, most) : h;
}

/* A step [s] with an estimate near the tolerance, conditions as they stand: the
 * estimate is about h^4 / 300 times the fourth derivative of T, and the
 * derivatives follow from T' by the linear net heat, d(net heat) = -K dT. */
static double promising_step(struct cg_stretch *stretch)
{
    const struct cg_network *network = stretch->network;
    const double *rate = stretch->step->rate;
    double *shifted = stretch->scratch[0], *derivative = stretch->scratch[1];
    memcpy(derivative, rate, network->nodes * sizeof *derivative);
    for (int order = 2; order <= 4; order++) {
        for (size_t i = 0; i < network->nodes; i++)
            shifted[i] =
                stretch->temperature[i] + derivative[i] / network->capacity[i];
        cg_network_net_heat(network, shifted, derivative);
        for (size_t i = 0; i < network->nodes; i++)
            derivative[i] -= rate[i];
    }
    double fourth = 0;
    for (size_t i = 0; i < network->nodes; i++)
        fourth = fmax(fourth, fabs(derivative[i]) / network->capacity[i]);
    return pow(300 * stretch->control->tolerance / fourth, 0.25);
}

static double first_step(struct cg_stretch *stretch)
{
    const struct cg_step_control *control = stretch->control;
    double span = stretch->to - stretch->from;
    if (control->fixed_step > 0)
        return span / fmax(1, ceil(span / control->fixed_step - 1e-9));
    if (control->first_step > 0)
        return limit_step(stretch, fmin(control->first_step, span));
    /* A drive may start at rest: look before leaping. */
    double h = fmin(promising_step(stretch), span / 4);
    return limit_step(stretch, h);
}

/* One attempt; moves on when the error allows. */
static enum cg_status advance(struct cg_stretch *stretch,
                              struct cg_error *error)
{
    double left = stretch->to - stretch->time;
    bool fixed = stretch->control->fixed_step > 0;
    double h = fixed ? stretch->h : fit_step(stretch->h, left);
    bool last = h >= left * (1 - 1e-9);
    struct cg_error inner;
    enum cg_status status =
        cg_rosenbrock_try(stretch->step, stretch->network, stretch->drive,
                          stretch->time, h, stretch->temperature, &inner);
    if (status != CG_OK)
        return cg_error_set(error, status, "at %.6g s: %.400s", stretch->time,
                            inner.text);
    double excess = judge(stretch);
    bool good = isfinite(excess) && (fixed || excess <= 1);
    if (!fixed || !good)
        stretch->h = limit_step(stretch, next_step(stretch, h, excess));
    if (!good) {
        stretch->rejected++;
        return CG_OK;
    }
    stretch->start = stretch->time;
    stretch->length = h;
    stretch->time = last ? stretch->to : stretch->time + h;
    cg_stretch_add_heat(stretch, stretch->step->heat);
    cg_rosenbrock_take(stretch->step, stretch->network, stretch->drive,
                       stretch->time, stretch->temperature);
    stretch->steps++;
    return cg_stretch_show(stretch, stretch->time, stretch->temperature, error);
}

enum cg_status cg_stretch_driven(struct cg_stretch *stretch,
                                 struct cg_error *error)
{
    stretch->h = first_step(stretch);
    while (stretch->time < stretch->to) {
        enum cg_status status = cg_stretch_check(stretch, error);
        if (status == CG_OK)
            status = advance(stretch, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}
