/* The tables of `ladder`: ladder.dat, a row a part in order of boost, and
 * ladder_boost.dat, the gap over boost before and after the changes. */
#ifndef CG_LADDER_TABLES_H
#define CG_LADDER_TABLES_H

#include "ladder.h"
#include "table_of.h"

/* CG_FILE with the reason. */
enum cg_status cg_ladder_tables_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_ladder *ladder,
                                      struct cg_error *error);

#endif
