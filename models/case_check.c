#include "case_check.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>

#include "constants.h"
#include "geometry.h"
#include "status.h"

struct list {
    size_t count;
    struct cg_case_problem *problem;
};

/* Each check states when things are wrong, so that NaN is not. */
static void complain_if(struct list *list, bool wrong, const char *path,
                        const char *other, const char *format, ...)
    CG_FORMAT(5, 6);

static void complain_if(struct list *list, bool wrong, const char *path,
                        const char *other, const char *format, ...)
{
    if (!wrong || list->count == CG_CASE_PROBLEMS)
        return;
    struct cg_case_problem *problem = &list->problem[list->count++];
    problem->path = path;
    problem->other = other;
    va_list args;
    va_start(args, format);
    vsnprintf(problem->text, sizeof problem->text, format, args);
    va_end(args);
}

static double mm(double length)
{
    return 1e3 * length;
}

static void check_engine(const struct cg_case *c, struct list *list)
{
    double bore = c->engine.bore, stroke = c->engine.stroke;
    complain_if(list, c->engine.rod <= 0.55 * stroke, "engine.rod",
                "engine.stroke",
                "too short to turn, more than 0.55 of the stroke is allowed: "
                "%.4g mm", mm(0.55 * stroke));
    complain_if(list, stroke > 5.0 * bore || stroke < 0.3 * bore,
                "engine.stroke", "engine.bore",
                "stroke over bore is %.3g, 0.3 to 5 is allowed",
                stroke / bore);
    complain_if(list, c->duty.cruise_speed > 1.5 * c->engine.speed,
                "duty.cruise_speed", "engine.speed",
                "at most 1.5 times engine.speed is allowed: %.5g rpm",
                90.0 * c->engine.speed);
}

/* Air compressed with the exponent 1.33 from full boost. */
static double compressed_pressure(const struct cg_case *c)
{
    return (c->charge.ambient_pressure + c->charge.boost) *
           pow(c->engine.compression_ratio, 1.33);
}

static void check_charge(const struct cg_case *c, struct list *list)
{
    const double most = 1.5e7;
    complain_if(list,
                c->charge.charger == CG_CHARGER_NONE && c->charge.boost > 0.0,
                "charge.charger", "charge.boost",
                "none makes no boost, but charge.boost is %.4g kPa; allowed: "
                "turbine, belt", 1e-3 * c->charge.boost);
    complain_if(list, compressed_pressure(c) > most,
                "engine.compression_ratio", "charge.boost",
                "with this boost the charge reaches %.3g MPa before it burns, "
                "at most %.3g is allowed",
                1e-6 * compressed_pressure(c), 1e-6 * most);
    complain_if(list, c->charge.closed_throttle >= c->charge.ambient_pressure,
                "charge.closed_throttle", "charge.ambient_pressure",
                "must be below the ambient pressure, %.5g kPa",
                1e-3 * c->charge.ambient_pressure);
}

static void check_piston(const struct cg_case *c, struct list *list)
{
    const struct cg_piston_case *p = &c->piston;
    double bore = c->engine.bore, belt = cg_skirt_offset(c);
    complain_if(list, p->wall_thickness >= 0.45 * bore,
                "piston.wall_thickness", "engine.bore",
                "must leave the piston hollow, below 0.45 of the bore: "
                "%.4g mm", mm(0.45 * bore));
    complain_if(list, p->skirt_thickness >= 0.45 * bore,
                "piston.skirt_thickness", "engine.bore",
                "must leave the skirt hollow, below 0.45 of the bore: "
                "%.4g mm", mm(0.45 * bore));
    complain_if(list, p->crown_thickness > 0.5 * bore,
                "piston.crown_thickness", "engine.bore",
                "at most half the bore is allowed: %.4g mm", mm(0.5 * bore));
    complain_if(list, belt > bore, "piston.top_land", "engine.bore",
                "lands and rings add up to %.4g mm, at most the bore is "
                "allowed: %.4g mm", mm(belt), mm(bore));
    complain_if(list, belt + p->skirt_length > 2.5 * bore,
                "piston.skirt_length", "engine.bore",
                "the piston is %.4g mm long, at most 2.5 bores are allowed: "
                "%.4g mm", mm(belt + p->skirt_length), mm(2.5 * bore));
    complain_if(list, p->land_clearance < p->skirt_clearance,
                "piston.land_clearance", "piston.skirt_clearance",
                "must not be below the skirt clearance, %.4g mm",
                mm(p->skirt_clearance));
    complain_if(list, p->land_clearance > 0.05 * bore,
                "piston.land_clearance", "engine.bore",
                "at most 0.05 of the bore is allowed: %.4g mm",
                mm(0.05 * bore));
}

/* Paths of one ring's settings, and of the land above it. */
struct ring_paths {
    const char *width, *depth, *side, *gap, *land;
};

static const struct ring_paths ring_paths[CG_RINGS] = {
    {"rings.top.width", "rings.top.depth", "rings.top.side_clearance",
     "rings.top.cold_gap", "piston.top_land"},
    {"rings.second.width", "rings.second.depth", "rings.second.side_clearance",
     "rings.second.cold_gap", "piston.second_land"},
    {"rings.oil.width", "rings.oil.depth", "rings.oil.side_clearance",
     "rings.oil.cold_gap", "piston.third_land"},
};

static void check_ring(const struct cg_case *c, enum cg_ring_place place,
                       struct list *list)
{
    const struct cg_ring_case *ring = &c->ring[place];
    const struct ring_paths *paths = &ring_paths[place];
    const double land[CG_RINGS] = {c->piston.top_land, c->piston.second_land,
                                   c->piston.third_land};
    double wall = c->piston.wall_thickness, bore = c->engine.bore;
    double groove = ring->depth + ring->back_clearance;
    double most_gap = 0.03 * CG_PI * bore;
    complain_if(list, ring->width > 1.5 * land[place], paths->width,
                paths->land,
                "at most 1.5 times the land above it is allowed: %.4g mm",
                mm(1.5 * land[place]));
    complain_if(list, groove >= 0.9 * wall, paths->depth,
                "piston.wall_thickness",
                "depth and back clearance cut the groove %.4g mm deep, at "
                "most 0.9 of piston.wall_thickness is allowed: %.4g mm",
                mm(groove), mm(0.9 * wall));
    complain_if(list, ring->side_clearance >= 0.5 * ring->width, paths->side,
                paths->width, "must be below half the ring's width: %.4g mm",
                mm(0.5 * ring->width));
    complain_if(list, ring->cold_gap > most_gap, paths->gap, "engine.bore",
                "at most 3 %% of the bore's circumference is allowed: "
                "%.4g mm", mm(most_gap));
}

static void check_bore(const struct cg_case *c, struct list *list)
{
    const struct cg_bore_case *b = &c->bore;
    double bore = c->engine.bore, travel = cg_bore_length(c);
    complain_if(list, b->wall_thickness >= 0.5 * bore, "bore.wall_thickness",
                "engine.bore", "must be below half the bore: %.4g mm",
                mm(0.5 * bore));
    complain_if(list, b->block_thickness >= bore, "bore.block_thickness",
                "engine.bore", "must be below the bore: %.4g mm", mm(bore));
    complain_if(list,
                b->seat == CG_SEAT_PRESSED && b->interference > 0.004 * bore,
                "bore.interference", "engine.bore",
                "at most 0.004 of the bore is allowed: %.4g mm",
                mm(0.004 * bore));
    complain_if(list, b->jacket_top >= c->engine.stroke, "bore.jacket_top",
                "engine.stroke", "must be below the stroke: %.4g mm",
                mm(c->engine.stroke));
    complain_if(list, b->jacket_top + b->jacket_length > 1.5 * travel,
                "bore.jacket_length", "engine.stroke",
                "the jacket ends %.4g mm below the deck, at most %.4g mm is "
                "allowed", mm(b->jacket_top + b->jacket_length),
                mm(1.5 * travel));
}

static void check_margin(const struct cg_case *c, struct list *list)
{
    double bore = c->engine.bore;
    complain_if(list, c->margin.residual > 0.01 * bore, "margin.residual",
                "engine.bore", "at most 0.01 of the bore is allowed: %.4g mm",
                mm(0.01 * bore));
    complain_if(list, c->margin.filing_step > 0.005 * bore,
                "margin.filing_step", "engine.bore",
                "at most 0.005 of the bore is allowed: %.4g mm",
                mm(0.005 * bore));
}

size_t cg_case_check(const struct cg_case *c,
                     struct cg_case_problem problem[CG_CASE_PROBLEMS])
{
    struct list list = {0, problem};
    check_engine(c, &list);
    check_charge(c, &list);
    check_piston(c, &list);
    for (int place = 0; place < CG_RINGS; place++)
        check_ring(c, (enum cg_ring_place)place, &list);
    check_bore(c, &list);
    check_margin(c, &list);
    return list.count;
}
