/* The tables of `rings`: rings.dat, a row a ring, and pistons.dat, a row a
 * piston alloy. */
#ifndef CG_RINGS_TABLES_H
#define CG_RINGS_TABLES_H

#include "rings_answer.h"
#include "table_of.h"

/* CG_FILE with the reason. */
enum cg_status cg_rings_tables_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_case *c,
                                     const struct cg_rings_answer *answer,
                                     struct cg_error *error);

#endif
