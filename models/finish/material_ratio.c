#include "material_ratio.h"

#include <math.h>
#include <stdlib.h>

#define WINDOW 0.4
#define TIE 1e-4 /* of the least drop: below what files are written to */

static int falling(const void *a, const void *b)
{
    double left = *(const double *)a, right = *(const double *)b;
    return (left < right) - (left > right);
}

void cg_ratio_curve_sort(double *height, size_t points,
                         struct cg_ratio_curve *curve)
{
    qsort(height, points, sizeof *height, falling);
    curve->height = height;
    curve->points = points;
}

double cg_ratio_curve_height(const struct cg_ratio_curve *curve, double ratio)
{
    double last = (double)(curve->points - 1);
    double at = ratio * (double)curve->points - 0.5;
    at = fmin(fmax(at, 0.0), last);
    size_t below = (size_t)fmin(floor(at), last - 1.0);
    double part = at - (double)below;
    return curve->height[below] +
           part * (curve->height[below + 1] - curve->height[below]);
}

double cg_ratio_curve_ratio(const struct cg_ratio_curve *curve, double height)
{
    size_t low = 0, high = curve->points; /* points above, points not above */
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (curve->height[middle] > height)
            low = middle + 1;
        else
            high = middle;
    }
    if (low == 0 || low == curve->points)
        return low == 0 ? 0.0 : 1.0;
    double above = curve->height[low - 1], below = curve->height[low];
    double part = (above - height) / (above - below);
    return ((double)low - 0.5 + part) / (double)curve->points;
}

static double drop_at(const struct cg_ratio_curve *curve, size_t i)
{
    double start = (double)i / (double)curve->points;
    return cg_ratio_curve_height(curve, start) -
           cg_ratio_curve_height(curve, start + WINDOW);
}

/* The first stretch of starts whose drop ties with the least, and in it the
 * start of the least drop. */
static double find_start(const struct cg_ratio_curve *curve)
{
    size_t starts = (size_t)((1.0 - WINDOW) * (double)curve->points + 1e-9);
    double least = INFINITY;
    for (size_t i = 0; i <= starts; i++)
        least = fmin(least, drop_at(curve, i));
    double enough = least * (1.0 + TIE), best = INFINITY;
    size_t start = 0;
    for (size_t i = 0; i <= starts; i++) {
        double drop = drop_at(curve, i);
        if (drop > enough && isfinite(best))
            break;
        if (drop <= enough && drop < best) {
            best = drop;
            start = i;
        }
    }
    return (double)start / (double)curve->points;
}

/* Least squares of height over ratio, over the points in the window. */
static void fit_line(const struct cg_ratio_curve *curve, double start,
                     double *at_none, double *slope)
{
    double n = (double)curve->points;
    size_t first = (size_t)ceil(start * n - 0.5 - 1e-9);
    size_t last = (size_t)floor((start + WINDOW) * n - 0.5 + 1e-9);
    if (last > curve->points - 1)
        last = curve->points - 1;
    double count = (double)(last - first + 1);
    double middle = ((double)(first + last) * 0.5 + 0.5) / n;
    double mean = 0.0, moment = 0.0, square = 0.0;
    for (size_t i = first; i <= last; i++)
        mean += curve->height[i] / count;
    for (size_t i = first; i <= last; i++) {
        double away = ((double)i + 0.5) / n - middle;
        moment += away * (curve->height[i] - mean);
        square += away * away;
    }
    *slope = square > 0.0 ? moment / square : 0.0;
    *at_none = mean - *slope * middle;
}

void cg_ratio_curve_core(const struct cg_ratio_curve *curve,
                         struct cg_core *core)
{
    double slope, peaks = 0.0, valleys = 0.0, n = (double)curve->points;
    core->start = find_start(curve);
    fit_line(curve, core->start, &core->top, &slope);
    core->bottom = core->top + slope;
    core->rk = -slope;
    for (size_t i = 0; i < curve->points; i++) {
        peaks += fmax(curve->height[i] - core->top, 0.0);
        valleys += fmax(core->bottom - curve->height[i], 0.0);
    }
    core->mr1 = cg_ratio_curve_ratio(curve, core->top);
    core->mr2 = cg_ratio_curve_ratio(curve, core->bottom);
    core->a1 = peaks / n;
    core->a2 = valleys / n;
    core->rpk = core->mr1 > 0.0 ? 2.0 * core->a1 / core->mr1 : 0.0;
    core->rvk = core->mr2 < 1.0 ? 2.0 * core->a2 / (1.0 - core->mr2) : 0.0;
    core->oil = core->rvk * (1.0 - core->mr2) / 2.0;
}
