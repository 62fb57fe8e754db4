/* The finish to order for a bore: the bands that its figures must lie in, and
 * the stones to begin with.
 *
 * The bands are the limits of bore_finish.h turned round: wherever a plateau
 * surface lies in all of them, it holds the oil needed, no more than is of use,
 * and no stage of its honing needs a change.  With Vo = Rvk (1 - Mr2) / 2
 * and Mr2 from the least plateau to the usual one, the least Rvk is what holds
 * the oil needed on the usual one, and the most what is still of use there:
 *
 *     Rvk = 2 Vo / (1 - usual Mr2),  Vo needed <= Vo <= CG_FINISH_AMPLE Vo
 * needed
 *
 * The stones are those of the case, changed by class as the advice on their
 * simulated surface (honing.h) asks: a start for the first bore, which is then
 * measured; no machine's finish is predicted. */
#ifndef CG_FINISH_ORDER_H
#define CG_FINISH_ORDER_H

#include "bore_finish.h"

/* Peaks above the core of a plateau-honed bore [1]: common practice, no source.
 * An order names it; cg_finish_judge does not look at it. */
#define CG_ORDER_MOST_MR1 0.10

struct cg_finish_order {
    struct cg_finish_verdict need; /* fuel, oil needed, and what the stones'
                                      simulated surface makes of it */
    struct cg_band rpk, rk, rvk;   /* [m]; from 0: at most */
    struct cg_band mr1, mr2;       /* [1]; likewise */
    struct cg_band oil;            /* Vo [m3/m2] */
    double crosshatch_deg;
    int base_grit, plateau_grit;
    bool passes; /* the simulated surface of these stones may run */
};

/* The bands for oil needed [m3/m2]; grits and crosshatch are the case's.
 * Cannot fail. */
void cg_finish_order_bands(const struct cg_case *c, double oil_needed,
                           struct cg_finish_order *order);

/* Bands and stones; the surface is that of `finish --simulate plateau` with the
 * same seed.  Errors: as cg_finish_judge and cg_surface_measure. */
enum cg_status cg_finish_order_find(const struct cg_case *c, unsigned long seed,
                                    struct cg_finish_order *order,
                                    struct cg_error *error);

#endif
