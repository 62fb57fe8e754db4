/* Tables of `seal`: seal.dat, seal_cycle.dat, seal_gap.dat. */
#ifndef CG_SEAL_TABLES_H
#define CG_SEAL_TABLES_H

#include "key_value.h"
#include "seal_study.h"
#include "table_of.h"

/* The keys of seal.dat. */
struct cg_key_values cg_seal_keys(const struct cg_seal_study *study);

/* Writes them all into `dir`; seal_gap.dat takes a find at each boost. */
enum cg_status cg_seal_tables_write(const char *dir,
                                    const struct cg_table_of *of,
                                    const struct cg_seal_study *study,
                                    struct cg_error *error);

#endif
