#include "mean_line.h"

#include <math.h>
#include <stdlib.h>

#include <gsl/gsl_statistics_double.h>

#include "constants.h"
#include "regression_line.h"

double cg_mean_line_gaussian_share(double ratio)
{
    return exp2(-ratio * ratio);
}

double cg_mean_line_quadratic_share(double ratio)
{
    double a = CG_WEIGHT_QUADRATIC;
    double u = CG_PI * a * a * ratio * ratio;
    return (1.0 + u) * exp(-u);
}

static enum cg_status line_of_degree(const double *height, size_t points,
                                     double spacing, double cutoff, int degree,
                                     double *line, struct cg_error *error)
{
    struct cg_regression *regression = NULL;
    enum cg_status status = cg_regression_create(points, spacing, cutoff,
                                                 degree, &regression, error);
    if (status == CG_OK)
        status = cg_regression_line(regression, height, NULL, line, error);
    cg_regression_free(regression);
    return status;
}

enum cg_status cg_mean_line_gaussian(const double *height, size_t points,
                                     double spacing, double cutoff,
                                     double *line, struct cg_error *error)
{
    return line_of_degree(height, points, spacing, cutoff, 1, line, error);
}

enum cg_status cg_mean_line_quadratic(const double *height, size_t points,
                                      double spacing, double cutoff,
                                      double *line, struct cg_error *error)
{
    return line_of_degree(height, points, spacing, cutoff, 2, line, error);
}

enum cg_status cg_mean_line_two_step(const double *height, size_t points,
                                     double spacing, double cutoff,
                                     double *line, struct cg_error *error)
{
    struct cg_regression *regression = NULL;
    double *raised = NULL;
    enum cg_status status =
        cg_regression_create(points, spacing, cutoff, 1, &regression, error);
    if (status == CG_OK)
        status = cg_regression_line(regression, height, NULL, line, error);
    if (status != CG_OK)
        goto out;
    raised = malloc(points * sizeof *raised);
    if (raised == NULL) {
        status = cg_error_set(error, CG_NO_MEMORY, "filter: out of memory");
        goto out;
    }
    for (size_t i = 0; i < points; i++)
        raised[i] = fmax(height[i], line[i]);
    status = cg_regression_line(regression, raised, NULL, line, error);
out:
    free(raised);
    cg_regression_free(regression);
    return status;
}

/* The distance [m] at which a height no longer counts; workspace[points]. */
static double reach_of(const double *height, const double *line, size_t points,
                       double *workspace)
{
    for (size_t i = 0; i < points; i++)
        workspace[i] = fabs(height[i] - line[i]);
    return 4.4478 * gsl_stats_median(workspace, 1, points);
}

static void weigh(const double *height, const double *line, size_t points,
                  double reach, double *weight)
{
    for (size_t i = 0; i < points; i++) {
        double r = (height[i] - line[i]) / reach;
        double left = fmax(1.0 - r * r, 0.0);
        weight[i] = left * left;
    }
}

static enum cg_status settle(struct cg_regression *regression,
                             const double *height, size_t points, double *line,
                             double *weight, struct cg_error *error)
{
    enum { MOST_PASSES = 60 };
    double last = reach_of(height, line, points, weight);
    for (int pass = 0; pass < MOST_PASSES; pass++) {
        if (!(last > 0.0))
            return CG_OK; /* half of the heights lie on the line itself */
        weigh(height, line, points, last, weight);
        enum cg_status status =
            cg_regression_line(regression, height, weight, line, error);
        if (status != CG_OK)
            return status;
        double reach = reach_of(height, line, points, weight);
        if (fabs(reach - last) <= 1e-3 * last)
            return CG_OK;
        last = reach;
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "robust filter: not settled in %d passes", MOST_PASSES);
}

enum cg_status cg_mean_line_robust(const double *height, size_t points,
                                   double spacing, double cutoff, double *line,
                                   struct cg_error *error)
{
    struct cg_regression *regression = NULL;
    double *weight = NULL;
    enum cg_status status =
        cg_regression_create(points, spacing, cutoff, 2, &regression, error);
    if (status == CG_OK)
        status = cg_regression_line(regression, height, NULL, line, error);
    if (status != CG_OK)
        goto out;
    weight = malloc(points * sizeof *weight);
    if (weight == NULL) {
        status = cg_error_set(error, CG_NO_MEMORY, "filter: out of memory");
        goto out;
    }
    status = settle(regression, height, points, line, weight, error);
out:
    free(weight);
    cg_regression_free(regression);
    return status;
}
