/* The posterior of the constants for one law, all facts together.
 *
 * cg_posterior (models/statistics/posterior.h) finds it with a workshop
 * engine's ring taken as the mean of the metals; samples drawn from there are
 * then weighted by what prior and facts say exactly (importance sampling: A.
 * Gelman et al., "Bayesian Data Analysis", 3rd ed. 2013, sec. 10.4): metals
 * summed over, the engines' scatter unknown, y straight and bent in each
 * constant.  The weights' mean is the marginal likelihood; without one fact's
 * factor they are the posterior without it.
 */
#ifndef CG_LEARN_H
#define CG_LEARN_H

#include "facts.h"
#include "observe.h"

enum { DRAWS = 40000 };

/* A fact as the others (calibrated on), or all of those (held), foresee it. */
struct foreseen {
    double log_evidence; /* of the facts that it is foreseen from */
    double mean, sd;     /* of what is seen, its own spread in it */
    double chance;       /* one-sided: of what was seen; else density */
};

struct learned {
    struct law law;
    struct sight *sight;                      /* [facts], owned */
    struct straight straight[FACTS][METALS];
    double at[CONSTANTS];                     /* where it was taken straight */
    double mean[CONSTANTS], covariance[CONSTANTS][CONSTANTS]; /* scores */
    double scatter, scatter_sd;               /* ln of it: mean, sd */
    double log_evidence;
    double effective;                         /* draws, of DRAWS */
    double worst_effective;                   /* with a fact left out */
    double bent; /* what the straight line errs, of y's spread, rms */
    struct foreseen foreseen[FACTS];
};

/* Ends with a message where the model fails.  Caller frees. */
void learn(const struct facts *facts, const struct law *law,
           struct learned *learned);
void learned_free(struct learned *learned);

/* Middle of a constant as learned, and its spread, relative. */
double learned_value(const struct facts *facts, const struct learned *learned,
                     size_t constant);
double learned_spread(const struct facts *facts, const struct learned *learned,
                      size_t constant);

/* Deviation of a fact from what is foreseen: standardised error, or of a
 * one-sided one the normal number with its chance, negative where unlikely. */
double fact_deviation(const struct fact *fact, const struct foreseen *foreseen);

#endif
