/* Spread of the closure over the uncertain inputs and over the heat transfer
 * correlations.  Private to the
 * answer and its confidence. */
#ifndef CG_SPREAD_H
#define CG_SPREAD_H

#include "answer.h"

/* Closure of a case that differs a little from that of `nominal` [m], by
 * cg_duty_run_vary with steps that may err more.  `keep` receives the run, the
 * caller's to free; NULL: not wanted.  Errors: as cg_duty_run_vary and
 * cg_duty_run_go. */
enum cg_status cg_spread_closure(const struct cg_case *c,
                                 const struct cg_duty_run *nominal,
                                 bool gas_side_same, struct cg_duty_run **keep,
                                 double *closure, struct cg_error *error);

/* The same, with all that the run saw. */
enum cg_status cg_spread_extremes(const struct cg_case *c,
                                  const struct cg_duty_run *nominal,
                                  bool gas_side_same, struct cg_duty_run **keep,
                                  struct cg_extremes *extremes,
                                  struct cg_error *error);

/* Fills contribution, contributions and sigma from the nominal extremes in
 * the answer: one run of the duty for each input moved up by one standard
 * deviation.  Errors: as cg_duty_run_vary and cg_duty_run_go. */
enum cg_status cg_spread_first_order(const struct cg_case *c,
                                     const struct cg_duty_run *nominal,
                                     struct cg_answer *answer,
                                     struct cg_error *error);

/* Fills correlation: the closure with each published correlation, else the
 * same case.  A correlation that fails is NaN, not an error. */
enum cg_status cg_spread_correlations(const struct cg_case *c,
                                      const struct cg_duty_run *nominal,
                                      struct cg_answer *answer,
                                      struct cg_error *error);

#endif
