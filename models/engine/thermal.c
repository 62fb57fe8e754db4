#include "thermal.h"

#include <math.h>
#include <stdlib.h>

#include "constants.h"
#include "geometry.h"
#include "thermal_parts.h"

size_t cg_thermal_liner_node(const struct cg_thermal *thermal,
                             size_t station, size_t cell)
{
    return station * thermal->bore.per_station + cell;
}

enum cg_status cg_thermal_link_to_bore(struct cg_thermal *thermal,
                                       size_t node, double conductance,
                                       const double *share,
                                       struct cg_error *error)
{
    enum cg_status status = CG_OK;
    for (size_t s = 0; s < thermal->bore.grid.stations && status == CG_OK; s++)
        if (share[s] > 0.0)
            status = cg_network_add_link(
                thermal->network, node, cg_thermal_liner_node(thermal, s, 0),
                conductance * share[s], NULL, error);
    return status;
}

const double cg_friction_part[CG_RINGS + 1] = {0.13, 0.09, 0.28, 0.50};

/* Where ring pack and skirt rub. */
static enum cg_status fill_friction_share(const struct cg_case *c,
                                          const struct cg_stroke *stroke,
                                          struct cg_bore_map *bore,
                                          struct cg_error *error)
{
    size_t stations = bore->grid.stations;
    double *path = malloc(stations * sizeof *path);
    bore->friction_share = calloc(stations, sizeof *bore->friction_share);
    if (path == NULL || bore->friction_share == NULL) {
        free(path);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    for (int part = 0; part <= CG_RINGS; part++) {
        bool ring = part < CG_RINGS;
        double offset = ring ? cg_ring_offset(c, (enum cg_ring_place)part)
                             : cg_skirt_offset(c);
        double height = ring ? c->ring[part].width : c->piston.skirt_length;
        cg_share_path(stroke, &bore->grid, offset, height, path);
        for (size_t s = 0; s < stations; s++)
            bore->friction_share[s] += cg_friction_part[part] * path[s];
    }
    free(path);
    return CG_OK;
}

enum cg_status cg_thermal_refill(const struct cg_case *c,
                                 struct cg_thermal *thermal,
                                 struct cg_error *error)
{
    cg_network_rewind(thermal->network);
    enum cg_status status = cg_thermal_add_bore(c, thermal, error);
    if (status == CG_OK)
        status = cg_thermal_add_piston(c, thermal, error);
    if (status == CG_OK)
        status = cg_thermal_add_crevice(c, thermal, error);
    if (status == CG_OK && !thermal->shares_known)
        status =
            fill_friction_share(c, &thermal->stroke, &thermal->bore, error);
    thermal->shares_known = status == CG_OK;
    return status;
}

enum cg_status cg_thermal_create(const struct cg_case *c,
                                 struct cg_thermal **thermal,
                                 struct cg_error *error)
{
    struct cg_thermal *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    struct cg_crank crank = cg_case_crank(c);
    cg_stroke_set(&made->stroke, &crank);
    enum cg_status status = cg_network_create(&made->network, error);
    if (status == CG_OK)
        status = cg_thermal_refill(c, made, error);
    if (status != CG_OK) {
        cg_thermal_free(made);
        return status;
    }
    *thermal = made;
    return CG_OK;
}

void cg_thermal_free(struct cg_thermal *thermal)
{
    if (thermal == NULL)
        return;
    cg_network_free(thermal->network);
    free(thermal->piston.node);
    free(thermal->piston.gas_area);
    free(thermal->piston.bore_share);
    for (int r = 0; r < CG_RINGS; r++) {
        free(thermal->ring[r].flat_weight);
        free(thermal->ring[r].share);
    }
    free(thermal->bore.liner_weight);
    free(thermal->bore.block_weight);
    free(thermal->bore.friction_share);
    free(thermal->bore.mist_share);
    free(thermal->bore.outside);
    free(thermal->crevice.part);
    free(thermal);
}

static double weighted(const double *weight, const double *value, size_t n)
{
    double sum = 0.0;
    for (size_t i = 0; i < n; i++)
        sum += weight[i] * value[i];
    return sum;
}

double cg_thermal_liner_mean(const struct cg_thermal *thermal,
                             const double *temperature, size_t station)
{
    size_t first = cg_thermal_liner_node(thermal, station, 0);
    return weighted(thermal->bore.liner_weight, temperature + first,
                    thermal->bore.liner_nodes);
}

double cg_thermal_block_mean(const struct cg_thermal *thermal,
                             const double *temperature, size_t station)
{
    size_t first =
        cg_thermal_liner_node(thermal, station, thermal->bore.liner_nodes);
    return weighted(thermal->bore.block_weight, temperature + first,
                    thermal->bore.block_nodes);
}

double cg_thermal_ring_mean(const struct cg_thermal *thermal,
                            const double *temperature,
                            enum cg_ring_place place)
{
    const struct cg_ring_map *ring = &thermal->ring[place];
    return weighted(ring->flat_weight, temperature + ring->chain.first,
                    cg_chain_nodes(&ring->chain));
}

struct cg_between cg_thermal_between(const struct cg_thermal *thermal,
                                     double depth)
{
    const struct cg_bore_grid *grid = &thermal->bore.grid;
    double last = (double)(grid->stations - 1);
    double place = depth / cg_station_height(grid) - 0.5;
    place = fmin(fmax(place, 0.0), last);
    size_t lower = (size_t)fmin(floor(place), last - 1.0);
    return (struct cg_between){lower, place - (double)lower};
}

double cg_thermal_bore_at(const struct cg_thermal *thermal,
                          const double *temperature, double depth)
{
    struct cg_between at = cg_thermal_between(thermal, depth);
    double upper = temperature[cg_thermal_liner_node(thermal, at.station, 0)];
    double lower =
        temperature[cg_thermal_liner_node(thermal, at.station + 1, 0)];
    return upper + at.part * (lower - upper);
}
