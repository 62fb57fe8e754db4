/* Follows quantities of the temperatures through a duty: the largest value of
 * each, the instant that it belongs to, the first instant past a limit, and the
 * time over a level.
 *
 * Seen are the solver's own instants (duty_run.h), never those of a table, so
 * that the same duty has the same answer however it is shown.  Between them the
 * solution inside the step is asked: a largest value is sought at the vertex of
 * the parabola through the three best points, again and again while it promises
 * more than the tolerance (successive parabolic interpolation, R. P. Brent,
 * "Algorithms for Minimization without Derivatives" (1973), ch. 5); a limit is
 * met by false position with the Illinois rule (M. Dowell and P. Jarratt, BIT
 * 11 (1971) 168).
 */
#ifndef CG_FOLLOW_H
#define CG_FOLLOW_H

#include <stdbool.h>
#include <stddef.h>

#include "duty_run.h"

enum { CG_FOLLOWED = 32 };

struct cg_follow_point {
    double time; /* [s] */
    double value[CG_FOLLOWED];
};

/* Units are those of the quantities. */
struct cg_follow {
    size_t count; /* of quantities */
    /* Fills value (count entries) from temperature [K] (nodes entries). */
    void (*read)(void *context, const double *temperature, double *value);
    /* NULL allowed.  Called right after `read`, where quantity k is larger than
     * at its last record by more than its tolerance: of equals on a plateau the
     * first one is kept. */
    void (*record)(void *context, size_t k, const struct cg_instant *instant);
    void *context;
    double tolerance[CG_FOLLOWED];
    double limit[CG_FOLLOWED]; /* INFINITY: none */
    double level[CG_FOLLOWED]; /* likewise */

    double most[CG_FOLLOWED];   /* found: the largest */
    double passed[CG_FOLLOWED]; /* found: first instant past the limit; NaN */
    double over[CG_FOLLOWED];   /* found: time over the level, straight between
                                   the solver's instants [s] */

    double recorded[CG_FOLLOWED];
    bool started;
    double *between;                      /* [nodes] scratch [K], owned */
    struct cg_follow_point begin, middle; /* of the step under way */
};

/* Begins with `count` quantities, no tolerances, no limits.  Caller frees.
 * CG_NO_MEMORY only. */
enum cg_status cg_follow_begin(const struct cg_duty_run *run, size_t count,
                               struct cg_follow *follow,
                               struct cg_error *error);
/* Accepts one that is all zero. */
void cg_follow_free(struct cg_follow *follow);

/* For the observer of cg_duty_run_go, with every instant.  Cannot fail. */
void cg_follow_see(struct cg_follow *follow, const struct cg_duty_run *run,
                   const struct cg_instant *instant);

#endif
