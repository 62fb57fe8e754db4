/* Nitrous oxide, N2O, brought along: oxygen and heat, and what it takes to
 * evaporate.
 *
 * In the flame it comes apart into N2 and half an O2, 33 % oxygen by mole, and
 * gives back its heat of formation; nothing of it comes apart before.
 */
#ifndef CG_NITROUS_H
#define CG_NITROUS_H

#include "fuel.h"

/* Heat of formation, 298.15 K [J/mol]: M. W. Chase, NIST-JANAF Thermochemical
 * Tables, 4th ed. (1998). */
#define CG_NITROUS_FORMATION 82.05e3

/* Boiling point at atmospheric pressure and critical temperature [K]: NIST
 * Chemistry WebBook. */
#define CG_NITROUS_BOILS 184.67
#define CG_NITROUS_CRITICAL 309.57

/* Released by coming apart [J/kg], 1.864 MJ/kg.  Cannot fail. */
double cg_nitrous_decomposition(void);

/* Taken by evaporation at a temperature [K] of the liquid [J/kg]: straight
 * lines between 374 kJ/kg at 184.7 K, 233 at 273 K, 170 at 293 K (+- 7, derived
 * from its vapour pressure) and none at the critical point; 0 above it.  The
 * vapour counts as an ideal gas at that temperature: near the critical point it
 * is denser and takes more on its way to a manifold's pressure, so that a
 * charge fed from a warm bottle comes out some kelvins too warm.  Cannot fail.
 */
double cg_nitrous_evaporation(double temperature);

/* Air that holds as much oxygen as a kilogram of it [kg].  Cannot fail. */
double cg_nitrous_oxygen_as_air(void);

/* The flow [kg/s] that brings so much brake power [W] by rule: of the heat that
 * its oxygen releases with the fuel matched to it at `lambda` [1], and of its
 * own, CG_NITROUS_BRAKE reaches the crankshaft (common practice, no source).
 * Cannot fail. */
#define CG_NITROUS_BRAKE 0.30
double cg_nitrous_flow(const struct cg_fuel *fuel, double lambda, double power);

#endif
