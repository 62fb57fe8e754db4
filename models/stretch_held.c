/* A stretch whose conditions are held, in strides: each is one series. */
#include "stretch.h"

#include <math.h>

/* A stride that asks too much is shortened by this factor. */
static const double SHORTEN = 0.25;
/* By the end of a stride only parts slower than about a tenth of it are left:
 * the next needs no values before this share of it. */
static const double SMOOTH_SHARE = 0.25;

/* Instants inside a stride, each so many times as late as the one before. */
static const double LATER = 2;

static enum cg_status show_inside(struct cg_stretch *stretch, double first,
                                  struct cg_error *error)
{
    enum cg_status status = CG_OK;
    double *inside = stretch->scratch[0];
    if (stretch->watch == NULL)
        return CG_OK;
    for (double time = first; status == CG_OK && 1.5 * time < stretch->length;
         time *= LATER) {
        cg_held_at(stretch->held, time, inside);
        status =
            cg_stretch_show(stretch, stretch->start + time, inside, error);
    }
    return status;
}

/* Temperature, rate, heat and time move to the stride's end. */
static void take(struct cg_stretch *stretch, bool last)
{
    double horizon = stretch->length;
    double heat[CG_SIDES], *mean = stretch->scratch[0];
    cg_held_mean(stretch->held, mean);
    cg_network_heat_by_side(stretch->network, mean, heat);
    for (size_t s = 0; s < CG_SIDES; s++)
        heat[s] *= horizon;
    cg_stretch_add_heat(stretch, heat);
    cg_held_at(stretch->held, horizon, stretch->temperature);
    cg_network_net_heat(stretch->network, stretch->temperature,
                        stretch->step->rate);
    stretch->time = last ? stretch->to : stretch->time + horizon;
    stretch->steps++;
}

enum cg_status cg_stretch_held(struct cg_stretch *stretch,
                               struct cg_error *error)
{
    const struct cg_step_control *control = stretch->control;
    double first = control->first_step > 0 ? control->first_step
                                           : cg_stretch_first_step(stretch);
    stretch->h = stretch->to - stretch->from;
    while (stretch->time < stretch->to) {
        enum cg_status status = cg_stretch_check(stretch, error);
        if (status != CG_OK)
            return status;
        double left = stretch->to - stretch->time;
        double wanted = fmin(stretch->h, left);
        if (control->max_step > 0)
            wanted = fmin(wanted, control->max_step);
        double horizon = wanted;
        struct cg_error inner;
        status = cg_held_begin(stretch->held, stretch->network,
                               stretch->temperature, stretch->step->rate,
                               control->tolerance, first, &horizon,
                               &stretch->worst, &inner);
        if (status != CG_OK)
            return cg_error_set(error, status, "at %.6g s: %.400s",
                                stretch->time, inner.text);
        if (!(horizon > 0)) {
            stretch->h = SHORTEN * wanted;
            stretch->rejected++;
            continue;
        }
        stretch->start = stretch->time;
        stretch->length = horizon;
        status = show_inside(stretch, first, error);
        if (status == CG_OK) {
            take(stretch, wanted >= left);
            status = cg_stretch_show(stretch, stretch->time,
                                     stretch->temperature, error);
        }
        if (status != CG_OK)
            return status;
        first = SMOOTH_SHARE * horizon;
        stretch->h = stretch->to - stretch->from;
    }
    stretch->h = first;
    return CG_OK;
}
