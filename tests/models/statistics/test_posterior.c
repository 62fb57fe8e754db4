/* The posterior on models of which the answer is known. */
#include <math.h>
#include <string.h>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>

#include "check_close.h"
#include "posterior.h"

#define BAYES "Bayes' rule for normal laws"

enum { N = 3, M = 5 };

/* y = level + slope u, bent by `bend` u'u. */
struct line {
    double level[M], slope[M][N], bend;
    size_t sights, calls;
    double at[N];
};

static const struct line five = {
    .level = {1.0, -2.0, 0.5, 10.0, 0.0},
    .slope = {{1.0, 0.2, 0.0},
              {0.3, -1.0, 0.5},
              {2.0, 0.1, 0.7},
              {0.0, 0.0, 0.0},
              {-0.4, 0.9, 1.3}},
    .sights = M};

static enum cg_status values(void *context, const double *u, double *y,
                             struct cg_error *error)
{
    struct line *line = context;
    (void)error;
    line->calls++;
    memcpy(line->at, u, sizeof line->at);
    for (size_t i = 0; i < line->sights; i++) {
        y[i] = line->level[i];
        for (size_t k = 0; k < N; k++)
            y[i] += line->slope[i][k] * u[k] + line->bend * u[k] * u[k];
    }
    return CG_OK;
}

static enum cg_status slopes(void *context, const double *u, double *slope,
                             struct cg_error *error)
{
    struct line *line = context;
    (void)error;
    ck_assert_mem_eq(line->at, u, sizeof line->at); /* as promised */
    for (size_t i = 0; i < line->sights; i++)
        for (size_t k = 0; k < N; k++)
            slope[i * N + k] =
                line->slope[i][k] + 2.0 * line->bend * u[k];
    return CG_OK;
}

static struct cg_posterior_model model_of(struct line *line,
                                          const struct cg_sight *sight)
{
    return (struct cg_posterior_model){N,    line->sights, sight, 1e-10,
                                       line, values,       slopes};
}

static struct cg_posterior *found(const struct cg_posterior_model *model)
{
    struct cg_posterior *posterior;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_posterior_create(model, &posterior, &error), CG_OK);
    ck_assert_msg(cg_posterior_find(model, posterior, &error) == CG_OK, "%s",
                  error.text);
    return posterior;
}

/* Bayes' rule one sight after the other (R. E. Kalman, "A new approach to
 * linear filtering and prediction problems", 1960): its own arithmetic. */
static void kalman(const struct line *line, const struct cg_sight *sight,
                   double mean[N], double covariance[N][N])
{
    for (size_t k = 0; k < N; k++) {
        mean[k] = 0.0;
        for (size_t l = 0; l < N; l++)
            covariance[k][l] = k == l ? 1.0 : 0.0;
    }
    for (size_t i = 0; i < line->sights; i++) {
        double gain[N] = {0.0}, y = line->level[i];
        double width2 = sight[i].spread * sight[i].spread;
        for (size_t k = 0; k < N; k++) {
            y += line->slope[i][k] * mean[k];
            for (size_t l = 0; l < N; l++)
                gain[k] += covariance[k][l] * line->slope[i][l];
            width2 += line->slope[i][k] * gain[k];
        }
        for (size_t k = 0; k < N; k++) {
            mean[k] += gain[k] * (sight[i].value - y) / width2;
            for (size_t l = 0; l < N; l++)
                covariance[k][l] -= gain[k] * gain[l] / width2;
        }
    }
}

static const struct cg_sight measured[M] = {
    {CG_SIGHT_VALUE, 1.9, 0.3}, {CG_SIGHT_VALUE, -2.4, 0.8},
    {CG_SIGHT_VALUE, 3.0, 0.1}, {CG_SIGHT_VALUE, 10.5, 0.4},
    {CG_SIGHT_VALUE, -0.7, 1.1}};

START_TEST(straight_model_is_bayes_rule)
{
    struct line line = five;
    struct cg_posterior_model model = model_of(&line, measured);
    struct cg_posterior *posterior = found(&model);
    double mean[N], covariance[N][N];
    kalman(&line, measured, mean, covariance);
    for (size_t k = 0; k < N; k++) {
        check_within(posterior->mean[k], mean[k], 1e-8, BAYES);
        for (size_t l = 0; l < N; l++)
            check_within(posterior->covariance[k * N + l], covariance[k][l],
                         1e-10, BAYES);
        ck_assert_double_le(posterior->covariance[k * N + k], 1.0);
    }
    cg_posterior_free(posterior);
}
END_TEST

/* The first sights alone are wider than all, in every direction. */
START_TEST(more_sights_never_widen)
{
    for (size_t sights = 0; sights < M; sights++) {
        struct line less = five, more = five;
        less.sights = sights;
        more.sights = sights + 1;
        struct cg_posterior_model a = model_of(&less, measured);
        struct cg_posterior_model b = model_of(&more, measured);
        struct cg_posterior *wide = found(&a), *narrow = found(&b);
        gsl_matrix *apart = gsl_matrix_alloc(N, N);
        for (size_t k = 0; k < N; k++)
            for (size_t l = 0; l < N; l++)
                gsl_matrix_set(apart, k, l,
                               wide->covariance[k * N + l] -
                                   narrow->covariance[k * N + l] +
                                   (k == l ? 1e-12 : 0.0));
        ck_assert_int_eq(gsl_linalg_cholesky_decomp1(apart), GSL_SUCCESS);
        gsl_matrix_free(apart);
        cg_posterior_free(wide);
        cg_posterior_free(narrow);
    }
}
END_TEST

START_TEST(without_sights_nothing_is_learned)
{
    struct line line = five;
    line.sights = 0;
    struct cg_posterior_model model = model_of(&line, measured);
    struct cg_posterior *posterior = found(&model);
    double chance;
    for (size_t k = 0; k < N; k++) {
        ck_assert_double_eq(posterior->mean[k], 0.0);
        for (size_t l = 0; l < N; l++)
            ck_assert_double_eq(posterior->covariance[k * N + l],
                                k == l ? 1.0 : 0.0);
    }
    ck_assert_int_eq(cg_posterior_chance(&model, posterior, &chance, NULL),
                     CG_OK);
    ck_assert_double_eq(chance, 1.0);
    cg_posterior_free(posterior);

    /* a sight that no unknown moves */
    struct line still = {.level = {10.0}, .sights = 1};
    struct cg_sight at = {CG_SIGHT_BELOW, 10.1, 0.4};
    model = model_of(&still, &at);
    posterior = found(&model);
    ck_assert_double_eq(posterior->mean[0], 0.0);
    ck_assert_double_eq(posterior->covariance[0], 1.0);
    cg_posterior_free(posterior);
}
END_TEST

START_TEST(order_does_not_matter)
{
    struct line line = five, turned = five;
    struct cg_sight sight[M], back[M];
    memcpy(sight, measured, sizeof sight);
    sight[4].kind = CG_SIGHT_BELOW;
    sight[1].kind = CG_SIGHT_ABOVE;
    for (size_t i = 0; i < M; i++) {
        turned.level[i] = line.level[M - 1 - i];
        memcpy(turned.slope[i], line.slope[M - 1 - i], sizeof line.slope[0]);
        back[i] = sight[M - 1 - i];
    }
    struct cg_posterior_model a = model_of(&line, sight);
    struct cg_posterior_model b = model_of(&turned, back);
    struct cg_posterior *one = found(&a), *other = found(&b);
    for (size_t k = 0; k < N; k++)
        check_within(one->mean[k], other->mean[k], 1e-8, "symmetry");
    cg_posterior_free(one);
    cg_posterior_free(other);
}
END_TEST

/* One sign of one unknown: the moments of a normal law cut by it, from Bayes'
 * rule by a plain sum over the unknown. */
START_TEST(a_sign_has_the_moments_of_the_cut_law)
{
    static const double edge[] = {-2.0, -0.5, 0.0, 0.7, 1.5};
    static const double blur[] = {0.05, 0.4, 2.0};
    for (size_t e = 0; e < 5; e++)
        for (size_t b = 0; b < 3; b++)
            for (int side = 0; side < 2; side++) {
                struct line line = {.slope = {{1.0}}, .sights = 1};
                struct cg_sight sight = {
                    side == 0 ? CG_SIGHT_BELOW : CG_SIGHT_ABOVE, edge[e],
                    blur[b]};
                struct cg_posterior_model model = model_of(&line, &sight);
                struct cg_posterior *posterior = found(&model);
                double zero = 0.0, first = 0.0, second = 0.0;
                for (double u = -9.0; u < 9.0; u += 1e-3) {
                    double t = (edge[e] - u) / blur[b];
                    double weight = gsl_ran_ugaussian_pdf(u) *
                                    gsl_cdf_ugaussian_P(side == 0 ? t : -t);
                    zero += weight;
                    first += weight * u;
                    second += weight * u * u;
                }
                first /= zero;
                second = second / zero - first * first;
                check_within(posterior->mean[0], first, 1e-6, "Bayes' rule");
                check_within(posterior->covariance[0], second, 1e-6,
                             "Bayes' rule");
                ck_assert(side == 0 ? first < 0.0 : first > 0.0);
                cg_posterior_free(posterior);
            }
}
END_TEST

/* Two signs and a value on two unknowns, against the sum over both: expectation
 * propagation is close, not exact. */
START_TEST(signs_together_are_close_to_bayes_rule)
{
    struct line line = {.slope = {{1.0, 0.5}, {0.4, -1.0}, {1.0, 1.0}},
                        .sights = 3};
    struct cg_sight sight[3] = {{CG_SIGHT_BELOW, 0.3, 0.2},
                                {CG_SIGHT_ABOVE, 0.5, 0.1},
                                {CG_SIGHT_VALUE, -0.5, 0.6}};
    struct cg_posterior_model model = model_of(&line, sight);
    struct cg_posterior *posterior = found(&model);
    double zero = 0.0, first = 0.0, second = 0.0;
    for (double u = -6.0; u < 6.0; u += 0.02)
        for (double v = -6.0; v < 6.0; v += 0.02) {
            double weight =
                exp(-0.5 * (u * u + v * v)) *
                gsl_cdf_ugaussian_P((0.3 - u - 0.5 * v) / 0.2) *
                gsl_cdf_ugaussian_P((0.4 * u - v - 0.5) / 0.1) *
                gsl_ran_ugaussian_pdf((u + v + 0.5) / 0.6);
            zero += weight;
            first += weight * u;
            second += weight * u * u;
        }
    first /= zero;
    second = second / zero - first * first;
    check_within(posterior->mean[0], first, 0.02, "Minka 2001");
    check_close(posterior->covariance[0], second, 0.05, "Minka 2001");
    cg_posterior_free(posterior);
}
END_TEST

/* Engines drawn from the prior, each measured with noise: the error
 * of the mean, over the stated spread, is standard normal. */
START_TEST(stated_spread_covers_the_truth)
{
    enum { ENGINES = 400 };
    double squares = 0.0;
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    ck_assert_ptr_nonnull(random);
    gsl_rng_set(random, 5);
    for (int engine = 0; engine < ENGINES; engine++) {
        struct line line = five;
        struct cg_sight sight[M];
        double truth[N], y[M];
        line.bend = 0.02;
        for (size_t k = 0; k < N; k++)
            truth[k] = gsl_ran_gaussian(random, 1.0);
        (void)values(&line, truth, y, NULL);
        for (size_t i = 0; i < M; i++) {
            sight[i] = measured[i];
            sight[i].value =
                y[i] + gsl_ran_gaussian(random, sight[i].spread);
            if (i == 4) { /* a sign, seen through the same noise */
                sight[i].kind = sight[i].value < 0.0 ? CG_SIGHT_BELOW
                                                     : CG_SIGHT_ABOVE;
                sight[i].value = 0.0;
            }
        }
        struct cg_posterior_model model = model_of(&line, sight);
        struct cg_posterior *posterior = found(&model);
        for (size_t k = 0; k < N; k++)
            squares += pow(posterior->mean[k] - truth[k], 2.0) /
                       posterior->covariance[k * N + k] / (N * ENGINES);
        cg_posterior_free(posterior);
    }
    gsl_rng_free(random);
    check_within(squares, 1.0, 3.0 * sqrt(2.0 / ENGINES),
                 "chi-square, at least one free number an engine");
}
END_TEST

/* Deviations and chance, in closed form for one sight and for a pair. */
START_TEST(deviations_and_chance)
{
    struct line line = {.level = {2.0, 2.0}, .slope = {{3.0}, {3.0}},
                        .sights = 2};
    struct cg_sight sight[2] = {{CG_SIGHT_VALUE, 2.0 + 6.0, 4.0},
                                {CG_SIGHT_VALUE, 2.0 - 6.0, 4.0}};
    struct cg_posterior_model model = model_of(&line, sight);
    struct cg_posterior *posterior = found(&model);
    bool none[2] = {false, false}, all[2] = {true, true};
    double off, chance;
    ck_assert_int_eq(
        cg_posterior_deviation(&model, posterior, 0, none, &off, NULL),
        CG_OK);
    check_close(off, 6.0 / 5.0, 1e-9, "3 and 4 make 5");
    ck_assert_int_eq(
        cg_posterior_deviation(&model, posterior, 0, all, &off, NULL), CG_OK);
    /* given -6 with gain 9/25: expected -2.16, variance 9 - 81/25 */
    check_close(off, 8.16 / sqrt(9.0 - 81.0 / 25.0 + 16.0), 1e-9, BAYES);
    ck_assert_int_eq(cg_posterior_chance(&model, posterior, &chance, NULL),
                     CG_OK);
    /* covariance 25 9 / 9 25, off (6, -6): 72 / 16 */
    check_close(chance, gsl_cdf_chisq_Q(72.0 / 16.0, 2.0), 1e-9,
                "chi-square");
    sight[0] = (struct cg_sight){CG_SIGHT_BELOW, 2.0 - 10.0, 4.0};
    ck_assert_int_eq(
        cg_posterior_deviation(&model, posterior, 0, none, &off, NULL),
        CG_OK);
    check_close(off, -2.0, 1e-9, BAYES);
    sight[0].kind = CG_SIGHT_ABOVE;
    ck_assert_int_eq(
        cg_posterior_deviation(&model, posterior, 0, none, &off, NULL),
        CG_OK);
    ck_assert_double_eq(off, 0.0);
    cg_posterior_free(posterior);
}
END_TEST

/* y rises with u up to an edge and falls beyond, as a groove warms with heat
 * until knock retards the burn; slopes are means over one unit. */
static double over_edge(const double *u, int sight)
{
    double beyond = fmax(u[0] + 0.5 * u[1] - 0.3, 0.0);
    return sight == 0 ? 2.0 * u[0] + u[1] - 3.0 * beyond
                      : u[0] - 0.5 * u[1] - beyond;
}

static enum cg_status edge_values(void *context, const double *u, double *y,
                                  struct cg_error *error)
{
    (void)context;
    (void)error;
    for (int i = 0; i < 2; i++)
        y[i] = over_edge(u, i);
    return CG_OK;
}

static enum cg_status edge_slopes(void *context, const double *u, double *slope,
                                  struct cg_error *error)
{
    (void)context;
    (void)error;
    for (int k = 0; k < 2; k++) {
        double up[2] = {u[0], u[1]}, down[2] = {u[0], u[1]};
        up[k] += 0.5;
        down[k] -= 0.5;
        for (int i = 0; i < 2; i++)
            slope[i * 2 + k] = over_edge(up, i) - over_edge(down, i);
    }
    return CG_OK;
}

/* Mean and spread of u[0] over the posterior itself, on a fine grid. */
static void integrate(const struct cg_sight *sight, double *mean,
                      double *spread)
{
    double sum = 0.0, first = 0.0, second = 0.0, u[2];
    for (u[0] = -6.0; u[0] < 6.0; u[0] += 0.01)
        for (u[1] = -6.0; u[1] < 6.0; u[1] += 0.01) {
            double squares = u[0] * u[0] + u[1] * u[1];
            for (int i = 0; i < 2; i++)
                squares += pow((over_edge(u, i) - sight[i].value) /
                                   sight[i].spread, 2.0);
            double weight = exp(-0.5 * squares);
            sum += weight;
            first += weight * u[0];
            second += weight * u[0] * u[0];
        }
    *mean = first / sum;
    *spread = sqrt(second / sum - *mean * *mean);
}

/* More than the model can reach: the posterior sits at the edge, where descent
 * ends with a gradient left.  The mean is near that of the posterior itself; its
 * spread, by the mean slope of two sides, is not understated. */
START_TEST(an_edge_is_come_to_rest_at)
{
    const double values[] = {1.0, 2.0};
    struct cg_sight sight[2] = {{CG_SIGHT_VALUE, values[_i], 0.8},
                                {CG_SIGHT_VALUE, 0.2, 1.5}};
    struct cg_posterior_model model = {2,    2,           sight, 1e-6,
                                       NULL, edge_values, edge_slopes};
    struct cg_posterior *posterior = found(&model);
    double mean, spread;
    integrate(sight, &mean, &spread);
    for (int k = 0; k < 2; k++) {
        double left = posterior->mean[k];
        for (int i = 0; i < 2; i++)
            left += posterior->slope[i * 2 + k] *
                    (posterior->y[i] - sight[i].value) /
                    (sight[i].spread * sight[i].spread);
        check_within(left, 0.0, 1e-4, "the straight model's own posterior");
    }
    printf("%g: mean %.3f, spread %.3f; by the grid %.3f, %.3f\n", values[_i],
           posterior->mean[0], sqrt(posterior->covariance[0]), mean, spread);
    check_within(posterior->mean[0], mean, 0.25 * spread, "integrated");
    check_least(sqrt(posterior->covariance[0]), spread, "integrated");
    cg_posterior_free(posterior);
}
END_TEST

static enum cg_status failing(void *context, const double *u, double *y,
                              struct cg_error *error)
{
    if (u[0] != 0.0)
        return cg_error_set(error, CG_NUMERICAL, "no cycle");
    return values(context, u, y, error);
}

START_TEST(a_model_that_fails_is_told)
{
    struct line line = five;
    struct cg_posterior_model model = model_of(&line, measured);
    struct cg_posterior *posterior;
    struct cg_error error = {0};
    model.values = failing;
    ck_assert_int_eq(cg_posterior_create(&model, &posterior, &error), CG_OK);
    ck_assert_int_eq(cg_posterior_find(&model, posterior, &error),
                     CG_NUMERICAL);
    ck_assert_str_eq(error.text, "no cycle");
    cg_posterior_free(posterior);
}
END_TEST

static enum cg_status no_slopes(void *context, const double *u, double *slope,
                                struct cg_error *error)
{
    (void)context, (void)u, (void)slope;
    return cg_error_set(error, CG_STOPPED, "no slopes");
}

static enum cg_status endless(void *context, const double *u, double *slope,
                              struct cg_error *error)
{
    enum cg_status status = slopes(context, u, slope, error);
    slope[0] = INFINITY;
    return status;
}

/* y wavers without end, by many spreads, and the slopes know nothing of it. */
static enum cg_status waver(void *context, const double *u, double *y,
                            struct cg_error *error)
{
    enum cg_status status = values(context, u, y, error);
    y[0] += 50.0 * sin(1e5 * u[0]);
    return status;
}

/* The line that ends the search for a posterior. */
static const char *trouble(struct cg_posterior_model *model,
                           enum cg_status expected)
{
    static struct cg_error error;
    struct cg_posterior *posterior;
    enum cg_status status = cg_posterior_create(model, &posterior, &error);
    if (status == CG_OK) {
        status = cg_posterior_find(model, posterior, &error);
        cg_posterior_free(posterior);
    }
    ck_assert_int_eq(status, expected);
    ck_assert_int_eq(error.status, expected);
    return error.text;
}

START_TEST(troubles_are_told)
{
    struct line line = five;
    struct cg_posterior_model model = model_of(&line, measured);
    model.slopes = no_slopes;
    ck_assert_str_eq(trouble(&model, CG_STOPPED), "no slopes");
    model.slopes = endless;
    const char *lost = "the fit to the evidence does not converge: ";
    const char *text = trouble(&model, CG_NUMERICAL);
    ck_assert_msg(strstr(text, lost) == text, "%s", text);
    model.slopes = slopes;
    model.values = waver;
    text = trouble(&model, CG_NUMERICAL);
    ck_assert_msg(strstr(text, lost) == text, "%s", text);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("posterior");
    TCase *all = tcase_create("posterior");
    gsl_set_error_handler_off(); /* as the program does */
    tcase_set_timeout(all, 60);
    tcase_add_test(all, straight_model_is_bayes_rule);
    tcase_add_test(all, more_sights_never_widen);
    tcase_add_test(all, without_sights_nothing_is_learned);
    tcase_add_test(all, order_does_not_matter);
    tcase_add_test(all, a_sign_has_the_moments_of_the_cut_law);
    tcase_add_test(all, signs_together_are_close_to_bayes_rule);
    tcase_add_test(all, stated_spread_covers_the_truth);
    tcase_add_test(all, deviations_and_chance);
    tcase_add_loop_test(all, an_edge_is_come_to_rest_at, 0, 2);
    tcase_add_test(all, a_model_that_fails_is_told);
    tcase_add_test(all, troubles_are_told);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
