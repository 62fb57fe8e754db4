/* Memory that runs out at any allocation.
 *
 * The linker puts the functions below in place of the libraries' (--wrap in
 * tests/CMakeLists.txt), in the project's own code: what the libraries ask for
 * inside is granted.  One file a program includes this. */
#ifndef CG_SCARCE_MEMORY_H
#define CG_SCARCE_MEMORY_H

#include <limits.h>
#include <stdlib.h>

#include <gsl/gsl_matrix.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_roots.h>
#include <gsl/gsl_vector.h>

#include "case_of.h"

static long left = -1; /* allocations still to be granted; < 0: all */
static bool refused;

static bool granted(void)
{
    if (left < 0)
        return true;
    if (left-- > 0)
        return true;
    left = -1; /* one refusal a run */
    refused = true;
    return false;
}

#define SCARCE(type, name, given, passed)                                     \
    type __real_##name given;                                                 \
    type __wrap_##name given;                                                 \
    type __wrap_##name given                                                  \
    {                                                                         \
        return granted() ? __real_##name passed : NULL;                       \
    }

SCARCE(void *, malloc, (size_t size), (size))
SCARCE(void *, calloc, (size_t count, size_t size), (count, size))
SCARCE(void *, realloc, (void *old, size_t size), (old, size))
SCARCE(gsl_matrix *, gsl_matrix_alloc, (size_t n, size_t m), (n, m))
SCARCE(gsl_vector *, gsl_vector_alloc, (size_t n), (n))
SCARCE(gsl_qrng *, gsl_qrng_alloc, (const gsl_qrng_type *type, unsigned n),
       (type, n))
SCARCE(gsl_rng *, gsl_rng_alloc, (const gsl_rng_type *type), (type))
SCARCE(gsl_root_fsolver *, gsl_root_fsolver_alloc,
       (const gsl_root_fsolver_type *type), (type))
SCARCE(gsl_multifit_nlinear_workspace *, gsl_multifit_nlinear_alloc,
       (const gsl_multifit_nlinear_type *type,
        const gsl_multifit_nlinear_parameters *how, size_t n, size_t p),
       (type, how, n, p))

/* A job that gives all it took back before it returns. */
struct job {
    const char *name;
    enum cg_status (*run)(struct cg_error *error);
};

/* How many allocations the job makes. */
static long count_allocations(const struct job *job)
{
    struct cg_error error = {CG_OK, ""};
    left = LONG_MAX;
    enum cg_status status = job->run(&error);
    long count = LONG_MAX - left;
    left = -1;
    ck_assert_msg(status == CG_OK, "%s: %s", job->name, error.text);
    return count;
}

/* The next to refuse: each of the first hundred and of the last thirty, and
 * one in twenty between. */
static long next_refusal(long first, long count)
{
    if (first < 100 || first >= count - 30)
        return first + 1;
    return first + 1 + first / 20 < count - 30 ? first + 1 + first / 20
                                               : count - 30;
}

/* The status says so, with a text, wherever the job's memory runs out; and
 * the same job runs well afterwards. */
static void check_scarce(const struct job *job)
{
    struct cg_error error;
    long runs = 0, count = count_allocations(job);
    for (long first = 0;; runs++) {
        left = first;
        refused = false;
        error = (struct cg_error){CG_OK, ""};
        enum cg_status status = job->run(&error);
        left = -1;
        if (!refused) {
            ck_assert_msg(status == CG_OK, "%s: %s", job->name, error.text);
            break;
        }
        ck_assert_msg(status == CG_NO_MEMORY,
                      "%s, allocation %ld refused: status %d, \"%s\"",
                      job->name, first + 1, (int)status, error.text);
        ck_assert(error.text[0] != '\0' && error.status == CG_NO_MEMORY);
        first = next_refusal(first, count);
    }
    printf("%s: memory ran out in %ld places of %ld\n", job->name, runs,
           count);
    ck_assert_int_gt(runs, 0);
    error = (struct cg_error){CG_OK, ""};
    ck_assert_msg(job->run(&error) == CG_OK, "%s again: %s", job->name,
                  error.text);
}

#endif
