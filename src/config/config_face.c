/* One entry of the list of ring faces:
 *   { name = "..."; on = [ "iron", "steel" ]; temperature_C = [ low, high ];
 *     peak_pressure_bar = [ low, high ]; peak_rise_bar_deg = [ low, high ];
 *     hardness_HV = ...; thickness_um = ...; conductivity_W_mK = ...;
 *     failure = "..." }
 * hardness_HV may be missing: that of the ring's own metal. */
#include "config_face.h"

#include <math.h>
#include <string.h>

#include "config_entry.h"
#include "constants.h"
#include "plain_text.h"

static const char *const keys[] = {
    "name", "note", "on", "temperature_C", "peak_pressure_bar",
    "peak_rise_bar_deg", "hardness_HV", "thickness_um", "conductivity_W_mK",
    "failure"};

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

/* Key, band allowed, and SI = scale * value + shift. */
struct limit {
    const char *key;
    double low, high, scale, shift;
    size_t offset;
};

static const struct limit limits[] = {
    {"temperature_C", 50.0, 1500.0, 1.0, CG_ZERO_CELSIUS,
     offsetof(struct cg_face, temperature)},
    {"peak_pressure_bar", 5.0, 1000.0, 1e5, 0.0,
     offsetof(struct cg_face, peak_pressure)},
    {"peak_rise_bar_deg", 0.1, 100.0, 1e5, 0.0,
     offsetof(struct cg_face, peak_rise)},
};

static void read_limit(const struct cg_entry *entry, const struct limit *limit,
                       struct cg_face *face)
{
    struct cg_band band;
    if (cg_entry_band(entry, limit->key, limit->low, limit->high, &band))
        *(struct cg_band *)((char *)face + limit->offset) =
            (struct cg_band){limit->scale * band.low + limit->shift,
                             limit->scale * band.high + limit->shift};
}

static void read_number(const struct cg_entry *entry, const char *key,
                        double low, double high, double scale, double *value)
{
    config_setting_t *setting = cg_entry_member(entry, key);
    if (setting != NULL &&
        cg_entry_number(entry, setting, key, 0, low, high, value))
        *value *= scale;
}

static void read_failure(const struct cg_entry *entry, struct cg_face *face)
{
    config_setting_t *setting = cg_entry_member(entry, "failure");
    if (setting == NULL)
        return;
    const char *text = config_setting_type(setting) == CONFIG_TYPE_STRING
                           ? config_setting_get_string(setting)
                           : "";
    if (text[0] == '\0' || strlen(text) >= CG_FACE_TEXT ||
        strchr(text, '"') != NULL || !cg_plain_is(text))
        cg_entry_problem(entry, setting, "failure",
                         "must be one line of 1 to 95 letters in quotes");
    else
        strcpy(face->failure, text);
}

/* Where the entries of one file go; names must differ from `first` on. */
struct target {
    struct cg_metals *metals;
    size_t first;
};

static void read_entry(struct cg_entry *entry, const char *list, void *context)
{
    const struct target *target = context;
    struct cg_metals *metals = target->metals;
    struct cg_face face = {.hardness = NAN, .conductivity = 1.0};
    if (!cg_entry_name(entry, list, face.name))
        return;
    if (strcmp(face.name, CG_UNCOATED) == 0)
        cg_entry_problem(entry, NULL, "", "this name is taken: it stands for "
                         "whatever goes without a coat");
    for (size_t i = target->first; i < metals->faces; i++)
        if (strcmp(metals->face[i].name, face.name) == 0)
            cg_entry_twice(entry);
    cg_entry_check_keys(entry, keys, COUNT(keys));
    face.bases = cg_entry_words(entry, "on", CG_FACE_BASES, face.on);
    for (size_t i = 0; i < COUNT(limits); i++)
        read_limit(entry, &limits[i], &face);
    if (config_setting_get_member(entry->group, "hardness_HV") != NULL)
        read_number(entry, "hardness_HV", 20.0, 10000.0, 1.0, &face.hardness);
    read_number(entry, "thickness_um", 0.0, 2000.0, 1e-6, &face.thickness);
    read_number(entry, "conductivity_W_mK", 0.1, 500.0, 1.0,
                &face.conductivity);
    read_failure(entry, &face);
    if (metals->faces == CG_FACE_ROOM)
        cg_entry_problem(entry, NULL, "", "too many faces");
    else
        metals->face[metals->faces++] = face;
}

void cg_config_faces(const struct cg_config_file *file,
                     struct cg_metals *metals, struct cg_problems *problems)
{
    struct target target = {metals, metals->faces};
    cg_entries_read(file, CG_FACE_LIST, problems, read_entry, &target);
}
