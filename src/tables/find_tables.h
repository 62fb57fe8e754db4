/* The tables of `find`: summary, history, clearance, stroke, cycle,
 * sensitivity. */
#ifndef CG_FIND_TABLES_H
#define CG_FIND_TABLES_H

#include "answer.h"
#include "history.h"
#include "table_of.h"

/* Writes all of them into folder `dir`.  CG_FILE with the reason. */
enum cg_status
cg_find_tables_write(const char *dir, const struct cg_table_of *of,
                     const struct cg_case *c, struct cg_duty_run *run,
                     const struct cg_answer *answer,
                     const struct cg_history *history, struct cg_error *error);

#endif
