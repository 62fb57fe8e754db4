/* The page of `sheet`. */
#ifndef CG_PAGE_SHEET_H
#define CG_PAGE_SHEET_H

#include "page.h"
#include "sheet.h"

/* Fills a page below its cautions.  Cannot fail. */
void cg_page_sheet(struct cg_page *page, const struct cg_sheet *sheet);

/* Its section on rings too wide and what they cost, page_sheet_wide.c; nothing
 * without one. */
void cg_page_too_wide(struct cg_page *page, const struct cg_sheet *sheet);

#endif
