/* All laws together: each law of gas heat with each of the film weighs as the
 * facts' marginal likelihood by it, but none less than the least weight stated.
 * A gap of a given risk is the mixture's, so that the chance by any one law as
 * the truth is at most the risk over its weight. */
#ifndef CG_MIX_H
#define CG_MIX_H

#include "learn.h"

enum { LAWS = 16 };

/* Weights [laws] that sum to 1 from ln evidence [laws]. */
void mix_weights(const struct facts *facts, size_t laws,
                 const double *log_evidence, double *weight);

/* A fact as all laws together foresee it. */
struct foreseen mix_foreseen(const struct facts *facts,
                             const struct learned *learned, size_t laws,
                             size_t fact);

#endif
