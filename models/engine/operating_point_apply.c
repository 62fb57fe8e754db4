/* What points make of the thermal network. */
#include "constants.h"
#include "crevice.h"
#include "operating_point.h"
#include "thermal_parts.h"

/* Relative change by the walls' rise over those of the cycle. */
static double change(const struct cg_operating_point *point, double walls,
                     double crevices)
{
    return 1.0 + point->wall_rise * walls + point->crevice_rise * crevices;
}

struct cg_mean_gas cg_point_responded(const struct cg_operating_point *point,
                                       const struct cg_mean_gas *gas)
{
    const struct cg_wall_response *by = &point->response;
    return (struct cg_mean_gas){
        gas->coefficient *
            change(point, by->walls.coefficient, by->crevices.coefficient),
        gas->temperature *
            change(point, by->walls.temperature, by->crevices.temperature)};
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

static struct cg_mean_gas gas_at(const struct cg_operating_point *a,
                                 const struct cg_mean_gas *gas_a,
                                 const struct cg_operating_point *b,
                                 const struct cg_mean_gas *gas_b, double part)
{
    struct cg_mean_gas here = cg_point_responded(a, gas_a);
    struct cg_mean_gas there = cg_point_responded(b, gas_b);
    return gas_between(&here, &there, part);
}

double cg_point_crevice(const struct cg_operating_point *point)
{
    return point->crevice * change(point, point->response.walls.crevice,
                                   point->response.crevices.crevice);
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

static void apply_bore(const struct cg_operating_point *a,
                       const struct cg_operating_point *b, double part,
                       double friction, struct cg_thermal *thermal)
{
    const struct cg_bore_map *bore = &thermal->bore;
    struct cg_network *network = thermal->network;
    double coolant = between(a->operating.coolant_temperature,
                             b->operating.coolant_temperature, part);
    for (size_t s = 0; s < bore->grid.stations; s++) {
        struct cg_mean_gas gas =
            gas_at(a, &a->station[s], b, &b->station[s], part);
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

void cg_point_apply(const struct cg_operating_point *a,
                    const struct cg_operating_point *b, double part,
                    struct cg_thermal *thermal)
{
    struct cg_mean_gas crown = gas_at(a, &a->crown, b, &b->crown, part);
    double friction = between(a->friction, b->friction, part);
    apply_piston(&crown, thermal);
    cg_crevice_apply(between(cg_point_crevice(a), cg_point_crevice(b), part),
                     thermal);
    /* Friction heat is made in the oil film: half to either side. */
    for (int r = 0; r < CG_RINGS; r++)
        apply_ring(thermal, &thermal->ring[r],
                   between(a->film[r], b->film[r], part),
                   0.5 * cg_friction_part[r] * friction);
    apply_skirt(0.5 * cg_friction_part[CG_RINGS] * friction, thermal);
    apply_bore(a, b, part, 0.5 * friction, thermal);
}
