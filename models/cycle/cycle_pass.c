#include "cycle_pass.h"

#include <assert.h>
#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "constants.h"
#include "fresh.h"

/* A motored pressure by a fixed exponent: the correlations were fitted with
 * motored records, whose exponent is near this.  Common practice. */
static const double motored_exponent = 1.32;

/* Least number of steps in the burn, to hold the energy balance to 1e-6. */
static const double burn_steps = 60.0;

/* After this the pressure has come down, and long steps will do. */
static const double blow_down_deg = 60.0;

static const double coldest = 150.0, hottest = 6000.0; /* of the gas [K] */

static void set_mixtures(const struct cg_cycle_input *input,
                         struct cg_zone *zone)
{
    struct cg_poly vapour;
    struct cg_fuel fuel = cg_fresh_fuel(input);
    double moles[CG_SPECIES];
    double fuel_mass = cg_fuel_molar_mass(&fuel);
    cg_fuel_poly(&fuel, &vapour);
    cg_fresh_moles(input, &fuel, moles);
    double premixed = moles[CG_FUEL];
    if (input->injection.on) /* comes later */
        moles[CG_FUEL] = 0.0;
    cg_mixture_set(&zone->fresh, moles, fuel_mass, &vapour);
    moles[CG_FUEL] = premixed;
    cg_fuel_burn(&fuel, input->combustion_efficiency, moles);
    cg_mixture_set(&zone->burned, moles, fuel_mass, &vapour);
}

/* Fuel that is injected is 25 C warm. */
static void inject(const struct cg_cycle_input *input, struct cg_zone *zone)
{
    struct cg_poly vapour;
    struct cg_mixture fuel;
    double moles[CG_SPECIES] = {[CG_FUEL] = 1.0};
    cg_fuel_poly(input->fuel, &vapour);
    cg_mixture_set(&fuel, moles, cg_fuel_molar_mass(input->fuel), &vapour);
    zone->fuel_enthalpy =
        cg_mixture_enthalpy(&fuel, 298.15) - input->fuel->latent_heat;
    zone->fuel_mass = cg_fresh_fuel_mass(input);
    cg_injected_burn_set(1.0 / input->lambda, input->injection.start_deg, 0.0,
                         zone);
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
        .flame = input->flame,
        .crevice = input->crevice,
    };
    cg_zone_shape(zone, &input->crank, input->speed, input->chamber_area_ratio);
    if (input->guess.law_share > 0.0)
        zone->law_share = input->guess.law_share;
    set_mixtures(input, zone);
    zone->crevice_fresh =
        cg_mixture_enthalpy(&zone->fresh, input->crevice.temperature);
    zone->crevice_burned =
        cg_mixture_enthalpy(&zone->burned, input->crevice.temperature);
    double inflow_end = fmin(input->intake_close_deg, -180.0);
    double uncovered = cg_crank_volume(&input->crank, inflow_end) -
                       cg_crank_clearance(&input->crank);
    bool injected = input->injection.on;
    double per_air = injected ? 1.0 : cg_fresh_per_air(input);
    double charge = cg_fresh_air(input) * per_air;
    zone->intake_density = charge / uncovered;
    if (injected)
        inject(input, zone);
    const struct cg_brought *brought = &input->brought;
    double own = 1.0 - 1.0 / per_air -
                 (brought->nitrous + brought->water + brought->alcohol) / charge;
    zone->intake_enthalpy =
        cg_mixture_enthalpy(&zone->fresh, input->manifold_temperature) -
        input->latent_charge * own * input->fuel->latent_heat -
        brought->entering / charge;
    cg_evaporation_set(&zone->closed, brought->closed, input->intake_close_deg,
                       zone->wiebe.start_deg);
}

/* The burn's legs: one, or an injected fuel's two, whose first is short and
 * steep. */
static void set_burn_legs(const struct cg_cycle_input *input,
                          struct cg_pass *pass)
{
    const struct cg_zone *zone = &pass->zone;
    const struct cg_wiebe *wiebe = &zone->wiebe;
    double open = input->exhaust_open_deg, step = input->step_deg;
    double start = wiebe->start_deg;
    double burnt = fmin(start + wiebe->duration_deg, open), first = burnt;
    double fine = fmin(step, wiebe->duration_deg / burn_steps), quick = fine;
    if (input->injection.on) {
        burnt = fmin(cg_wiebe_angle(wiebe, 0.999), open);
        first = fmin(start + zone->premixed.duration_deg, burnt);
        fine = fmin(step, (burnt - first) / burn_steps);
        quick = fmin(step, (first - start) / burn_steps);
    }
    pass->leg[CG_LEG_COMPRESSION].to_deg = start;
    pass->leg[CG_LEG_BURN] =
        (struct cg_leg){CG_PHASE_BURN, start, first, quick, 4.0 * quick};
    pass->leg[CG_LEG_DIFFUSION] =
        (struct cg_leg){CG_PHASE_BURN, first, burnt, fine, 4.0 * fine};
    pass->leg[CG_LEG_EXPANSION].from_deg = burnt;
}

static void set_legs(const struct cg_cycle_input *input, struct cg_pass *pass)
{
    double close = input->intake_close_deg, bottom = -180.0;
    double open = input->exhaust_open_deg, step = input->step_deg;
    double blown = fmax(open + blow_down_deg, -bottom);
    enum cg_phase between =
        close > bottom ? CG_PHASE_LATE_INTAKE : CG_PHASE_COMPRESSION;
    const struct cg_leg legs[CG_LEGS] = {
        {CG_PHASE_INTAKE, -360.0, fmin(close, bottom), 2 * step, 12.0},
        {between, fmin(close, bottom), fmax(close, bottom), 2 * step, 15.0},
        {CG_PHASE_COMPRESSION, fmax(close, bottom), 0.0, 2 * step, 12.0},
        {CG_PHASE_BURN, 0.0, 0.0, step, step}, /* set below */
        {CG_PHASE_BURN, 0.0, 0.0, step, step},
        {CG_PHASE_BURN, 0.0, open, 2 * step, 8.0},
        {CG_PHASE_EXHAUST, open, -bottom, step, 2.5},
        {CG_PHASE_EXHAUST, -bottom, blown, step, 5.0},
        {CG_PHASE_EXHAUST, blown, 360.0, 2 * step, 8.0},
    };
    memcpy(pass->leg, legs, sizeof legs);
    set_burn_legs(input, pass);
}

/* The index of the leg that starts at intake closing. */
static int closing_leg(const struct cg_pass *pass)
{
    return pass->leg[CG_LEG_BOTTOM].phase == CG_PHASE_COMPRESSION
               ? CG_LEG_BOTTOM
               : CG_LEG_COMPRESSION;
}

static void record_point(struct cg_cycle *cycle,
                         const struct cg_zone_node *node, double temperature,
                         const struct cg_zone_gas *gas, double burned)
{
    assert(cycle->points < CG_CYCLE_POINTS);
    cycle->point[cycle->points++] = (struct cg_cycle_point){
        .crank_deg = node->angle_deg,
        .pressure = gas->pressure,
        .temperature = temperature,
        .bore_temperature = gas->bore_temperature,
        .coefficient = gas->coefficient,
        .depth = node->depth,
        .burned = burned,
    };
}

/* Takes a step's three nodes into the cycle's sides; the first is the last of
 * the step before, unless a leg begins. */
static void record_sides(struct cg_cycle *cycle, bool begins,
                         const struct cg_zone_node node[3],
                         const struct cg_zone_gas gas[3])
{
    double width = node[2].angle_deg - node[0].angle_deg;
    if (!begins)
        cycle->side[cycle->sides - 1].width += width / 6.0;
    for (int i = begins ? 0 : 1; i < 3; i++) {
        assert(cycle->sides < CG_CYCLE_SIDES);
        cycle->side[cycle->sides++] = (struct cg_cycle_side){
            (i == 1 ? 4.0 : 1.0) * width / 6.0, node[i].depth,
            gas[i].coefficient, gas[i].heat, gas[i].bore_heat};
    }
}

static double burned_at(const struct cg_zone *zone, enum cg_phase phase,
                        double angle_deg)
{
    if (phase < CG_PHASE_BURN)
        return 0.0;
    return cg_zone_burned(zone, fmin(angle_deg, zone->exhaust_open_deg));
}

/* Runs one leg, in long steps or recording its points. */
static enum cg_status run_leg(const struct cg_zone *zone,
                              const struct cg_leg *leg, bool fine, bool record,
                              double *y,
                              struct cg_cycle *cycle, struct cg_error *error)
{
    double length = leg->to_deg - leg->from_deg;
    double step = fine ? leg->step_deg : leg->long_step_deg;
    int steps = (int)ceil(length / step - 1e-9);
    if (steps < 1)
        return CG_OK; /* two edges in one place */
    double half = 0.5 * length / steps;
    struct cg_zone_node node[3];

    cg_zone_node(zone, leg->phase, leg->from_deg, &node[2]);
    for (int i = 0; i < steps; i++) {
        double t = y[CG_ZONE_TEMPERATURE];
        struct cg_zone_gas gas[3];
        node[0] = node[2];
        cg_zone_node(zone, leg->phase, leg->from_deg + half * (2 * i + 1),
                     &node[1]);
        cg_zone_node(zone, leg->phase, leg->from_deg + half * (2 * i + 2),
                     &node[2]);
        cg_zone_step(zone, leg->phase, node, y, gas);
        if (record) {
            record_point(cycle, &node[0], t, &gas[0],
                         burned_at(zone, leg->phase, node[0].angle_deg));
            record_sides(cycle, i == 0, node, gas);
        }
        t = y[CG_ZONE_TEMPERATURE];
        if (!(t >= coldest && t <= hottest) || !(y[CG_ZONE_MASS] > 0.0))
            return cg_error_set(error, CG_NUMERICAL,
                                "the gas leaves %g to %g K at %.1f deg crank",
                                coldest, hottest, node[2].angle_deg);
    }
    return CG_OK;
}

void cg_pass_knock(const struct cg_pass *pass, struct cg_knock_limit *limit)
{
    const struct cg_cycle_input *input = pass->input;
    int closing = closing_leg(pass);
    cg_knock_limit_begin(&input->knock, &pass->zone, input->burn50_deg,
                         input->burn_duration_deg, pass->leg[closing].from_deg,
                         pass->edge[closing], limit);
}

double cg_pass_knock_integral(const struct cg_pass *pass,
                              const struct cg_cycle *cycle)
{
    const struct cg_cycle_point *point = cycle->point;
    const struct cg_zone *zone = &pass->zone;
    const struct cg_knock_law *law = &pass->input->knock;
    const double *y = pass->edge[closing_leg(pass)];
    double end = fmin(cg_wiebe_angle(&zone->wiebe, CG_KNOCK_BURNED),
                      zone->exhaust_open_deg);
    struct cg_end_gas gas;
    size_t i = 0;
    while (point[i].crank_deg < pass->leg[closing_leg(pass)].from_deg)
        i++;
    cg_end_gas_begin(law, &zone->fresh, &zone->burned,
                     y[CG_ZONE_BURNED] / y[CG_ZONE_MASS], point[i].pressure,
                     point[i].temperature, &gas);
    for (; i + 1 < cycle->points && point[i].crank_deg < end; i++) {
        double length = point[i + 1].crank_deg - point[i].crank_deg;
        double part = fmin((end - point[i].crank_deg) / length, 1.0);
        double taken = cg_evaporation_between(
            &zone->closed, point[i].crank_deg, point[i + 1].crank_deg);
        cg_end_gas_step(law, point[i].pressure + part * (point[i + 1].pressure -
                                                         point[i].pressure),
                        part * length * zone->degree_time,
                        taken / y[CG_ZONE_MASS], &gas);
    }
    return gas.integral;
}

/* Lets the fuel injected into the gas just shut in fire. */
static void fire(struct cg_pass *pass)
{
    const struct cg_cycle_input *input = pass->input;
    int closing = closing_leg(pass);
    double delay;
    double start = cg_injected_ignition(&pass->zone, &input->injection,
                                        pass->leg[closing].from_deg,
                                        pass->edge[closing], &delay);
    cg_injected_burn_set(1.0 / input->lambda, start, delay, &pass->zone);
    set_legs(input, pass);
}

/* Moves the burn to the knock limit of the gas just shut in. */
static void place_burn(struct cg_pass *pass, bool fine)
{
    const double near = 2e-3, settled = 1e-4; /* [deg] */
    const struct cg_cycle_input *input = pass->input;
    struct cg_knock_limit limit;
    if (input->injection.on)
        fire(pass);
    if (!(input->knock.octane > 0.0 && input->knock.retard_most > 0.0))
        return;
    cg_pass_knock(pass, &limit);
    double burn50 = cg_knock_limit_find(&limit, fine ? settled : near,
                                        &pass->knock);
    pass->zone.wiebe = cg_wiebe_from_burn(burn50, input->burn_duration_deg);
    set_legs(input, pass);
}

/* One cycle from top centre to top centre; not `fine`: in long steps, and
 * recorded only if that is all that is asked for. */
static enum cg_status run_pass(struct cg_pass *pass, bool fine,
                               struct cg_cycle *cycle, struct cg_error *error)
{
    struct cg_zone *zone = &pass->zone;
    double y[CG_ZONE_VARIABLES] = {
        [CG_ZONE_TEMPERATURE] = pass->residual[CG_RESIDUAL_TEMPERATURE],
        [CG_ZONE_MASS] = pass->residual[CG_RESIDUAL_MASS],
        [CG_ZONE_BURNED] = pass->residual[CG_RESIDUAL_BURNED],
    };
    cycle->points = cycle->sides = 0;
    for (int i = 0; i < CG_LEGS; i++) {
        memcpy(pass->edge[i], y, sizeof y);
        if (i == closing_leg(pass)) {
            cg_zone_close(zone, pass->leg[i].from_deg, y);
            place_burn(pass, fine);
        }
        if (i == CG_LEG_BURN)
            cg_zone_ignite(zone, pass->leg[i].from_deg, y);
        if (i == CG_LEG_BLOW_DOWN)
            cg_zone_open(zone, pass->leg[i].from_deg, y);
        enum cg_status status =
            run_leg(zone, &pass->leg[i], fine, fine || pass->rough, y, cycle,
                    error);
        if (status != CG_OK)
            return status;
    }
    memcpy(pass->edge[CG_LEGS], y, sizeof y);
    return CG_OK;
}

/* What the cycle hands on, out of the state at its end. */
static void residual_of(const double *y, double *residual)
{
    residual[CG_RESIDUAL_TEMPERATURE] = y[CG_ZONE_TEMPERATURE];
    residual[CG_RESIDUAL_MASS] = y[CG_ZONE_MASS];
    residual[CG_RESIDUAL_BURNED] = y[CG_ZONE_BURNED];
}

static void guess_residual(struct cg_pass *pass)
{
    const struct cg_zone *zone = &pass->zone;
    double t = 1100.0;
    double mass = zone->exhaust_pressure * cg_crank_clearance(&zone->crank) /
                  (zone->burned.gas_constant * t);
    pass->residual[CG_RESIDUAL_TEMPERATURE] = t;
    pass->residual[CG_RESIDUAL_MASS] = mass;
    pass->residual[CG_RESIDUAL_BURNED] = mass;
    memset(pass->put_in, 0, sizeof pass->put_in);
    memset(pass->came_out, 0, sizeof pass->came_out);
}

static void take_guess(const struct cg_residual *guess, struct cg_pass *pass)
{
    pass->residual[CG_RESIDUAL_TEMPERATURE] = guess->temperature;
    pass->residual[CG_RESIDUAL_MASS] = guess->mass;
    pass->residual[CG_RESIDUAL_BURNED] = guess->burned;
    memcpy(pass->put_in, guess->put_in, sizeof pass->put_in);
    memcpy(pass->came_out, guess->came_out, sizeof pass->came_out);
    if (guess->knock.slope < 0.0)
        pass->knock = guess->knock;
}

void cg_pass_set(struct cg_pass *pass, const struct cg_cycle_input *input)
{
    pass->input = input;
    pass->knock = (struct cg_knock_start){input->burn50_deg, 0.0};
    set_zone(input, &pass->zone);
    set_legs(input, pass);
    pass->rough = input->rough;
    pass->crevice_in_law = input->crevice_in_law;
    pass->guessed = input->guess.mass > 0.0;
    if (pass->guessed)
        take_guess(&input->guess, pass);
    else
        guess_residual(pass);
}

/* Fixed point x = g(x) of the residual's state in relative units.  The port
 * pressure ties its mass to its temperature, so g moves along one direction
 * whatever x does, and one secant pair gives nearly all of its derivative:
 * J = dg dx'/|dx|2 (C. G. Broyden, "A class of methods for solving nonlinear
 * simultaneous equations", 1965). */
struct fixed_point {
    double x[CG_RESIDUALS], g[CG_RESIDUALS]; /* of the pass before */
    bool paired; /* the pass before was in steps of the same length */
    int passes;
};

static double dot(const double *a, const double *b)
{
    double sum = 0.0;
    for (int i = 0; i < CG_RESIDUALS; i++)
        sum += a[i] * b[i];
    return sum;
}

/* Share of the residual gas in the charge: what a change of it counts for. */
static double residual_share(const struct cg_pass *pass)
{
    return pass->edge[CG_LEG_INTAKE][CG_ZONE_MASS] /
           pass->edge[CG_LEG_COMPRESSION][CG_ZONE_MASS];
}

/* Moves pass->residual on from x to x + (I - J)^-1 (g - x), and returns the
 * largest relative change over the pass just run. */
static double advance(struct cg_pass *pass, struct fixed_point *point)
{
    double *x = pass->residual, *dx = pass->put_in, *dg = pass->came_out;
    double g[CG_RESIDUALS], r[CG_RESIDUALS], change = 0.0;
    residual_of(pass->edge[CG_LEGS], g);
    for (int i = 0; i < CG_RESIDUALS; i++) {
        if (point->paired) {
            dx[i] = (x[i] - point->x[i]) / g[i];
            dg[i] = (g[i] - point->g[i]) / g[i];
        }
        r[i] = 1.0 - x[i] / g[i];
        change = fmax(change, fabs(r[i]));
    }
    double length = dot(dx, dx);
    double slope = length > 0.0 ? dot(dx, dg) / length : 0.0;
    double gain = length > 0.0 ? dot(dx, r) / length : 0.0;
    gain /= 1.0 - fmax(-0.9, fmin(slope, 0.9));
    for (int i = 0; i < CG_RESIDUALS; i++) {
        point->x[i] = x[i];
        point->g[i] = g[i];
        x[i] = g[i] * (1.0 + fmax(-0.5, fmin(gain * dg[i], 0.5)));
    }
    point->paired = true;
    point->passes++;
    return change;
}

/* Brings the correlation's share of the heat up to date with the pass just run,
 * and returns how much it moved: it hardly hangs on itself.  The walls of a
 * diesel that coasts may be as hot as its gas: its law's heat is next to nothing,
 * or less, and the share of it would swing; half is the least there. */
static double advance_law(struct cg_pass *pass)
{
    const bool injected = pass->input->injection.on;
    const double least = injected ? 0.5 : 0.1, none = injected ? least : 1.0;
    const double *end = pass->edge[CG_LEGS];
    double before = pass->zone.law_share;
    double law = (end[CG_ZONE_HEAD] + end[CG_ZONE_PISTON] +
                  end[CG_ZONE_LINER]) / before;
    double taken = pass->crevice_in_law * end[CG_ZONE_CREVICE];
    double share = law > 0.0 ? 1.0 - taken / law : none;
    pass->zone.law_share = fmin(fmax(share, least), 1.0);
    return fabs(pass->zone.law_share - before);
}

static void record_end(const struct cg_pass *pass, struct cg_cycle *cycle)
{
    const double *y = pass->edge[CG_LEGS];
    struct cg_zone_node node;
    struct cg_zone_gas gas;
    cg_zone_node(&pass->zone, CG_PHASE_EXHAUST, 360.0, &node);
    cg_zone_gas(&pass->zone, CG_PHASE_EXHAUST, &node, y, &gas);
    record_point(cycle, &node, y[CG_ZONE_TEMPERATURE], &gas,
                 cycle->point[cycle->points - 1].burned);
}

/* A burn at the knock limit moves with the residual gas, and the wall heat with
 * it more than the residual alone would. */
static double settled_change(const struct cg_pass *pass)
{
    if (!pass->rough)
        return 2.5e-7;
    return pass->knock.slope < 0.0 ? 1e-4 : 4e-4;
}

/* Passes with long steps bring the residual near, unless a guess is; passes at
 * the asked step settle it and are recorded.  A rough cycle stays with the long
 * steps. */
enum cg_status cg_pass_settle(struct cg_pass *pass, struct cg_cycle *cycle,
                              struct cg_error *error)
{
    const double near = 1e-2;
    /* of the heat: rough ones are to be compared */
    const double law_settled = pass->rough ? 1e-4 : 1e-5;
    const int most = 80;
    struct fixed_point point = {.passes = 0};
    bool rough = pass->rough, fine = pass->guessed && !rough;
    double change = 0.0;

    while (point.passes < most) {
        enum cg_status status = run_pass(pass, fine, cycle, error);
        if (status != CG_OK && fine)
            return status;
        if (status != CG_OK) { /* too stiff for long steps */
            fine = true;
            rough = pass->rough = false;
            guess_residual(pass);
            point = (struct fixed_point){.passes = 0};
            continue;
        }
        change = advance(pass, &point);
        double law_change = advance_law(pass);
        cycle->passes = point.passes;
        if ((fine || rough) &&
            change * residual_share(pass) < settled_change(pass) &&
            law_change < law_settled) {
            record_end(pass, cycle);
            return CG_OK;
        }
        if (!rough && !fine && change < near) {
            fine = true;
            point.paired = false;
        }
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "the cycle does not repeat: residual gas still changes "
                        "by %.2g after %d cycles", change, most);
}
