/* An 86 by 86 mm car engine at full throttle near its rated speed: what the
 * suites of the cycle start from.  Invented. */
#ifndef CG_CYCLE_CASE_H
#define CG_CYCLE_CASE_H

#include "cycle.h"

static inline struct cg_cycle_input rated(void)
{
    return (struct cg_cycle_input){.crank = {0.0861, 0.0857, 0.1434, 9.47},
                                   .speed = 6000.0 / 60.0,
                                   .manifold_pressure = 98e3,
                                   .manifold_temperature = 310.0,
                                   .exhaust_pressure = 113e3,
                                   .volumetric_efficiency = 0.92,
                                   .fuel = cg_fuel_find("gasoline"),
                                   .lambda = 0.90,
                                   .burn50_deg = 9.0,
                                   .burn_duration_deg = 28.0,
                                   .combustion_efficiency = 0.97,
                                   .correlation =
                                       cg_heat_transfer_find("woschni"),
                                   .heat_factor = 1.0,
                                   .chamber_area_ratio = 1.25,
                                   .head_temperature = 480.0,
                                   .piston_temperature = 530.0,
                                   .liner_temperature = 420.0,
                                   .intake_close_deg = -140.0,
                                   .exhaust_open_deg = 130.0,
                                   .step_deg = 1.0};
}

#endif
