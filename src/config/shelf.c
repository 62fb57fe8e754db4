#include "shelf.h"

#include <stdlib.h>
#include <string.h>

static size_t take_metals(const struct cg_metals *metals, enum cg_role role,
                          struct cg_material *to)
{
    const char *names[CG_METAL_ROOM];
    size_t count = cg_metals_names(metals, role, names, CG_METAL_ROOM);
    for (size_t i = 0; i < count; i++)
        to[i] = *cg_metals_find(metals, names[i], role);
    return count;
}

static size_t take_faces(const struct cg_metals *metals, struct cg_face *to)
{
    size_t count = 0;
    for (size_t i = 0; i < metals->faces; i++) {
        const struct cg_face *face = &metals->face[i];
        if (cg_metals_face(metals, face->name) == face)
            to[count++] = *face;
    }
    return count;
}

enum cg_status cg_shelf_fill(const struct cg_metals *metals,
                             struct cg_shelf *shelf, struct cg_error *error)
{
    memset(shelf, 0, sizeof *shelf);
    shelf->ring = malloc((metals->count + 1) * sizeof *shelf->ring);
    shelf->alloy = malloc((metals->count + 1) * sizeof *shelf->alloy);
    shelf->face = malloc((metals->faces + 1) * sizeof *shelf->face);
    if (shelf->ring == NULL || shelf->alloy == NULL || shelf->face == NULL) {
        cg_shelf_free(shelf);
        return cg_error_set(error, CG_NO_MEMORY, "materials: out of memory");
    }
    shelf->rings = take_metals(metals, CG_ROLE_RING, shelf->ring);
    shelf->alloys = take_metals(metals, CG_ROLE_PISTON, shelf->alloy);
    shelf->faces = take_faces(metals, shelf->face);
    return CG_OK;
}

void cg_shelf_free(struct cg_shelf *shelf)
{
    free(shelf->ring);
    free(shelf->alloy);
    free(shelf->face);
    memset(shelf, 0, sizeof *shelf);
}
