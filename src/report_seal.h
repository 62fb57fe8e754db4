/* The answer of `seal` on the screen. */
#ifndef CG_REPORT_SEAL_H
#define CG_REPORT_SEAL_H

#include <stdbool.h>

#include "seal_study.h"

/* seconds: wall time of the computation. */
void cg_report_seal(const struct cg_seal_study *study, const char *config,
                    bool inch, bool quiet, double seconds);

/* "12 crown ports of 1 mm", "no gas ports". */
struct cg_ports_text {
    char text[80];
};
struct cg_ports_text cg_ports_text(const struct cg_case *c,
                                   enum cg_port_kind kind);

#endif
