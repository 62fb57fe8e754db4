/* What the gaps leak, the second gap and what gas ports do, told. */
#ifndef CG_REPORT_SEAL_H
#define CG_REPORT_SEAL_H

#include "report.h"
#include "seal_study.h"

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_seal(struct cg_report *report,
                    const struct cg_seal_study *study);

/* Its sections on rated speed and on the hardest, report_seal_speeds.c. */
void cg_report_seal_rated(struct cg_report *report,
                          const struct cg_seal_study *study);
void cg_report_seal_hardest(struct cg_report *report,
                            const struct cg_seal_study *study);

#endif
