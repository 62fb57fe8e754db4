/* The smallest safe gaps, told. */
#ifndef CG_REPORT_FIND_H
#define CG_REPORT_FIND_H

#include "answer.h"
#include "history.h"
#include "report.h"
#include "updated_case.h"

/* Fills the report; `without` is the answer had there been no evidence, looked
 * at where there is some; `history` what pictures are drawn from, NULL: there are
 * none.  Cannot fail but for memory (cg_report_status). */
void cg_report_find(struct cg_report *report, const struct cg_updated_case *updated,
                    const struct cg_answer *answer,
                    const struct cg_answer *without,
                    const struct cg_history *history);

#endif
