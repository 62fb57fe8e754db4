/* Private to ladder*.c: the parts' scores from what a boost has shown. */
#ifndef CG_LADDER_SCORE_H
#define CG_LADDER_SCORE_H

#include "ladder_look.h"

/* What a duty has shown. */
struct cg_look_duty {
    const struct cg_extremes *extremes;
    const struct cg_limits *limits;
    bool own, judged;
};

/* Scores of the charge and the finish, at the look's boost.  Cannot fail. */
void cg_score_charge(const struct cg_case *c, struct cg_look *look);

/* Begins, takes in a duty, and ends the scores of heat; `full` is at rated
 * speed and full load.  None can fail. */
void cg_score_heat_begin(struct cg_look *look);
void cg_score_heat_add(const struct cg_case *c, const struct cg_look_duty *duty,
                       struct cg_look *look);
void cg_score_heat_end(const struct cg_case *c,
                       const struct cg_performance *full, struct cg_look *look);

/* Scores of the gaps and the top ring's seat, whose angle is in the look
 * already.  Cannot fail. */
void cg_score_gaps(const struct cg_case *c, const struct cg_answer *answer,
                   struct cg_look *look);

#endif
