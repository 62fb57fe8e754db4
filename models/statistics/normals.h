/* A mixture of normal distributions: which of them holds is itself unknown.
 *
 *   chance of more than x = sum weight_i Q((x - mean_i) / sd_i)
 *
 * (G. McLachlan and D. Peel, "Finite Mixture Models", 2000, sec. 1.4.)  Its
 * quantile has no closed form and is bracketed by those of its parts. */
#ifndef CG_NORMALS_H
#define CG_NORMALS_H

#include <stddef.h>

enum { CG_NORMALS_PARTS = 16 };

struct cg_normals {
    size_t parts; /* at least 1 */
    double weight[CG_NORMALS_PARTS]; /* sum to 1 */
    double mean[CG_NORMALS_PARTS], sd[CG_NORMALS_PARTS]; /* sd >= 0 */
};

/* Chance of more than x [1].  Cannot fail. */
double cg_normals_above(const struct cg_normals *normals, double x);

/* The x that is passed with the chance `above`, 0 < above < 1; to rounding.
 * Cannot fail. */
double cg_normals_quantile(const struct cg_normals *normals, double above);

double cg_normals_mean(const struct cg_normals *normals);
double cg_normals_sd(const struct cg_normals *normals);

#endif
