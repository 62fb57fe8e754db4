/* The build card: what to buy, file, hone and check, on one sheet, told. */
#ifndef CG_REPORT_CARD_H
#define CG_REPORT_CARD_H

#include "card_table.h"
#include "report.h"

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_card(struct cg_report *report, const struct cg_card *card);

/* Its parts, a file each: rings, parts and clearances; the finish to order;
 * what to measure and what it holds for. */
void cg_report_card_parts(struct cg_report *report, const struct cg_card *card);
void cg_report_card_finish(struct cg_report *report,
                           const struct cg_finish_order *order);
void cg_report_card_measure(struct cg_report *report);
void cg_report_card_holds_for(struct cg_report *report,
                              const struct cg_case *c);

#endif
