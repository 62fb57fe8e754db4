/* Gas-side heat of the walls, averaged over a cycle: the mean coefficient and
 * the gas temperature weighted by it, so that q = h (T_gas - T_wall) is the
 * cycle mean for any steady wall temperature.  (The weighted temperature is
 * far above the plain mean of the gas temperature.)
 * Heywood (1988), sec. 12.6, "component temperature distribution".
 */
#ifndef CG_GAS_SIDE_H
#define CG_GAS_SIDE_H

#include <stddef.h>

#include "cycle.h"
#include "sweep_share.h"

struct cg_mean_gas {
    double coefficient; /* cycle mean [W/(m2 K)] */
    double temperature; /* weighted by the coefficient [K] */
};

/* Crown and head: exposed all the time.  Cannot fail. */
struct cg_mean_gas cg_gas_side_crown(const struct cg_cycle *cycle);

/* Liner stations: exposed while the crown's edge is below.  gas has
 * grid->stations entries; coefficient 0 (temperature that of the crown) where
 * the station is never uncovered.  Cannot fail. */
void cg_gas_side_stations(const struct cg_cycle *cycle,
                          const struct cg_bore_grid *grid,
                          struct cg_mean_gas *gas);

/* Largest momentary flux on a wall of that temperature [W/m2]. */
double cg_gas_side_peak_flux(const struct cg_cycle *cycle,
                             double wall_temperature);

#endif
