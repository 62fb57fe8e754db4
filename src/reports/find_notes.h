/* Words of screens and pages that are no reports yet; goes with the last of
 * them. */
#ifndef CG_FIND_NOTES_H
#define CG_FIND_NOTES_H

#include <stdbool.h>

#include "answer.h"
#include "say_common.h"

/* What the second gap is: "its own closure, spread and residual". */
const char *cg_find_second_reason(const struct cg_answer *answer);

/* cg_say_beyond, a newline where a screen breaks it. */
struct cg_find_beyond {
    char text[400];
};
struct cg_find_beyond cg_find_beyond(const struct cg_verdict *verdict,
                                     const struct cg_gap_sum *sum, bool inch);

#endif
