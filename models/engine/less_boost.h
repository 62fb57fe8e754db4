/* Less boost may close more.  Where knock retards the spark, more boost burns
 * later and may heat the ring less; the engine that is asked to stand the boost
 * must stand all below it, which every run-up passes.  The most is closed where
 * the spark is about to be retarded: below that more boost is more heat, and
 * past it the burn is later with every kPa, up to the cap.
 */
#ifndef CG_LESS_BOOST_H
#define CG_LESS_BOOST_H

#include "case.h"
#include "duty_run.h"
#include "status.h"

/* The name that the row of the boost below goes by among the duties. */
#define CG_LESS_BOOST_NAME "less_boost"

/* Largest gauge boost [Pa] at which the spark is not retarded, at rated speed
 * and full load, into `boost`: the knock integral (knock.h) of the burn asked
 * for is 1 there to 1 %, with the walls as they are there.  NaN where knock does
 * not retard it at the case's own boost, where the case names its own retard,
 * and where even without boost it would be.  `run` was created from c.
 * CG_NUMERICAL where it is not found; else as cg_duty_run_create. */
enum cg_status cg_less_boost_find(const struct cg_case *c,
                                  const struct cg_duty_run *run, double *boost,
                                  struct cg_error *error);

#endif
