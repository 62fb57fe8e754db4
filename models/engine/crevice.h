/* The crevices that gas is pressed into: the top land and the top groove, over
 * and behind the ring.  Hot as the bodies are where their conductivity is
 * taken (thermal.h).  What the gas gives up there (zone.c) enters the thermal
 * network as sources: by volume over temperature, that is by the mass that goes
 * in.  What goes on to the groove leaves most of its heat on the way down the
 * land.  Of the land's half enters the piston, half the bore beside it at top
 * dead centre; of the groove's half the groove, half the ring's back.
 *
 * Left out: gas that passes the rings on to the lands below (seal.h), and
 * that in a transient the sources are those of the settled walls.
 */
#ifndef CG_CREVICE_H
#define CG_CREVICE_H

#include "case.h"
#include "cycle.h"
#include "thermal.h"

/* Diametral clearance [m] between bore and a land that is `cold` [m] cold;
 * never less than a fifth of it.  Cannot fail. */
double cg_crevice_clearance(const struct cg_case *c, double cold);

/* Volume [m3], share and share in the correlation, from the case: the rest of
 * the cycle's input stays.  Cannot fail. */
void cg_crevice_set(const struct cg_case *c, struct cg_cycle_input *input);

/* Temperature [K] of the crevices' walls: one that holds the same mass.  Cannot
 * fail. */
double cg_crevice_temperature(const struct cg_case *c,
                              const struct cg_thermal *thermal,
                              const double *temperature);

/* Sets the sources to `power` [W] in all.  Cannot fail. */
void cg_crevice_apply(double power, struct cg_thermal *thermal);

#endif
