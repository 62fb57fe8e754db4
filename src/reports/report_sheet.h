/* The fitting sheet, told: what to take off each ring measured. */
#ifndef CG_REPORT_SHEET_H
#define CG_REPORT_SHEET_H

#include "report.h"
#include "sheet.h"

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_sheet(struct cg_report *report, const struct cg_sheet *sheet);

/* Its parts, report_sheet_more.c: what rings too wide cost, gaps against bores
 * and how to measure; report_sheet_gaps.c: where the gaps come from. */
void cg_report_sheet_wide(struct cg_report *report,
                          const struct cg_sheet *sheet);
void cg_report_sheet_bores(struct cg_report *report,
                           const struct cg_sheet *sheet);
void cg_report_sheet_method(struct cg_report *report);
void cg_report_sheet_gaps(struct cg_report *report,
                          const struct cg_sheet *sheet);

#endif
