/* What `find` says in words, on screen and page alike: the limits of the trade
 * and the textbook that a duty passes, and names. */
#ifndef CG_FIND_NOTES_H
#define CG_FIND_NOTES_H

#include <stdbool.h>
#include <stddef.h>

#include "answer.h"
#include "say_common.h"

enum { CG_FIND_NOTES = 8 };

struct cg_find_notes {
    size_t count;
    char text[CG_FIND_NOTES][240]; /* a newline where a screen breaks it */
};

/* In the units asked for.  Cannot fail. */
void cg_find_notes_fill(const struct cg_case *c, const struct cg_answer *answer,
                        bool inch, struct cg_find_notes *notes);

/* "bore cut in the block"; "settled at cruise". */
const char *cg_find_seat_text(int seat);
const char *cg_find_start_text(int start);

/* What the second gap is: "its own closure, spread and residual". */
const char *cg_find_second_reason(const struct cg_answer *answer);

/* Where no gap that a config may give will do (verdict->beyond): "no gap in
 * range will do: ...", a newline where a screen breaks it. */
struct cg_find_beyond {
    char text[400];
};
struct cg_find_beyond cg_find_beyond(const struct cg_verdict *verdict,
                                     const struct cg_gap_sum *sum, bool inch);

/* A chance as a number; far out is beyond what a normal law can promise.
 * Returns `text`, or a fixed word for it. */
const char *cg_find_chance(double chance, char text[16]);

/* "Left out: ...", a newline where a screen breaks it. */
const char *cg_find_left_out(void);

#endif
