/* The sparse factors against GSL's dense solvers on random heat matrices. */
#include "check_close.h"

#include "pivot_order.h"
#include "sparse.h"

#include <gsl/gsl_linalg.h>
#include <gsl/gsl_rng.h>
#include <string.h>

enum { MOST = 240, MOST_LINKS = 4000 };

/* A random matrix of conductances: symmetric, diagonally dominant. */
struct problem {
    size_t n, links;
    size_t a[MOST_LINKS], b[MOST_LINKS];
    double link[MOST_LINKS], diagonal[MOST];
    gsl_matrix *dense;
    struct cg_sparse *sparse;
};

static void add_link(struct problem *p, size_t a, size_t b, double g)
{
    *gsl_matrix_ptr(p->dense, a, b) -= g;
    *gsl_matrix_ptr(p->dense, b, a) -= g;
    *gsl_matrix_ptr(p->dense, a, a) += g;
    *gsl_matrix_ptr(p->dense, b, b) += g;
    ck_assert_uint_lt(p->links, MOST_LINKS);
    p->a[p->links] = a;
    p->b[p->links] = b;
    p->link[p->links++] = g;
}

/* Chains with links at distance 1 and `band`, and rows that reach far back
 * with probability `reach`. */
static void make(struct problem *p, size_t n, size_t band, double reach,
                 gsl_rng *rng)
{
    p->n = n;
    p->links = 0;
    p->dense = gsl_matrix_calloc(n, n);
    for (size_t i = 0; i < n; i++)
        *gsl_matrix_ptr(p->dense, i, i) = 1e-3 + gsl_rng_uniform(rng);
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
    for (size_t i = 0; i < n; i++)
        p->diagonal[i] = gsl_matrix_get(p->dense, i, i);
    ck_assert_int_eq(
        cg_sparse_create(n, p->links, p->a, p->b, &p->sparse, NULL), CG_OK);
}

static void drop(struct problem *p)
{
    gsl_matrix_free(p->dense);
    cg_sparse_free(p->sparse);
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
    ck_assert_int_eq(cg_sparse_factor(p->sparse, p->diagonal, p->link, 1, NULL),
                     CG_OK);
    cg_sparse_solve(p->sparse, ours);
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

/* A star's middle is taken last, and nothing fills in; begun with it, every
 * pair of its ends would. */
START_TEST(a_node_that_many_touch_costs_them_once)
{
    enum { ENDS = 100 };
    size_t a[ENDS], b[ENDS];
    double diagonal[ENDS + 1], link[ENDS], x[ENDS + 1];
    struct cg_sparse *sparse;
    diagonal[0] = ENDS + 1.0;
    for (size_t l = 0; l < ENDS; l++) {
        a[l] = l % 2 == 0 ? 0 : l + 1; /* either way round */
        b[l] = l % 2 == 0 ? l + 1 : 0;
        link[l] = 0.5; /* twice, by the scale */
        diagonal[l + 1] = 1.0;
    }
    ck_assert_int_eq(cg_sparse_create(ENDS + 1, ENDS, a, b, &sparse, NULL),
                     CG_OK);
    ck_assert_uint_eq(cg_sparse_size(sparse), 2 * ENDS + 1);
    ck_assert_int_eq(cg_sparse_factor(sparse, diagonal, link, 2, NULL), CG_OK);
    for (size_t i = 0; i <= ENDS; i++)
        x[i] = i == 0 ? 1.0 : 0.0;
    cg_sparse_solve(sparse, x); /* (ENDS + 1) x - ENDS x = 1 */
    for (size_t i = 0; i <= ENDS; i++)
        ck_assert_double_lt(fabs(x[i] - 1.0), 1e-12);
    cg_sparse_free(sparse);
    cg_sparse_free(NULL);
}
END_TEST

/* Of 0 - 1 - 2 and 3 alone. */
START_TEST(order_takes_the_fewest_neighbours_first)
{
    const size_t a[] = {0, 2, 1}, b[] = {1, 1, 0}; /* one pair twice */
    struct cg_pivot_order order;
    ck_assert_int_eq(cg_pivot_order_find(4, 3, a, b, &order, NULL), CG_OK);
    const uint32_t node[] = {3, 0, 1, 2};
    for (size_t k = 0; k < 4; k++) {
        ck_assert_uint_eq(order.node[k], node[k]);
        ck_assert_uint_eq(order.place[node[k]], k);
    }
    ck_assert_uint_eq(order.entries, 2);
    ck_assert_uint_eq(order.start[4], 2);
    ck_assert_uint_eq(order.column[0], 1); /* 1 after 0 */
    ck_assert_uint_eq(order.column[1], 2); /* 2 after 1 */
    cg_pivot_order_free(&order);
}
END_TEST

START_TEST(indefinite_matrix_is_refused)
{
    const size_t a[] = {1}, b[] = {2};
    const double link[] = {1.5};
    double diagonal[] = {1, 1, 1};
    struct cg_sparse *sparse;
    struct cg_error error;
    cg_sparse_create(3, 1, a, b, &sparse, NULL);
    ck_assert_int_eq(cg_sparse_factor(sparse, diagonal, link, 1, &error),
                     CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "row 2") != NULL, "%s", error.text);
    diagonal[0] = NAN;
    ck_assert_int_eq(cg_sparse_factor(sparse, diagonal, link, 0, &error),
                     CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "row 0") != NULL, "%s", error.text);
    cg_sparse_free(sparse);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sparse");
    TCase *tcase = tcase_create("sparse");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, random_networks_agree_with_gsl);
    tcase_add_test(tcase, a_node_that_many_touch_costs_them_once);
    tcase_add_test(tcase, order_takes_the_fewest_neighbours_first);
    tcase_add_test(tcase, indefinite_matrix_is_refused);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
