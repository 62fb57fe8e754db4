/* A ring pack of round numbers for the suites: 86 mm bore and stroke, a
 * cylinder that is compressed, burns within some degrees, and is let out. */
#ifndef CG_PACK_OF_H
#define CG_PACK_OF_H

#include <math.h>
#include <string.h>

#include "crank.h"
#include "flank.h"
#include "pack_settle.h"

#define PACK_PI 3.14159265358979323846

/* p V^1.3 either side of a rise of the constant by `burn` times within some
 * 40 degrees; let out to 1.2 bar from 130 degrees on. */
static inline double pack_cylinder(const struct cg_crank *crank, double angle,
                                   double intake, double burn)
{
    if (angle < -180.0)
        return intake;
    double v = cg_crank_volume(crank, angle) / cg_crank_volume(crank, 180.0);
    double burned = 0.5 * (1.0 + tanh((angle - 10.0) / 12.0));
    double p = intake * pow(v, -1.3) * (1.0 + burn * burned);
    double open = angle > 130.0 ? 1.0 - exp(-(angle - 130.0) / 15.0) : 0.0;
    double late = angle > 180.0 ? 1.2e5 : p;
    return late * (1.0 - open) + 1.2e5 * open;
}

static inline void pack_nodes(struct cg_ring_pack *pack, double speed,
                              double top_gap, double second_gap,
                              double intake, double burn)
{
    struct cg_crank crank = {0.086, 0.086, 0.142, 9.0};
    double omega = 2.0 * PACK_PI * speed;
    pack->speed = speed;
    for (size_t i = 0; i < CG_PACK_NODES; i++) {
        double angle = cg_pack_angle(i), depth, rate;
        cg_crank_motion(&crank, angle, &depth, &rate);
        pack->node[i] = (struct cg_pack_node){
            .pressure = pack_cylinder(&crank, angle, intake, burn),
            .gap = {top_gap, second_gap},
            .clearance = {2e-4, 2e-4},
            .acceleration =
                omega * omega * cg_crank_depth_second(&crank, angle),
            .slide = tanh(rate / (0.1 * crank.stroke))};
    }
}

static inline void pack_ring(struct cg_pack_ring *ring, double tension)
{
    double bore = 0.086, depth = 3e-3, exposed = 2e-4, width = 1.2e-3;
    *ring = (struct cg_pack_ring){
        .mass = 7500.0 * PACK_PI * (bore - depth) * depth * width,
        .perimeter = PACK_PI * bore,
        .flank_perimeter = PACK_PI * (bore - depth - exposed),
        .flank_width = depth - exposed,
        .exposed = exposed,
        .face_width = width,
        .travel = 5e-5,
        .tension = tension,
        .stiffness = tension * 2.0 * PACK_PI / (0.1 * bore),
        .viscosity = cg_gas_viscosity(450.0)};
}

/* `pack` is large: keep it static or on the heap. */
static inline void pack_set(struct cg_ring_pack *pack, double speed,
                            double top_gap, double second_gap)
{
    memset(pack, 0, sizeof *pack);
    cg_flow_gas_set(&pack->gas, 287.0, 1.33);
    pack_ring(&pack->ring[0], 190e3);
    pack_ring(&pack->ring[1], 110e3);
    pack->volume[0] = 0.20e-6;
    pack->volume[1] = 0.25e-6;
    pack->volume[2] = 0.20e-6;
    const double walls[CG_PACK_REGIONS] = {490.0, 480.0, 470.0, 460.0, 380.0};
    memcpy(pack->temperature, walls, sizeof walls);
    pack->crankcase_pressure = 1.0e5;
    pack->leak = 5e-7;
    pack->cushion = 3e-6;
    pack->friction = 0.05;
    pack->discharge = 0.86;
    pack->port_temperature = 490.0;
    pack_nodes(pack, speed, top_gap, second_gap, 2.0e5, 2.0);
}

/* Rings that stay where they are, flanks as good as tight. */
static inline void pack_tight(struct cg_ring_pack *pack)
{
    pack->leak = 1e-9;
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        pack->ring[k].pinned = true;
}

#endif
