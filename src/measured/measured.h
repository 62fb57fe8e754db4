/* Reads what was measured on an engine: a CSV file with a line a cylinder.
 *
 * Columns as in measured_columns.h.  An empty cell says that this was not
 * measured.  Every trouble is one line "file:line: error: column: what is
 * wrong, what is allowed"; all of them are collected and printed to stderr. */
#ifndef CG_MEASURED_H
#define CG_MEASURED_H

#include "case.h"
#include "fitting.h"
#include "status.h"

/* How the file writes its numbers, so that an answer can be written alike. */
struct cg_csv_dialect {
    char separator; /* ',', ';' or '\t' */
    char decimal;   /* '.' or ',' */
};

/* Reads `path` for the engine of the case.  CG_BAD_INPUT: the lines have been
 * printed, error->text counts them; CG_FILE, CG_NO_MEMORY.  *gauged and
 * *dialect change only on CG_OK. */
enum cg_status cg_measured_read(const char *path, const struct cg_case *c,
                                struct cg_gauged *gauged,
                                struct cg_csv_dialect *dialect,
                                struct cg_error *error);

#endif
