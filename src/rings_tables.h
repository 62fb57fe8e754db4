/* The tables of `rings`: rings.dat, a row a ring, and pistons.dat, a row a
 * piston alloy. */
#ifndef CG_RINGS_TABLES_H
#define CG_RINGS_TABLES_H

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
enum { CG_REASON = 256 };

/* Why the verdict, or what will stop it first, in one line: "peak pressure
 * 99 of 90-120 bar: cracks and flakes off". */
void cg_ring_reason(const struct cg_ring_choice *choice, bool inch,
                    char text[CG_REASON]);

/* CG_FILE with the reason. */
enum cg_status cg_rings_tables_write(const char *dir, const char *config,
                                     const struct cg_case *c,
                                     const struct cg_rings_answer *answer,
                                     struct cg_error *error);

#endif
