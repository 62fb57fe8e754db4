/* What the heat bench asks of a solver: the transient of a network whose
 * conditions are held, seen at given instants of one run. */
#ifndef CG_BENCH_SOLVER_H
#define CG_BENCH_SOLVER_H

#include "network.h"

enum { BENCH_INSTANTS = 11 };
extern const double bench_instant[BENCH_INSTANTS]; /* [s], rising */

struct bench_run {
    double seconds;                    /* CPU, of the integration alone */
    long steps, solutions, factorings; /* -1: not known */
};

/* `accuracy` [K] is the solver's own absolute tolerance, `start` the
 * temperatures at 0 s; result[k] gets those at instant k.  All exit on
 * failure. */
struct bench_solver {
    const char *name;
    void *(*create)(struct cg_network *network);
    void (*solve)(void *solver, double accuracy, const double *start,
                  double *const *result, struct bench_run *run);
    void (*free)(void *solver);
    double grid; /* ratio of the accuracies tried when matching errors */
};

extern const struct bench_solver bench_coldgap, bench_coldgap_steps, bench_gsl;
#ifdef CG_BENCH_CVODE
extern const struct bench_solver bench_cvode;
#endif

/* CPU seconds of this process, which other work on the machine disturbs
 * little, and seconds by the wall clock. */
double bench_now(void);
double bench_wall(void);

/* Ends the program with a text. */
_Noreturn void bench_fail(const char *what);

#endif
