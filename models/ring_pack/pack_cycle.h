/* One cycle of the ring pack, from firing top dead centre, where the rings are
 * pressed on their lower flanks and the three masses are all that it
 * remembers, to the next.
 */
#ifndef CG_PACK_CYCLE_H
#define CG_PACK_CYCLE_H

#include "pack_step.h"

/* What one cycle did. */
struct cg_pack_cycle {
    double forward[CG_PACK_FLOWS], back[CG_PACK_FLOWS]; /* [kg], both >= 0 */
    double from_cylinder;   /* net, into the pack [kg] */
    double to_crankcase;    /* net: the blow-by [kg] */
    double turnover;        /* all that flowed out of the cylinder [kg] */
    double residual;        /* in minus out minus stored, over turnover [1] */
    double unseat_deg[CG_PACK_RINGS]; /* degrees after firing top dead centre
                               at which the ring leaves its lower flank, first
                               after peak pressure; 720: it never does */
    int lifts[CG_PACK_RINGS];         /* times it leaves the lower flank */
    double seated_share[CG_PACK_RINGS]; /* of the cycle below [1] */
    double given_way_deg[CG_PACK_RINGS]; /* crank angle during which gas pushed
                               the ring off the bore [deg] */
    long steps;
};

/* One row of the record: the state at a node. */
struct cg_pack_record {
    double pressure[CG_PACK_REGIONS]; /* pressures [Pa] */
    double lift[CG_PACK_RINGS];   /* [m] */
    double load[CG_PACK_RINGS];   /* radial, gas and tension [N] */
    double flow[CG_PACK_FLOWS];   /* mass since the node before [kg] */
};

/* One cycle from the state (at 0 degrees) to the same angle.  record
 * [CG_PACK_NODES] or NULL; it needs a stride of 1.  CG_NUMERICAL as
 * cg_pack_step, or if the rings flutter without end. */
enum cg_status cg_pack_cycle_run(const struct cg_ring_pack *pack,
                                 const struct cg_pack_control *control,
                                 struct cg_pack_state *state,
                                 struct cg_pack_cycle *cycle,
                                 struct cg_pack_record *record,
                                 struct cg_error *error);

#endif
