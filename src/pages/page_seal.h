/* The page of `seal`. */
#ifndef CG_PAGE_SEAL_H
#define CG_PAGE_SEAL_H

#include "page.h"
#include "seal_study.h"

/* Fills a page below its cautions.  Cannot fail. */
void cg_page_seal(struct cg_page *page, const struct cg_seal_study *study);

/* Its sections on rated speed and on the hardest, page_seal_speeds.c. */
void cg_page_seal_rated(struct cg_page *page,
                        const struct cg_seal_study *study);
void cg_page_seal_hardest(struct cg_page *page,
                          const struct cg_seal_study *study);

#endif
