/* What the heat bench asks of a solver. */
#ifndef CG_BENCH_SOLVER_H
#define CG_BENCH_SOLVER_H

#include "network.h"

struct bench_run {
    double seconds; /* of the integration alone */
    long steps;
};

/* `accuracy` [K] is the solver's own absolute tolerance.  temperature holds
 * the start at 0 s and the result at `to`.  Each exits on failure. */
struct bench_solver {
    const char *name;
    void *(*create)(struct cg_network *network);
    void (*solve)(void *solver, double to, double accuracy, double *temperature,
                  struct bench_run *run);
    void (*free)(void *solver);
    double grid; /* ratio of the accuracies tried when matching errors */
};

extern const struct bench_solver bench_coldgap, bench_gsl;
#ifdef CG_BENCH_CVODE
extern const struct bench_solver bench_cvode;
#endif

/* Seconds of the steady clock. */
double bench_now(void);

/* Ends the program with a text. */
_Noreturn void bench_fail(const char *what);

#endif
