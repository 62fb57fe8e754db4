/* What must change at which boost, told. */
#ifndef CG_REPORT_LADDER_H
#define CG_REPORT_LADDER_H

#include "ladder.h"
#include "plain_text.h"
#include "report.h"

enum { CG_LADDER_GAPS = CG_RING_SECOND + 1 };

/* The config that was written with the changes, as it was read back. */
struct cg_ladder_written {
    struct cg_plain path;
    double gap[CG_LADDER_GAPS]; /* cold, in it [m]; NaN: not given */
    bool kept[CG_LADDER_GAPS];  /* the gap is the old config's own */
    bool left_out;              /* evidence was */
    struct cg_answer answer;    /* of `find` for it */
};

/* Fills the report; `written` NULL: nothing was.  Cannot fail but for memory
 * (cg_report_status). */
void cg_report_ladder(struct cg_report *report, const struct cg_ladder *ladder,
                      const struct cg_ladder_written *written);

/* Its parts of what was written, report_ladder_written.c: what to file to, no
 * gap smaller than the written one; then how it stands. */
void cg_report_ladder_file_to(struct cg_report *report,
                              const struct cg_ladder *ladder,
                              const struct cg_ladder_written *written);
/* What ring `ring` (top or second) is to be filed to [m]: what `answer` asks
 * for, or the wider gap that was written. */
double cg_ladder_written_gap(const struct cg_ladder_written *written, int ring,
                             const struct cg_answer *answer);
void cg_report_ladder_written(struct cg_report *report,
                              const struct cg_ladder_written *written);

#endif
