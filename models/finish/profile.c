#include "profile.h"

#include <math.h>

enum cg_status cg_profile_check(const struct cg_profile *profile, double *low,
                                double *high, struct cg_error *error)
{
    if (profile->points < CG_PROFILE_FEWEST)
        return cg_error_set(error, CG_BAD_INPUT,
                            "%zu points are too few for a profile, at least "
                            "%d are needed",
                            profile->points, CG_PROFILE_FEWEST);
    if (!(profile->spacing > 0.0 && profile->spacing < 1.0))
        return cg_error_set(error, CG_BAD_INPUT,
                            "a spacing of %g m, more than 0 is needed",
                            profile->spacing);
    double least = INFINITY, most = -INFINITY;
    for (size_t i = 0; i < profile->points; i++) {
        double height = profile->height[i];
        if (!isfinite(height))
            return cg_error_set(error, CG_BAD_INPUT,
                                "the height of point %zu is not a number",
                                i + 1);
        least = fmin(least, height);
        most = fmax(most, height);
    }
    if (!(most > least))
        return cg_error_set(error, CG_BAD_INPUT,
                            "all %zu heights are equal: no roughness to "
                            "measure",
                            profile->points);
    *low = least;
    *high = most;
    return CG_OK;
}

static double mean_of(const double *height, size_t points)
{
    double sum = 0.0;
    for (size_t i = 0; i < points; i++)
        sum += height[i];
    return sum / (double)points;
}

void cg_profile_center(double *height, size_t points)
{
    double mean = mean_of(height, points);
    for (size_t i = 0; i < points; i++)
        height[i] -= mean;
}

void cg_profile_level(double *height, size_t points)
{
    double n = (double)points, middle = 0.5 * (n - 1.0), moment = 0.0;
    cg_profile_center(height, points);
    if (points < 2)
        return;
    for (size_t i = 0; i < points; i++)
        moment += ((double)i - middle) * height[i];
    /* sum of (i - middle)^2 over i */
    double slope = moment / (n * (n * n - 1.0) / 12.0);
    for (size_t i = 0; i < points; i++)
        height[i] -= slope * ((double)i - middle);
}

static double height_of(const double *height, size_t points)
{
    double low = height[0], high = height[0];
    for (size_t i = 1; i < points; i++) {
        low = fmin(low, height[i]);
        high = fmax(high, height[i]);
    }
    return high - low;
}

void cg_profile_amplitude(const double *height, size_t points, double spacing,
                          double section, struct cg_amplitude *amplitude)
{
    double n = (double)points, sum = 0.0, squares = 0.0, heights = 0.0;
    /* The last point of a section is one spacing before the next. */
    double fit = floor(n * spacing / section * (1.0 + 1e-9));
    size_t sections = fit >= 1.0 && fit <= n ? (size_t)fit : 1;
    for (size_t i = 0; i < points; i++) {
        sum += fabs(height[i]);
        squares += height[i] * height[i];
    }
    for (size_t i = 0; i < sections; i++) {
        size_t first = points * i / sections;
        size_t after = points * (i + 1) / sections;
        heights += height_of(height + first, after - first);
    }
    amplitude->ra = sum / n;
    amplitude->rq = sqrt(squares / n);
    amplitude->rz = heights / (double)sections;
    amplitude->rt = height_of(height, points);
    amplitude->sections = sections;
}
