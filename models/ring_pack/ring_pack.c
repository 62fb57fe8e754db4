#include "ring_pack.h"

#include <math.h>
#include <string.h>

#include "flank.h"

double cg_pack_angle(size_t node)
{
    return -360.0 + 720.0 * (double)node / (CG_PACK_NODES - 1);
}

double cg_pack_capacity(const struct cg_ring_pack *pack, size_t volume)
{
    return pack->volume[volume] /
           (pack->gas.gas_constant * pack->temperature[volume + 1]);
}

void cg_pack_at(const struct cg_ring_pack *pack, double angle_deg,
                struct cg_pack_node *at)
{
    double last = CG_PACK_NODES - 1;
    double position = (angle_deg + 360.0) * (last / 720.0);
    position = fmin(fmax(position, 0.0), last);
    size_t i = (size_t)fmin(position, last - 1.0);
    double part = position - (double)i;
    const struct cg_pack_node *a = &pack->node[i], *b = a + 1;
#define MIX(field) (at->field = a->field + part * (b->field - a->field))
    MIX(pressure);
    MIX(acceleration);
    MIX(slide);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        MIX(gap[k]);
        MIX(clearance[k]);
    }
#undef MIX
}

/* gap, upper, lower, face of the top ring, of the second; ports */
/* clang-format off */
const enum cg_pack_region cg_pack_from[CG_PACK_FLOWS] = {
    CG_PACK_CYLINDER, CG_PACK_CYLINDER, CG_PACK_GROOVE_TOP, CG_PACK_CYLINDER,
    CG_PACK_LAND, CG_PACK_LAND, CG_PACK_GROOVE_SECOND, CG_PACK_LAND,
    CG_PACK_CYLINDER};
const enum cg_pack_region cg_pack_to[CG_PACK_FLOWS] = {
    CG_PACK_LAND, CG_PACK_GROOVE_TOP, CG_PACK_LAND, CG_PACK_LAND,
    CG_PACK_CRANKCASE, CG_PACK_GROOVE_SECOND, CG_PACK_CRANKCASE,
    CG_PACK_CRANKCASE, CG_PACK_GROOVE_TOP};
/* clang-format on */

/* Adds a slope by the pressure of a region, if that is a volume. */
static void add_slope(double slopes[CG_PACK_VOLUMES], size_t region,
                      double slope)
{
    if (region != CG_PACK_CYLINDER && region != CG_PACK_CRANKCASE)
        slopes[region - 1] += slope;
}

/* Hands on a flow that was computed downhill. */
static void put_flow(const struct cg_flow *flow, size_t from, size_t to,
                     bool reverse, struct cg_pack_flow *out)
{
    double sign = reverse ? -1.0 : 1.0;
    out->rate = sign * flow->rate;
    out->by_lift = sign * flow->d_height;
    add_slope(out->by_pressure, reverse ? to : from, sign * flow->d_up);
    add_slope(out->by_pressure, reverse ? from : to, sign * flow->d_down);
}

static void orifice(const struct cg_ring_pack *pack, const double *pressure,
                    size_t number, double area, double forward_temperature,
                    struct cg_pack_flow *out)
{
    if (!(area > 0.0))
        return;
    size_t from = cg_pack_from[number], to = cg_pack_to[number];
    bool reverse = pressure[to] > pressure[from];
    struct cg_flow flow;
    cg_orifice_flow(
        &pack->gas, area, reverse ? pack->temperature[to] : forward_temperature,
        pressure[reverse ? to : from], pressure[reverse ? from : to], &flow);
    put_flow(&flow, from, to, reverse, out);
}

static void channel(const struct cg_ring_pack *pack, const double *pressure,
                    size_t number, size_t k, double height,
                    struct cg_pack_flow *out)
{
    const struct cg_pack_ring *ring = &pack->ring[k];
    size_t from = cg_pack_from[number], to = cg_pack_to[number];
    bool reverse = pressure[to] > pressure[from];
    struct cg_channel at = {height,
                            ring->flank_perimeter,
                            ring->flank_width,
                            pack->temperature[2 * k + 1],
                            ring->viscosity,
                            pack->discharge};
    struct cg_flow flow;
    cg_channel_flow(&pack->gas, &at, pressure[reverse ? to : from],
                    pressure[reverse ? from : to], &flow);
    put_flow(&flow, from, to, reverse, out);
}

/* Pressure that presses the ring on the bore [Pa]. */
static double contact(const struct cg_pack_ring *ring, size_t k,
                      const double *pressure)
{
    return pressure[2 * k + 1] + ring->tension -
           0.5 * (pressure[2 * k] + pressure[2 * k + 2]);
}

double cg_pack_load(const struct cg_pack_ring *ring, size_t k,
                    const double pressure[CG_PACK_REGIONS])
{
    return contact(ring, k, pressure) * ring->perimeter * ring->face_width;
}

/* A ring that has given way opens by c z^2/(1 + z^2), z = what is missing over
 * stiffness times c: at most the clearance c of the land, without a kink. */
static void face(const struct cg_ring_pack *pack, const struct cg_pack_node *at,
                 const double *pressure, size_t k, struct cg_pack_flow *out)
{
    const struct cg_pack_ring *ring = &pack->ring[k];
    double missing = -contact(ring, k, pressure);
    double clearance = at->clearance[k];
    if (!(missing > 0.0 && clearance > 0.0))
        return;
    double scale = ring->stiffness * clearance;
    double z = missing / scale, bottom = 1.0 + z * z;
    double full = pack->discharge * ring->perimeter * clearance;
    size_t number = CG_PACK_FLOW(k, CG_WAY_FACE);
    orifice(pack, pressure, number, full * z * z / bottom,
            pack->temperature[2 * k], out);
    double by_missing = out->rate * 2.0 / (z * bottom * scale);
    add_slope(out->by_pressure, 2 * k, 0.5 * by_missing);
    add_slope(out->by_pressure, 2 * k + 1, -by_missing);
    add_slope(out->by_pressure, 2 * k + 2, 0.5 * by_missing);
}

static void push_ring(const struct cg_ring_pack *pack,
                      const struct cg_pack_node *at, const double *pressure,
                      size_t k, double lift, double speed,
                      struct cg_pack_push *push)
{
    const struct cg_pack_ring *ring = &pack->ring[k];
    const double above = pressure[2 * k], groove = pressure[2 * k + 1],
                 below = pressure[2 * k + 2];
    double upper_a, upper_g, lower_b, lower_g;
    double upper = cg_channel_mean(above, groove, &upper_a, &upper_g);
    double lower = cg_channel_mean(below, groove, &lower_b, &lower_g);
    double flank = ring->flank_perimeter * ring->flank_width / ring->mass;
    double rim = ring->perimeter * ring->exposed / ring->mass;
    double grip = pack->friction * at->slide * ring->perimeter *
                  ring->face_width / ring->mass;
    double pressed = contact(ring, k, pressure);
    if (!(pressed > 0.0))
        pressed = grip = 0.0;

    push->acceleration = flank * (lower - upper) + rim * (below - above) +
                         grip * pressed + at->acceleration;
    add_slope(push->by_pressure, 2 * k, -flank * upper_a - rim - 0.5 * grip);
    add_slope(push->by_pressure, 2 * k + 1, flank * (lower_g - upper_g) + grip);
    add_slope(push->by_pressure, 2 * k + 2, flank * lower_b + rim - 0.5 * grip);

    double under = lift + pack->cushion;
    double over = ring->travel - lift + pack->cushion;
    double width = ring->flank_width;
    double film = ring->viscosity * width * width * width *
                  ring->flank_perimeter / ring->mass;
    double under3 = under * under * under, over3 = over * over * over;
    push->by_speed = -film * (1.0 / under3 + 1.0 / over3);
    push->acceleration += push->by_speed * speed;
    push->by_lift =
        3.0 * film * (1.0 / (under3 * under) - 1.0 / (over3 * over)) * speed;
}

void cg_pack_rates(const struct cg_ring_pack *pack,
                   const struct cg_pack_node *at,
                   const struct cg_pack_point *point,
                   struct cg_pack_rates *rates)
{
    const double pressure[CG_PACK_REGIONS] = {
        at->pressure, point->pressure[0], point->pressure[1],
        point->pressure[2], pack->crankcase_pressure};
    memset(rates, 0, sizeof *rates);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        const struct cg_pack_ring *ring = &pack->ring[k];
        struct cg_pack_flow *flow = &rates->flow[CG_PACK_FLOW(k, 0)];
        double lift = fmin(fmax(point->lift[k], 0.0), ring->travel);
        orifice(pack, pressure, CG_PACK_FLOW(k, CG_WAY_GAP),
                pack->discharge * at->gap[k] * at->clearance[k],
                pack->temperature[2 * k], &flow[CG_WAY_GAP]);
        channel(pack, pressure, CG_PACK_FLOW(k, CG_WAY_UPPER), k,
                ring->travel - lift + pack->leak, &flow[CG_WAY_UPPER]);
        flow[CG_WAY_UPPER].by_lift *= -1.0;
        channel(pack, pressure, CG_PACK_FLOW(k, CG_WAY_LOWER), k,
                lift + pack->leak, &flow[CG_WAY_LOWER]);
        face(pack, at, pressure, k, &flow[CG_WAY_FACE]);
        push_ring(pack, at, pressure, k, lift, point->speed[k],
                  &rates->push[k]);
    }
    orifice(pack, pressure, CG_PACK_PORTS, pack->discharge * pack->port_area,
            pack->port_temperature, &rates->flow[CG_PACK_PORTS]);
}
