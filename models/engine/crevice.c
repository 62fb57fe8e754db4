#include "crevice.h"

#include <math.h>
#include <stdlib.h>

#include "clearance.h"
#include "constants.h"
#include "geometry.h"
#include "thermal_parts.h"

/* Share of its heat that gas bound for the groove leaves at the land: 1 - 1/e,
 * as the laminar flow between two walls has h A = m cp nearly (Nu 7.5 on twice
 * the hot clearance, some milligrams in a millisecond): derived. */
static const double left_at_land = 0.63;

double cg_crevice_clearance(const struct cg_case *c, double cold)
{
    double bore = c->scale.bore_expansion *
                  cg_material_strain(&c->bore_material, CG_BORE_REFERENCE);
    double land =
        cg_material_strain(&c->piston_material, CG_PISTON_REFERENCE);
    return fmax(cg_clearance_across(c->engine.bore, cold, bore, land),
                0.2 * cold);
}

static double land_volume(const struct cg_case *c)
{
    return CG_PI * c->engine.bore * c->piston.top_land * 0.5 *
           cg_crevice_clearance(c, c->piston.land_clearance);
}

void cg_crevice_set(const struct cg_case *c, struct cg_cycle_input *input)
{
    double most = 0.5 * cg_crank_clearance(&input->crank);
    double volume = land_volume(c) + cg_groove_volume(c, CG_RING_TOP);
    input->crevice.volume = fmin(volume, most);
    input->crevice.share = c->combustion.crevice_heat;
    input->crevice_in_law = c->combustion.crevice_in_law;
}

double cg_crevice_temperature(const struct cg_case *c,
                              const struct cg_thermal *thermal,
                              const double *temperature)
{
    const struct cg_piston_map *piston = &thermal->piston;
    double in_land = land_volume(c), behind = cg_groove_volume(c, CG_RING_TOP);
    double land = temperature[piston->node[piston->land[CG_RING_TOP]]];
    double bore =
        cg_thermal_bore_at(thermal, temperature, 0.5 * c->piston.top_land);
    double groove = temperature[piston->groove[CG_RING_TOP]];
    double ring = cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP);
    return (in_land + behind) /
           (2.0 * in_land / (land + bore) + 2.0 * behind / (groove + ring));
}

/* Share of the land beside a station at top dead centre. */
static double beside_land(const struct cg_case *c,
                          const struct cg_bore_grid *grid, size_t station)
{
    double height = cg_station_height(grid);
    double top = (double)station * height, end = c->piston.top_land;
    return fmax(fmin(top + height, end) - top, 0.0) / end;
}

static enum cg_status add_part(struct cg_thermal *thermal, size_t node,
                               double part, struct cg_error *error)
{
    struct cg_crevice_map *map = &thermal->crevice;
    map->part[map->sources++] = part;
    return cg_network_add_source(thermal->network, node, 0.0, CG_SIDE_GAS, NULL,
                                 error);
}

enum cg_status cg_thermal_add_crevice(const struct cg_case *c,
                                      struct cg_thermal *thermal,
                                      struct cg_error *error)
{
    const struct cg_piston_map *piston = &thermal->piston;
    const struct cg_bore_grid *grid = &thermal->bore.grid;
    struct cg_crevice_map *map = &thermal->crevice;
    size_t first = piston->land[CG_RING_TOP], cells = 0;
    while (piston->node[first + cells] != piston->groove[CG_RING_TOP])
        cells++;
    if (map->part == NULL)
        map->part = malloc((cells + grid->stations + 2) * sizeof *map->part);
    if (map->part == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    map->source = thermal->network->sources;
    map->sources = 0;
    double behind = cg_groove_volume(c, CG_RING_TOP);
    double beyond =
        (1.0 - left_at_land) * behind / (land_volume(c) + behind);
    double land = 1.0 - beyond;

    enum cg_status status = CG_OK;
    for (size_t i = 0; i < cells && status == CG_OK; i++)
        status = add_part(thermal, piston->node[first + i],
                          0.5 * land / (double)cells, error);
    if (status == CG_OK)
        status = add_part(thermal, piston->groove[CG_RING_TOP],
                          0.5 * beyond, error);
    if (status == CG_OK)
        status = add_part(thermal, thermal->ring[CG_RING_TOP].chain.first,
                          0.5 * beyond, error);
    for (size_t s = 0; s < grid->stations && status == CG_OK; s++)
        status = add_part(thermal, cg_thermal_liner_node(thermal, s, 0),
                          0.5 * land * beside_land(c, grid, s), error);
    return status;
}

void cg_crevice_apply(double power, struct cg_thermal *thermal)
{
    const struct cg_crevice_map *map = &thermal->crevice;
    for (size_t i = 0; i < map->sources; i++)
        thermal->network->source_power[map->source + i] = power * map->part[i];
}
