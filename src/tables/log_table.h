/* log.dat: a logged run in the log's own time, and its tightest instants. */
#ifndef CG_LOG_TABLE_H
#define CG_LOG_TABLE_H

#include "answer.h"
#include "history.h"
#include "table_of.h"

/* Of the duty asked for; where that is no log an earlier table is removed. */
enum cg_status cg_log_table_write(const char *dir, const struct cg_table_of *of,
                                  const struct cg_case *c,
                                  const struct cg_answer *answer,
                                  const struct cg_history *history,
                                  struct cg_error *error);

#endif
