/* The duties side by side, for reports. */
#ifndef CG_REPORT_DUTIES_H
#define CG_REPORT_DUTIES_H

#include "answer.h"
#include "report.h"

/* A table, key "duties": of each duty its hottest ring, closure, gap needed,
 * when, in the log's own time if it was logged, and where it is tightest; the
 * hardest is marked.  Cannot fail. */
void cg_report_duties(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer);

/* The logged run that the answer's duty i is, less boost that of its duty;
 * NULL: it is none.  Cannot fail. */
const struct cg_course *cg_report_log(const struct cg_case *c,
                                      const struct cg_answer *answer,
                                      size_t i);

#endif
