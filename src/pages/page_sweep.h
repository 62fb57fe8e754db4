/* The page of `sweep`, made from its table: rows of an earlier, unfinished run
 * are there and nowhere else. */
#ifndef CG_PAGE_SWEEP_H
#define CG_PAGE_SWEEP_H

#include "grid.h"
#include "page.h"

struct cg_sweep_story {
    const struct cg_grid *grid;
    const char *dir; /* of sweep.dat */
};

/* Fills a page below its cautions; `story` is a struct cg_sweep_story *.
 * CG_FILE when the table cannot be read. */
enum cg_status cg_page_sweep(void *story, struct cg_page *page,
                             struct cg_error *error);

#endif
