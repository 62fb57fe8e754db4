/* A stretch whose conditions are held, in strides: each is one series. */
#include "stretch.h"

#include <math.h>

/* A stride that asks too much is shortened by this factor. */
static const double SHORTEN = 1.0 / 16;

/* A stride sets out this share of the last one's horizon before its end.  By
 * then only slow parts are left; the first moments of the new series, which
 * would need many terms, are covered by the old one. */
static const double OVERLAP = 0.25;

/* Instants inside a stride, each so many times as late as the one before; the
 * first at this share of the horizon. */
static const double LATER = 2;
static const double EARLIEST = 1.0 / 4096;

/* Shows the stride's instants after `first`, and its end.  Where the stride is
 * the last one, the end is left to the caller. */
static enum cg_status show_inside(struct cg_stretch *stretch, double first,
                                  bool last, struct cg_error *error)
{
    enum cg_status status = CG_OK;
    double *inside = stretch->scratch[0], end = stretch->length;
    if (stretch->watch == NULL)
        return CG_OK;
    for (double time = first > 0 ? LATER * first : EARLIEST * end;
         status == CG_OK && 1.5 * time < end; time *= LATER) {
        cg_held_at(stretch->held, time, inside);
        status = cg_stretch_show(stretch, stretch->start + time, inside, error);
    }
    if (status == CG_OK && !last) {
        cg_held_at(stretch->held, end, inside);
        status = cg_stretch_show(stretch, stretch->start + end, inside, error);
    }
    return status;
}

/* Temperature, rate and heat move `far` into the stride. */
static void take(struct cg_stretch *stretch, double far)
{
    double heat[CG_SIDES], *mean = stretch->scratch[0];
    cg_held_mean(stretch->held, far, mean);
    cg_network_heat_by_side(stretch->network, mean, heat);
    for (size_t s = 0; s < CG_SIDES; s++)
        heat[s] *= far;
    cg_stretch_add_heat(stretch, heat);
    cg_held_at(stretch->held, far, stretch->temperature);
    cg_network_net_heat(stretch->network, stretch->temperature,
                        stretch->step->rate);
    stretch->steps++;
}

/* One stride, or an attempt at it; *first is where the series is first needed
 * after its start [s]. */
static enum cg_status stride(struct cg_stretch *stretch, double *first,
                             struct cg_error *error)
{
    const struct cg_step_control *control = stretch->control;
    double left = stretch->to - stretch->time;
    double wanted = fmin(stretch->h, left), horizon = wanted;
    bool last = wanted >= left;
    struct cg_error inner;
    enum cg_status status =
        cg_held_begin(stretch->held, stretch->network, stretch->temperature,
                      stretch->step->rate, control->tolerance, *first, &horizon,
                      &stretch->worst, &inner);
    if (status != CG_OK)
        return cg_error_set(error, status, "at %.6g s: %.400s", stretch->time,
                            inner.text);
    if (!(horizon > 0)) {
        stretch->h = SHORTEN * wanted;
        stretch->rejected++;
        return CG_OK;
    }
    stretch->start = stretch->time;
    stretch->length = horizon;
    status = show_inside(stretch, *first, last, error);
    if (status != CG_OK)
        return status;
    take(stretch, last ? horizon : (1 - OVERLAP) * horizon);
    stretch->time =
        last ? stretch->to : stretch->start + (1 - OVERLAP) * horizon;
    *first = OVERLAP * horizon;
    stretch->h = stretch->to - stretch->from;
    if (control->max_step > 0)
        stretch->h = fmin(stretch->h, control->max_step);
    return last ? cg_stretch_show(stretch, stretch->to, stretch->temperature,
                                  error)
                : CG_OK;
}

enum cg_status cg_stretch_held(struct cg_stretch *stretch,
                               struct cg_error *error)
{
    const struct cg_step_control *control = stretch->control;
    double first = 0;
    stretch->h = stretch->to - stretch->from;
    if (control->max_step > 0)
        stretch->h = fmin(stretch->h, control->max_step);
    while (stretch->time < stretch->to) {
        enum cg_status status = cg_stretch_check(stretch, error);
        if (status == CG_OK)
            status = stride(stretch, &first, error);
        if (status != CG_OK)
            return status;
    }
    stretch->h = first;
    return CG_OK;
}
