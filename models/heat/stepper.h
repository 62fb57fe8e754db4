/* Time integration of a thermal network, and its settled state.
 *
 * An interval of time whose conditions are held is one linear problem: a series
 * gives its temperatures at any time from a single factored matrix
 * (chebyshev.h). An interval with a drive goes in steps of a Rosenbrock scheme
 * of order 4 with error control (rosenbrock.h).  Both damp stiff parts at once,
 * and both keep the heat ledger: heat in minus heat out equals heat stored, to
 * rounding.
 */
#ifndef CG_STEPPER_H
#define CG_STEPPER_H

#include <stdbool.h>
#include <stddef.h>

#include "network.h"
#include "status.h"

struct cg_stepper; /* workspace: factors, stage vectors */

/* What drives the network over one interval of time without kinks.
 * at() sets the network's conductances, bath temperatures and sources for
 * time t [s]; NULL means that they stay as they are, which is much the
 * cheapest.  When conductances do not change over the interval, say so: the
 * matrix is then factored only when the step size changes.  Capacities never
 * change. */
struct cg_drive {
    void (*at)(void *context, double time, struct cg_network *network);
    void *context;
    bool conductance_fixed;
};

/* Called at the start of each interval and at instants in order up to its end:
 * the ends of the steps, and some instants inside long ones.  temperature
 * [K] (nodes entries) is valid only during the call.  Return CG_OK to go on. */
typedef enum cg_status (*cg_step_observer)(void *context, double time,
                                           const double *temperature,
                                           struct cg_error *error);

struct cg_step_control {
    double tolerance;  /* largest estimated error of a step at any node [K] */
    double first_step; /* of a driven interval [s]; 0: chosen by the stepper */
    double max_step;   /* [s]; 0: no limit */
    bool settled;      /* `temperature` is the settled state of conditions that
                        * stay: nothing moves, and no step is taken */
    double fixed_step; /* [s]; > 0: steps of the scheme without error control,
                        * held or not (convergence studies) */
    long max_steps;    /* per interval; 0: 1000000 */
};

struct cg_heat_ledger {
    double in[CG_SIDES];  /* heat that entered by side [J] */
    double stored;        /* rise of stored heat [J] */
    double turnover;      /* sum of |heat| over sides, at least |stored| [J] */
    double residual;      /* (sum in - stored) / turnover [1] */
    long steps, rejected; /* steps or series */
    long factorings, solutions; /* of the matrix */
};

/* Workspace for a network; the network's nodes and links must not change in
 * number while it lives.  Fails with CG_NO_MEMORY. */
enum cg_status cg_stepper_create(const struct cg_network *network,
                                 struct cg_stepper **stepper,
                                 struct cg_error *error);
/* Accepts NULL. */
void cg_stepper_free(struct cg_stepper *stepper);

/* Settled temperatures [K] (nodes entries) for the network's present
 * conductances, baths and sources.  CG_NUMERICAL if some node has no way to
 * any bath (the text names it). */
enum cg_status cg_stepper_settle(struct cg_stepper *stepper,
                                 const struct cg_network *network,
                                 double *temperature, struct cg_error *error);

/* One correction of `temperature` [K] towards the settled state, by the factors
 * of the conductances that were settled last (or taken over): where these have
 * changed little, each correction is a small part of the one before, at a
 * fraction of the cost of new factors.  Returns the largest change [K];
 * INFINITY, and nothing done, when no such factors are at hand. */
double cg_stepper_correct(struct cg_stepper *stepper,
                          const struct cg_network *network,
                          double *temperature);

/* Takes over the factors of the stepper of a network with the same nodes and
 * links.  Cannot fail. */
void cg_stepper_take_factors(struct cg_stepper *stepper,
                             const struct cg_stepper *from);

/* For an observer during its call: temperatures [K] (nodes entries) at a `time`
 * [s] between the instant shown before in the same interval and the present
 * one: within the tolerance on a held interval, within a few times it inside a
 * step of a driven one.  Cannot fail. */
void cg_stepper_between(const struct cg_stepper *stepper, double time,
                        double *temperature);

/* The step size [s] that the last run wished for its next step; 0 before the
 * first.  Given as first_step it lets an interval go on at the pace of the one
 * before, where nothing jumps between them. */
double cg_stepper_pace(const struct cg_stepper *stepper);

/* Carries temperature [K] (nodes entries, in and out) from time `from` to
 * `to` [s], adding to the ledger (may be NULL; zero it before first use).
 * The last step lands on `to` exactly.  drive NULL stands for one that changes
 * nothing.  CG_NUMERICAL when the step size underflows, a value is not finite
 * or the steps run out: the text carries time and node, and temperature and
 * ledger hold the last good step.  An observer's status is handed on. */
enum cg_status
cg_stepper_run(struct cg_stepper *stepper, struct cg_network *network,
               const struct cg_drive *drive, double from, double to,
               const struct cg_step_control *control, double *temperature,
               struct cg_heat_ledger *ledger, cg_step_observer observer,
               void *observer_context, struct cg_error *error);

#endif
