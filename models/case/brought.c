#include "brought.h"

#include <math.h>

#include "constants.h"
#include "fresh.h"
#include "nitrous.h"
#include "spray.h"

#define AIR_CP 1005.0    /* [J/(kg K)], 300 K: NASA TM-4513 mixture */
#define NITROUS_CP 850.0 /* [J/(kg K)], 260 K: gas.c */
#define LEAST_AIR 0.01   /* of its room; less is refused elsewhere */

double cg_brought_nitrous(const struct cg_case *c)
{
    const struct cg_fuel *fuel = cg_fuel_find(c->fuel.name);
    double own = c->nitrous.lambda;
    if (!(c->nitrous.power > 0.0) || fuel == NULL)
        return c->nitrous.flow;
    return cg_nitrous_flow(fuel, isnan(own) ? c->fuel.lambda : own,
                           c->nitrous.power);
}

/* One that evaporates before the valve, or comes as a gas. */
struct part {
    double mass;  /* [kg] */
    double mole;  /* [kg/mol] */
    double cp;    /* [J/(kg K)] */
    double from;  /* temperature it comes at [K] */
    double taken; /* by its evaporation [J/kg] */
};

enum { NITROUS, WATER, ALCOHOL, PARTS };

/* A cylinder's room for air, with the charge at 1 K [kg K]. */
static double room(const struct cg_case *c,
                   const struct cg_charge_state *charge)
{
    double area = 0.25 * CG_PI * c->engine.bore * c->engine.bore;
    return c->charge.volumetric_efficiency * charge->manifold_pressure * area *
           c->engine.stroke / cg_air_gas_constant();
}

static void set_masses(const struct cg_case *c,
                       const struct cg_operating *operating,
                       struct cg_charge_state *charge)
{
    struct cg_brought *brought = &charge->brought;
    const struct cg_spray_case *spray = &c->spray;
    double cycles = 0.5 * operating->speed * c->engine.cylinders;
    double rated = 0.5 * c->engine.speed * c->engine.cylinders;
    double rise =
        (operating->load - spray->from_load) / (1.0 - spray->from_load);
    double sprayed = spray->flow / rated * fmin(fmax(rise, 0.0), 1.0);
    *brought = (struct cg_brought){
        .nitrous = operating->nitrous > 0.0
                       ? operating->nitrous * cg_brought_nitrous(c) / cycles
                       : 0.0,
        .nitrous_lambda = isnan(c->nitrous.lambda)
                              ? charge->lambda
                              : c->nitrous.lambda * c->scale.lambda,
        .water = (1.0 - spray->alcohol) * sprayed,
        .alcohol = spray->alcohol * sprayed};
}

static void set_parts(const struct cg_case *c, const struct cg_brought *brought,
                      struct part *part)
{
    const struct cg_fuel *alcohol = cg_spray_alcohol();
    const struct cg_nitrous_case *nitrous = &c->nitrous;
    double outside = c->charge.ambient_temperature;
    double before = c->spray.before;
    bool liquid = nitrous->state == CG_NITROUS_LIQUID;
    part[NITROUS] =
        (struct part){brought->nitrous, cg_species_molar_mass(CG_N2O),
                      NITROUS_CP, nitrous->bottle,
                      liquid ? cg_nitrous_evaporation(nitrous->bottle) : 0.0};
    part[WATER] =
        (struct part){before * brought->water, cg_species_molar_mass(CG_H2O),
                      CG_WATER_VAPOUR_CP, outside, CG_WATER_EVAPORATION};
    part[ALCOHOL] =
        (struct part){before * brought->alcohol, cg_fuel_molar_mass(alcohol),
                      CG_ALCOHOL_VAPOUR_CP, outside, alcohol->latent_heat};
}

/* Heat that the engine's own fuel takes before the valve, over what that of the
 * air alone would: more for nitrous, less where alcohol takes its place [J]. */
static double own_fuel(const struct cg_case *c, const struct cg_fuel *fuel,
                       const struct cg_brought *brought)
{
    double need = cg_fuel_stoichiometric(fuel);
    double more = brought->nitrous * cg_nitrous_oxygen_as_air() /
                  (brought->nitrous_lambda * need);
    double less =
        brought->alcohol * cg_fuel_stoichiometric(cg_spray_alcohol()) / need;
    return c->charge.evaporation * fuel->latent_heat * (more - less);
}

/* Temperature and air hang on each other; colder air is more of it, which
 * damps, so that a fixed point is found in few steps. */
static void mix(const struct part *part, double fuel, double all,
                struct cg_charge_state *charge)
{
    enum { MOST = 60 };
    double before = charge->manifold_temperature, t = before;
    double displaced = 0.0, heat = -fuel, capacity = 0.0;
    double air_mole = CG_GAS_CONSTANT / cg_air_gas_constant();
    for (int i = 0; i < PARTS; i++) {
        displaced += part[i].mass * air_mole / part[i].mole;
        heat += part[i].mass * (part[i].cp * part[i].from - part[i].taken);
        capacity += part[i].mass * part[i].cp;
    }
    for (int i = 0; i < MOST; i++) {
        double air =
            AIR_CP * fmax(all / t - displaced, LEAST_AIR * all / before);
        double next = fmax((air * before + heat) / (air + capacity), 1.0);
        double change = next - t;
        t = next;
        if (fabs(change) < 1e-11 * t)
            break;
    }
    charge->manifold_temperature = t;
    charge->brought.displaced = displaced;
}

void cg_brought_set(const struct cg_case *c,
                    const struct cg_operating *operating,
                    struct cg_charge_state *charge)
{
    const struct cg_fuel *fuel = cg_fuel_find(c->fuel.name);
    struct cg_brought *brought = &charge->brought;
    struct part part[PARTS];
    *brought = (struct cg_brought){.nitrous = 0.0};
    if (fuel == NULL || !(operating->nitrous > 0.0 || c->spray.flow > 0.0))
        return;
    set_masses(c, operating, charge);
    if (!(brought->nitrous + brought->water + brought->alcohol > 0.0))
        return;
    set_parts(c, brought, part);
    mix(part, own_fuel(c, fuel, brought), room(c, charge), charge);
    double whole = brought->water * CG_WATER_EVAPORATION +
                   brought->alcohol * cg_spray_alcohol()->latent_heat;
    brought->closed = c->spray.closed * whole;
    brought->entering =
        fmax(1.0 - c->spray.before - c->spray.closed, 0.0) * whole;
}

double cg_brought_octane(const struct cg_case *c,
                         const struct cg_cycle_input *input)
{
    const struct cg_fuel *alcohol = cg_spray_alcohol();
    if (!(input->brought.alcohol > 0.0))
        return c->fuel.octane;
    double share = input->brought.alcohol / cg_fresh_fuel_mass(input);
    return c->fuel.octane + share * (alcohol->octane - c->fuel.octane);
}

double cg_brought_delay(const struct cg_cycle_input *input)
{
    const struct cg_brought *brought = &input->brought;
    if (!(brought->nitrous > 0.0))
        return 1.0;
    double air_mole = CG_GAS_CONSTANT / cg_air_gas_constant();
    double nitrous = brought->nitrous / cg_species_molar_mass(CG_N2O);
    double as_air = brought->nitrous * cg_nitrous_oxygen_as_air() / air_mole;
    double air = cg_fresh_air(input) / air_mole;
    return (air + nitrous) / (air + as_air);
}

double cg_brought_air_left(const struct cg_case *c,
                           const struct cg_charge_state *charge)
{
    double all = room(c, charge) / charge->manifold_temperature;
    return 1.0 - charge->brought.displaced / all;
}

double cg_brought_humidity(const struct cg_case *c,
                           const struct cg_charge_state *charge)
{
    const struct cg_brought *brought = &charge->brought;
    double t = charge->manifold_temperature;
    double all = room(c, charge) / t * cg_air_gas_constant() / CG_GAS_CONSTANT;
    double pressure = c->spray.before * charge->manifold_pressure / all;
    double water = brought->water / cg_species_molar_mass(CG_H2O) * pressure;
    double alcohol =
        brought->alcohol / cg_fuel_molar_mass(cg_spray_alcohol()) * pressure;
    return fmax(water / cg_water_saturation(t),
                alcohol / cg_alcohol_saturation(t));
}
