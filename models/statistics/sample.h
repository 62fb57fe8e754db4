/* Sampling a function of independent standard normal inputs: moments, a
 * quantile with its own standard error, and total-effect variance shares.
 *
 * Points are Sobol's sequence (its origin first) carried by a random shift,
 * modulo 1, and mapped by the inverse normal distribution.  Several shifts, the
 * replicates, make the error of a quasi-random answer known: R. Cranley and
 * T. N. L. Patterson, "Randomization of number theoretic methods for multiple
 * integration", SIAM J. Numer. Anal. 13 (1976); P. L'Ecuyer and C. Lemieux,
 * "Recent advances in randomized quasi-Monte Carlo methods" (2002).
 *
 * Shares: the point is run again with one input swapped for an independent
 * value, and half the mean square of the difference is what that input, alone
 * and with others, adds to the variance: M. J. W. Jansen, "Analysis of
 * variance designs for model output", Comput. Phys. Commun. 117 (1999);
 * A. Saltelli et al., "Variance based sensitivity analysis of model output",
 * ibid. 181 (2010).  Done for the first `swaps` points only: the cost is
 * samples + swaps * swapped runs, about 1.25 times the samples.
 *
 * The sequence has CG_SAMPLE_DIMENSIONS: values swapped in beyond them are
 * pseudo-random, which the shares bear.
 *
 * Points are drawn here and values put in by the caller, in any order and from
 * any thread; sums run in the order of the points, so that they do not depend
 * on it.
 */
#ifndef CG_SAMPLE_H
#define CG_SAMPLE_H

#include <stddef.h>

#include "status.h"

enum {
    CG_SAMPLE_DIMENSIONS = 40, /* of the sequence: inputs, then swapped ones */
    CG_SAMPLE_INPUTS = 32,     /* most, whether swapped or not */
    CG_SAMPLE_REPLICATES = 16,
    CG_SAMPLE_FEWEST_SWAPS = 64
};

struct cg_sample {
    size_t samples, inputs, replicates; /* sample j is of replicate j mod R */
    size_t swaps;   /* points 0 .. swaps - 1 have their inputs swapped */
    size_t swapped; /* inputs 0 .. swapped - 1 are */
    size_t dimensions; /* inputs + swapped */
    double *sequence; /* [samples / R, rounded up][dimensions] in 0..1 */
    double *shift;    /* [R][dimensions] in 0..1 */
    double *value;    /* [samples]: the caller's; NaN: failed */
    double *swapped_value; /* [swaps][swapped]: the same */
    double *sorted;   /* [samples]: after cg_sample_add_up, those not failed */
};

struct cg_sample_sum {
    size_t good, failures;     /* of the samples */
    double mean, sd;
    double quantile;
    double quantile_error;     /* its standard error */
};

/* Draws the points: samples >= 2, 1 <= inputs <= CG_SAMPLE_INPUTS, of which
 * the first `swapped` get shares.  Equal seeds give equal points.  CG_NO_MEMORY.  Caller
 * frees. */
enum cg_status cg_sample_create(size_t samples, size_t inputs, size_t swapped,
                                unsigned long seed, struct cg_sample **sample,
                                struct cg_error *error);
void cg_sample_free(struct cg_sample *sample); /* accepts NULL */

/* The point's inputs, score[inputs], and the value that takes the place of
 * one of them.  Cannot fail; safe from several threads. */
void cg_sample_point(const struct cg_sample *sample, size_t index,
                     double *score);
double cg_sample_swap(const struct cg_sample *sample, size_t index,
                      size_t input);

/* Moments and quantile of the values put in; failed ones are left out.  The
 * quantile's error is the spread of the replicates' quantiles about the whole
 * one (sectioning: M. K. Nakayama, "Confidence intervals for quantiles using
 * sectioning when applying variance-reduction techniques", ACM TOMACS 24
 * (2014)).  CG_NUMERICAL when more than 1 % of the values failed. */
enum cg_status cg_sample_add_up(struct cg_sample *sample, double probability,
                                struct cg_sample_sum *sum,
                                struct cg_error *error);

/* Total-effect share of the variance of a swapped input, and its standard
 * error as of plain random sampling.  Zero where nothing varies. */
double cg_sample_total_effect(const struct cg_sample *sample,
                              const struct cg_sample_sum *sum, size_t input,
                              double *standard_error);

/* Quantile of ascending values, nearly median-unbiased: type 8 of R. J.
 * Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American
 * Statistician 50 (1996). */
double cg_sample_quantile(const double *ascending, size_t count,
                          double probability);

#endif
