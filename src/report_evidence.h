/* What the evidence taught: on the screen of `find`, and as a table. */
#ifndef CG_REPORT_EVIDENCE_H
#define CG_REPORT_EVIDENCE_H

#include <stdbool.h>

#include "answer.h"
#include "taught.h"

/* Prints nothing without evidence; `without` is the answer had there been
 * none. */
void cg_report_evidence(const struct cg_taught *taught,
                        const struct cg_answer *without, bool inch);

/* Writes evidence.dat, or removes an earlier one where there is no evidence.
 * CG_FILE with the reason. */
enum cg_status cg_evidence_write(const char *dir, const char *config,
                                 const struct cg_taught *taught,
                                 struct cg_error *error);

#endif
