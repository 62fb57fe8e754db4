/* A report: an answer told once, as a plain list of items, for writers to turn
 * into a screen, a page or JSON (src/writers/).  It knows no engine; those that
 * fill it know no writer.
 *
 * Items stand in the order in which they are added; the first part holds what a
 * hurried reader must see.  Texts are copied.  Where memory runs out the report
 * says so once, to whoever writes it (cg_report_status). */
#ifndef CG_REPORT_H
#define CG_REPORT_H

#include <stdbool.h>
#include <stddef.h>

#include "key_value.h"
#include "quantity.h"
#include "status.h"

struct cg_report;

/* An empty report: `title` as a heading, `run` as it was asked for ("coldgap
 * find my.cfg"), the units that come first.  Caller frees.  CG_NO_MEMORY. */
enum cg_status cg_report_create(const char *title, const char *run, bool inch,
                                struct cg_report **report,
                                struct cg_error *error);
/* Accepts NULL. */
void cg_report_free(struct cg_report *report);

/* Whether inches come first. */
bool cg_report_inch(const struct cg_report *report);

/* CG_OK, or CG_NO_MEMORY when an item could not be kept. */
enum cg_status cg_report_status(const struct cg_report *report,
                                struct cg_error *error);

/* Ends the first part: a brief report stops here. */
void cg_report_first_part_ends(struct cg_report *report);

/* Begins a section, and a part of it. */
void cg_report_section(struct cg_report *report, const char *title);
void cg_report_part(struct cg_report *report, const char *title);

/* What is to be done, in the largest letters: "top ring", a gap.  `key` is one
 * word for programs. */
void cg_report_answer(struct cg_report *report, const char *key,
                      const char *name, struct cg_quantity quantity);

/* A judgement, a note, a paragraph.  No line breaks: writers wrap. */
void cg_report_verdict(struct cg_report *report, bool good, const char *format,
                       ...) CG_FORMAT(3, 4);
void cg_report_note(struct cg_report *report, const char *format, ...)
    CG_FORMAT(2, 3);
void cg_report_say(struct cg_report *report, const char *format, ...)
    CG_FORMAT(2, 3);

/* A row: label and quantity; or label and words.  Rows that follow each other
 * stand in columns.  A remark belongs to the row before. */
void cg_report_row(struct cg_report *report, const char *key, const char *label,
                   struct cg_quantity quantity);
void cg_report_words(struct cg_report *report, const char *key,
                     const char *label, const char *format, ...)
    CG_FORMAT(4, 5);
void cg_report_remark(struct cg_report *report, const char *format, ...)
    CG_FORMAT(2, 3);

/* A table: caption, columns, then cells row by row; a row ends with the last
 * column.  The kind of a column decides its unit.  A mark belongs to the row
 * under way, and to the table: no other item may stand in between. */
struct cg_report_column {
    const char *key, *head;
    enum cg_kind kind; /* CG_SHOW_WORDS: text */
};
void cg_report_table(struct cg_report *report, const char *key,
                     const char *caption,
                     const struct cg_report_column *columns, size_t count);
void cg_report_cell(struct cg_report *report, double value);
/* Of its own kind, with its unit; in a column of words. */
void cg_report_cell_quantity(struct cg_report *report,
                             struct cg_quantity quantity);
void cg_report_cell_words(struct cg_report *report, const char *format, ...)
    CG_FORMAT(2, 3);
enum cg_report_mark { CG_MARK_NONE, CG_MARK_GOOD, CG_MARK_BAD };
void cg_report_mark(struct cg_report *report, enum cg_report_mark mark);

/* A figure: plots/SCRIPT.gp drawn, where a writer has pictures, and what it
 * shows in words. */
void cg_report_figure(struct cg_report *report, const char *script,
                      const char *title, const char *format, ...)
    CG_FORMAT(4, 5);

/* A drawing that the program has made (svg_draw.h), and what it shows in
 * words.  NULL: memory ran out over it. */
void cg_report_drawing(struct cg_report *report, const char *key,
                       const char *svg, const char *title, const char *words);

/* A figure that the program has drawn: as cg_report_drawing where drawings are
 * shown, and where they are not `figure` says what it is, as cg_report_figure. */
void cg_report_drawn(struct cg_report *report, const char *key, const char *svg,
                     const char *title, const char *figure, const char *words);

/* Numbered steps; a place to be filled in by hand; lines that stay as they are
 * (worked sums, columns of figures). */
void cg_report_step(struct cg_report *report, const char *format, ...)
    CG_FORMAT(2, 3);
void cg_report_blank(struct cg_report *report, const char *name);
void cg_report_lines(struct cg_report *report, const char *text);

/* A figure for programs alone: the key and unit of a table of keys. */
void cg_report_key(struct cg_report *report, const char *key, double value,
                   const char *unit);
void cg_report_keys(struct cg_report *report,
                    const struct cg_key_values *keys);
void cg_report_key_word(struct cg_report *report, const char *key,
                        const char *word);

#endif
