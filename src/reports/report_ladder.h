/* What must change at which boost, told. */
#ifndef CG_REPORT_LADDER_H
#define CG_REPORT_LADDER_H

#include "ladder.h"
#include "report.h"

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_ladder(struct cg_report *report, const struct cg_ladder *ladder);

#endif
