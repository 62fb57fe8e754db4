/* The second ring's gap, with a reason.
 *
 * Gas that has passed the top gap is shut in between the rings.  When the
 * cylinder's pressure falls below it, it lifts the top ring off its seat.  A
 * wider second gap lets it go in time, and leaks more.  Chosen is the smallest
 * second gap that keeps the top ring on its lower flank to seal.seated_to_deg,
 * and so the one that adds least blow-by.
 *
 * It is judged where gas has most time to gather: at full boost and the lowest
 * speed at which the duty asks for it.  The second ring is held on its seat: at
 * high speed it may lift and let gas go by itself, but nothing rests on that.
 */
#ifndef CG_SECOND_GAP_H
#define CG_SECOND_GAP_H

#include "seal.h"

/* A wider second gap than this many top gaps is not looked at. */
#define CG_SECOND_MOST 3.0

struct cg_second_gap {
    double gap;        /* cold [m], a multiple of the filing step; not below
                          the `least` asked for */
    double crossing;   /* where the angle comes to what is asked for, not
                          rounded [m]; NaN: `least` will do, or no gap gains
                          as much as a degree */
    double top;        /* the top gap it goes with [m] */
    double unseat_deg; /* at which the top ring lifts with it; where the angle
                          crosses, by its slope there from `crossing` on, less
                          than a filing step away */
    double with_least; /* the same with `least` [deg] */
    double speed;      /* where it is judged [rev/s] */
    double most;       /* the widest looked at [m] */
    bool reached;      /* false: no gap up to `most` keeps the ring seated 1 deg
                          longer than that; `gap` is the one from which on a
                          wider one gains less than 1 deg */
    int tried;
};

/* Operating point of the duty where it is judged. */
size_t cg_second_gap_point(const struct cg_duty_run *run);

/* Smallest second gap from `least` [m] up for the cold top gap `top` [m]; least
 * is the second ring's own safe gap.  Regula falsi on the angle of lifting to a
 * micrometre, then up to margin.filing_step but for a tenth of one: what a hair
 * of a degree decides is not a step.  By cg_pack_control_quick; one ten times as
 * tight moves the crossing by less than 2 um (tested).  `seal` is at that
 * point; its second ring is left free again.  A pack whose rings flutter
 * without repeating counts as not seated.  Cannot fail. */
void cg_second_gap_find(struct cg_seal *seal,
                        const struct cg_pack_control *control, double top,
                        double least, struct cg_second_gap *second);

#endif
