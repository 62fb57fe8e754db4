#include "nitrous.h"

#include <math.h>

static double molar_mass(void)
{
    return cg_species_molar_mass(CG_N2O);
}

double cg_nitrous_decomposition(void)
{
    return CG_NITROUS_FORMATION / molar_mass();
}

double cg_nitrous_evaporation(double temperature)
{
    static const double at[] = {CG_NITROUS_BOILS, 273.0, 293.0,
                                CG_NITROUS_CRITICAL};
    static const double heat[] = {374e3, 233e3, 170e3, 0.0};
    int i = 0;
    while (i < 2 && temperature > at[i + 1])
        i++;
    double part = (temperature - at[i]) / (at[i + 1] - at[i]);
    return fmax(heat[i] + part * (heat[i + 1] - heat[i]), 0.0);
}

double cg_nitrous_oxygen_as_air(void)
{
    size_t count;
    const struct cg_fuel *any = cg_fuels(&count);
    double fresh[CG_SPECIES], air = 0.0;
    cg_fuel_fresh(any, 1.0, fresh);
    for (int s = 0; s < CG_FUEL; s++)
        air += fresh[s] * cg_species_molar_mass((enum cg_species)s);
    return 0.5 / molar_mass() * air / fresh[CG_O2];
}

double cg_nitrous_flow(const struct cg_fuel *fuel, double lambda, double power)
{
    /* Rich, the oxygen is the limit; lean, the fuel. */
    double burned = cg_nitrous_oxygen_as_air() /
                    (fmax(lambda, 1.0) * cg_fuel_stoichiometric(fuel));
    double heat = burned * fuel->heating_value + cg_nitrous_decomposition();
    return power / (CG_NITROUS_BRAKE * heat);
}
