/* Boost that builds, and a cooler that soaks, over a duty that was not logged.
 */
#ifndef CG_COURSE_LAG_H
#define CG_COURSE_LAG_H

#include "case.h"

/* Whether the case has either: charge.boost_time, charge.cooler_soak. */
bool cg_case_lags(const struct cg_case *c);

/* The course of a duty with both in it.  At the start they are as the cruise or
 * the first row has settled, by the start asked for; cold, nothing has built.
 *
 * Boost: what the manifold is asked for above ambient is come to as by a first-
 * order body of charge.boost_time; it falls at once, for a throttle shuts.
 * Cooler: its core keeps charge.cooler_soak of the compressor's heat that it
 * takes from the charge, less what it has given off: a first-order body of
 * charge.soak_time, as far as the rise behind the compressor at full boost
 * would bring it (CG_CHANNEL_SOAK).  Both common practice, no source.  The list
 * owns the course.  CG_NO_MEMORY. */
enum cg_status cg_course_lag(const struct cg_case *c,
                             const struct cg_duty_case *duty,
                             struct cg_course **list, struct cg_course **course,
                             struct cg_error *error);

#endif
