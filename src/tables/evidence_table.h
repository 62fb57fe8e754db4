/* evidence.dat: what the evidence taught. */
#ifndef CG_EVIDENCE_TABLE_H
#define CG_EVIDENCE_TABLE_H

#include "updated_case.h"

/* Writes evidence.dat, or removes an earlier one where there is no evidence.
 * CG_FILE with the reason. */
enum cg_status cg_evidence_write(const char *dir, const char *config,
                                 const struct cg_updated_case *updated,
                                 struct cg_error *error);

#endif
