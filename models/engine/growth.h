/* Growth of ring and bore at the temperatures of an instant, and the
 * end gap that it leaves at every depth of ring travel.
 */
#ifndef CG_GROWTH_H
#define CG_GROWTH_H

#include "case.h"
#include "cylinder.h"
#include "thermal.h"

/* Growth of the bore at one station.  Cannot fail. */
void cg_growth_station(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const double *temperature, size_t station,
                       struct cg_bore_growth *growth);

/* Strain of the mean bore diameter [1] at every station: out-of-roundness opens
 * the gap in second order, pi n^2 d^2/(2 r) for n lobes of height d (86 um at
 * most in a fired engine: Bird and Gartside, SAE 2002-01-0485; 1 um of gap for
 * n = 2), and is left out. strain has `stations`
 * entries.  Gas pressure is left out: the tightest place sees little of it,
 * and leaving it out errs to the wide side.  From the cold straight bore: a
 * choke (choke.h) is in it.  Cannot fail. */
void cg_growth_bore(const struct cg_case *c, const struct cg_thermal *thermal,
                    const double *temperature, double *strain);

/* Bore strain at a depth below the deck [1], by straight lines between the
 * station middles. */
double cg_growth_at_depth(const struct cg_thermal *thermal,
                          const double *strain, double depth);

/* Thermal strain of a ring at its mean temperature [1]. */
double cg_growth_ring(const struct cg_case *c,
                      const struct cg_thermal *thermal,
                      const double *temperature, enum cg_ring_place place);

struct cg_closure {
    double closure; /* cold gap minus hot gap where they are tightest [m] */
    double depth;   /* there, below the deck [m] */
    double at_top;  /* closure at the top of ring travel [m] */
};

/* The largest closure over the travel of a ring, bore strains given: the cold
 * gap that leaves exactly `minimum_hot_gap` [m] open, minus minimum_hot_gap.
 * Cannot fail. */
struct cg_closure cg_growth_closure(const struct cg_case *c,
                                    const struct cg_thermal *thermal,
                                    const double *strain, double ring_strain,
                                    enum cg_ring_place place,
                                    double minimum_hot_gap);

/* Hot gap [m] of a cold one, measured where the maker says (choke.h), at bore
 * and ring strains; negative: the ends would overlap.  Cannot fail. */
double cg_growth_gap(const struct cg_case *c, double gap, double bore_strain,
                     double ring_strain);

/* The least bore strain from depth `from` to `to` [m] below the deck, and
 * where (depth NULL allowed).  Cannot fail. */
double cg_growth_least(const struct cg_thermal *thermal, const double *strain,
                       double from, double to, double *depth);

#endif
