/* The highest boost that a gap stands, told. */
#ifndef CG_REPORT_CEILING_H
#define CG_REPORT_CEILING_H

#include "ceiling.h"
#include "report.h"

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_ceiling(struct cg_report *report, const struct cg_case *c,
                       const struct cg_ceiling *ceiling);

#endif
