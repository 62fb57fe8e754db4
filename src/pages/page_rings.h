/* The page of `rings`. */
#ifndef CG_PAGE_RINGS_H
#define CG_PAGE_RINGS_H

#include "page.h"
#include "rings_answer.h"

/* Fills a page below its cautions.  Cannot fail. */
void cg_page_rings(struct cg_page *page, const struct cg_case *c,
                   const struct cg_rings_answer *answer);

#endif
