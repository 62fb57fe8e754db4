/* Speed of coldgap: a whole find, its samples, and the heat solver alone, on 
 * the example engine's network: a jump from the settled state at cruise to full
 * load, followed for 20 s, against other stiff solvers at equal error. */
#define _POSIX_C_SOURCE 200809L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "bench_engine.h"
#include "bench_find.h"
#include "bench_scale.h"
#include "bench_solver.h"

enum { REPEATS = 25 };

const double bench_instant[BENCH_INSTANTS] = {0.01, 0.02, 0.05, 0.1, 0.2, 0.5,
                                              1,    2,    5,    10,  20};

/* Errors aimed at [K], and what still counts as equal to ours. */
static const double level[] = {0.02, 0.002};
static const double least_share = 0.5, largest_share = 1.5;

struct problem {
    struct bench_engine engine;
    double *reference[BENCH_INSTANTS], *result[BENCH_INSTANTS];
};

static double read_clock(clockid_t clock)
{
    struct timespec now;
    clock_gettime(clock, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

double bench_now(void)
{
    return read_clock(CLOCK_PROCESS_CPUTIME_ID);
}

double bench_wall(void)
{
    return read_clock(CLOCK_MONOTONIC);
}

_Noreturn void bench_fail(const char *what)
{
    fprintf(stderr, "bench_heat: %s\n", what);
    exit(EXIT_FAILURE);
}

static void make_problem(struct problem *problem)
{
    bench_engine_make(1, false, &problem->engine);
    size_t nodes = problem->engine.network->nodes;
    for (size_t k = 0; k < BENCH_INSTANTS; k++) {
        problem->reference[k] = calloc(nodes, sizeof(double));
        problem->result[k] = calloc(nodes, sizeof(double));
        if (problem->reference[k] == NULL || problem->result[k] == NULL)
            bench_fail("no memory");
    }
}

static void free_problem(struct problem *problem)
{
    bench_engine_free(&problem->engine);
    for (size_t k = 0; k < BENCH_INSTANTS; k++) {
        free(problem->reference[k]);
        free(problem->result[k]);
    }
}

/* Largest error at any node and instant [K]. */
static double find_error(struct problem *problem,
                         const struct bench_solver *solver, void *data,
                         double tolerance)
{
    struct bench_run run;
    double worst = 0;
    solver->solve(data, tolerance, problem->engine.start, problem->result,
                  &run);
    for (size_t k = 0; k < BENCH_INSTANTS; k++)
        for (size_t i = 0; i < problem->engine.network->nodes; i++)
            worst = fmax(
                worst, fabs(problem->result[k][i] - problem->reference[k][i]));
    return worst;
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

double bench_median(double *values, size_t count)
{
    qsort(values, count, sizeof *values, by_size);
    return values[count / 2];
}

/* A run whose time is the median of `repeats`. */
static struct bench_run measure(struct problem *problem,
                                const struct bench_solver *solver, void *data,
                                double tolerance, size_t repeats)
{
    struct bench_run run;
    double seconds[REPEATS];
    for (size_t r = 0; r < repeats; r++) {
        solver->solve(data, tolerance, problem->engine.start, problem->result,
                      &run);
        seconds[r] = run.seconds;
    }
    run.seconds = bench_median(seconds, repeats);
    return run;
}

/* The tolerance at which the solver is fastest among those with an error
 * between `least` and `most`; none: the largest with an error below. */
static double match_error(struct problem *problem,
                          const struct bench_solver *solver, void *data,
                          double least, double most)
{
    double best = INFINITY, chosen = NAN;
    for (double tolerance = 4; tolerance > 1e-8; tolerance /= solver->grid) {
        double error = find_error(problem, solver, data, tolerance);
        if (error > most)
            continue;
        if (error < least && isnan(chosen))
            return tolerance;
        if (error < least / 4)
            break;
        if (error < least)
            continue;
        size_t repeats = solver->grid < 2 ? 9 : 1;
        double seconds =
            measure(problem, solver, data, tolerance, repeats).seconds;
        if (seconds < best) {
            best = seconds;
            chosen = tolerance;
        }
    }
    if (isnan(chosen))
        bench_fail("a solver cannot reach the error");
    return chosen;
}

static void print_count(long count)
{
    if (count < 0)
        printf("  %6s", "-");
    else
        printf("  %6ld", count);
}

/* One line of the table; returns seconds, and the error in *error. */
static double compare(struct problem *problem,
                      const struct bench_solver *solver, double least,
                      double most, double ours, double *error)
{
    void *data = solver->create(problem->engine.network);
    double tolerance = match_error(problem, solver, data, least, most);
    *error = find_error(problem, solver, data, tolerance);
    struct bench_run run = measure(problem, solver, data, tolerance, REPEATS);
    solver->free(data);
    printf("%-22s  %9.4f  %9.4f", solver->name, *error, 1e3 * run.seconds);
    print_count(run.steps);
    print_count(run.solutions);
    print_count(run.factorings);
    printf("  %6.2f\n", run.seconds / (ours > 0 ? ours : run.seconds));
    fflush(stdout);
    return run.seconds;
}

/* References by CVODE where there is one, at a tolerance far below the errors
 * compared; ours at a like tolerance must agree. */
static void make_references(struct problem *problem)
{
#ifdef CG_BENCH_CVODE
    const struct bench_solver *solver = &bench_cvode;
#else
    const struct bench_solver *solver = &bench_gsl;
#endif
    struct bench_run run;
    void *data = solver->create(problem->engine.network);
    solver->solve(data, 1e-9, problem->engine.start, problem->reference, &run);
    solver->free(data);
    data = bench_coldgap.create(problem->engine.network);
    double miss = find_error(problem, &bench_coldgap, data, 1e-5);
    bench_coldgap.free(data);
    printf("reference by %s; ours at a tight tolerance agrees within %.1e K\n",
           solver->name, miss);
}

static void compare_solvers(struct problem *problem, double aim)
{
    double error, none;
    printf("\n%-22s  %9s  %9s  %6s  %6s  %6s  %6s\n", "solver", "error [K]",
           "time [ms]", "steps", "solves", "fact.", "ratio");
    double ours = compare(problem, &bench_coldgap, 0, aim, 0, &error);
    double least = least_share * error, most = largest_share * error;
    compare(problem, &bench_coldgap_steps, least, most, ours, &none);
#ifdef CG_BENCH_CVODE
    compare(problem, &bench_cvode, least, most, ours, &none);
#endif
    compare(problem, &bench_gsl, least, most, ours, &none);
}

/* The processor's name, where the system tells it. */
static void print_machine(void)
{
    char line[256];
    FILE *file = fopen("/proc/cpuinfo", "r");
    while (file != NULL && fgets(line, sizeof line, file) != NULL)
        if (strncmp(line, "model name", 10) == 0) {
            printf("%s", line);
            break;
        }
    if (file != NULL)
        fclose(file);
}

int main(void)
{
    struct problem problem;
    print_machine();
    bench_find();
    bench_samples();
    make_problem(&problem);
    const struct cg_network *network = problem.engine.network;
    printf("\nA jump to full load, %g s: %zu nodes, %zu links; median of %d "
           "runs; errors are\nthe largest at any node at %d instants from %g "
           "s on\n",
           bench_instant[BENCH_INSTANTS - 1], network->nodes, network->links,
           REPEATS, BENCH_INSTANTS, bench_instant[0]);
    make_references(&problem);
    for (size_t k = 0; k < sizeof level / sizeof *level; k++)
        compare_solvers(&problem, level[k]);
    free_problem(&problem);
    bench_scale_cells(false);
    bench_scale_cells(true);
    bench_scale_steps();
    return EXIT_SUCCESS;
}
