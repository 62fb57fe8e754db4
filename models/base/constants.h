/* Constants used in more than one place, SI. */
#ifndef CG_CONSTANTS_H
#define CG_CONSTANTS_H

#define CG_PI 3.14159265358979323846

/* CODATA 2018 (exact since the 2019 SI): molar gas constant [J/(mol K)]. */
#define CG_GAS_CONSTANT 8.31446261815324

/* CODATA 2018: Stefan-Boltzmann constant [W/(m2 K4)].  GSL carries an older
 * value, so we keep our own. */
#define CG_STEFAN_BOLTZMANN 5.670374419e-8

/* Zero Celsius [K], by definition. */
#define CG_ZERO_CELSIUS 273.15

/* Temperature at which dimensions are measured cold [K]: 20 C, ISO 1. */
#define CG_COLD_TEMPERATURE 293.15

/* Units of the inch system, exact by definition but for the horsepower: inch [m],
 * pound [kg], pound-force per square inch [Pa] from 4.4482216152605 N and
 * (0.0254 m)^2; mechanical horsepower [W], 550 foot-pounds-force a second;
 * British thermal unit of the international table [J]. */
#define CG_INCH 25.4e-3
#define CG_THOU 25.4e-6
#define CG_POUND 0.45359237
#define CG_PSI 6894.757293168361
#define CG_HORSEPOWER 745.6998715822702
#define CG_BTU 1055.05585262

#endif
