/* Lengths of piston and bore that follow from the case. */
#ifndef CG_GEOMETRY_H
#define CG_GEOMETRY_H

#include "case.h"
#include "crank.h"

struct cg_crank cg_case_crank(const struct cg_case *c);

/* Distance from the crown's edge to a ring's upper side, and to the top of
 * the skirt [m]. */
double cg_ring_offset(const struct cg_case *c, enum cg_ring_place place);
double cg_skirt_offset(const struct cg_case *c);

/* Depth below the deck of a ring's middle where it turns at the top [m]. */
double cg_ring_turn(const struct cg_case *c, enum cg_ring_place place);

/* Length of bore that is modelled: from the deck to a tenth of the bore below
 * the oil ring at bottom dead centre [m]. */
double cg_bore_length(const struct cg_case *c);

/* Inner and outer radius of a ring in the bore [m]. */
double cg_ring_inner_radius(const struct cg_case *c, enum cg_ring_place place);
double cg_ring_outer_radius(const struct cg_case *c);

/* Room around a ring in its groove, cold [m3]: behind it, and over it. */
double cg_groove_volume(const struct cg_case *c, enum cg_ring_place place);

#endif
