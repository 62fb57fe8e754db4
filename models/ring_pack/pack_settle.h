/* Cycles of the ring pack until they repeat.
 *
 * The gas shut in between the rings remembers the cycle before, the more the
 * tighter the gaps.  Cycles are run one after the other; while the change dies
 * away slowly and evenly, the masses are moved on along it (Aitken's way; D. G.
 * Anderson, J. ACM 12 (1965), with one step of memory).
 *
 * Rings do not always move alike from cycle to cycle: one that is just about
 * to lift may do so in every second cycle.  A motion that repeats after 2 to
 * CG_PACK_PERIOD cycles is as settled as one that repeats after one, and its
 * mean is taken.
 */
#ifndef CG_PACK_SETTLE_H
#define CG_PACK_SETTLE_H

#include <stdbool.h>

#include "pack_cycle.h"

enum { CG_PACK_PERIOD = 4 };

struct cg_pack_settled {
    struct cg_pack_cycle cycle; /* mean over the period; the earliest
                                   unseating, the most lifts */
    double change; /* of the masses against `period` cycles ago, the largest,
                      relative [1] */
    int period;    /* cycles after which the motion repeats */
    int cycles;    /* run in all */
};

/* Runs until it repeats to control->repeat.  warm: state holds that of a like
 * pack at 0 degrees and is the start; else it is set anew.  record
 * [CG_PACK_NODES] of the last cycle, or NULL.  Errors as cg_pack_cycle_run;
 * CG_NUMERICAL, with the change that is left, if no cycle repeats. */
enum cg_status cg_pack_settle(const struct cg_ring_pack *pack,
                              const struct cg_pack_control *control, bool warm,
                              struct cg_pack_state *state,
                              struct cg_pack_settled *settled,
                              struct cg_pack_record *record,
                              struct cg_error *error);

#endif
