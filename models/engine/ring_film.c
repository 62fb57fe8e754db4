#include "ring_film.h"

#include <assert.h>

#include "constants.h"
#include "geometry.h"
#include "growth.h"
#include "oil.h"
#include "stroke_film.h"
#include "thermal_parts.h"

/* 8 degrees are near enough for a film as set: its mean moves by 0.3 %
 * from that at 2. */
enum { POINTS = CG_RING_FILM_POINTS, STROKE_POINTS = 90 };
/* Moved cases, which are compared among each other, look at these alone. */
enum { ROUGH_STRIDE = 2 };
/* To which their film is found: its heat film moves by less than 1e-5. */
#define ROUGH_NEAR 1e-5

/* Friction coefficient where asperities of ring and bore touch through an oil
 * with additives: 0.08-0.12 (common practice, no source). */
#define BOUNDARY_FRICTION 0.10

double cg_ring_film_angle(size_t point)
{
    return -360.0 + 720.0 * (double)point / POINTS;
}

void cg_ring_film_cylinder(const struct cg_cycle *cycle,
                           double cylinder[POINTS])
{
    size_t after = 1;
    for (size_t i = 0; i < POINTS; i++) {
        double angle = cg_ring_film_angle(i);
        while (after + 1 < cycle->points &&
               cycle->point[after].crank_deg < angle)
            after++;
        const struct cg_cycle_point *a = &cycle->point[after - 1];
        const struct cg_cycle_point *b = &cycle->point[after];
        double width = b->crank_deg - a->crank_deg;
        double part = width > 0.0 ? (angle - a->crank_deg) / width : 0.0;
        cylinder[i] = a->pressure + part * (b->pressure - a->pressure);
    }
}

void cg_ring_gas_estimate(enum cg_ring_place place, double crankcase,
                          const double cylinder[POINTS],
                          struct cg_ring_gas *gas)
{
    /* above and behind a ring; below it; common practice, no source */
    static const double on[CG_RINGS] = {1.0, 0.2, 0.05};
    static const double under[CG_RINGS] = {0.2, 0.05, 0.0};
    for (size_t i = 0; i < POINTS; i++) {
        double over = cylinder[i] - crankcase;
        gas->above[i] = gas->behind[i] = crankcase + on[place] * over;
        gas->below[i] = crankcase + under[place] * over;
    }
}

/* Viscosity [Pa s] of oil between the face and the bore surface of every
 * station. */
static void station_viscosity(const struct cg_thermal *thermal,
                              const double *temperature, double face,
                              const struct cg_oil *oil, double *viscosity)
{
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        double bore = temperature[cg_thermal_liner_node(thermal, s, 0)];
        viscosity[s] = cg_oil_sheared(oil, 0.5 * (face + bore));
    }
}

/* The oil ring has no roughness of its own: that of the top ring. */
static struct cg_asperity asperity_of(const struct cg_case *c,
                                      enum cg_ring_place place)
{
    enum cg_ring_place like = place == CG_RING_OIL ? CG_RING_TOP : place;
    return cg_asperity_of(
        c->ring[like].roughness,
        cg_curve_at(&c->ring_material[place].modulus, CG_RING_REFERENCE),
        cg_curve_at(&c->bore_material.modulus, CG_BORE_REFERENCE));
}

static double ring_conductivity(const struct cg_case *c,
                                enum cg_ring_place place)
{
    return c->scale.ring_conductivity *
           cg_curve_at(&c->ring_material[place].conductivity,
                       CG_RING_REFERENCE);
}

static double bore_conductivity(const struct cg_case *c)
{
    return cg_curve_at(&c->bore_material.conductivity, CG_BORE_REFERENCE);
}

/* Depth [m] and its rate [m/rad] at `points` equal steps from -360 degrees; the
 * half turn from top dead centre is seen four times in a cycle. */
static void fill_motion(const struct cg_case *c, size_t points,
                        struct cg_ring_film_workspace *workspace)
{
    const struct cg_crank crank = cg_case_crank(c);
    size_t top = points / 2;
    assert(points % 2 == 0 && points <= POINTS);
    for (size_t i = 0; i <= points / 4; i++) {
        double depth, rate, angle = 720.0 * (double)i / (double)points;
        cg_crank_motion(&crank, angle, &depth, &rate);
        const size_t down[2] = {i, (top + i) % points};
        const size_t up[2] = {(points - i) % points, top - i};
        for (int k = 0; k < 2; k++) {
            workspace->depth[down[k]] = workspace->depth[up[k]] = depth;
            workspace->speed[up[k]] = -rate;
            workspace->speed[down[k]] = rate;
        }
    }
}

double cg_ring_film_stroke(const struct cg_case *c, enum cg_ring_place place,
                           double film, const struct cg_ring_gas *gas,
                           struct cg_ring_film_workspace *workspace,
                           double *slope)
{
    struct cg_stroke_film in = {
        film, CG_OIL_CONDUCTIVITY, asperity_of(c, place),
        ring_conductivity(c, place), bore_conductivity(c)};
    fill_motion(c, STROKE_POINTS, workspace);
    for (size_t k = 0; k < STROKE_POINTS; k++) {
        size_t i = k * (POINTS / STROKE_POINTS);
        workspace->load[k] = c->ring[place].pressure + gas->behind[i] -
                             0.5 * (gas->above[i] + gas->below[i]);
    }
    double conductance = cg_stroke_film_conductance(
        &in, STROKE_POINTS, workspace->speed, workspace->load, slope);
    *slope = -*slope;
    return CG_OIL_CONDUCTIVITY / conductance;
}

/* Puts the metal that touches beside the oil. */
static void add_contact(const struct cg_case *c, enum cg_ring_place place,
                        const struct cg_asperity *asperity,
                        size_t points, const struct cg_film_point *point,
                        struct cg_film_mean *mean)
{
    double face = ring_conductivity(c, place), bore = bore_conductivity(c);
    double sum = 0.0;
    for (size_t i = 0; i < points; i++)
        sum += cg_asperity_conductance(
            asperity, face, bore, point[i].contact / c->ring[place].width);
    mean->heat_film =
        CG_OIL_CONDUCTIVITY /
        (CG_OIL_CONDUCTIVITY / mean->heat_film + sum / (double)points);
}

/* At every `stride`-th point. */
static void fill_drive(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       enum cg_ring_place place, double speed, size_t stride,
                       const struct cg_ring_gas *gas,
                       struct cg_ring_film_workspace *workspace)
{
    const struct cg_ring_case *ring = &c->ring[place];
    double middle = cg_ring_turn(c, place);
    double turning = 2.0 * CG_PI * speed; /* [rad/s] */
    fill_motion(c, POINTS / stride, workspace);
    for (size_t i = 0, at = 0; at < POINTS; i++, at += stride) {
        workspace->above[i] = gas->above[at];
        workspace->below[i] = gas->below[at];
        workspace->speed[i] *= turning;
        workspace->viscosity[i] =
            cg_growth_at_depth(thermal, workspace->station_viscosity,
                               middle + workspace->depth[i]);
        workspace->load[i] = (ring->pressure + gas->behind[at]) * ring->width;
    }
}

enum cg_status
cg_ring_film_solve(const struct cg_case *c, const struct cg_thermal *thermal,
                   const double *temperature, enum cg_ring_place place,
                   double speed, const struct cg_ring_gas *gas,
                   struct cg_ring_film_workspace *workspace,
                   struct cg_film_mean *mean, struct cg_error *error)
{
    assert(place == CG_RING_TOP || place == CG_RING_SECOND);
    const struct cg_ring_case *in = &c->ring[place];
    const struct cg_oil *oil = cg_oil_find(c->cooling.oil_grade);
    if (oil == NULL)
        return cg_error_set(error, CG_BAD_INPUT,
                            "cooling.oil_grade: no grade \"%s\"",
                            c->cooling.oil_grade);
    station_viscosity(thermal, temperature,
                      temperature[thermal->ring[place].face], oil,
                      workspace->station_viscosity);
    size_t stride = c->solver.rough_cycles ? ROUGH_STRIDE : 1;
    size_t points = POINTS / stride;
    fill_drive(c, thermal, place, speed, stride, gas, workspace);
    struct cg_film_ring ring = {
        cg_face_curve_of((enum cg_face_shape)in->face_shape, in->width,
                         in->face_drop, in->face_peak),
        asperity_of(c, place),
        BOUNDARY_FRICTION,
        c->oil_supply};
    struct cg_film_drive drive = {
        points,           1.0 / (0.5 * speed * (double)points),
        workspace->speed, workspace->viscosity,
        workspace->load,  workspace->above,
        workspace->below, c->solver.rough_cycles ? ROUGH_NEAR : 0.0};
    enum cg_status status =
        cg_film_solve(&ring, &drive, workspace->point, mean, error);
    if (status == CG_OK)
        add_contact(c, place, &ring.asperity, points, workspace->point, mean);
    return status;
}
