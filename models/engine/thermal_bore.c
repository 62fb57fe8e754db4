/* Liner stations with their block layer. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "constants.h"
#include "geometry.h"
#include "outside.h"
#include "thermal_parts.h"

static struct cg_solid solid_at(const struct cg_material *material,
                                double temperature)
{
    return (struct cg_solid){
        cg_curve_at(&material->conductivity, temperature),
        material->density * cg_curve_at(&material->heat_capacity, temperature)};
}

/* Share of the station's height that has coolant or fins behind it. */
static double share_behind(const struct cg_outside *outside,
                           const struct cg_bore_grid *grid, size_t station)
{
    double height = cg_station_height(grid);
    double top = (double)station * height;
    double from = fmax(top, outside->top);
    double to = fmin(top + height, outside->top + outside->length);
    return fmax(to - from, 0.0) / height;
}

/* Coefficient on a station's outside, at the flow that it is given for. */
static double outside_at(const struct cg_outside *outside,
                         const struct cg_bore_grid *grid, size_t station)
{
    double wet = share_behind(outside, grid, station);
    double dry = cg_station_depth(grid, station) < outside->top
                     ? outside->above
                     : outside->below;
    return wet * outside->behind + (1.0 - wet) * dry;
}

/* What the coolant's or the air's baths conduct at a flow of 1. */
static enum cg_status fill_outside(const struct cg_case *c, double outer_area,
                                   struct cg_bore_map *bore,
                                   struct cg_error *error)
{
    const struct cg_outside outside = cg_outside_of(c);
    double area = cg_air_cooled(c) ? bore->surface_area : outer_area;
    bore->air_cooled = cg_air_cooled(c);
    if (bore->outside == NULL)
        bore->outside = malloc(bore->grid.stations * sizeof *bore->outside);
    if (bore->outside == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t s = 0; s < bore->grid.stations; s++)
        bore->outside[s] = outside_at(&outside, &bore->grid, s) * area;
    return CG_OK;
}

/* Share of crank time that a station lies below the skirt, open to oil mist. */
static double mist_share(const struct cg_case *c,
                         const struct cg_stroke *stroke,
                         const struct cg_bore_grid *grid, size_t station)
{
    double reach = cg_skirt_offset(c) + c->piston.skirt_length;
    double depth = cg_station_depth(grid, station);
    int open = 0;
    for (int a = 0; a < CG_STROKE_ANGLES; a++)
        open += stroke->depth[a] + reach < depth;
    return (double)open / CG_STROKE_ANGLES;
}

static enum cg_status fill_mist(const struct cg_case *c,
                                const struct cg_stroke *stroke,
                                struct cg_bore_map *bore,
                                struct cg_error *error)
{
    bore->mist_share =
        malloc(bore->grid.stations * sizeof *bore->mist_share);
    if (bore->mist_share == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t s = 0; s < bore->grid.stations; s++)
        bore->mist_share[s] = mist_share(c, stroke, &bore->grid, s);
    return CG_OK;
}

static enum cg_status fill_weights(const struct cg_chain *chain,
                                   double **weight, struct cg_error *error)
{
    size_t nodes = cg_chain_nodes(chain);
    double total = 0.0;
    if (*weight == NULL)
        *weight = malloc(nodes * sizeof **weight);
    if (*weight == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    for (size_t i = 0; i < nodes; i++)
        total += (*weight)[i] = cg_chain_flat_area(chain, i);
    for (size_t i = 0; i < nodes; i++)
        (*weight)[i] /= total;
    return CG_OK;
}

/* Conduction along the bore between like radii of two stations. */
static enum cg_status link_stations(struct cg_thermal *thermal,
                                    const struct cg_chain *upper,
                                    const struct cg_chain *lower,
                                    struct cg_error *error)
{
    double height = cg_station_height(&thermal->bore.grid);
    for (size_t i = 0; i < cg_chain_nodes(upper); i++) {
        double conductance = upper->solid.conductivity *
                             cg_chain_flat_area(upper, i) / height;
        enum cg_status status =
            cg_network_add_link(thermal->network, upper->first + i,
                                lower->first + i, conductance, NULL, error);
        if (status != CG_OK)
            return status;
    }
    return CG_OK;
}

/* One station: liner chain, joint and block chain. */
static enum cg_status add_station(struct cg_thermal *thermal, size_t s,
                                  struct cg_chain *liner,
                                  struct cg_chain *block,
                                  struct cg_error *error)
{
    char name[48] = "";
    if (!cg_network_has_name(thermal->network))
        snprintf(name, sizeof name, "liner_%02zu", s + 1);
    enum cg_status status =
        cg_chain_add(thermal->network, name, liner, error);
    if (status == CG_OK && thermal->bore.has_block) {
        if (!cg_network_has_name(thermal->network))
            snprintf(name, sizeof name, "block_%02zu", s + 1);
        status = cg_chain_add(thermal->network, name, block, error);
    }
    return status;
}

static enum cg_status add_chains(struct cg_thermal *thermal,
                                 struct cg_chain liner, struct cg_chain block,
                                 struct cg_error *error)
{
    struct cg_chain upper_liner = liner, upper_block = block;
    bool has_block = thermal->bore.has_block;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        enum cg_status status = add_station(thermal, s, &liner, &block, error);
        if (status == CG_OK && s > 0)
            status = link_stations(thermal, &upper_liner, &liner, error);
        if (status == CG_OK && s > 0 && has_block)
            status = link_stations(thermal, &upper_block, &block, error);
        if (status != CG_OK)
            return status;
        upper_liner = liner;
        upper_block = block;
    }
    return CG_OK;
}

/* Joint links, then gas, coolant and mist baths, then friction sources: each
 * kind for all stations in a row, so that one index finds them. */
static enum cg_status add_sides(const struct cg_case *c,
                                struct cg_thermal *thermal, double outer,
                                struct cg_error *error)
{
    struct cg_network *network = thermal->network;
    struct cg_bore_map *bore = &thermal->bore;
    size_t stations = bore->grid.stations;
    double height = cg_station_height(&bore->grid);
    double outer_area = 2.0 * CG_PI * outer * height;
    enum cg_status status = fill_outside(c, outer_area, bore, error);

    bore->joint_link = network->links;
    for (size_t s = 0; s < stations && bore->has_block && status == CG_OK; s++)
        status = cg_network_add_link(
            network, cg_thermal_liner_node(thermal, s, bore->liner_nodes - 1),
            cg_thermal_liner_node(thermal, s, bore->liner_nodes),
            c->bore.joint_coefficient * bore->joint_area, NULL, error);

    bore->gas_bath = network->baths;
    for (size_t s = 0; s < stations && status == CG_OK; s++)
        status = cg_network_add_bath(network,
                                     cg_thermal_liner_node(thermal, s, 0), 0.0,
                                     CG_COLD_TEMPERATURE, CG_SIDE_GAS, NULL,
                                     error);

    bore->coolant_bath = network->baths;
    for (size_t s = 0; s < stations && status == CG_OK; s++) {
        size_t last = cg_thermal_liner_node(thermal, s, bore->per_station - 1);
        status = cg_network_add_bath(network, last, bore->outside[s],
                                     cg_outside_temperature(c),
                                     bore->air_cooled ? CG_SIDE_AIR
                                                      : CG_SIDE_COOLANT,
                                     NULL, error);
    }

    for (size_t s = 0; s < stations && status == CG_OK; s++)
        status = cg_network_add_bath(
            network, cg_thermal_liner_node(thermal, s, 0),
            c->cooling.bore_splash * bore->surface_area *
                bore->mist_share[s],
            c->cooling.oil_temperature, CG_SIDE_OIL, NULL, error);

    bore->source = network->sources;
    for (size_t s = 0; s < stations && status == CG_OK; s++)
        status = cg_network_add_source(network,
                                       cg_thermal_liner_node(thermal, s, 0),
                                       0.0, CG_SIDE_FRICTION, NULL, error);
    return status;
}

enum cg_status cg_thermal_add_bore(const struct cg_case *c,
                                   struct cg_thermal *thermal,
                                   struct cg_error *error)
{
    struct cg_bore_map *bore = &thermal->bore;
    double inner = 0.5 * c->engine.bore;
    double joint = inner + c->bore.wall_thickness;
    bore->has_block =
        c->bore.seat == CG_SEAT_CAST_IN || c->bore.seat == CG_SEAT_PRESSED;
    double outer = joint + (bore->has_block ? c->bore.block_thickness : 0.0);
    bore->grid = (struct cg_bore_grid){(size_t)c->solver.stations,
                                       cg_bore_length(c)};
    double height = cg_station_height(&bore->grid);

    struct cg_chain liner = {
        .shape = CG_CHAIN_RADIAL, .from = inner, .to = joint, .width = height,
        .solid = solid_at(&c->bore_material, CG_BORE_REFERENCE),
        .cells = (size_t)c->solver.liner_cells,
        .nodes_on_faces = true};
    struct cg_chain block = {
        .shape = CG_CHAIN_RADIAL, .from = joint, .to = outer, .width = height,
        .solid = liner.solid, .cells = (size_t)c->solver.block_cells,
        .nodes_on_faces = true};
    if (bore->has_block)
        block.solid = solid_at(&c->block_material, CG_BORE_REFERENCE);

    bore->liner_nodes = cg_chain_nodes(&liner);
    bore->block_nodes = bore->has_block ? cg_chain_nodes(&block) : 0;
    bore->per_station = bore->liner_nodes + bore->block_nodes;
    bore->surface_area = 2.0 * CG_PI * inner * height;
    bore->joint_area = 2.0 * CG_PI * joint * height;

    enum cg_status status = fill_weights(&liner, &bore->liner_weight, error);
    if (status == CG_OK && bore->has_block)
        status = fill_weights(&block, &bore->block_weight, error);
    if (status == CG_OK && !thermal->shares_known)
        status = fill_mist(c, &thermal->stroke, bore, error);
    if (status == CG_OK)
        status = add_chains(thermal, liner, block, error);
    if (status == CG_OK)
        status = add_sides(c, thermal, outer, error);
    return status;
}
