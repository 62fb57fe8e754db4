/* Report pages: one HTML file that stands by itself, for a phone in the shop,
 * a screen reader and a printer.  No script, nothing fetched, no time of day:
 * equal input gives equal bytes.
 *
 * A page is headings, paragraphs, tables and figures in the order in which they
 * are asked for, and cautions.  All text given is escaped.  A
 * page is also well-formed XML.  Contrast: WCAG 2.1, level AA, in both colour
 * schemes (tests/cli/run_page.sh).
 *
 * A command makes its page with cg_outputs_write (outputs.h); its own part is
 * one function that fills a page. */
#ifndef CG_PAGE_H
#define CG_PAGE_H

#include <stdbool.h>
#include <stddef.h>

#include "part_file.h"
#include "drawing.h"
#include "status.h"

struct cg_page;

struct cg_page_head {
    const char *title;  /* the only h1: "Smallest safe cold ring gap" */
    const char *run;    /* "coldgap find my_engine.cfg" */
    bool one_sheet; /* small print, so that it fits a sheet of paper */
};

/* Opens the place of a page aside, before the work that it is to tell of, so
 * that no other run writes it meanwhile.  CG_FILE with the reason. */
enum cg_status cg_page_hold(const char *path, struct cg_part_file *part_file,
                            struct cg_error *error);

/* Takes that place over on CG_OK, and writes the head.  `drawing` is
 * asked for the figures and must outlive the page.  CG_NO_MEMORY. */
enum cg_status cg_page_open(const struct cg_part_file *part_file,
                            const struct cg_page_head *head,
                            struct cg_drawing *drawing, struct cg_page **page,
                            struct cg_error *error);

/* Ends and, when `status` is CG_OK, renames it; frees it either way.  Returns
 * `status`, or CG_FILE with the reason. */
enum cg_status cg_page_close(struct cg_page *page, enum cg_status status,
                             struct cg_error *error);

/* The cautions, a section of their own; the last thing on a page that was not
 * given them before. */
void cg_page_cautions(struct cg_page *page);

/* Begins a section (h2), and a part of it (h3). */
void cg_page_section(struct cg_page *page, const char *title);
void cg_page_part(struct cg_page *page, const char *title);

/* A paragraph; one that is set apart with "Note:". */
void cg_page_say(struct cg_page *page, const char *format, ...)
    CG_FORMAT(2, 3);
void cg_page_note(struct cg_page *page, const char *format, ...)
    CG_FORMAT(2, 3);

/* The answer in large letters, in the unit that comes first and in the other
 * (NULL: none); and a verdict on a box of its own. */
void cg_page_answer(struct cg_page *page, const char *name, const char *first,
                    const char *other);
void cg_page_verdict(struct cg_page *page, bool good, const char *format, ...)
    CG_FORMAT(3, 4);

/* A text as screens have it: words, whose lines are joined, and lines set in by
 * two spaces, which stay as they are; set in by four, they are columns. */
void cg_page_lines(struct cg_page *page, const char *text);

/* A numbered list. */
void cg_page_list(struct cg_page *page);
void cg_page_item(struct cg_page *page, const char *format, ...)
    CG_FORMAT(2, 3);
void cg_page_list_end(struct cg_page *page);

/* A place to be filled in by hand. */
void cg_page_blank(struct cg_page *page, const char *name);

/* A figure: plots/SCRIPT.gp drawn, with its title and, for those who do not
 * see it, what it shows.  Without gnuplot a line says so and how to get it. */
void cg_page_figure(struct cg_page *page, const char *script,
                    const char *title, const char *format, ...)
    CG_FORMAT(4, 5);

/* A drawing of svg_draw.h, likewise. */
void cg_page_drawing(struct cg_page *page, const char *svg, const char *title,
                     const char *words);

/* A table: caption, heads of the columns (units in them), rows whose first cell
 * names the row.  `class` of a row: NULL, "good" or "bad". */
/* A caption that the heading above has said already is not shown, but told to a
 * screen reader. */
void cg_page_table(struct cg_page *page, const char *caption,
                   const char *const *heads, size_t columns);
void cg_page_row(struct cg_page *page, const char *const *cells,
                 size_t columns, const char *class);
/* A row of three columns whose last two are one. */
void cg_page_wide_row(struct cg_page *page, const char *name,
                      const char *text);
void cg_page_table_end(struct cg_page *page);

#endif
