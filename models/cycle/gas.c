#include "gas.h"

#include <stddef.h>

#include "constants.h"

/* Molar masses [kg/mol]: IUPAC atomic weights (2013), abridged.  Polynomials:
 * NASA TM-4513 (1993), 200 to 6000 K. */
struct species {
    double molar_mass;
    struct cg_poly poly;
};

static const struct species table[CG_FUEL] = {
    [CG_N2] = {28.014e-3,
               {{3.53100528, -1.23660988e-4, -5.02999433e-7, 2.43530612e-9,
                 -1.40881235e-12, -1.04697628e3},
                {2.95257637, 1.39690040e-3, -4.92631603e-7, 7.86010195e-11,
                 -4.60755204e-15, -9.23948688e2}}},
    [CG_O2] = {31.998e-3,
               {{3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9,
                 3.24372837e-12, -1.06394356e3},
                {3.66096065, 6.56365811e-4, -1.41149627e-7, 2.05797935e-11,
                 -1.29913436e-15, -1.21597718e3}}},
    [CG_AR] = {39.948e-3,
               {{2.5, 0.0, 0.0, 0.0, 0.0, -745.375},
                {2.5, 0.0, 0.0, 0.0, 0.0, -745.375}}},
    [CG_CO2] = {44.009e-3,
                {{2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9,
                  -1.43699548e-13, -4.83719697e4},
                 {4.63659493, 2.74131991e-3, -9.95828531e-7, 1.60373011e-10,
                  -9.16103468e-15, -4.90249341e4}}},
    [CG_H2O] = {18.015e-3,
                {{4.19864056, -2.03643410e-3, 6.52040211e-6, -5.48797062e-9,
                  1.77197817e-12, -3.02937267e4},
                 {2.67703787, 2.97318329e-3, -7.73769690e-7, 9.44336689e-11,
                  -4.26900959e-15, -2.98858938e4}}},
    [CG_CO] = {28.010e-3,
               {{3.57953347, -6.10353680e-4, 1.01681433e-6, 9.07005884e-10,
                 -9.04424499e-13, -1.43440860e4},
                {3.04848583, 1.35172818e-3, -4.85794075e-7, 7.88536486e-11,
                 -4.69807489e-15, -1.42661171e4}}},
    [CG_H2] = {2.016e-3,
               {{2.34433112, 7.98052075e-3, -1.94781510e-5, 2.01572094e-8,
                 -7.37611761e-12, -9.17935173e2},
                {2.93286575, 8.26608026e-4, -1.46402364e-7, 1.54100414e-11,
                 -6.88804800e-16, -8.13065581e2}}},
    /* The same compilation's of 1988 (L 7/88, to 3500 K), from memory, moved to
     * the heat of formation of nitrous.h and to meet at the joint. */
    [CG_N2O] = {44.013e-3,
                {{2.2571502, 1.1304728e-2, -1.3671319e-5, 9.6819806e-9,
                  -2.9307182e-12, 8.7959531e3},
                 {4.8230733503, 2.6270251e-3, -9.5850874e-7, 1.6000712e-10,
                  -9.7752303e-15, 8.127582756e+03}}},
};

double cg_species_molar_mass(enum cg_species species)
{
    return table[species].molar_mass;
}

const struct cg_poly *cg_species_poly(enum cg_species species)
{
    return &table[species].poly;
}

static void add(struct cg_mixture *mixture, double moles,
                const struct cg_poly *poly)
{
    for (int i = 0; i < 6; i++) {
        mixture->poly.low[i] += moles * poly->low[i];
        mixture->poly.high[i] += moles * poly->high[i];
    }
}

void cg_mixture_set(struct cg_mixture *mixture, const double *moles,
                    double fuel_molar_mass, const struct cg_poly *fuel_poly)
{
    *mixture = (struct cg_mixture){0.0, {{0.0}, {0.0}}};
    double total = 0.0, mass = 0.0;
    for (int s = 0; s < CG_FUEL; s++) {
        total += moles[s];
        mass += moles[s] * table[s].molar_mass;
        add(mixture, moles[s], &table[s].poly);
    }
    if (fuel_poly != NULL) {
        total += moles[CG_FUEL];
        mass += moles[CG_FUEL] * fuel_molar_mass;
        add(mixture, moles[CG_FUEL], fuel_poly);
    }
    double per_mass = CG_GAS_CONSTANT / mass;
    for (int i = 0; i < 6; i++) {
        mixture->poly.low[i] *= per_mass;
        mixture->poly.high[i] *= per_mass;
    }
    mixture->gas_constant = total * per_mass;
}

static const double *range(const struct cg_mixture *mixture, double temperature)
{
    return temperature < CG_GAS_JOINT ? mixture->poly.low : mixture->poly.high;
}

double cg_mixture_cp(const struct cg_mixture *mixture, double temperature)
{
    const double *a = range(mixture, temperature), t = temperature;
    return a[0] + t * (a[1] + t * (a[2] + t * (a[3] + t * a[4])));
}

double cg_mixture_enthalpy(const struct cg_mixture *mixture, double temperature)
{
    const double *a = range(mixture, temperature), t = temperature;
    return a[5] +
           t * (a[0] +
                t * (a[1] * (1.0 / 2) +
                     t * (a[2] * (1.0 / 3) +
                          t * (a[3] * (1.0 / 4) + t * a[4] * (1.0 / 5)))));
}

double cg_mixture_energy(const struct cg_mixture *mixture, double temperature)
{
    return cg_mixture_enthalpy(mixture, temperature) -
           mixture->gas_constant * temperature;
}
