#include <math.h>

#include "case_complaint.h"
#include "geometry.h"
#include "outside.h"

/* Jacket or fins, whichever cool. */
static void check_outside(const struct cg_case *c, struct cg_complaints *list)
{
    const struct cg_outside outside = cg_outside_of(c);
    bool air = cg_air_cooled(c);
    double most = 1.5 * cg_bore_length(c) - outside.top;
    cg_complain_if(list, outside.top >= c->engine.stroke,
                   air ? "bore.fins_top" : "bore.jacket_top", "engine.stroke",
                   c->engine.stroke, "must be below the stroke");
    cg_complain_if(
        list, outside.length > most,
        air ? "bore.fins_length" : "bore.jacket_length", "engine.stroke", most,
        air ? "the fins end below any bore, from this top must be at "
              "most"
            : "the jacket ends below any bore, from this top must be "
              "at most");
}

static void check_choke(const struct cg_case *c, struct cg_complaints *list)
{
    const struct cg_choke_case *choke = &c->bore.choke;
    double most = 0.005 * c->engine.bore, least = cg_ring_turn(c, CG_RING_TOP);
    cg_complain_if(list, choke->narrower > most, "bore.choke", "engine.bore",
                   most, "must be at most 0.005 bore");
    cg_complain_if(list, choke->narrower > 0.0 && choke->length < 1.2 * least,
                   "bore.choke_length", "piston.top_land", 1.2 * least,
                   "ends above where the top ring turns; must be at least");
    cg_complain_if(
        list,
        choke->narrower > 0.0 && c->piston.land_clearance <= choke->narrower,
        "bore.choke", "piston.land_clearance", c->piston.land_clearance,
        "the top land does not go through it cold; must be below the "
        "land clearance");
}

void cg_bore_check(const struct cg_case *c, struct cg_complaints *list)
{
    const struct cg_bore_case *b = &c->bore;
    double bore = c->engine.bore;
    cg_complain_if(list, b->wall_thickness >= 0.5 * bore, "bore.wall_thickness",
                   "engine.bore", 0.5 * bore, "must be below 0.5 bore");
    cg_complain_if(list, b->block_thickness >= bore, "bore.block_thickness",
                   "engine.bore", bore, "must be below the bore");
    cg_complain_if(list,
                   b->seat == CG_SEAT_PRESSED && b->interference > 0.004 * bore,
                   "bore.interference", "engine.bore", 0.004 * bore,
                   "must be at most 0.004 bore");
    check_outside(c, list);
    check_choke(c, list);
}
