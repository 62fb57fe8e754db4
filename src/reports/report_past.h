/* Limits past which the gap is not the trouble (duty_limits.h), as they are told. */
#ifndef CG_REPORT_PAST_H
#define CG_REPORT_PAST_H

#include "answer.h"
#include "report.h"
#include "say_common.h"

/* What a limit is of, after "stopped by": "knock", "the crown's heat".  Never
 * NULL. */
const char *cg_say_past_word(enum cg_past past);

/* A sentence without its full stop: "the crown reaches 412 C and stays over 300
 * C for 40 s, 12 s are allowed". */
struct cg_sentence cg_say_past(enum cg_past past,
                               const struct cg_limits *limits, bool inch);

/* A verdict for each limit past in a duty that the config names: it stands
 * above the gap. */
void cg_report_past(struct cg_report *report, const struct cg_case *c,
                    const struct cg_answer *answer);

/* A note for each duty that is past one and was added by coldgap; none beside a
 * verdict. */
void cg_report_past_notes(struct cg_report *report,
                          const struct cg_answer *answer);

#endif
