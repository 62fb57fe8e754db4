#include "mix.h"

#include <math.h>
#include <string.h>

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

/* Weight of each name among the laws: `film` tells which of the two names. */
static void weigh_names(const struct facts *facts,
                        const struct learned *learned, size_t laws,
                        const double *plain, bool film, double *of_law)
{
    const char *name[LAWS];
    double sum[LAWS] = {0.0};
    size_t place[LAWS], names = 0;
    for (size_t i = 0; i < laws; i++) {
        const char *own = film ? learned[i].law.film : learned[i].law.gas;
        size_t k = 0;
        while (k < names && strcmp(name[k], own) != 0)
            k++;
        if (k == names)
            name[names++] = own;
        sum[k] += plain[i];
        place[i] = k;
    }
    lift(sum, names, facts->least_weight);
    for (size_t i = 0; i < laws; i++)
        of_law[i] = sum[place[i]];
}

void mix_weights(const struct facts *facts, const struct learned *learned,
                 size_t laws, const double *log_evidence, double *weight)
{
    double plain[LAWS] = {0.0}, gas[LAWS], film[LAWS];
    double most = -INFINITY, sum = 0.0;
    for (size_t i = 0; i < laws; i++)
        most = fmax(most, log_evidence[i]);
    for (size_t i = 0; i < laws; i++)
        sum += plain[i] = exp(log_evidence[i] - most);
    for (size_t i = 0; i < laws; i++)
        plain[i] /= sum;
    weigh_names(facts, learned, laws, plain, false, gas);
    weigh_names(facts, learned, laws, plain, true, film);
    for (size_t i = 0; i < laws; i++)
        weight[i] = gas[i] * film[i];
}

struct foreseen mix_foreseen(const struct facts *facts,
                             const struct learned *learned, size_t laws,
                             size_t fact)
{
    struct foreseen all = {0};
    double evidence[LAWS] = {0.0}, weight[LAWS], square = 0.0;
    for (size_t i = 0; i < laws; i++)
        evidence[i] = learned[i].foreseen[fact].log_evidence;
    mix_weights(facts, learned, laws, evidence, weight);
    for (size_t i = 0; i < laws; i++) {
        const struct foreseen *one = &learned[i].foreseen[fact];
        all.mean += weight[i] * one->mean;
        square += weight[i] * (one->mean * one->mean + one->sd * one->sd);
        all.chance += weight[i] * one->chance;
    }
    all.sd = sqrt(fmax(square - all.mean * all.mean, 0.0));
    return all;
}
