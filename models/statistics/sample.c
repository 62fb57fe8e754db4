#include "sample.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_sort.h>

/* A run may fail at the edge of what the inputs allow; more often than this,
 * those left no longer stand for all. */
#define MOST_FAILED 0.01

static size_t larger(size_t a, size_t b)
{
    return a > b ? a : b;
}

static size_t smaller(size_t a, size_t b)
{
    return a < b ? a : b;
}

static size_t points_of(const struct cg_sample *sample)
{
    return (sample->samples + sample->replicates - 1) / sample->replicates;
}

/* The generator's first point is (1/2, ..., 1/2): the origin before it, left
 * out there, is put back, so that 2^k points are balanced. */
static enum cg_status fill_sequence(struct cg_sample *sample,
                                    struct cg_error *error)
{
    size_t dimensions = sample->dimensions, points = points_of(sample);
    size_t even = smaller(dimensions, CG_SAMPLE_DIMENSIONS);
    gsl_qrng *sobol = gsl_qrng_alloc(gsl_qrng_sobol, (unsigned int)even);
    if (sobol == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t i = 0; i < even; i++)
        sample->sequence[i] = 0.0;
    int gsl = 0;
    for (size_t i = 1; i < points && gsl == 0; i++)
        gsl = gsl_qrng_get(sobol, sample->sequence + i * dimensions);
    gsl_qrng_free(sobol);
    return gsl == 0 ? CG_OK
                    : cg_error_set(error, CG_NUMERICAL,
                                   "Sobol's sequence came to its end");
}

/* What the sequence has no dimension for: values swapped in, at random. */
static enum cg_status fill_rest(struct cg_sample *sample, unsigned long seed,
                                struct cg_error *error)
{
    size_t dimensions = sample->dimensions, points = points_of(sample);
    if (dimensions <= CG_SAMPLE_DIMENSIONS)
        return CG_OK;
    gsl_rng *random = gsl_rng_alloc(gsl_rng_ranlxd1);
    if (random == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    gsl_rng_set(random, seed);
    for (size_t i = 0; i < points; i++)
        for (size_t d = CG_SAMPLE_DIMENSIONS; d < dimensions; d++)
            sample->sequence[i * dimensions + d] = gsl_rng_uniform_pos(random);
    gsl_rng_free(random);
    return CG_OK;
}

static enum cg_status fill_shifts(struct cg_sample *sample, unsigned long seed,
                                  struct cg_error *error)
{
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    if (random == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    gsl_rng_set(random, seed);
    for (size_t i = 0; i < sample->replicates * sample->dimensions; i++)
        sample->shift[i] = gsl_rng_uniform_pos(random);
    gsl_rng_free(random);
    return CG_OK;
}

static double *doubles(size_t count)
{
    return calloc(larger(count, 1), sizeof(double));
}

enum cg_status cg_sample_create(size_t samples, size_t inputs, size_t swapped,
                                unsigned long seed, struct cg_sample **sample,
                                struct cg_error *error)
{
    assert(samples >= 2 && inputs >= 1 && inputs <= CG_SAMPLE_INPUTS);
    assert(swapped <= inputs);
    struct cg_sample *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->samples = samples;
    made->inputs = inputs;
    made->swapped = swapped;
    made->dimensions = inputs + swapped;
    made->replicates = smaller(samples, CG_SAMPLE_REPLICATES);
    if (swapped > 0)
        made->swaps = smaller(
            larger(samples / (4 * swapped), CG_SAMPLE_FEWEST_SWAPS), samples);
    made->sequence = doubles(points_of(made) * made->dimensions);
    made->shift = doubles(made->replicates * made->dimensions);
    made->value = doubles(samples);
    made->swapped_value = doubles(made->swaps * swapped);
    made->sorted = doubles(samples);
    enum cg_status status = CG_OK;
    if (made->sequence == NULL || made->shift == NULL || made->value == NULL ||
        made->swapped_value == NULL || made->sorted == NULL)
        status = cg_error_set(error, CG_NO_MEMORY, "out of memory");
    if (status == CG_OK)
        status = fill_sequence(made, error);
    if (status == CG_OK)
        status = fill_rest(made, seed, error);
    if (status == CG_OK)
        status = fill_shifts(made, seed, error);
    if (status != CG_OK) {
        cg_sample_free(made);
        return status;
    }
    *sample = made;
    return CG_OK;
}

void cg_sample_free(struct cg_sample *sample)
{
    if (sample == NULL)
        return;
    free(sample->sequence);
    free(sample->shift);
    free(sample->value);
    free(sample->swapped_value);
    free(sample->sorted);
    free(sample);
}

static double score_of(const struct cg_sample *sample, size_t index,
                       size_t dimension)
{
    size_t dimensions = sample->dimensions;
    size_t point = index / sample->replicates;
    size_t replicate = index % sample->replicates;
    double u = sample->sequence[point * dimensions + dimension] +
               sample->shift[replicate * dimensions + dimension];
    u -= floor(u);
    /* Zero and one are infinitely far out; the sequence is no finer. */
    return gsl_cdf_ugaussian_Pinv(fmin(fmax(u, 1e-10), 1.0 - 1e-10));
}

void cg_sample_point(const struct cg_sample *sample, size_t index,
                     double *score)
{
    for (size_t i = 0; i < sample->inputs; i++)
        score[i] = score_of(sample, index, i);
}

double cg_sample_swap(const struct cg_sample *sample, size_t index,
                      size_t input)
{
    return score_of(sample, index, sample->inputs + input);
}

double cg_sample_quantile(const double *ascending, size_t count,
                          double probability)
{
    double place = ((double)count + 1.0 / 3.0) * probability + 1.0 / 3.0;
    double first = floor(fmin(fmax(place, 1.0), (double)count));
    size_t below = (size_t)first - 1;
    double part = fmin(fmax(place - first, 0.0), 1.0);
    if (below + 1 >= count)
        return ascending[count - 1];
    return ascending[below] +
           part * (ascending[below + 1] - ascending[below]);
}

/* Those of the samples first, first + step, ... that did not fail, ascending;
 * returns their number. */
static size_t sort_values(struct cg_sample *sample, size_t first, size_t step)
{
    size_t good = 0;
    for (size_t j = first; j < sample->samples; j += step)
        if (!isnan(sample->value[j]))
            sample->sorted[good++] = sample->value[j];
    gsl_sort(sample->sorted, 1, good);
    return good;
}

static double quantile_error(struct cg_sample *sample, double probability,
                             double whole)
{
    double squares = 0.0, count = 0.0;
    for (size_t r = 0; r < sample->replicates; r++) {
        size_t good = sort_values(sample, r, sample->replicates);
        if (good == 0)
            continue;
        double apart =
            cg_sample_quantile(sample->sorted, good, probability) - whole;
        squares += apart * apart;
        count += 1.0;
    }
    return count > 1.0 ? sqrt(squares / (count * (count - 1.0))) : NAN;
}

static void add_moments(const struct cg_sample *sample,
                        struct cg_sample_sum *sum)
{
    double total = 0.0, squares = 0.0;
    for (size_t j = 0; j < sample->samples; j++)
        if (!isnan(sample->value[j]))
            total += sample->value[j];
    sum->mean = total / (double)sum->good;
    for (size_t j = 0; j < sample->samples; j++)
        if (!isnan(sample->value[j]))
            squares += (sample->value[j] - sum->mean) *
                       (sample->value[j] - sum->mean);
    sum->sd = sum->good > 1 ? sqrt(squares / (double)(sum->good - 1)) : 0.0;
}

enum cg_status cg_sample_add_up(struct cg_sample *sample, double probability,
                                struct cg_sample_sum *sum,
                                struct cg_error *error)
{
    struct cg_sample_sum found = {0};
    found.good = sort_values(sample, 0, 1);
    found.failures = sample->samples - found.good;
    if ((double)found.failures > MOST_FAILED * (double)sample->samples)
        return cg_error_set(error, CG_NUMERICAL,
                            "%zu of %zu samples failed", found.failures,
                            sample->samples);
    found.quantile =
        cg_sample_quantile(sample->sorted, found.good, probability);
    found.quantile_error =
        quantile_error(sample, probability, found.quantile);
    sort_values(sample, 0, 1); /* the replicates' sorting undone */
    add_moments(sample, &found);
    *sum = found;
    return CG_OK;
}

double cg_sample_total_effect(const struct cg_sample *sample,
                              const struct cg_sample_sum *sum, size_t input,
                              double *standard_error)
{
    double total = 0.0, squares = 0.0, count = 0.0;
    double variance = sum->sd * sum->sd;
    *standard_error = 0.0;
    for (size_t j = 0; j < sample->swaps; j++) {
        double apart = sample->value[j] -
                       sample->swapped_value[j * sample->swapped + input];
        if (isnan(apart))
            continue;
        double half_square = 0.5 * apart * apart;
        total += half_square;
        squares += half_square * half_square;
        count += 1.0;
    }
    if (!(variance > 0.0) || count < 2.0)
        return 0.0;
    double mean = total / count;
    double spread = fmax(squares / count - mean * mean, 0.0);
    *standard_error = sqrt(spread / (count - 1.0)) / variance;
    return mean / variance;
}
