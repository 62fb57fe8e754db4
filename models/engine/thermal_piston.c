/* The piston's heat path: crown disk, ring belt, skirt.
 *
 * A row of cells along the mean line, each with a length, a section and a
 * volume; the conductance between two is that of the two half cells in
 * series.  Left out: pin bosses, valve pockets, and any difference around the
 * circumference. */
#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "constants.h"
#include "crevice.h"
#include "geometry.h"
#include "thermal_parts.h"

enum { BELT_REGIONS = 7, LAND_CELLS = 2, GROOVE_CELLS = 1 };

struct path_cell {
    double length, section, volume; /* [m] [m2] [m3] */
    double offset;                  /* of the cell's top from the crown [m] */
    double gas_area, oil_area;      /* [m2] */
    double gallery_area;            /* of an oil gallery's wall [m2] */
};

/* A piece of the belt or skirt, cut into equal cells. */
struct region {
    const char *name;
    double height;        /* [m] */
    double cut, wall;     /* depth of the groove; metal left behind it [m] */
    double around;        /* share of the circumference [1] */
    size_t cells;
    int ring;             /* place of the ring, or -1 */
    double clearance;     /* of a land, diametral, cold [m] */
};

/* The gallery's wall: an oval of 0.10 by 0.05 bores, its middle on a circle of
 * 0.72 bores (common practice, no source).  Half of it lies in the top land, a
 * quarter in the crown's edge and one in the top groove's back; the metal it
 * takes away is left in. */
static double gallery_area(const struct cg_case *c)
{
    double bore = c->engine.bore;
    return c->piston.gallery
               ? CG_PI * 0.72 * bore * CG_PI * 0.5 * (0.10 + 0.05) * bore
               : 0.0;
}

static struct path_cell crown_cell(const struct cg_case *c, size_t i)
{
    double step = (0.5 * c->engine.bore - 0.5 * c->piston.wall_thickness) /
                  (double)c->solver.crown_cells;
    double inner = (double)i * step, outer = inner + step;
    double area = CG_PI * (outer * outer - inner * inner);
    double open = fmin(outer, 0.5 * c->engine.bore - c->piston.wall_thickness);
    struct path_cell cell = {
        .length = step,
        .section = 2.0 * CG_PI * 0.5 * (inner + outer) *
                   c->piston.crown_thickness,
        .volume = area * c->piston.crown_thickness,
        .gas_area = area,
        .oil_area = CG_PI * fmax(open * open - inner * inner, 0.0)};
    return cell;
}

static struct path_cell region_cell(const struct cg_case *c,
                                    const struct region *region,
                                    double offset, double length)
{
    double outer = 0.5 * c->engine.bore - region->cut;
    double inner = outer - region->wall;
    double below_crown = fmin(
        fmax(offset + length - c->piston.crown_thickness, 0.0), length);
    double section =
        region->around * CG_PI * (outer * outer - inner * inner);
    return (struct path_cell){
        .length = length,
        .section = section,
        .volume = section * length,
        .offset = offset,
        .oil_area = region->around * 2.0 * CG_PI * inner * below_crown};
}

static void list_regions(const struct cg_case *c, double start,
                         struct region region[BELT_REGIONS])
{
    const struct cg_piston_case *p = &c->piston;
    double wall = p->wall_thickness, cut[CG_RINGS];
    for (int r = 0; r < CG_RINGS; r++)
        cut[r] = c->ring[r].depth + c->ring[r].back_clearance;
    const struct region list[BELT_REGIONS] = {
        {"top_land", p->top_land - start, 0.0, wall, 1.0, LAND_CELLS, -1,
         p->land_clearance},
        {"groove_top", c->ring[CG_RING_TOP].width, cut[0], wall - cut[0], 1.0,
         GROOVE_CELLS, CG_RING_TOP, 0.0},
        {"second_land", p->second_land, 0.0, wall, 1.0, LAND_CELLS, -1,
         p->second_land_clearance},
        {"groove_second", c->ring[CG_RING_SECOND].width, cut[1],
         wall - cut[1], 1.0, GROOVE_CELLS, CG_RING_SECOND, 0.0},
        {"third_land", p->third_land, 0.0, wall, 1.0, LAND_CELLS, -1,
         p->third_land_clearance},
        {"groove_oil", c->ring[CG_RING_OIL].width, cut[2], wall - cut[2], 1.0,
         GROOVE_CELLS, CG_RING_OIL, 0.0},
        {"skirt", p->skirt_length, 0.0, p->skirt_thickness, p->skirt_share,
         (size_t)c->solver.skirt_cells, -1, 0.0}};
    for (int i = 0; i < BELT_REGIONS; i++)
        region[i] = list[i];
}

/* Adds one cell's node and its link to the cell before. */
static enum cg_status add_cell(struct cg_thermal *thermal,
                               const struct cg_solid *solid, const char *name,
                               const struct path_cell *before,
                               const struct path_cell *cell,
                               struct cg_error *error)
{
    struct cg_piston_map *piston = &thermal->piston;
    size_t i = piston->cells;
    enum cg_status status = cg_network_add_node(
        thermal->network, name, solid->volume_capacity * cell->volume,
        &piston->node[i], error);
    if (status != CG_OK)
        return status;
    piston->cells = i + 1;
    if (before == NULL)
        return CG_OK;
    double half_before =
        2.0 * solid->conductivity * before->section / before->length;
    double half = 2.0 * solid->conductivity * cell->section / cell->length;
    return cg_network_add_link(thermal->network, piston->node[i - 1],
                               piston->node[i], cg_series(half_before, half),
                               NULL, error);
}

/* Oil inside: the jet strikes the crown's underside, the rest gets splash. */
static enum cg_status add_oil(const struct cg_case *c,
                              struct cg_network *network, size_t node,
                              const struct path_cell *cell, bool crown,
                              struct cg_error *error)
{
    double coefficient = crown && c->piston.oil_jet
                             ? c->piston.jet_coefficient
                             : c->piston.splash_coefficient;
    double conductance = coefficient * cell->oil_area;
    if (cell->gallery_area > 0.0)
        conductance += c->piston.gallery_coefficient * cell->gallery_area;
    return cg_network_add_bath(network, node, conductance,
                               c->cooling.oil_temperature, CG_SIDE_OIL, NULL,
                               error);
}

static enum cg_status add_crown(const struct cg_case *c,
                                struct cg_thermal *thermal,
                                const struct cg_solid *solid,
                                struct path_cell *last, struct cg_error *error)
{
    struct cg_piston_map *piston = &thermal->piston;
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < piston->crown_cells && status == CG_OK; i++) {
        char name[48] = "";
        struct path_cell cell = crown_cell(c, i);
        if (i + 1 == piston->crown_cells)
            cell.gallery_area = 0.25 * gallery_area(c);
        if (!cg_network_has_name(thermal->network))
            snprintf(name, sizeof name, "crown_%zu", i + 1);
        status = add_cell(thermal, solid, name, i > 0 ? last : NULL, &cell,
                          error);
        if (status == CG_OK)
            status = add_oil(c, thermal->network, piston->node[i], &cell, true,
                             error);
        piston->gas_area[i] = cell.gas_area;
        *last = cell;
    }
    return status;
}

/* Coefficient [W/(m2 K)] between a region and the bore: across a land's hot
 * clearance by the gas at rest in it, or through the skirt's oil; 0: a ring is
 * in between. */
static double to_bore(const struct cg_case *c, const struct region *region,
                      int index)
{
    if (index == BELT_REGIONS - 1)
        return CG_OIL_CONDUCTIVITY / c->piston.skirt_film;
    if (region->ring >= 0)
        return 0.0;
    return CG_LAND_GAS_CONDUCTIVITY /
           (0.5 * cg_crevice_clearance(c, region->clearance));
}

static enum cg_status link_cell(const struct cg_case *c,
                                struct cg_thermal *thermal,
                                const struct region *region, int index,
                                size_t node, const struct path_cell *cell,
                                struct cg_error *error)
{
    double coefficient = to_bore(c, region, index);
    if (coefficient == 0.0)
        return CG_OK;
    struct cg_piston_map *piston = &thermal->piston;
    const struct cg_bore_grid *grid = &thermal->bore.grid;
    double *share = piston->bore_share + piston->facing * grid->stations;
    piston->facing++;
    if (!thermal->shares_known)
        cg_share_time(&thermal->stroke, grid, cell->offset, cell->length,
                      share);
    double area = region->around * CG_PI * c->engine.bore * cell->length;
    return cg_thermal_link_to_bore(thermal, node, coefficient * area, share,
                                   error);
}

static enum cg_status add_region(const struct cg_case *c,
                                 struct cg_thermal *thermal,
                                 const struct cg_solid *solid,
                                 const struct region *region, int index,
                                 double *offset, struct path_cell *last,
                                 struct cg_error *error)
{
    struct cg_piston_map *piston = &thermal->piston;
    double length = region->height / (double)region->cells;
    enum cg_status status = CG_OK;
    assert(region->cells > 0);
    for (size_t i = 0; i < region->cells && status == CG_OK; i++) {
        char name[48] = "";
        struct path_cell cell = region_cell(c, region, *offset, length);
        if (index <= 1) /* top land, top groove */
            cell.gallery_area = (index == 0 ? 0.5 : 0.25) * gallery_area(c) /
                                (double)region->cells;
        if (cg_network_has_name(thermal->network))
            ; /* it stands */
        else if (region->cells > 1)
            snprintf(name, sizeof name, "%s_%zu", region->name, i + 1);
        else
            snprintf(name, sizeof name, "%s", region->name);
        status = add_cell(thermal, solid, name, last, &cell, error);
        size_t node = piston->node[piston->cells - 1];
        if (status == CG_OK)
            status = add_oil(c, thermal->network, node, &cell, false, error);
        if (status == CG_OK)
            status = link_cell(c, thermal, region, index, node, &cell, error);
        *offset += length;
        *last = cell;
    }
    return status;
}

static enum cg_status add_belt(const struct cg_case *c,
                               struct cg_thermal *thermal,
                               const struct cg_solid *solid, double start,
                               struct path_cell *last, struct cg_error *error)
{
    struct cg_piston_map *piston = &thermal->piston;
    struct region region[BELT_REGIONS];
    double offset = start;
    enum cg_status status = CG_OK;
    list_regions(c, start, region);
    for (int i = 0; i < BELT_REGIONS && status == CG_OK; i++) {
        size_t first = piston->cells;
        if (i == BELT_REGIONS - 1) {
            piston->skirt_first = first;
            piston->skirt_cells = region[i].cells;
        }
        else if (region[i].ring < 0)
            piston->land[region[i + 1].ring] = first;
        status = add_region(c, thermal, solid, &region[i], i, &offset, last,
                            error);
        int ring = region[i].ring;
        if (status == CG_OK && ring >= 0) {
            piston->groove[ring] = piston->node[first];
            status = cg_thermal_add_ring(c, (enum cg_ring_place)ring,
                                         piston->node[first], thermal, error);
        }
    }
    return status;
}

/* The crown's rim, outside the last disk cell, heats the first belt cell. */
static enum cg_status add_gas(const struct cg_case *c,
                              struct cg_thermal *thermal,
                              struct cg_error *error)
{
    struct cg_piston_map *piston = &thermal->piston;
    struct cg_network *network = thermal->network;
    double outer = 0.5 * c->engine.bore;
    double inner = outer - 0.5 * c->piston.wall_thickness;
    piston->gas_area[piston->crown_cells] =
        CG_PI * (outer * outer - inner * inner);
    piston->gas_bath = network->baths;
    enum cg_status status = CG_OK;
    for (size_t i = 0; i <= piston->crown_cells && status == CG_OK; i++)
        status =
            cg_network_add_bath(network, piston->node[i], 0.0,
                                CG_COLD_TEMPERATURE, CG_SIDE_GAS, NULL, error);
    return status;
}

static enum cg_status allocate(const struct cg_case *c, size_t stations,
                               struct cg_piston_map *piston,
                               struct cg_error *error)
{
    size_t skirt = (size_t)c->solver.skirt_cells;
    piston->crown_cells = (size_t)c->solver.crown_cells;
    size_t belt = (size_t)CG_RINGS * (LAND_CELLS + GROOVE_CELLS);
    size_t workspace = piston->crown_cells + belt + skirt;
    piston->node = malloc(workspace * sizeof *piston->node);
    piston->gas_area =
        malloc((piston->crown_cells + 1) * sizeof *piston->gas_area);
    size_t facing = (size_t)CG_RINGS * LAND_CELLS + skirt;
    piston->bore_share =
        malloc(facing * stations * sizeof *piston->bore_share);
    if (piston->node == NULL || piston->gas_area == NULL ||
        piston->bore_share == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    return CG_OK;
}

enum cg_status cg_thermal_add_piston(const struct cg_case *c,
                                     struct cg_thermal *thermal,
                                     struct cg_error *error)
{
    struct cg_piston_map *piston = &thermal->piston;
    const struct cg_material *alloy = &c->piston_material;
    struct cg_solid solid = {
        c->scale.piston_conductivity *
            cg_curve_at(&alloy->conductivity, CG_PISTON_REFERENCE),
        alloy->density *
            cg_curve_at(&alloy->heat_capacity, CG_PISTON_REFERENCE)};
    /* The mean line turns down at the middle of the crown's thickness, but
     * never below the top land's upper part. */
    double start =
        fmin(0.5 * c->piston.crown_thickness, 0.6 * c->piston.top_land);
    struct path_cell last = {0};

    if (!thermal->shares_known) {
        enum cg_status status =
            allocate(c, thermal->bore.grid.stations, piston, error);
        if (status != CG_OK)
            return status;
    }
    piston->cells = 0;
    piston->facing = 0;
    for (int r = 0; r < CG_RINGS; r++)
        piston->ring_offset[r] = cg_ring_offset(c, (enum cg_ring_place)r);
    piston->skirt_offset = cg_skirt_offset(c);

    enum cg_status status = add_crown(c, thermal, &solid, &last, error);
    if (status == CG_OK)
        status = add_belt(c, thermal, &solid, start, &last, error);
    if (status == CG_OK)
        status = add_gas(c, thermal, error);
    piston->skirt_source = thermal->network->sources;
    for (size_t i = 0; i < piston->skirt_cells && status == CG_OK; i++)
        status = cg_network_add_source(thermal->network,
                                       piston->node[piston->skirt_first + i],
                                       0.0, CG_SIDE_FRICTION, NULL, error);
    return status;
}
