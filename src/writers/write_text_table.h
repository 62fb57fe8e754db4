/* A table of a report as columns of text. */
#ifndef CG_WRITE_TEXT_TABLE_H
#define CG_WRITE_TEXT_TABLE_H

#include <stdbool.h>
#include <stdio.h>

#include "report_items.h"

/* Writes caption, heads with their units, and rows; words to the left, figures
 * to the right; a row marked bad begins with "!".  Cannot fail; look at the
 * file's error flag. */
void cg_write_text_table(FILE *out, const struct cg_report_item *item,
                         bool inch);

#endif
