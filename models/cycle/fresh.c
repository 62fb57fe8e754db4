#include "fresh.h"

#include <math.h>

#include "nitrous.h"
#include "spray.h"

double cg_air_gas_constant(void)
{
    struct cg_mixture air;
    double moles[CG_SPECIES];
    size_t count;
    cg_fuel_fresh(cg_fuels(&count), 1.0, moles);
    moles[CG_FUEL] = 0.0;
    cg_mixture_set(&air, moles, 0.0, NULL);
    return air.gas_constant;
}

double cg_fresh_air(const struct cg_cycle_input *input)
{
    return input->volumetric_efficiency * input->manifold_pressure *
               cg_crank_swept(&input->crank) /
               (cg_air_gas_constant() * input->manifold_temperature) -
           input->brought.displaced;
}

/* Alcohol is part of what lambda says, so that the fuel's own mass is what is
 * left of the need: the blend's share of it follows. */
struct cg_fuel cg_fresh_fuel(const struct cg_cycle_input *input)
{
    const struct cg_brought *brought = &input->brought;
    const struct cg_fuel *own = input->fuel;
    if (!(brought->alcohol > 0.0))
        return *own;
    const struct cg_fuel *alcohol = cg_spray_alcohol();
    double air = cg_fresh_air(input) / input->lambda;
    double equal = cg_nitrous_oxygen_as_air() * brought->nitrous /
                   fmax(brought->nitrous_lambda, 0.1);
    double left =
        air + equal - brought->alcohol * cg_fuel_stoichiometric(alcohol);
    double mass = left / cg_fuel_stoichiometric(own);
    return cg_fuel_blend(own, alcohol,
                         brought->alcohol / (brought->alcohol + mass));
}

/* Per mass of air. */
static double fuel_share(const struct cg_cycle_input *input,
                         const struct cg_fuel *fuel)
{
    const struct cg_brought *brought = &input->brought;
    double need = cg_fuel_stoichiometric(fuel);
    double share = 1.0 / (input->lambda * need);
    if (brought->nitrous > 0.0)
        share += cg_nitrous_oxygen_as_air() * brought->nitrous /
                 (brought->nitrous_lambda * need * cg_fresh_air(input));
    return share;
}

double cg_fresh_per_air(const struct cg_cycle_input *input)
{
    struct cg_fuel fuel = cg_fresh_fuel(input);
    double rest = input->brought.nitrous + input->brought.water;
    double share = 1.0 + fuel_share(input, &fuel);
    return rest > 0.0 ? share + rest / cg_fresh_air(input) : share;
}

double cg_fresh_fuel_mass(const struct cg_cycle_input *input)
{
    return cg_fresh_air(input) * (cg_fresh_per_air(input) - 1.0) -
           input->brought.nitrous - input->brought.water;
}

void cg_fresh_moles(const struct cg_cycle_input *input,
                    const struct cg_fuel *fuel, double *moles)
{
    const struct cg_brought *brought = &input->brought;
    double lambda = input->lambda;
    if (brought->nitrous > 0.0)
        lambda = 1.0 / (fuel_share(input, fuel) * cg_fuel_stoichiometric(fuel));
    cg_fuel_fresh(fuel, lambda, moles);
    if (!(brought->nitrous + brought->water > 0.0))
        return;
    double fuel_moles = cg_fresh_air(input) * fuel_share(input, fuel) /
                        cg_fuel_molar_mass(fuel);
    moles[CG_N2O] =
        brought->nitrous / cg_species_molar_mass(CG_N2O) / fuel_moles;
    moles[CG_H2O] = brought->water / cg_species_molar_mass(CG_H2O) / fuel_moles;
}
