/* Hot clearances of the piston: skirt, lands, and the rings in their grooves.
 *
 * Diameters are measured cold; each part grows freely by its own temperature:
 *   clearance = D (1 + e_bore) - (D - cold clearance)(1 + e_piston)
 * against the tightest bore in the part's travel.  Round parts, no side
 * thrust.  Left out: the belt, hotter than the skirt, pushes the pin bosses out
 * and so draws the thrust faces in, and the cold skirt's ovality.
 */
#ifndef CG_CLEARANCE_H
#define CG_CLEARANCE_H

#include "case.h"
#include "thermal.h"

struct cg_clearance {
    double skirt;          /* where it is gauged, a third up from its lower
                              edge; diametral [m] */
    double land[CG_RINGS]; /* above each ring, diametral [m] */
    double side[CG_RINGS]; /* ring in its groove, axial [m] */
    double back[CG_RINGS]; /* behind the ring, radial [m] */
};

/* Hot diametral clearance [m] of a part of the piston whose strain is e_piston
 * and whose cold clearance is `cold` [m], in a bore of strain e_bore. */
double cg_clearance_across(double bore, double cold, double e_bore,
                           double e_piston);

/* Hot clearances at an instant; negative: the parts would overlap if nothing
 * gave.  strain: that of the bore at each station.  Cannot fail. */
void cg_clearance_hot(const struct cg_case *c, const struct cg_thermal *thermal,
                      const double *temperature, const double *strain,
                      struct cg_clearance *clearance);

/* Keeps in `least` the smaller of each; all infinite to begin with. */
void cg_clearance_begin(struct cg_clearance *least);
void cg_clearance_least(const struct cg_clearance *clearance,
                        struct cg_clearance *least);

/* What a keystone ring's groove opens by, axially, as the ring moves out of it
 * [m]: twice the tangent of half the angle between its flanks for each length,
 * negative where the piston grows more than the bore.  0: rectangular.  Cannot
 * fail. */
double cg_clearance_keystone(const struct cg_case *c, enum cg_ring_place place,
                             double e_bore, double e_piston);

struct cg_skirt_growth {
    double closure;     /* cold clearance that leaves just none hot [m] */
    double growth;      /* of the skirt's diameter [m] */
    double temperature; /* of the skirt where it is gauged [K] */
};

/* Growth of the skirt against the tightest bore in its travel. */
struct cg_skirt_growth cg_clearance_skirt(const struct cg_case *c,
                                          const struct cg_thermal *thermal,
                                          const double *temperature,
                                          const double *strain);

/* A skirt with no clearance left springs: its thrust faces are pressed in, and
 * the piston's cold ovality leaves room for what bulges on the pin axis.  Mean
 * pressure on one thrust face by an overlap [m] of diameter [Pa], and the
 * overlap that makes a pressure; the skirt a thin ring under two opposite
 * forces,
 *   overlap = (pi/4 - 2/pi) F R^3 / (E I)
 * (S. Timoshenko, "Strength of Materials", part I (1955), thin ring), I of the
 * skirt's wall over its length, the force on the face's projected area.  Pin
 * bosses stiffen it, the cut-away sides weaken it: left out.  Cannot fail. */
double cg_skirt_pressure(const struct cg_case *c, double temperature,
                         double overlap);
double cg_skirt_overlap(const struct cg_case *c, double temperature,
                        double pressure);

#endif
