/* A change of the ladder as a config writes it, for its report, its tables and
 * the config that it writes. */
#ifndef CG_LADDER_TEXT_H
#define CG_LADDER_TEXT_H

#include "ladder.h"

enum { CG_LADDER_TEXT = 160 };

struct cg_ladder_text {
    char text[CG_LADDER_TEXT];
};

/* The key as a config writes it, "rings.top.cold_gap_mm", and the value as it
 * is there, "0.55"; `now`: else as it was, "not given" where it was not. */
struct cg_ladder_text cg_ladder_key(const struct cg_ladder_change *change,
                                    bool inch);
struct cg_ladder_text cg_ladder_value(const struct cg_ladder_change *change,
                                      bool now, bool inch);

#endif
