/* Gas around the two compression rings: places, flows between them, and the
 * forces that move the rings in their grooves.
 *
 *   cylinder -> top groove -> land between the rings -> second groove
 *            -> crankcase
 *
 * Each of the three volumes holds gas at the temperature of its walls (an
 * isothermal crevice): M. Namazian and J. B. Heywood, "Flow in the piston-
 * cylinder-ring crevices of a spark-ignition engine", SAE 820088 (1982).  Past
 * each ring gas goes four ways:
 *   gap    end gap, an orifice of gap times the radial clearance of the land
 *          below (orifice.h)
 *   upper  over the ring into the groove, a channel (flank.h)
 *   lower  out of the groove under the ring, a channel
 *   face   between ring and bore, when gas has pushed the ring in
 * and gas ports, if there are any, from the cylinder into the top groove.
 *
 * A ring moves along the groove by gas on its flanks, friction on the bore and
 * its own inertia (x: height above the groove's lower flank, v = dx/dt):
 *   m dv/dt = F(gas) + F(friction) - c(x) v + m a(piston)
 *   F(gas) = Pm W (p(lower flank) - p(upper flank)) + P e (p below - p above)
 * with W the width inside the groove, e what stands out of it, p(flank) the
 * mean along the channel, c(x) = mu W^3 Pm (1/h_upper^3 + 1/h_lower^3) the gas
 * squeezed out of a closing channel or drawn into an opening one (Reynolds;
 * long strip, gas taken as incompressible).  Oil on the flanks, ring twist,
 * and tilt of the piston are left out.
 *
 * Across the bore a ring is pressed out by its tension and the gas behind it,
 * and in by the gas at its face, whose mean is taken half way between above
 * and below (a barrel face, its crest in the middle).  If that is less than
 * nothing, the ring gives way and gas passes its face; its stiffness is that
 * of its tension over the free gap it is closed from.
 */
#ifndef CG_RING_PACK_H
#define CG_RING_PACK_H

#include <stdbool.h>
#include <stddef.h>

#include "orifice.h"

enum cg_pack_region {
    CG_PACK_CYLINDER,
    CG_PACK_GROOVE_TOP,
    CG_PACK_LAND,
    CG_PACK_GROOVE_SECOND,
    CG_PACK_CRANKCASE,
    CG_PACK_REGIONS
};

enum { CG_PACK_RINGS = 2, CG_PACK_VOLUMES = 3 };

/* A volume v (0..2) is region v + 1; ring k (0, 1) lies between regions 2 k,
 * 2 k + 1 (its groove) and 2 k + 2. */
enum cg_pack_way { CG_WAY_GAP, CG_WAY_UPPER, CG_WAY_LOWER, CG_WAY_FACE,
                   CG_PACK_WAYS };
/* Flow numbers: ring k's way w, and the ports. */
#define CG_PACK_FLOW(k, w) ((size_t)(k) * CG_PACK_WAYS + (size_t)(w))
enum { CG_PACK_PORTS = CG_PACK_RINGS * CG_PACK_WAYS,
       CG_PACK_FLOWS = CG_PACK_PORTS + 1 };

/* What changes with the crank, at equal steps from -360 to 360 degrees. */
struct cg_pack_node {
    double pressure;                 /* cylinder [Pa] */
    double gap[CG_PACK_RINGS];       /* end gap, hot, >= 0 [m] */
    double clearance[CG_PACK_RINGS]; /* of the land below, radial [m] */
    double acceleration;             /* of the piston, down positive [m/s2] */
    double slide;                    /* -1..1: ring slides down (1) or up */
};
enum { CG_PACK_NODES = 721 };
double cg_pack_angle(size_t node); /* [deg] */

struct cg_pack_ring {
    double mass;            /* [kg] */
    double perimeter;       /* at the bore [m] */
    double flank_perimeter; /* mean of the flank [m] */
    double flank_width;     /* W, overlap of ring and groove [m] */
    double exposed;         /* e, part of the ring outside the groove [m] */
    double face_width;      /* axial [m] */
    double travel;          /* hot side clearance [m], > 0 */
    double tension;         /* pressure on the bore by its own tension [Pa] */
    double stiffness;       /* radial [Pa/m] */
    double viscosity;       /* of gas in its groove [Pa s] */
    bool pinned;              /* kept on its lower flank, whatever pushes */
};

struct cg_ring_pack {
    struct cg_flow_gas gas;
    struct cg_pack_ring ring[CG_PACK_RINGS];
    double volume[CG_PACK_VOLUMES];        /* [m3] */
    double temperature[CG_PACK_REGIONS];   /* of gas that leaves a region [K] */
    double crankcase_pressure;             /* [Pa] */
    double leak;        /* height that leaks under a seated flank [m], > 0 */
    double cushion;     /* mean height left there, which squeezes [m], > 0 */
    double friction;    /* coefficient at the face [1] */
    double discharge;   /* coefficient of gaps, channels and ports [1] */
    double port_area;   /* of all ports together [m2] */
    double port_temperature;               /* of gas entering there [K] */
    double speed;                          /* [rev/s] */
    struct cg_pack_node node[CG_PACK_NODES];
};

/* Node values at an angle -360..360, straight between nodes. */
void cg_pack_at(const struct cg_ring_pack *pack, double angle_deg,
                struct cg_pack_node *at);

/* Pressures of the three volumes, lift x and speed v of the two rings. */
struct cg_pack_point {
    double pressure[CG_PACK_VOLUMES];                  /* [Pa], > 0 */
    double lift[CG_PACK_RINGS], speed[CG_PACK_RINGS];  /* [m], [m/s] */
};

/* One flow and its slopes. */
struct cg_pack_flow {
    double rate; /* from the upper region to the lower [kg/s] */
    double by_pressure[CG_PACK_VOLUMES]; /* [kg/(s Pa)] */
    double by_lift;               /* of its own ring [kg/(s m)] */
};

/* Acceleration of a ring against its groove, up positive, and its slopes. */
struct cg_pack_push {
    double acceleration;          /* [m/s2] */
    double by_pressure[CG_PACK_VOLUMES]; /* [m/(s2 Pa)] */
    double by_lift, by_speed;     /* [1/s2], [1/s] */
};

struct cg_pack_rates {
    struct cg_pack_flow flow[CG_PACK_FLOWS];
    struct cg_pack_push push[CG_PACK_RINGS];
};

/* Regions that each flow runs from and to. */
extern const enum cg_pack_region cg_pack_from[CG_PACK_FLOWS];
extern const enum cg_pack_region cg_pack_to[CG_PACK_FLOWS];

/* All flows and pushes, with their slopes.  A lift below 0 or above the
 * travel counts as seated.  Cannot fail. */
void cg_pack_rates(const struct cg_ring_pack *pack,
                   const struct cg_pack_node *at,
                   const struct cg_pack_point *point,
                   struct cg_pack_rates *rates);

/* Radial load of ring k on the bore by gas and tension [N]; negative: it has
 * given way.  pressure: that of all regions [Pa].  Cannot fail. */
double cg_pack_load(const struct cg_pack_ring *ring, size_t k,
                    const double pressure[CG_PACK_REGIONS]);

/* Mass of gas that a volume holds per pascal [kg/Pa]. */
double cg_pack_capacity(const struct cg_ring_pack *pack, size_t volume);

#endif
