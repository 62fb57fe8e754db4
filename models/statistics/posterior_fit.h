/* The least-squares part of a posterior.  Private to the posterior. */
#ifndef CG_POSTERIOR_FIT_H
#define CG_POSTERIOR_FIT_H

#include <gsl/gsl_matrix.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <gsl/gsl_vector.h>

#include "posterior.h"

/* A posterior on its way, kept up to date with its values and slopes. */
struct cg_posterior_fit {
    const struct cg_posterior_model *model;
    struct cg_posterior *at;
    gsl_matrix *normal;   /* [unknowns][unknowns] */
    gsl_vector *gradient; /* [unknowns] */
    bool has_values, has_slopes;
    enum cg_status status;
    struct cg_error *error;
};

/* Values and slopes at u, unless they are there already. */
enum cg_status cg_posterior_fit_move(struct cg_posterior_fit *fit,
                                     const double *u);

/* Length of the Newton step from here, in posterior standard deviations: the
 * Newton decrement (S. Boyd and L. Vandenberghe, "Convex Optimization", 2004,
 * sec. 9.5.1).  Leaves the Cholesky factor of 1 + sum weight a a' in
 * `normal`, and of that step, L^-1 of the gradient in `gradient`. */
enum cg_status cg_posterior_fit_distance(struct cg_posterior_fit *fit,
                                         double *distance);

/* From the present mean on to where the Newton step is nothing, or least in
 * so many passes: for a model that bends; *reached receives the distance left
 * there. */
enum cg_status cg_posterior_fit_rest(struct cg_posterior_fit *fit,
                                     double *reached);

/* Least squares from the present mean, weights as they are; *reached receives
 * the distance left.  CG_NUMERICAL, with what still moves, where it does not
 * converge. */
enum cg_status cg_posterior_fit_descend(struct cg_posterior_fit *fit,
                                        gsl_multifit_nlinear_workspace *work,
                                        double *reached);

/* What the solver's status means to the caller: the model's own trouble, or
 * that of GSL. */
enum cg_status cg_posterior_fit_trouble(struct cg_posterior_fit *fit, int gsl);

#endif
