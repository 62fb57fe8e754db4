#include "zone.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "constants.h"

/* Exhaust valve: the gas let out per degree is the pressure excess over this
 * many degrees, once the valve has lifted over the second number of degrees.
 * Linear in the excess: close to choked flow in the blow-down, where most of
 * the excess goes, and it leaves about 10 % over the port pressure in the
 * middle of the exhaust stroke.  Common practice, no source. */
static const double exhaust_decay_deg = 4.0, exhaust_lift_deg = 25.0;

void cg_zone_shape(struct cg_zone *zone, const struct cg_crank *crank,
                   double speed, double chamber_area_ratio)
{
    zone->crank = *crank;
    zone->degree_time = 1.0 / (360.0 * speed);
    zone->piston_area = 0.25 * CG_PI * crank->bore * crank->bore;
    zone->chamber_area = chamber_area_ratio * zone->piston_area;
    zone->side.bore = crank->bore;
    zone->side.piston_speed = cg_crank_mean_speed(crank, speed);
    zone->side.swept_volume = cg_crank_swept(crank);
    zone->law_share = 1.0;
}

void cg_zone_close(struct cg_zone *zone, double angle_deg, const double *y)
{
    struct cg_zone_node node;
    struct cg_zone_gas gas;
    cg_zone_node(zone, CG_PHASE_LATE_INTAKE, angle_deg, &node);
    cg_zone_gas(zone, CG_PHASE_LATE_INTAKE, &node, y, &gas);
    zone->side.reference_temperature = y[CG_ZONE_TEMPERATURE];
    zone->side.reference_pressure = gas.pressure;
    zone->side.reference_volume = node.volume;
    zone->fresh_mass = y[CG_ZONE_MASS] - y[CG_ZONE_BURNED];
}

void cg_zone_ignite(struct cg_zone *zone, double angle_deg, const double *y)
{
    struct cg_zone_node node;
    struct cg_zone_gas gas;
    cg_zone_node(zone, CG_PHASE_COMPRESSION, angle_deg, &node);
    cg_zone_gas(zone, CG_PHASE_COMPRESSION, &node, y, &gas);
    zone->ignition_temperature = y[CG_ZONE_TEMPERATURE];
    zone->ignition_pressure = gas.pressure;
}

/* Two Wiebe laws, one behind the other, by their shares. */
static double both(const struct cg_zone *zone, double angle_deg,
                   double (*of)(const struct cg_wiebe *, double))
{
    double last = of(&zone->wiebe, angle_deg);
    if (zone->premixed_share == 0.0)
        return last;
    return last + zone->premixed_share * (of(&zone->premixed, angle_deg) - last);
}

double cg_zone_burned(const struct cg_zone *zone, double angle_deg)
{
    return both(zone, angle_deg, cg_wiebe_burned);
}

double cg_zone_burn_rate(const struct cg_zone *zone, double angle_deg)
{
    return both(zone, angle_deg, cg_wiebe_rate);
}

void cg_zone_node(const struct cg_zone *zone, enum cg_phase phase,
                  double angle_deg, struct cg_zone_node *node)
{
    double rate;
    cg_crank_motion(&zone->crank, angle_deg, &node->depth, &rate);
    node->angle_deg = angle_deg;
    node->volume =
        cg_crank_clearance(&zone->crank) + zone->piston_area * node->depth;
    node->volume_rate = zone->piston_area * rate * (CG_PI / 180.0);
    node->burn_rate = 0.0;
    node->evaporation_rate = 0.0;
    node->motored_pressure = 0.0;
    node->exhaust_rate = 0.0;
    if (phase == CG_PHASE_BURN) {
        node->burn_rate = cg_zone_burn_rate(zone, angle_deg);
        node->motored_pressure =
            zone->side.reference_pressure *
            exp(zone->motored_exponent *
                log(zone->side.reference_volume / node->volume));
    } else if (phase == CG_PHASE_COMPRESSION && zone->closed.heat > 0.0) {
        node->evaporation_rate = cg_evaporation_rate(&zone->closed, angle_deg);
    } else if (phase == CG_PHASE_EXHAUST) {
        double open = angle_deg - zone->exhaust_open_deg;
        node->exhaust_rate =
            -expm1(-open / exhaust_lift_deg) / exhaust_decay_deg;
    }
}

/* The mixture at its temperature, per kg. */
struct mixed {
    double gas_constant, cp;
};

static struct mixed mix(const struct cg_zone *zone, double temperature,
                        double burned)
{
    double fresh = 1.0 - burned;
    return (struct mixed){
        fresh * zone->fresh.gas_constant + burned * zone->burned.gas_constant,
        fresh * cg_mixture_cp(&zone->fresh, temperature) +
            burned * cg_mixture_cp(&zone->burned, temperature)};
}

void cg_zone_open(struct cg_zone *zone, double angle_deg, const double *y)
{
    double t = y[CG_ZONE_TEMPERATURE], m = y[CG_ZONE_MASS];
    struct mixed gas = mix(zone, t, y[CG_ZONE_BURNED] / m);
    double rt = gas.gas_constant * t;
    double work = zone->exhaust_pressure *
                  cg_crank_volume(&zone->crank, angle_deg) / m;
    zone->port_temperature = t + (fmin(work, rt) - rt) / gas.cp;
}

static double coefficient(const struct cg_zone *zone, enum cg_phase phase,
                          const struct cg_zone_node *node, double temperature,
                          double pressure, double gas_constant)
{
    double liner_area = CG_PI * zone->crank.bore * node->depth;
    double area = zone->chamber_area + zone->piston_area + liner_area;
    struct cg_gas_side state = zone->side;
    state.pressure = pressure;
    state.temperature = temperature;
    state.wall_temperature = (zone->chamber_area * zone->head_temperature +
                              zone->piston_area * zone->piston_temperature +
                              liner_area * zone->liner_temperature) / area;
    state.volume = node->volume;
    state.motored_pressure = node->motored_pressure;
    state.gas_constant = gas_constant;
    state.burning = phase == CG_PHASE_BURN;
    state.sooting = zone->fuel_mass > 0.0;
    state.gas_exchange = !state.burning && phase != CG_PHASE_COMPRESSION;
    return zone->heat_factor * zone->law_share *
           zone->correlation->coefficient(&state);
}

static double enthalpy(const struct cg_zone *zone, double temperature,
                       double burned)
{
    return (1.0 - burned) * cg_mixture_enthalpy(&zone->fresh, temperature) +
           burned * cg_mixture_enthalpy(&zone->burned, temperature);
}

/* Flow through the exhaust valve, out or back; composition does not change. */
static double exhaust(const struct cg_zone *zone,
                      const struct cg_zone_node *node, const double *y,
                      const struct mixed *gas, double pressure, double *dy)
{
    double t = y[CG_ZONE_TEMPERATURE];
    double burned = y[CG_ZONE_BURNED] / y[CG_ZONE_MASS];
    double gamma = gas->cp / (gas->cp - gas->gas_constant);
    bool back = pressure < zone->exhaust_pressure;
    double stream = back ? zone->port_temperature : t;
    double in = node->exhaust_rate * node->volume *
                (zone->exhaust_pressure - pressure) /
                (gamma * gas->gas_constant * stream);
    double carried = enthalpy(zone, stream, burned);
    double inside = back ? enthalpy(zone, t, burned) : carried;
    dy[CG_ZONE_MASS] = in;
    dy[CG_ZONE_BURNED] = in * burned;
    dy[CG_ZONE_ENTHALPY] = in * carried;
    dy[CG_ZONE_BACK_FLOW] = back ? in : 0.0;
    return in * (carried - inside + gas->gas_constant * t);
}

/* Adds what flows or burns to dy, and returns its part of m cv dT [J/deg]. */
static double exchange(const struct cg_zone *zone, enum cg_phase phase,
                       const struct cg_zone_node *node, const double *y,
                       const struct mixed *gas, double pressure, double *dy)
{
    double t = y[CG_ZONE_TEMPERATURE];
    switch (phase) {
    case CG_PHASE_INTAKE: {
        double in = zone->intake_density * node->volume_rate;
        dy[CG_ZONE_MASS] = in;
        dy[CG_ZONE_ENTHALPY] = in * zone->intake_enthalpy;
        return in * (zone->intake_enthalpy -
                     cg_mixture_energy(&zone->fresh, t));
    }
    case CG_PHASE_BURN: {
        double burn = zone->fresh_mass * node->burn_rate;
        double fuel = zone->fuel_mass * node->burn_rate;
        double energy = cg_mixture_energy(&zone->burned, t);
        dy[CG_ZONE_MASS] = fuel;
        dy[CG_ZONE_BURNED] = burn + fuel;
        dy[CG_ZONE_ENTHALPY] = fuel * zone->fuel_enthalpy;
        return burn * (cg_mixture_energy(&zone->fresh, t) - energy) +
               fuel * (zone->fuel_enthalpy - energy);
    }
    case CG_PHASE_EXHAUST:
        return exhaust(zone, node, y, gas, pressure, dy);
    case CG_PHASE_COMPRESSION:
        dy[CG_ZONE_ENTHALPY] = -node->evaporation_rate;
        return -node->evaporation_rate;
    case CG_PHASE_LATE_INTAKE:
        break;
    }
    return 0.0;
}

/* The gas at the bore and at the mouth of the crevices while the charge burns.
 * Unburned gas follows its compression from ignition, T_u; with x of the mass
 * burned the mean is T = x T_b + (1 - x) T_u, and the burned gas fills the share
 * y = x T_b/T of the volume, and of head and crown (one pressure, one gas
 * constant: J. B. Heywood 1988, sec. 9.2 and 14.4).  The flame comes to the
 * wall last: around a plug half way out the circle of the flame that covers y
 * of the crown covers about y^2 of the bore's circumference (to a fifth, tested).  The
 * correlation's mean T stands for head and crown; the bore sees y times as much
 * of what is burned, and T_u beside it.  The mouth sees burned gas, T_b, over
 * y^2 and T_u over the rest. */
struct edge_gas {
    double bore;   /* [K] */
    double mouth;  /* [K] */
    double burned; /* of the gas at the mouth, residual included [1] */
};

static struct edge_gas edge_gas(const struct cg_zone *zone,
                                enum cg_phase phase, const double *y,
                                double pressure)
{
    double t = y[CG_ZONE_TEMPERATURE], m = y[CG_ZONE_MASS];
    struct edge_gas edge = {t, t, y[CG_ZONE_BURNED] / m};
    double left = (m - y[CG_ZONE_BURNED]) / zone->fresh_mass;
    if (!zone->flame || phase != CG_PHASE_BURN || !(left < 1.0))
        return edge;
    double n = zone->motored_exponent;
    double cold = zone->ignition_temperature *
                  exp((n - 1.0) / n * log(pressure / zone->ignition_pressure));
    cold = fmin(cold, t);
    double share = fmin(fmax(1.0 - left * cold / t, 0.0), 1.0);
    double mouth = share * share;
    edge.bore = cold + share * (t - cold);
    edge.mouth = cold + mouth / (1.0 - left) * (t - cold);
    edge.burned = 1.0 - (1.0 - mouth) * zone->fresh_mass / m;
    return edge;
}

/* Heat that gas gives the walls of the crevices [J/deg].  They belong to the
 * clearance volume and are filled at the cylinder's pressure, at their walls'
 * temperature (J. B. Heywood 1988, sec. 8.6): dm = V dp/(R T_wall) goes in
 * while the pressure rises, from the mouth, and gives up its enthalpy over that
 * at the wall; what comes out is at the wall's, and has nothing left to give.
 * The pressure's own rise is less by this heat, so it is solved for with it.
 * `energy`: m cv dT without it; `swell`: of R and V, relative, per degree. */
static double crevice_heat(const struct cg_zone *zone,
                           const struct edge_gas *edge, const double *y,
                           const struct mixed *gas, double pressure,
                           double energy, double swell)
{
    double t = y[CG_ZONE_TEMPERATURE];
    double capacity = y[CG_ZONE_MASS] * (gas->cp - gas->gas_constant);
    double rise = pressure * (energy / (capacity * t) + swell);
    if (!(zone->crevice.volume > 0.0) || !(rise > 0.0))
        return 0.0;
    double given = enthalpy(zone, edge->mouth, edge->burned) -
                   (1.0 - edge->burned) * zone->crevice_fresh -
                   edge->burned * zone->crevice_burned;
    double per_pressure = zone->crevice.share * given * zone->crevice.volume /
                          (gas->gas_constant * zone->crevice.temperature);
    return per_pressure * rise /
           (1.0 + pressure * per_pressure / (capacity * t));
}

/* dy per degree of crank. */
static void rates(const struct cg_zone *zone, enum cg_phase phase,
                  const struct cg_zone_node *node, const double *y, double *dy,
                  struct cg_zone_gas *out)
{
    double t = y[CG_ZONE_TEMPERATURE], m = y[CG_ZONE_MASS];
    struct mixed gas = mix(zone, t, y[CG_ZONE_BURNED] / m);
    double pressure = m * gas.gas_constant * t / node->volume;
    double h = coefficient(zone, phase, node, t, pressure, gas.gas_constant);
    double per_degree = h * zone->degree_time;
    struct edge_gas edge = edge_gas(zone, phase, y, pressure);

    dy[CG_ZONE_MASS] = dy[CG_ZONE_BURNED] = 0.0;
    dy[CG_ZONE_ENTHALPY] = dy[CG_ZONE_BACK_FLOW] = 0.0;
    dy[CG_ZONE_WORK] = pressure * node->volume_rate;
    dy[CG_ZONE_HEAD] =
        per_degree * zone->chamber_area * (t - zone->head_temperature);
    dy[CG_ZONE_PISTON] =
        per_degree * zone->piston_area * (t - zone->piston_temperature);
    dy[CG_ZONE_LINER] = per_degree * CG_PI * zone->crank.bore * node->depth *
                        (edge.bore - zone->liner_temperature);
    dy[CG_ZONE_CREVICE] = 0.0;
    double energy = exchange(zone, phase, node, y, &gas, pressure, dy) -
                    dy[CG_ZONE_WORK] - dy[CG_ZONE_HEAD] - dy[CG_ZONE_PISTON] -
                    dy[CG_ZONE_LINER];
    if (phase == CG_PHASE_COMPRESSION || phase == CG_PHASE_BURN) {
        double swell = dy[CG_ZONE_BURNED] / m *
                           (zone->burned.gas_constant -
                            zone->fresh.gas_constant) / gas.gas_constant +
                       dy[CG_ZONE_MASS] / m * zone->fresh.gas_constant /
                           gas.gas_constant -
                       node->volume_rate / node->volume;
        dy[CG_ZONE_CREVICE] = crevice_heat(zone, &edge, y, &gas, pressure,
                                           energy, swell);
        energy -= dy[CG_ZONE_CREVICE];
    }
    dy[CG_ZONE_TEMPERATURE] = energy / (m * (gas.cp - gas.gas_constant));
    *out = (struct cg_zone_gas){pressure, edge.bore, h, h * t, h * edge.bore};
}

static void runge_kutta(const struct cg_zone *zone, enum cg_phase phase,
                        const struct cg_zone_node node[3], double *y,
                        struct cg_zone_gas gas[3])
{
    enum { N = CG_ZONE_VARIABLES };
    double step = node[2].angle_deg - node[0].angle_deg;
    double k1[N], k2[N], k3[N], k4[N], stage[N];
    struct cg_zone_gas half;

    rates(zone, phase, &node[0], y, k1, &gas[0]);
    for (int i = 0; i < N; i++)
        stage[i] = y[i] + 0.5 * step * k1[i];
    rates(zone, phase, &node[1], stage, k2, &half);
    for (int i = 0; i < N; i++)
        stage[i] = y[i] + 0.5 * step * k2[i];
    rates(zone, phase, &node[1], stage, k3, &gas[1]);
    for (int i = 0; i < N; i++)
        stage[i] = y[i] + step * k3[i];
    rates(zone, phase, &node[2], stage, k4, &gas[2]);
    for (int i = 0; i < N; i++)
        y[i] += step / 6.0 * (k1[i] + 2.0 * (k2[i] + k3[i]) + k4[i]);
    gas[1].coefficient = 0.5 * (half.coefficient + gas[1].coefficient);
    gas[1].heat = 0.5 * (half.heat + gas[1].heat);
    gas[1].bore_heat = 0.5 * (half.bore_heat + gas[1].bore_heat);
}

/* From angle to angle [deg], nodes included. */
static void part_step(const struct cg_zone *zone, enum cg_phase phase,
                      double from_deg, double to_deg, double *y)
{
    struct cg_zone_node node[3];
    struct cg_zone_gas unused[3];
    for (int i = 0; i < 3; i++)
        cg_zone_node(zone, phase, from_deg + 0.5 * i * (to_deg - from_deg),
                     &node[i]);
    runge_kutta(zone, phase, node, y, unused);
}

/* cp has a kink where its two polynomials meet.  A step over it loses three
 * digits of the energy balance, so it is taken again in two parts that meet
 * near the kink. */
void cg_zone_step(const struct cg_zone *zone, enum cg_phase phase,
                  const struct cg_zone_node node[3], double *y,
                  struct cg_zone_gas gas[3])
{
    double start[CG_ZONE_VARIABLES];
    memcpy(start, y, sizeof start);
    runge_kutta(zone, phase, node, y, gas);
    double share = (CG_GAS_JOINT - start[CG_ZONE_TEMPERATURE]) /
                   (y[CG_ZONE_TEMPERATURE] - start[CG_ZONE_TEMPERATURE]);
    if (share > 0.0 && share < 1.0) {
        double from = node[0].angle_deg, to = node[2].angle_deg;
        double kink = from + share * (to - from);
        memcpy(y, start, sizeof start);
        part_step(zone, phase, from, kink, y);
        part_step(zone, phase, kink, to, y);
    }
}

void cg_zone_gas(const struct cg_zone *zone, enum cg_phase phase,
                 const struct cg_zone_node *node, const double *y,
                 struct cg_zone_gas *gas)
{
    double dy[CG_ZONE_VARIABLES];
    rates(zone, phase, node, y, dy, gas);
}

double cg_zone_pressure(const struct cg_zone *zone,
                        const struct cg_zone_node *node, const double *y)
{
    double mass = y[CG_ZONE_MASS], burned = y[CG_ZONE_BURNED];
    double r = (mass - burned) * zone->fresh.gas_constant +
               burned * zone->burned.gas_constant;
    return r * y[CG_ZONE_TEMPERATURE] / node->volume;
}
