#include "bench_solver.h"

#include <stdlib.h>

#include "stepper.h"

struct coldgap {
    struct cg_network *network;
    struct cg_stepper *stepper;
};

static void *create(struct cg_network *network)
{
    struct coldgap *solver = malloc(sizeof *solver);
    if (solver == NULL)
        bench_fail("no memory");
    solver->network = network;
    if (cg_stepper_create(network, &solver->stepper, NULL) != CG_OK)
        bench_fail("no stepper");
    return solver;
}

static void solve(void *data, double to, double accuracy, double *temperature,
                  struct bench_run *run)
{
    struct coldgap *solver = data;
    struct cg_step_control control = {.tolerance = accuracy};
    struct cg_heat_ledger ledger = {{0}, 0, 0, 0, 0, 0, 0};
    struct cg_error error;
    double start = bench_now();
    if (cg_stepper_run(solver->stepper, solver->network, NULL, 0, to, &control,
                       temperature, &ledger, NULL, NULL, &error) != CG_OK)
        bench_fail(error.text);
    run->seconds = bench_now() - start;
    run->steps = ledger.steps + ledger.rejected;
}

static void release(void *data)
{
    struct coldgap *solver = data;
    cg_stepper_free(solver->stepper);
    free(solver);
}

const struct bench_solver bench_coldgap = {"coldgap TR-BDF2", create, solve,
                                           release, 1.5};
