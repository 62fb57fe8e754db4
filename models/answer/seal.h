/* What a pair of end gaps costs: the gas past the rings of one engine at one
 * operating point, settled there.
 *
 * Everything hot is that of the settled point: end gaps and land clearances
 * over the stroke by growth.h, side clearances, walls of the crevices.  The
 * cylinder's pressure is given by the engine cycle; what leaks is not taken
 * from it, and what it would have done is counted as power lost instead.
 */
#ifndef CG_SEAL_H
#define CG_SEAL_H

#include "case.h"
#include "duty_run.h"
#include "pack_settle.h"
#include "status.h"

/* One engine's ring pack, ready for any pair of gaps.  Some 300 kB. */
struct cg_seal {
    const struct cg_case *c;
    struct cg_ring_pack pack;
    double bore_strain[CG_PACK_RINGS][CG_PACK_NODES]; /* at the ring [1] */
    double ring_strain[CG_PACK_RINGS];                /* [1] */
    double cylinder_temperature[CG_PACK_NODES];       /* [K] */
    double work_left[CG_PACK_NODES]; /* by p dV up to exhaust opening [J];
                                        0 outside the closed part */
    double top_land_volume;          /* hot, at firing top dead centre [m3] */
    double charge_mass, trapped_mass;/* a cylinder, a cycle [kg] */
    double peak_deg;                 /* of the cylinder pressure */
    double exhaust_open_deg;
    struct cg_performance performance;
    struct cg_pack_record record[CG_PACK_NODES]; /* of the pair solved last */
};

/* Makes the pack of a checked case at one point of its duty.  It keeps `c`.
 * Caller frees.  CG_NUMERICAL as cg_cycle_run, CG_NO_MEMORY. */
enum cg_status cg_seal_create(const struct cg_case *c,
                              struct cg_duty_run *run, size_t point,
                              struct cg_seal **seal, struct cg_error *error);
/* Accepts NULL. */
void cg_seal_free(struct cg_seal *seal);

/* Gas ports of that kind instead of the case's own (CG_PORTS_NONE closes
 * them).  What each does here:
 *   crown    an orifice from cylinder to groove
 *   land     the same, by gas that the top land has cooled
 *   through  an orifice from the upper part of the face to the groove, behind
 *            the narrow wedge between face and bore, some 4 um high at the
 *            hole: that wedge, not the hole, is the throat
 * Cannot fail. */
void cg_seal_ports(struct cg_seal *seal, enum cg_port_kind kind);

/* Sets the hot end gaps at all nodes for a pair of cold ones [m] >= 0. */
void cg_seal_gaps(struct cg_seal *seal, double top, double second);

/* Hot end gap of ring k at a node for a cold one [m]; 0 if its ends touch. */
double cg_seal_hot_gap(const struct cg_seal *seal, size_t k, double cold_gap,
                       size_t node);

struct cg_seal_answer {
    double gap[CG_PACK_RINGS];      /* cold [m] */
    double hot_gap[CG_PACK_RINGS];  /* at firing top dead centre [m] */
    double blow_by;                 /* whole engine [kg/s] */
    double blow_by_share;           /* of the charge [1] */
    double blow_by_volume;          /* at crankcase conditions [m3/s] */
    double reverse_share;           /* of what passes the top gap, flows back
                                       into the cylinder [1] */
    double groove_lag_deg;          /* top groove behind the cylinder, at half
                                       of the cylinder's peak */
    double groove_peak;             /* of the cylinder's peak, at that time
                                       [1] */
    double land_peak;               /* between the rings [Pa] */
    double face_load;               /* top ring, mean over the cycle [N] */
    double face_load_least;         /* [N] */
    double crevice_share;           /* of the charge, held by top land, groove
                                       and second land at peak pressure [1] */
    double crevice_late;            /* of the charge: what of that comes back
                                       into the cylinder before the exhaust
                                       opens, too late to burn [1] */
    double leaked_share;            /* of the trapped mass, net into the pack
                                       at the most: by how much the cylinder's
                                       mass is out [1] */
    double work_lost;               /* one cylinder, one cycle [J] */
    struct cg_pack_settled settled;
};

/* Solves for a pair of cold gaps [m] >= 0.  Errors as cg_pack_settle. */
enum cg_status cg_seal_solve(struct cg_seal *seal, double top, double second,
                             struct cg_seal_answer *answer,
                             struct cg_error *error);

/* Power of the whole engine [W] that the gas of this answer would have done
 * in the cylinder, to first order: gas dm that leaves takes g dm/m of the
 * pressure with it, and so of the work still to be done until the exhaust
 * opens; what comes back brings it at the wall's temperature.  Most of it is
 * gas that grooves and lands take in and give back whatever the gaps; the
 * difference of two answers is what their gaps cost.  Fuel that leaves before
 * it burns is counted by the same share.  Cannot fail. */
double cg_seal_power(const struct cg_seal *seal,
                     const struct cg_seal_answer *answer);

#endif
