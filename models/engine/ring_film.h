/* The film of a ring of the case at an operating point: face, roughness and
 * oil from the case, temperatures from the thermal network, gas pressures as
 * given.
 */
#ifndef CG_RING_FILM_H
#define CG_RING_FILM_H

#include "case.h"
#include "cycle.h"
#include "film.h"
#include "status.h"
#include "thermal.h"

/* Equal crank steps of 2 degrees; point i stands at -360 + 2 i degrees. */
enum { CG_RING_FILM_POINTS = 360 };
double cg_ring_film_angle(size_t point);

/* Cylinder pressure at those angles [Pa], straight between the cycle's own
 * points.  Cannot fail. */
void cg_ring_film_cylinder(const struct cg_cycle *cycle,
                           double cylinder[CG_RING_FILM_POINTS]);

/* Gas around a ring over the cycle [Pa]. */
struct cg_ring_gas {
    double above[CG_RING_FILM_POINTS];  /* at the face's upper edge */
    double behind[CG_RING_FILM_POINTS]; /* in the groove, on its back */
    double below[CG_RING_FILM_POINTS];  /* at the face's lower edge */
};

/* First estimate: each volume stands above the crankcase (at ambient
 * pressure) by a fixed share of what the cylinder does, without lag.  Above
 * and behind the top ring 1; land under it, and behind the second ring, 0.2;
 * land under that 0.05 (common practice, no source). */
void cg_ring_gas_estimate(enum cg_ring_place place, double crankcase,
                          const double cylinder[CG_RING_FILM_POINTS],
                          struct cg_ring_gas *gas);

/* Room for one solution: about 30 kB. */
struct cg_ring_film_workspace {
    double speed[CG_RING_FILM_POINTS], viscosity[CG_RING_FILM_POINTS];
    double load[CG_RING_FILM_POINTS], depth[CG_RING_FILM_POINTS];
    double above[CG_RING_FILM_POINTS], below[CG_RING_FILM_POINTS];
    double station_viscosity[CG_STATIONS];
    struct cg_film_point point[CG_RING_FILM_POINTS];
};

/* The uniform film [m] of the same mean conductance as a ring whose film is
 * `film` [m] in mid-stroke, by stroke_film.h; its face is pressed by its
 * tension and the gas behind it, less that at the face's edges.  *slope: its
 * relative change by that of `film` [1].  Cannot fail. */
double cg_ring_film_stroke(const struct cg_case *c, enum cg_ring_place place,
                           double film, const struct cg_ring_gas *gas,
                           struct cg_ring_film_workspace *workspace,
                           double *slope);

/* Solves the film of the top or second ring at `speed` [rev/s] for the node
 * temperatures of the network [K].  Oil is at the mean of the face and of the
 * bore under the ring.  mean->heat_film holds what metal in contact conducts
 * beside the oil.  Friction power of the whole ring is that of `mean`
 * times pi times the bore; over the cycle it stands in workspace->point.
 * A moved case (solver.rough_cycles) goes in steps of 4 degrees.
 * The oil ring has no face of this kind: not to be asked for (assert).
 * CG_NUMERICAL as cg_film_solve; CG_BAD_INPUT for an unknown oil grade. */
enum cg_status cg_ring_film_solve(const struct cg_case *c,
                                  const struct cg_thermal *thermal,
                                  const double *temperature,
                                  enum cg_ring_place place, double speed,
                                  const struct cg_ring_gas *gas,
                                  struct cg_ring_film_workspace *workspace,
                                  struct cg_film_mean *mean,
                                  struct cg_error *error);

#endif
