#include "operating.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#define AIR_CP 1005.0            /* [J/(kg K)], 300 K: NASA TM-4513 mixture */
#define AIR_EXPONENT (0.4 / 1.4) /* (gamma - 1)/gamma of air */
#define STOICHIOMETRIC_LOAD 0.6  /* common practice, no source */

static double lambda_at(const struct cg_case *c, double load)
{
    if (load <= STOICHIOMETRIC_LOAD)
        return 1.0;
    double rise = (load - STOICHIOMETRIC_LOAD) / (1.0 - STOICHIOMETRIC_LOAD);
    return 1.0 + rise * (c->fuel.lambda - 1.0);
}

static double evaporation_drop(const struct cg_case *c, double lambda)
{
    const struct cg_fuel *fuel = cg_fuel_find(c->fuel.name);
    if (fuel == NULL)
        return 0.0;
    double fuel_to_air = 1.0 / (lambda * cg_fuel_stoichiometric(fuel));
    return c->charge.evaporation * fuel_to_air * fuel->latent_heat / AIR_CP;
}

static bool by_compression(const struct cg_case *c)
{
    return c->combustion.ignition == CG_IGNITION_COMPRESSION;
}

static double manifold_at(const struct cg_case *c, double load)
{
    const struct cg_charge_case *in = &c->charge;
    double shut =
        by_compression(c) ? in->ambient_pressure : in->closed_throttle;
    double full = in->ambient_pressure + in->boost;
    return shut + load * (full - shut);
}

/* Of the air in the compressor [K]. */
static double rise_at(const struct cg_case *c, double manifold)
{
    const struct cg_charge_case *in = &c->charge;
    double ratio = fmax(manifold / in->ambient_pressure, 1.0);
    if (in->charger == CG_CHARGER_NONE)
        ratio = 1.0;
    return in->ambient_temperature * (pow(ratio, AIR_EXPONENT) - 1.0) /
           in->compressor_efficiency;
}

static double density_at(const struct cg_case *c, double load)
{
    const struct cg_charge_case *in = &c->charge;
    double manifold = manifold_at(c, load);
    return manifold / (in->ambient_temperature + in->intake_heating +
                       (1.0 - in->cooler_effectiveness) * rise_at(c, manifold));
}

/* Of the air that there is, with that share of full load's fuel. */
static double lambda_of_fuel(const struct cg_case *c, double load)
{
    double air = density_at(c, load) / density_at(c, 1.0);
    return fmin(c->fuel.lambda * air / fmax(load, 1e-9), CG_LAMBDA_MOST);
}

void cg_operating_charge(const struct cg_case *c,
                         const struct cg_operating *operating,
                         struct cg_charge_state *charge)
{
    const struct cg_charge_case *in = &c->charge;
    double manifold = manifold_at(c, operating->load);
    double ratio = fmax(manifold / in->ambient_pressure, 1.0);
    double boost = (ratio - 1.0) * in->ambient_pressure;
    double rise = rise_at(c, manifold);

    charge->manifold_pressure = manifold;
    charge->lambda = by_compression(c) ? lambda_of_fuel(c, operating->load)
                                       : lambda_at(c, operating->load);
    charge->compressor_work = AIR_CP * rise;
    charge->manifold_temperature =
        in->ambient_temperature + (1.0 - in->cooler_effectiveness) * rise +
        in->intake_heating - evaporation_drop(c, charge->lambda);
    charge->exhaust_pressure =
        in->ambient_pressure +
        in->exhaust_base * manifold / in->ambient_pressure;
    if (in->charger == CG_CHARGER_TURBINE)
        charge->exhaust_pressure += in->turbine_ratio * boost;
}

/* When the fuel fires by itself, or, where a spark does, as late as knock makes
 * it or by the user's rule. */
static void set_burn(const struct cg_case *c, const struct cg_fuel *fuel,
                     double boost, struct cg_cycle_input *input)
{
    input->burn50_deg = c->combustion.burn50_deg;
    input->injection = (struct cg_injection){by_compression(c),
                                             c->combustion.injection_deg,
                                             c->combustion.ignition_delay};
    if (input->injection.on)
        return;
    double retard = c->combustion.retard_deg_per_100kPa *
                    fuel->retard_share * boost / 1e5;
    bool by_knock = isnan(retard);
    input->burn50_deg = c->combustion.burn50_deg +
                        (by_knock ? 0.0 : fmin(retard, CG_RETARD_MOST));
    input->knock =
        (struct cg_knock_law){c->fuel.octane, c->combustion.knock_delay,
                              by_knock ? CG_RETARD_MOST : 0.0};
}

enum cg_status cg_operating_cycle_input(const struct cg_case *c,
                                        const struct cg_operating *operating,
                                        struct cg_cycle_input *input,
                                        struct cg_error *error)
{
    struct cg_charge_state charge;
    cg_operating_charge(c, operating, &charge);
    const struct cg_fuel *fuel = cg_fuel_find(c->fuel.name);
    if (fuel == NULL)
        return cg_error_set(error, CG_BAD_INPUT, "fuel.name: no fuel \"%s\"",
                            c->fuel.name);
    const struct cg_heat_transfer *correlation =
        cg_heat_transfer_find(c->combustion.heat_transfer);
    if (correlation == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "combustion.heat_transfer: no correlation \"%s\"",
                            c->combustion.heat_transfer);

    double boost =
        fmax(charge.manifold_pressure - c->charge.ambient_pressure, 0.0);
    memset(input, 0, sizeof *input);
    input->crank = (struct cg_crank){c->engine.bore, c->engine.stroke,
                                     c->engine.rod,
                                     c->engine.compression_ratio};
    input->speed = operating->speed;
    input->manifold_pressure = charge.manifold_pressure;
    input->manifold_temperature = charge.manifold_temperature;
    input->exhaust_pressure = charge.exhaust_pressure;
    input->volumetric_efficiency = c->charge.volumetric_efficiency;
    input->fuel = fuel;
    input->lambda = charge.lambda;
    set_burn(c, fuel, boost, input);
    input->burn_duration_deg = c->combustion.burn_duration_deg;
    input->combustion_efficiency = c->combustion.efficiency;
    double liquid = by_compression(c) ? 0.0 : 1.0 - c->charge.evaporation;
    input->latent_walls = liquid * c->charge.wall_evaporation;
    input->latent_charge = liquid - input->latent_walls;
    input->correlation = correlation;
    input->heat_factor = c->combustion.heat_factor * operating->heat_factor;
    input->chamber_area_ratio = c->combustion.chamber_area;
    input->flame = !by_compression(c);
    input->intake_close_deg = -140.0;
    input->exhaust_open_deg = 130.0;
    input->step_deg = c->solver.crank_step_deg;
    return CG_OK;
}

double cg_friction_mep(double peak_pressure, double piston_speed)
{
    return 0.4e5 + 0.005 * peak_pressure + 0.09e5 * piston_speed +
           0.0009e5 * piston_speed * piston_speed;
}

double cg_friction_mep_compression(double peak_pressure, double piston_speed)
{
    return 0.137e5 + 0.005 * peak_pressure + 0.162e5 * piston_speed;
}
