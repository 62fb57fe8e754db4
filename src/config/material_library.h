/* What a builder can choose from: all ring materials, piston alloys and ring
 * faces of the user's config and the shipped files, each name once. */
#ifndef CG_MATERIAL_LIBRARY_H
#define CG_MATERIAL_LIBRARY_H

#include "metals.h"

struct cg_material_library {
    size_t rings, alloys, faces;
    struct cg_material *ring, *alloy; /* owned */
    struct cg_face *face;             /* owned */
};

/* Copies out of `metals`.  CG_NO_MEMORY. */
enum cg_status cg_material_library_fill(const struct cg_metals *metals,
                                        struct cg_material_library *library,
                                        struct cg_error *error);

/* Accepts a zeroed one. */
void cg_material_library_free(struct cg_material_library *library);

#endif
