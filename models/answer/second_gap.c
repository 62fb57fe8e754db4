#include "second_gap.h"

#include <math.h>

#include "ring_gap.h"

enum { MOST_TRIES = 30 };
#define GAINS_LITTLE 1.0 /* [deg] */
#define NEARLY_FULL 0.95 /* load */
#define HAIR 0.1         /* of a filing step */

size_t cg_second_gap_point(const struct cg_duty_run *run)
{
    /* A log, and boost that builds, come near to full load alone. */
    double least = run->course ? NEARLY_FULL : 1.0 - 1e-9;
    size_t found = run->full_load;
    for (size_t i = 0; i < run->points; i++)
        if (run->point[i].operating.load >= least &&
            run->point[i].operating.speed <
                run->point[found].operating.speed &&
            (!run->mapped || cg_duty_run_comes_by(run, i)))
            found = i;
    return found;
}

/* A search: what it looks for, and where the last try has ended. */
struct search {
    struct cg_seal *seal;
    double top, step, wanted;   /* [m], [m], [deg] */
    struct cg_pack_state state; /* of the last try */
    bool warm;                  /* it settled, the top ring seated at peak */
    struct cg_second_gap *out;
};

/* The angle at which the top ring lifts; -1 if the motion does not settle. */
static double lifting(struct search *search, double second)
{
    struct cg_pack_settled settled;
    struct cg_seal *seal = search->seal;
    cg_seal_gaps(seal, search->top, second);
    search->out->tried++;
    enum cg_status status =
        cg_pack_settle(&seal->pack, &cg_pack_control_quick, search->warm,
                       &search->state, &settled, NULL, NULL);
    double angle = status == CG_OK ? settled.cycle.unseat_deg[0] : -1.0;
    /* From a pack that flutters the next would begin fluttering. */
    search->warm = angle > seal->peak_deg + 1.0;
    return angle;
}

/* A bracket: at `low` the ring lifts too soon, at `high` it does not. */
struct bracket {
    double low, at_low, high, at_high; /* [m], [deg] */
};

/* Where the angle, straight between the ends of the bracket, comes to what is
 * wanted; rounded up but for a little, so that a hair of a degree decides no
 * filing step. */
static double crossing(const struct search *search, const struct bracket *b)
{
    double part = (search->wanted - b->at_low) / (b->at_high - b->at_low);
    double gap = b->low + part * (b->high - b->low);
    return fmin(cg_gap_round_up(gap - HAIR * search->step, search->step),
                b->high);
}

/* Smallest gap in steps: regula falsi with halving (Illinois). */
static void refine(struct search *search, struct bracket b)
{
    double step = search->step;
    double f_low = b.at_low - search->wanted;
    double f_high = b.at_high - search->wanted;
    int side = 0;
    while (b.high - b.low > 1.5 * step && search->out->tried < MOST_TRIES) {
        double gap = (b.low * f_high - b.high * f_low) / (f_high - f_low);
        /* Rounded up: the last but one try is then mostly the answer. */
        gap = cg_gap_round_up(gap, step);
        gap = fmin(fmax(gap, b.low + step), b.high - step);
        double at = lifting(search, gap), f = at - search->wanted;
        if (f >= 0.0) {
            b.high = gap;
            b.at_high = at;
            f_high = f;
            if (side == 1)
                f_low *= 0.5;
            side = 1;
        } else {
            b.low = gap;
            b.at_low = at;
            f_low = f;
            if (side == -1)
                f_high *= 0.5;
            side = -1;
        }
    }
    search->out->gap = crossing(search, &b);
    bool less = search->out->gap < b.high - 0.5 * step;
    search->out->unseat_deg = less ? b.at_low : b.at_high;
}

/* Wider than the least: the trade's rule first, mostly not far from the
 * answer, then the widest.  The last degree that the widest gains is not
 * chased, within reach or out of it: the gap moves on as the aim passes what
 * any gap can do. */
static void look_wider(struct search *search, double rule)
{
    struct cg_second_gap *out = search->out;
    double least = out->gap, aim = search->wanted;
    struct bracket b = {least, out->with_least,
                        fmin(fmax(rule, least + search->step), out->most), 0};
    b.at_high = lifting(search, b.high);
    if (b.at_high < aim + GAINS_LITTLE && b.high < out->most) {
        struct bracket wider = {b.high, b.at_high, out->most, 0};
        wider.at_high = lifting(search, wider.high);
        search->wanted =
            fmin(aim, fmax(b.at_high, wider.at_high) - GAINS_LITTLE);
        if (b.at_high < search->wanted)
            b = wider;
    } else {
        search->wanted = fmin(aim, b.at_high - GAINS_LITTLE);
    }
    out->reached = search->wanted >= aim;
    if (b.at_low < search->wanted)
        refine(search, b);
}

void cg_second_gap_find(struct cg_seal *seal, double top, double least,
                        struct cg_second_gap *second)
{
    const struct cg_margin_case *margin = &seal->c->margin;
    struct cg_second_gap out = {.top = top, .speed = seal->pack.speed};
    struct search search = {.seal = seal,
                            .top = top,
                            .step = margin->filing_step,
                            .wanted = seal->c->seal.seated_to_deg,
                            .out = &out};
    out.gap = cg_gap_round_up(least, search.step);
    out.most = fmax(cg_gap_round_up(CG_SECOND_MOST * top, search.step), out.gap);
    seal->pack.ring[1].pinned = true;
    out.with_least = out.unseat_deg = lifting(&search, out.gap);
    out.reached = out.with_least >= search.wanted;
    if (!out.reached && out.most > out.gap)
        look_wider(&search, cg_gap_round_up(margin->second_factor * top,
                                            search.step));
    seal->pack.ring[1].pinned = false;
    *second = out;
}
