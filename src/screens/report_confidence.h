/* First order and sampling side by side, on the screen of `find`. */
#ifndef CG_REPORT_CONFIDENCE_H
#define CG_REPORT_CONFIDENCE_H

#include <stdbool.h>

#include "answer.h"

/* Prints nothing when nothing was sampled. */
void cg_report_confidence(const struct cg_case *c,
                          const struct cg_answer *answer, bool inch);

#endif
