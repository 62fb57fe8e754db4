#include "operating_point.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "crevice.h"
#include "growth.h"
#include "outside.h"

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

enum cg_status cg_point_workspace_create(const struct cg_thermal *thermal,
                                         struct cg_point_workspace *workspace,
                                         struct cg_error *error)
{
    *workspace = (struct cg_point_workspace){NULL, NULL, NULL, NULL};
    workspace->cycle = malloc(sizeof *workspace->cycle);
    workspace->ring_film = malloc(sizeof *workspace->ring_film);
    workspace->ring_gas = malloc(sizeof *workspace->ring_gas);
    if (workspace->cycle == NULL || workspace->ring_film == NULL ||
        workspace->ring_gas == NULL) {
        cg_point_workspace_free(workspace);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    enum cg_status status =
        cg_stepper_create(thermal->network, &workspace->stepper, error);
    if (status != CG_OK)
        cg_point_workspace_free(workspace);
    return status;
}

void cg_point_workspace_free(struct cg_point_workspace *workspace)
{
    free(workspace->cycle);
    free(workspace->ring_film);
    free(workspace->ring_gas);
    cg_stepper_free(workspace->stepper);
    *workspace = (struct cg_point_workspace){NULL, NULL, NULL, NULL};
}

enum cg_status cg_point_create(const struct cg_thermal *thermal,
                               struct cg_operating_point *point,
                               struct cg_error *error)
{
    size_t stations = thermal->bore.grid.stations;
    memset(point, 0, sizeof *point);
    point->station = malloc(stations * sizeof *point->station);
    point->cylinder = malloc(CG_RING_FILM_POINTS * sizeof *point->cylinder);
    point->joint = calloc(stations, sizeof *point->joint);
    point->joint_search = malloc(stations * sizeof *point->joint_search);
    point->settled = malloc(thermal->network->nodes * sizeof *point->settled);
    if (point->station == NULL || point->cylinder == NULL ||
        point->joint == NULL || point->joint_search == NULL ||
        point->settled == NULL) {
        cg_point_free(point);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    return CG_OK;
}

void cg_point_free(struct cg_operating_point *point)
{
    free(point->station);
    free(point->cylinder);
    free(point->joint);
    free(point->joint_search);
    free(point->settled);
    point->station = NULL;
    point->joint_search = NULL;
    point->cylinder = point->joint = point->settled = NULL;
}

void cg_point_copy(const struct cg_thermal *thermal,
                   const struct cg_operating_point *from,
                   struct cg_operating_point *to)
{
    struct cg_operating_point own = *to;
    size_t stations = thermal->bore.grid.stations;
    *to = *from;
    to->station = own.station;
    to->cylinder = own.cylinder;
    to->joint = own.joint;
    to->joint_search = own.joint_search;
    to->settled = own.settled;
    memcpy(to->station, from->station, stations * sizeof *to->station);
    memcpy(to->cylinder, from->cylinder,
           CG_RING_FILM_POINTS * sizeof *to->cylinder);
    memcpy(to->joint, from->joint, stations * sizeof *to->joint);
    memcpy(to->joint_search, from->joint_search,
           stations * sizeof *to->joint_search);
    memcpy(to->settled, from->settled,
           thermal->network->nodes * sizeof *to->settled);
}

/* Steps every joint; returns the largest step still asked for, relative. */
static double step_joints(const struct cg_case *c,
                          const struct cg_thermal *thermal,
                          const double *temperature,
                          struct cg_operating_point *point)
{
    double most = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        struct cg_bore_growth growth;
        cg_growth_station(c, thermal, temperature, s, &growth);
        double asked = cg_joint_coefficient(&c->bore, growth.contact_pressure);
        most = fmax(most, cg_joint_step(asked, &point->joint_search[s]));
        point->joint[s] = point->joint_search[s].coefficient;
    }
    return most;
}

/* Wall temperatures for the cycle from the settled network. */
static void read_walls(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const struct cg_operating_point *point,
                       struct cg_cycle_input *walls)
{
    const struct cg_piston_map *piston = &thermal->piston;
    double crown = 0.0, area = 0.0, liner = 0.0, weight = 0.0;
    for (size_t i = 0; i <= piston->crown_cells; i++) {
        crown += piston->gas_area[i] * point->settled[piston->node[i]];
        area += piston->gas_area[i];
    }
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        double h = point->station[s].coefficient;
        liner += h * point->settled[cg_thermal_liner_node(thermal, s, 0)];
        weight += h;
    }
    double head = cg_outside_of(c).head * point->operating.cooling_flow;
    walls->crevice.temperature =
        cg_crevice_temperature(c, thermal, point->settled);
    walls->piston_temperature = crown / area;
    walls->liner_temperature = liner / weight;
    walls->head_temperature =
        (point->crown.coefficient * point->crown.temperature +
         head * point->operating.coolant_temperature) /
        (point->crown.coefficient + head);
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

enum cg_status cg_point_settle(struct cg_thermal *thermal,
                               struct cg_point_workspace *workspace,
                               struct cg_operating_point *point,
                               struct cg_error *error)
{
    cg_point_apply(point, point, 0.0, thermal);
    return cg_stepper_settle(workspace->stepper, thermal->network,
                             point->settled, error);
}

static void set_wall_rise(const struct cg_case *c,
                          const struct cg_thermal *thermal,
                          struct cg_operating_point *point)
{
    struct cg_cycle_input walls = point->input;
    read_walls(c, thermal, point, &walls);
    point->wall_rise = mean_wall(&walls) - mean_wall(&point->input);
    point->crevice_rise =
        walls.crevice.temperature - point->input.crevice.temperature;
}

/* Part of the way [1] towards what films and gas side settle to, until that is
 * where they are: thin oil at the highest speeds is so warmed by its own shear
 * that whole steps go to and fro. */
static enum cg_status
settle_slowly(const struct cg_case *c, struct cg_thermal *thermal,
              struct cg_point_workspace *workspace, double tolerance,
              struct cg_operating_point *point, struct cg_error *error)
{
    const double part = 0.25;
    size_t nodes = thermal->network->nodes;
    double size = INFINITY, *from = malloc(nodes * sizeof *from);
    enum cg_status status =
        from != NULL ? CG_OK : cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (int i = 0; i < CORRECTIONS && status == CG_OK && size > tolerance;
         i++) {
        memcpy(from, point->settled, nodes * sizeof *from);
        status = cg_point_set_films(c, thermal, workspace, point, error);
        if (status != CG_OK)
            break;
        set_wall_rise(c, thermal, point);
        status = cg_point_settle(thermal, workspace, point, error);
        size = 0.0;
        for (size_t k = 0; k < nodes; k++) {
            double step = point->settled[k] - from[k];
            size = fmax(size, fabs(step));
            point->settled[k] = from[k] + part * step;
        }
    }
    free(from);
    if (status != CG_OK || size <= tolerance)
        return status;
    return cg_error_set(error, CG_NUMERICAL,
                        "settled state at %.0f rpm, load %.2f: still moves by "
                        "%.2g K after %d corrections",
                        point->operating.speed * 60.0, point->operating.load,
                        size, CORRECTIONS);
}

/* Films and gas side depend mildly on the temperatures they shape, and are
 * brought up to date before every correction. */
static enum cg_status
settle_films(const struct cg_case *c, struct cg_thermal *thermal,
             struct cg_point_workspace *workspace, double tolerance,
             struct cg_operating_point *point, struct cg_error *error)
{
    const double slow = 0.5; /* a correction over the one before [1] */
    double before = INFINITY;
    for (int i = 0; i < CORRECTIONS; i++) {
        enum cg_status status =
            cg_point_set_films(c, thermal, workspace, point, error);
        if (status != CG_OK)
            return status;
        set_wall_rise(c, thermal, point);
        cg_point_apply(point, point, 0.0, thermal);
        double size = cg_stepper_correct(workspace->stepper, thermal->network,
                                         point->settled);
        bool served = size < slow * before;
        before = size;
        if (!served) {
            status = cg_stepper_settle(workspace->stepper, thermal->network,
                                       point->settled, error);
            if (status != CG_OK)
                return status;
            before = INFINITY;
        }
        if (served && size < tolerance)
            return CG_OK;
    }
    return settle_slowly(c, thermal, workspace, tolerance, point, error);
}

/* Of one cylinder [W]. */
static double crevice_power(const struct cg_cycle *cycle, double speed)
{
    return cycle->heat_crevice * 0.5 * speed;
}

/* Heat that the gas gives, whole engine [W]. */
static double wall_heat(const struct cg_performance *p)
{
    return p->head_heat + p->piston_heat + p->bore_heat + p->crevice_heat;
}

static void set_performance(const struct cg_case *c,
                            const struct cg_cycle *cycle,
                            struct cg_operating_point *point)
{
    struct cg_performance *out = &point->performance;
    double swept = cg_crank_swept(&point->input.crank);
    double rate = 0.5 * point->operating.speed * c->engine.cylinders;
    double speed =
        cg_crank_mean_speed(&point->input.crank, point->operating.speed);

    out->imep = cycle->imep_net;
    out->fmep = c->combustion.ignition == CG_IGNITION_COMPRESSION
                    ? cg_friction_mep_compression(cycle->peak_pressure, speed)
                    : cg_friction_mep(cycle->peak_pressure, speed);
    out->air_flow = cycle->air_mass * rate;
    out->fuel_flow = cycle->fuel_mass * rate;
    out->nitrous_flow = point->input.brought.nitrous * rate;
    out->water_flow = point->input.brought.water * rate;
    out->alcohol_flow = point->input.brought.alcohol * rate;
    out->fuel_power = cycle->fuel_energy * rate;
    out->brake_power = (out->imep - out->fmep) * swept * rate;
    out->brake_power -= out->air_flow * point->charge.belt_work;
    out->bmep = out->brake_power / (swept * rate);
    out->peak_pressure = cycle->peak_pressure;
    out->peak_rise = cycle->peak_rise;
    out->exhaust_temperature = cycle->exhaust_temperature;
    out->head_heat = cycle->heat_head * rate;
    out->piston_heat = cycle->heat_piston * rate;
    out->bore_heat = cycle->heat_liner * rate;
    out->crevice_heat = cycle->heat_crevice * rate;
    out->wall_heat_share = wall_heat(out) / out->fuel_power;
    out->evaporation_heat = cycle->heat_evaporation * rate;
    out->unburned_power = cycle->unburned_energy * rate;
    out->energy_residual = cycle->energy_residual;
    out->burn50_deg = cycle->burn50_deg;
    out->ignition_deg = cycle->ignition_deg;
    out->premixed_share = cycle->premixed_share;
    out->knock_integral = cycle->knock_integral;
    out->knock_unretarded = cycle->knock_unretarded;
    out->peak_flux =
        cg_gas_side_peak_flux(cycle, point->input.piston_temperature);
    out->mean_flux =
        point->crown.coefficient *
        (point->crown.temperature - point->input.piston_temperature);
    point->crevice = crevice_power(cycle, point->operating.speed);
    point->friction = c->piston.friction_share * out->fmep * swept * 0.5 *
                      point->operating.speed;
}

/* First guess, typical of full load (common practice, no source). */
static void guess_walls(const struct cg_operating_point *point,
                        struct cg_cycle_input *walls)
{
    walls->head_temperature = point->operating.coolant_temperature + 100.0;
    walls->piston_temperature = 520.0;
    walls->crevice.temperature = 480.0;
    walls->liner_temperature = point->operating.coolant_temperature + 40.0;
}

static void copy_walls(const struct cg_cycle_input *from,
                       struct cg_cycle_input *to)
{
    to->head_temperature = from->head_temperature;
    to->piston_temperature = from->piston_temperature;
    to->liner_temperature = from->liner_temperature;
    to->crevice.temperature = from->crevice.temperature;
}

/* One pass: cycle for the walls in input, gas side from the cycle. */
static enum cg_status run_cycle(const struct cg_case *c,
                                const struct cg_thermal *thermal,
                                struct cg_point_workspace *workspace,
                                struct cg_operating_point *point,
                                struct cg_error *error)
{
    enum cg_status status =
        cg_cycle_run(&point->input, workspace->cycle, error);
    if (status != CG_OK)
        return status;
    point->residual = workspace->cycle->residual;
    point->crown = cg_gas_side_crown(workspace->cycle);
    cg_gas_side_stations(workspace->cycle, &thermal->bore.grid, point->station);
    cg_ring_film_cylinder(workspace->cycle, point->cylinder);
    memset(point->film_solved, 0, sizeof point->film_solved);
    set_performance(c, workspace->cycle, point);
    return CG_OK;
}

/* Joints of a pressed liner follow the pressure that their own heat makes. */
enum cg_status
cg_point_resettle(const struct cg_case *c, struct cg_thermal *thermal,
                  struct cg_point_workspace *workspace, double tolerance,
                  struct cg_operating_point *point, struct cg_error *error)
{
    bool pressed = c->bore.seat == CG_SEAT_PRESSED;
    double joint_step = pressed ? INFINITY : 0.0;
    enum cg_status status =
        settle_films(c, thermal, workspace, tolerance, point, error);
    for (int pass = 0; status == CG_OK && joint_step > JOINT_TOLERANCE;
         pass++) {
        if (pass == JOINT_PASSES)
            return cg_error_set(error, CG_NUMERICAL,
                                "settled state at %.0f rpm, load %.2f: the "
                                "joint of liner and block did not settle",
                                point->operating.speed * 60.0,
                                point->operating.load);
        joint_step = step_joints(c, thermal, point->settled, point);
        status = settle_films(c, thermal, workspace, tolerance, point, error);
    }
    return status;
}

static int burn_place(const struct cg_cycle_input *input, double burn50_deg)
{
    if (input->injection.on)
        return 0;
    return (burn50_deg > input->burn50_deg) +
           (burn50_deg >= input->burn50_deg + input->knock.retard_most);
}

int cg_burn_place(const struct cg_operating_point *point)
{
    return burn_place(&point->input, point->performance.burn50_deg);
}

/* What walls that much warmer [K], as in `input`, make of the gas side; *place
 * receives where their burn comes to. */
static enum cg_status respond_to(const struct cg_cycle_input *input,
                                 double rise,
                                 struct cg_point_workspace *workspace,
                                 struct cg_operating_point *point,
                                 struct cg_gas_response *response, int *place,
                                 struct cg_error *error)
{
    struct cg_cycle *cycle = workspace->cycle;
    enum cg_status status = cg_cycle_run(input, cycle, error);
    if (status != CG_OK)
        return status;
    /* Begun from a like cycle, its pair is the better one to go on with. */
    point->residual = cycle->residual;
    struct cg_mean_gas warmer = cg_gas_side_crown(cycle);
    const struct cg_mean_gas *crown = &point->crown;
    double crevice = crevice_power(cycle, input->speed);
    *response = (struct cg_gas_response){
        (warmer.coefficient / crown->coefficient - 1.0) / rise,
        (warmer.temperature / crown->temperature - 1.0) / rise,
        point->crevice > 0.0 ? (crevice / point->crevice - 1.0) / rise : 0.0};
    *place = burn_place(input, cycle->burn50_deg);
    return CG_OK;
}

/* By cycles with the crevices, then all other walls, that much warmer [K];
 * *same: their burns stay at the place of the point's. */
static enum cg_status respond_by(double rise,
                                 struct cg_point_workspace *workspace,
                                 struct cg_operating_point *point, bool *same,
                                 struct cg_error *error)
{
    struct cg_cycle_input input = point->input;
    struct cg_wall_response *response = &point->response;
    int walls = response->place, crevices = response->place;
    enum cg_status status = CG_OK;
    response->crevices = (struct cg_gas_response){0.0, 0.0, 0.0};
    input.guess = point->residual;
    if (point->crevice > 0.0) {
        input.crevice.temperature += rise;
        status = respond_to(&input, rise, workspace, point, &response->crevices,
                            &crevices, error);
        input.crevice.temperature -= rise;
    }
    input.guess = point->residual;
    input.head_temperature += rise;
    input.piston_temperature += rise;
    input.liner_temperature += rise;
    if (status == CG_OK)
        status = respond_to(&input, rise, workspace, point, &response->walls,
                            &walls, error);
    *same = walls == response->place && crevices == response->place;
    return status;
}

enum cg_status cg_point_respond(struct cg_point_workspace *workspace,
                                struct cg_operating_point *point,
                                struct cg_error *error)
{
    const double rise = 20.0; /* [K]: well above the roughness of the cycles */
    bool same;
    point->response.place = cg_burn_place(point);
    enum cg_status status = respond_by(rise, workspace, point, &same, error);
    if (status == CG_OK && !same)
        status = respond_by(-rise, workspace, point, &same, error);
    /* On the edge of knock both ways lead elsewhere: what lies between is a
     * step, no slope, and followed as one would run away. */
    if (!same)
        point->response =
            (struct cg_wall_response){.place = point->response.place};
    return status;
}

/* The heats of the performance, brought from the walls of the cycle to those it
 * settled with. */
static void follow_walls(const struct cg_case *c,
                         const struct cg_thermal *thermal,
                         struct cg_operating_point *point)
{
    struct cg_cycle_input walls = point->input;
    struct cg_mean_gas crown = cg_point_responded(point, &point->crown);
    struct cg_performance *performance = &point->performance;
    read_walls(c, thermal, point, &walls);
    double flux =
        crown.coefficient * (crown.temperature - walls.piston_temperature);
    if (performance->mean_flux != 0.0) {
        double ratio = flux / performance->mean_flux;
        performance->head_heat *= ratio;
        performance->piston_heat *= ratio;
        performance->bore_heat *= ratio;
    }
    performance->crevice_heat = cg_point_crevice(point) * c->engine.cylinders;
    performance->wall_heat_share =
        wall_heat(performance) / performance->fuel_power;
    performance->mean_flux = flux;
}

enum cg_status cg_point_renew(const struct cg_case *c,
                              struct cg_thermal *thermal,
                              struct cg_point_workspace *workspace,
                              struct cg_operating_point *point, double *change,
                              struct cg_error *error)
{
    struct cg_cycle_input walls;
    read_walls(c, thermal, point, &point->input);
    point->input.rough = false;
    point->input.guess = point->residual;
    point->wall_rise = point->crevice_rise = 0.0;
    enum cg_status status = run_cycle(c, thermal, workspace, point, error);
    if (status == CG_OK)
        status = cg_point_resettle(c, thermal, workspace, NEAR_TOLERANCE, point,
                                   error);
    walls = point->input;
    if (status == CG_OK)
        read_walls(c, thermal, point, &walls);
    *change = wall_change(&walls, &point->input);
    return status;
}

/* The response anew where the burn has come to another place with the walls. */
static enum cg_status respond_again(const struct cg_case *c,
                                    const struct cg_thermal *thermal,
                                    struct cg_point_workspace *workspace,
                                    struct cg_operating_point *point,
                                    struct cg_error *error)
{
    point->input.rough = true;
    point->input.guess = point->residual;
    enum cg_status status = run_cycle(c, thermal, workspace, point, error);
    return status == CG_OK ? cg_point_respond(workspace, point, error) : status;
}

enum cg_status cg_point_solve(const struct cg_case *c,
                              struct cg_thermal *thermal,
                              struct cg_point_workspace *workspace,
                              const struct cg_operating_point *guess,
                              struct cg_operating_point *point,
                              struct cg_error *error)
{
    cg_operating_charge(c, &point->operating, &point->charge);
    enum cg_status status =
        cg_operating_cycle_input(c, &point->operating, &point->input, error);
    if (status != CG_OK)
        return status;
    cg_crevice_set(c, &point->input);
    if (guess != NULL)
        copy_walls(&guess->input, &point->input);
    else
        guess_walls(point, &point->input);
    for (int r = 0; r < CG_RINGS; r++)
        point->film[r] = c->ring[r].film * c->scale.film;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        cg_joint_begin(&c->bore, &point->joint_search[s]);
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        point->joint[s] = point->joint_search[s].coefficient;

    if (guess != NULL)
        point->input.guess = guess->residual;

    /* A rough cycle and its response to the walls bring the walls near; cycles
     * at the asked step, most often one, do the rest. */
    point->input.rough = true;
    status = run_cycle(c, thermal, workspace, point, error);
    if (status == CG_OK)
        status = cg_point_respond(workspace, point, error);
    if (status == CG_OK)
        status = cg_point_settle(thermal, workspace, point, error);
    if (status == CG_OK)
        status = cg_point_resettle(c, thermal, workspace, NEAR_TOLERANCE, point,
                                   error);
    double change = INFINITY;
    bool first = true;
    for (point->passes = 2; status == CG_OK && change > WALL_TOLERANCE;
         point->passes++) {
        if (point->passes > PASSES)
            return cg_error_set(error, CG_NUMERICAL,
                                "settled state at %.0f rpm, load %.2f: wall "
                                "temperatures did not settle in %d passes",
                                point->operating.speed * 60.0,
                                point->operating.load, PASSES);
        status = cg_point_renew(c, thermal, workspace, point, &change, error);
        if (status == CG_OK && first &&
            point->response.place != cg_burn_place(point)) {
            status = respond_again(c, thermal, workspace, point, error);
            change = INFINITY;
            first = false;
        }
    }
    memset(point->film_solved, 0, sizeof point->film_solved);
    if (status == CG_OK)
        status = settle_films(c, thermal, workspace, SETTLED_TOLERANCE, point,
                              error);
    if (status == CG_OK)
        follow_walls(c, thermal, point);
    return status;
}

enum cg_status cg_point_cycle(const struct cg_case *c,
                              const struct cg_thermal *thermal,
                              struct cg_point_workspace *workspace,
                              struct cg_operating_point *point,
                              struct cg_error *error)
{
    const struct cg_cycle_input walls = point->input;
    cg_operating_charge(c, &point->operating, &point->charge);
    enum cg_status status =
        cg_operating_cycle_input(c, &point->operating, &point->input, error);
    if (status != CG_OK)
        return status;
    cg_crevice_set(c, &point->input);
    copy_walls(&walls, &point->input);
    point->input.rough = c->solver.rough_cycles;
    point->input.guess = point->residual;
    return run_cycle(c, thermal, workspace, point, error);
}
