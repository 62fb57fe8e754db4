/* The screen of `finish`. */
#ifndef CG_REPORT_FINISH_H
#define CG_REPORT_FINISH_H

#include <stdbool.h>

#include "bore_finish.h"
#include "profile_file.h"
#include "simulated.h"
#include "surface.h"

/* What there is to tell; patch and note are NULL when there is none. */
struct cg_finish_story {
    const char *config, *profile, *simulate; /* as asked for; the latter two
                                                may be NULL */
    unsigned long seed;
    bool inch, quiet;
    const struct cg_case *c;
    const struct cg_surface *surface;
    const struct cg_finish_verdict *verdict;
    const struct cg_profile_note *note;
    const struct cg_patch *patch;
};

void cg_report_finish(const struct cg_finish_story *story);

/* One piece of advice as a sentence. */
void cg_finish_advice_text(const struct cg_case *c,
                           const struct cg_finish_advice *advice, char *text,
                           size_t size);

/* "Left out: ...", a newline where a screen breaks it. */
const char *cg_finish_left_out(void);

#endif
