/* The page of `finish`. */
#ifndef CG_PAGE_FINISH_H
#define CG_PAGE_FINISH_H

#include "page.h"
#include "report_finish.h"

/* Fills a page below its cautions.  Cannot fail. */
void cg_page_finish(struct cg_page *page, const struct cg_finish_story *story);

#endif
