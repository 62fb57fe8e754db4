/* Rows and tables of a report as tables of a page. */
#ifndef CG_WRITE_HTML_TABLE_H
#define CG_WRITE_HTML_TABLE_H

#include "page.h"
#include "report_items.h"

/* Begins a table of rows (cg_page_table_end ends it); adds one. */
void cg_write_html_rows(struct cg_page *page, const char *caption);
void cg_write_html_row(struct cg_page *page, const struct cg_report_item *item,
                       bool inch);

/* A table whole; quantities with another unit in the other system have it in
 * brackets. */
void cg_write_html_table(struct cg_page *page,
                         const struct cg_report_item *item, bool inch);

#endif
