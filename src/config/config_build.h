/* One build of a notebook (config_notebook.c).  Private to its reader. */
#ifndef CG_CONFIG_BUILD_H
#define CG_CONFIG_BUILD_H

#include "config_parts.h"

/* A build as far as it has been read. */
struct cg_build {
    const struct cg_item *item;
    const char *engine;                  /* NULL: not given */
    char path[CG_PATH_LENGTH];           /* of its engine */
    const config_setting_t *set, *found; /* lists; set NULL: not given */
    char date[CG_EVIDENCE_DATE];
};

/* The build's keys; false: there is trouble, which has been told. */
bool cg_build_keys_read(const struct cg_item *item, struct cg_build *build);

/* Writes a name in the folder of the file that it stands in, as an include's
 * is; false: too long. */
bool cg_path_in(const struct cg_config_file *file, const char *name,
                char path[CG_PATH_LENGTH]);

#endif
