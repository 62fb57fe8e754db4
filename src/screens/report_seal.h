/* The answer of `seal` on the screen. */
#ifndef CG_REPORT_SEAL_H
#define CG_REPORT_SEAL_H

#include <stdbool.h>

#include "seal_study.h"

enum { CG_SEAL_TEXT = 128 };

/* How ring k moves: "leaves its lower flank 131 deg after firing top centre;
 * lifts 2 times a cycle".  peak_deg: of the cylinder's pressure. */
void cg_seal_ring_text(const struct cg_pack_cycle *cycle, size_t k,
                       double peak_deg, char text[CG_SEAL_TEXT]);

/* "Left out: ...", a newline where a screen breaks it. */
const char *cg_seal_left_out(void);

/* seconds: wall time of the computation. */
void cg_report_seal(const struct cg_seal_study *study, const char *config,
                    bool inch, bool quiet, double seconds);

#endif
