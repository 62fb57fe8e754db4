/* evidence.dat: what the evidence taught. */
#ifndef CG_EVIDENCE_TABLE_H
#define CG_EVIDENCE_TABLE_H

#include "table_of.h"
#include "taught.h"

/* Writes evidence.dat, or removes an earlier one where there is no evidence.
 * CG_FILE with the reason. */
enum cg_status cg_evidence_write(const char *dir, const struct cg_table_of *of,
                                 const struct cg_taught *taught,
                                 struct cg_error *error);

#endif
