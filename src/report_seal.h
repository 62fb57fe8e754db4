/* The answer of `seal` on the screen. */
#ifndef CG_REPORT_SEAL_H
#define CG_REPORT_SEAL_H

#include <stdbool.h>

#include "seal_study.h"

/* seconds: wall time of the computation. */
void cg_report_seal(const struct cg_seal_study *study, const char *config,
                    bool inch, bool quiet, double seconds);

#endif
