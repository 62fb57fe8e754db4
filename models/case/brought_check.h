/* What cannot be brought along with the charge: for case_check.c.
 */
#ifndef CG_BROUGHT_CHECK_H
#define CG_BROUGHT_CHECK_H

#include "case_check.h"

enum { CG_BROUGHT_PROBLEMS = 8 };

/* Writes what is wrong with nitrous and spray, in all the case's duties, and
 * returns how much.  Limits are the gas laws' (case_check.c) or common
 * practice, no source.  Cannot fail. */
size_t cg_brought_check(const struct cg_case *c,
                        struct cg_case_problem problem[CG_BROUGHT_PROBLEMS]);

#endif
