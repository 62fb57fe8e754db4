/* What a builder can choose from: all ring materials, piston alloys and ring
 * faces of the user's config and the shipped files, each name once. */
#ifndef CG_SHELF_H
#define CG_SHELF_H

#include "metals.h"

struct cg_shelf {
    size_t rings, alloys, faces;
    struct cg_material *ring, *alloy; /* owned */
    struct cg_face *face;             /* owned */
};

/* Copies out of `metals`.  CG_NO_MEMORY. */
enum cg_status cg_shelf_fill(const struct cg_metals *metals,
                             struct cg_shelf *shelf, struct cg_error *error);

/* Accepts a zeroed one. */
void cg_shelf_free(struct cg_shelf *shelf);

#endif
