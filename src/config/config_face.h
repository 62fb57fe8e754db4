/* Reads the list of ring faces from a config. */
#ifndef CG_CONFIG_FACE_H
#define CG_CONFIG_FACE_H

#include "config_file.h"
#include "metals.h"

/* Adds the faces of `file` (list CG_FACE_LIST) to `metals`, each checked for
 * unknown, missing and impossible entries. */
void cg_config_faces(const struct cg_config_file *file,
                     struct cg_metals *metals, struct cg_problems *problems);

#endif
