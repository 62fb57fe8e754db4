/* What points make of the thermal network. */
#include <math.h>
#include <stddef.h>

#include "constants.h"
#include "crevice.h"
#include "operating_point.h"
#include "thermal_parts.h"

/* Relative change by the walls' rise over those of the cycle.  Walls that are
 * still hundreds of kelvin off lie beyond what a slope can say; no gas gives
 * heat the wrong way for that, and the next cycle knows better. */
static double change(const struct cg_operating_point *point, double walls,
                     double crevices)
{
    const double least = 0.2, most = 5.0;
    double by = point->wall_rise * walls + point->crevice_rise * crevices;
    return fmin(fmax(1.0 + by, least), most);
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
    double flow = between(a->operating.cooling_flow,
                          b->operating.cooling_flow, part);
    for (size_t s = 0; s < bore->grid.stations; s++) {
        struct cg_mean_gas gas =
            gas_at(a, &a->station[s], b, &b->station[s], part);
        network->bath_conductance[bore->gas_bath + s] =
            gas.coefficient * bore->surface_area;
        network->bath_temperature[bore->gas_bath + s] = gas.temperature;
        network->bath_temperature[bore->coolant_bath + s] = coolant;
        if (bore->air_cooled)
            network->bath_conductance[bore->coolant_bath + s] =
                flow * bore->outside[s];
        network->source_power[bore->source + s] =
            friction * bore->friction_share[s];
        if (bore->has_block)
            network->link_conductance[bore->joint_link + s] =
                between(a->joint[s], b->joint[s], part) * bore->joint_area;
    }
}

static void apply_oil(double oil, struct cg_network *network)
{
    for (size_t i = 0; i < network->baths; i++)
        if (network->bath_side[i] == CG_SIDE_OIL)
            network->bath_temperature[i] = oil;
}

void cg_point_apply(const struct cg_operating_point *a,
                    const struct cg_operating_point *b, double part,
                    struct cg_thermal *thermal)
{
    struct cg_mean_gas crown = gas_at(a, &a->crown, b, &b->crown, part);
    double friction = between(a->friction, b->friction, part);
    apply_piston(&crown, thermal);
    apply_oil(between(a->operating.oil_temperature,
                      b->operating.oil_temperature, part),
              thermal->network);
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

/* A sum over corners. */
#define BLENDED(value)                                                         \
    blended(place, point, offsetof(struct cg_operating_point, value))

static double blended(const struct cg_map_place *place,
                      const struct cg_operating_point *point, size_t offset)
{
    double sum = 0.0;
    for (size_t i = 0; i < place->corners; i++)
        sum += place->weight[i] *
               *(const double *)((const char *)&point[place->node[i]] + offset);
    return sum;
}

/* Adds a corner's part of gas: coefficient, and heat in place of
 * temperature. */
static void add_gas(const struct cg_operating_point *from,
                    const struct cg_mean_gas *gas, double weight,
                    struct cg_mean_gas *sum)
{
    struct cg_mean_gas here = cg_point_responded(from, gas);
    sum->coefficient += weight * here.coefficient;
    sum->temperature += weight * here.coefficient * here.temperature;
}

static void end_gas(const struct cg_mean_gas *otherwise,
                    struct cg_mean_gas *sum)
{
    sum->temperature = sum->coefficient > 0.0
                           ? sum->temperature / sum->coefficient
                           : otherwise->temperature;
}

static void blend_stations(const struct cg_map_place *place,
                           const struct cg_operating_point *point,
                           size_t stations, struct cg_operating_point *out)
{
    for (size_t s = 0; s < stations; s++) {
        out->station[s] = (struct cg_mean_gas){0.0, 0.0};
        out->joint[s] = 0.0;
    }
    for (size_t i = 0; i < place->corners; i++) {
        const struct cg_operating_point *from = &point[place->node[i]];
        double weight = place->weight[i];
        for (size_t s = 0; s < stations; s++) {
            add_gas(from, &from->station[s], weight, &out->station[s]);
            out->joint[s] += weight * from->joint[s];
        }
    }
    for (size_t s = 0; s < stations; s++)
        end_gas(&point[place->node[0]].station[s], &out->station[s]);
}

void cg_point_blend(const struct cg_map_place *place,
                    const struct cg_operating_point *point,
                    const struct cg_operating *operating,
                    const struct cg_thermal *thermal,
                    struct cg_operating_point *out)
{
    const struct cg_operating_point *first = &point[place->node[0]];
    out->operating = *operating;
    out->crown = (struct cg_mean_gas){0.0, 0.0};
    out->crevice = 0.0;
    for (int r = 0; r < CG_RINGS; r++)
        out->film[r] = 0.0;
    for (size_t i = 0; i < place->corners; i++) {
        const struct cg_operating_point *from = &point[place->node[i]];
        add_gas(from, &from->crown, place->weight[i], &out->crown);
        out->crevice += place->weight[i] * cg_point_crevice(from);
        for (int r = 0; r < CG_RINGS; r++)
            out->film[r] += place->weight[i] * from->film[r];
    }
    end_gas(&first->crown, &out->crown);
    blend_stations(place, point, thermal->bore.grid.stations, out);
    out->friction = BLENDED(friction);
    out->charge.manifold_pressure = BLENDED(charge.manifold_pressure);
    out->wall_rise = out->crevice_rise = 0.0; /* the response is in it */
}

struct cg_point_seen cg_point_see(const struct cg_map_place *place,
                                  const struct cg_operating_point *point)
{
    return (struct cg_point_seen){
        .knock_integral = BLENDED(performance.knock_integral),
        .peak_pressure = BLENDED(performance.peak_pressure),
        .peak_rise = BLENDED(performance.peak_rise),
        .burn50_deg = BLENDED(performance.burn50_deg)};
}
