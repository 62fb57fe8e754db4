/* Fuels, and what their combustion with air leaves. */
#ifndef CG_FUEL_H
#define CG_FUEL_H

#include <stddef.h>

#include "gas.h"

struct cg_fuel {
    const char *name, *doc, *source;
    double carbon, hydrogen, oxygen; /* atoms per molecule [1] */
    double heating_value;            /* lower, of the liquid [J/kg] */
    double latent_heat;              /* of evaporation [J/kg] */
    double vapour_cp[3];             /* cp [J/(kg K)] = a + b T + c T2, up to
                                        1000 K, constant above */
    double density;                  /* liquid, 15 C [kg/m3] */
    double octane;                   /* for the delay of knock.h: research */
    double retard_share;             /* retard with boost, gasoline 1: by
                                        octane, common practice, no source */
};

/* All fuels known; *count receives their number. */
const struct cg_fuel *cg_fuels(size_t *count);
/* The fuel of that name, or NULL. */
const struct cg_fuel *cg_fuel_find(const char *name);

/* Neither can fail. */
double cg_fuel_molar_mass(const struct cg_fuel *fuel);     /* [kg/mol] */
double cg_fuel_stoichiometric(const struct cg_fuel *fuel); /* air/fuel, mass */

/* Heating value [J/mol] of CO and of H2 by the polynomials of gas.h, at
 * 298.15 K, water staying vapour.  Neither can fail. */
double cg_fuel_co_heat(void);
double cg_fuel_hydrogen_heat(void);

/* Vapour polynomial with the heat of formation that makes complete burning at
 * 298.15 K release heating_value from the liquid, per mole over R as in gas.h
 * (the liquid's enthalpy is latent_heat below).  From 1000 K up cp is held: a
 * parabola would turn negative where unburned fuel rides with flame gas. */
void cg_fuel_poly(const struct cg_fuel *fuel, struct cg_poly *poly);

/* Moles per mole of fuel [CG_SPECIES entries] of fresh charge at `lambda`, and
 * of its burned products.  Rich products share CO, CO2, H2, H2O by the water-
 * gas equilibrium constant 3.5 (Heywood 1988, sec. 4.9.1); lean ones keep O2.
 * `efficiency` [0..1]: the share of the charge that burns; the rest stays
 * fresh, fuel with its own air, as what escapes the flame in crevices and at
 * cold walls is (Heywood 1988, sec. 11.4.3).  Dry air: N2 78.084, O2 20.946,
 * Ar 0.970 (CO2 counted as Ar).  lambda >= 0.5: with less air carbon would
 * stay as soot. */
void cg_fuel_fresh(const struct cg_fuel *fuel, double lambda, double *moles);
void cg_fuel_burned(const struct cg_fuel *fuel, double lambda,
                    double efficiency, double *moles);

/* The same of any fresh charge that holds one mole of the fuel, oxygen, nitrous
 * or water among the rest, in place of what `moles` holds: nitrous comes apart
 * in the flame into nitrogen and oxygen. */
void cg_fuel_burn(const struct cg_fuel *fuel, double efficiency, double *moles);

/* Two fuels as one: `share` [0..1] of it, by mass, is b.  Names and octane are
 * a's.  Cannot fail. */
struct cg_fuel cg_fuel_blend(const struct cg_fuel *a, const struct cg_fuel *b,
                             double share);

#endif
