#include "second_gap.h"

#include <math.h>

#include "ring_gap.h"

enum { MOST_TRIES = 30 };
#define GAINS_LITTLE 1.0 /* [deg] */
#define NEARLY_FULL 0.95 /* load */
#define HAIR 0.1         /* of a filing step */
#define NEAR 1e-6        /* [m] */

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

/* A gap that was tried and settled, the top ring seated at peak. */
struct tried {
    double gap;                   /* [m]; 0: none */
    double mass[CG_PACK_VOLUMES]; /* log, at the start of a cycle */
};

/* A search: what it looks for, and where the last tries have ended. */
struct search {
    struct cg_seal *seal;
    const struct cg_pack_control *control;
    double top, step, wanted;   /* [m], [m], [deg] */
    struct cg_pack_state state; /* of the last try */
    struct tried last[2];       /* the latest first */
    struct cg_second_gap *out;
};

/* Takes the masses on to another gap: straight over its logarithm through the
 * last two tries. */
static void carry_on(struct search *search, double gap)
{
    const struct tried *last = search->last;
    if (!(last[1].gap > 0.0) || last[1].gap == last[0].gap)
        return;
    double part = log(gap / last[0].gap) / log(last[0].gap / last[1].gap);
    part = fmin(fmax(part, -1.5), 1.5);
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        search->state.mass[v] =
            exp(last[0].mass[v] + part * (last[0].mass[v] - last[1].mass[v]));
}

static void remember(struct search *search, double gap)
{
    search->last[1] = search->last[0];
    search->last[0].gap = gap;
    for (size_t v = 0; v < CG_PACK_VOLUMES; v++)
        search->last[0].mass[v] = log(search->state.mass[v]);
}

/* Cycles of long steps may differ by the steps alone, and seem not to settle:
 * ones ten times as close tell. */
static enum cg_status settle_closely(struct search *search,
                                     struct cg_pack_settled *settled)
{
    struct cg_pack_control closely = *search->control;
    closely.mass_tolerance *= 0.1;
    closely.lift_tolerance *= 0.1;
    closely.stage_tolerance *= 0.1;
    return cg_pack_settle(&search->seal->pack, &closely, false, &search->state,
                          settled, NULL, NULL);
}

/* The angle at which the top ring lifts; -1 if the motion does not settle. */
static double lifting(struct search *search, double second)
{
    struct cg_pack_settled settled;
    struct cg_seal *seal = search->seal;
    bool warm = search->last[0].gap > 0.0;
    cg_seal_gaps(seal, search->top, second);
    search->out->tried++;
    if (warm)
        carry_on(search, second);
    enum cg_status status =
        cg_pack_settle(&seal->pack, search->control, warm, &search->state,
                       &settled, NULL, NULL);
    if (status != CG_OK)
        status = settle_closely(search, &settled);
    double angle = status == CG_OK ? settled.cycle.unseat_deg[0] : -1.0;
    /* From a pack that flutters the next would begin fluttering. */
    if (angle > seal->peak_deg + 1.0)
        remember(search, second);
    else
        search->last[0].gap = search->last[1].gap = 0.0;
    return angle;
}

/* A bracket: at `low` the ring lifts too soon, at `high` it does not. */
struct bracket {
    double low, at_low, high, at_high; /* [m], [deg] */
};

/* The weight of an end that stays while the other goes from `before` to `f`. */
static double less_by(double f, double before)
{
    double gained = 1.0 - f / before;
    return gained > 0.0 ? gained : 0.5;
}

/* The gap where the angle crosses what is wanted, and the slope there
 * [deg/m]: regula falsi, an end that stays weighed less by what the other has
 * gained (N. Anderson and A. Bjorck, BIT 13, 1973), until the next try would be
 * as near as NEAR. */
static double crossing(struct search *search, struct bracket b, double *slope)
{
    double f_low = b.at_low - search->wanted;
    double f_high = b.at_high - search->wanted;
    double low = f_low, high = f_high; /* weighed */
    *slope = (f_high - f_low) / (b.high - b.low);
    double gap = b.low - f_low / *slope;
    int side = 0;
    while (b.high - b.low > 2.0 * NEAR && search->out->tried < MOST_TRIES) {
        gap = (b.low * high - b.high * low) / (high - low);
        gap = fmin(fmax(gap, b.low + NEAR), b.high - NEAR);
        double f = lifting(search, gap) - search->wanted;
        if (f >= 0.0) {
            low *= side > 0 ? less_by(f, high) : 1.0;
            b.high = gap;
            f_high = high = f;
            side = 1;
        } else {
            high *= side < 0 ? less_by(f, low) : 1.0;
            b.low = gap;
            f_low = low = f;
            side = -1;
        }
        *slope = (f_high - f_low) / (b.high - b.low);
        gap -= f / *slope;
        if (fabs(f) <= NEAR * *slope)
            break;
    }
    return gap;
}

/* Up to the filing step but for a little, so that a hair of a degree decides no
 * step. */
static void refine(struct search *search, const struct bracket *b)
{
    double slope, gap = crossing(search, *b, &slope);
    struct cg_second_gap *out = search->out;
    out->crossing = gap;
    out->gap = fmax(cg_gap_round_up(gap - HAIR * search->step, search->step),
                    out->gap);
    out->unseat_deg = search->wanted + slope * (out->gap - gap);
}

/* The gaps of the look, rising, and the angles there. */
struct looked {
    double gap[4], at[4]; /* [m], [deg] */
    int count;
};

static double look_at(struct search *search, double gap, struct looked *looked)
{
    int i = looked->count++;
    looked->gap[i] = gap;
    return looked->at[i] = lifting(search, gap);
}

/* From the last two gaps looked at, the one at which the angle would be
 * `enough`, straight over the gap's logarithm; at most the widest. */
static double next_gap(const struct looked *looked, double enough, double most)
{
    const double *gap = &looked->gap[looked->count - 2];
    const double *at = &looked->at[looked->count - 2];
    double rise = log(gap[1] / gap[0]) / (at[1] - at[0]);
    return rise > 0.0 ? fmin(gap[1] * exp((enough - at[1]) * rise), most)
                      : most;
}

/* Wider than the least: the trade's rule first, then as far as the last two
 * tries point, then the widest.  The last degree that the widest gains is not
 * chased, within reach or out of it: the gap moves on as the aim passes what
 * any gap can do.  What was tried is kept, so that the first crossing is found
 * whichever try was the best. */
static void look_wider(struct search *search, double rule)
{
    struct cg_second_gap *out = search->out;
    double enough = search->wanted + GAINS_LITTLE;
    double gap = fmin(fmax(rule, out->gap + search->step), out->most);
    struct looked looked = {{out->gap}, {out->with_least}, 1};
    double at = look_at(search, gap, &looked), best = at;
    for (int widest = 0; at < enough && gap < out->most && widest < 2;
         widest++) {
        gap = widest ? out->most : next_gap(&looked, enough, out->most);
        at = look_at(search, gap, &looked);
        best = fmax(best, at);
    }
    out->reached = best >= enough;
    search->wanted = fmin(search->wanted, best - GAINS_LITTLE);
    for (int i = 0; i + 1 < looked.count; i++)
        if (looked.at[i] < search->wanted &&
            looked.at[i + 1] >= search->wanted) {
            struct bracket b = {looked.gap[i], looked.at[i], looked.gap[i + 1],
                                looked.at[i + 1]};
            refine(search, &b);
            return;
        }
}

void cg_second_gap_find(struct cg_seal *seal,
                        const struct cg_pack_control *control, double top,
                        double least, struct cg_second_gap *second)
{
    const struct cg_margin_case *margin = &seal->c->margin;
    struct cg_second_gap out = {.top = top, .speed = seal->pack.speed};
    struct search search = {.seal = seal,
                            .control = control,
                            .top = top,
                            .step = margin->filing_step,
                            .wanted = seal->c->seal.seated_to_deg,
                            .out = &out};
    out.gap = cg_gap_round_up(least, search.step);
    out.crossing = NAN;
    out.most =
        fmax(cg_gap_round_up(CG_SECOND_MOST * top, search.step), out.gap);
    seal->pack.ring[1].pinned = true;
    out.with_least = out.unseat_deg = lifting(&search, out.gap);
    out.reached = out.with_least >= search.wanted;
    if (!out.reached && out.most > out.gap)
        look_wider(&search,
                   cg_gap_round_up(margin->second_factor * top, search.step));
    seal->pack.ring[1].pinned = false;
    *second = out;
}
