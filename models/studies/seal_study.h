/* What the gaps of an engine cost, seen from all sides: at rated speed with
 * and without gas ports and with a wider top gap, and at the speed that is
 * hardest on the top ring's seat.
 */
#ifndef CG_SEAL_STUDY_H
#define CG_SEAL_STUDY_H

#include "answer.h"
#include "seal.h"
#include "seal_friction.h"

#define CG_SEAL_MORE_GAP 0.05e-3 /* the step of gap that is priced [m] */

struct cg_seal_study {
    const struct cg_case *c;
    double gap[CG_PACK_RINGS];     /* cold, looked at [m] */
    bool given[CG_PACK_RINGS];     /* by the case; else the answer's */
    bool whole;                    /* `answer` is whole; else both gaps are
                                      given, and it holds what the second
                                      gap needs and no spread */
    struct cg_answer answer;
    struct cg_seal *rated, *other; /* with their records */
    struct cg_seal *hardest;       /* NULL: that is rated speed */
    enum cg_port_kind other_ports; /* none if the case has some, else drilled
                                      from the crown */
    struct cg_seal_answer at_rated;
    struct cg_seal_answer at_other, at_hardest; /* blow_by NaN: the rings do
                                        not settle */
    struct cg_seal_friction friction; /* at rated speed, as fitted; power NaN:
                                         its film does not repeat */
    double power_loss, blow_by_more; /* for CG_SEAL_MORE_GAP of top gap
                                        [W], [kg/s]; NaN: they do not settle */
};

/* Does all that.  `c` and `run` belong together, and c must outlive the study.
 * With both gaps given the duty is run once, else as cg_answer_find.  Caller
 * frees, after a failure too.  Errors as cg_answer_find and cg_seal_solve. */
enum cg_status cg_seal_study_create(const struct cg_case *c,
                                    struct cg_duty_run *run,
                                    struct cg_seal_study **study,
                                    struct cg_error *error);
/* Accepts NULL. */
void cg_seal_study_free(struct cg_seal_study *study);

#endif
