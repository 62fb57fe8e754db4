#include "fuel.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "constants.h"

/* Heating values follow from the heats of combustion and are rounded; vapour
 * cp is a parabola through the values at 300, 500 or 600, and 1000 K of the
 * source named.  Octane numbers are research ones: methanol 107 (motor 92),
 * ethanol 108 (92), gasoline 90 to 100 (81 to 90) by the US DOE Alternative
 * Fuels Data Center's table of properties; of these pump premium is 98, common
 * practice; iso-octane 100 by definition; e85 and the toluene blend (102, as
 * the rules of its time allowed) from memory. */
static const struct cg_fuel fuels[] = {
    {"gasoline", "pump gasoline without alcohol, H/C 1.87",
     "Heywood (1988), tables D.4 and 4.11, from memory",
     7.93, 14.83, 0.0, 44.0e6, 305e3, {85.8, 5.579, -2.160e-3}, 745.0, 98.0, 1.0},
    {"e85", "85 % ethanol by volume in gasoline",
     "mixed from the rows ethanol and gasoline",
     2.3839, 6.5717, 0.9353, 29.24e6, 832e3, {188.7, 4.715, -1.763e-3}, 787.0, 106.0, 0.4},
    {"ethanol", "ethanol, dry",
     "Stull, Westrum and Sinke (1969), from memory",
     2.0, 6.0, 1.0, 26.8e6, 919e3, {205.8, 4.572, -1.698e-3}, 794.0, 108.0, 0.3},
    {"methanol", "methanol",
     "Stull, Westrum and Sinke (1969), from memory",
     1.0, 4.0, 1.0, 19.9e6, 1168e3, {515.5, 3.148, -0.870e-3}, 796.0, 107.0, 0.2},
    {"iso_octane", "2,2,4-trimethylpentane, the reference of the octane scale",
     "Heywood (1988), tables D.4 and 4.11, from memory",
     8.0, 18.0, 0.0, 44.3e6, 308e3, {85.4, 5.911, -2.200e-3}, 696.0, 100.0, 0.7},
    {"toluene_blend", "race fuel: 84 % toluene, 16 % n-heptane by volume",
     "Stull, Westrum and Sinke (1969), from memory, mixed",
     7.0, 8.9723, 0.0, 41.06e6, 406e3, {-213.5, 5.361, -2.138e-3}, 842.0, 102.0, 0.3},
    {"diesel", "diesel fuel, H/C 1.8, for compression ignition alone",
     "Heywood (1988), table D.4, light diesel, and 4.11, from memory",
     12.3, 22.14, 0.0, 42.5e6, 270e3, {-54.7, 5.882, -2.265e-3}, 840.0, 0.0, 0.0},
};

/* Dry air by volume, its CO2 counted as argon. */
static const double air_n2 = 0.78084, air_o2 = 0.20946, air_ar = 0.00970;

static const double reference = 298.15; /* of heats of formation [K] */

const struct cg_fuel *cg_fuels(size_t *count)
{
    *count = sizeof fuels / sizeof fuels[0];
    return fuels;
}

const struct cg_fuel *cg_fuel_find(const char *name)
{
    for (size_t i = 0; i < sizeof fuels / sizeof fuels[0]; i++)
        if (strcmp(fuels[i].name, name) == 0)
            return &fuels[i];
    return NULL;
}

double cg_fuel_molar_mass(const struct cg_fuel *fuel)
{
    double o = 0.5 * cg_species_molar_mass(CG_O2);
    double h = 0.5 * cg_species_molar_mass(CG_H2);
    double c = cg_species_molar_mass(CG_CO) - o;
    return fuel->carbon * c + fuel->hydrogen * h + fuel->oxygen * o;
}

/* Moles of O2 that burn one mole of fuel. */
static double oxygen_needed(const struct cg_fuel *fuel)
{
    return fuel->carbon + 0.25 * fuel->hydrogen - 0.5 * fuel->oxygen;
}

double cg_fuel_stoichiometric(const struct cg_fuel *fuel)
{
    double air = air_n2 / air_o2 * cg_species_molar_mass(CG_N2) +
                 cg_species_molar_mass(CG_O2) +
                 air_ar / air_o2 * cg_species_molar_mass(CG_AR);
    return oxygen_needed(fuel) * air / cg_fuel_molar_mass(fuel);
}

/* h/R [K] of a polynomial. */
static double enthalpy(const double *a, double t)
{
    return a[5] + t * (a[0] + t * (a[1] / 2 + t * (a[2] / 3 + t * (a[3] / 4 +
                                                         t * a[4] / 5))));
}

static double species_enthalpy(enum cg_species species)
{
    return CG_GAS_CONSTANT * enthalpy(cg_species_poly(species)->low, reference);
}

double cg_fuel_co_heat(void)
{
    return species_enthalpy(CG_CO) + 0.5 * species_enthalpy(CG_O2) -
           species_enthalpy(CG_CO2);
}

double cg_fuel_hydrogen_heat(void)
{
    return species_enthalpy(CG_H2) + 0.5 * species_enthalpy(CG_O2) -
           species_enthalpy(CG_H2O);
}

void cg_fuel_poly(const struct cg_fuel *fuel, struct cg_poly *poly)
{
    const double joint = CG_GAS_JOINT;
    double mass = cg_fuel_molar_mass(fuel);
    *poly = (struct cg_poly){{0.0}, {0.0}};
    for (int i = 0; i < 3; i++) {
        poly->low[i] = fuel->vapour_cp[i] * mass / CG_GAS_CONSTANT;
        poly->high[0] += poly->low[i] * pow(joint, i);
    }
    double products = fuel->carbon * species_enthalpy(CG_CO2) +
                      0.5 * fuel->hydrogen * species_enthalpy(CG_H2O) -
                      oxygen_needed(fuel) * species_enthalpy(CG_O2);
    double vapour =
        products + mass * (fuel->heating_value + fuel->latent_heat);
    poly->low[5] = vapour / CG_GAS_CONSTANT - enthalpy(poly->low, reference);
    poly->high[5] = enthalpy(poly->low, joint) - enthalpy(poly->high, joint);
}

void cg_fuel_fresh(const struct cg_fuel *fuel, double lambda, double *moles)
{
    double o2 = lambda * oxygen_needed(fuel);
    for (int s = 0; s < CG_SPECIES; s++)
        moles[s] = 0.0;
    moles[CG_O2] = o2;
    moles[CG_N2] = o2 * air_n2 / air_o2;
    moles[CG_AR] = o2 * air_ar / air_o2;
    moles[CG_FUEL] = 1.0;
}

/* Moles of CO2 from carbon c, hydrogen h and oxygen o atoms, rich: the root of
 * 3.5 = [CO][H2O]/([CO2][H2]) with all oxygen bound. */
static double rich_carbon_dioxide(double c, double h, double o)
{
    const double equilibrium = 3.5;
    double excess = o - c; /* atoms left when all carbon is CO */
    double b = equilibrium * (0.5 * h - excess) + o;
    double root = sqrt(b * b + 4.0 * (equilibrium - 1.0) * c * excess);
    return 2.0 * c * excess / (b + root);
}

/* Complete burning of one mole of fuel that has the air, nitrous and water of
 * `moles`. */
static void burn_whole(const struct cg_fuel *fuel, double *moles)
{
    double c = fuel->carbon, h = fuel->hydrogen + 2.0 * moles[CG_H2O];
    double oxygen = 2.0 * moles[CG_O2] + fuel->oxygen + moles[CG_N2O] +
                    moles[CG_H2O];
    double needed = 2.0 * c + 0.5 * h;

    moles[CG_FUEL] = 0.0;
    moles[CG_N2] += moles[CG_N2O];
    moles[CG_N2O] = 0.0;
    if (oxygen >= needed) {
        moles[CG_CO2] = c;
        moles[CG_H2O] = 0.5 * h;
        moles[CG_O2] = 0.5 * (oxygen - needed);
    } else {
        moles[CG_CO2] = rich_carbon_dioxide(c, h, oxygen);
        moles[CG_CO] = c - moles[CG_CO2];
        moles[CG_H2O] = oxygen - c - moles[CG_CO2];
        moles[CG_H2] = 0.5 * h - moles[CG_H2O];
        moles[CG_O2] = 0.0;
    }
}

/* What escapes the flame, in crevices and at cold walls, is mixture and not
 * fuel alone: it keeps its air. */
void cg_fuel_burn(const struct cg_fuel *fuel, double efficiency, double *moles)
{
    double fresh[CG_SPECIES];
    memcpy(fresh, moles, sizeof fresh);
    burn_whole(fuel, moles);
    for (int s = 0; s < CG_SPECIES; s++)
        moles[s] = efficiency * moles[s] + (1.0 - efficiency) * fresh[s];
}

void cg_fuel_burned(const struct cg_fuel *fuel, double lambda,
                    double efficiency, double *moles)
{
    assert(lambda >= 0.5);
    cg_fuel_fresh(fuel, lambda, moles);
    cg_fuel_burn(fuel, efficiency, moles);
}

/* Atoms by mole, all else by mass: what each brings is in the blend. */
struct cg_fuel cg_fuel_blend(const struct cg_fuel *a, const struct cg_fuel *b,
                             double share)
{
    struct cg_fuel out = *a;
    double of_a = (1.0 - share) / cg_fuel_molar_mass(a);
    double of_b = share / cg_fuel_molar_mass(b), all = of_a + of_b;
    out.carbon = (of_a * a->carbon + of_b * b->carbon) / all;
    out.hydrogen = (of_a * a->hydrogen + of_b * b->hydrogen) / all;
    out.oxygen = (of_a * a->oxygen + of_b * b->oxygen) / all;
    out.heating_value +=
        share * (b->heating_value - a->heating_value);
    out.latent_heat += share * (b->latent_heat - a->latent_heat);
    out.density = 1.0 / ((1.0 - share) / a->density + share / b->density);
    for (int i = 0; i < 3; i++)
        out.vapour_cp[i] += share * (b->vapour_cp[i] - a->vapour_cp[i]);
    return out;
}
