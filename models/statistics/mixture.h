/* A mixture of normal distributions: which of them holds is itself unknown.
 *
 *   chance of more than x = sum weight_i Q((x - mean_i) / sd_i)
 *
 * (G. McLachlan and D. Peel, "Finite Mixture Models", 2000, sec. 1.4.)  Its
 * quantile has no closed form and is bracketed by those of its parts. */
#ifndef CG_MIXTURE_H
#define CG_MIXTURE_H

#include <stddef.h>

enum { CG_MIXTURE_PARTS = 16 };

struct cg_mixture {
    size_t parts; /* at least 1 */
    double weight[CG_MIXTURE_PARTS]; /* sum to 1 */
    double mean[CG_MIXTURE_PARTS], sd[CG_MIXTURE_PARTS]; /* sd > 0 */
};

/* Chance of more than x [1].  Cannot fail. */
double cg_mixture_above(const struct cg_mixture *mixture, double x);

/* The x that is passed with the chance `above`, 0 < above < 1; to rounding.
 * Cannot fail. */
double cg_mixture_quantile(const struct cg_mixture *mixture, double above);

double cg_mixture_mean(const struct cg_mixture *mixture);
double cg_mixture_sd(const struct cg_mixture *mixture);

#endif
