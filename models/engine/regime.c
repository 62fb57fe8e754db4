#include "regime.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "geometry.h"
#include "growth.h"

enum { PASSES = 30, JOINT_PASSES = 300, CORRECTIONS = 100 };
/* Walls that end within this of those a cycle was run for are settled [K]: the
 * gas side's response, some 2e-4 of the flux for each kelvin and right to a
 * quarter (tested), takes care of the rest. */
#define WALL_TOLERANCE 2.0
/* Least correction of settled temperatures on the way, and at last [K]. */
#define NEAR_TOLERANCE 1e-3
#define SETTLED_TOLERANCE 1e-7
/* While walls move more than this, rough cycles will do [K]. */
#define WALL_NEAR 5.0
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

/* Mean over head, piston and half the swept liner. */
static double mean_wall(const struct cg_cycle_input *walls)
{
    double head = walls->chamber_area_ratio;
    double liner = 2.0 * walls->crank.stroke / walls->crank.bore;
    return (head * walls->head_temperature + walls->piston_temperature +
            liner * walls->liner_temperature) /
           (head + 1.0 + liner);
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

static void set_wall_rise(const struct cg_case *c,
                          const struct cg_thermal *thermal,
                          struct cg_regime *regime)
{
    struct cg_cycle_input walls = regime->input;
    read_walls(c, thermal, regime, &walls);
    regime->wall_rise = mean_wall(&walls) - mean_wall(&regime->input);
}

/* Films and gas side depend mildly on the temperatures they shape, and are
 * brought up to date before every correction. */
static enum cg_status settle_films(const struct cg_case *c,
                                   struct cg_thermal *thermal,
                                   struct cg_regime_room *room,
                                   double tolerance, struct cg_regime *regime,
                                   struct cg_error *error)
{
    const double slow = 0.5; /* a correction over the one before [1] */
    double before = INFINITY;
    for (int i = 0; i < CORRECTIONS; i++) {
        enum cg_status status =
            cg_regime_set_films(c, thermal, room, regime, error);
        if (status != CG_OK)
            return status;
        set_wall_rise(c, thermal, regime);
        cg_regime_apply(regime, regime, 0.0, thermal);
        double size = cg_stepper_correct(room->stepper, thermal->network,
                                         regime->settled);
        bool served = size < slow * before;
        before = size;
        if (!served) {
            status = cg_stepper_settle(room->stepper, thermal->network,
                                       regime->settled, error);
            if (status != CG_OK)
                return status;
            before = INFINITY;
        }
        if (served && size < tolerance)
            return CG_OK;
    }
    return cg_error_set(error, CG_NUMERICAL,
                        "settled state at %.0f rpm, load %.2f: still moves by "
                        "%.2g K after %d corrections",
                        regime->operating.speed * 60.0,
                        regime->operating.load, before, CORRECTIONS);
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
    regime->residual = room->cycle->residual;
    regime->crown = cg_gas_side_crown(room->cycle);
    cg_gas_side_stations(room->cycle, &thermal->bore.grid, regime->station);
    cg_ring_film_cylinder(room->cycle, regime->cylinder);
    memset(regime->film_solved, 0, sizeof regime->film_solved);
    set_performance(c, room->cycle, regime);
    return CG_OK;
}

/* Joints of a pressed liner follow the pressure that their own heat makes. */
enum cg_status cg_regime_resettle(const struct cg_case *c,
                                  struct cg_thermal *thermal,
                                  struct cg_regime_room *room,
                                  double tolerance, struct cg_regime *regime,
                                  struct cg_error *error)
{
    bool pressed = c->bore.seat == CG_SEAT_PRESSED;
    double joint_step = pressed ? INFINITY : 0.0;
    enum cg_status status =
        settle_films(c, thermal, room, tolerance, regime, error);
    for (int pass = 0; status == CG_OK && joint_step > JOINT_TOLERANCE;
         pass++) {
        if (pass == JOINT_PASSES)
            return cg_error_set(error, CG_NUMERICAL,
                                "settled state at %.0f rpm, load %.2f: the "
                                "joint of liner and block did not settle",
                                regime->operating.speed * 60.0,
                                regime->operating.load);
        joint_step = step_joints(c, thermal, regime->settled, regime);
        status = settle_films(c, thermal, room, tolerance, regime, error);
    }
    return status;
}

enum cg_status cg_regime_respond(struct cg_regime_room *room,
                                 struct cg_regime *regime,
                                 struct cg_error *error)
{
    const double rise = 20.0; /* [K]: well above the roughness of the cycles */
    struct cg_cycle_input input = regime->input;
    input.guess = regime->residual;
    input.head_temperature += rise;
    input.piston_temperature += rise;
    input.liner_temperature += rise;
    enum cg_status status = cg_cycle_run(&input, room->cycle, error);
    if (status != CG_OK)
        return status;
    /* Begun from a like cycle, its pair is the better one to go on with. */
    regime->residual = room->cycle->residual;
    struct cg_mean_gas warmer = cg_gas_side_crown(room->cycle);
    const struct cg_mean_gas *crown = &regime->crown;
    regime->response = (struct cg_wall_response){
        (warmer.coefficient / crown->coefficient - 1.0) / rise,
        (warmer.temperature / crown->temperature - 1.0) / rise};
    return CG_OK;
}

/* The heats of the performance, brought from the walls of the cycle to those it
 * settled with. */
static void follow_walls(const struct cg_case *c,
                         const struct cg_thermal *thermal,
                         struct cg_regime *regime)
{
    struct cg_cycle_input walls = regime->input;
    struct cg_mean_gas crown = cg_regime_responded(regime, &regime->crown);
    struct cg_performance *performance = &regime->performance;
    read_walls(c, thermal, regime, &walls);
    double flux = crown.coefficient *
                  (crown.temperature - walls.piston_temperature);
    if (performance->mean_flux != 0.0)
        performance->wall_heat_share *= flux / performance->mean_flux;
    performance->mean_flux = flux;
}

/* A full cycle for the walls as they are, and the settled state it makes;
 * `change`: by how much the walls then move [K]. */
static enum cg_status cycle_at_walls(const struct cg_case *c,
                                     struct cg_thermal *thermal,
                                     struct cg_regime_room *room,
                                     struct cg_regime *regime, double *change,
                                     struct cg_error *error)
{
    struct cg_cycle_input walls;
    read_walls(c, thermal, regime, &regime->input);
    regime->input.rough = false;
    regime->input.guess = regime->residual;
    regime->wall_rise = 0.0;
    enum cg_status status = run_cycle(c, thermal, room, regime, error);
    if (status == CG_OK)
        status = cg_regime_resettle(c, thermal, room, NEAR_TOLERANCE, regime,
                                    error);
    walls = regime->input;
    if (status == CG_OK)
        read_walls(c, thermal, regime, &walls);
    *change = wall_change(&walls, &regime->input);
    return status;
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

    if (guess != NULL)
        regime->input.guess = guess->residual;

    /* A rough cycle and its response to the walls bring the walls near; cycles
     * at the asked step, most often one, do the rest. */
    regime->input.rough = true;
    status = run_cycle(c, thermal, room, regime, error);
    if (status == CG_OK)
        status = cg_regime_respond(room, regime, error);
    if (status == CG_OK)
        status = cg_regime_settle(thermal, room, regime, error);
    if (status == CG_OK)
        status = cg_regime_resettle(c, thermal, room, NEAR_TOLERANCE, regime,
                                    error);
    double change = INFINITY;
    for (regime->passes = 2; status == CG_OK && change > WALL_TOLERANCE;
         regime->passes++) {
        if (regime->passes > PASSES)
            return cg_error_set(error, CG_NUMERICAL,
                                "settled state at %.0f rpm, load %.2f: wall "
                                "temperatures did not settle in %d passes",
                                regime->operating.speed * 60.0,
                                regime->operating.load, PASSES);
        status = cycle_at_walls(c, thermal, room, regime, &change, error);
    }
    memset(regime->film_solved, 0, sizeof regime->film_solved);
    if (status == CG_OK)
        status = settle_films(c, thermal, room, SETTLED_TOLERANCE, regime,
                              error);
    if (status == CG_OK)
        follow_walls(c, thermal, regime);
    return status;
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
    regime->input.rough = c->solver.rough_cycles;
    regime->input.guess = regime->residual;
    return run_cycle(c, thermal, room, regime, error);
}
