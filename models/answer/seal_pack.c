/* The ring pack of a case: hot lengths, crevices, ports. */
#include <math.h>
#include <stdlib.h>

#include "clearance.h"
#include "constants.h"
#include "flank.h"
#include "geometry.h"
#include "growth.h"
#include "relaxation.h"
#include "seal.h"

/* Free gap of a ring over the bore (common practice, no source): with its
 * tension it gives the radial stiffness. */
#define FREE_GAP 0.1
/* Mean height between a seated ring's flank and its groove: both are flat and
 * smooth to some micrometres only (common practice, no source).  From 1.5 to
 * 6 um the answers stay put (tested). */
#define CUSHION 3e-6
/* Half of what a barrel face lies off the bore at a quarter of its width, and
 * the oil there (common practice, no source) [m]. */
#define WEDGE 4e-6

void cg_seal_gaps(struct cg_seal *seal, double top, double second)
{
    const double cold[CG_PACK_RINGS] = {top, second};
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        for (size_t i = 0; i < CG_PACK_NODES; i++)
            seal->pack.node[i].gap[k] = cg_seal_hot_gap(seal, k, cold[k], i);
}

double cg_seal_hot_gap(const struct cg_seal *seal, size_t k, double cold_gap,
                       size_t node)
{
    return fmax(cg_growth_gap(seal->c, cold_gap, seal->bore_strain[k][node],
                              seal->ring_strain[k]),
                0.0);
}

void cg_seal_ports(struct cg_seal *seal, enum cg_port_kind kind)
{
    const struct cg_seal_case *in = &seal->c->seal;
    struct cg_ring_pack *pack = &seal->pack;
    double d = in->port_diameter;
    double hole = 0.25 * CG_PI * d * d, wedge = CG_PI * d * WEDGE;
    double one = 0.0;
    pack->port_temperature = pack->temperature[CG_PACK_CYLINDER];
    switch (kind) {
    case CG_PORTS_NONE:
        break;
    case CG_PORTS_CROWN: /* the drilling runs through hotter metal, but its
                            walls are the land's within some kelvin */
        one = hole;
        break;
    case CG_PORTS_LAND:
        one = hole;
        break;
    case CG_PORTS_THROUGH:
        one = 1.0 / sqrt(1.0 / (hole * hole) + 1.0 / (wedge * wedge));
        break;
    }
    pack->port_area = one * in->port_count;
}

/* Hot clearance of a ring in its groove [m]. */
static double hot_travel(const struct cg_case *c, double ring_strain,
                         double groove_temperature, double bore_strain,
                         size_t k)
{
    const struct cg_ring_case *ring = &c->ring[k];
    double groove_strain =
        cg_material_strain(&c->piston_material, groove_temperature);
    double hot = (ring->width + ring->side_clearance) * (1.0 + groove_strain) -
                 ring->width * (1.0 + ring_strain) +
                 cg_clearance_keystone(c, (enum cg_ring_place)k, bore_strain,
                                       groove_strain);
    return fmax(hot, 0.2 * ring->side_clearance);
}

static void set_ring(const struct cg_case *c, const struct cg_thermal *thermal,
                     const double *temperature, const double *strain, size_t k,
                     struct cg_seal *seal)
{
    double bore_strain = cg_growth_at_depth(
        thermal, strain, cg_ring_turn(c, (enum cg_ring_place)k));
    const struct cg_ring_case *ring = &c->ring[k];
    double bore = c->engine.bore;
    double groove = temperature[thermal->piston.groove[k]];
    double out = 0.5 * (k == 0 ? c->piston.second_land_clearance
                               : c->piston.third_land_clearance);
    double flank = fmax(ring->depth - out, 0.2 * ring->depth);
    double mean = CG_PI * (bore - ring->depth);
    /* what heat has left of it after the time in service */
    double tension = cg_relaxation_pressure(
        &c->ring_material[k], ring->pressure,
        cg_thermal_ring_mean(thermal, temperature, (enum cg_ring_place)k),
        c->ring[CG_RING_TOP].service);
    seal->ring_strain[k] =
        cg_growth_ring(c, thermal, temperature, (enum cg_ring_place)k);
    seal->pack.ring[k] = (struct cg_pack_ring){
        .mass = c->ring_material[k].density * ring->width * ring->depth * mean,
        .perimeter = CG_PI * bore,
        .flank_perimeter = CG_PI * (bore - 2.0 * ring->depth + flank),
        .flank_width = flank,
        .exposed = ring->depth - flank,
        .face_width = ring->width,
        .travel = hot_travel(c, seal->ring_strain[k], groove, bore_strain, k),
        .tension = tension,
        .stiffness = tension * 2.0 * CG_PI / (FREE_GAP * bore),
        .viscosity = cg_gas_viscosity(groove)};
}

/* Strain of the land under ring k, between two grooves. */
static double land_strain(const struct cg_case *c,
                          const struct cg_thermal *thermal,
                          const double *temperature, size_t k, double *land)
{
    *land = 0.5 * (temperature[thermal->piston.groove[k]] +
                   temperature[thermal->piston.groove[k + 1]]);
    return cg_material_strain(&c->piston_material, *land);
}

static void set_nodes(const struct cg_case *c, const struct cg_thermal *thermal,
                      const double *temperature, const double *strain,
                      struct cg_seal *seal)
{
    struct cg_crank crank = cg_case_crank(c);
    double omega = 2.0 * CG_PI * seal->pack.speed, bore = c->engine.bore;
    const double cold[CG_PACK_RINGS] = {c->piston.second_land_clearance,
                                        c->piston.third_land_clearance};
    double e_land[CG_PACK_RINGS], offset[CG_PACK_RINGS], ignored;
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        e_land[k] = land_strain(c, thermal, temperature, k, &ignored);
        offset[k] =
            cg_ring_offset(c, (enum cg_ring_place)k) + 0.5 * c->ring[k].width;
    }
    for (size_t i = 0; i < CG_PACK_NODES; i++) {
        struct cg_pack_node *node = &seal->pack.node[i];
        double depth, rate, angle = cg_pack_angle(i);
        cg_crank_motion(&crank, angle, &depth, &rate);
        node->acceleration =
            omega * omega * cg_crank_depth_second(&crank, angle);
        /* Friction turns over within some degrees of a dead centre. */
        node->slide = tanh(rate / (0.1 * crank.stroke));
        for (size_t k = 0; k < CG_PACK_RINGS; k++) {
            double e = cg_growth_at_depth(thermal, strain, offset[k] + depth);
            seal->bore_strain[k][i] = e;
            node->clearance[k] = fmax(
                0.5 * cg_clearance_across(bore, cold[k], e, e_land[k]), 0.0);
        }
    }
}

/* Gas as it is when cooled to the walls: fresh charge, of which most of the
 * blow-by is (Heywood 1988, sec. 8.6 and 11.4.3). */
static void set_gas(const struct cg_cycle_input *input, double temperature,
                    struct cg_flow_gas *gas)
{
    struct cg_poly vapour;
    struct cg_mixture fresh;
    double moles[CG_SPECIES];
    cg_fuel_poly(input->fuel, &vapour);
    cg_fuel_fresh(input->fuel, input->lambda, moles);
    cg_mixture_set(&fresh, moles, cg_fuel_molar_mass(input->fuel), &vapour);
    double cp = cg_mixture_cp(&fresh, temperature);
    cg_flow_gas_set(gas, fresh.gas_constant, cp / (cp - fresh.gas_constant));
}

static void set_walls(const struct cg_case *c, const struct cg_thermal *thermal,
                      const double *temperature, struct cg_seal *seal)
{
    const struct cg_piston_map *piston = &thermal->piston;
    struct cg_ring_pack *pack = &seal->pack;
    double bore = c->engine.bore;
    size_t centre = (CG_PACK_NODES - 1) / 2;
    double e_bore = seal->bore_strain[0][centre];
    double top = temperature[piston->node[piston->crown_cells]];
    double land;
    land_strain(c, thermal, temperature, 0, &land);
    pack->temperature[CG_PACK_CYLINDER] = top;
    pack->temperature[CG_PACK_GROOVE_TOP] = temperature[piston->groove[0]];
    pack->temperature[CG_PACK_LAND] = land;
    pack->temperature[CG_PACK_GROOVE_SECOND] = temperature[piston->groove[1]];
    pack->temperature[CG_PACK_CRANKCASE] = c->cooling.oil_temperature;
    pack->volume[0] = cg_groove_volume(c, CG_RING_TOP);
    pack->volume[1] = CG_PI * bore * c->piston.second_land *
                      fmax(pack->node[centre].clearance[0],
                           0.05 * c->piston.second_land_clearance);
    pack->volume[2] = cg_groove_volume(c, CG_RING_SECOND);
    double hot = cg_clearance_across(
        bore, c->piston.land_clearance, e_bore,
        cg_material_strain(&c->piston_material, top));
    seal->top_land_volume =
        CG_PI * bore * c->piston.top_land * 0.5 * fmax(hot, 0.0);
}

/* Cylinder pressure and temperature at the nodes, straight between the
 * cycle's own points; work left to be done before the exhaust opens. */
static void set_cylinder(const struct cg_cycle *cycle,
                         const struct cg_operating_point *point,
                         struct cg_seal *seal)
{
    struct cg_crank crank = point->input.crank;
    size_t at = 0;
    double peak = 0.0;
    for (size_t i = 0; i < CG_PACK_NODES; i++) {
        double angle = cg_pack_angle(i);
        while (at + 2 < cycle->points && cycle->point[at + 1].crank_deg < angle)
            at++;
        const struct cg_cycle_point *a = &cycle->point[at], *b = a + 1;
        double part = (angle - a->crank_deg) / (b->crank_deg - a->crank_deg);
        part = fmin(fmax(part, 0.0), 1.0);
        double p = a->pressure + part * (b->pressure - a->pressure);
        seal->pack.node[i].pressure = p;
        seal->cylinder_temperature[i] =
            a->temperature + part * (b->temperature - a->temperature);
        if (p > peak) {
            peak = p;
            seal->peak_deg = angle;
        }
    }
    for (size_t i = CG_PACK_NODES - 1; i-- > 0;) {
        double from = cg_pack_angle(i), to = cg_pack_angle(i + 1);
        bool closed = from >= point->input.intake_close_deg &&
                      to <= point->input.exhaust_open_deg;
        seal->work_left[i] = closed
                                 ? seal->work_left[i + 1] +
                                       0.5 *
                                           (seal->pack.node[i].pressure +
                                            seal->pack.node[i + 1].pressure) *
                                           (cg_crank_volume(&crank, to) -
                                            cg_crank_volume(&crank, from))
                                 : 0.0;
    }
}

enum cg_status cg_seal_create(const struct cg_case *c, struct cg_duty_run *run,
                              size_t point, struct cg_seal **seal,
                              struct cg_error *error)
{
    const struct cg_operating_point *at = &run->point[point];
    const struct cg_cycle *cycle = run->workspace.cycle;
    const double *temperature = at->settled;
    struct cg_cycle_input input = at->input;
    input.guess = at->residual;
    enum cg_status status = cg_cycle_run(&input, run->workspace.cycle, error);
    if (status != CG_OK)
        return status;
    struct cg_seal *out = calloc(1, sizeof *out);
    double *strain = malloc(run->thermal->bore.grid.stations * sizeof *strain);
    if (out == NULL || strain == NULL) {
        free(out);
        free(strain);
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    }
    struct cg_ring_pack *pack = &out->pack;
    out->c = c;
    out->performance = at->performance;
    out->charge_mass = cycle->air_mass + cycle->fuel_mass +
                       at->input.brought.nitrous + at->input.brought.water;
    out->trapped_mass = cycle->trapped_mass;
    out->exhaust_open_deg = at->input.exhaust_open_deg;
    pack->speed = at->operating.speed;
    pack->crankcase_pressure = c->charge.ambient_pressure + c->seal.crankcase;
    pack->leak = c->seal.flank_leak;
    pack->cushion = CUSHION;
    pack->friction = c->seal.face_friction;
    pack->discharge = c->seal.discharge;
    cg_growth_bore(c, run->thermal, temperature, strain);
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        set_ring(c, run->thermal, temperature, strain, k, out);
    set_nodes(c, run->thermal, temperature, strain, out);
    set_walls(c, run->thermal, temperature, out);
    set_gas(&at->input, pack->temperature[CG_PACK_LAND], &pack->gas);
    set_cylinder(cycle, at, out);
    cg_seal_ports(out, (enum cg_port_kind)c->seal.ports);
    free(strain);
    *seal = out;
    return CG_OK;
}

void cg_seal_free(struct cg_seal *seal)
{
    free(seal);
}
