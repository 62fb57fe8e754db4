/* Water and alcohol sprayed into the charge: their heats, what air can hold of
 * their vapour, and the law by which they evaporate in the closed cylinder.
 */
#ifndef CG_SPRAY_H
#define CG_SPRAY_H

#include "fuel.h"

/* The alcohol that is sprayed: methanol. */
const struct cg_fuel *cg_spray_alcohol(void);

/* Heat that evaporates water at 25 C [J/kg], and cp of its vapour and of
 * methanol's, 300 to 400 K [J/(kg K)]: IAPWS formulation 1995 and Stull,
 * Westrum and Sinke (1969), from memory. */
#define CG_WATER_EVAPORATION 2442e3
#define CG_WATER_VAPOUR_CP 1880.0
#define CG_ALCOHOL_VAPOUR_CP 1500.0

/* Vapour pressure of each alone [Pa], 273 to 373 K: Antoine's equation with the
 * constants of the handbooks, from memory.  Cannot fail. */
double cg_water_saturation(double temperature);
double cg_alcohol_saturation(double temperature);

/* Heat taken between two crank angles, its rate a raised cosine: smooth at both
 * ends, so that no step of the integration meets a kink. */
struct cg_evaporation {
    double heat; /* in all [J]; 0: none */
    double from_deg, to_deg;
};

void cg_evaporation_set(struct cg_evaporation *evaporation, double heat,
                        double from_deg, double to_deg);

/* Rate at a crank angle [J/deg], and heat taken between two [J].  Cannot
 * fail. */
double cg_evaporation_rate(const struct cg_evaporation *evaporation,
                           double angle_deg);
double cg_evaporation_between(const struct cg_evaporation *evaporation,
                              double from_deg, double to_deg);

#endif
