#include "regression_line.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "constants.h"

/* Places a cut-off at which the fit is done, and those beyond either end that
 * the quintics lean on. */
enum { PLACES = 32, BEYOND = 3, POWERS = 5, STENCIL = 6 };

struct cg_regression {
    size_t points, reach; /* reach: points of the kernel on either side */
    size_t step, places;  /* points from place to place; places of the fit */
    int degree;
    double spacing;         /* [m] */
    double *kernel[POWERS]; /* [2 reach + 1]: s u^k, u in cut-offs */
    double *place;          /* [places]: the line there */
    double *weighed;        /* [points]: weight times height */
    double *quintic;        /* [step][STENCIL] */
};

/* What is summed about a place: s u^k w, and s u^k w z. */
struct moments {
    double weight[POWERS], height[3];
};

static void fill_kernel(struct cg_regression *r, double spacing, double cutoff)
{
    double width = r->degree == 1 ? CG_WEIGHT_LINEAR : CG_WEIGHT_QUADRATIC;
    for (size_t i = 0; i < 2 * r->reach + 1; i++) {
        double u = ((double)i - (double)r->reach) * spacing / cutoff;
        double power = exp(-CG_PI * (u / width) * (u / width));
        for (int k = 0; k < POWERS; k++, power *= u)
            r->kernel[k][i] = power;
    }
}

/* Lagrange's weights on places -2..3 for a point `part` of the way from place
 * 0 to place 1. */
static void fill_quintic(struct cg_regression *r)
{
    for (size_t at = 0; at < r->step; at++) {
        double part = (double)at / (double)r->step;
        for (int i = 0; i < STENCIL; i++) {
            double weight = 1.0;
            for (int j = 0; j < STENCIL; j++)
                if (j != i)
                    weight *= (part - (j - 2)) / (double)(i - j);
            r->quintic[at * STENCIL + (size_t)i] = weight;
        }
    }
}

static enum cg_status check(size_t points, double spacing, double cutoff,
                            struct cg_error *error)
{
    double length = (double)points * spacing;
    if (!(cutoff >= 10.0 * spacing))
        return cg_error_set(error, CG_BAD_INPUT,
                            "a spacing of %.4g um is too coarse for a cut-off "
                            "of %.4g mm, at most %.4g um is allowed",
                            spacing * 1e6, cutoff * 1e3, cutoff * 1e5);
    if (!(length >= 2.0 * cutoff))
        return cg_error_set(error, CG_BAD_INPUT,
                            "a trace of %.4g mm is too short for a cut-off of "
                            "%.4g mm, at least two cut-offs are needed",
                            length * 1e3, cutoff * 1e3);
    return CG_OK;
}

static bool make_room(struct cg_regression *r)
{
    bool full = true;
    for (int k = 0; k < POWERS; k++) {
        r->kernel[k] = malloc((2 * r->reach + 1) * sizeof(double));
        full = full && r->kernel[k] != NULL;
    }
    r->place = malloc(r->places * sizeof(double));
    r->weighed = malloc(r->points * sizeof(double));
    r->quintic = malloc(r->step * STENCIL * sizeof(double));
    return full && r->place != NULL && r->weighed != NULL && r->quintic != NULL;
}

enum cg_status cg_regression_create(size_t points, double spacing,
                                    double cutoff, int degree,
                                    struct cg_regression **regression,
                                    struct cg_error *error)
{
    enum cg_status status = check(points, spacing, cutoff, error);
    if (status != CG_OK)
        return status;
    struct cg_regression *r = calloc(1, sizeof *r);
    if (r == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "filter: out of memory");
    r->points = points;
    r->degree = degree;
    r->spacing = spacing;
    /* Where the kernel has fallen below 2e-6 of its top. */
    r->reach = (size_t)floor((degree == 1 ? 1.0 : 1.5) * cutoff / spacing);
    r->step = (size_t)fmax(floor(cutoff / spacing / PLACES), 1.0);
    r->places = (points - 1) / r->step + 2 + 2 * (size_t)BEYOND;
    if (!make_room(r)) {
        cg_regression_free(r);
        return cg_error_set(error, CG_NO_MEMORY, "filter: out of memory");
    }
    fill_kernel(r, spacing, cutoff);
    fill_quintic(r);
    *regression = r;
    return CG_OK;
}

void cg_regression_free(struct cg_regression *regression)
{
    if (regression == NULL)
        return;
    for (int k = 0; k < POWERS; k++)
        free(regression->kernel[k]);
    free(regression->place);
    free(regression->weighed);
    free(regression->quintic);
    free(regression);
}

static double dot(const double *a, const double *b, size_t count)
{
    double sum = 0.0;
#pragma omp simd reduction(+ : sum)
    for (size_t i = 0; i < count; i++)
        sum += a[i] * b[i];
    return sum;
}

static double total(const double *a, size_t count)
{
    double sum = 0.0;
#pragma omp simd reduction(+ : sum)
    for (size_t i = 0; i < count; i++)
        sum += a[i];
    return sum;
}

/* The kernel's stretch that lies on the trace when centred on point `center`,
 * which may lie beyond it. */
struct overlap {
    size_t kernel, point, count;
};

static struct overlap overlap_at(const struct cg_regression *r, long center)
{
    long reach = (long)r->reach, last = (long)r->points - 1;
    long first = center - reach > 0 ? center - reach : 0;
    long end = center + reach < last ? center + reach : last;
    struct overlap o = {(size_t)(first - (center - reach)), (size_t)first,
                        (size_t)(end - first + 1)};
    return o;
}

static void sum_moments(const struct cg_regression *r, const double *height,
                        const double *weight, const struct overlap *o,
                        struct moments *m)
{
    for (int k = 0; k <= 2 * r->degree; k++) {
        const double *kernel = r->kernel[k] + o->kernel;
        m->weight[k] = weight != NULL ? dot(kernel, weight + o->point, o->count)
                                      : total(kernel, o->count);
    }
    for (int k = 0; k <= r->degree; k++)
        m->height[k] =
            dot(r->kernel[k] + o->kernel, height + o->point, o->count);
}

/* The fitted polynomial's value at its own place, by Cramer's rule; NaN when
 * the weights determine none. */
static double fitted(int degree, const struct moments *m)
{
    const double *s = m->weight, *t = m->height;
    if (degree == 1) {
        double determinant = s[0] * s[2] - s[1] * s[1];
        return determinant > 1e-12 * s[0] * s[2]
                   ? (t[0] * s[2] - t[1] * s[1]) / determinant
                   : NAN;
    }
    double a = s[2] * s[4] - s[3] * s[3];
    double b = s[2] * s[3] - s[1] * s[4];
    double c = s[1] * s[3] - s[2] * s[2];
    double determinant = s[0] * a + s[1] * b + s[2] * c;
    return determinant > 1e-12 * s[0] * s[2] * s[4]
               ? (t[0] * a + t[1] * b + t[2] * c) / determinant
               : NAN;
}

/* Away from the ends and with equal weights the kernel's own sums are the
 * same everywhere. */
static double fit_at(const struct cg_regression *r, const double *height,
                     const double *weight, const struct moments *whole,
                     long center)
{
    struct overlap o = overlap_at(r, center);
    struct moments m = {.weight = {0.0}};
    if (weight != NULL || o.count < 2 * r->reach + 1) {
        sum_moments(r, height, weight, &o, &m);
        return fitted(r->degree, &m);
    }
    m = *whole;
    for (int k = 0; k <= r->degree; k += 2) /* odd ones fall out */
        m.height[k] = dot(r->kernel[k], height + o.point, o.count);
    return fitted(r->degree, &m);
}

static void whole_kernel(const struct cg_regression *r, struct moments *m)
{
    memset(m, 0, sizeof *m);
    for (int k = 0; k <= 2 * r->degree; k += 2)
        m->weight[k] = total(r->kernel[k], 2 * r->reach + 1);
}

static void join_places(const struct cg_regression *r, double *line)
{
    for (size_t i = 0; i < r->points; i++) {
        /* place BEYOND is point 0; a stencil begins two places before */
        const double *place = r->place + BEYOND - 2 + i / r->step;
        line[i] = dot(r->quintic + i % r->step * STENCIL, place, STENCIL);
    }
}

enum cg_status cg_regression_line(struct cg_regression *regression,
                                  const double *height, const double *weight,
                                  double *line, struct cg_error *error)
{
    struct cg_regression *r = regression;
    struct moments whole;
    const double *summed = height;
    whole_kernel(r, &whole);
    if (weight != NULL) {
        for (size_t i = 0; i < r->points; i++)
            r->weighed[i] = weight[i] * height[i];
        summed = r->weighed;
    }
    for (size_t i = 0; i < r->places; i++) {
        long center = ((long)i - BEYOND) * (long)r->step;
        r->place[i] = fit_at(r, summed, weight, &whole, center);
        if (isnan(r->place[i]))
            return cg_error_set(error, CG_NUMERICAL,
                                "filter: around %.3g mm all heights are "
                                "outliers, and no line fits them; try "
                                "another filter",
                                fmax((double)center, 0.0) * r->spacing * 1e3);
    }
    join_places(r, line);
    return CG_OK;
}
