/* The rows of a logged run, as they stand in the file.
 *
 * Any table of text with a line of headings: cells parted by commas,
 * semicolons, tabs, or blanks; the line is the first that has all the headings
 * asked for, a # before it allowed.  Lines before it, other columns, lines that
 * begin with # and one line of units below the headings are passed over.  A
 * cell that is empty, "-" or "nan" holds no value.  No logger's own format is
 * known here.
 */
#ifndef CG_LOG_ROWS_H
#define CG_LOG_ROWS_H

#include "log_columns.h"
#include "problems.h"
#include "status.h"

struct cg_log_row {
    size_t line;             /* of the file */
    unsigned filled;         /* bit by column: on a straight line */
    double value[CG_LOGGED]; /* SI; NaN: none */
};

struct cg_log_rows {
    size_t rows, allocated;
    struct cg_log_row *row;
    size_t repeated; /* lines of a time that had one, left out */
};

/* Reads `path` for the columns of the case's engine, in memory that grows with
 * the rows alone.  Trouble is "path:line: error: heading: what is wrong, what
 * is allowed".  CG_NO_MEMORY; CG_FILE, CG_BAD_INPUT where it cannot be read as
 * text.  Free the rows afterwards. */
enum cg_status cg_log_rows_read(const char *path, const struct cg_case *c,
                                const struct cg_log_column column[CG_LOGGED],
                                struct cg_log_rows *rows,
                                struct cg_problems *problems,
                                struct cg_error *error);

#endif
