#include "surface.h"

#include <stdlib.h>
#include <string.h>

#include "mean_line.h"

const char *cg_filter_name(enum cg_filter filter)
{
    static const char *const name[CG_FILTERS] = {"standard", "gaussian",
                                                 "robust", "none"};
    return name[filter];
}

void cg_surface_free(struct cg_surface *surface)
{
    if (surface == NULL)
        return;
    free(surface->level.height);
    free(surface->line);
    free(surface->curve.height);
    free(surface);
}

static struct cg_surface *make_surface(const struct cg_profile *profile)
{
    size_t bytes = profile->points * sizeof(double);
    struct cg_surface *made = calloc(1, sizeof *made);
    if (made == NULL)
        return NULL;
    made->level = *profile;
    made->level.height = malloc(bytes);
    made->line = calloc(profile->points, sizeof(double));
    made->curve.height = malloc(bytes);
    if (made->level.height == NULL || made->line == NULL ||
        made->curve.height == NULL) {
        cg_surface_free(made);
        return NULL;
    }
    memcpy(made->level.height, profile->height, bytes);
    return made;
}

/* The heights over the line, into the curve's array until they are sorted. */
static void take_off_line(struct cg_surface *surface)
{
    const double *height = surface->level.height + surface->first;
    const double *line = surface->line + surface->first;
    for (size_t i = 0; i < surface->evaluated; i++)
        surface->curve.height[i] = height[i] - line[i];
}

static void choose_evaluated(struct cg_surface *surface)
{
    double points = (double)surface->level.points;
    double of_cutoff = surface->cutoff / surface->level.spacing;
    surface->first = 0;
    if (surface->filter != CG_FILTER_NONE &&
        points >= 6.0 * of_cutoff * (1.0 - 1e-6))
        surface->first = (size_t)(0.5 * of_cutoff + 0.5);
    surface->evaluated = surface->level.points - 2 * surface->first;
}

/* A straight trace leaves only rounding errors to measure. */
static enum cg_status measure_amplitude(struct cg_surface *surface,
                                        double height_before,
                                        struct cg_error *error)
{
    cg_profile_amplitude(surface->curve.height, surface->evaluated,
                         surface->level.spacing, surface->cutoff,
                         &surface->amplitude);
    if (surface->amplitude.rt > 1e-9 * height_before)
        return CG_OK;
    return cg_error_set(error, CG_BAD_INPUT,
                        "the heights lie on one straight line: no roughness "
                        "to measure");
}

/* The line of the chosen filter, and the amplitudes about it. */
static enum cg_status filter_profile(struct cg_surface *surface,
                                     double height_before,
                                     struct cg_error *error)
{
    const double *height = surface->level.height;
    size_t points = surface->level.points;
    double spacing = surface->level.spacing, *line = surface->line;
    enum cg_status status = CG_OK;
    if (surface->filter == CG_FILTER_ROBUST)
        status = cg_mean_line_robust(height, points, spacing, surface->cutoff,
                                     line, error);
    else if (surface->filter != CG_FILTER_NONE)
        status = cg_mean_line_gaussian(height, points, spacing, surface->cutoff,
                                       line, error);
    if (status != CG_OK)
        return status;
    take_off_line(surface);
    status = measure_amplitude(surface, height_before, error);
    if (status != CG_OK || surface->filter != CG_FILTER_STANDARD)
        return status;
    status = cg_mean_line_two_step(height, points, spacing, surface->cutoff,
                                   line, error);
    if (status == CG_OK)
        take_off_line(surface);
    return status;
}

enum cg_status cg_surface_measure(const struct cg_profile *profile,
                                  enum cg_filter filter, double cutoff,
                                  struct cg_surface **surface,
                                  struct cg_error *error)
{
    double low, high;
    enum cg_status status = cg_profile_check(profile, &low, &high, error);
    if (status != CG_OK)
        return status;
    struct cg_surface *made = make_surface(profile);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "profile: out of memory");
    made->filter = filter;
    made->cutoff = cutoff;
    choose_evaluated(made);
    if (filter == CG_FILTER_NONE)
        cg_profile_center(made->level.height, made->level.points);
    else
        cg_profile_level(made->level.height, made->level.points);
    status = filter_profile(made, high - low, error);
    if (status != CG_OK) {
        cg_surface_free(made);
        return status;
    }
    cg_ratio_curve_sort(made->curve.height, made->evaluated, &made->curve);
    cg_ratio_curve_core(&made->curve, &made->core);
    cg_ratio_curve_probability(&made->curve, &made->probability);
    *surface = made;
    return CG_OK;
}
