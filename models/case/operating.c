#include "operating.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "brought.h"
#include "charger_row.h"
#include "outside.h"

#define AIR_CP 1005.0           /* [J/(kg K)], 300 K: NASA TM-4513 mixture */
#define STOICHIOMETRIC_LOAD 0.6 /* common practice, no source */

struct cg_operating cg_operating_at(const struct cg_case *c, double speed,
                                    double load)
{
    return (struct cg_operating){
        .speed = speed,
        .load = load,
        .heat_factor = 1.0,
        .coolant_temperature = cg_outside_temperature(c),
        .cooling_flow = cg_outside_flow(c, speed),
        .oil_temperature = c->cooling.oil_temperature,
        .lambda = NAN,
        .burn50_deg = NAN,
        .air_temperature = NAN,
        .soak = 0.0,
        .nitrous = 0.0};
}

struct cg_operating cg_operating_full(const struct cg_case *c)
{
    struct cg_operating at = cg_operating_at(c, c->engine.speed, 1.0);
    at.nitrous = cg_duty_nitrous(&c->duty);
    return at;
}

struct cg_operating cg_operating_of(const struct cg_case *c,
                                    const double of[CG_CHANNELS])
{
    const struct cg_moved_case *moved = &c->moved;
    struct cg_operating at = cg_operating_at(c, of[CG_CHANNEL_SPEED],
                                             of[CG_CHANNEL_LOAD]);
    if (!isnan(of[CG_CHANNEL_HEAT]))
        at.heat_factor = of[CG_CHANNEL_HEAT];
    if (!isnan(of[CG_CHANNEL_COOLANT]))
        at.coolant_temperature = of[CG_CHANNEL_COOLANT] + moved->coolant;
    if (!isnan(of[CG_CHANNEL_OIL]))
        at.oil_temperature = of[CG_CHANNEL_OIL] + moved->oil;
    at.lambda = of[CG_CHANNEL_LAMBDA] * c->scale.lambda;
    at.burn50_deg = of[CG_CHANNEL_BURN50] + moved->burn50_deg;
    at.air_temperature = of[CG_CHANNEL_AIR] + moved->air;
    if (!isnan(of[CG_CHANNEL_SOAK]))
        at.soak = of[CG_CHANNEL_SOAK];
    if (cg_air_cooled(c) && !isnan(of[CG_CHANNEL_WIND]))
        at.cooling_flow *= cg_outside_share(of[CG_CHANNEL_WIND]);
    if (!isnan(of[CG_CHANNEL_NITROUS]))
        at.nitrous = of[CG_CHANNEL_NITROUS];
    return at;
}

static double lambda_of_spark(const struct cg_case *c, double load)
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
    double full = in->ambient_pressure + in->boost;
    double shut =
        by_compression(c) ? in->ambient_pressure : in->closed_throttle;
    return shut + load * (full - shut);
}

static struct cg_charged charged(const struct cg_case *c, double load)
{
    const struct cg_charge_case *in = &c->charge;
    double ratio = fmax(manifold_at(c, load) / in->ambient_pressure, 1.0);
    const struct cg_charger_row row = {
        in->second_charger == CG_CHARGER_NONE ? 1 : 2,
        {in->compressor_efficiency, in->second_efficiency},
        in->split,
        in->between_effectiveness};
    if (in->charger == CG_CHARGER_NONE)
        ratio = 1.0;
    return cg_charger_row(&row, in->ambient_temperature, ratio);
}

double cg_operating_rise(const struct cg_case *c, double load)
{
    return charged(c, load).rise;
}

/* Work taken from the crankshaft [J/kg], and back pressure of turbines. */
static void set_drives(const struct cg_charge_case *in,
                       const struct cg_charged *row,
                       struct cg_charge_state *charge)
{
    const int drive[CG_CHARGERS] = {in->charger, in->second_charger};
    charge->compressor_work = charge->belt_work = 0.0;
    for (int i = 0; i < CG_CHARGERS; i++) {
        charge->compressor_work += row->work[i];
        if (drive[i] == CG_CHARGER_BELT)
            charge->belt_work += row->work[i];
        if (drive[i] == CG_CHARGER_TURBINE)
            charge->exhaust_pressure +=
                in->turbine_ratio * (row->pressure[i] * in->ambient_pressure);
    }
}

/* Of the air at the valve, over a constant [1]. */
static double density_at(const struct cg_case *c, double load)
{
    const struct cg_charge_case *in = &c->charge;
    return manifold_at(c, load) /
           (in->ambient_temperature + in->intake_heating +
            (1.0 - in->cooler_effectiveness) * cg_operating_rise(c, load));
}

/* Of the air that there is, with that share of full load's fuel. */
static double lambda_of_fuel(const struct cg_case *c, double load)
{
    double air = density_at(c, load) / density_at(c, 1.0);
    return fmin(c->fuel.lambda * air / fmax(load, 1e-9), CG_LAMBDA_MOST);
}

static double lambda_at(const struct cg_case *c, double load)
{
    return by_compression(c) ? lambda_of_fuel(c, load)
                             : lambda_of_spark(c, load);
}

double cg_lambda_most(const struct cg_case *c)
{
    return by_compression(c) ? CG_LAMBDA_MOST : CG_LAMBDA_SPARK_MOST;
}

/* What a soaked cooler gives back [K]. */
static double soaked(const struct cg_case *c, double soak)
{
    const struct cg_charge_case *in = &c->charge;
    return in->cooler_soak > 0.0 && soak > 0.0
               ? in->cooler_soak * in->cooler_effectiveness * soak *
                     cg_operating_rise(c, 1.0)
               : 0.0;
}

void cg_operating_charge(const struct cg_case *c,
                         const struct cg_operating *operating,
                         struct cg_charge_state *charge)
{
    const struct cg_charge_case *in = &c->charge;
    double manifold = manifold_at(c, operating->load);
    struct cg_charged row = charged(c, operating->load);
    charge->manifold_pressure = manifold;
    charge->lambda = isnan(operating->lambda) ? lambda_at(c, operating->load)
                                              : operating->lambda;
    double air = isnan(operating->air_temperature)
                     ? in->ambient_temperature +
                           (1.0 - in->cooler_effectiveness) * row.rise +
                           soaked(c, operating->soak)
                     : operating->air_temperature;
    charge->manifold_temperature = air + in->intake_heating -
                                   evaporation_drop(c, charge->lambda);
    charge->exhaust_pressure =
        in->ambient_pressure +
        in->exhaust_base * manifold / in->ambient_pressure;
    set_drives(in, &row, charge);
    cg_brought_set(c, operating, charge);
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
        (struct cg_knock_law){cg_brought_octane(c, input),
                              c->combustion.knock_delay *
                                  cg_brought_delay(input),
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
    input->brought = charge.brought;
    set_burn(c, fuel, boost, input);
    if (!isnan(operating->burn50_deg)) {
        input->burn50_deg = operating->burn50_deg;
        input->knock.retard_most = 0.0;
    }
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
