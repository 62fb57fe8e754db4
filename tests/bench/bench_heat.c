/* Speed of the heat solver on an engine-like network: a pull of 20 s from the
 * settled state at light load to full load, against other stiff solvers at
 * equal error; then how the cost grows with cells and steps. */
#define _POSIX_C_SOURCE 200809L
#include "bench_network.h"
#include "bench_solver.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "heat_matrix.h"
#include "stepper.h"

enum { REPEATS = 25, INSTANTS = 6 };
static const double instant[INSTANTS] = {0.2, 1, 2, 5, 10, 20};

/* Our tolerance: about 1e-4 of the rise. */
static const double accuracy = 0.01;
/* A peer may be this much worse than we are and still counts as equal. */
static const double allowance = 1.5;

struct problem {
    struct cg_network *network;
    double *start, *reference[INSTANTS], *scratch;
};

double bench_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

_Noreturn void bench_fail(const char *what)
{
    fprintf(stderr, "bench_heat: %s\n", what);
    exit(EXIT_FAILURE);
}

static double *vector(size_t n)
{
    double *made = calloc(n, sizeof *made);
    if (made == NULL)
        bench_fail("no memory");
    return made;
}

static void settle(struct cg_network *network, double *temperature)
{
    struct cg_stepper *stepper;
    struct cg_error error;
    if (cg_stepper_create(network, &stepper, &error) != CG_OK ||
        cg_stepper_settle(stepper, network, temperature, &error) != CG_OK)
        bench_fail(error.text);
    cg_stepper_free(stepper);
}

/* The network about to pull, without references. */
static void make_problem(struct problem *problem, size_t refine)
{
    memset(problem, 0, sizeof *problem);
    problem->network = bench_network_create(refine);
    problem->start = vector(problem->network->nodes);
    problem->scratch = vector(problem->network->nodes);
    settle(problem->network, problem->start);
    bench_network_pull(problem->network);
}

static void free_problem(struct problem *problem)
{
    cg_network_free(problem->network);
    free(problem->start);
    free(problem->scratch);
    for (size_t k = 0; k < INSTANTS; k++)
        free(problem->reference[k]);
}

static void solve(const struct problem *problem,
                  const struct bench_solver *solver, void *data, double to,
                  double tolerance, struct bench_run *run)
{
    memcpy(problem->scratch, problem->start,
           problem->network->nodes * sizeof(double));
    solver->solve(data, to, tolerance, problem->scratch, run);
}

/* Tight references by our own stepper; the peers' convergence to the same
 * values is what makes them trustworthy (see the last column). */
static void make_references(struct problem *problem)
{
    void *data = bench_coldgap.create(problem->network);
    size_t bytes = problem->network->nodes * sizeof(double);
    for (size_t k = 0; k < INSTANTS; k++) {
        struct bench_run run;
        problem->reference[k] = vector(problem->network->nodes);
        solve(problem, &bench_coldgap, data, instant[k], 1e-8, &run);
        memcpy(problem->reference[k], problem->scratch, bytes);
    }
    bench_coldgap.free(data);
}

/* Largest error at any node and any of the instants [K]. */
static double measure_error(const struct problem *problem,
                            const struct bench_solver *solver, void *data,
                            double tolerance)
{
    double worst = 0;
    for (size_t k = 0; k < INSTANTS; k++) {
        struct bench_run run;
        solve(problem, solver, data, instant[k], tolerance, &run);
        for (size_t i = 0; i < problem->network->nodes; i++)
            worst = fmax(worst,
                         fabs(problem->scratch[i] - problem->reference[k][i]));
    }
    return worst;
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double *values, size_t count)
{
    qsort(values, count, sizeof *values, by_size);
    return values[count / 2];
}

static double median_time(const struct problem *problem,
                          const struct bench_solver *solver, void *data,
                          double tolerance, int repeats, long *steps)
{
    double seconds[REPEATS];
    for (int r = 0; r < repeats; r++) {
        struct bench_run run;
        solve(problem, solver, data, instant[INSTANTS - 1], tolerance, &run);
        seconds[r] = run.seconds;
        *steps = run.steps;
    }
    return median(seconds, (size_t)repeats);
}

/* The tolerance at which the solver is fastest among those that keep its error
 * within `most`. */
static double match_error(const struct problem *problem,
                          const struct bench_solver *solver, void *data,
                          double most)
{
    double best = INFINITY, chosen = NAN;
    int misses = 0;
    for (double tolerance = 1; tolerance > 1e-7 && misses < 6;
         tolerance /= solver->grid) {
        if (measure_error(problem, solver, data, tolerance) > most)
            continue;
        long steps;
        int repeats = solver->grid < 2 ? 9 : 1;
        double seconds =
            median_time(problem, solver, data, tolerance, repeats, &steps);
        misses = seconds < best ? 0 : misses + 1;
        if (seconds < best) {
            best = seconds;
            chosen = tolerance;
        }
        if (solver->grid > 2)
            break;
    }
    return chosen;
}

static double print_solver(const struct problem *problem,
                           const struct bench_solver *solver, double most,
                           double ours, double *error)
{
    void *data = solver->create(problem->network);
    double tolerance =
        isinf(most) ? accuracy : match_error(problem, solver, data, most);
    if (isnan(tolerance))
        bench_fail("a peer cannot reach the error");
    long steps;
    *error = measure_error(problem, solver, data, tolerance);
    double seconds =
        median_time(problem, solver, data, tolerance, REPEATS, &steps);
    double tight = measure_error(problem, solver, data, tolerance / 30);
    printf("%-22s  %9.3g  %10.3f  %6ld  %9.4f  %9.5f  %6.2f\n", solver->name,
           tolerance, 1e3 * seconds, steps, *error, tight,
           seconds / (ours > 0 ? ours : seconds));
    fflush(stdout);
    solver->free(data);
    return seconds;
}

static void compare_solvers(void)
{
    struct problem problem;
    make_problem(&problem, 1);
    make_references(&problem);
    double rise = 0;
    for (size_t i = 0; i < problem.network->nodes; i++)
        rise =
            fmax(rise, problem.reference[INSTANTS - 1][i] - problem.start[i]);
    printf("A pull of %g s: %zu nodes, %zu links, largest rise %.0f K; median "
           "of %d runs;\nerrors are the largest at any node at %d instants, "
           "peers as fast as they can be\nwithin %g times our error\n\n",
           instant[INSTANTS - 1], problem.network->nodes,
           problem.network->links, rise, REPEATS, INSTANTS, allowance);
    printf("%-22s  %9s  %10s  %6s  %9s  %9s  %6s\n", "solver", "tol. [K]",
           "time [ms]", "steps", "err. [K]", "at tol/30", "ratio");
    double error, none;
    double ours = print_solver(&problem, &bench_coldgap, INFINITY, 0, &error);
#ifdef CG_BENCH_CVODE
    print_solver(&problem, &bench_cvode, allowance * error, ours, &none);
#else
    puts("(built without SUNDIALS: no CVODE)");
#endif
    print_solver(&problem, &bench_gsl, allowance * error, ours, &none);
    free_problem(&problem);
}

static void time_matrix(const struct problem *problem, double *factor,
                        double *solution)
{
    enum { INNER = 8 };
    struct cg_heat_matrix *matrix;
    double factors[REPEATS], solves[REPEATS];
    if (cg_heat_matrix_create(problem->network, &matrix, NULL) != CG_OK)
        bench_fail("no matrix");
    cg_heat_matrix_read(matrix, problem->network);
    for (int r = 0; r < REPEATS; r++) {
        double start = bench_now();
        for (int i = 1; i <= INNER; i++)
            if (cg_heat_matrix_factor(matrix, problem->network, 1, 0.1 * i,
                                      NULL) != CG_OK)
                bench_fail("matrix cannot be factored");
        double middle = bench_now();
        memcpy(problem->scratch, problem->start,
               problem->network->nodes * sizeof(double));
        double again = bench_now();
        for (int i = 0; i < INNER; i++)
            cg_heat_matrix_solve(matrix, problem->scratch);
        solves[r] = (bench_now() - again) / INNER;
        factors[r] = (middle - start) / INNER;
    }
    *factor = median(factors, REPEATS);
    *solution = median(solves, REPEATS);
    cg_heat_matrix_free(matrix);
}

static void scale_cells(void)
{
    printf("\nMore cells along the bodies\n\n%8s  %9s  %9s  %10s  %6s  %s\n",
           "nodes", "fac. [us]", "sol. [us]", "pull [ms]", "steps",
           "per node and step [ns]");
    for (size_t refine = 1; refine <= 16; refine *= 2) {
        struct problem problem;
        make_problem(&problem, refine);
        void *data = bench_coldgap.create(problem.network);
        double factor, solution;
        long steps;
        time_matrix(&problem, &factor, &solution);
        double seconds = median_time(&problem, &bench_coldgap, data, accuracy,
                                     REPEATS, &steps);
        double nodes = (double)problem.network->nodes;
        printf("%8.0f  %9.2f  %9.2f  %10.3f  %6ld  %8.2f\n", nodes,
               1e6 * factor, 1e6 * solution, 1e3 * seconds, steps,
               1e9 * seconds / nodes / (double)steps);
        bench_coldgap.free(data);
        free_problem(&problem);
    }
}

static void scale_steps(void)
{
    struct problem problem;
    make_problem(&problem, 1);
    struct cg_stepper *stepper;
    if (cg_stepper_create(problem.network, &stepper, NULL) != CG_OK)
        bench_fail("no stepper");
    printf("\nMore steps of fixed size\n\n%8s  %10s  %s\n", "steps",
           "pull [ms]", "per step [us]");
    for (int times = 1; times <= 16; times *= 2) {
        struct cg_step_control control = {.fixed_step = 0.4 / times};
        double seconds[REPEATS];
        for (int r = 0; r < REPEATS; r++) {
            memcpy(problem.scratch, problem.start,
                   problem.network->nodes * sizeof(double));
            double start = bench_now();
            if (cg_stepper_run(stepper, problem.network, NULL, 0, 20, &control,
                               problem.scratch, NULL, NULL, NULL,
                               NULL) != CG_OK)
                bench_fail("a fixed step failed");
            seconds[r] = bench_now() - start;
        }
        double middle = median(seconds, REPEATS);
        printf("%8d  %10.3f  %8.2f\n", 50 * times, 1e3 * middle,
               1e6 * middle / (50 * times));
    }
    cg_stepper_free(stepper);
    free_problem(&problem);
}

int main(void)
{
    compare_solvers();
    scale_cells();
    scale_steps();
    return EXIT_SUCCESS;
}
