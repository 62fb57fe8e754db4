/* Data tables for gnuplot: the only writer of data files.
 *
 * Whitespace columns of numbers and single words.  The first line is a comment
 * with the columns' names, a word each that ends in its unit, so that numpy,
 * octave, pandas and gnuplot read a table as it is (plots/README.md); comments
 * below it say what the table is of, and the cautions.  Blocks are parted by
 * two blank lines, and their last column, `block`, counts them from 0.  A table
 * is written aside and renamed when it is whole (part_file.h).
 */
#ifndef CG_TABLE_H
#define CG_TABLE_H

#include <stdbool.h>
#include <stddef.h>

#include "key_value.h"
#include "status.h"
#include "table_of.h"

/* Names of the columns of a table of keys. */
#define CG_KEY_COLUMNS "key  value  unit"

struct cg_table;

struct cg_table_head {
    const char *title;   /* "Hot gap and temperatures over the duty"; NULL: no
                            head at all, the caller writes its own */
    const struct cg_table_of *of;
    const char *columns; /* "time_s  load ...": letters, digits and _ */
    const char *remarks; /* what the names leave open; NULL: nothing */
};

/* Creates folder `dir` if it is missing (its parent must exist), and
 * DIR/NAME.part with its head.  CG_FILE with the reason: also where another run
 * writes it, or no table may stand there (cg_part_file_may). */
enum cg_status cg_table_open(const char *dir, const char *name,
                             const struct cg_table_head *head,
                             struct cg_table **table, struct cg_error *error);

/* Removes a table of an earlier run that this one does not write, if there is
 * one.  CG_FILE with the reason. */
enum cg_status cg_table_drop(const char *dir, const char *name,
                             struct cg_error *error);

/* Takes one line, without its newline. */
typedef enum cg_status (*cg_table_take)(void *context, const char *line,
                                        struct cg_error *error);

/* Puts what a killed run left aside as NAME.part in the place of NAME where that
 * is missing, or goes on in it: no row is lost.  Its last row may be torn.
 * CG_FILE with the reason: as cg_table_open. */
enum cg_status cg_table_rescue(const char *dir, const char *name,
                               struct cg_error *error);

/* Hands every line of an earlier file under the table's final name to `take`;
 * there need not be one.  CG_FILE when it cannot be read, and what `take`
 * returns. */
enum cg_status cg_table_earlier(const struct cg_table *table,
                                cg_table_take take, void *context,
                                struct cg_error *error);

/* Hands every line of DIR/NAME to `take`, as above; it must be there. */
enum cg_status cg_table_lines(const char *dir, const char *name,
                              cg_table_take take, void *context,
                              struct cg_error *error);

/* Whether a line of a table's head says that it is of this program's version
 * and of that config. */
bool cg_table_is_of(const char *line, const char *config);

/* One more line in the head, "# TEXT". */
void cg_table_note(struct cg_table *table, const char *format, ...)
    CG_FORMAT(2, 3);

/* Starts a block: two blank lines (but for the first) and "# block: NAME". */
void cg_table_block(struct cg_table *table, const char *format, ...)
    CG_FORMAT(2, 3);

/* A row of numbers, "%.7g", and in a block its number; NaN is written as "nan",
 * which gnuplot skips. */
void cg_table_row(struct cg_table *table, const double *values, size_t count);

/* The number of the block begun last, for a row of your own. */
size_t cg_table_block_number(const struct cg_table *table);

/* A row of your own; the newline is added. */
void cg_table_line(struct cg_table *table, const char *format, ...)
    CG_FORMAT(2, 3);

/* A text as one word of a table: "_" for blanks, and "-" where there is none.
 */
struct cg_table_word {
    char text[CG_NAME_LENGTH];
};
struct cg_table_word cg_table_word(const char *text);

/* A column's name from a key and its unit, "1" for none: letters, digits and _
 * alone; cut to what fits. */
void cg_table_name(const char *key, const char *unit, char *name,
                   size_t capacity);

/* A row of a key table: key, value, unit ("1" for none). */
void cg_table_key(struct cg_table *table, const char *key, double value,
                  const char *unit);
void cg_table_keys(struct cg_table *table, const struct cg_key_values *keys);

/* Closes and, if all was well written and `status` is CG_OK, renames;
 * otherwise removes the part.  Returns `status`, or CG_FILE with the reason. */
enum cg_status cg_table_close(struct cg_table *table, enum cg_status status,
                              struct cg_error *error);

#endif
