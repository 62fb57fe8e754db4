/* Viscosity of engine oil against temperature.
 * Walther's equation as in ASTM D341: log10 log10 (nu + 0.7) = A - B log10 T,
 * nu in mm2/s, T in kelvin; A and B from two points. */
#ifndef CG_VISCOSITY_H
#define CG_VISCOSITY_H

/* Kinematic viscosity [m2/s] at `temperature` [K] of an oil with `at_40` and
 * `at_100` [m2/s] at 40 and 100 C.  Cannot fail; temperature is held within
 * 233 to 623 K. */
double cg_viscosity_walther(double at_40, double at_100, double temperature);

#endif
