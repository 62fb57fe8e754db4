/* Gives the case the materials and the ring face that it names. */
#include <math.h>
#include <string.h>

#include "config.h"
#include "config_face.h"
#include "config_metal.h"
#include "config_parts.h"
#include "data_folder.h"

/* Where each material of a case is named, and where it goes. */
struct place {
    const char *path;
    enum cg_role role;
    size_t name, material; /* offsets into struct cg_case */
};

static const struct place places[] = {
    {"piston.alloy", CG_ROLE_PISTON, offsetof(struct cg_case, piston.alloy),
     offsetof(struct cg_case, piston_material)},
    {"rings.top.material", CG_ROLE_RING,
     offsetof(struct cg_case, ring[CG_RING_TOP].material),
     offsetof(struct cg_case, ring_material[CG_RING_TOP])},
    {"rings.second.material", CG_ROLE_RING,
     offsetof(struct cg_case, ring[CG_RING_SECOND].material),
     offsetof(struct cg_case, ring_material[CG_RING_SECOND])},
    {"rings.oil.material", CG_ROLE_RING,
     offsetof(struct cg_case, ring[CG_RING_OIL].material),
     offsetof(struct cg_case, ring_material[CG_RING_OIL])},
    {"bore.material", CG_ROLE_BORE, offsetof(struct cg_case, bore.material),
     offsetof(struct cg_case, bore_material)},
    {"bore.block_material", CG_ROLE_BLOCK,
     offsetof(struct cg_case, bore.block_material),
     offsetof(struct cg_case, block_material)},
};

static enum cg_status read_list(const char *list, struct cg_metals *metals,
                                struct cg_problems *problems,
                                struct cg_error *error)
{
    struct cg_config_file file;
    char path[CG_PATH_LENGTH];
    enum cg_status status = cg_data_path("materials", list, path, error);
    if (status != CG_OK)
        return status;
    status = cg_config_file_open(&file, path, problems, error);
    if (status == CG_OK) {
        cg_config_metals(&file, metals, problems);
        cg_config_faces(&file, metals, problems);
    }
    cg_config_file_close(&file);
    return status;
}

static enum cg_status add_shipped(struct cg_metals *metals,
                                  struct cg_problems *problems,
                                  struct cg_error *error)
{
    static const char *const lists[] = {CG_METAL_LISTS, CG_FACE_LIST};
    enum cg_status status = CG_OK;
    for (size_t i = 0; i < sizeof lists / sizeof lists[0] && status == CG_OK;
         i++)
        status = read_list(lists[i], metals, problems, error);
    return status;
}

enum cg_status cg_config_shipped(struct cg_metals *shipped,
                                 struct cg_error *error)
{
    struct cg_problems problems = {0};
    enum cg_status status = cg_metals_create(shipped, error);
    if (status == CG_OK)
        status = add_shipped(shipped, &problems, error);
    if (status == CG_OK && problems.count > 0)
        status =
            cg_error_set(error, CG_BAD_INPUT, "%.500s", problems.line[0]);
    return status;
}

static void unknown(struct cg_reader *reader, const struct place *place,
                    const char *name)
{
    const char *names[CG_METAL_ROOM], *verdict = "unknown";
    char what[64];
    size_t count =
        cg_metals_names(&reader->metals, place->role, names, CG_METAL_ROOM);
    for (int role = 0; role < CG_ROLES; role++)
        if (cg_metals_find(&reader->metals, name, (enum cg_role)role) != NULL)
            verdict = "not a";
    snprintf(what, sizeof what, "%s %s material", verdict,
             cg_role_text(place->role));
    cg_name_unknown(reader, place->path, what, name, names, count);
}

/* A block material matters only around a liner; elsewhere the default name is
 * left alone, while one the user wrote must still be right. */
static bool wanted(struct cg_reader *reader, const struct place *place)
{
    int seat = reader->c->bore.seat;
    return place->role != CG_ROLE_BLOCK || seat == CG_SEAT_CAST_IN ||
           seat == CG_SEAT_PRESSED ||
           cg_origin_of(reader, place->path)->given;
}

/* Faces name the kinds and the ring metals they go on: a misspelt one would
 * quietly go on none. */
static void check_bases(struct cg_reader *reader)
{
    static const char *const kinds[] = {CG_RING_KINDS};
    const struct cg_metals *metals = &reader->metals;
    /* The shipped ones are right (tested): the user's list it must be. */
    config_setting_t *list = config_lookup(&reader->file.config, CG_FACE_LIST);
    struct cg_where where = {reader->file.path, 0, NULL};
    if (list != NULL)
        where = cg_config_where(&reader->file, list);
    for (size_t f = 0; f < metals->faces; f++) {
        const struct cg_face *face = &metals->face[f];
        for (int i = 0; i < face->bases; i++) {
            bool known = cg_metals_find(metals, face->on[i], CG_ROLE_RING) !=
                         NULL;
            for (size_t k = 0; k < sizeof kinds / sizeof kinds[0]; k++)
                known = known || strcmp(face->on[i], kinds[k]) == 0;
            if (!known)
                cg_problem(reader->problems, where, CG_FACE_LIST,
                           "%s goes on \"%s\", which is neither a kind nor a "
                           "ring material",
                           face->name, face->on[i]);
        }
    }
}

/* Which faces go on the ring's material, and CG_UNCOATED. */
static void tell_face(struct cg_reader *reader,
                      const struct cg_material *material, const char *what)
{
    const struct cg_metals *metals = &reader->metals;
    const char *names[CG_FACE_ROOM + 1];
    size_t count = 0;
    names[count++] = CG_UNCOATED;
    for (size_t i = 0; i < metals->faces; i++)
        if (cg_face_goes_on(&metals->face[i], material) &&
            cg_metals_face(metals, metals->face[i].name) == &metals->face[i])
            names[count++] = metals->face[i].name;
    cg_name_unknown(reader, "rings.top.face", what,
                    reader->c->ring[CG_RING_TOP].face, names, count);
}

static const struct cg_face *face_named(const struct cg_reader *reader,
                                        const struct cg_material *material)
{
    const char *name = reader->c->ring[CG_RING_TOP].face;
    return strcmp(name, CG_UNCOATED) == 0
               ? cg_metals_uncoated(&reader->metals, material)
               : cg_metals_face(&reader->metals, name);
}

static void choose_face(struct cg_reader *reader)
{
    struct cg_case *c = reader->c;
    const struct cg_material *material = &c->ring_material[CG_RING_TOP];
    if (material->name[0] == '\0')
        return; /* its own trouble has been told */
    const struct cg_face *face = face_named(reader, material);
    if (face == NULL) {
        cg_name_translate("rings.top.face", c->ring[CG_RING_TOP].face);
        face = face_named(reader, material);
    }
    if (face == NULL)
        tell_face(reader, material, "unknown face");
    else if (!cg_face_goes_on(face, material))
        tell_face(reader, material, "not a face of this ring material");
    else
        c->ring_face[CG_RING_TOP] = *face;
}

enum cg_status cg_materials_read(struct cg_reader *reader,
                                 struct cg_error *error)
{
    enum cg_status status = cg_metals_create(&reader->metals, error);
    if (status != CG_OK)
        return status;
    cg_config_metals(&reader->file, &reader->metals, reader->problems);
    cg_config_faces(&reader->file, &reader->metals, reader->problems);
    if (reader->shipped != NULL)
        cg_metals_add(&reader->metals, reader->shipped);
    else
        status = add_shipped(&reader->metals, reader->problems, error);
    if (status != CG_OK)
        return status;
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++) {
        const struct place *place = &places[i];
        char *name = (char *)reader->c + place->name;
        const struct cg_material *material =
            cg_metals_find(&reader->metals, name, place->role);
        if (material == NULL) {
            cg_name_translate(cg_role_text(place->role), name);
            material = cg_metals_find(&reader->metals, name, place->role);
        }
        if (material != NULL)
            *(struct cg_material *)((char *)reader->c + place->material) =
                *material;
        else if (wanted(reader, place))
            unknown(reader, place, name);
    }
    check_bases(reader);
    choose_face(reader);
    cg_case_choose_skirt(reader->c);
    return CG_OK;
}
