#include "geometry.h"

#include "constants.h"

struct cg_crank cg_case_crank(const struct cg_case *c)
{
    return (struct cg_crank){c->engine.bore, c->engine.stroke, c->engine.rod,
                             c->engine.compression_ratio};
}

double cg_ring_offset(const struct cg_case *c, enum cg_ring_place place)
{
    double offset = c->piston.top_land;
    if (place >= CG_RING_SECOND)
        offset += c->ring[CG_RING_TOP].width + c->piston.second_land;
    if (place >= CG_RING_OIL)
        offset += c->ring[CG_RING_SECOND].width + c->piston.third_land;
    return offset;
}

double cg_skirt_offset(const struct cg_case *c)
{
    return cg_ring_offset(c, CG_RING_OIL) + c->ring[CG_RING_OIL].width;
}

double cg_ring_turn(const struct cg_case *c, enum cg_ring_place place)
{
    return cg_ring_offset(c, place) + 0.5 * c->ring[place].width;
}

double cg_bore_length(const struct cg_case *c)
{
    return c->engine.stroke + cg_skirt_offset(c) + 0.1 * c->engine.bore;
}

double cg_ring_outer_radius(const struct cg_case *c)
{
    return 0.5 * c->engine.bore;
}

double cg_ring_inner_radius(const struct cg_case *c, enum cg_ring_place place)
{
    return cg_ring_outer_radius(c) - c->ring[place].depth;
}

double cg_groove_volume(const struct cg_case *c, enum cg_ring_place place)
{
    const struct cg_ring_case *ring = &c->ring[place];
    double inner = c->engine.bore - 2.0 * ring->depth;
    double behind = CG_PI * (inner - ring->back_clearance) *
                    ring->back_clearance * (ring->width + ring->side_clearance);
    return behind + CG_PI * (c->engine.bore - ring->depth) * ring->depth *
                        ring->side_clearance;
}
