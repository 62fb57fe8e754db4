/* Tables of what the closure's spread is made of: sensitivity, histogram. */
#ifndef CG_SPREAD_TABLES_H
#define CG_SPREAD_TABLES_H

#include "confidence.h"
#include "table_of.h"

/* sensitivity.dat in folder `dir`; its column total_effect is nan when nothing
 * was sampled.  CG_FILE with the reason. */
enum cg_status cg_sensitivity_write(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_answer *answer,
                                    struct cg_error *error);

/* histogram.dat: the closures sampled, and first order beside them; `work`
 * NULL, nothing sampled: one of an earlier run is removed.  CG_FILE with the
 * reason. */
enum cg_status cg_histogram_write(const char *dir, const struct cg_table_of *of,
                                  const struct cg_confidence_work *work,
                                  const struct cg_answer *answer,
                                  struct cg_error *error);

#endif
