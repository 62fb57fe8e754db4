/* Spread of the closure over the uncertain inputs and over the heat transfer
 * correlations.  Private to the answer and its confidence. */
#ifndef CG_SPREAD_H
#define CG_SPREAD_H

#include "answer.h"

/* What moved cases are run with: the nominal case in fewer cells and longer
 * steps.  The closure of a moved case is the nominal one plus the change in
 * these cells, most of whose error is that of both and drops out: contributions
 * move by less than 1 % of sigma, sigma by less than 0.5 %; the skirt's sigma,
 * whose tightest moment may jump between two that are alike, by less than 2 %
 * (tested). */
struct cg_spread {
    struct cg_case c;         /* the nominal case in these cells: to be moved */
    struct cg_duty_run *base; /* its run */
    struct cg_extremes at;    /* what base came to */
    double closure;           /* of the nominal case in its own cells [m] */
    struct cg_course *courses; /* its own: the base's of a long course */
};

/* Of a course with more pieces than this moved cases run what its tightest
 * instant sees of it (cg_course_seen): shifts are of that instant. */
enum { CG_SPREAD_PIECES = 64 };

/* For the nominal run of a case, whose closure [m] is known.  Caller frees.
 * Errors: as cg_duty_run_vary and cg_duty_run_go. */
enum cg_status cg_spread_create(const struct cg_case *c,
                                const struct cg_duty_run *nominal,
                                double closure, struct cg_spread **spread,
                                struct cg_error *error);
void cg_spread_free(struct cg_spread *spread); /* accepts NULL */

/* Room for moved cases, one for each thread: cg_duty_run_lay_out in the cells
 * of the spread. */
enum cg_status cg_spread_workspace(const struct cg_spread *spread,
                                   struct cg_duty_run **workspace,
                                   struct cg_error *error);

/* Closure [m] of a case moved a little from spread->c, with the gas side of the
 * base or of another moved case (NULL: cycles run anew).  `workspace` then
 * holds its run.  Errors: as cg_duty_run_vary and cg_duty_run_go. */
enum cg_status cg_spread_closure(const struct cg_case *c,
                                 const struct cg_spread *spread,
                                 const struct cg_duty_run *gas_side,
                                 struct cg_duty_run *workspace, double *closure,
                                 struct cg_error *error);

/* Fills contribution, contributions, laws, sigma and that of the skirt from the
 * nominal extremes in the answer: one run of the duty for each input moved up
 * by one standard deviation.  Errors: as cg_duty_run_vary and cg_duty_run_go.
 */
enum cg_status cg_spread_first_order(const struct cg_spread *spread,
                                     struct cg_duty_run *workspace,
                                     struct cg_answer *answer,
                                     struct cg_error *error);

/* Fills answer->laws from the contributions of first order, which must stand in
 * the order of cg_uncertains, and answer->correlation: the closure by each law
 * of gas heat as calibrated with the case's law of the film; none if the case
 * goes by one that was not calibrated or is held to be right.  A pair of laws
 * that differs from the case's own in gas heat and film is not run: what either
 * alone makes is added (on the shipped engines within 2.5 um).  A law that fails
 * gives its weight to the one that asks for most, and its closure is NaN.
 * CG_NO_MEMORY only. */
enum cg_status cg_spread_laws(const struct cg_spread *spread,
                              struct cg_duty_run *workspace,
                              struct cg_answer *answer, struct cg_error *error);

/* All of it from the nominal run and its extremes in the answer.  Errors: of
 * those above. */
enum cg_status cg_spread_find(const struct cg_case *c,
                              const struct cg_duty_run *run,
                              struct cg_answer *answer, struct cg_error *error);

#endif
