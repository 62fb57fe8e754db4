/* The duties side by side, for reports. */
#ifndef CG_REPORT_DUTIES_H
#define CG_REPORT_DUTIES_H

#include "answer.h"
#include "report.h"

/* A table, key "duties": of each duty its hottest ring, closure, gap needed,
 * when and where it is tightest; the hardest is marked.  Cannot fail. */
void cg_report_duties(struct cg_report *report, const struct cg_answer *answer);

#endif
