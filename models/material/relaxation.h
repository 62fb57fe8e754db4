/* Relaxation: the tension that a ring loses by being hot for long.
 *
 * Time and temperature act together through the parameter of
 *   F. R. Larson and J. Miller, "A time-temperature relationship for rupture
 *   and creep stresses", Trans. ASME 74 (1952) 765:
 *
 *   P = T (20 + log10 t)        T [K], t [h]
 *
 * which spring makers use for relaxation too.  The share of tension left is
 *
 *   ln(1/left) = ln(1/0.9) exp((P - P_limit) / 1750 K)
 *   P_limit    = hot_limit (20 + log10 100)
 *
 * so a ring keeps 90 % after 100 h at its hot limit, and at one temperature
 * the loss grows by about a third for each tenfold time near 250 C.  Both
 * figures are common practice, no source; the hot limits themselves and their
 * sources stand in the material files.  A hot limit is a band, and so is what
 * is left: its lower end gives the lower figure.
 *
 * Left out: creep of the groove, the set by fitting, and the temperature's
 * run over the ring's depth; the time at heat is taken as one stretch.
 */
#ifndef CG_RELAXATION_H
#define CG_RELAXATION_H

#include "material.h"

/* Larson-Miller parameter [K]; temperature [K], time > 0 [s]. */
double cg_larson_miller(double temperature, double time);

/* The time [s] that does at `temperature` [K] what `parameter` stands for. */
double cg_larson_miller_time(double parameter, double temperature);

/* The time [s] that softens at `temperature` [K] as much as 100 h do at
 * `hot_limit` [K], of which the trade warns. */
double cg_softening_time(double hot_limit, double temperature);

/* Share of tension left [1] after `time` [s] at `temperature` [K]: low by the
 * lower end of the material's hot limit, high by the upper.  Cannot fail. */
struct cg_band cg_relaxation_left(const struct cg_material *material,
                                  double temperature, double time);

/* Pressure on the bore by a ring's own tension when hot [Pa]: `cold_pressure`
 * times the tension left (lower figure) times the modulus here over that at
 * 20 C.  This is what a ring has to seal with between two strokes.  Cannot
 * fail. */
double cg_relaxation_pressure(const struct cg_material *material,
                              double cold_pressure, double temperature,
                              double time);

#endif
