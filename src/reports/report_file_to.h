/* What to file to, for every report that says so. */
#ifndef CG_REPORT_FILE_TO_H
#define CG_REPORT_FILE_TO_H

#include "answer.h"
#include "report.h"

/* Both gaps (advice.h), keys "file_to_top" and "file_to_second", each with the
 * figure of the model and of the rule beside it; a verdict in place of a gap
 * where none in range will do.  After cg_answer_second.  Cannot fail. */
void cg_report_file_to(struct cg_report *report,
                       const struct cg_answer *answer);

/* The second ring's alone, for the top gap that the answer goes with. */
void cg_report_file_to_second(struct cg_report *report,
                              const struct cg_answer *answer);

#endif
