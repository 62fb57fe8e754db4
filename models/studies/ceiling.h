/* The boost ceiling: the highest boost at which a given cold top gap still
 * fits: is no less than what to file to, over all duties that the case lists.
 *
 * What to file to (unrounded) need not rise with boost: at the knock limit more
 * of it retards the burn, the crown takes no more heat while the bore warms, and
 * the need may fall until the retard is at its most.  It is looked at from no
 * boost upwards in steps, and where it has turned down at its highest in
 * between; the first crossing of the given gap is refined by Brent's method
 * (gsl_root_fsolver_brent).  So no lower boost asks for more, but where the need
 * rises and falls within one step.
 *
 * The boost stops where the first of these stops it: the gap, a limit of metal,
 * knock or coolant (duty_limits.h), the spark, which nobody retards further, or the
 * shop rule, past whose end there is nothing to go by.  Limits are of a middle
 * estimate, and found within CG_CEILING_BAND.
 */
#ifndef CG_CEILING_H
#define CG_CEILING_H

#include <stdbool.h>

#include "answer.h"
#include "case.h"
#include "status.h"

#define CG_CEILING_MOST CG_SHOP_RULE_END /* highest looked at, gauge [Pa] */
#define CG_CEILING_BAND 10e3             /* of a limit [Pa] */
/* Of the first look [Pa]: the retard goes from nothing to its most over some
 * 75 kPa at least (15 deg at 0.2 deg/kPa), three steps. */
#define CG_CEILING_STEP 25e3

/* One boost. */
struct cg_ceiling_point {
    double need; /* gap needed by the model, in the hardest duty [m] */
    struct cg_ring_advice file_to;
    char hardest[CG_NAME_LENGTH]; /* that duty */
    struct cg_limits limits; /* of the first duty past one, or the one asked
                                for */
    char duty[CG_NAME_LENGTH]; /* that one */
    bool capped;             /* the burn is as late as it may be at rated speed,
                                full load */
};

/* Whether knock makes the burn as late as it may be; `full` is at rated speed
 * and full load.  Cannot fail. */
bool cg_ceiling_capped(const struct cg_case *c,
                       const struct cg_performance *full);

enum cg_ceiling_by {
    CG_CEILING_GAP,
    CG_CEILING_LIMIT, /* `past` says which */
    CG_CEILING_SPARK,
    CG_CEILING_RULE
};

struct cg_ceiling {
    double gap;          /* the given one [m] */
    double boost;        /* the gap's own ceiling, gauge [Pa]; 0 if not even
                            that */
    double stops;        /* where the first of all stops it [Pa] */
    enum cg_ceiling_by by;
    enum cg_past past;   /* the limit, or CG_PAST_LIMITS */
    bool never_enough;   /* too small even without boost */
    bool always_enough;  /* enough at CG_CEILING_MOST too */
    bool rises;          /* what to file to rose over every step looked at, and
                            the gap does not fit again at the case's boost */
    struct cg_ceiling_point at_none;   /* without boost */
    struct cg_ceiling_point at_target; /* at the case's own boost */
    double residual_time;/* at the case's boost: first instant at which less
                            than the residual is open, nominal [s]; NaN */
    double touch_time;   /* first instant at which the ends touch [s]; NaN */
};

/* That of the case at this boost, and whether it can be computed.  Errors: as
 * cg_answer_find. */
enum cg_status cg_ceiling_at(const struct cg_case *c, double boost,
                             struct cg_ceiling_point *point,
                             struct cg_error *error);

/* Whether the gap fits at the case's own boost, and no limit is past there.
 * Cannot fail. */
bool cg_ceiling_stands(const struct cg_ceiling *ceiling);

/* CG_BAD_INPUT when the case has no charger; else as cg_answer_find. */
enum cg_status cg_ceiling_find(const struct cg_case *c, double gap,
                               struct cg_ceiling *ceiling,
                               struct cg_error *error);

#endif
