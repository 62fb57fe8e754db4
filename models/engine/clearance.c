#include "clearance.h"

#include <math.h>

#include "constants.h"
#include "geometry.h"
#include "growth.h"

static double alloy_strain(const struct cg_case *c,
                           const struct cg_thermal *thermal,
                           const double *temperature, size_t cell)
{
    return cg_material_strain(&c->piston_material,
                              temperature[thermal->piston.node[cell]]);
}

/* The tightest bore that a part `offset` below the crown's edge meets. */
static double tightest_bore(const struct cg_case *c,
                            const struct cg_thermal *thermal,
                            const double *strain, double offset)
{
    double end = thermal->bore.grid.length;
    return cg_growth_least(thermal, strain, fmin(offset, end),
                           fmin(offset + c->engine.stroke, end), NULL);
}

double cg_clearance_across(double bore, double cold, double e_bore,
                           double e_piston)
{
    return bore * (1.0 + e_bore) - (bore - cold) * (1.0 + e_piston);
}

static size_t gauge_cell(const struct cg_thermal *thermal)
{
    const struct cg_piston_map *piston = &thermal->piston;
    return piston->skirt_first + 2 * piston->skirt_cells / 3;
}

static double gauge_offset(const struct cg_case *c)
{
    return cg_skirt_offset(c) + 2.0 / 3.0 * c->piston.skirt_length;
}

double cg_clearance_keystone(const struct cg_case *c, enum cg_ring_place place,
                             double e_bore, double e_piston)
{
    double slope = 0.5 * c->ring[place].keystone_deg * CG_PI / 180.0;
    return slope > 0.0
               ? 2.0 * tan(slope) * 0.5 * c->engine.bore * (e_bore - e_piston)
               : 0.0;
}

/* The groove opens with the piston, the ring in it grows with itself; behind
 * the ring the face is held by the bore and the groove's root comes nearer. */
static void in_groove(const struct cg_case *c, const struct cg_thermal *thermal,
                      const double *temperature, const double *strain,
                      enum cg_ring_place place, struct cg_clearance *out)
{
    const struct cg_ring_case *ring = &c->ring[place];
    double e_groove = cg_material_strain(
        &c->piston_material, temperature[thermal->piston.groove[place]]);
    double e_ring = cg_growth_ring(c, thermal, temperature, place);
    double middle = cg_ring_turn(c, place);
    double e_bore = tightest_bore(c, thermal, strain, middle);
    double radius = 0.5 * c->engine.bore;
    double root = radius - ring->depth - ring->back_clearance;
    out->side[place] = (ring->width + ring->side_clearance) * (1.0 + e_groove) -
                       ring->width * (1.0 + e_ring) +
                       cg_clearance_keystone(c, place, e_bore, e_groove);
    out->back[place] = radius * (1.0 + e_bore) -
                       ring->depth * (1.0 + e_ring) - root * (1.0 + e_groove);
}

void cg_clearance_hot(const struct cg_case *c, const struct cg_thermal *thermal,
                      const double *temperature, const double *strain,
                      struct cg_clearance *clearance)
{
    const double offset[CG_RINGS] = {
        0.5 * c->piston.top_land,
        cg_ring_offset(c, CG_RING_SECOND) - 0.5 * c->piston.second_land,
        cg_ring_offset(c, CG_RING_OIL) - 0.5 * c->piston.third_land};
    const double cold[CG_RINGS] = {c->piston.land_clearance,
                                   c->piston.second_land_clearance,
                                   c->piston.third_land_clearance};
    double bore = c->engine.bore;
    clearance->skirt =
        cg_clearance_across(bore, c->piston.skirt_clearance,
               tightest_bore(c, thermal, strain, gauge_offset(c)),
               alloy_strain(c, thermal, temperature, gauge_cell(thermal)));
    for (int r = 0; r < CG_RINGS; r++) {
        clearance->land[r] =
            cg_clearance_across(bore, cold[r],
                   tightest_bore(c, thermal, strain, offset[r]),
                   alloy_strain(c, thermal, temperature,
                                thermal->piston.land[r]));
        in_groove(c, thermal, temperature, strain, (enum cg_ring_place)r,
                  clearance);
    }
}

void cg_clearance_begin(struct cg_clearance *least)
{
    least->skirt = INFINITY;
    for (int r = 0; r < CG_RINGS; r++)
        least->land[r] = least->side[r] = least->back[r] = INFINITY;
}

void cg_clearance_least(const struct cg_clearance *clearance,
                        struct cg_clearance *least)
{
    least->skirt = fmin(least->skirt, clearance->skirt);
    for (int r = 0; r < CG_RINGS; r++) {
        least->land[r] = fmin(least->land[r], clearance->land[r]);
        least->side[r] = fmin(least->side[r], clearance->side[r]);
        least->back[r] = fmin(least->back[r], clearance->back[r]);
    }
}

struct cg_skirt_growth cg_clearance_skirt(const struct cg_case *c,
                                          const struct cg_thermal *thermal,
                                          const double *temperature,
                                          const double *strain)
{
    double bore = c->engine.bore;
    size_t gauge = gauge_cell(thermal);
    double e_bore = tightest_bore(c, thermal, strain, gauge_offset(c));
    double e_piston = alloy_strain(c, thermal, temperature, gauge);
    return (struct cg_skirt_growth){
        bore - bore * (1.0 + e_bore) / (1.0 + e_piston), bore * e_piston,
        temperature[thermal->piston.node[gauge]]};
}

/* Force over overlap of a thin ring pinched between two flats [N/m]. */
static double ring_stiffness(const struct cg_case *c, double temperature)
{
    double wall = c->piston.skirt_thickness;
    double radius = 0.5 * (c->engine.bore - wall);
    double inertia = c->piston.skirt_length * wall * wall * wall / 12.0;
    return cg_curve_at(&c->piston_material.modulus, temperature) * inertia /
           ((0.25 * CG_PI - 2.0 / CG_PI) * radius * radius * radius);
}

/* One thrust face, seen along the force: each bears over half the share. */
static double face_area(const struct cg_case *c)
{
    return c->engine.bore * sin(0.5 * CG_PI * c->piston.skirt_share) *
           c->piston.skirt_length;
}

double cg_skirt_pressure(const struct cg_case *c, double temperature,
                         double overlap)
{
    return ring_stiffness(c, temperature) * overlap / face_area(c);
}

double cg_skirt_overlap(const struct cg_case *c, double temperature,
                        double pressure)
{
    return pressure * face_area(c) / ring_stiffness(c, temperature);
}
