/* The trade-off of a top gap: what is safe from touching against what leaks,
 * over the cold gap, at one boost.
 */
#ifndef CG_SEAL_TRADEOFF_H
#define CG_SEAL_TRADEOFF_H

#include "case.h"
#include "status.h"

enum { CG_TRADEOFF_POINTS = 17 };

#define CG_TRADEOFF_MOST 600e3 /* highest boost looked at, gauge [Pa] */

struct cg_tradeoff_point {
    double gap;           /* cold, top ring [m] */
    double chance_less;   /* of less than margin.residual [1] */
    double chance_touch;  /* of the ends touching in the duty [1] */
    double blow_by;       /* whole engine, rated speed, full load [kg/s]; NaN:
                             could not be computed */
    double blow_by_share; /* of the charge [1] */
};

struct cg_tradeoff {
    double boost;         /* gauge [Pa] */
    double safe_gap;      /* smallest safe cold gap in the duty asked for at
                             that boost [m] */
    double file_to;       /* over all duties, with rule and maker's minimum
                             [m]; NaN: no gap will do */
    struct cg_tradeoff_point point[CG_TRADEOFF_POINTS];
};

/* Fills `trade` for its boost and the gaps from `least` to `most` [m], the
 * second gap always `ratio` times the top gap.  Errors as cg_answer_find. */
enum cg_status cg_seal_tradeoff(const struct cg_case *c, double least,
                                double most, double ratio,
                                struct cg_tradeoff *tradeoff,
                                struct cg_error *error);

/* Up to three boosts to look at [Pa]: half the target, the target, half as
 * much again, so far as the engine can stand it; one if there is no boost.
 * Returns their number. */
int cg_seal_tradeoff_boosts(const struct cg_case *c, double boost[3]);

#endif
