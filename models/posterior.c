#include "posterior.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <gsl/gsl_sf_erf.h>

enum { MOST_PASSES = 60, MOST_ROUNDS = 60 };

/* Where the solver gets no further, this many standard deviations off are
 * near enough: rounding of the model is what is left. */
#define NEAR_ENOUGH 0.02

/* A posterior on its way, kept up to date with its values and slopes. */
struct fit {
    const struct cg_posterior_model *model;
    struct cg_posterior *at;
    gsl_matrix *normal;   /* [unknowns][unknowns] */
    gsl_vector *gradient; /* [unknowns] */
    bool has_values, has_slopes;
    enum cg_status status;
    struct cg_error *error;
};

static enum cg_status move_to(struct fit *fit, const double *u, bool slopes)
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
    return weight > 0.0 ? sqrt(weight) * (at->y[sight] -
                                          at->pull[sight] / weight)
                        : 0.0;
}

static int residuals(const gsl_vector *u, void *context, gsl_vector *out)
{
    struct fit *fit = context;
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
    struct fit *fit = context;
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
static enum cg_status fill_normal(struct fit *fit)
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

/* Length of the Newton step from here, in posterior standard deviations: the
 * Newton decrement (S. Boyd and L. Vandenberghe, "Convex Optimization", 2004,
 * sec. 9.5.1). */
static enum cg_status find_distance(struct fit *fit, double *distance)
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
            sum += sqrt(at->weight[i]) * at->slope[i * n + k] *
                   residual_of(at, i);
        gsl_vector_set(fit->gradient, k, sum);
    }
    gsl_blas_dtrsv(CblasLower, CblasNoTrans, CblasNonUnit, fit->normal,
                   fit->gradient);
    *distance = gsl_blas_dnrm2(fit->gradient);
    return CG_OK;
}

static enum cg_status solver_trouble(struct fit *fit, int gsl)
{
    if (fit->status != CG_OK)
        return fit->status;
    if (gsl == GSL_ENOMEM)
        return cg_error_set(fit->error, CG_NO_MEMORY, "out of memory");
    return cg_error_set(fit->error, CG_NUMERICAL,
                        "the fit to the evidence does not converge: %s",
                        gsl_strerror(gsl));
}

/* Least squares from the present mean, weights as they are; *reached receives
 * the distance left. */
static enum cg_status descend(struct fit *fit,
                              gsl_multifit_nlinear_workspace *work,
                              double *reached)
{
    gsl_vector_view begin =
        gsl_vector_view_array(fit->at->mean, fit->at->unknowns);
    gsl_multifit_nlinear_fdf function = {
        .f = residuals,
        .df = jacobian,
        .n = fit->at->sights + fit->at->unknowns,
        .p = fit->at->unknowns,
        .params = fit};
    double distance = INFINITY;
    int gsl = gsl_multifit_nlinear_init(&begin.vector, &function, work);
    for (int pass = 0; gsl == GSL_SUCCESS && pass < MOST_PASSES; pass++) {
        enum cg_status status = find_distance(fit, &distance);
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
    if (gsl == GSL_ENOPROG && distance < NEAR_ENOUGH)
        return find_distance(fit, reached);
    return solver_trouble(fit, gsl == GSL_SUCCESS ? GSL_EMAXITER : gsl);
}

static void fill_covariance(struct fit *fit)
{
    struct cg_posterior *at = fit->at;
    size_t n = at->unknowns;
    gsl_matrix_view out = gsl_matrix_view_array(at->covariance, n, n);
    gsl_matrix_memcpy(&out.matrix, fit->normal);
    gsl_linalg_cholesky_invert(&out.matrix);
}

/* Variance of y of a sight [its unit squared]. */
static double variance_of(const struct cg_posterior *at, size_t sight)
{
    size_t n = at->unknowns;
    const double *a = at->slope + sight * n;
    double sum = 0.0;
    for (size_t k = 0; k < n; k++)
        for (size_t l = 0; l < n; l++)
            sum += a[k] * at->covariance[k * n + l] * a[l];
    return sum;
}

/* The value that stands for a sign: what the other sights leave of y (mean,
 * variance), cut by the sign, has the moments of Rasmussen and Williams 2006,
 * eq. 3.85. */
static void renew_sign(const struct cg_sight *sight, size_t i,
                       struct cg_posterior *at)
{
    double variance = variance_of(at, i);
    double left = 1.0 - at->weight[i] * variance; /* share of the weight */
    if (!(variance > 0.0) || !(left > 0.0))
        return; /* y does not move: the sign says nothing */
    double side = sight->kind == CG_SIGHT_BELOW ? -1.0 : 1.0;
    double others = variance / left;
    double mean = (at->y[i] - at->pull[i] * variance) / left;
    double width2 = others + sight->spread * sight->spread;
    double off = side * (mean - sight->value) / sqrt(width2);
    double hazard = gsl_sf_hazard(-off);
    double cut_mean = mean + side * others * hazard / sqrt(width2);
    double cut = others - others * others * hazard * (off + hazard) / width2;
    at->weight[i] = fmax(1.0 / cut - 1.0 / others, 0.0);
    at->pull[i] = cut_mean / cut - mean / others;
}

static bool has_signs(const struct cg_posterior_model *model)
{
    for (size_t i = 0; i < model->sights; i++)
        if (model->sight[i].kind != CG_SIGHT_VALUE)
            return true;
    return false;
}

/* Least squares and signs in turn, until the signs' values stay. */
static enum cg_status alternate(struct fit *fit,
                                gsl_multifit_nlinear_workspace *work)
{
    struct cg_posterior *at = fit->at;
    bool signs = has_signs(fit->model);
    for (int round = 0; round < MOST_ROUNDS; round++) {
        double distance, reached = 0.0;
        enum cg_status status = descend(fit, work, &reached);
        if (status != CG_OK)
            return status;
        fill_covariance(fit);
        if (!signs)
            return CG_OK;
        for (size_t i = 0; i < at->sights; i++)
            if (fit->model->sight[i].kind != CG_SIGHT_VALUE)
                renew_sign(&fit->model->sight[i], i, at);
        status = find_distance(fit, &distance);
        if (status != CG_OK)
            return status;
        if (distance <= 2.0 * fmax(fit->model->tolerance, reached)) {
            fill_covariance(fit);
            return CG_OK;
        }
    }
    return solver_trouble(fit, GSL_EMAXITER);
}

enum cg_status cg_posterior_find(const struct cg_posterior_model *model,
                                 struct cg_posterior *posterior,
                                 struct cg_error *error)
{
    size_t n = posterior->unknowns, rows = n + posterior->sights;
    gsl_multifit_nlinear_parameters how =
        gsl_multifit_nlinear_default_parameters();
    how.trs = gsl_multifit_nlinear_trs_dogleg;
    struct fit fit = {.model = model, .at = posterior, .error = error,
                      .normal = gsl_matrix_alloc(n, n),
                      .gradient = gsl_vector_alloc(n),
                      .has_values = true, .has_slopes = true};
    gsl_multifit_nlinear_workspace *work = gsl_multifit_nlinear_alloc(
        gsl_multifit_nlinear_trust, &how, rows, n);
    enum cg_status status;
    if (work == NULL || fit.normal == NULL || fit.gradient == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    else
        status = alternate(&fit, work);
    gsl_multifit_nlinear_free(work);
    gsl_matrix_free(fit.normal);
    gsl_vector_free(fit.gradient);
    return status;
}

enum cg_status cg_posterior_create(const struct cg_posterior_model *model,
                                   struct cg_posterior **posterior,
                                   struct cg_error *error)
{
    size_t n = model->unknowns, m = model->sights;
    assert(n >= 1 && m <= CG_SIGHTS);
    struct cg_posterior *made = calloc(1, sizeof *made);
    double *room = calloc(n + n * n + m * (n + 3), sizeof *room);
    if (made == NULL || room == NULL) {
        free(made);
        free(room);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    made->unknowns = n;
    made->sights = m;
    made->mean = room;
    made->covariance = made->mean + n;
    made->y = made->covariance + n * n;
    made->slope = made->y + m;
    made->weight = made->slope + m * n;
    made->pull = made->weight + m;
    for (size_t k = 0; k < n; k++)
        made->covariance[k * n + k] = 1.0;
    for (size_t i = 0; i < m; i++) {
        const struct cg_sight *sight = &model->sight[i];
        if (sight->kind != CG_SIGHT_VALUE)
            continue; /* nothing yet */
        made->weight[i] = 1.0 / (sight->spread * sight->spread);
        made->pull[i] = sight->value * made->weight[i];
    }
    enum cg_status status =
        model->values(model->context, made->mean, made->y, error);
    if (status == CG_OK)
        status = model->slopes(model->context, made->mean, made->slope, error);
    if (status == CG_OK)
        *posterior = made;
    else
        cg_posterior_free(made);
    return status;
}

void cg_posterior_free(struct cg_posterior *posterior)
{
    if (posterior == NULL)
        return;
    free(posterior->mean);
    free(posterior);
}
