/* The tables of what the evidence taught. */
#ifndef CG_EVIDENCE_TABLE_H
#define CG_EVIDENCE_TABLE_H

#include "table_of.h"
#include "updated_case.h"

/* Writes evidence.dat, evidence_inputs.dat and evidence_correlations.dat, or
 * removes earlier ones where there is no evidence.  CG_FILE with the reason. */
enum cg_status cg_evidence_write(const char *dir, const struct cg_table_of *of,
                                 const struct cg_updated_case *updated,
                                 struct cg_error *error);

#endif
