/* Files that a config names: each is taken from the config's own folder, so
 * that the same words in another folder are another file. */
#ifndef CG_CONFIG_NAMED_H
#define CG_CONFIG_NAMED_H

#include "case.h"
#include "status.h"

/* The key of such a name in the config at `path`, of which `c` was read, with
 * what --set has changed: "duty.log", "duty.name" or "margin.duties"; *key
 * NULL: none is there.  What is included is none, as a config written anew
 * holds it; nor is a notebook, which it leaves out.  CG_FILE and CG_NO_MEMORY
 * as cg_config_read. */
enum cg_status cg_config_names_file(const char *path, const struct cg_case *c,
                                    const char **key, struct cg_error *error);

#endif
