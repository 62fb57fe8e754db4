#include "normals.h"

#include <math.h>

#include <gsl/gsl_cdf.h>

/* Halvings: more than a double can tell apart. */
enum { HALVINGS = 200 };

/* A part without spread is a step, and half of it lies above its own place. */
static double score(const struct cg_normals *normals, size_t i, double x)
{
    double off = x - normals->mean[i];
    return normals->sd[i] > 0.0 ? off / normals->sd[i]
           : off == 0.0         ? 0.0
                                : copysign(INFINITY, off);
}

double cg_normals_above(const struct cg_normals *normals, double x)
{
    double sum = 0.0;
    for (size_t i = 0; i < normals->parts; i++)
        sum += normals->weight[i] *
               gsl_cdf_ugaussian_Q(score(normals, i, x));
    return sum;
}

double cg_normals_quantile(const struct cg_normals *normals, double above)
{
    double z = gsl_cdf_ugaussian_Qinv(above);
    double low = INFINITY, high = -INFINITY;
    for (size_t i = 0; i < normals->parts; i++) {
        double own = normals->mean[i] + z * normals->sd[i];
        low = fmin(low, own);
        high = fmax(high, own);
    }
    for (int i = 0; i < HALVINGS && low < high; i++) {
        double middle = low + 0.5 * (high - low);
        if (middle == low || middle == high)
            break;
        if (cg_normals_above(normals, middle) > above)
            low = middle;
        else
            high = middle;
    }
    return high;
}

double cg_normals_mean(const struct cg_normals *normals)
{
    double sum = 0.0;
    for (size_t i = 0; i < normals->parts; i++)
        sum += normals->weight[i] * normals->mean[i];
    return sum;
}

double cg_normals_sd(const struct cg_normals *normals)
{
    double mean = cg_normals_mean(normals), sum = 0.0;
    for (size_t i = 0; i < normals->parts; i++) {
        double off = normals->mean[i] - mean, sd = normals->sd[i];
        sum += normals->weight[i] * (sd * sd + off * off);
    }
    return sqrt(sum);
}
