/* The columns of a file of measurements: what its header names. */
#ifndef CG_MEASURED_COLUMNS_H
#define CG_MEASURED_COLUMNS_H

#include <stdbool.h>

#include "csv_text.h"
#include "problems.h"
#include "unit.h"

enum cg_quantity {
    CG_MEASURED_CYLINDER, /* its number, from 1 */
    CG_MEASURED_BORE,
    CG_MEASURED_TOP_GAP,
    CG_MEASURED_SECOND_GAP,
    CG_MEASURED_IN, /* cylinder whose bore the gaps were measured in */
    CG_MEASURED_QUANTITIES,
    CG_MEASURED_NOTHING = CG_MEASURED_QUANTITIES /* a header cell left empty */
};

enum { CG_COLUMN_LENGTH = 32 };

struct cg_measured_column {
    enum cg_quantity quantity;
    const struct cg_unit *unit;
    char name[CG_COLUMN_LENGTH]; /* as written: "bore_mm" */
};

struct cg_measured_columns {
    size_t count;
    struct cg_measured_column column[CG_CSV_CELLS];
    bool given[CG_MEASURED_QUANTITIES];
};

/* The columns that a header names: `cylinder`, `bore_UNIT`, `top_gap_UNIT`,
 * `second_gap_UNIT`, `measured_in`, in any order, the units those of a length
 * in a config.  Cylinder, bore and one gap at least must be there, none twice.
 * What is wrong goes to `problems` at `where`; returns whether all is well. */
bool cg_measured_header(const struct cg_csv_record *header,
                        struct cg_where where,
                        struct cg_measured_columns *columns,
                        struct cg_problems *problems);

#endif
