/* duties.dat: the duties side by side. */
#ifndef CG_DUTIES_TABLE_H
#define CG_DUTIES_TABLE_H

#include "answer.h"
#include "table.h"
#include "table_of.h"

/* A row a duty, the one asked for first.  Errors: as cg_table_open. */
enum cg_status cg_duties_table_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_answer *answer,
                                     struct cg_error *error);

/* The note "file to N mm", which pictures read; none where nothing is advised. */
void cg_file_to_note(struct cg_table *table, const struct cg_answer *answer);

#endif
