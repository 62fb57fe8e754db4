#include "material_library.h"

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

enum cg_status cg_material_library_fill(const struct cg_metals *metals,
                                        struct cg_material_library *library,
                                        struct cg_error *error)
{
    memset(library, 0, sizeof *library);
    library->ring = malloc((metals->count + 1) * sizeof *library->ring);
    library->alloy = malloc((metals->count + 1) * sizeof *library->alloy);
    library->face = malloc((metals->faces + 1) * sizeof *library->face);
    if (library->ring == NULL || library->alloy == NULL ||
        library->face == NULL) {
        cg_material_library_free(library);
        return cg_error_set(error, CG_NO_MEMORY, "materials: out of memory");
    }
    library->rings = take_metals(metals, CG_ROLE_RING, library->ring);
    library->alloys = take_metals(metals, CG_ROLE_PISTON, library->alloy);
    library->faces = take_faces(metals, library->face);
    return CG_OK;
}

void cg_material_library_free(struct cg_material_library *library)
{
    free(library->ring);
    free(library->alloy);
    free(library->face);
    memset(library, 0, sizeof *library);
}
