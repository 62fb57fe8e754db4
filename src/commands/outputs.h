/* What a command leaves: tables with -o, and its report, as a page with --report
 * and on the screen as text or JSON.  A process writes for one run, as what is
 * held is the process's. */
#ifndef CG_OUTPUTS_H
#define CG_OUTPUTS_H

#include "options.h"
#include "page.h"
#include "report.h"
#include "table_of.h"

struct cg_outputs {
    const char *title; /* of page and report, before what they are of */
    const struct cg_table_of *of;
    const char *run;   /* what was asked: "find" */
    bool one_sheet;    /* the page is to print on one */
    /* Writes the tables into a folder: that of -o, and without it, for the
     * page's pictures, one that is removed again.  NULL: none, or written
     * before into `dir`. */
    enum cg_status (*tables)(void *context, const struct cg_table_of *of,
                             const char *dir, struct cg_error *error);
    const char *dir;   /* where tables already are; NULL */
    /* Fills the report, told once for page, text and JSON. */
    enum cg_status (*tell)(void *context, struct cg_report *report,
                           struct cg_error *error);
    void *context;     /* of all */
};

/* Holds the folder of the tables and the place of the page, before the work
 * begins and when all that the run is made from has been read: no other run
 * writes there until the end, and nothing stands there that may not be written
 * over.  `dir`: NULL: no tables; `names` are theirs, parted by blanks.  The
 * blocks of a job array share a folder.  CG_OK also when nothing is asked for;
 * CG_FILE with the reason, CG_BAD_INPUT where an input would be written over. */
enum cg_status cg_outputs_hold(const struct cg_options *options,
                               const char *dir, const char *names,
                               struct cg_error *error);

/* Lets go of them, and leaves nothing where nothing was written. */
void cg_outputs_end(void);

/* Writes out what the screen was told: a full disk shows only here.
 * CG_FILE. */
enum cg_status cg_outputs_flush(struct cg_error *error);

/* Whether the screen has room for more than the report: neither brief nor JSON
 * was asked for. */
bool cg_outputs_talk(const struct cg_options *options);

/* Writes what the options ask for, the screen last.  A page
 * without pictures is still a page.  CG_FILE with the reason, and what the
 * functions return. */
enum cg_status cg_outputs_write(const struct cg_options *options,
                                const struct cg_outputs *outputs,
                                struct cg_error *error);

#endif
