/* What a command leaves besides its screen: tables with -o, a page with
 * --report. */
#ifndef CG_OUTPUTS_H
#define CG_OUTPUTS_H

#include "options.h"
#include "page.h"

struct cg_outputs {
    const char *title; /* of the page */
    const char *run;   /* what was asked: "find" */
    /* Writes the tables into a folder: that of -o, and without it, for the
     * page's pictures, one that is removed again.  NULL: none, or written
     * before into `dir`. */
    enum cg_status (*tables)(void *context, const char *dir,
                             struct cg_error *error);
    const char *dir;   /* where tables already are; NULL */
    /* Fills the page below its cautions. */
    enum cg_status (*fill)(void *context, struct cg_page *page,
                           struct cg_error *error);
    void *context;     /* of both */
};

/* Whether the page asked for can be written, before the work begins.  CG_OK
 * when none is; CG_FILE with the reason. */
enum cg_status cg_outputs_check(const struct cg_options *options,
                                struct cg_error *error);

/* Writes what the options ask for; nothing when they ask for neither.  A page
 * without pictures is still a page.  CG_FILE with the reason, and what the
 * functions return. */
enum cg_status cg_outputs_write(const struct cg_options *options,
                                const struct cg_outputs *outputs,
                                struct cg_error *error);

#endif
