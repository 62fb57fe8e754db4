/* The page of `find`. */
#ifndef CG_PAGE_FIND_H
#define CG_PAGE_FIND_H

#include "answer.h"
#include "page.h"

/* Fills a page below its cautions.  Cannot fail. */
void cg_page_find(struct cg_page *page, const struct cg_case *c,
                  const struct cg_answer *answer);

/* Its sections on heat and on how sure the answer is, page_find_heat.c. */
void cg_page_heat(struct cg_page *page, const struct cg_case *c,
                  const struct cg_answer *answer);
void cg_page_spread(struct cg_page *page, const struct cg_case *c,
                    const struct cg_answer *answer);

#endif
