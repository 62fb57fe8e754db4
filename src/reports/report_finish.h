/* The finish of a bore, and the oil that it holds against fuel, told. */
#ifndef CG_REPORT_FINISH_H
#define CG_REPORT_FINISH_H

#include "bore_finish.h"
#include "profile_file.h"
#include "report.h"
#include "simulated.h"
#include "surface.h"

/* What there is to tell; patch and note are NULL when there is none. */
struct cg_finish_story {
    const char *profile, *simulate; /* as asked for, or NULL */
    unsigned long seed;
    const struct cg_case *c;
    const struct cg_surface *surface;
    const struct cg_finish_verdict *verdict;
    const struct cg_profile_note *note;
    const struct cg_patch *patch;
};

/* Fills the report.  Cannot fail but for memory (cg_report_status). */
void cg_report_finish(struct cg_report *report,
                      const struct cg_finish_story *story);
/* Its section on the trace, report_finish_source.c. */
void cg_report_finish_source(struct cg_report *report,
                             const struct cg_finish_story *story);

#endif
