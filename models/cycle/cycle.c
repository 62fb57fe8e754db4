#include "cycle.h"

#include <math.h>
#include <string.h>

#include "cycle_pass.h"
#include "fresh.h"
#include "nitrous.h"
#include "zone.h"

/* Temperature at which a mixture has an enthalpy [J/kg], by Newton. */
static double temperature_of(const struct cg_zone *zone, double burned,
                             double enthalpy, double temperature)
{
    for (int i = 0; i < 20; i++) {
        double h =
            (1.0 - burned) * cg_mixture_enthalpy(&zone->fresh, temperature) +
            burned * cg_mixture_enthalpy(&zone->burned, temperature);
        double cp = (1.0 - burned) * cg_mixture_cp(&zone->fresh, temperature) +
                    burned * cg_mixture_cp(&zone->burned, temperature);
        double change = (enthalpy - h) / cp;
        temperature += change;
        if (fabs(change) < 1e-9 * temperature)
            break;
    }
    return temperature;
}

/* Mean temperature, by enthalpy, of all that left: what came back has left
 * twice. */
static double exhaust_temperature(const struct cg_pass *pass)
{
    const struct cg_zone *zone = &pass->zone;
    const double *open = pass->edge[CG_LEG_BLOW_DOWN];
    const double *end = pass->edge[CG_LEGS];
    double burned = open[CG_ZONE_BURNED] / open[CG_ZONE_MASS];
    double port = zone->port_temperature, back = end[CG_ZONE_BACK_FLOW];
    double h = (1.0 - burned) * cg_mixture_enthalpy(&zone->fresh, port) +
               burned * cg_mixture_enthalpy(&zone->burned, port);
    double left = open[CG_ZONE_MASS] - end[CG_ZONE_MASS] + back;
    double carried =
        open[CG_ZONE_ENTHALPY] - end[CG_ZONE_ENTHALPY] + back * h;
    return temperature_of(zone, burned, carried / left, port);
}

/* Heating value of what leaves, from the fuel that came in: the share `burned`
 * (which may pass 1 by what the residual still changes)
 * that met the flame leaves CO, H2 and the fuel it did not burn; the rest
 * leaves whole. */
static double unburned_energy(const struct cg_cycle_input *input,
                              double fuel_mass, double burned)
{
    struct cg_fuel fuel = cg_fresh_fuel(input);
    double moles[CG_SPECIES];
    cg_fresh_moles(input, &fuel, moles);
    double molar_mass = cg_fuel_molar_mass(&fuel);
    double vapour = molar_mass * (fuel.heating_value + fuel.latent_heat);
    double whole = vapour + moles[CG_N2O] * CG_NITROUS_FORMATION;
    cg_fuel_burn(&fuel, input->combustion_efficiency, moles);
    double per_mole = burned * (moles[CG_CO] * cg_fuel_co_heat() +
                                moles[CG_H2] * cg_fuel_hydrogen_heat() +
                                moles[CG_FUEL] * vapour +
                                moles[CG_N2O] * CG_NITROUS_FORMATION) +
                      (1.0 - burned) * whole;
    return fuel_mass / molar_mass * per_mole;
}

static void sum_masses(const struct cg_cycle_input *input,
                       const struct cg_pass *pass, struct cg_cycle *cycle)
{
    cycle->air_mass = cg_fresh_air(input);
    cycle->fuel_mass = cg_fresh_fuel_mass(input);
    cycle->residual = (struct cg_residual){
        .temperature = pass->residual[CG_RESIDUAL_TEMPERATURE],
        .mass = pass->residual[CG_RESIDUAL_MASS],
        .burned = pass->residual[CG_RESIDUAL_BURNED],
        .law_share = pass->zone.law_share,
        .knock = pass->knock};
    memcpy(cycle->residual.put_in, pass->put_in, sizeof pass->put_in);
    memcpy(cycle->residual.came_out, pass->came_out, sizeof pass->came_out);
    cycle->residual_mass = pass->edge[CG_LEG_INTAKE][CG_ZONE_MASS];
    cycle->trapped_mass = pass->edge[CG_LEG_COMPRESSION][CG_ZONE_MASS];
    cycle->fuel_energy =
        cycle->fuel_mass * cg_fresh_fuel(input).heating_value +
        input->brought.nitrous * cg_nitrous_decomposition();
}

static void sum_energies(const struct cg_cycle_input *input,
                         const struct cg_pass *pass, struct cg_cycle *cycle)
{
    int bottom = pass->leg[CG_LEG_BOTTOM].from_deg < -180.0
                     ? CG_LEG_COMPRESSION
                     : CG_LEG_BOTTOM;
    const double *end = pass->edge[CG_LEGS];
    cycle->gross_work = pass->edge[CG_LEG_LATE_BLOW_DOWN][CG_ZONE_WORK] -
                        pass->edge[bottom][CG_ZONE_WORK];
    cycle->pumping_work = end[CG_ZONE_WORK] - cycle->gross_work;
    cycle->heat_head = end[CG_ZONE_HEAD];
    cycle->heat_piston = end[CG_ZONE_PISTON];
    cycle->heat_liner = end[CG_ZONE_LINER];
    cycle->heat_evaporation =
        input->latent_walls * (cycle->fuel_mass - input->brought.alcohol) *
        input->fuel->latent_heat;
    cycle->heat_crevice = end[CG_ZONE_CREVICE];
    cycle->imep_gross = cycle->gross_work / cg_crank_swept(&input->crank);
    cycle->imep_net = end[CG_ZONE_WORK] / cg_crank_swept(&input->crank);

    cycle->exhaust_temperature = exhaust_temperature(pass);
    double burned = pass->edge[CG_LEG_BLOW_DOWN][CG_ZONE_BURNED] -
                    pass->edge[CG_LEG_BURN][CG_ZONE_BURNED];
    double charge = cycle->air_mass + cycle->fuel_mass +
                    input->brought.nitrous + input->brought.water;
    cycle->unburned_energy = unburned_energy(input, cycle->fuel_mass,
                                             fmin(burned / charge, 1.0));
    cycle->energy_residual =
        (end[CG_ZONE_ENTHALPY] - end[CG_ZONE_WORK] - end[CG_ZONE_HEAD] -
         end[CG_ZONE_PISTON] - end[CG_ZONE_LINER] - end[CG_ZONE_CREVICE]) /
        cycle->fuel_energy;
}

/* The peak by a parabola through the highest point and its neighbours. */
static void find_peak(struct cg_cycle *cycle)
{
    const struct cg_cycle_point *point = cycle->point;
    size_t top = 1;
    cycle->peak_rise = 0.0;
    for (size_t i = 1; i + 1 < cycle->points; i++) {
        if (point[i].pressure > point[top].pressure)
            top = i;
        cycle->peak_rise =
            fmax(cycle->peak_rise,
                 (point[i + 1].pressure - point[i].pressure) /
                     (point[i + 1].crank_deg - point[i].crank_deg));
    }
    double left = point[top].crank_deg - point[top - 1].crank_deg;
    double right = point[top + 1].crank_deg - point[top].crank_deg;
    double fall = (point[top].pressure - point[top - 1].pressure) / left;
    double rise = (point[top + 1].pressure - point[top].pressure) / right;
    double curve = (rise - fall) / (left + right);
    double slope = (fall * right + rise * left) / (left + right);
    double shift = curve < 0.0 ? -0.5 * slope / curve : 0.0;
    shift = fmax(-left, fmin(shift, right));
    cycle->peak_pressure_deg = point[top].crank_deg + shift;
    cycle->peak_pressure =
        point[top].pressure + shift * (slope + shift * curve);
}

/* Where half of an injected fuel is burned [deg], by halving. */
static double half_burned(const struct cg_zone *zone)
{
    double low = zone->wiebe.start_deg, high = low + zone->wiebe.duration_deg;
    for (int i = 0; i < 40; i++) {
        double middle = 0.5 * (low + high);
        if (cg_zone_burned(zone, middle) < 0.5)
            low = middle;
        else
            high = middle;
    }
    return low;
}

static void sum_burn(const struct cg_cycle_input *input,
                     const struct cg_pass *pass, struct cg_cycle *cycle)
{
    cycle->burn50_deg = input->injection.on ? half_burned(&pass->zone)
                                            : input->burn50_deg;
    cycle->ignition_deg = pass->zone.wiebe.start_deg;
    cycle->premixed_share = pass->zone.premixed_share;
}

static void sum_knock(const struct cg_cycle_input *input,
                      const struct cg_pass *pass, struct cg_cycle *cycle)
{
    cycle->knock_integral = cycle->knock_unretarded = NAN;
    if (!(input->knock.octane > 0.0))
        return;
    if (input->knock.retard_most > 0.0)
        cycle->burn50_deg = pass->knock.burn50_deg;
    cycle->knock_integral = cg_pass_knock_integral(pass, cycle);
    if (!pass->rough) {
        struct cg_knock_limit limit;
        cg_pass_knock(pass, &limit);
        cycle->knock_unretarded =
            cg_knock_limit_integral(&limit, input->burn50_deg);
    }
}

enum cg_status cg_cycle_run(const struct cg_cycle_input *input,
                            struct cg_cycle *cycle, struct cg_error *error)
{
    struct cg_pass pass;
    cycle->points = 0;
    enum cg_status status = cg_cycle_check(input, error);
    if (status != CG_OK)
        return status;
    cg_pass_set(&pass, input);
    status = cg_pass_settle(&pass, cycle, error);
    if (status != CG_OK) {
        cycle->points = 0;
        return status;
    }
    sum_masses(input, &pass, cycle);
    sum_energies(input, &pass, cycle);
    find_peak(cycle);
    sum_burn(input, &pass, cycle);
    sum_knock(input, &pass, cycle);
    return CG_OK;
}
