/* The screen of `find`. */
#ifndef CG_REPORT_FIND_H
#define CG_REPORT_FIND_H

#include <stdbool.h>

#include "answer.h"
#include "updated_case.h"

/* Prints the answer and its reasons to stdout; `quiet`: the gaps, the verdict
 * and the cautions only.  `without`: the answer had there been no evidence,
 * where there is some.  seconds: wall time of the run. */
void cg_report_find(const struct cg_updated_case *updated, const char *config,
                    const struct cg_answer *answer,
                    const struct cg_answer *without, bool inch, bool quiet,
                    double seconds);

#endif
