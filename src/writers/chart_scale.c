#include "chart_scale.h"

#include <math.h>

struct cg_range cg_range_none(void)
{
    return (struct cg_range){INFINITY, -INFINITY};
}

void cg_range_add(struct cg_range *range, double value)
{
    if (!isfinite(value))
        return;
    range->low = fmin(range->low, value);
    range->high = fmax(range->high, value);
}

void cg_range_add_all(struct cg_range *range, const double *value, size_t count)
{
    for (size_t i = 0; i < count; i++)
        cg_range_add(range, value[i]);
}

struct cg_range cg_range_open(struct cg_range range)
{
    if (!(range.low <= range.high))
        return (struct cg_range){0.0, 1.0};
    double size = fmax(fabs(range.low), fabs(range.high));
    /* what differs by less is one value: no step of ticks could tell it apart */
    if (range.high - range.low > 1e-9 * size)
        return range;
    double half = size > 0.0 ? 0.1 * size : 1.0;
    return (struct cg_range){range.low - half, range.high + half};
}

struct cg_range cg_range_wider(struct cg_range range, double share)
{
    double more = share * (range.high - range.low);
    if (range.low != 0.0)
        range.low -= more;
    if (range.high != 0.0)
        range.high += more;
    return range;
}

/* The step of 1, 2 or 5 times a power of ten next above. */
static double round_step(double least)
{
    static const double steps[] = {1.0, 2.0, 5.0, 10.0};
    double power = pow(10.0, floor(log10(least)));
    for (int i = 0; i < 3; i++)
        if (steps[i] * power >= least * (1.0 - 1e-9))
            return steps[i] * power;
    return steps[3] * power;
}

/* Numbers of the first and last tick of that step. */
static double first_of(struct cg_range range, double step)
{
    return ceil(range.low / step - 1e-9);
}

static double last_of(struct cg_range range, double step)
{
    return floor(range.high / step + 1e-9);
}

struct cg_ticks cg_ticks_in(struct cg_range range, int most)
{
    struct cg_ticks ticks = {{0.0}, 0, 0};
    double span = range.high - range.low;
    if (!(span > 0.0) || !isfinite(span))
        return ticks;
    most = most < 2 ? 2 : most > CG_TICKS ? CG_TICKS : most;
    double step = round_step(span / (most + 1.0));
    while (last_of(range, step) - first_of(range, step) + 1.0 > most)
        step = round_step(1.5 * step);
    double first = first_of(range, step), last = last_of(range, step);
    for (double i = first; i <= last && ticks.count < most; i += 1.0)
        ticks.value[ticks.count++] = i * step + 0.0; /* no -0 */
    ticks.digits = (int)fmax(0.0, -floor(log10(step) + 1e-9));
    return ticks;
}

double cg_scale_at(const struct cg_scale *scale, double value)
{
    double span = scale->range.high - scale->range.low;
    return scale->from +
           (scale->to - scale->from) * (value - scale->range.low) / span;
}
