/* Top rings and piston alloys for a duty, ranked, told. */
#ifndef CG_REPORT_RINGS_H
#define CG_REPORT_RINGS_H

#include "report.h"
#include "rings_answer.h"

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_rings(struct cg_report *report, const struct cg_case *c,
                     const struct cg_rings_answer *answer);

#endif
