#include "mix.h"

#include <math.h>

/* Raises weights below the least to it, and lowers the others alike. */
static void lift(double *weight, size_t count, double least)
{
    bool low[LAWS] = {false};
    for (size_t pass = 0; pass < count; pass++) {
        double free = 0.0, left = 1.0;
        for (size_t i = 0; i < count; i++) {
            low[i] |= weight[i] < least;
            left -= low[i] ? least : 0.0;
            free += low[i] ? 0.0 : weight[i];
        }
        for (size_t i = 0; i < count; i++)
            weight[i] = low[i] ? least : weight[i] * left / free;
    }
}

void mix_weights(const struct facts *facts, size_t laws,
                 const double *log_evidence, double *weight)
{
    double most = -INFINITY, sum = 0.0;
    for (size_t i = 0; i < laws; i++)
        most = fmax(most, log_evidence[i]);
    for (size_t i = 0; i < laws; i++)
        sum += weight[i] = exp(log_evidence[i] - most);
    for (size_t i = 0; i < laws; i++)
        weight[i] /= sum;
    lift(weight, laws, facts->least_weight);
}

struct foreseen mix_foreseen(const struct facts *facts,
                             const struct learned *learned, size_t laws,
                             size_t fact)
{
    struct foreseen all = {0};
    double evidence[LAWS] = {0.0}, weight[LAWS], square = 0.0;
    for (size_t i = 0; i < laws; i++)
        evidence[i] = learned[i].foreseen[fact].log_evidence;
    mix_weights(facts, laws, evidence, weight);
    for (size_t i = 0; i < laws; i++) {
        const struct foreseen *one = &learned[i].foreseen[fact];
        all.mean += weight[i] * one->mean;
        square += weight[i] * (one->mean * one->mean + one->sd * one->sd);
        all.chance += weight[i] * one->chance;
    }
    all.sd = sqrt(fmax(square - all.mean * all.mean, 0.0));
    return all;
}
