/* Comma-separated values as spreadsheets write them (RFC 4180), and nothing
 * guessed beyond it: one separator for the whole text (comma, semicolon or
 * tab), lines ended by LF, CRLF or CR, a byte-order mark allowed, cells in
 * double quotes with "" for a quote inside.  Lines that begin with # and lines
 * without any cell filled are passed over.  Works in place; allocates nothing.
 */
#ifndef CG_CSV_TEXT_H
#define CG_CSV_TEXT_H

#include <stdbool.h>
#include <stddef.h>

enum { CG_CSV_CELLS = 256 };

/* Where reading stands in a text. */
struct cg_csv {
    char *rest;
    unsigned line;  /* of `rest`, from 1 */
    char separator; /* ',', ';' or '\t' */
};

/* One row: cells without quotes and outer blanks, each ended by a zero inside
 * the text that is read. */
struct cg_csv_record {
    unsigned line; /* where it begins */
    size_t cells;
    char *cell[CG_CSV_CELLS];
    const char *trouble; /* of CG_CSV_TROUBLE: what is wrong, what is allowed */
};

enum cg_csv_read { CG_CSV_RECORD, CG_CSV_TROUBLE, CG_CSV_END };

/* Starts on a text and takes the separator from its first row, the header.
 * NULL; or what is wrong, with csv->line where. */
const char *cg_csv_begin(struct cg_csv *csv, char *text);

/* The next row, the header first.  After CG_CSV_TROUBLE it goes on with the
 * line after.  The text read is overwritten. */
enum cg_csv_read cg_csv_next(struct cg_csv *csv, struct cg_csv_record *record);

/* The finite number that a cell holds: digits, one decimal sign at most, an
 * exponent.  NULL with *value and *sign (',' or '.'; 0: none used); or what is
 * wrong and what is allowed.  A comma is a decimal sign only where it is not
 * the separator; signs between thousands are none. */
const char *cg_csv_number(const char *cell, char separator, double *value,
                          char *sign);

/* Writes text as a quoted cell, cut off at `size` >= 3. */
void cg_csv_quote(const char *text, char *cell, size_t size);

/* "" or what a line of more cells than columns may be of: a separator at its
 * end, or commas for both. */
const char *cg_csv_too_many(const struct cg_csv_record *record, size_t columns,
                            char separator);

#endif
