/* The screen of `find`. */
#ifndef CG_REPORT_FIND_H
#define CG_REPORT_FIND_H

#include <stdbool.h>

#include "answer.h"

/* Prints the answer and its reasons to stdout; `quiet`: the gaps, the verdict
 * and the cautions only.  seconds: wall time of the run. */
void cg_report_find(const struct cg_case *c, const char *config,
                    const struct cg_answer *answer, bool inch, bool quiet,
                    double seconds);

#endif
