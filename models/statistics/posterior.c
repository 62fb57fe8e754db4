#include "posterior.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_sf_erf.h>

#include "posterior_fit.h"

enum { MOST_ROUNDS = 60 };

static void fill_covariance(struct cg_posterior_fit *fit)
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
static enum cg_status alternate(struct cg_posterior_fit *fit,
                                gsl_multifit_nlinear_workspace *work)
{
    struct cg_posterior *at = fit->at;
    bool signs = has_signs(fit->model);
    for (int round = 0; round < MOST_ROUNDS; round++) {
        double distance, reached = 0.0;
        enum cg_status status = cg_posterior_fit_descend(fit, work, &reached);
        if (status != CG_OK)
            return status;
        fill_covariance(fit);
        if (!signs)
            return CG_OK;
        for (size_t i = 0; i < at->sights; i++)
            if (fit->model->sight[i].kind != CG_SIGHT_VALUE)
                renew_sign(&fit->model->sight[i], i, at);
        status = cg_posterior_fit_distance(fit, &distance);
        if (status != CG_OK)
            return status;
        if (distance <= 2.0 * fmax(fit->model->tolerance, reached)) {
            fill_covariance(fit);
            return CG_OK;
        }
    }
    return cg_posterior_fit_trouble(fit, GSL_EMAXITER);
}

enum cg_status cg_posterior_find(const struct cg_posterior_model *model,
                                 struct cg_posterior *posterior,
                                 struct cg_error *error)
{
    size_t n = posterior->unknowns, rows = n + posterior->sights;
    gsl_multifit_nlinear_parameters how =
        gsl_multifit_nlinear_default_parameters();
    how.trs = gsl_multifit_nlinear_trs_dogleg;
    struct cg_posterior_fit fit = {.model = model,
                                   .at = posterior,
                                   .error = error,
                                   .normal = gsl_matrix_alloc(n, n),
                                   .gradient = gsl_vector_alloc(n),
                                   .has_values = true,
                                   .has_slopes = true};
    gsl_multifit_nlinear_workspace *work =
        gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &how, rows, n);
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
    double *workspace = calloc(n + n * n + m * (n + 3), sizeof *workspace);
    if (made == NULL || workspace == NULL) {
        free(made);
        free(workspace);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    made->unknowns = n;
    made->sights = m;
    made->mean = workspace;
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
