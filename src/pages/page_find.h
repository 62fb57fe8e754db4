/* The page of `find`. */
#ifndef CG_PAGE_FIND_H
#define CG_PAGE_FIND_H

#include "answer.h"
#include "page.h"
#include "updated_case.h"

/* Fills a page below its cautions; `without` is the answer had there been no
 * evidence.  Cannot fail. */
void cg_page_find(struct cg_page *page, const struct cg_updated_case *updated,
                  const struct cg_answer *answer,
                  const struct cg_answer *without);

/* Its sections on heat and on how sure the answer is, page_find_heat.c. */
void cg_page_heat(struct cg_page *page, const struct cg_case *c,
                  const struct cg_answer *answer);
void cg_page_spread(struct cg_page *page, const struct cg_updated_case *updated,
                    const struct cg_answer *answer);

/* On what was measured, page_find_measured.c; nothing without evidence. */
void cg_page_evidence(struct cg_page *page,
                      const struct cg_updated_case *updated,
                      const struct cg_answer *answer,
                      const struct cg_answer *without);

/* On the piston's own clearances, page_find_piston.c. */
void cg_page_piston(struct cg_page *page, const struct cg_case *c,
                    const struct cg_answer *answer);

#endif
