#include "mixture.h"

#include <math.h>

#include <gsl/gsl_cdf.h>

/* Halvings: more than a double can tell apart. */
enum { HALVINGS = 200 };

double cg_mixture_above(const struct cg_mixture *mixture, double x)
{
    double sum = 0.0;
    for (size_t i = 0; i < mixture->parts; i++)
        sum += mixture->weight[i] *
               gsl_cdf_ugaussian_Q((x - mixture->mean[i]) / mixture->sd[i]);
    return sum;
}

double cg_mixture_quantile(const struct cg_mixture *mixture, double above)
{
    double z = gsl_cdf_ugaussian_Qinv(above);
    double low = INFINITY, high = -INFINITY;
    for (size_t i = 0; i < mixture->parts; i++) {
        double own = mixture->mean[i] + z * mixture->sd[i];
        low = fmin(low, own);
        high = fmax(high, own);
    }
    for (int i = 0; i < HALVINGS && low < high; i++) {
        double middle = low + 0.5 * (high - low);
        if (middle == low || middle == high)
            break;
        if (cg_mixture_above(mixture, middle) > above)
            low = middle;
        else
            high = middle;
    }
    return high;
}

double cg_mixture_mean(const struct cg_mixture *mixture)
{
    double sum = 0.0;
    for (size_t i = 0; i < mixture->parts; i++)
        sum += mixture->weight[i] * mixture->mean[i];
    return sum;
}

double cg_mixture_sd(const struct cg_mixture *mixture)
{
    double mean = cg_mixture_mean(mixture), sum = 0.0;
    for (size_t i = 0; i < mixture->parts; i++) {
        double off = mixture->mean[i] - mean, sd = mixture->sd[i];
        sum += mixture->weight[i] * (sd * sd + off * off);
    }
    return sqrt(sum);
}
