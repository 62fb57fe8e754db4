/* A fitting sheet: what was asked, what was measured and what comes of it.  The
 * screen, the tables and any page are made from it alone. */
#ifndef CG_SHEET_H
#define CG_SHEET_H

#include "answer.h"
#include "case.h"
#include "fitting.h"
#include "gap_price.h"
#include "measured.h"

struct cg_sheet {
    const char *measured; /* the file, as shown */
    struct cg_case c;
    struct cg_answer answer;
    struct cg_gauged gauged;
    struct cg_csv_dialect dialect; /* of the file measured */
    struct cg_fitting fitting;
    struct cg_gap_prices prices;
};

#endif
