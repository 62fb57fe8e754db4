/* What to file to: the gap needed by the model, or the rule of the trade where
 * that is larger.  The rule knows neither block nor ring nor duty, but has
 * broken rings behind it; metal filed off does not come back, and a ring whose
 * ends touch breaks. */
#ifndef CG_ADVICE_H
#define CG_ADVICE_H

#include "answer.h"

enum cg_advice_from {
    CG_ADVICE_MODEL, /* the gap needed is the larger */
    CG_ADVICE_RULE,  /* the shop rule, of the second ring the trade's rule */
    CG_ADVICE_NONE   /* no gap that a case may give will do */
};

struct cg_advice {
    double file_to_top, file_to_second; /* cold [m]; NaN: none */
    enum cg_advice_from from_top, from_second;
};

/* The advice that an answer gives, after cg_answer_second.  Cannot fail. */
struct cg_advice cg_advice_of(const struct cg_answer *answer);

#endif
