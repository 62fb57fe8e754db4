/* The tables of `finish`. */
#ifndef CG_FINISH_TABLES_H
#define CG_FINISH_TABLES_H

#include "bore_finish.h"
#include "key_value.h"
#include "simulated.h"
#include "surface.h"
#include "table_of.h"

/* The keys of finish.dat: lengths um, volumes to an area mm3/cm2. */
struct cg_key_values cg_finish_keys(const struct cg_surface *surface,
                                    const struct cg_finish_verdict *verdict);

/* finish.dat, finish_profile.dat, finish_ratio.dat, finish_probability.dat,
 * and with `patch` finish_patch.dat; without it an earlier one is removed. */
enum cg_status cg_finish_tables_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_surface *surface,
                                      const struct cg_finish_verdict *verdict,
                                      const struct cg_patch *patch,
                                      struct cg_error *error);

#endif
