/* Reads lists of metals from a config. */
#ifndef CG_CONFIG_METAL_H
#define CG_CONFIG_METAL_H

#include "config_file.h"
#include "metals.h"

/* Adds the metals of every list found in `file` (see metals.h) to `metals`,
 * each checked for unknown, missing and impossible entries. */
void cg_config_metals(const struct cg_config_file *file,
                      struct cg_metals *metals, struct cg_problems *problems);

#endif
