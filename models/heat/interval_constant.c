/* An interval whose conditions are held, by series, one after the other. */
#include "interval.h"

#include <math.h>

/* A series that asks too much is shortened by this factor. */
static const double SHORTEN = 1.0 / 16;

/* A series sets out this share of the last one's horizon before its end.  By
 * then only slow parts are left; the first moments of the new series, which
 * would need many terms, are covered by the old one. */
static const double OVERLAP = 0.25;

/* Instants inside a series, each so many times as late as the one before; the
 * first at this share of the horizon. */
static const double LATER = 2;
static const double EARLIEST = 1.0 / 4096;

/* Shows the series' instants after `first`, and its end.  Where the series is
 * the last one, the end is left to the caller. */
static enum cg_status show_inside(struct cg_interval *interval, double first,
                                  bool last, struct cg_error *error)
{
    enum cg_status status = CG_OK;
    double *inside = interval->scratch[0], end = interval->length;
    if (interval->observer == NULL)
        return CG_OK;
    for (double time = first > 0 ? LATER * first : EARLIEST * end;
         status == CG_OK && 1.5 * time < end; time *= LATER) {
        cg_chebyshev_at(interval->series, time, inside);
        status =
            cg_interval_show(interval, interval->start + time, inside, error);
    }
    if (status == CG_OK && !last) {
        cg_chebyshev_at(interval->series, end, inside);
        status =
            cg_interval_show(interval, interval->start + end, inside, error);
    }
    return status;
}

/* Temperature, rate and heat move `far` into the series. */
static void take(struct cg_interval *interval, double far)
{
    double heat[CG_SIDES], *mean = interval->scratch[0];
    cg_chebyshev_mean(interval->series, far, mean);
    cg_network_heat_by_side(interval->network, mean, heat);
    for (size_t s = 0; s < CG_SIDES; s++)
        heat[s] *= far;
    cg_interval_add_heat(interval, heat);
    cg_chebyshev_at(interval->series, far, interval->temperature);
    cg_network_net_heat(interval->network, interval->temperature,
                        interval->step->rate);
    interval->steps++;
}

/* One series, or an attempt at it; *first is where the series is first needed
 * after its start [s]. */
static enum cg_status series_step(struct cg_interval *interval, double *first,
                                  struct cg_error *error)
{
    const struct cg_step_control *control = interval->control;
    double left = interval->to - interval->time;
    double wanted = fmin(interval->h, left), horizon = wanted;
    bool last = wanted >= left;
    struct cg_error inner;
    enum cg_status status = cg_chebyshev_begin(
        interval->series, interval->network, interval->temperature,
        interval->step->rate, control->tolerance, *first, &horizon,
        &interval->worst, &inner);
    if (status != CG_OK)
        return cg_error_set(error, status, "at %.6g s: %.400s", interval->time,
                            inner.text);
    if (!(horizon > 0)) {
        interval->h = SHORTEN * wanted;
        interval->rejected++;
        return CG_OK;
    }
    interval->start = interval->time;
    interval->length = horizon;
    status = show_inside(interval, *first, last, error);
    if (status != CG_OK)
        return status;
    take(interval, last ? horizon : (1 - OVERLAP) * horizon);
    interval->time =
        last ? interval->to : interval->start + (1 - OVERLAP) * horizon;
    *first = OVERLAP * horizon;
    interval->h = interval->to - interval->from;
    if (control->max_step > 0)
        interval->h = fmin(interval->h, control->max_step);
    return last ? cg_interval_show(interval, interval->to,
                                   interval->temperature, error)
                : CG_OK;
}

enum cg_status cg_interval_constant(struct cg_interval *interval,
                                    struct cg_error *error)
{
    const struct cg_step_control *control = interval->control;
    double first = 0;
    interval->h = interval->to - interval->from;
    if (control->max_step > 0)
        interval->h = fmin(interval->h, control->max_step);
    while (interval->time < interval->to) {
        enum cg_status status = cg_interval_check(interval, error);
        if (status == CG_OK)
            status = series_step(interval, &first, error);
        if (status != CG_OK)
            return status;
    }
    interval->h = first;
    return CG_OK;
}
