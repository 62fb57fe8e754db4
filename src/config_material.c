/* Gives the case the materials it names. */
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

static enum cg_status read_shipped(const char *list, struct cg_reader *reader,
                                   struct cg_error *error)
{
    struct cg_config_file file;
    char path[CG_PATH_LENGTH];
    enum cg_status status = cg_data_path("materials", list, path, error);
    if (status != CG_OK)
        return status;
    status = cg_config_file_open(&file, path, reader->problems, error);
    if (status == CG_OK)
        cg_config_metals(&file, &reader->metals, reader->problems);
    cg_config_file_close(&file);
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

enum cg_status cg_materials_read(struct cg_reader *reader,
                                 struct cg_error *error)
{
    static const char *const lists[] = {CG_METAL_LISTS};
    enum cg_status status = cg_metals_create(&reader->metals, error);
    if (status != CG_OK)
        return status;
    cg_config_metals(&reader->file, &reader->metals, reader->problems);
    for (size_t i = 0; i < sizeof lists / sizeof lists[0]; i++) {
        status = read_shipped(lists[i], reader, error);
        if (status != CG_OK)
            return status;
    }
    for (size_t i = 0; i < sizeof places / sizeof places[0]; i++) {
        const struct place *place = &places[i];
        const char *name = (const char *)reader->c + place->name;
        const struct cg_material *material =
            cg_metals_find(&reader->metals, name, place->role);
        if (material != NULL)
            *(struct cg_material *)((char *)reader->c + place->material) =
                *material;
        else if (wanted(reader, place))
            unknown(reader, place, name);
    }
    return CG_OK;
}
