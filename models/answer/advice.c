#include "advice.h"

#include <math.h>

/* Equal but for the last bits is equal: then it is the model's. */
static double larger(const struct cg_verdict *verdict, double need, double rule,
                     enum cg_advice_from *from)
{
    if (verdict->beyond) {
        *from = CG_ADVICE_NONE;
        return NAN;
    }
    *from = rule > need * (1.0 + 1e-9) ? CG_ADVICE_RULE : CG_ADVICE_MODEL;
    return *from == CG_ADVICE_RULE ? rule : need;
}

struct cg_advice cg_advice_of(const struct cg_answer *answer)
{
    struct cg_advice out;
    out.file_to_top = larger(&answer->verdict, answer->top.cold_gap,
                             answer->shop_rule, &out.from_top);
    out.file_to_second =
        larger(&answer->second_verdict, answer->second.cold_gap,
               answer->second_rule, &out.from_second);
    return out;
}
