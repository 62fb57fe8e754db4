/* Two builds side by side, told: what was proven and what is wanted. */
#ifndef CG_REPORT_BUILDS_H
#define CG_REPORT_BUILDS_H

#include "builds.h"
#include "report.h"

/* Adds its sections to a report.  Cannot fail but for memory
 * (cg_report_status). */
void cg_report_builds(struct cg_report *report, const struct cg_builds *builds);

/* What was bought or set otherwise; a section of its own, for it stands above on
 * a card. */
void cg_report_builds_changes(struct cg_report *report,
                              const struct cg_builds *builds);

/* Its section on the proof, report_builds_proof.c. */
void cg_report_builds_proof(struct cg_report *report,
                            const struct cg_builds *builds);

#endif
