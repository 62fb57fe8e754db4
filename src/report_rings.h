/* What `rings` prints. */
#ifndef CG_REPORT_RINGS_H
#define CG_REPORT_RINGS_H

#include "rings_answer.h"

void cg_report_rings(const struct cg_case *c, const char *config,
                     const struct cg_rings_answer *answer, bool inch,
                     bool quiet, double seconds);

#endif
