/* The screen of `sheet`, fit to be printed and hung at the bench. */
#ifndef CG_REPORT_SHEET_H
#define CG_REPORT_SHEET_H

#include <stdbool.h>

#include "sheet.h"
#include "show.h"

/* Prints the sheet to stdout; `quiet`: the rings, the count and the cautions
 * only. */
void cg_report_sheet(const struct cg_sheet *sheet, bool inch, bool quiet);

/* A length as the sheet shows it, without its unit: to 1 um or a tenth of a
 * thousandth; "-" for NaN.  And one that must not come out smaller, as
 * cg_show_gap_up rounds it. */
struct cg_text cg_sheet_length(double metres, bool inch);
struct cg_text cg_sheet_length_up(double metres, bool inch);

/* How bore and gap are measured: some lines, each ended by a newline (common
 * practice, no source). */
const char *cg_sheet_method(void);

/* Where to sign: some lines, each ended by a newline. */
const char *cg_sheet_box(void);

#endif
