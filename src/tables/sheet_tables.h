/* The fitting sheet as tables. */
#ifndef CG_SHEET_TABLES_H
#define CG_SHEET_TABLES_H

#include "sheet.h"
#include "status.h"
#include "table_of.h"

/* sheet.dat for gnuplot, and sheet.csv for a spreadsheet with the separator
 * and the decimal sign of the file that was measured, both in folder `dir`: a
 * line a ring, lengths in mm, "nan" or an empty cell where nothing was
 * measured.  CG_FILE with the reason. */
enum cg_status cg_sheet_tables_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_sheet *sheet,
                                     struct cg_error *error);

#endif
