#include "second_gap.h"

#include <math.h>

enum { MOST_TRIES = 30 };
#define GAINS_LITTLE 1.0 /* [deg] */

size_t cg_second_gap_regime(const struct cg_duty_run *run)
{
    size_t found = run->full_load;
    for (size_t i = 0; i < run->regimes; i++)
        if (run->regime[i].operating.load >= 1.0 - 1e-9 &&
            run->regime[i].operating.speed <
                run->regime[found].operating.speed)
            found = i;
    return found;
}

/* The angle at which the top ring lifts; -1 if the motion does not settle. */
static double lifting(struct cg_seal *seal, double top, double second,
                      struct cg_second_gap *out)
{
    struct cg_pack_settled settled;
    struct cg_pack_state state;
    cg_seal_gaps(seal, top, second);
    out->tried++;
    enum cg_status status =
        cg_pack_settle(&seal->pack, &cg_pack_control_quick, false, &state,
                       &settled, NULL, NULL);
    return status == CG_OK ? settled.cycle.unseat_deg[0] : -1.0;
}

/* Smallest gap in steps between one that lifts too soon and one that does not:
 * regula falsi with halving (Illinois), rounded to steps. */
static double refine(struct cg_seal *seal, double top, double wanted,
                     double step, double low, double at_low, double high,
                     double at_high, struct cg_second_gap *out)
{
    double f_low = at_low - wanted, f_high = at_high - wanted;
    int side = 0;
    out->unseat_deg = at_high;
    while (high - low > 1.5 * step && out->tried < MOST_TRIES) {
        double gap = (low * f_high - high * f_low) / (f_high - f_low);
        /* Rounded up: the last but one try is then mostly the answer. */
        gap = step * ceil(gap / step - 1e-6);
        gap = fmin(fmax(gap, low + step), high - step);
        double f = lifting(seal, top, gap, out) - wanted;
        if (f >= 0.0) {
            high = gap;
            f_high = f;
            out->unseat_deg = f + wanted;
            if (side == 1)
                f_low *= 0.5;
            side = 1;
        } else {
            low = gap;
            f_low = f;
            if (side == -1)
                f_high *= 0.5;
            side = -1;
        }
    }
    return high;
}

void cg_second_gap_find(struct cg_seal *seal, double top, double least,
                        struct cg_second_gap *second)
{
    const struct cg_case *c = seal->c;
    double step = c->margin.filing_step, wanted = c->seal.seated_to_deg;
    struct cg_second_gap out = {.speed = seal->pack.speed};
    double low = step * ceil(least / step - 1e-9);
    out.most = fmax(step * ceil(CG_SECOND_MOST * top / step - 1e-9), low);
    seal->pack.ring[1].held = true;
    out.gap = low;
    out.with_least = out.unseat_deg = lifting(seal, top, low, &out);
    out.reached = out.unseat_deg >= wanted;
    if (!out.reached && out.most > low) {
        /* The trade's rule first: mostly not far from the answer. */
        double rule = step * ceil(c->margin.second_factor * top / step - 1e-9);
        double high = fmin(fmax(rule, low + step), out.most);
        double at_low = out.with_least;
        double at_high = lifting(seal, top, high, &out);
        out.gap = low;
        if (at_high < wanted && high < out.most) {
            low = high;
            at_low = at_high;
            high = out.most;
            at_high = lifting(seal, top, high, &out);
        }
        out.reached = at_high >= wanted;
        if (!out.reached) {
            wanted = at_high - GAINS_LITTLE;
            low = out.gap;
            at_low = out.with_least;
        }
        if (at_low < wanted)
            out.gap = refine(seal, top, wanted, step, low, at_low, high,
                             at_high, &out);
    }
    seal->pack.ring[1].held = false;
    *second = out;
}
