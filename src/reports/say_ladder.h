/* Words for the ladder's parts. */
#ifndef CG_SAY_LADDER_H
#define CG_SAY_LADDER_H

#include "ladder.h"

/* "Top ring gap", as it begins a line.  Never NULL. */
const char *cg_say_part(enum cg_ladder_part part);

/* Why a part stops, `why` as in cg_ladder_stop: "peak pressure", "the crown's
 * heat".  Never NULL. */
const char *cg_say_stops(enum cg_ladder_part part, int why);

#endif
