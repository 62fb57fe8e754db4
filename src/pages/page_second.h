/* Why the second gap is what it is, for the pages that name it. */
#ifndef CG_PAGE_SECOND_H
#define CG_PAGE_SECOND_H

#include "answer.h"
#include "page.h"

/* The reason, how long the top ring stays seated with it, and the trade's rule
 * beside it. */
void cg_page_second(struct cg_page *page, const struct cg_case *c,
                    const struct cg_answer *answer);

#endif
