/* The working gas: ideal mixtures with NASA seven-coefficient polynomials.
 * B. J. McBride, S. Gordon, M. A. Reno, "Coefficients for Calculating
 * Thermodynamic and Transport Properties of Individual Species", NASA
 * TM-4513 (1993).  Enthalpies are absolute: they include the heat of
 * formation at 298.15 K, so that burning needs no separate heat release.
 */
#ifndef CG_GAS_H
#define CG_GAS_H

enum cg_species {
    CG_N2, CG_O2, CG_AR, CG_CO2, CG_H2O, CG_CO, CG_H2, CG_N2O,
    CG_FUEL,      /* vapour of the fuel in use, from cg_fuel */
    CG_SPECIES
};

/* cp/R = a0 + a1 T + a2 T2 + a3 T3 + a4 T4, h/RT likewise with a5; two ranges
 * that meet at CG_GAS_JOINT [K], with a kink in cp. */
#define CG_GAS_JOINT 1000.0

struct cg_poly {
    double low[6], high[6];
};

/* A mixture of fixed composition, its polynomial already summed per kg. */
struct cg_mixture {
    double gas_constant; /* specific, R/M [J/(kg K)] */
    struct cg_poly poly; /* coefficients times gas_constant [J/(kg K)] units */
};

/* Molar mass [kg/mol] and polynomial of a species other than CG_FUEL. */
double cg_species_molar_mass(enum cg_species species);
const struct cg_poly *cg_species_poly(enum cg_species species);

/* Sums a mixture from mole amounts (any total > 0; CG_SPECIES entries);
 * fuel_molar_mass [kg/mol] and fuel_poly are used for CG_FUEL (may be NULL
 * when moles[CG_FUEL] is 0).  Cannot fail. */
void cg_mixture_set(struct cg_mixture *mixture, const double *moles,
                    double fuel_molar_mass, const struct cg_poly *fuel_poly);

/* cp, h (absolute), u = h - R T, per kg, at temperature [K].  Extrapolated
 * beyond 6000 K and below 200 K by the same polynomials. */
double cg_mixture_cp(const struct cg_mixture *mixture, double temperature);
double cg_mixture_enthalpy(const struct cg_mixture *mixture,
                           double temperature);
double cg_mixture_energy(const struct cg_mixture *mixture, double temperature);

#endif
