/* Whether sights can be true at once, in the straight model about the mean:
 * beforehand they are jointly normal, with covariance a_i . a_j. */
#include "posterior.h"

#include <math.h>
#include <string.h>

#include <gsl/gsl_blas.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>

static double covariance(const struct cg_posterior *p, size_t i, size_t j)
{
    double sum = 0.0;
    for (size_t k = 0; k < p->unknowns; k++)
        sum += p->slope[i * p->unknowns + k] * p->slope[j * p->unknowns + k];
    return sum;
}

/* What the prior alone expects of a sight's y. */
static double expected(const struct cg_posterior *p, size_t i)
{
    double sum = p->y[i];
    for (size_t k = 0; k < p->unknowns; k++)
        sum -= p->slope[i * p->unknowns + k] * p->mean[k];
    return sum;
}

/* The sights chosen, as measured values: Cholesky factor of their covariance,
 * and how far each is off the prior's expectation. */
struct chosen {
    size_t count, sight[CG_SIGHTS];
    gsl_matrix *factor;
    gsl_vector *off, *with; /* `with`: covariance with one more sight */
};

static void free_chosen(struct chosen *chosen)
{
    gsl_matrix_free(chosen->factor);
    gsl_vector_free(chosen->off);
    gsl_vector_free(chosen->with);
}

static enum cg_status factorise(const struct cg_posterior *p,
                                struct chosen *chosen, struct cg_error *error)
{
    size_t count = chosen->count;
    chosen->factor = gsl_matrix_alloc(count, count);
    chosen->off = gsl_vector_alloc(count);
    chosen->with = gsl_vector_alloc(count);
    if (chosen->factor == NULL || chosen->off == NULL || chosen->with == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t i = 0; i < count; i++) {
        size_t a = chosen->sight[i];
        for (size_t j = 0; j < count; j++)
            gsl_matrix_set(chosen->factor, i, j,
                           covariance(p, a, chosen->sight[j]) +
                               (i == j ? 1.0 / p->weight[a] : 0.0));
        gsl_vector_set(chosen->off, i,
                       p->pull[a] / p->weight[a] - expected(p, a));
    }
    if (gsl_linalg_cholesky_decomp1(chosen->factor) != GSL_SUCCESS)
        return cg_error_set(error, CG_NUMERICAL,
                            "sights without a finite covariance");
    gsl_blas_dtrsv(CblasLower, CblasNoTrans, CblasNonUnit, chosen->factor,
                   chosen->off);
    return CG_OK;
}

/* Deviation of a sight of y with this mean and variance. */
static double deviation_of(const struct cg_sight *sight, double mean,
                           double variance)
{
    double off = (sight->value - mean) /
                 sqrt(fmax(variance, 0.0) + sight->spread * sight->spread);
    switch (sight->kind) {
    case CG_SIGHT_VALUE:
        return off;
    case CG_SIGHT_BELOW:
        return fmin(off, 0.0);
    case CG_SIGHT_ABOVE:
        return fmax(off, 0.0);
    }
    return 0.0;
}

enum cg_status cg_posterior_deviation(const struct cg_posterior_model *model,
                                      const struct cg_posterior *posterior,
                                      size_t one, const bool *given,
                                      double *deviation, struct cg_error *error)
{
    const struct cg_posterior *p = posterior;
    double mean = expected(p, one), variance = covariance(p, one, one), along;
    enum cg_status status = CG_OK;
    struct chosen chosen = {.count = 0};
    for (size_t i = 0; i < p->sights; i++)
        if (given[i] && i != one && p->weight[i] > 0.0)
            chosen.sight[chosen.count++] = i;
    if (chosen.count > 0) {
        status = factorise(p, &chosen, error);
        if (status == CG_OK) {
            for (size_t i = 0; i < chosen.count; i++)
                gsl_vector_set(chosen.with, i,
                               covariance(p, one, chosen.sight[i]));
            gsl_blas_dtrsv(CblasLower, CblasNoTrans, CblasNonUnit,
                           chosen.factor, chosen.with);
            gsl_blas_ddot(chosen.with, chosen.off, &along);
            mean += along;
            gsl_blas_ddot(chosen.with, chosen.with, &along);
            variance -= along;
        }
        free_chosen(&chosen);
    }
    if (status == CG_OK)
        *deviation = deviation_of(&model->sight[one], mean, variance);
    return status;
}

enum cg_status cg_posterior_chance(const struct cg_posterior_model *model,
                                   const struct cg_posterior *posterior,
                                   double *chance, struct cg_error *error)
{
    double square = 0.0;
    struct chosen chosen = {.count = 0};
    for (size_t i = 0; i < posterior->sights; i++)
        if (model->sight[i].kind == CG_SIGHT_VALUE)
            chosen.sight[chosen.count++] = i;
    *chance = 1.0;
    if (chosen.count == 0)
        return CG_OK;
    enum cg_status status = factorise(posterior, &chosen, error);
    if (status == CG_OK) {
        gsl_blas_ddot(chosen.off, chosen.off, &square);
        *chance = gsl_cdf_chisq_Q(square, (double)chosen.count);
    }
    free_chosen(&chosen);
    return status;
}
