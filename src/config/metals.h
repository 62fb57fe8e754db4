/* The metals and ring faces known in a run: those of the user's config first,
 * then the shipped ones, so that a user's entry wins over a shipped one. */
#ifndef CG_METALS_H
#define CG_METALS_H

#include <stdbool.h>
#include <stddef.h>

#include "face.h"
#include "material.h"
#include "status.h"

/* What a metal may be used for; the texts stand in its `use`. */
#define CG_ROLE_LIST(X)                                                    \
    X(CG_ROLE_RING, "ring")                                                \
    X(CG_ROLE_PISTON, "piston")                                            \
    X(CG_ROLE_BORE, "bore")                                                \
    X(CG_ROLE_BLOCK, "block")

enum cg_role {
#define CG_ROLE_NAME(name, text) name,
    CG_ROLE_LIST(CG_ROLE_NAME)
#undef CG_ROLE_NAME
    CG_ROLES
};

/* Lists of metals, in a config and as files of the materials folder. */
#define CG_METAL_LISTS "ring_materials", "piston_alloys", "bore_materials"

/* The list of ring faces, and the face that is none. */
#define CG_FACE_LIST "ring_faces"
#define CG_UNCOATED "uncoated"

/* What ring metals are told apart by; faces name the kinds they go on. */
#define CG_RING_KINDS "iron", "steel", "nitriding_steel", "other"

enum { CG_METAL_ROOM = 128, CG_FACE_ROOM = 64 };

struct cg_metal {
    struct cg_material material;
    bool role[CG_ROLES];
};

struct cg_metals {
    size_t count;
    struct cg_metal *metal; /* CG_METAL_ROOM entries, owned */
    size_t faces;
    struct cg_face *face;   /* CG_FACE_ROOM entries, owned */
};

enum cg_status cg_metals_create(struct cg_metals *metals,
                                struct cg_error *error);
void cg_metals_free(struct cg_metals *metals);

/* Puts all of `more` behind what is there, as far as there is room. */
void cg_metals_add(struct cg_metals *metals, const struct cg_metals *more);

const char *cg_role_text(enum cg_role role);

/* The first metal of that name fit for the role, or NULL. */
const struct cg_material *cg_metals_find(const struct cg_metals *metals,
                                         const char *name, enum cg_role role);

/* The first face of that name, or NULL. */
const struct cg_face *cg_metals_face(const struct cg_metals *metals,
                                     const char *name);

/* The face of a ring without a coat: the first of no thickness that goes on
 * its material; NULL: there is none. */
const struct cg_face *cg_metals_uncoated(const struct cg_metals *metals,
                                         const struct cg_material *material);

/* Names fit for the role, each once; returns their number, at most capacity. */
size_t cg_metals_names(const struct cg_metals *metals, enum cg_role role,
                       const char **names, size_t capacity);

#endif
