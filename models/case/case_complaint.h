/* The checks of a case add what is wrong to one list.  Inside models/case. */
#ifndef CG_CASE_COMPLAINT_H
#define CG_CASE_COMPLAINT_H

#include <stdbool.h>

#include "case_check.h"

struct cg_complaints {
    size_t count;
    struct cg_case_problem *problem; /* of CG_CASE_PROBLEMS */
};

/* Adds a problem, its fields as in case_check.h.  Each check states when things
 * are wrong, so that NaN is not.  Cannot fail. */
void cg_complain_if(struct cg_complaints *list, bool wrong, const char *path,
                    const char *other, double limit, const char *text);

/* What does not fit with combustion.ignition: fuel, compression, mixture,
 * speed, declared knock.  Limits are common practice, no source.  Cannot
 * fail. */
void cg_ignition_check(const struct cg_case *c, struct cg_complaints *list);

/* What cannot be of the bore, its seat, and its jacket or fins.  Limits are
 * common practice, no source.  Cannot fail. */
void cg_bore_check(const struct cg_case *c, struct cg_complaints *list);

#endif
