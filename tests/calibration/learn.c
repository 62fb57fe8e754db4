#include "learn.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_sf_erf.h>

#include "posterior.h"

/* Draws from this much of the width found, and a part of them from the prior,
 * so that no weight runs away. */
#define WIDER 1.3
#define FROM_PRIOR 0.2

/* Taken straight anew until the mean stays within this [prior sd]. */
#define STAYS 0.1

enum { ROUNDS = 8, CHECKS = 12, SEED = 20 };

struct draws {
    double u[DRAWS][CONSTANTS], ln_scatter[DRAWS];
    double weight[DRAWS]; /* ln, then over the largest */
    double likelihood[FACTS][DRAWS]; /* ln */
    double y[FACTS][DRAWS], spread[FACTS][DRAWS];
};

struct straight_model {
    const struct facts *facts;
    const struct learned *learned;
    size_t sights, fact[CG_SIGHTS];
    struct cg_sight sight[CG_SIGHTS];
};

/* Mean over metals. */
static enum cg_status values(void *context, const double *u, double *y,
                             struct cg_error *error)
{
    const struct straight_model *model = context;
    (void)error;
    for (size_t i = 0; i < model->sights; i++) {
        size_t f = model->fact[i];
        const struct sight *sight = &model->learned->sight[f];
        y[i] = 0.0;
        for (size_t m = 0; m < sight->metals; m++) {
            const struct straight *s = &model->learned->straight[f][m];
            double sum = s->value;
            for (size_t k = 0; k < model->facts->constants; k++)
                sum += s->slope[k] * (u[k] - model->learned->at[k]);
            y[i] += sum / (double)sight->metals;
        }
    }
    return CG_OK;
}

static enum cg_status slopes(void *context, const double *u, double *slope,
                             struct cg_error *error)
{
    const struct straight_model *model = context;
    size_t n = model->facts->constants;
    (void)u;
    (void)error;
    for (size_t i = 0; i < model->sights; i++)
        for (size_t k = 0; k < n; k++) {
            size_t f = model->fact[i];
            const struct sight *sight = &model->learned->sight[f];
            slope[i * n + k] = 0.0;
            for (size_t m = 0; m < sight->metals; m++)
                slope[i * n + k] += model->learned->straight[f][m].slope[k] /
                                    (double)sight->metals;
        }
    return CG_OK;
}

static double spread_with(const struct fact *fact, const struct straight *s,
                          double scatter)
{
    double engine = scatter * s->size;
    return sqrt(fact->spread * fact->spread + s->nuisance * s->nuisance +
                engine * engine);
}

static void list_sights(const struct facts *facts,
                        const struct learned *learned,
                        struct straight_model *model)
{
    *model = (struct straight_model){.facts = facts, .learned = learned};
    for (size_t f = 0; f < facts->facts; f++) {
        const struct fact *fact = &facts->fact[f];
        if (fact->held)
            continue;
        double width = 0.0;
        for (size_t m = 0; m < learned->sight[f].metals; m++)
            width = fmax(width, fabs(learned->straight[f][m].value -
                                     learned->straight[f][0].value));
        double own = spread_with(fact, &learned->straight[f][0],
                                 facts->scatter_middle);
        model->fact[model->sights] = f;
        model->sight[model->sights++] = (struct cg_sight){
            !fact->one_sided            ? CG_SIGHT_VALUE
            : fact->sees == SEES_ENDS   ? CG_SIGHT_BELOW
                                        : CG_SIGHT_ABOVE,
            fact->value, sqrt(own * own + 0.1 * width * width)};
    }
}

/* Mean and covariance to draw from. */
static void find_roughly(const struct facts *facts,
                         const struct learned *learned, double *mean,
                         gsl_matrix *factor)
{
    struct straight_model straight;
    struct cg_posterior *found;
    struct cg_error error = {0};
    list_sights(facts, learned, &straight);
    struct cg_posterior_model model = {.unknowns = facts->constants,
                                       .sights = straight.sights,
                                       .sight = straight.sight,
                                       .tolerance = 1e-3,
                                       .context = &straight,
                                       .values = values,
                                       .slopes = slopes};
    enum cg_status status = cg_posterior_create(&model, &found, &error);
    if (status == CG_OK)
        status = cg_posterior_find(&model, found, &error);
    if (status != CG_OK) {
        fprintf(stderr, "%s, %s: %s\n", learned->law.gas, learned->law.film,
                error.text);
        exit(3);
    }
    memcpy(mean, found->mean, facts->constants * sizeof *mean);
    for (size_t k = 0; k < facts->constants; k++)
        for (size_t l = 0; l < facts->constants; l++)
            gsl_matrix_set(factor, k, l,
                           found->covariance[k * facts->constants + l] * WIDER *
                               WIDER);
    cg_posterior_free(found);
    gsl_linalg_cholesky_decomp1(factor);
}

/* ln of the density drawn from at u, over that of the prior. */
static double drawn_over_prior(size_t n, const double *u, const double *mean,
                               const gsl_matrix *factor)
{
    double v[CONSTANTS], square = 0.0, prior = 0.0, ln_det = 0.0;
    for (size_t k = 0; k < n; k++) {
        v[k] = u[k] - mean[k];
        for (size_t l = 0; l < k; l++)
            v[k] -= gsl_matrix_get(factor, k, l) * v[l];
        v[k] /= gsl_matrix_get(factor, k, k);
        square += v[k] * v[k];
        prior += u[k] * u[k];
        ln_det += log(gsl_matrix_get(factor, k, k));
    }
    double rough = exp(0.5 * (prior - square) - ln_det);
    return log(FROM_PRIOR + (1.0 - FROM_PRIOR) * rough);
}

static void draw(const struct facts *facts, const double *mean,
                 const gsl_matrix *factor, struct draws *draws)
{
    size_t n = facts->constants;
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(rng, SEED);
    for (size_t i = 0; i < DRAWS; i++) {
        bool prior = gsl_rng_uniform(rng) < FROM_PRIOR;
        double v[CONSTANTS];
        for (size_t k = 0; k < n; k++)
            v[k] = gsl_ran_gaussian(rng, 1.0);
        for (size_t k = 0; k < n; k++) {
            double sum = prior ? v[k] : mean[k];
            for (size_t l = 0; l <= k && !prior; l++)
                sum += gsl_matrix_get(factor, k, l) * v[l];
            draws->u[i][k] = sum;
        }
        draws->ln_scatter[i] = log(facts->scatter_middle) +
                               facts->scatter_spread *
                                   gsl_ran_gaussian(rng, 1.0);
        draws->weight[i] = -drawn_over_prior(n, draws->u[i], mean, factor);
    }
    gsl_rng_free(rng);
}

/* ln of the chance or density of what was seen; and mean and spread of y. */
static double likelihood(const struct facts *facts,
                         const struct learned *learned, size_t f,
                         const double *u, double scatter, double *mean,
                         double *spread)
{
    const struct fact *fact = &facts->fact[f];
    size_t metals = learned->sight[f].metals;
    double chance = 0.0, sum = 0.0, square = 0.0;
    for (size_t m = 0; m < metals; m++) {
        const struct straight *s = &learned->straight[f][m];
        double y = straight_at(s, facts->constants, learned->at, u);
        double width = spread_with(fact, s, scatter);
        double off = (fact->value - y) / width;
        chance += !fact->one_sided ? gsl_ran_ugaussian_pdf(off) / width
                  : fact->sees == SEES_ENDS ? gsl_cdf_ugaussian_P(off)
                                            : gsl_cdf_ugaussian_Q(off);
        sum += y;
        square += y * y + width * width;
    }
    double part = 1.0 / (double)metals;
    *mean = sum * part;
    *spread = sqrt(fmax(square * part - *mean * *mean, 0.0));
    return log(fmax(chance * part, 1e-300));
}

static void weigh(const struct facts *facts, const struct learned *learned,
                  struct draws *draws)
{
    for (size_t f = 0; f < facts->facts; f++)
        for (size_t i = 0; i < DRAWS; i++) {
            draws->likelihood[f][i] =
                likelihood(facts, learned, f, draws->u[i],
                           exp(draws->ln_scatter[i]), &draws->y[f][i],
                           &draws->spread[f][i]);
            if (!facts->fact[f].held)
                draws->weight[i] += draws->likelihood[f][i];
        }
}

/* Weights [DRAWS] from their ln, without fact `out` (NULL: none); returns ln
 * of their mean. */
static double normalise(const struct draws *draws, const double *out,
                        double *weight, double *effective)
{
    double most = -INFINITY, sum = 0.0, square = 0.0;
    for (size_t i = 0; i < DRAWS; i++) {
        weight[i] = draws->weight[i] - (out != NULL ? out[i] : 0.0);
        most = fmax(most, weight[i]);
    }
    for (size_t i = 0; i < DRAWS; i++) {
        weight[i] = exp(weight[i] - most);
        sum += weight[i];
        square += weight[i] * weight[i];
    }
    for (size_t i = 0; i < DRAWS; i++)
        weight[i] /= sum;
    *effective = sum * sum / square;
    return most + log(sum / DRAWS);
}

static void take_moments(const struct facts *facts, const struct draws *draws,
                         const double *weight, struct learned *learned)
{
    size_t n = facts->constants;
    double ln2 = 0.0;
    memset(learned->mean, 0, sizeof learned->mean);
    memset(learned->covariance, 0, sizeof learned->covariance);
    learned->scatter = 0.0;
    for (size_t i = 0; i < DRAWS; i++) {
        learned->scatter += weight[i] * draws->ln_scatter[i];
        ln2 += weight[i] * draws->ln_scatter[i] * draws->ln_scatter[i];
        for (size_t k = 0; k < n; k++)
            learned->mean[k] += weight[i] * draws->u[i][k];
    }
    learned->scatter_sd = sqrt(ln2 - learned->scatter * learned->scatter);
    for (size_t i = 0; i < DRAWS; i++)
        for (size_t k = 0; k < n; k++)
            for (size_t l = 0; l < n; l++)
                learned->covariance[k][l] +=
                    weight[i] * (draws->u[i][k] - learned->mean[k]) *
                    (draws->u[i][l] - learned->mean[l]);
}

static void foresee(const struct facts *facts, const struct draws *draws,
                    double *weight, struct learned *learned)
{
    learned->worst_effective = INFINITY;
    for (size_t f = 0; f < facts->facts; f++) {
        struct foreseen *to = &learned->foreseen[f];
        double effective, square = 0.0;
        to->log_evidence = normalise(
            draws, facts->fact[f].held ? NULL : draws->likelihood[f], weight,
            &effective);
        learned->worst_effective = fmin(learned->worst_effective, effective);
        to->mean = to->chance = 0.0;
        for (size_t i = 0; i < DRAWS; i++) {
            double y = draws->y[f][i], s = draws->spread[f][i];
            to->mean += weight[i] * y;
            square += weight[i] * (y * y + s * s);
            to->chance += weight[i] * exp(draws->likelihood[f][i]);
        }
        to->sd = sqrt(fmax(square - to->mean * to->mean, 0.0));
    }
}

/* How far the straight and bent y is from the model's own, at some draws by
 * their weight. */
static double test_bent(const struct facts *facts, const struct draws *draws,
                        const double *weight, const struct learned *learned)
{
    double sum = 0.0, run = 0.0;
    size_t count = 0, next = 0;
    for (size_t i = 0; i < DRAWS; i++) {
        run += weight[i];
        if (run < ((double)next + 0.5) / CHECKS)
            continue;
        next++;
        for (size_t f = next % 3; f < facts->facts; f += 3) {
            const struct straight *s = &learned->straight[f][0];
            double full =
                sight_value(facts, &learned->sight[f], 0, draws->u[i]);
            double off = (full - straight_at(s, facts->constants, learned->at,
                                             draws->u[i])) /
                         spread_with(&facts->fact[f], s,
                                     exp(draws->ln_scatter[i]));
            sum += off * off;
            count++;
        }
    }
    return sqrt(sum / (double)count);
}

static void straighten(const struct facts *facts, bool with_nuisance,
                       struct learned *learned)
{
#ifdef _OPENMP
#pragma omp parallel for schedule(dynamic)
#endif
    for (size_t f = 0; f < facts->facts; f++)
        for (size_t m = 0; m < learned->sight[f].metals; m++) {
            struct straight *s = &learned->straight[f][m];
            sight_straighten(facts, &learned->sight[f], m, learned->at,
                             with_nuisance && m == 0, s);
            s->nuisance = learned->straight[f][0].nuisance;
        }
}

static bool moved(const struct facts *facts, const struct learned *learned)
{
    for (size_t k = 0; k < facts->constants; k++)
        if (fabs(learned->mean[k] - learned->at[k]) > STAYS)
            return true;
    return false;
}

void learn(const struct facts *facts, const struct law *law,
           struct learned *learned)
{
    memset(learned, 0, sizeof *learned);
    learned->law = *law;
    learned->sight = malloc(facts->facts * sizeof *learned->sight);
    struct draws *draws = malloc(sizeof *draws);
    double *weight = malloc(DRAWS * sizeof *weight);
    gsl_matrix *factor =
        gsl_matrix_alloc(facts->constants, facts->constants);
    if (learned->sight == NULL || draws == NULL || weight == NULL ||
        factor == NULL) {
        fputs("out of memory\n", stderr);
        exit(3);
    }
    for (size_t f = 0; f < facts->facts; f++)
        sight_read(facts, &facts->fact[f], law, &learned->sight[f]);
    for (int round = 0; round < ROUNDS; round++) {
        double mean[CONSTANTS];
        memcpy(learned->at, learned->mean, sizeof learned->at);
        straighten(facts, round < 2, learned);
        find_roughly(facts, learned, mean, factor);
        draw(facts, mean, factor, draws);
        weigh(facts, learned, draws);
        learned->log_evidence =
            normalise(draws, NULL, weight, &learned->effective);
        take_moments(facts, draws, weight, learned);
        if (!moved(facts, learned))
            break;
    }
    learned->bent = test_bent(facts, draws, weight, learned);
    foresee(facts, draws, weight, learned);
    gsl_matrix_free(factor);
    free(weight);
    free(draws);
}

void learned_free(struct learned *learned)
{
    free(learned->sight);
}

double learned_value(const struct facts *facts, const struct learned *learned,
                     size_t constant)
{
    const struct constant *c = &facts->constant[constant];
    return c->middle * exp(c->spread * learned->mean[constant]);
}

double learned_spread(const struct facts *facts, const struct learned *learned,
                      size_t constant)
{
    return facts->constant[constant].spread *
           sqrt(learned->covariance[constant][constant]);
}

double fact_deviation(const struct fact *fact, const struct foreseen *foreseen)
{
    if (!fact->one_sided)
        return (fact->value - foreseen->mean) / foreseen->sd;
    return gsl_cdf_ugaussian_Pinv(
        fmin(fmax(foreseen->chance, 1e-12), 1.0 - 1e-12));
}
