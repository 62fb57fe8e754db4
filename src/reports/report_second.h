/* Why the second ring's gap needed is what it is, for the reports that name
 * it. */
#ifndef CG_REPORT_SECOND_H
#define CG_REPORT_SECOND_H

#include "answer.h"
#include "report.h"

/* The gap needed, the top gap it goes with, what decides it, how long the top
 * ring stays seated with it, and the trade's rule beside it; rows and sentences
 * for a section of the caller's.  Where no gap in range will do, that alone.
 * Cannot fail. */
void cg_report_second(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer);

#endif
