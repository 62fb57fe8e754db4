#include "bench_scale.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bench_engine.h"
#include "bench_solver.h"
#include "heat_matrix.h"
#include "stepper.h"

enum { REPEATS = 21, INNER = 8, STEPS = 50 };
static const double span = 20, accuracy = 0.1; /* [s] [K] */

struct rig {
    struct bench_engine engine;
    struct cg_stepper *stepper;
    struct cg_heat_matrix *matrix;
    double *temperature;
};

static void make_rig(int refine, bool all, struct rig *rig)
{
    bench_engine_make(refine, all, &rig->engine);
    const struct cg_network *network = rig->engine.network;
    rig->temperature = calloc(network->nodes, sizeof *rig->temperature);
    if (rig->temperature == NULL ||
        cg_stepper_create(network, &rig->stepper, NULL) != CG_OK ||
        cg_heat_matrix_create(network, &rig->matrix, NULL) != CG_OK)
        bench_fail("no memory");
    cg_heat_matrix_read(rig->matrix, network);
}

static void free_rig(struct rig *rig)
{
    cg_heat_matrix_free(rig->matrix);
    cg_stepper_free(rig->stepper);
    bench_engine_free(&rig->engine);
    free(rig->temperature);
}

static void restart(struct rig *rig)
{
    memcpy(rig->temperature, rig->engine.start,
           rig->engine.network->nodes * sizeof *rig->temperature);
}

/* Median seconds of a run, and what it took. */
static double time_run(struct rig *rig, const struct cg_step_control *control,
                       struct cg_heat_ledger *ledger)
{
    double seconds[REPEATS];
    for (int r = 0; r < REPEATS; r++) {
        restart(rig);
        memset(ledger, 0, sizeof *ledger);
        double before = bench_now();
        if (cg_stepper_run(rig->stepper, rig->engine.network, NULL, 0, span,
                           control, rig->temperature, ledger, NULL, NULL,
                           NULL) != CG_OK)
            bench_fail("a run failed");
        seconds[r] = bench_now() - before;
    }
    return bench_median(seconds, REPEATS);
}

static double time_factoring(struct rig *rig)
{
    double seconds[REPEATS];
    for (int r = 0; r < REPEATS; r++) {
        double before = bench_now();
        for (int i = 1; i <= INNER; i++)
            if (cg_heat_matrix_factor(rig->matrix, rig->engine.network, 1,
                                      0.1 * i, NULL) != CG_OK)
                bench_fail("matrix cannot be factored");
        seconds[r] = (bench_now() - before) / INNER;
    }
    return bench_median(seconds, REPEATS);
}

static double time_solution(struct rig *rig)
{
    double seconds[REPEATS];
    for (int r = 0; r < REPEATS; r++) {
        restart(rig);
        double before = bench_now();
        for (int i = 0; i < INNER; i++)
            cg_heat_matrix_solve(rig->matrix, rig->temperature);
        seconds[r] = (bench_now() - before) / INNER;
    }
    return bench_median(seconds, REPEATS);
}

void bench_scale_cells(bool all)
{
    printf("\nMore cells along %s\n%8s  %8s  %8s  %9s  %6s  %s\n",
           all ? "all bodies: skirt and bore touch in their product"
               : "bore and crown",
           "nodes", "fac.[us]", "sol.[us]", "jump [ms]", "solves",
           "per node and solve [ns]");
    for (int refine = 1; refine <= 16; refine *= 2) {
        struct rig rig;
        struct cg_heat_ledger ledger;
        struct cg_step_control control = {.tolerance = accuracy};
        make_rig(refine, all, &rig);
        double factoring = time_factoring(&rig);
        double solution = time_solution(&rig);
        double seconds = time_run(&rig, &control, &ledger);
        double nodes = (double)rig.engine.network->nodes;
        printf("%8.0f  %8.2f  %8.2f  %9.3f  %6ld  %8.2f\n", nodes,
               1e6 * factoring, 1e6 * solution, 1e3 * seconds, ledger.solutions,
               1e9 * seconds / nodes / (double)ledger.solutions);
        free_rig(&rig);
    }
}

void bench_scale_steps(void)
{
    struct rig rig;
    make_rig(1, false, &rig);
    printf("\nMore steps of fixed size\n%8s  %9s  %s\n", "steps", "jump [ms]",
           "per step [us]");
    for (int times = 1; times <= 16; times *= 2) {
        struct cg_heat_ledger ledger;
        struct cg_step_control control = {.fixed_step = span / (STEPS * times)};
        double seconds = time_run(&rig, &control, &ledger);
        printf("%8ld  %9.3f  %8.2f\n", ledger.steps, 1e3 * seconds,
               1e6 * seconds / (double)ledger.steps);
    }
    free_rig(&rig);
}
