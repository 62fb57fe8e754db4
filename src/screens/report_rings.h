/* What `rings` prints. */
#ifndef CG_REPORT_RINGS_H
#define CG_REPORT_RINGS_H

#include "rings_answer.h"

/* What the limits are and what is left out, a newline where a screen breaks
 * it. */
const char *cg_rings_left_out(void);

void cg_report_rings(const struct cg_case *c, const char *config,
                     const struct cg_rings_answer *answer, bool inch,
                     bool quiet, double seconds);

#endif
