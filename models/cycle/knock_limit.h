/* The burn placed at the knock limit, for cycle_pass.c alone: from the gas as
 * the intake closes, the earliest burn that is not before the one asked for and
 * whose knock integral (knock.h) does not pass 1, or the latest allowed.
 *
 * The search runs the closed part of the cycle alone, in a fixed number of
 * steps whatever the burn, so that its answer is smooth in all that goes in.
 */
#ifndef CG_KNOCK_LIMIT_H
#define CG_KNOCK_LIMIT_H

#include "knock.h"
#include "zone.h"

/* What the search starts from: where it ended in a like cycle. */
struct cg_knock_start {
    double burn50_deg; /* found */
    double slope;      /* of the integral's logarithm there [1/deg]; 0: not
                          known */
};

struct cg_knock_limit {
    const struct cg_knock_law *law;
    const struct cg_zone *zone; /* after cg_zone_close */
    double earliest_deg;        /* half burned, as asked for */
    double burn_duration_deg;   /* 10 % to 90 % */
    double state[CG_ZONE_VARIABLES]; /* where the earliest burn starts */
    struct cg_end_gas gas;
};

/* Compresses y, the state at close_deg, to where the earliest burn starts.
 * Law and zone must outlive the limit.  Cannot fail. */
void cg_knock_limit_begin(const struct cg_knock_law *law,
                          const struct cg_zone *zone, double earliest_deg,
                          double burn_duration_deg, double close_deg,
                          const double *y, struct cg_knock_limit *limit);

/* Knock integral of a burn half way at burn50_deg, not before the earliest
 * [1]; NaN where the gas goes wild. */
double cg_knock_limit_integral(const struct cg_knock_limit *limit,
                               double burn50_deg);

/* The burn at the limit [deg], to within `tolerance`: the earliest where its
 * integral is at most 1 or not a number, the latest where that one's is 1 or
 * more.  `start` is read and written.  Cannot fail. */
double cg_knock_limit_find(const struct cg_knock_limit *limit,
                           double tolerance, struct cg_knock_start *start);

#endif
