/* Our stepper, as it goes over a held stretch and as it goes over a driven
 * one (here by a drive that changes nothing). */
#include "bench_solver.h"

#include <stdlib.h>
#include <string.h>

#include "stepper.h"

struct coldgap {
    struct cg_network *network;
    struct cg_stepper *stepper;
    double *temperature;
    double *const *result;
    size_t next; /* instant to report */
};

static void *create(struct cg_network *network)
{
    struct coldgap *solver = calloc(1, sizeof *solver);
    if (solver == NULL)
        bench_fail("no memory");
    solver->network = network;
    solver->temperature = calloc(network->nodes, sizeof(double));
    if (solver->temperature == NULL ||
        cg_stepper_create(network, &solver->stepper, NULL) != CG_OK)
        bench_fail("no stepper");
    return solver;
}

static enum cg_status report(void *context, double time,
                             const double *temperature, struct cg_error *error)
{
    (void)temperature, (void)error;
    struct coldgap *solver = context;
    for (; solver->next < BENCH_INSTANTS; solver->next++) {
        double instant = bench_instant[solver->next];
        if (instant > time)
            break;
        cg_stepper_between(solver->stepper, instant,
                           solver->result[solver->next]);
    }
    return CG_OK;
}

static void solve(struct coldgap *solver, const struct cg_drive *drive,
                  double accuracy, const double *start, double *const *result,
                  struct bench_run *run)
{
    struct cg_step_control control = {.tolerance = accuracy};
    struct cg_heat_ledger ledger = {0};
    struct cg_error error;
    double end = bench_instant[BENCH_INSTANTS - 1];
    /* Another matrix, lest the last run's factors serve again. */
    if (cg_stepper_settle(solver->stepper, solver->network, solver->temperature,
                          &error) != CG_OK)
        bench_fail(error.text);
    memcpy(solver->temperature, start,
           solver->network->nodes * sizeof *solver->temperature);
    solver->result = result;
    solver->next = 0;
    double before = bench_now();
    if (cg_stepper_run(solver->stepper, solver->network, drive, 0, end,
                       &control, solver->temperature, &ledger, report, solver,
                       &error) != CG_OK)
        bench_fail(error.text);
    run->seconds = bench_now() - before;
    run->steps = ledger.steps + ledger.rejected;
    run->solutions = ledger.solutions;
    run->factorings = ledger.factorings;
}

static void solve_held(void *solver, double accuracy, const double *start,
                       double *const *result, struct bench_run *run)
{
    solve(solver, NULL, accuracy, start, result, run);
}

static void stay(void *context, double time, struct cg_network *network)
{
    (void)context, (void)time, (void)network;
}

static void solve_driven(void *solver, double accuracy, const double *start,
                         double *const *result, struct bench_run *run)
{
    struct cg_drive drive = {stay, NULL, true};
    solve(solver, &drive, accuracy, start, result, run);
}

static void release(void *data)
{
    struct coldgap *solver = data;
    cg_stepper_free(solver->stepper);
    free(solver->temperature);
    free(solver);
}

const struct bench_solver bench_coldgap = {"coldgap, held: series", create,
                                           solve_held, release, 1.3};
const struct bench_solver bench_coldgap_steps = {
    "coldgap, driven: steps", create, solve_driven, release, 1.3};
