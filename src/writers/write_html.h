/* A report as the body of a page. */
#ifndef CG_WRITE_HTML_H
#define CG_WRITE_HTML_H

#include "page.h"
#include "report.h"

/* Fills the page: the first part, cautions, the rest.  A quantity stands in
 * both systems of units, the report's first.  Errors: as cg_report_status. */
enum cg_status cg_write_html(struct cg_page *page,
                             const struct cg_report *report,
                             struct cg_error *error);

#endif
