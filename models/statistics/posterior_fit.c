/* Nonlinear least squares of the posterior, its sights all measured values. */
#include "posterior_fit.h"

#include <math.h>
#include <string.h>

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>

enum { MOST_PASSES = 60 };

/* Where neither descent nor the search for rest gets any further, this many
 * standard deviations off are near enough: rounding of the model is what is
 * left. */
#define NEAR_ENOUGH 0.02

static enum cg_status move_to(struct cg_posterior_fit *fit, const double *u,
                              bool slopes)
{
    const struct cg_posterior_model *model = fit->model;
    struct cg_posterior *at = fit->at;
    size_t bytes = at->unknowns * sizeof *u;
    enum cg_status status = CG_OK;
    if (!fit->has_values || memcmp(at->mean, u, bytes) != 0) {
        memmove(at->mean, u, bytes);
        fit->has_slopes = false;
        status = model->values(model->context, u, at->y, fit->error);
        fit->has_values = status == CG_OK;
    }
    if (status == CG_OK && slopes && !fit->has_slopes) {
        status = model->slopes(model->context, u, at->slope, fit->error);
        fit->has_slopes = status == CG_OK;
    }
    return fit->status = status;
}

/* Weighted residual of a sight; one without weight says nothing. */
static double residual_of(const struct cg_posterior *at, size_t sight)
{
    double weight = at->weight[sight];
    return weight > 0.0
               ? sqrt(weight) * (at->y[sight] - at->pull[sight] / weight)
               : 0.0;
}

enum cg_status cg_posterior_fit_move(struct cg_posterior_fit *fit,
                                     const double *u)
{
    return move_to(fit, u, true);
}

static int residuals(const gsl_vector *u, void *context, gsl_vector *out)
{
    struct cg_posterior_fit *fit = context;
    const struct cg_posterior *at = fit->at;
    if (move_to(fit, gsl_vector_const_ptr(u, 0), false) != CG_OK)
        return GSL_EFAILED;
    for (size_t i = 0; i < at->sights; i++)
        gsl_vector_set(out, i, residual_of(at, i));
    for (size_t k = 0; k < at->unknowns; k++)
        gsl_vector_set(out, at->sights + k, gsl_vector_get(u, k));
    return GSL_SUCCESS;
}

static int jacobian(const gsl_vector *u, void *context, gsl_matrix *out)
{
    struct cg_posterior_fit *fit = context;
    const struct cg_posterior *at = fit->at;
    size_t n = at->unknowns;
    if (move_to(fit, gsl_vector_const_ptr(u, 0), true) != CG_OK)
        return GSL_EFAILED;
    gsl_matrix_set_zero(out);
    for (size_t i = 0; i < at->sights; i++)
        for (size_t k = 0; k < n; k++)
            gsl_matrix_set(out, i, k,
                           sqrt(at->weight[i]) * at->slope[i * n + k]);
    for (size_t k = 0; k < n; k++)
        gsl_matrix_set(out, at->sights + k, k, 1.0);
    return GSL_SUCCESS;
}

/* Cholesky factor of 1 + sum weight a a' into `normal`. */
static enum cg_status fill_normal(struct cg_posterior_fit *fit)
{
    const struct cg_posterior *at = fit->at;
    size_t n = at->unknowns;
    gsl_matrix_set_identity(fit->normal);
    for (size_t i = 0; i < at->sights; i++) {
        gsl_vector_const_view a =
            gsl_vector_const_view_array(at->slope + i * n, n);
        gsl_blas_dsyr(CblasLower, at->weight[i], &a.vector, fit->normal);
    }
    if (gsl_linalg_cholesky_decomp1(fit->normal) != GSL_SUCCESS)
        return cg_error_set(fit->error, CG_NUMERICAL,
                            "a posterior without a finite width");
    return CG_OK;
}

enum cg_status cg_posterior_fit_distance(struct cg_posterior_fit *fit,
                                         double *distance)
{
    const struct cg_posterior *at = fit->at;
    size_t n = at->unknowns;
    enum cg_status status = move_to(fit, at->mean, true);
    if (status == CG_OK)
        status = fill_normal(fit);
    if (status != CG_OK)
        return status;
    for (size_t k = 0; k < n; k++) {
        double sum = at->mean[k];
        for (size_t i = 0; i < at->sights; i++)
            sum +=
                sqrt(at->weight[i]) * at->slope[i * n + k] * residual_of(at, i);
        gsl_vector_set(fit->gradient, k, sum);
    }
    gsl_blas_dtrsv(CblasLower, CblasNoTrans, CblasNonUnit, fit->normal,
                   fit->gradient);
    *distance = gsl_blas_dnrm2(fit->gradient);
    return CG_OK;
}

enum cg_status cg_posterior_fit_trouble(struct cg_posterior_fit *fit, int gsl)
{
    if (fit->status != CG_OK)
        return fit->status;
    if (gsl == GSL_ENOMEM)
        return cg_error_set(fit->error, CG_NO_MEMORY, "out of memory");
    return cg_error_set(fit->error, CG_NUMERICAL,
                        "the fit to the evidence does not converge: %s",
                        gsl_strerror(gsl));
}

enum cg_status cg_posterior_fit_descend(struct cg_posterior_fit *fit,
                                        gsl_multifit_nlinear_workspace *work,
                                        double *reached)
{
    gsl_vector_view begin =
        gsl_vector_view_array(fit->at->mean, fit->at->unknowns);
    gsl_multifit_nlinear_fdf function = {.f = residuals,
                                         .df = jacobian,
                                         .n = fit->at->sights +
                                              fit->at->unknowns,
                                         .p = fit->at->unknowns,
                                         .params = fit};
    double distance = INFINITY;
    int gsl = gsl_multifit_nlinear_init(&begin.vector, &function, work);
    for (int pass = 0; gsl == GSL_SUCCESS && pass < MOST_PASSES; pass++) {
        enum cg_status status = cg_posterior_fit_distance(fit, &distance);
        *reached = distance;
        if (status != CG_OK || distance <= fit->model->tolerance)
            return status;
        gsl = gsl_multifit_nlinear_iterate(work);
        /* The last point tried need not be the one kept. */
        if (gsl == GSL_SUCCESS || gsl == GSL_ENOPROG) {
            const gsl_vector *kept = gsl_multifit_nlinear_position(work);
            status = move_to(fit, gsl_vector_const_ptr(kept, 0), true);
            if (status != CG_OK)
                return status;
        }
    }
    if (gsl != GSL_SUCCESS && gsl != GSL_ENOPROG)
        return cg_posterior_fit_trouble(fit, gsl);
    enum cg_status status = cg_posterior_fit_rest(fit, reached);
    if (status == CG_OK && !(*reached < NEAR_ENOUGH))
        return cg_error_set(fit->error, CG_NUMERICAL,
                            "the fit to the evidence does not converge: it "
                            "still moves by %.2g standard deviations",
                            *reached);
    return status;
}
