/* A sweep, told from its table: rows of an earlier, unfinished run are there
 * and nowhere else. */
#ifndef CG_REPORT_SWEEP_H
#define CG_REPORT_SWEEP_H

#include <stdbool.h>

#include "case.h"
#include "grid.h"
#include "report.h"

struct cg_sweep_story {
    const struct cg_grid *grid;
    const char *dir, *name; /* the table's folder, and its name */
    const struct cg_case *c; /* that is varied */
    bool drawings;           /* are asked for */
};

/* Fills the report.  CG_FILE when the table cannot be read. */
enum cg_status cg_report_sweep(struct cg_report *report,
                               const struct cg_sweep_story *story,
                               struct cg_error *error);

#endif
