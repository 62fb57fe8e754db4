/* Readings from a thermal state, for the lesson. */
#include "choke.h"
#include "clearance.h"
#include "constants.h"
#include "growth.h"
#include "lesson_parts.h"
#include "thermal_parts.h"

size_t cg_lesson_workspace(const struct cg_thermal *thermal)
{
    return 2 * thermal->bore.grid.stations;
}

void cg_lesson_growth_at(const struct cg_case *c,
                         const struct cg_thermal *thermal,
                         const double *temperature, double *workspace,
                         struct cg_lesson_growth *growth)
{
    size_t stations = thermal->bore.grid.stations;
    double *strain = workspace, *wall = workspace + stations;
    cg_growth_bore(c, thermal, temperature, strain);
    for (size_t s = 0; s < stations; s++)
        wall[s] = cg_thermal_liner_mean(thermal, temperature, s);
    double ring = cg_growth_ring(c, thermal, temperature, CG_RING_TOP);
    struct cg_closure closure = cg_growth_closure(
        c, thermal, strain, ring, CG_RING_TOP, c->margin.residual);
    double narrower = cg_choke_at(c, closure.depth);
    double hot = cg_growth_at_depth(thermal, strain, closure.depth);
    *growth = (struct cg_lesson_growth){
        .ring_temperature =
            cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP),
        .wall_temperature = cg_growth_at_depth(thermal, wall, closure.depth),
        .ring_strain = ring,
        .bore_strain =
            narrower > 0.0
                ? (1.0 + hot) / (1.0 - narrower / c->engine.bore) - 1.0
                : hot,
        .choke = CG_PI * narrower - cg_choke_gap(c),
        .depth = closure.depth,
        .closure = closure.closure};
}

static size_t station_near(const struct cg_thermal *thermal, double depth)
{
    double place = depth / cg_station_height(&thermal->bore.grid);
    size_t last = thermal->bore.grid.stations - 1;
    return place < (double)last ? (size_t)place : last;
}

static struct cg_lesson_layer layer_at(const struct cg_case *c,
                                       const struct cg_material *material,
                                       double temperature)
{
    return (struct cg_lesson_layer){
        temperature,
        c->scale.bore_expansion * cg_material_strain(material, temperature),
        cg_curve_at(&material->modulus, temperature)};
}

void cg_lesson_wall_at(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const double *temperature, double depth,
                       struct cg_lesson_wall *wall)
{
    size_t station = station_near(thermal, depth);
    struct cg_bore_growth growth;
    cg_growth_station(c, thermal, temperature, station, &growth);
    *wall = (struct cg_lesson_wall){
        .has_block = thermal->bore.has_block,
        .open = growth.open,
        .liner = layer_at(c, &c->bore_material,
                          cg_thermal_liner_mean(thermal, temperature, station)),
        .bore_strain = growth.radial / (0.5 * c->engine.bore)};
    if (wall->has_block)
        wall->block =
            layer_at(c, &c->block_material,
                     cg_thermal_block_mean(thermal, temperature, station));
}

/* Bore surface, weighted by the time the ring spends on it. */
static double bore_met(const struct cg_thermal *thermal,
                       const double *temperature)
{
    const double *share = thermal->ring[CG_RING_TOP].share;
    double sum = 0.0, total = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        sum += share[s] * temperature[cg_thermal_liner_node(thermal, s, 0)];
        total += share[s];
    }
    return sum / total;
}

static double mean_pressure(const struct cg_operating_point *point)
{
    double sum = 0.0;
    for (size_t i = 0; i < CG_RING_FILM_POINTS; i++)
        sum += point->cylinder[i];
    return sum / CG_RING_FILM_POINTS;
}

static void read_settled(const struct cg_case *c,
                         const struct cg_thermal *thermal,
                         const double *settled, double *strain,
                         struct cg_lesson_heat *heat)
{
    const struct cg_piston_map *piston = &thermal->piston;
    heat->crown = settled[piston->node[0]];
    heat->groove = settled[piston->groove[CG_RING_TOP]];
    heat->ring = cg_thermal_ring_mean(thermal, settled, CG_RING_TOP);
    heat->bore = bore_met(thermal, settled);
    cg_growth_bore(c, thermal, settled, strain);
    struct cg_clearance clearance;
    cg_clearance_hot(c, thermal, settled, strain, &clearance);
    heat->land_clearance = 0.5 * clearance.land[CG_RING_TOP];
}

enum cg_status cg_lesson_heat_of(const struct cg_case *c,
                                 struct cg_duty_run *run, double *workspace,
                                 struct cg_lesson_heat *heat,
                                 struct cg_error *error)
{
    const struct cg_operating_point *full = &run->point[run->full_load];
    const struct cg_cycle *cycle = run->workspace.cycle;
    enum cg_status status =
        cg_cycle_run(&full->input, run->workspace.cycle, error);
    if (status != CG_OK)
        return status;
    heat->charge = full->charge;
    heat->air = cycle->air_mass;
    heat->fuel = cycle->fuel_mass;
    heat->fuel_energy = cycle->fuel_energy;
    heat->crown_heat = cycle->heat_piston;
    heat->wall_heat = cycle->heat_head + cycle->heat_piston + cycle->heat_liner;
    heat->mean_pressure = mean_pressure(full);
    heat->film = full->film[CG_RING_TOP];
    heat->oil_conductivity = CG_OIL_CONDUCTIVITY;
    heat->ring_conductivity =
        run->thermal->ring[CG_RING_TOP].chain.solid.conductivity;
    read_settled(c, run->thermal, full->settled, workspace, heat);
    return CG_OK;
}
