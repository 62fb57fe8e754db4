/* A report as terminal text. */
#ifndef CG_WRITE_TEXT_H
#define CG_WRITE_TEXT_H

#include <stdbool.h>
#include <stdio.h>

#include "report.h"

/* Writes the report, 80 columns wide; `brief`: its first part alone.  Cautions
 * stand at the end of either.  Errors: as cg_report_status; look at the file's
 * error flag for the rest. */
enum cg_status cg_write_text(FILE *out, const struct cg_report *report,
                             bool brief, struct cg_error *error);

#endif
