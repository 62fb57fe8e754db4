#include "cycle.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "constants.h"
#include "zone.h"

/* A stretch of crank angle in one phase, from edge to edge: intake closing,
 * start of combustion and exhaust opening are kinks and must be edges. */
struct leg {
    enum cg_phase phase;
    double from_deg, to_deg;
    double step_deg;
    double long_step_deg; /* in passes that only bring the residual near */
};

enum {
    LEG_INTAKE,
    LEG_BOTTOM, /* between bottom centre and intake closing, whichever first */
    LEG_COMPRESSION,
    LEG_BURN,
    LEG_EXPANSION, /* from 99.9 % burned */
    LEG_BLOW_DOWN,
    LEG_EXHAUST,
    LEGS
};

/* State of the residual gas at top dead centre, which a cycle hands on. */
enum { R_TEMPERATURE, R_MASS, R_BURNED, R_VARIABLES };

struct run {
    struct cg_zone zone;
    struct leg leg[LEGS];
    double residual[R_VARIABLES];
    double edge[LEGS + 1][CG_ZONE_VARIABLES]; /* at the start of each leg */
};

/* A motored pressure by a fixed exponent: the correlations were fitted with
 * motored records, whose exponent is near this.  Common practice. */
static const double motored_exponent = 1.32;

/* Least number of steps in the burn, to hold the energy balance to 1e-6. */
static const double burn_steps = 120.0;

static const double coldest = 150.0, hottest = 6000.0; /* of the gas [K] */

static double air_gas_constant(void)
{
    struct cg_mixture air;
    double moles[CG_SPECIES];
    size_t count;
    cg_fuel_fresh(cg_fuels(&count), 1.0, moles);
    moles[CG_FUEL] = 0.0;
    cg_mixture_set(&air, moles, 0.0, NULL);
    return air.gas_constant;
}

/* Air taken in [kg]. */
static double air_mass(const struct cg_cycle_input *input)
{
    return input->volumetric_efficiency * input->manifold_pressure *
           cg_crank_swept(&input->crank) /
           (air_gas_constant() * input->manifold_temperature);
}

/* Fresh charge over air, by mass. */
static double charge_per_air(const struct cg_cycle_input *input)
{
    return 1.0 + 1.0 / (input->lambda * cg_fuel_stoichiometric(input->fuel));
}

static void set_mixtures(const struct cg_cycle_input *input,
                         struct cg_zone *zone)
{
    struct cg_poly vapour;
    double moles[CG_SPECIES];
    double fuel_mass = cg_fuel_molar_mass(input->fuel);
    cg_fuel_poly(input->fuel, &vapour);
    cg_fuel_fresh(input->fuel, input->lambda, moles);
    cg_mixture_set(&zone->fresh, moles, fuel_mass, &vapour);
    cg_fuel_burned(input->fuel, input->lambda, input->combustion_efficiency,
                   moles);
    cg_mixture_set(&zone->burned, moles, fuel_mass, &vapour);
}

static void set_zone(const struct cg_cycle_input *input, struct cg_zone *zone)
{
    *zone = (struct cg_zone){
        .correlation = input->correlation,
        .heat_factor = input->heat_factor,
        .head_temperature = input->head_temperature,
        .piston_temperature = input->piston_temperature,
        .liner_temperature = input->liner_temperature,
        .wiebe = cg_wiebe_from_burn(input->burn50_deg,
                                    input->burn_duration_deg),
        .exhaust_pressure = input->exhaust_pressure,
        .exhaust_open_deg = input->exhaust_open_deg,
        .motored_exponent = motored_exponent,
    };
    cg_zone_shape(zone, &input->crank, input->speed, input->head_area_ratio);
    set_mixtures(input, zone);
    double inflow_end = fmin(input->intake_close_deg, -180.0);
    double uncovered = cg_crank_volume(&input->crank, inflow_end) -
                       cg_crank_clearance(&input->crank);
    zone->intake_density =
        air_mass(input) * charge_per_air(input) / uncovered;
    zone->intake_enthalpy =
        cg_mixture_enthalpy(&zone->fresh, input->manifold_temperature);
}

static void set_legs(const struct cg_cycle_input *input, struct run *run)
{
    double close = input->intake_close_deg, bottom = -180.0;
    double start = run->zone.wiebe.start_deg;
    double open = input->exhaust_open_deg, step = input->step_deg;
    double burnt = fmin(start + run->zone.wiebe.duration_deg, open);
    double fine = fmin(step, run->zone.wiebe.duration_deg / burn_steps);
    enum cg_phase between =
        close > bottom ? CG_PHASE_LATE_INTAKE : CG_PHASE_COMPRESSION;
    const struct leg legs[LEGS] = {
        {CG_PHASE_INTAKE, -360.0, fmin(close, bottom), 2 * step, 8.0},
        {between, fmin(close, bottom), fmax(close, bottom), 2 * step, 10.0},
        {CG_PHASE_COMPRESSION, fmax(close, bottom), start, 2 * step, 10.0},
        {CG_PHASE_BURN, start, burnt, fine, 6.0 * fine},
        {CG_PHASE_BURN, burnt, open, 2 * step, 6.0},
        {CG_PHASE_EXHAUST, open, 180.0, step, 4.0},
        {CG_PHASE_EXHAUST, 180.0, 360.0, 2 * step, 4.0},
    };
    memcpy(run->leg, legs, sizeof legs);
}

/* The index of the leg that starts at intake closing. */
static int closing_leg(const struct run *run)
{
    return run->leg[LEG_BOTTOM].phase == CG_PHASE_COMPRESSION
               ? LEG_BOTTOM
               : LEG_COMPRESSION;
}

static void record_point(struct cg_cycle *cycle,
                         const struct cg_zone_node *node, const double *y,
                         const struct cg_zone_gas *gas, double burned)
{
    cycle->point[cycle->points++] = (struct cg_cycle_point){
        .crank_deg = node->angle_deg,
        .pressure = gas->pressure,
        .temperature = y[CG_ZONE_TEMPERATURE],
        .coefficient = gas->coefficient,
        .depth = node->depth,
        .burned = burned,
    };
}

/* Runs one leg. */
static enum cg_status run_leg(const struct cg_zone *zone,
                              const struct leg *leg, bool fine, double *y,
                              struct cg_cycle *cycle, struct cg_error *error)
{
    double length = leg->to_deg - leg->from_deg;
    double step = fine ? leg->step_deg : leg->long_step_deg;
    int steps = (int)ceil(length / step - 1e-9);
    double half = 0.5 * length / steps;
    struct cg_zone_node node[3];
    struct cg_zone_gas gas;

    cg_zone_node(zone, leg->phase, leg->from_deg, &node[2]);
    for (int i = 0; i < steps; i++) {
        double burned = 0.0;
        if (leg->phase >= CG_PHASE_BURN)
            burned = cg_wiebe_burned(&zone->wiebe,
                                     fmin(node[2].angle_deg,
                                          zone->exhaust_open_deg));
        double before[CG_ZONE_VARIABLES];
        memcpy(before, y, sizeof before);
        node[0] = node[2];
        cg_zone_node(zone, leg->phase, leg->from_deg + half * (2 * i + 1),
                     &node[1]);
        cg_zone_node(zone, leg->phase, leg->from_deg + half * (2 * i + 2),
                     &node[2]);
        cg_zone_step(zone, leg->phase, node, y, &gas);
        double t = y[CG_ZONE_TEMPERATURE];
        if (!(t >= coldest && t <= hottest) || !(y[CG_ZONE_MASS] > 0.0))
            return cg_error_set(error, CG_NUMERICAL,
                                "gas at %g K at %.1f deg crank (%g to %g K)", t,
                                node[2].angle_deg, coldest, hottest);
        if (fine)
            record_point(cycle, &node[0], before, &gas, burned);
    }
    return CG_OK;
}

/* One cycle from top centre to top centre; not `fine`: in long steps, and no
 * record. */
static enum cg_status run_pass(struct run *run, bool fine,
                               struct cg_cycle *cycle, struct cg_error *error)
{
    struct cg_zone *zone = &run->zone;
    double y[CG_ZONE_VARIABLES] = {
        [CG_ZONE_TEMPERATURE] = run->residual[R_TEMPERATURE],
        [CG_ZONE_MASS] = run->residual[R_MASS],
        [CG_ZONE_BURNED] = run->residual[R_BURNED],
    };
    cycle->points = 0;
    for (int i = 0; i < LEGS; i++) {
        memcpy(run->edge[i], y, sizeof y);
        if (i == closing_leg(run))
            cg_zone_close(zone, run->leg[i].from_deg, y);
        enum cg_status status =
            run_leg(zone, &run->leg[i], fine, y, cycle, error);
        if (status != CG_OK)
            return status;
    }
    memcpy(run->edge[LEGS], y, sizeof y);
    return CG_OK;
}

/* What the cycle hands on, out of the state at its end. */
static void residual_of(const double *y, double *residual)
{
    residual[R_TEMPERATURE] = y[CG_ZONE_TEMPERATURE];
    residual[R_MASS] = y[CG_ZONE_MASS];
    residual[R_BURNED] = y[CG_ZONE_BURNED];
}

static void guess_residual(struct run *run)
{
    const struct cg_zone *zone = &run->zone;
    double t = 1100.0;
    double mass = zone->exhaust_pressure * cg_crank_clearance(&zone->crank) /
                  (zone->burned.gas_constant * t);
    run->residual[R_TEMPERATURE] = t;
    run->residual[R_MASS] = run->residual[R_BURNED] = mass;
}

/* Fixed point x = g(x) of the residual's state in relative units.  The port
 * pressure ties its mass to its temperature, so g moves along one direction
 * whatever x does, and one secant pair gives nearly all of its derivative:
 * J = dg dx'/|dx|2 (C. G. Broyden, "A class of methods for solving nonlinear
 * simultaneous equations", 1965). */
struct fixed_point {
    double x[R_VARIABLES], g[R_VARIABLES];   /* of the pass before */
    double dx[R_VARIABLES], dg[R_VARIABLES]; /* last useful pair, relative */
    int passes;
};

static double dot(const double *a, const double *b)
{
    double sum = 0.0;
    for (int i = 0; i < R_VARIABLES; i++)
        sum += a[i] * b[i];
    return sum;
}

/* Moves run->residual on from x to x + (I - J)^-1 (g - x), and returns the
 * largest relative change over the pass just run. */
static double advance(struct run *run, struct fixed_point *point)
{
    double *x = run->residual, g[R_VARIABLES], r[R_VARIABLES], change = 0.0;
    residual_of(run->edge[LEGS], g);
    for (int i = 0; i < R_VARIABLES; i++) {
        if (point->passes > 0) {
            point->dx[i] = (x[i] - point->x[i]) / g[i];
            point->dg[i] = (g[i] - point->g[i]) / g[i];
        }
        r[i] = 1.0 - x[i] / g[i];
        change = fmax(change, fabs(r[i]));
    }
    double length = dot(point->dx, point->dx);
    double slope = length > 0.0 ? dot(point->dx, point->dg) / length : 0.0;
    double gain = length > 0.0 ? dot(point->dx, r) / length : 0.0;
    gain /= 1.0 - fmax(-0.9, fmin(slope, 0.9));
    for (int i = 0; i < R_VARIABLES; i++) {
        point->x[i] = x[i];
        point->g[i] = g[i];
        x[i] = g[i] * (1.0 + gain * point->dg[i]);
    }
    point->passes++;
    return change;
}

/* Passes with long steps bring the residual near; passes at the asked step
 * settle it and are recorded. */
static enum cg_status settle(struct run *run, struct cg_cycle *cycle,
                             struct cg_error *error)
{
    const double near = 0.15, settled = 5e-6;
    const int most = 80;
    struct fixed_point point = {{0.0}, {0.0}, {0.0}, {0.0}, 0};
    bool fine = false;
    double change = 0.0;

    while (point.passes < most) {
        enum cg_status status = run_pass(run, fine, cycle, error);
        if (status != CG_OK)
            return status;
        change = advance(run, &point);
        cycle->passes = point.passes;
        if (fine && change < settled)
            return CG_OK;
        fine = fine || change < near;
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "the cycle does not repeat: residual gas still changes "
                        "by %.2g after %d cycles", change, most);
}

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
        temperature -= (h - enthalpy) / cp;
    }
    return temperature;
}

/* Heating value of what leaves, from the fuel that came in: the share that met
 * the flame leaves CO, H2 and the fuel it did not burn; the rest leaves whole. */
static double unburned_energy(const struct cg_cycle_input *input,
                              double fuel_mass, double burned)
{
    const struct cg_fuel *fuel = input->fuel;
    double moles[CG_SPECIES];
    cg_fuel_burned(fuel, input->lambda, input->combustion_efficiency, moles);
    double molar_mass = cg_fuel_molar_mass(fuel);
    double vapour = molar_mass * (fuel->heating_value + fuel->latent_heat);
    double per_mole = burned * (moles[CG_CO] * cg_fuel_co_heat() +
                                moles[CG_H2] * cg_fuel_hydrogen_heat() +
                                moles[CG_FUEL] * vapour) +
                      (1.0 - burned) * vapour;
    return fuel_mass / molar_mass * per_mole;
}

static void sum_masses(const struct cg_cycle_input *input,
                       const struct run *run, struct cg_cycle *cycle)
{
    cycle->air_mass = air_mass(input);
    cycle->fuel_mass = cycle->air_mass * (charge_per_air(input) - 1.0);
    cycle->residual_mass = run->edge[LEG_INTAKE][CG_ZONE_MASS];
    cycle->trapped_mass = run->edge[LEG_COMPRESSION][CG_ZONE_MASS];
    cycle->fuel_energy = cycle->fuel_mass * input->fuel->heating_value;
}

static void sum_energies(const struct cg_cycle_input *input,
                         const struct run *run, struct cg_cycle *cycle)
{
    int bottom = run->leg[LEG_BOTTOM].from_deg < -180.0 ? LEG_COMPRESSION
                                                        : LEG_BOTTOM;
    const double *end = run->edge[LEGS], *open = run->edge[LEG_BLOW_DOWN];
    cycle->gross_work = run->edge[LEG_EXHAUST][CG_ZONE_WORK] -
                        run->edge[bottom][CG_ZONE_WORK];
    cycle->pumping_work = end[CG_ZONE_WORK] - cycle->gross_work;
    cycle->heat_head = end[CG_ZONE_HEAD];
    cycle->heat_piston = end[CG_ZONE_PISTON];
    cycle->heat_liner = end[CG_ZONE_LINER];
    cycle->imep_gross = cycle->gross_work / cg_crank_swept(&input->crank);
    cycle->imep_net = end[CG_ZONE_WORK] / cg_crank_swept(&input->crank);

    double left = open[CG_ZONE_MASS] - end[CG_ZONE_MASS];
    double burned = open[CG_ZONE_BURNED] / open[CG_ZONE_MASS];
    cycle->exhaust_temperature = temperature_of(
        &run->zone, burned,
        (open[CG_ZONE_ENTHALPY] - end[CG_ZONE_ENTHALPY]) / left,
        open[CG_ZONE_TEMPERATURE]);
    cycle->unburned_energy =
        unburned_energy(input, cycle->fuel_mass,
                        cycle->point[cycle->points - 1].burned);
    cycle->energy_residual =
        (end[CG_ZONE_ENTHALPY] - end[CG_ZONE_WORK] - end[CG_ZONE_HEAD] -
         end[CG_ZONE_PISTON] - end[CG_ZONE_LINER]) / cycle->fuel_energy;
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

static void record_end(const struct run *run, struct cg_cycle *cycle)
{
    const double *y = run->edge[LEGS];
    struct cg_zone_node node;
    struct cg_zone_gas gas;
    cg_zone_node(&run->zone, CG_PHASE_EXHAUST, 360.0, &node);
    cg_zone_gas(&run->zone, CG_PHASE_EXHAUST, &node, y, &gas);
    record_point(cycle, &node, y, &gas,
                 cycle->point[cycle->points - 1].burned);
}

enum cg_status cg_cycle_run(const struct cg_cycle_input *input,
                            struct cg_cycle *cycle, struct cg_error *error)
{
    struct run run;
    cycle->points = 0;
    enum cg_status status = cg_cycle_check(input, error);
    if (status != CG_OK)
        return status;
    set_zone(input, &run.zone);
    set_legs(input, &run);
    guess_residual(&run);
    status = settle(&run, cycle, error);
    if (status != CG_OK) {
        cycle->points = 0;
        return status;
    }
    record_end(&run, cycle);
    sum_masses(input, &run, cycle);
    sum_energies(input, &run, cycle);
    find_peak(cycle);
    return CG_OK;
}
