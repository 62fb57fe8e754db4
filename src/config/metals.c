#include "metals.h"

#include <stdlib.h>
#include <string.h>

enum cg_status cg_metals_create(struct cg_metals *metals,
                                struct cg_error *error)
{
    metals->count = metals->faces = 0;
    metals->metal = calloc(CG_METAL_ROOM, sizeof metals->metal[0]);
    metals->face = calloc(CG_FACE_ROOM, sizeof metals->face[0]);
    if (metals->metal != NULL && metals->face != NULL)
        return CG_OK;
    cg_metals_free(metals);
    return cg_error_set(error, CG_NO_MEMORY, "materials: out of memory");
}

void cg_metals_free(struct cg_metals *metals)
{
    free(metals->metal);
    free(metals->face);
    metals->metal = NULL;
    metals->face = NULL;
    metals->count = metals->faces = 0;
}

void cg_metals_add(struct cg_metals *metals, const struct cg_metals *more)
{
    for (size_t i = 0; i < more->count && metals->count < CG_METAL_ROOM; i++)
        metals->metal[metals->count++] = more->metal[i];
    for (size_t i = 0; i < more->faces && metals->faces < CG_FACE_ROOM; i++)
        metals->face[metals->faces++] = more->face[i];
}

const char *cg_role_text(enum cg_role role)
{
    switch (role) {
#define CG_ROLE_CASE(name, text) case name: return text;
        CG_ROLE_LIST(CG_ROLE_CASE)
#undef CG_ROLE_CASE
    case CG_ROLES:
        break;
    }
    return "";
}

const struct cg_material *cg_metals_find(const struct cg_metals *metals,
                                         const char *name, enum cg_role role)
{
    for (size_t i = 0; i < metals->count; i++)
        if (metals->metal[i].role[role] &&
            strcmp(metals->metal[i].material.name, name) == 0)
            return &metals->metal[i].material;
    return NULL;
}

const struct cg_face *cg_metals_face(const struct cg_metals *metals,
                                     const char *name)
{
    for (size_t i = 0; i < metals->faces; i++)
        if (strcmp(metals->face[i].name, name) == 0)
            return &metals->face[i];
    return NULL;
}

const struct cg_face *cg_metals_uncoated(const struct cg_metals *metals,
                                         const struct cg_material *material)
{
    for (size_t i = 0; i < metals->faces; i++)
        if (metals->face[i].thickness == 0.0 &&
            cg_face_goes_on(&metals->face[i], material))
            return &metals->face[i];
    return NULL;
}

size_t cg_metals_names(const struct cg_metals *metals, enum cg_role role,
                       const char **names, size_t capacity)
{
    size_t count = 0;
    for (size_t i = 0; i < metals->count && count < capacity; i++) {
        const struct cg_material *material = &metals->metal[i].material;
        if (metals->metal[i].role[role] &&
            cg_metals_find(metals, material->name, role) == material)
            names[count++] = material->name;
    }
    return count;
}
