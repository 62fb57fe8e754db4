#include "advice.h"

#include <math.h>

#include "ring_gap.h"

#define CLOSE 1e-9 /* of a gap: no filer sees that */

static bool more(double a, double b)
{
    return a > b * (1.0 + CLOSE);
}

const char *cg_advice_word(enum cg_advice_from from)
{
    static const char *const word[] = {[CG_ADVICE_MODEL] = "model",
                                       [CG_ADVICE_MAKER] = "maker",
                                       [CG_ADVICE_RULE] = "rule",
                                       [CG_ADVICE_EVIDENCE] = "evidence",
                                       [CG_ADVICE_NONE] = "none"};
    return word[from];
}

struct cg_ring_advice cg_advise(const struct cg_advice_says *says)
{
    struct cg_ring_advice out = {.at_least = fmax(says->need, 0.0),
                                 .rule = says->rule,
                                 .maker = says->maker,
                                 .earned = says->earned,
                                 .past_rule = says->past_rule,
                                 .from = CG_ADVICE_MODEL};
    bool earned = more(says->rule, says->earned); /* NaN: no */
    double rule = earned ? says->earned : says->rule;
    if (more(says->maker, out.at_least)) {
        out.at_least = says->maker;
        out.from = CG_ADVICE_MAKER;
    }
    if (more(rule, out.at_least)) {
        out.at_least = rule;
        out.from = CG_ADVICE_RULE;
    }
    if (earned && more(says->rule, out.at_least))
        out.from = CG_ADVICE_EVIDENCE;
    out.file_to = cg_gap_round_up(out.at_least, says->step);
    if (more(cg_gap_round_up(fmax(says->need, 0.0), says->step), says->most)) {
        out.from = CG_ADVICE_NONE;
        out.file_to = NAN;
    }
    return out;
}

enum cg_fits cg_advice_fits(double gap, double need, double at_least)
{
    if (more(need, gap))
        return CG_FITS_NOT;
    return more(at_least, gap) ? CG_FITS_BELOW : CG_FITS;
}

double cg_advice_second_rule(double top, double factor, double most)
{
    return fmin(factor * top, most);
}
