/* What sights say about unknowns that were vaguely known before.
 *
 * Unknowns u are independent standard normal numbers beforehand.  A sight is a
 * measured value of a model y(u), with its standard deviation s, or the mere
 * sign that y lies below or above a value known to s.  Values alone make it
 * nonlinear least squares with the prior as one more residual each,
 *
 *   minimise  sum ((y_i(u) - value_i) / s_i)^2 + |u|^2
 *   covariance  (1 + sum a_i a_i' / s_i^2)^-1,   a_i = dy_i/du there
 *
 * (A. Tarantola, "Inverse Problem Theory", SIAM 2005, sec. 3.2), solved by
 * GSL's trust region (gsl_multifit_nlinear, dogleg), and where y bends at once by
 * the search for rest in posterior_rest.c.  Where y is straight in
 * u this is Bayes' rule itself.
 *
 * A sign has the probability Phi((value - y) / s), or of the opposite.  It
 * takes part as the measured value that leaves the same mean and variance of y,
 * found by expectation propagation: T. P. Minka, "Expectation propagation for
 * approximate Bayesian inference", UAI 2001; C. E. Rasmussen and C. K. I.
 * Williams, "Gaussian Processes for Machine Learning", 2006, sec. 3.6 and 3.9.
 * For one sign and a straight model that is exact in mean and variance; the
 * highest point of the density, which is cheaper, would sit at the edge of what
 * the sign allows and understate it.
 */
#ifndef CG_POSTERIOR_H
#define CG_POSTERIOR_H

#include <stdbool.h>
#include <stddef.h>

#include "status.h"

enum { CG_SIGHTS = 32 }; /* most at once */

enum cg_sight_kind {
    CG_SIGHT_VALUE, /* y measured as `value` */
    CG_SIGHT_BELOW, /* y seen to be below `value` */
    CG_SIGHT_ABOVE
};

struct cg_sight {
    enum cg_sight_kind kind;
    double value, spread; /* spread > 0: one standard deviation */
};

struct cg_posterior_model {
    size_t unknowns, sights; /* unknowns >= 1, sights <= CG_SIGHTS */
    const struct cg_sight *sight;
    double tolerance; /* of the mean, in its own standard deviations */
    void *context;
    /* y[sights] at u[unknowns]; and their slopes there, [sights][unknowns],
     * for the u of the last call of `values`. */
    enum cg_status (*values)(void *context, const double *u, double *y,
                             struct cg_error *error);
    enum cg_status (*slopes)(void *context, const double *u, double *slope,
                             struct cg_error *error);
};

struct cg_posterior {
    size_t unknowns, sights;
    double *mean;       /* [unknowns] */
    double *covariance; /* [unknowns][unknowns] */
    double *y, *slope;  /* at the mean */
    /* A sight as a measured value: 1 / s^2, and value / s^2. */
    double *weight, *pull; /* [sights] */
};

/* Room for the posterior of a model; its mean is at zero, where the values and
 * slopes are filled in: the prior.  Caller frees.  CG_NO_MEMORY, and what the
 * model's functions return. */
enum cg_status cg_posterior_create(const struct cg_posterior_model *model,
                                   struct cg_posterior **posterior,
                                   struct cg_error *error);
void cg_posterior_free(struct cg_posterior *posterior); /* accepts NULL */

/* Mean and covariance after all sights.  CG_NUMERICAL when it does not
 * converge, CG_NO_MEMORY, and what the model's functions return. */
enum cg_status cg_posterior_find(const struct cg_posterior_model *model,
                                 struct cg_posterior *posterior,
                                 struct cg_error *error);

/* How far sight `one` is from what the prior and the sights `given` predict, in
 * standard deviations of the difference, about the posterior's own straight
 * line; positive: y was seen above.  For a sign, the deviation of a normal
 * number with the sign's chance, zero if it is likelier than not. */
enum cg_status cg_posterior_deviation(const struct cg_posterior_model *model,
                                      const struct cg_posterior *posterior,
                                      size_t one, const bool *given,
                                      double *deviation,
                                      struct cg_error *error);

/* Chance that measured values lie this far from the prior or farther: their
 * squared distance in the prior's prediction is chi-square with one degree of
 * freedom a value (Gelman et al., "Bayesian Data Analysis", 3rd ed. 2013, sec.
 * 6.3).  1 without values. */
enum cg_status cg_posterior_chance(const struct cg_posterior_model *model,
                                   const struct cg_posterior *posterior,
                                   double *chance, struct cg_error *error);

#endif
