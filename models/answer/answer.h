/* The answer: the smallest cold gap that keeps `residual` open through each
 * duty with the wanted confidence, the reasons, and what to file to (advice.h).
 *
 *   cold gap = closure + spread + residual + rounding
 *
 * closure   nominal, largest over time and ring travel
 * spread    what the closure passes its nominal value by with the risk
 *           accepted.  First order: each uncertain input is moved by one
 *           standard deviation and the whole duty run again; contributions add
 *           as squares (GUM, JCGM 100:2008, sec. 5.1).  Each law of gas heat
 *           and film (law.h) has its own closure and standard deviation, and
 *           all together are a mixture of normals (normals.h); with one law
 *           alone that is z times its standard deviation.  By sampling
 *           (confidence.h): the closure's quantile less the nominal closure.
 *           Not less than ends that touched ask for (evidence_gap.h)
 * residual  margin.residual
 * rounding  up to margin.filing_step
 */
#ifndef CG_ANSWER_H
#define CG_ANSWER_H

#include <stdbool.h>
#include <stddef.h>

#include "advice.h"
#include "case.h"
#include "clearance.h"
#include "duty_limits.h"
#include "duty_run.h"
#include "evidence_gap.h"
#include "heat_balance.h"
#include "course_error.h"
#include "normals.h"
#include "peaks.h"
#include "ring_gap.h"
#include "second_gap.h"
#include "status.h"

enum { CG_CORRELATIONS = 8 };

/* What one run through the duty saw. */
struct cg_extremes {
    double closure;       /* top ring, largest [m] */
    double time, depth;   /* of it: the tightest instant and place [s] [m] */
    double closure_then;  /* there: of instants that close equally, to what the
                             solver's tolerance makes of it, the first [m] */
    double speed, load;   /* then [rev/s] [1] */
    int peaks;            /* that instant, and the next tight ones (peaks.h) */
    struct cg_peak peak[CG_PEAKS];
    double ring_at, bore_at; /* mean ring and bore surface there [K] */
    double ring_growth, bore_growth; /* of the circumference there [m] */
    double second_closure;           /* second ring, largest [m] */
    double ring_top_max, ring_second_max, groove_top_max, crown_max; /* [K] */
    double crown_over, groove_over; /* time over cg_crown_limit, over the
                                       alloy's hot limit [s] */
    double face_top_max;            /* face of the top ring [K] */
    double liner_top_max;    /* bore surface where the top ring turns [K] */
    double coolant_side_max; /* hottest wall with coolant or fins behind [K] */
    double liner_coolest; /* bore surface, coolest in the ring's travel at the
                             tightest instant [K] */
    double boiling_point; /* of the coolant [K]; air: infinite */
    double boiling_time;  /* when that wall first passes it [s]; NaN */
    struct cg_clearance clearance; /* of the piston, smallest of each, hot */
    struct cg_skirt_growth skirt;  /* at the skirt's largest closure */
};

struct cg_contribution {
    const char *name, *doc;
    double shift;       /* of the closure for one standard deviation [m] */
    double skirt_shift; /* of the skirt's closure likewise [m] */
    /* Of the variance, first order [1]: the input with what it shares with
     * inputs that it is correlated with; all sum to 1, one may be negative. */
    double share;
    /* By sampling, with its standard error [1]: what stays uncertain when all
     * others are known (confidence.h).  NaN: not sampled. */
    double total_effect, total_effect_error;
};

/* Name of what no input is: which law is right (law.h). */
#define CG_LAW_NAME "law"

struct cg_correlation_answer {
    const char *name;
    double closure; /* nominal [m]; NaN: could not be computed */
};

struct cg_gap_sum { /* cold gap = the sum of the rest [m] */
    double cold_gap, closure, spread, residual, rounding;
};

/* The closure with all inputs moved at once (confidence.h). */
struct cg_confidence {
    size_t samples; /* 0: not asked for, and nothing below is set */
    size_t replicates, failures;
    unsigned long seed;
    double mean, sd;                        /* of the closure [m] */
    double quantile;                        /* closure at 1 - risk [m] */
    double quantile_error;                  /* its standard error [m] */
    struct cg_gap_sum first_order, sampled; /* top ring, by either */
    bool few; /* too few for the risk: the larger of both holds */
};

struct cg_verdict {      /* of a given gap, over all duties */
    bool given, safe;    /* safe: not below the need, and some gap will do */
    enum cg_fits fits;   /* against need and advice */
    double gap;          /* [m]; what to file to if none is given */
    double need;         /* closure, spread and residual, unrounded, in the
                            hardest duty [m] */
    double most;         /* the widest that a case may give [m] */
    bool beyond;         /* the answer's is wider: no gap will do, and the ring
                            is safe only with a given one that is */
    double hot_gap_min;  /* there, nominal [m]; negative: the ends touch */
    double chance_less;  /* of less than the residual [1] */
    double chance_touch; /* of the ends touching [1] */
    bool touches;        /* nominally */
    struct cg_butting butting; /* if it touches */
};

/* The smallest safe cold skirt clearance, by the same margin:
 *   cold = closure + spread - give + rounding
 * closure is the cold clearance that leaves just none hot, give what a skirt
 * springs under margin.skirt_pressure.  The spread adds to the inputs of the
 * gap the piston's expansion, and bore and piston as measured. */
struct cg_skirt_answer {
    double cold, closure, spread, give, rounding; /* diametral [m] */
    double sigma;                                 /* of the closure [m] */
    double given;         /* the case's cold clearance [m] */
    bool taken;           /* that was not given, but chosen for the alloy */
    bool enough;          /* given against closure + spread - give */
    double pressure;      /* by the given one, nominal, hot [Pa]; 0: clear */
    bool too_tight;       /* that is past margin.skirt_pressure */
    struct cg_band trade; /* cold clearance the trade fits [m]; NaN */
};

/* What the second gap comes from. */
enum cg_second_reason {
    CG_SECOND_OWN,     /* what its own growth asks for */
    CG_SECOND_SEATING, /* wider: the top ring stays seated long enough */
    CG_SECOND_BEST,    /* no gap keeps it seated so long: this does nearly as
                          well as any */
    CG_SECOND_LIMITED, /* gas would have a wider one yet: the trade's rule, for
                          what is filed off does not come back */
    CG_SECOND_RULE     /* gas not looked at: the trade's rule */
};

/* Where in the duty the end gas comes nearest to firing. */
struct cg_knock_seen {
    double integral, burn50_deg; /* as in cg_performance */
    double speed, load;          /* [rev/s], [1] */
};

/* A block's wall around a liner where nothing is given: aluminium blocks, from
 * memory [m]. */
#define CG_BLOCK_LEAST 2e-3
#define CG_BLOCK_MOST 12e-3

/* One of the duties that the engine must survive. */
struct cg_duty_answer {
    char name[CG_NAME_LENGTH];
    struct cg_extremes extremes;
    struct cg_gap_sum top, second; /* second: by its own closure alone */
    struct cg_normals laws; /* closure less the nominal one, by each law [m] */
    double sigma;           /* standard deviation of the top closure [m] */
    struct cg_limits limits;
    struct cg_course_error course; /* rows 0: no course, or less boost */
    bool judged;            /* by its limits too: the config names it; else
                               they inform */
    struct cg_band block;   /* the top closure with block walls of CG_BLOCK_MOST
                               and CG_BLOCK_LEAST around the liner, the smaller
                               first [m]; NaN: the wall was given, or there is
                               none */
};

struct cg_answer {
    struct cg_extremes extremes;
    struct cg_gap_sum top;    /* of the duty asked for alone */
    struct cg_gap_sum second; /* in the duty hardest on it, and by the gas */
    struct cg_duty_answer duty[CG_DUTIES + 1]; /* the one asked for first */
    size_t duties, hardest; /* hardest: on the top ring, into `duty` */
    size_t hardest_second;
    double less_boost; /* that the last of them is with (less_boost.h): one more
                          than named [Pa]; NaN: none is, as where one duty
                          alone is asked for: what is needed may then fall with
                          boost */
    size_t less_of;    /* and which of them that is, with less boost */
    struct cg_ring_advice file_to_top, file_to_second; /* what to file to */
    struct cg_earned earned; /* by the engine's own evidence, of the top ring */
    struct cg_skirt_answer skirt;
    enum cg_second_reason second_reason;
    double second_rule; /* margin.second_factor times second_rule_top, but no
                           wider than a case may give [m] */
    double second_rule_top;       /* cg_answer_top_gap [m] */
    struct cg_second_gap seating; /* gap 0: not looked at */
    struct cg_band block;   /* as in cg_duty_answer, of the duty asked for */
    struct cg_normals laws; /* closure less the nominal one, by each law [m] */
    double sigma;           /* standard deviation of the top closure, laws and
                               all [m] */
    double quantile;        /* z [1] */
    struct cg_contribution contribution[CG_INPUTS]; /* largest first */
    size_t contributions;
    struct cg_correlation_answer correlation[CG_CORRELATIONS];
    size_t correlations; /* 0: the law is held to be right */
    struct cg_confidence confidence;
    double shop_rule; /* cold gap by the rule of thumb [m] */
    struct cg_verdict verdict, second_verdict; /* top, second ring */
    double settled_closure; /* top ring, settled at rated full load [m] */
    struct cg_performance performance; /* at rated speed, full load */
    struct cg_heat_balance balance;    /* there */
    struct cg_knock_seen knock;
    double film[CG_RINGS]; /* that heat crosses there [m] */
    struct cg_film_mean film_mean[CG_RING_OIL]; /* there, by the Reynolds law */
    struct cg_heat_ledger ledger;
    double duration; /* [s] */
};

/* The top ring's closure [m] in a settled state (nodes entries of the run).
 * CG_NO_MEMORY. */
enum cg_status cg_answer_settled_closure(const struct cg_case *c,
                                         const struct cg_duty_run *run,
                                         const double *settled,
                                         double *closure,
                                         struct cg_error *error);

/* Runs the duty once and records the extremes, at the solver's own instants and
 * between them (follow.h), whatever `interval` is.  `observer` (NULL allowed)
 * sees the instants of the table, and with neither `table` nor `step` set each
 * one that is the tightest so far. */
enum cg_status cg_answer_extremes(const struct cg_case *c,
                                  struct cg_duty_run *run, double interval,
                                  cg_instant_observer observer, void *context,
                                  struct cg_extremes *extremes,
                                  struct cg_heat_ledger *ledger,
                                  struct cg_error *error);

/* The same of the largest closures of top ring and skirt alone: fills closure
 * and skirt.closure, all else is nothing. */
enum cg_status cg_answer_closures(const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  struct cg_extremes *extremes,
                                  struct cg_error *error);

/* How many of answer->duty[] are duties of the case: the row with less boost,
 * where there is one, is the last.  Cannot fail. */
size_t cg_answer_own_duties(const struct cg_answer *answer);

/* What is run of answer->duty[i]: the case's own duty, one of `survive`, or
 * that of the row with less boost.  Belongs to the case.  Cannot fail. */
const struct cg_duty_case *cg_answer_duty(const struct cg_case *c,
                                          const struct cg_answer *answer,
                                          size_t i);

/* The whole answer, over the case's duty and those of `survive`, but for the
 * gas between the rings: the second gap is by the trade's rule until
 * cg_answer_second.  `run` comes from cg_duty_run_create for the same case, and
 * interval and observer see its duty alone.  interval and observer as for
 * cg_answer_extremes.  CG_NOT_SAFE is not used here: look at answer->verdict.
 */
enum cg_status cg_answer_find(const struct cg_case *c, struct cg_duty_run *run,
                              double interval, cg_instant_observer observer,
                              void *context, struct cg_answer *answer,
                              struct cg_error *error);

/* The duty, into `duty`, that goes past a limit though the config names it;
 * `duties`: none.  Cannot fail. */
size_t cg_answer_past(const struct cg_answer *answer);

/* What the gap needed lies between where it hangs on a block wall that was not
 * given, unrounded, over all duties [m]; NaN: it does not.  Cannot fail. */
struct cg_band cg_answer_block(const struct cg_answer *answer);

/* Whether all that the case gives stands: both gaps, the skirt clearance, and
 * the engine itself (cg_answer_past).  Cannot fail. */
bool cg_answer_stands(const struct cg_answer *answer);

/* The gap needed by the model: the top ring's sum in the hardest duty.  Cannot
 * fail. */
const struct cg_gap_sum *cg_answer_needed(const struct cg_answer *answer);

/* The largest nominal closure of all duties [m], which a run without contact is
 * held against (evidence_gap.h).  Cannot fail. */
double cg_answer_most_closure(const struct cg_answer *answer);

/* The top gap [m] as it will be filed, which a second gap goes with: the case's
 * own where that fits, else what to file to; where no gap will do, the model's.
 * Cannot fail. */
double cg_answer_top_gap(const struct cg_answer *answer);

/* Sets the second gap and its verdict by the gas that gathers between the
 * rings with that top gap.  If the gas side cannot be computed the rule stays.
 * CG_NO_MEMORY only. */
enum cg_status cg_answer_second(const struct cg_case *c,
                                struct cg_duty_run *run,
                                struct cg_answer *answer,
                                struct cg_error *error);

/* Sets the sums of the top ring, the second ring, the advice and the verdicts
 * of an answer for this spread of the closure in the duty asked for [m]; the
 * other duties keep theirs.  Cannot fail. */
void cg_answer_add_up(const struct cg_case *c, double spread,
                      struct cg_answer *answer);

/* What the trade's rule of thumb gives [m]: gap over bore 0.0040 without
 * boost, 0.0050 at 100 kPa, 0.0065 at 200 kPa, 0.0075 from 300 kPa, straight
 * between (coldgap's own table of common practice, no source); it ends there,
 * and what stands past CG_SHOP_RULE_END is its last.  boost [Pa]. */
#define CG_SHOP_RULE_END 3e5
double cg_shop_rule(double bore, double boost);

#endif
