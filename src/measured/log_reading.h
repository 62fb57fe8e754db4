/* A log being read, line by line: between log_rows.c, log_headings.c and
 * log_cells.c. */
#ifndef CG_LOG_READING_H
#define CG_LOG_READING_H

#include "csv_text.h"
#include "log_rows.h"
#include "text_file.h"

struct cg_log_reading {
    const char *path;
    const struct cg_case *c;
    const struct cg_log_column *column;
    struct cg_log_rows *rows;
    struct cg_problems *problems;
    size_t line;
    bool headed;       /* the headings were found */
    bool units;        /* a line of units was passed over */
    size_t other;      /* lines of a time that had one, and other values, */
    size_t other_line; /* the first of them */
    char separator;    /* ' ': any blanks */
    size_t cells;      /* of the line of headings */
    size_t cell[CG_LOGGED]; /* where each column stands */
    char decimal;           /* 0: none seen yet */
    size_t decimal_line;
    size_t matched;      /* headings in the best line so far, */
    size_t matched_line; /* that line, and one it has not */
    enum cg_logged missing;
    char near[CG_HEADING_LENGTH]; /* what stands there most like it */
    char copy[CG_TEXT_LINE];
};

/* Trouble in the line under way; heading: of a column, or NULL. */
void cg_log_problem(struct cg_log_reading *reading, const char *heading,
                    const char *what);

/* The cells of a line, which is overwritten; false, with trouble or without,
 * where it has none. */
bool cg_log_split(char *line, char separator, struct cg_csv_record *record);

/* Looks for the headings in a line, by every separator; sets `headed`. */
void cg_log_look_for_headings(struct cg_log_reading *reading, const char *line);

/* Of a file without: the line that has most of them. */
void cg_log_tell_no_headings(struct cg_log_reading *reading);

/* A cell of column q in SI; NaN where it holds no value, or a wrong one, which
 * is told. */
double cg_log_value(struct cg_log_reading *reading, int q, const char *cell);

#endif
