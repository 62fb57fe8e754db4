/* What rings that are too wide cost: gas past the rings of their own cylinder,
 * settled at rated speed and full load, against that with the gaps asked for.
 *
 * A ring is priced by how much wider it is than asked, in a bore of
 * engine.bore, the other ring of its cylinder as asked: so its price is of that
 * ring alone.
 */
#ifndef CG_GAP_PRICE_H
#define CG_GAP_PRICE_H

#include "duty_run.h"
#include "fitting.h"

/* One cylinder.  NaN: the ring is not too wide, or with it (or without it) the
 * rings do not settle to a motion that repeats. */
struct cg_gap_price {
    double blow_by; /* more than with the gaps asked for [kg/s] */
    double volume;  /* of that, at crankcase conditions [m3/s] */
};

struct cg_gap_prices {
    double asked; /* blow-by of one cylinder with the gaps asked for [kg/s];
                     NaN: no ring is too wide, or not settled */
    struct cg_gap_price ring[CG_FIT_CYLINDERS][CG_FIT_RINGS];
};

/* Prices the rings of a fitting that are too wide; solves nothing when there
 * is none.  `c` and `run` belong together.  Errors as cg_seal_create. */
enum cg_status cg_gap_prices_find(const struct cg_case *c,
                                  struct cg_duty_run *run,
                                  const struct cg_fitting *fitting,
                                  struct cg_gap_prices *prices,
                                  struct cg_error *error);

#endif
