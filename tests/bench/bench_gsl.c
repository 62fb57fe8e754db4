/* GSL's BDF stepper with the exact Jacobian.  Its linear algebra is dense: it
 * is no match in speed, but an independent check of the answer. */
#include "bench_solver.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <stdlib.h>
#include <string.h>

static int rate(double time, const double t[], double out[], void *params)
{
    (void)time;
    const struct cg_network *network = params;
    cg_network_net_heat(network, t, out);
    for (size_t i = 0; i < network->nodes; i++)
        out[i] /= network->capacity[i];
    return GSL_SUCCESS;
}

static int jacobian(double time, const double t[], double *by_t,
                    double by_time[], void *params)
{
    (void)time;
    (void)t;
    const struct cg_network *network = params;
    size_t n = network->nodes;
    memset(by_t, 0, n * n * sizeof *by_t);
    memset(by_time, 0, n * sizeof *by_time);
    for (size_t l = 0; l < network->links; l++) {
        size_t a = network->link_a[l], b = network->link_b[l];
        double g = network->link_conductance[l];
        by_t[a * n + a] -= g / network->capacity[a];
        by_t[a * n + b] += g / network->capacity[a];
        by_t[b * n + b] -= g / network->capacity[b];
        by_t[b * n + a] += g / network->capacity[b];
    }
    for (size_t k = 0; k < network->baths; k++) {
        size_t i = network->bath_node[k];
        by_t[i * n + i] -= network->bath_conductance[k] / network->capacity[i];
    }
    return GSL_SUCCESS;
}

static void *create(struct cg_network *network)
{
    return network;
}

/* The driver has no dense output: it lands on every instant. */
static void solve(void *data, double accuracy, const double *start,
                  double *const *result, struct bench_run *run)
{
    struct cg_network *network = data;
    size_t bytes = network->nodes * sizeof *start;
    gsl_odeiv2_system system = {rate, jacobian, network->nodes, network};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(
        &system, gsl_odeiv2_step_msbdf, 1e-3, accuracy, 0);
    if (driver == NULL)
        bench_fail("no GSL driver");
    double time = 0, before = bench_now();
    run->steps = 0;
    for (size_t k = 0; k < BENCH_INSTANTS; k++) {
        memcpy(result[k], k > 0 ? result[k - 1] : start, bytes);
        if (gsl_odeiv2_driver_apply(driver, &time, bench_instant[k],
                                    result[k]) != GSL_SUCCESS)
            bench_fail("GSL's stepper failed");
        run->steps += (long)driver->n;
    }
    run->seconds = bench_now() - before;
    run->solutions = run->factorings = -1;
    gsl_odeiv2_driver_free(driver);
}

static void release(void *data)
{
    (void)data;
}

const struct bench_solver bench_gsl = {"GSL msbdf, dense", create, solve,
                                       release, 2};
