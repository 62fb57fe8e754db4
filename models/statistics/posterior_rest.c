/* Where a model bends at once, its sum of squares has an edge, and descent ends
 * at it.  Slopes that are means over a stretch go over the edge smoothly, and
 * so does the Newton step that is made of them: where that is nothing the
 * straight model there is its own posterior (the fixed point of posterior
 * linearisation: A. F. Garcia-Fernandez et al., IEEE Trans. Signal Process. 63
 * (2015), from memory).  It is looked for by Broyden's method (C. G. Broyden,
 * "A class of methods for solving nonlinear simultaneous equations", 1965),
 * from a Newton step as the first guess. */
#include "posterior_fit.h"

#include <math.h>

#include <gsl/gsl_blas.h>

enum { REST_PASSES = 40 };

/* Longest move, in standard deviations of after: about what slopes hold for. */
#define LONGEST 0.5

struct rest {
    gsl_matrix *inverse; /* moves the mean by minus this times the step */
    gsl_vector *mean, *best, *step, *change, *move, *left, *right;
};

static bool make_rest(size_t n, struct rest *rest)
{
    gsl_vector **const vectors[] = {&rest->mean, &rest->best,   &rest->step,
                                    &rest->move, &rest->change, &rest->left,
                                    &rest->right};
    bool made = true;
    rest->inverse = gsl_matrix_alloc(n, n);
    for (size_t i = 0; i < sizeof vectors / sizeof vectors[0]; i++) {
        *vectors[i] = gsl_vector_alloc(n);
        made = made && *vectors[i] != NULL;
    }
    return made && rest->inverse != NULL;
}

static void free_rest(struct rest *rest)
{
    gsl_matrix_free(rest->inverse);
    gsl_vector_free(rest->mean);
    gsl_vector_free(rest->best);
    gsl_vector_free(rest->step);
    gsl_vector_free(rest->change);
    gsl_vector_free(rest->move);
    gsl_vector_free(rest->left);
    gsl_vector_free(rest->right);
}

/* The Newton step from rest->mean, and its length in standard deviations. */
static enum cg_status step_from(struct cg_posterior_fit *fit, struct rest *rest,
                                gsl_vector *step, double *distance)
{
    enum cg_status status =
        cg_posterior_fit_move(fit, gsl_vector_const_ptr(rest->mean, 0));
    if (status == CG_OK)
        status = cg_posterior_fit_distance(fit, distance);
    if (status == CG_OK && !isfinite(*distance))
        status = cg_error_set(fit->error, CG_NUMERICAL,
                              "the fit to the evidence does not converge: it "
                              "left what the model can compute");
    if (status != CG_OK)
        return status;
    gsl_vector_memcpy(step, fit->gradient);
    gsl_blas_dtrsv(CblasLower, CblasTrans, CblasNonUnit, fit->normal, step);
    gsl_vector_scale(step, -1.0);
    return CG_OK;
}

/* inverse += (move - inverse change) (move' inverse) / (move' inverse change)
 */
static void learn_move(struct rest *rest)
{
    double along;
    gsl_blas_dgemv(CblasNoTrans, 1.0, rest->inverse, rest->change, 0.0,
                   rest->right);
    gsl_blas_dgemv(CblasTrans, 1.0, rest->inverse, rest->move, 0.0, rest->left);
    gsl_blas_ddot(rest->move, rest->right, &along);
    if (!(fabs(along) >
          1e-3 * gsl_blas_dnrm2(rest->move) * gsl_blas_dnrm2(rest->right)))
        return; /* tells too little */
    gsl_vector_scale(rest->right, -1.0);
    gsl_vector_add(rest->right, rest->move);
    gsl_blas_dger(1.0 / along, rest->right, rest->left, rest->inverse);
}

/* The next move, no longer than LONGEST. */
static void choose_move(struct cg_posterior_fit *fit, struct rest *rest)
{
    gsl_blas_dgemv(CblasNoTrans, -1.0, rest->inverse, rest->step, 0.0,
                   rest->move);
    gsl_vector_memcpy(rest->left, rest->move);
    gsl_blas_dtrmv(CblasLower, CblasTrans, CblasNonUnit, fit->normal,
                   rest->left);
    double length = gsl_blas_dnrm2(rest->left);
    if (!(length <= LONGEST))
        gsl_vector_scale(rest->move, LONGEST / length);
}

/* On from the last point, be it better or worse: what it teaches counts. */
static enum cg_status search(struct cg_posterior_fit *fit, struct rest *rest,
                             double *reached)
{
    double distance;
    gsl_matrix_set_identity(rest->inverse);
    gsl_matrix_scale(rest->inverse, -1.0);
    enum cg_status status = step_from(fit, rest, rest->step, reached);
    gsl_vector_memcpy(rest->best, rest->mean);
    for (int pass = 0; status == CG_OK &&
                       pass<REST_PASSES && * reached> fit->model->tolerance;
         pass++) {
        choose_move(fit, rest);
        gsl_vector_add(rest->mean, rest->move);
        gsl_vector_memcpy(rest->change, rest->step);
        status = step_from(fit, rest, rest->step, &distance);
        if (status == CG_OK && distance < *reached) {
            *reached = distance;
            gsl_vector_memcpy(rest->best, rest->mean);
        }
        gsl_vector_sub(rest->change, rest->step);
        gsl_vector_scale(rest->change, -1.0);
        learn_move(rest);
    }
    return status;
}

enum cg_status cg_posterior_fit_rest(struct cg_posterior_fit *fit,
                                     double *reached)
{
    size_t n = fit->at->unknowns;
    struct rest rest;
    enum cg_status status;
    if (!make_rest(n, &rest)) {
        status = cg_error_set(fit->error, CG_NO_MEMORY, "out of memory");
    } else {
        gsl_vector_const_view at =
            gsl_vector_const_view_array(fit->at->mean, n);
        gsl_vector_memcpy(rest.mean, &at.vector);
        status = search(fit, &rest, reached);
        if (status == CG_OK) {
            gsl_vector_memcpy(rest.mean, rest.best);
            status = step_from(fit, &rest, rest.step, reached);
        }
    }
    free_rest(&rest);
    return status;
}
