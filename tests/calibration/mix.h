/* All laws together: each weighs as its facts' marginal likelihood, but none of
 * gas heat and none of the film less than the least weight stated. */
#ifndef CG_MIX_H
#define CG_MIX_H

#include "learn.h"

enum { LAWS = 16 };

/* Weights [laws] that sum to 1 from ln evidence [laws]: of gas heat times of
 * the film. */
void mix_weights(const struct facts *facts, const struct learned *learned,
                 size_t laws, const double *log_evidence, double *weight);

/* A fact as all laws together foresee it. */
struct foreseen mix_foreseen(const struct facts *facts,
                             const struct learned *learned, size_t laws,
                             size_t fact);

#endif
