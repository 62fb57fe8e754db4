/* clearance.dat: the piston's hot clearances over the duty. */
#ifndef CG_CLEARANCE_TABLE_H
#define CG_CLEARANCE_TABLE_H

#include "history.h"
#include "table_of.h"

/* CG_FILE with the reason. */
enum cg_status cg_clearance_table_write(const char *dir,
                                        const struct cg_table_of *of,
                                        const struct cg_answer *answer,
                                        const struct cg_history *history,
                                        struct cg_error *error);

#endif
