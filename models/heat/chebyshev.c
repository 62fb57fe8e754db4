#include "chebyshev.h"

#include <assert.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "constants.h"

/* Room for terms; horizon over a, by measurement on the engine's network: a
 * longer span asks for more terms at its end, a shorter one at its start. */
enum { TERMS = 48, POINTS = 72, HALF = POINTS / 2 };
static const double SPAN = 20;

/* The terms left out may add up to more than the last one kept. */
static const double SAFETY = 0.5;

/* Weights are tabulated for times of 1, 1/4, ... 4^(1 - SCALES) horizons. */
enum { SCALES = 8 };

struct cg_chebyshev {
    size_t nodes;
    struct cg_heat_matrix *matrix; /* not owned */
    double *block;
    double *start;                /* T0 [K] */
    double *term[TERMS];          /* w_k [K] */
    double *solved;               /* scratch */
    int terms;                    /* in use */
    double size[TERMS];           /* largest entry of each [K] */
    double a;                     /* [s] */
    double tolerance;             /* [K] */
    double wave[TERMS][HALF];     /* cos(k angle) up to a right angle */
    double ratio[POINTS];         /* x / (1 - x) */
    double per_x[POINTS];         /* 1 / x */
    double weight[SCALES][TERMS]; /* largest |c_k| from scale to horizon */
    bool tabulated;               /* the four tables above are filled */
};

/* c_k(s) of (1 - exp(-s x/(1-x))) / x over x = (1 + cos angle) / 2, by the
 * midpoint rule in the angle, which is exact but for terms beyond
 * 2 POINTS - TERMS.  Angles come in pairs, whose waves are the same for even k
 * and opposite for odd k. */
static void coefficients(const struct cg_chebyshev *series, double s, int terms,
                         double *c)
{
    double value[POINTS], pair[2][HALF];
    for (int p = 0; p < POINTS; p++)
        value[p] =
            -expm1(-s * series->ratio[p]) * series->per_x[p] * (2.0 / POINTS);
    for (int p = 0; p < HALF; p++) {
        pair[0][p] = value[p] + value[POINTS - 1 - p];
        pair[1][p] = value[p] - value[POINTS - 1 - p];
    }
    for (int k = 0; k < terms; k++) {
        const double *restrict wave = series->wave[k];
        const double *restrict both = pair[k % 2];
        double sum[4] = {0};
        for (int p = 0; p < HALF; p += 4)
            for (int q = 0; q < 4; q++)
                sum[q] += both[p + q] * wave[p + q];
        c[k] = (sum[0] + sum[1]) + (sum[2] + sum[3]);
    }
    c[0] *= 0.5;
}

static void set_waves(struct cg_chebyshev *series)
{
    for (int p = 0; p < POINTS; p++) {
        double cosine = cos(CG_PI * (p + 0.5) / POINTS);
        series->ratio[p] = (1 + cosine) / (1 - cosine);
        series->per_x[p] = 2 / (1 + cosine);
        double before = cosine, now = 1;
        for (int k = 0; k < TERMS && p < HALF; k++) {
            series->wave[k][p] = now;
            double next = 2 * cosine * now - before;
            before = now;
            now = next;
        }
    }
}

/* How much each term can weigh at times from a scale to the horizon. */
static void set_weights(struct cg_chebyshev *series)
{
    double s = SPAN;
    for (int scale = 0; scale < SCALES; scale++, s /= 4) {
        double c[TERMS];
        coefficients(series, s, TERMS, c);
        for (int k = 0; k < TERMS; k++) {
            double longer = scale > 0 ? series->weight[scale - 1][k] : 0;
            series->weight[scale][k] = fmax(longer, fabs(c[k]));
        }
    }
}

void cg_chebyshev_free(struct cg_chebyshev *series)
{
    if (series == NULL)
        return;
    free(series->block);
    free(series);
}

enum cg_status cg_chebyshev_create(const struct cg_network *network,
                                   struct cg_heat_matrix *matrix,
                                   struct cg_chebyshev **series,
                                   struct cg_error *error)
{
    size_t nodes = network->nodes;
    struct cg_chebyshev *made = calloc(1, sizeof *made);
    if (made == NULL)
        goto no_memory;
    made->block = calloc((TERMS + 2) * nodes + 1, sizeof *made->block);
    if (made->block == NULL)
        goto no_memory;
    made->nodes = nodes;
    made->matrix = matrix;
    made->start = made->block;
    made->solved = made->block + nodes;
    for (size_t k = 0; k < TERMS; k++)
        made->term[k] = made->block + (k + 2) * nodes;
    *series = made;
    return CG_OK;

no_memory:
    cg_chebyshev_free(made);
    return cg_error_set(error, CG_NO_MEMORY, "no memory for the stepper");
}

/* w_k+1 = 2 (2 X - 1) w_k - w_k-1, and w_1 = (2 X - 1) w_0, with
 * (2 X - 1) w = w - 2 (C + a K)^-1 C w. */
static void next_term(struct cg_chebyshev *series, const double *capacity,
                      int k)
{
    const double *now = series->term[k];
    double *next = series->term[k + 1], *solved = series->solved;
    for (size_t i = 0; i < series->nodes; i++)
        solved[i] = capacity[i] * now[i];
    cg_heat_matrix_solve(series->matrix, solved);
    if (k == 0) {
        for (size_t i = 0; i < series->nodes; i++)
            next[i] = now[i] - 2 * solved[i];
        return;
    }
    const double *before = series->term[k - 1];
    for (size_t i = 0; i < series->nodes; i++)
        next[i] = 2 * now[i] - 4 * solved[i] - before[i];
}

/* Largest entry of term k, infinite if one is not finite. */
static double size_of(const struct cg_chebyshev *series, int k, size_t *worst)
{
    double largest = 0;
    *worst = 0;
    for (size_t i = 0; i < series->nodes; i++) {
        double size = fabs(series->term[k][i]);
        if (size <= largest)
            continue;
        *worst = i;
        if (!isfinite(size))
            return INFINITY;
        largest = size;
    }
    return largest;
}

/* Terms up to which three in a row are small enough, were they all as large as
 * `size` [K]; a single one may be small by chance. */
static int terms_needed(const double *weight, double size, double tolerance)
{
    int small = 0;
    for (int k = 0; k < TERMS; k++) {
        small = weight[k] * size <= tolerance ? small + 1 : 0;
        if (small == 3)
            return k + 1;
    }
    return TERMS + 1;
}

/* Adds terms until the last ones are small enough; false when they are not
 * within the space. */
static bool add_terms(struct cg_chebyshev *series,
                      const struct cg_network *network, const double *weight,
                      size_t *worst)
{
    int small = 0;
    for (int k = 0; k < TERMS; k++) {
        if (k > 0)
            next_term(series, network->capacity, k - 1);
        series->size[k] = size_of(series, k, worst);
        series->terms = k + 1;
        /* Do not set out on what is bound to fail. */
        if (k == 0 &&
            terms_needed(weight, series->size[0], series->tolerance) > TERMS)
            return false;
        small =
            weight[k] * series->size[k] <= series->tolerance ? small + 1 : 0;
        if (small == 3)
            return true;
    }
    return false;
}

enum cg_status cg_chebyshev_begin(struct cg_chebyshev *series,
                                  const struct cg_network *network,
                                  const double *temperature, const double *rate,
                                  double tolerance, double first,
                                  double *horizon, size_t *worst,
                                  struct cg_error *error)
{
    if (!series->tabulated) {
        set_waves(series);
        set_weights(series);
        series->tabulated = true;
    }
    /* Rounded, so that intervals of like length share their factors. */
    double a = (double)(float)(*horizon / SPAN);
    enum cg_status status =
        cg_heat_matrix_factor(series->matrix, network, 1, a, error);
    if (status != CG_OK)
        return status;
    series->a = a;
    series->tolerance = SAFETY * tolerance;
    memcpy(series->start, temperature, series->nodes * sizeof *temperature);
    for (size_t i = 0; i < series->nodes; i++)
        series->term[0][i] = a * rate[i];
    cg_heat_matrix_solve(series->matrix, series->term[0]);
    int scale = 0;
    for (double time = *horizon; time > first && scale < SCALES - 1; time /= 4)
        scale++;
    if (!add_terms(series, network, series->weight[scale], worst))
        *horizon = 0;
    return CG_OK;
}

/* The coefficients that count at `time`; returns their number. */
static int series_at(const struct cg_chebyshev *series, double time, double *c)
{
    double s = time / series->a, least = 1e-3 * series->tolerance;
    int terms = series->terms;
    coefficients(series, s, terms, c);
    while (terms > 1 && fabs(c[terms - 1]) * series->size[terms - 1] < least)
        terms--;
    /* At x = 0, where nothing decays, the value is s: exactly so, for the
     * sake of the first law.  T*_k(0) = (-1)^k. */
    double there = 0;
    for (int k = 0; k < terms; k++)
        there += k % 2 == 0 ? c[k] : -c[k];
    c[0] += s - there;
    return terms;
}

/* T0 + sum c_k w_k, four terms at a time: fewer trips to memory. */
static void add_up(const struct cg_chebyshev *series, const double *c,
                   int terms, double *restrict temperature)
{
    memcpy(temperature, series->start, series->nodes * sizeof *temperature);
    int k = 0;
    for (; k + 4 <= terms; k += 4) {
        const double *const *w = (const double *const *)series->term + k;
        const double *restrict w0 = w[0], *restrict w1 = w[1];
        const double *restrict w2 = w[2], *restrict w3 = w[3];
        for (size_t i = 0; i < series->nodes; i++)
            temperature[i] += (c[k] * w0[i] + c[k + 1] * w1[i]) +
                              (c[k + 2] * w2[i] + c[k + 3] * w3[i]);
    }
    for (; k < terms; k++) {
        const double *restrict w = series->term[k];
        for (size_t i = 0; i < series->nodes; i++)
            temperature[i] += c[k] * w[i];
    }
}

void cg_chebyshev_at(const struct cg_chebyshev *series, double time,
                     double *temperature)
{
    double c[TERMS];
    int terms = series_at(series, time, c);
    add_up(series, c, terms, temperature);
}

/* With f the series at time h, T1 - T0 = f(X) w_0, and p that of the
 * mean, net heat r0 - K p(X) w_0 = C f(X) w_0 / h gives
 * X p = 1 - (a/h) (1 - X) f, divided by  x T*_k = (T*_k+1 + 2 T*_k +
 * T*_k-1) / 4  from the highest term down. */
void cg_chebyshev_mean(const struct cg_chebyshev *series, double time,
                       double *temperature)
{
    double c[TERMS], e[TERMS + 2] = {0}, p[TERMS + 2] = {0};
    int terms = series_at(series, time, c);
    double part = series->a / time;
    e[0] = 1;
    for (int k = 0; k < terms; k++) {
        e[k] -= 0.5 * part * c[k];
        e[k + 1] += 0.25 * part * c[k];
        e[k == 0 ? 1 : k - 1] += 0.25 * part * c[k];
    }
    for (int k = terms; k >= 1; k--)
        p[k - 1] = (4 * e[k] - 2 * p[k] - p[k + 1]) / (k == 1 ? 2 : 1);
    add_up(series, p, terms, temperature);
}
