#include "regime.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "constants.h"
#include "geometry.h"
#include "growth.h"
#include "thermal_parts.h"

enum { PASSES = 30, JOINT_PASSES = 300 };
/* Walls that move less than this between passes are settled [K]: the gas
 * side then moves by less than 1e-4 of itself. */
#define WALL_TOLERANCE 0.1
/* Joints that ask for less change than this are settled [1]. */
#define JOINT_TOLERANCE 0.005

enum cg_status cg_regime_room_create(const struct cg_thermal *thermal,
                                     struct cg_regime_room *room,
                                     struct cg_error *error)
{
    *room = (struct cg_regime_room){NULL, NULL, NULL, NULL};
    room->cycle = malloc(sizeof *room->cycle);
    room->ring_film = malloc(sizeof *room->ring_film);
    room->ring_gas = malloc(sizeof *room->ring_gas);
    if (room->cycle == NULL || room->ring_film == NULL ||
        room->ring_gas == NULL) {
        cg_regime_room_free(room);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    enum cg_status status =
        cg_stepper_create(thermal->network, &room->stepper, error);
    if (status != CG_OK)
        cg_regime_room_free(room);
    return status;
}

void cg_regime_room_free(struct cg_regime_room *room)
{
    free(room->cycle);
    free(room->ring_film);
    free(room->ring_gas);
    cg_stepper_free(room->stepper);
    *room = (struct cg_regime_room){NULL, NULL, NULL, NULL};
}

enum cg_status cg_regime_create(const struct cg_thermal *thermal,
                                struct cg_regime *regime,
                                struct cg_error *error)
{
    size_t stations = thermal->bore.grid.stations;
    memset(regime, 0, sizeof *regime);
    regime->station = malloc(stations * sizeof *regime->station);
    regime->cylinder =
        malloc(CG_RING_FILM_POINTS * sizeof *regime->cylinder);
    regime->joint = calloc(stations, sizeof *regime->joint);
    regime->joint_search = malloc(stations * sizeof *regime->joint_search);
    regime->settled =
        malloc(thermal->network->nodes * sizeof *regime->settled);
    if (regime->station == NULL || regime->cylinder == NULL ||
        regime->joint == NULL || regime->joint_search == NULL ||
        regime->settled == NULL) {
        cg_regime_free(regime);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    return CG_OK;
}

void cg_regime_free(struct cg_regime *regime)
{
    free(regime->station);
    free(regime->cylinder);
    free(regime->joint);
    free(regime->joint_search);
    free(regime->settled);
    regime->station = NULL;
    regime->joint_search = NULL;
    regime->cylinder = regime->joint = regime->settled = NULL;
}

/* Steps every joint; returns the largest step still asked for, relative. */
static double step_joints(const struct cg_case *c,
                          const struct cg_thermal *thermal,
                          const double *temperature, struct cg_regime *regime)
{
    double most = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        struct cg_bore_growth growth;
        cg_growth_station(c, thermal, temperature, s, &growth);
        double asked =
            cg_joint_coefficient(&c->bore, growth.contact_pressure);
        most =
            fmax(most, cg_joint_step(asked, &regime->joint_search[s]));
        regime->joint[s] = regime->joint_search[s].coefficient;
    }
    return most;
}

/* Wall temperatures for the cycle from the settled network. */
static void read_walls(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const struct cg_regime *regime,
                       struct cg_cycle_input *walls)
{
    const struct cg_piston_map *piston = &thermal->piston;
    double crown = 0.0, area = 0.0, liner = 0.0, weight = 0.0;
    for (size_t i = 0; i <= piston->crown_cells; i++) {
        crown += piston->gas_area[i] * regime->settled[piston->node[i]];
        area += piston->gas_area[i];
    }
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        double h = regime->station[s].coefficient;
        liner += h * regime->settled[cg_thermal_liner_node(thermal, s, 0)];
        weight += h;
    }
    double head = c->cooling.head_coefficient;
    walls->piston_temperature = crown / area;
    walls->liner_temperature = liner / weight;
    walls->head_temperature =
        (regime->crown.coefficient * regime->crown.temperature +
         head * regime->operating.coolant_temperature) /
        (regime->crown.coefficient + head);
}

static double wall_change(const struct cg_cycle_input *a,
                          const struct cg_cycle_input *b)
{
    return fmax(fabs(a->head_temperature - b->head_temperature),
                fmax(fabs(a->piston_temperature - b->piston_temperature),
                     fabs(a->liner_temperature - b->liner_temperature)));
}

enum cg_status cg_regime_settle(struct cg_thermal *thermal,
                                struct cg_regime_room *room,
                                struct cg_regime *regime,
                                struct cg_error *error)
{
    cg_regime_apply(regime, regime, 0.0, thermal);
    return cg_stepper_settle(room->stepper, thermal->network, regime->settled,
                             error);
}

static void set_performance(const struct cg_case *c,
                            const struct cg_cycle *cycle,
                            struct cg_regime *regime)
{
    struct cg_performance *out = &regime->performance;
    double swept = cg_crank_swept(&regime->input.crank);
    double rate = 0.5 * regime->operating.speed * c->engine.cylinders;
    double speed = cg_crank_mean_speed(&regime->input.crank,
                                       regime->operating.speed);
    double wall =
        cycle->heat_head + cycle->heat_piston + cycle->heat_liner;

    out->imep = cycle->imep_net;
    out->fmep = cg_friction_mep(cycle->peak_pressure, speed);
    out->air_flow = cycle->air_mass * rate;
    out->fuel_flow = cycle->fuel_mass * rate;
    out->fuel_power = cycle->fuel_energy * rate;
    out->brake_power = (out->imep - out->fmep) * swept * rate;
    if (c->charge.charger == CG_CHARGER_BELT)
        out->brake_power -= out->air_flow * regime->charge.compressor_work;
    out->bmep = out->brake_power / (swept * rate);
    out->peak_pressure = cycle->peak_pressure;
    out->peak_rise = cycle->peak_rise;
    out->exhaust_temperature = cycle->exhaust_temperature;
    out->wall_heat_share = wall / cycle->fuel_energy;
    out->energy_residual = cycle->energy_residual;
    out->peak_flux =
        cg_gas_side_peak_flux(cycle, regime->input.piston_temperature);
    out->mean_flux = regime->crown.coefficient *
                     (regime->crown.temperature -
                      regime->input.piston_temperature);
    regime->friction = c->piston.friction_share * out->fmep * swept * 0.5 *
                       regime->operating.speed;
}

/* First guess, typical of full load (common practice, no source). */
static void guess_walls(const struct cg_regime *regime,
                        struct cg_cycle_input *walls)
{
    walls->head_temperature = regime->operating.coolant_temperature + 100.0;
    walls->piston_temperature = 520.0;
    walls->liner_temperature = regime->operating.coolant_temperature + 40.0;
}

static void copy_walls(const struct cg_cycle_input *from,
                       struct cg_cycle_input *to)
{
    to->head_temperature = from->head_temperature;
    to->piston_temperature = from->piston_temperature;
    to->liner_temperature = from->liner_temperature;
}

/* One pass: cycle for the walls in input, gas side from the cycle. */
static enum cg_status run_cycle(const struct cg_case *c,
                                const struct cg_thermal *thermal,
                                struct cg_regime_room *room,
                                struct cg_regime *regime,
                                struct cg_error *error)
{
    enum cg_status status = cg_cycle_run(&regime->input, room->cycle, error);
    if (status != CG_OK)
        return status;
    regime->crown = cg_gas_side_crown(room->cycle);
    cg_gas_side_stations(room->cycle, &thermal->bore.grid, regime->station);
    cg_ring_film_cylinder(room->cycle, regime->cylinder);
    set_performance(c, room->cycle, regime);
    return CG_OK;
}

/* Settles with films and joints that agree.  Films depend mildly on the
 * temperatures they shape: each pass of the caller's loop brings them nearer,
 * and two here are enough (tested).  Joints of a pressed liner take more. */
static enum cg_status settle_with_films(const struct cg_case *c,
                                        struct cg_thermal *thermal,
                                        struct cg_regime_room *room,
                                        struct cg_regime *regime,
                                        struct cg_error *error)
{
    bool pressed = c->bore.seat == CG_SEAT_PRESSED;
    double joint_step = pressed ? INFINITY : 0.0;
    for (int pass = 0; pass < 2 || joint_step > JOINT_TOLERANCE; pass++) {
        enum cg_status status = cg_regime_settle(thermal, room, regime, error);
        if (status != CG_OK)
            return status;
        if (pass == JOINT_PASSES)
            return cg_error_set(error, CG_NUMERICAL,
                                "settled state at %.0f rpm, load %.2f: the "
                                "joint of liner and block did not settle",
                                regime->operating.speed * 60.0,
                                regime->operating.load);
        status = cg_regime_set_films(c, thermal, room, regime, error);
        if (status != CG_OK)
            return status;
        if (pressed)
            joint_step = step_joints(c, thermal, regime->settled, regime);
    }
    return cg_regime_settle(thermal, room, regime, error);
}

enum cg_status cg_regime_solve(const struct cg_case *c,
                               struct cg_thermal *thermal,
                               struct cg_regime_room *room,
                               const struct cg_regime *guess,
                               struct cg_regime *regime,
                               struct cg_error *error)
{
    cg_operating_charge(c, &regime->operating, &regime->charge);
    enum cg_status status = cg_operating_cycle_input(c, &regime->operating,
                                                     &regime->input, error);
    if (status != CG_OK)
        return status;
    if (guess != NULL)
        copy_walls(&guess->input, &regime->input);
    else
        guess_walls(regime, &regime->input);
    for (int r = 0; r < CG_RINGS; r++)
        regime->film[r] = c->ring[r].film * c->scale.film;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        cg_joint_begin(&c->bore, &regime->joint_search[s]);
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        regime->joint[s] = regime->joint_search[s].coefficient;

    for (regime->passes = 1; regime->passes <= PASSES; regime->passes++) {
        status = run_cycle(c, thermal, room, regime, error);
        if (status == CG_OK)
            status = settle_with_films(c, thermal, room, regime, error);
        if (status != CG_OK)
            return status;
        struct cg_cycle_input walls = regime->input;
        read_walls(c, thermal, regime, &walls);
        double change = wall_change(&walls, &regime->input);
        if (change < WALL_TOLERANCE)
            return CG_OK;
        regime->input = walls;
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "settled state at %.0f rpm, load %.2f: wall "
                        "temperatures did not settle in %d passes",
                        regime->operating.speed * 60.0,
                        regime->operating.load, PASSES);
}

enum cg_status cg_regime_cycle(const struct cg_case *c,
                               const struct cg_thermal *thermal,
                               struct cg_regime_room *room,
                               struct cg_regime *regime,
                               struct cg_error *error)
{
    const struct cg_cycle_input walls = regime->input;
    cg_operating_charge(c, &regime->operating, &regime->charge);
    enum cg_status status = cg_operating_cycle_input(c, &regime->operating,
                                                     &regime->input, error);
    if (status != CG_OK)
        return status;
    copy_walls(&walls, &regime->input);
    return run_cycle(c, thermal, room, regime, error);
}

enum cg_status cg_regime_films(const struct cg_case *c,
                               struct cg_thermal *thermal,
                               struct cg_regime_room *room,
                               struct cg_regime *regime,
                               struct cg_error *error)
{
    enum cg_status status = cg_regime_settle(thermal, room, regime, error);
    if (status == CG_OK)
        status = cg_regime_set_films(c, thermal, room, regime, error);
    return status;
}

static double between(double a, double b, double part)
{
    return a + part * (b - a);
}

static struct cg_mean_gas gas_between(const struct cg_mean_gas *a,
                                      const struct cg_mean_gas *b, double part)
{
    double h = between(a->coefficient, b->coefficient, part);
    double heat = between(a->coefficient * a->temperature,
                          b->coefficient * b->temperature, part);
    return (struct cg_mean_gas){h, h > 0.0 ? heat / h : a->temperature};
}

static void apply_piston(const struct cg_mean_gas *gas,
                         struct cg_thermal *thermal)
{
    const struct cg_piston_map *piston = &thermal->piston;
    struct cg_network *network = thermal->network;
    for (size_t i = 0; i <= piston->crown_cells; i++) {
        network->bath_conductance[piston->gas_bath + i] =
            gas->coefficient * piston->gas_area[i];
        network->bath_temperature[piston->gas_bath + i] = gas->temperature;
    }
}

static void apply_ring(const struct cg_thermal *thermal,
                       const struct cg_ring_map *ring, double film,
                       double friction)
{
    struct cg_network *network = thermal->network;
    double conductance =
        ring->face_area / (film / CG_OIL_CONDUCTIVITY + ring->coat);
    size_t link = ring->face_link;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        if (ring->share[s] > 0.0)
            network->link_conductance[link++] = conductance * ring->share[s];
    network->source_power[ring->source] = friction;
}

static void apply_skirt(double friction, struct cg_thermal *thermal)
{
    const struct cg_piston_map *piston = &thermal->piston;
    for (size_t i = 0; i < piston->skirt_cells; i++)
        thermal->network->source_power[piston->skirt_source + i] =
            friction / (double)piston->skirt_cells;
}

static void apply_bore(const struct cg_regime *a, const struct cg_regime *b,
                       double part, double friction,
                       struct cg_thermal *thermal)
{
    const struct cg_bore_map *bore = &thermal->bore;
    struct cg_network *network = thermal->network;
    double coolant = between(a->operating.coolant_temperature,
                             b->operating.coolant_temperature, part);
    for (size_t s = 0; s < bore->grid.stations; s++) {
        struct cg_mean_gas gas =
            gas_between(&a->station[s], &b->station[s], part);
        network->bath_conductance[bore->gas_bath + s] =
            gas.coefficient * bore->surface_area;
        network->bath_temperature[bore->gas_bath + s] = gas.temperature;
        network->bath_temperature[bore->coolant_bath + s] = coolant;
        network->source_power[bore->source + s] =
            friction * bore->friction_share[s];
        if (bore->has_block)
            network->link_conductance[bore->joint_link + s] =
                between(a->joint[s], b->joint[s], part) * bore->joint_area;
    }
}

void cg_regime_apply(const struct cg_regime *a, const struct cg_regime *b,
                     double part, struct cg_thermal *thermal)
{
    struct cg_mean_gas crown = gas_between(&a->crown, &b->crown, part);
    double friction = between(a->friction, b->friction, part);
    apply_piston(&crown, thermal);
    /* Friction heat is made in the oil film: half to either side. */
    for (int r = 0; r < CG_RINGS; r++)
        apply_ring(thermal, &thermal->ring[r],
                   between(a->film[r], b->film[r], part),
                   0.5 * cg_friction_part[r] * friction);
    apply_skirt(0.5 * cg_friction_part[CG_RINGS] * friction, thermal);
    apply_bore(a, b, part, 0.5 * friction, thermal);
}
