/* What `rings` has found, for its screen and its tables, and why in words. */
#ifndef CG_RINGS_ANSWER_H
#define CG_RINGS_ANSWER_H

#include <stdbool.h>

#include "alloy_choice.h"
#include "ring_choice.h"

/* All that `rings` has found; points into what the command owns. */
struct cg_rings_answer {
    const struct cg_ring_choice *ring; /* ranked */
    size_t rings;
    double reached; /* highest boost looked at [Pa] */
    const struct cg_alloy_choice *alloy;
    size_t alloys;
};

/* Room for a line of reason. */
enum { CG_REASON = 384 };

/* "peak pressure"; never NULL. */
const char *cg_ring_limit_name(enum cg_ring_limit limit);

/* Name of the limit that a ring is told by, "peak pressure"; "no gap" where no
 * gap in range will do, "none" where no limit is met. */
const char *cg_ring_limit_told(const struct cg_ring_choice *choice);

/* Why the verdict, or what will stop it first, in one line: "peak pressure
 * 99 of 90-120 bar: cracks and flakes off". */
void cg_ring_reason(const struct cg_ring_choice *choice, bool inch,
                    char text[CG_REASON]);

/* The same in both systems of units, the asked one first. */
void cg_ring_reason_both(const struct cg_ring_choice *choice, bool inch,
                         char text[CG_REASON]);

#endif
