#include "case_check.h"

#include <math.h>
#include <stdbool.h>
#include <string.h>

#include "brought_check.h"
#include "case_complaint.h"
#include "constants.h"
#include "geometry.h"
#include "operating.h"
#include "setting.h"

void cg_complain_if(struct cg_complaints *list, bool wrong, const char *path,
                    const char *other, double limit, const char *text)
{
    if (wrong && list->count < CG_CASE_PROBLEMS)
        list->problem[list->count++] =
            (struct cg_case_problem){path, other, text, limit};
}

/* The cycle stands 30 rpm and up. */
#define SLOWEST (30.0 / 60.0)
static double slowest_of(const struct cg_duty_case *duty)
{
    double speed = cg_duty_slowest(duty);
    if (duty->start == CG_START_CRUISE)
        speed = fmin(speed, duty->cruise_speed);
    return speed;
}

/* Of the duties to survive besides. */
static double slowest_besides(const struct cg_case *c)
{
    double speed = INFINITY;
    for (int i = 0; i < c->survive.duties; i++)
        speed = fmin(speed, slowest_of(&c->survive.duty[i]));
    return speed;
}

static void check_engine(const struct cg_case *c, struct cg_complaints *list)
{
    double bore = c->engine.bore, stroke = c->engine.stroke;
    cg_complain_if(list, c->engine.rod <= 0.6 * stroke, "engine.rod",
                   "engine.stroke", 0.6 * stroke,
                   "too short to turn, must be above 0.6 stroke");
    cg_complain_if(list, stroke > 5.0 * bore, "engine.stroke", "engine.bore",
                   5.0 * bore, "must be at most 5 bores");
    cg_complain_if(list, stroke < 0.3 * bore, "engine.stroke", "engine.bore",
                   0.3 * bore, "must be at least 0.3 bore");
    bool slow = slowest_of(&c->duty) < SLOWEST;
    cg_complain_if(list, slow, "engine.speed", "duty", NAN,
                   "this duty turns the engine slower than 30 rpm; allowed: 30 "
                   "rpm and more");
    cg_complain_if(list, !slow && slowest_besides(c) < SLOWEST, "engine.speed",
                   "margin.duties", NAN,
                   "one of margin.duties turns the engine slower than 30 rpm; "
                   "allowed: 30 rpm and more");
    cg_complain_if(list, c->duty.cruise_speed > 1.5 * c->engine.speed,
                   "duty.cruise_speed", "engine.speed", 1.5 * c->engine.speed,
                   "must be at most 1.5 engine.speed");
}

static bool by_compression(const struct cg_case *c)
{
    return c->combustion.ignition == CG_IGNITION_COMPRESSION;
}

/* Before it burns the charge must stay below 15 MPa, in a diesel 25, compressed
 * from full boost with the exponent 1.33. */
static double most_compression(const struct cg_case *c)
{
    double most = by_compression(c) ? 25e6 : 15e6;
    return pow(most / (c->charge.ambient_pressure + c->charge.boost),
               1.0 / 1.33);
}

/* The share of the latent heat that would cool the charge to COLDEST, at the
 * load where that is least.  Colder, the fuel no longer evaporates. */
#define COLDEST 230.0
static double most_evaporation(const struct cg_case *c)
{
    double most = INFINITY;
    struct cg_case with = *c;
    with.spray.flow = 0.0; /* looked at with it by brought_check.c */
    for (int i = 0; i <= 10; i++) {
        struct cg_operating at = cg_operating_at(c, c->engine.speed, 0.1 * i);
        struct cg_charge_state warm, cold;
        with.charge.evaporation = 0.0;
        cg_operating_charge(&with, &at, &warm);
        with.charge.evaporation = 1.0;
        cg_operating_charge(&with, &at, &cold);
        double drop = warm.manifold_temperature - cold.manifold_temperature;
        most = fmin(most, (warm.manifold_temperature - COLDEST) / drop);
    }
    return fmax(most, 0.0);
}

/* The share of the latent heat left that walls must give at least, so that the
 * charge does not enter the cylinder as if below COLDEST_ENTRY: the fuel's own
 * capacity for heat and the residual then keep it above what the gas laws
 * hold for (150 K). */
#define COLDEST_ENTRY 130.0
static double least_wall_evaporation(const struct cg_case *c)
{
    double least = 0.0;
    struct cg_case with = *c;
    with.spray.flow = 0.0;
    for (int i = 0; i <= 10; i++) {
        struct cg_operating at = cg_operating_at(c, c->engine.speed, 0.1 * i);
        struct cg_charge_state warm, cold, own;
        with.charge.evaporation = 0.0;
        cg_operating_charge(&with, &at, &warm);
        with.charge.evaporation = 1.0;
        cg_operating_charge(&with, &at, &cold);
        with.charge.evaporation = c->charge.evaporation;
        cg_operating_charge(&with, &at, &own);
        double left = (1.0 - c->charge.evaporation) *
                      (warm.manifold_temperature - cold.manifold_temperature);
        if (left > 0.0)
            least = fmax(
                least, 1.0 - (own.manifold_temperature - COLDEST_ENTRY) / left);
    }
    return least;
}

/* Hotter, no charge reaches the spark (700 K is what the cycle stands). */
static bool charge_too_hot(const struct cg_case *c)
{
    struct cg_operating full = cg_operating_at(c, c->engine.speed, 1.0);
    struct cg_charge_state charge;
    cg_operating_charge(c, &full, &charge);
    return charge.manifold_temperature > 700.0;
}

static void check_charge(const struct cg_case *c, struct cg_complaints *list)
{
    cg_complain_if(
        list, c->charge.charger == CG_CHARGER_NONE && c->charge.boost > 0.0,
        "charge.charger", "charge.boost", NAN,
        "none makes no boost, but charge.boost is set; allowed: "
        "turbine, belt");
    cg_complain_if(list,
                   c->charge.charger == CG_CHARGER_NONE &&
                       c->charge.second_charger != CG_CHARGER_NONE,
                   "charge.second_charger", "charge.charger", NAN,
                   "stands behind a first one, but charge.charger is none; "
                   "allowed: none, or a first charger");
    cg_complain_if(list, c->engine.compression_ratio > most_compression(c),
                   "engine.compression_ratio", "charge.boost",
                   most_compression(c),
                   by_compression(c)
                       ? "the charge passes 25 MPa before it burns, with this "
                         "boost must be at most"
                       : "the charge passes 15 MPa before it burns, with this "
                         "boost must be at most");
    cg_complain_if(
        list, charge_too_hot(c), "charge.boost", "charge.cooler_effectiveness",
        NAN,
        "heats the charge above 427 C; allowed: less boost, a better "
        "charger or charge cooler");
    cg_complain_if(list, c->charge.evaporation > most_evaporation(c),
                   "charge.evaporation", "fuel.lambda", most_evaporation(c),
                   "cools the charge below -43 C, where fuel no longer "
                   "evaporates; must be at most");
    cg_complain_if(list,
                   c->charge.evaporation <= most_evaporation(c) &&
                       c->charge.wall_evaporation < least_wall_evaporation(c),
                   "charge.wall_evaporation", "charge.evaporation",
                   least_wall_evaporation(c),
                   "leaves too much of the fuel to evaporate in the cylinder; "
                   "must be at least");
    cg_complain_if(list,
                   !by_compression(c) &&
                       c->charge.closed_throttle >= c->charge.ambient_pressure,
                   "charge.closed_throttle", "charge.ambient_pressure",
                   c->charge.ambient_pressure,
                   "must be below the ambient pressure");
}

static void check_brought(const struct cg_case *c, struct cg_complaints *list)
{
    struct cg_case_problem found[CG_BROUGHT_PROBLEMS];
    size_t count = cg_brought_check(c, found);
    for (size_t i = 0; i < count; i++)
        cg_complain_if(list, true, found[i].path, found[i].other,
                       found[i].limit, found[i].text);
}

static void check_piston(const struct cg_case *c, struct cg_complaints *list)
{
    const struct cg_piston_case *p = &c->piston;
    double bore = c->engine.bore, belt = cg_skirt_offset(c);
    cg_complain_if(list, p->wall_thickness >= 0.45 * bore,
                   "piston.wall_thickness", "engine.bore", 0.45 * bore,
                   "must leave the piston hollow, below 0.45 bore");
    cg_complain_if(list, p->skirt_thickness >= 0.45 * bore,
                   "piston.skirt_thickness", "engine.bore", 0.45 * bore,
                   "must leave the skirt hollow, below 0.45 bore");
    cg_complain_if(list, p->crown_thickness > 0.5 * bore,
                   "piston.crown_thickness", "engine.bore", 0.5 * bore,
                   "must be at most 0.5 bore");
    cg_complain_if(list, belt > bore, "piston.top_land", "engine.bore",
                   p->top_land - (belt - bore),
                   "lands and rings together pass the bore, with the others "
                   "must be at most");
    cg_complain_if(list, belt + p->skirt_length > 2.5 * bore,
                   "piston.skirt_length", "engine.bore", 2.5 * bore - belt,
                   "the piston passes 2.5 bores, under these lands must be at "
                   "most");
    cg_complain_if(list, p->land_clearance < p->skirt_clearance,
                   "piston.land_clearance", "piston.skirt_clearance",
                   p->skirt_clearance, "must be at least the skirt clearance");
    cg_complain_if(list, p->land_clearance > 0.05 * bore,
                   "piston.land_clearance", "engine.bore", 0.05 * bore,
                   "must be at most 0.05 bore");
    cg_complain_if(list, p->second_land_clearance > 0.05 * bore,
                   "piston.second_land_clearance", "engine.bore", 0.05 * bore,
                   "must be at most 0.05 bore");
    cg_complain_if(list, p->third_land_clearance > 0.05 * bore,
                   "piston.third_land_clearance", "engine.bore", 0.05 * bore,
                   "must be at most 0.05 bore");
}

static void check_ports(const struct cg_case *c, struct cg_complaints *list)
{
    double width = c->ring[CG_RING_TOP].width;
    cg_complain_if(list,
                   c->seal.ports == CG_PORTS_THROUGH &&
                       c->seal.port_diameter >= width,
                   "rings.top.port_diameter", "rings.top.width", width,
                   "a hole through the ring must be narrower than it, below");
}

/* Paths of one ring's settings, and of the land above it. */
struct ring_paths {
    const char *width, *depth, *side, *gap, *maker, *land;
};

static const struct ring_paths ring_paths[CG_RINGS] = {
    {"rings.top.width", "rings.top.depth", "rings.top.side_clearance",
     "rings.top.cold_gap", "rings.top.maker_minimum", "piston.top_land"},
    {"rings.second.width", "rings.second.depth", "rings.second.side_clearance",
     "rings.second.cold_gap", "rings.second.maker_minimum",
     "piston.second_land"},
    {"rings.oil.width", "rings.oil.depth", "rings.oil.side_clearance", NULL,
     NULL, "piston.third_land"}, /* its rails' gaps are not looked at */
};

static double gap_by_bore(const struct cg_case *c)
{
    return CG_GAP_MOST * CG_PI * c->engine.bore;
}

double cg_case_gap_most(const struct cg_case *c, enum cg_ring_place place)
{
    const struct cg_setting *gap = cg_setting_find(ring_paths[place].gap);
    double band =
        cg_unit_to_si(cg_unit_find(gap->dimension, gap->unit), gap->high);
    return fmin(band, gap_by_bore(c));
}

static void check_ring(const struct cg_case *c, enum cg_ring_place place,
                       struct cg_complaints *list)
{
    const struct cg_ring_case *ring = &c->ring[place];
    const struct ring_paths *paths = &ring_paths[place];
    const double land[CG_RINGS] = {c->piston.top_land, c->piston.second_land,
                                   c->piston.third_land};
    double most_depth = 0.9 * c->piston.wall_thickness - ring->back_clearance;
    cg_complain_if(list, ring->width > 1.5 * land[place], paths->width,
                   paths->land, 1.5 * land[place],
                   "must be at most 1.5 times the land above it");
    cg_complain_if(
        list, ring->depth >= most_depth, paths->depth, "piston.wall_thickness",
        most_depth,
        "the groove cuts through 0.9 piston.wall_thickness, with this "
        "back clearance must be below");
    cg_complain_if(list, ring->side_clearance >= 0.5 * ring->width, paths->side,
                   paths->width, 0.5 * ring->width,
                   "must be below half the ring's width");
    cg_complain_if(list, ring->cold_gap > gap_by_bore(c), paths->gap,
                   "engine.bore", gap_by_bore(c),
                   "must be at most 0.03 of the circumference");
    cg_complain_if(list, ring->maker_minimum > gap_by_bore(c), paths->maker,
                   "engine.bore", gap_by_bore(c),
                   "must be at most 0.03 of the circumference");
}

static void check_margin(const struct cg_case *c, struct cg_complaints *list)
{
    double bore = c->engine.bore;
    cg_complain_if(list, c->margin.residual > 0.01 * bore, "margin.residual",
                   "engine.bore", 0.01 * bore, "must be at most 0.01 bore");
    cg_complain_if(list, c->margin.filing_step > 0.005 * bore,
                   "margin.filing_step", "engine.bore", 0.005 * bore,
                   "must be at most 0.005 bore");
}

size_t cg_case_check(const struct cg_case *c,
                     struct cg_case_problem problem[CG_CASE_PROBLEMS])
{
    struct cg_complaints list = {0, problem};
    check_engine(c, &list);
    cg_ignition_check(c, &list);
    check_charge(c, &list);
    if (!by_compression(c)) /* has none of it */
        check_brought(c, &list);
    check_piston(c, &list);
    for (int place = 0; place < CG_RINGS; place++)
        check_ring(c, (enum cg_ring_place)place, &list);
    check_ports(c, &list);
    cg_bore_check(c, &list);
    check_margin(c, &list);
    return list.count;
}
