/* What the evidence taught, on the screen of `find`. */
#ifndef CG_REPORT_EVIDENCE_H
#define CG_REPORT_EVIDENCE_H

#include <stdbool.h>

#include "answer.h"
#include "updated_case.h"

/* Prints nothing without evidence; `without` is the answer had there been
 * none. */
void cg_report_evidence(const struct cg_updated_case *updated,
                        const struct cg_answer *answer,
                        const struct cg_answer *without, bool inch);

#endif
