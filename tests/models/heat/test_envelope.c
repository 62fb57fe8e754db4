/* The envelope factors against GSL's dense solvers on random heat matrices. */
#include "check_close.h"

#include "envelope.h"

#include <gsl/gsl_linalg.h>
#include <gsl/gsl_rng.h>
#include <string.h>

enum { MOST = 240 };

/* A random matrix of conductances: symmetric, diagonally dominant. */
struct problem {
    size_t n;
    size_t first[MOST];
    gsl_matrix *dense;
    struct cg_envelope *envelope;
};

static void add_link(struct problem *p, size_t a, size_t b, double g)
{
    *gsl_matrix_ptr(p->dense, a, b) -= g;
    *gsl_matrix_ptr(p->dense, b, a) -= g;
    *gsl_matrix_ptr(p->dense, a, a) += g;
    *gsl_matrix_ptr(p->dense, b, b) += g;
    size_t low = a < b ? a : b, high = a < b ? b : a;
    if (low < p->first[high])
        p->first[high] = low;
}

/* Chains with links at distance 1 and `band`, and rows that reach far back
 * with probability `reach`. */
static void make(struct problem *p, size_t n, size_t band, double reach,
                 gsl_rng *rng)
{
    p->n = n;
    p->dense = gsl_matrix_calloc(n, n);
    for (size_t i = 0; i < n; i++) {
        p->first[i] = i;
        *gsl_matrix_ptr(p->dense, i, i) = 1e-3 + gsl_rng_uniform(rng);
    }
    for (size_t i = 1; i < n; i++) {
        if (gsl_rng_uniform(rng) < 0.95)
            add_link(p, i, i - 1, 10 * gsl_rng_uniform(rng));
        if (i >= band)
            add_link(p, i - band, i, gsl_rng_uniform(rng));
        if (gsl_rng_uniform(rng) < reach)
            for (size_t k = 0; k < 9; k++)
                add_link(p, gsl_rng_uniform_int(rng, i), i,
                         gsl_rng_uniform(rng));
    }
    ck_assert_int_eq(cg_envelope_create(n, p->first, &p->envelope, NULL),
                     CG_OK);
}

static void fill(struct problem *p)
{
    cg_envelope_clear(p->envelope);
    for (size_t i = 0; i < p->n; i++)
        for (size_t j = 0; j <= i; j++) {
            double value = gsl_matrix_get(p->dense, i, j);
            /* either triangle, and in two parts */
            if (value != 0) {
                cg_envelope_add(p->envelope, i, j, 0.25 * value);
                cg_envelope_add(p->envelope, j, i, 0.75 * value);
            }
        }
}

static void drop(struct problem *p)
{
    gsl_matrix_free(p->dense);
    cg_envelope_free(p->envelope);
}

/* Largest difference from GSL's Cholesky, relative to the largest value. */
static double difference(struct problem *p, gsl_rng *rng)
{
    gsl_vector *x = gsl_vector_alloc(p->n);
    double ours[MOST], largest = 0, worst = 0;
    for (size_t i = 0; i < p->n; i++) {
        ours[i] = gsl_rng_uniform(rng) - 0.5;
        gsl_vector_set(x, i, ours[i]);
    }
    gsl_matrix *factors = gsl_matrix_alloc(p->n, p->n);
    gsl_matrix_memcpy(factors, p->dense);
    ck_assert_int_eq(gsl_linalg_cholesky_decomp1(factors), 0);
    ck_assert_int_eq(gsl_linalg_cholesky_svx(factors, x), 0);
    fill(p);
    ck_assert_int_eq(cg_envelope_factor(p->envelope, NULL), CG_OK);
    cg_envelope_solve(p->envelope, ours);
    for (size_t i = 0; i < p->n; i++) {
        largest = fmax(largest, fabs(gsl_vector_get(x, i)));
        worst = fmax(worst, fabs(ours[i] - gsl_vector_get(x, i)));
    }
    gsl_matrix_free(factors);
    gsl_vector_free(x);
    return worst / largest;
}

START_TEST(random_networks_agree_with_gsl)
{
    static const struct {
        size_t n, band;
        double reach;
    } shape[] = {{1, 1, 0},     {2, 1, 0},      {3, 2, 0.5},    {17, 1, 0},
                 {40, 6, 0},    {215, 6, 0.05}, {215, 6, 0.4},  {240, 30, 0.1},
                 {97, 25, 0.9}, {120, 3, 1},    {238, 12, 0.02}};
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    for (size_t s = 0; s < sizeof shape / sizeof *shape; s++)
        for (int repeat = 0; repeat < 12; repeat++) {
            struct problem p;
            make(&p, shape[s].n, shape[s].band, shape[s].reach, rng);
            double worst = difference(&p, rng);
            ck_assert_msg(worst < 1e-11, "shape %zu differs by %g", s, worst);
            /* the same storage serves again */
            ck_assert_double_lt(difference(&p, rng), 1e-11);
            drop(&p);
        }
    gsl_rng_free(rng);
}
END_TEST

START_TEST(size_counts_rows_to_the_diagonal)
{
    const size_t first[] = {0, 0, 2, 1, 0};
    struct cg_envelope *envelope;
    ck_assert_int_eq(cg_envelope_create(5, first, &envelope, NULL), CG_OK);
    ck_assert_uint_eq(cg_envelope_size(envelope), 1 + 2 + 1 + 3 + 5);
    cg_envelope_free(envelope);
    cg_envelope_free(NULL);
}
END_TEST

START_TEST(indefinite_matrix_is_refused)
{
    const size_t first[] = {0, 0, 1};
    struct cg_envelope *envelope;
    struct cg_error error;
    cg_envelope_create(3, first, &envelope, NULL);
    for (size_t i = 0; i < 3; i++)
        cg_envelope_add(envelope, i, i, 1);
    cg_envelope_add(envelope, 1, 2, 1.5);
    ck_assert_int_eq(cg_envelope_factor(envelope, &error), CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "row 2") != NULL, "%s", error.text);
    cg_envelope_clear(envelope);
    cg_envelope_add(envelope, 0, 0, NAN);
    ck_assert_int_eq(cg_envelope_factor(envelope, &error), CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "row 0") != NULL, "%s", error.text);
    cg_envelope_free(envelope);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("envelope");
    TCase *tcase = tcase_create("envelope");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, random_networks_agree_with_gsl);
    tcase_add_test(tcase, size_counts_rows_to_the_diagonal);
    tcase_add_test(tcase, indefinite_matrix_is_refused);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
