/* One entry of a list of metals:
 *   { name = "..."; use = [ "ring" ]; density_kg_m3 = ...; poisson = ...;
 *     expansion_C = [ ... ]; expansion_1e6_K = [ ... ]; ... hot_limit_C = ... }
 * Curves are pairs of arrays, temperature and value. */
#include "config_metal.h"

#include <stdio.h>
#include <string.h>

#include "config_parts.h"
#include "constants.h"
#include "nearest.h"

enum { ENTRY_PATH = 160 };

/* Bands are wide: they catch a wrong unit, not an odd metal. */
static const double temperature_low = -100.0, temperature_high = 1500.0;

struct scalar {
    const char *key;
    double low, high, shift; /* SI = value + shift */
    size_t offset;
};

static const struct scalar scalars[] = {
    {"density_kg_m3", 500.0, 25000.0, 0.0,
     offsetof(struct cg_material, density)},
    {"poisson", 0.05, 0.49, 0.0, offsetof(struct cg_material, poisson)},
    {"hot_limit_C", 50.0, 1500.0, CG_ZERO_CELSIUS,
     offsetof(struct cg_material, hot_limit)},
};

struct curve {
    const char *temperature_key, *key;
    double low, high, scale; /* SI = scale * value */
    size_t offset;
};

static const struct curve curves[] = {
    {"expansion_C", "expansion_1e6_K", 0.1, 60.0, 1e-6,
     offsetof(struct cg_material, expansion)},
    {"conductivity_C", "conductivity_W_mK", 0.5, 500.0, 1.0,
     offsetof(struct cg_material, conductivity)},
    {"heat_capacity_C", "heat_capacity_J_kgK", 100.0, 3000.0, 1.0,
     offsetof(struct cg_material, heat_capacity)},
    {"modulus_C", "modulus_GPa", 5.0, 500.0, 1e9,
     offsetof(struct cg_material, modulus)},
};

static const char *const keys[] = {
    "name", "use", "note", "density_kg_m3", "poisson", "hot_limit_C",
    "expansion_C", "expansion_1e6_K", "conductivity_C", "conductivity_W_mK",
    "heat_capacity_C", "heat_capacity_J_kgK", "modulus_C", "modulus_GPa"};

struct entry {
    const struct cg_config_file *file;
    struct cg_problems *problems;
    config_setting_t *group;
    char path[ENTRY_PATH]; /* "ring_materials.my_steel" */
};

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

/* Trouble with a key of the entry, or with the entry itself. */
static void entry_problem(const struct entry *entry,
                          const config_setting_t *setting, const char *key,
                          const char *what)
{
    char path[2 * ENTRY_PATH];
    snprintf(path, sizeof path, "%s%s%s", entry->path,
             key[0] != '\0' ? "." : "", key);
    cg_problem(entry->problems,
               cg_config_where(entry->file,
                               setting != NULL ? setting : entry->group),
               path, "%s", what);
}

/* The number, or trouble told; place 0: not of an array. */
static bool read_number(const struct entry *entry,
                        const config_setting_t *setting, const char *key,
                        int place, double low, double high, double *number)
{
    struct cg_value value = cg_value_of(setting);
    char what[160], got[32], which[32] = "";
    if (value.kind == CG_VALUE_NUMBER && value.number >= low &&
        value.number <= high) {
        *number = value.number;
        return true;
    }
    if (place > 0)
        snprintf(which, sizeof which, "place %d ", place);
    if (value.kind == CG_VALUE_NUMBER)
        snprintf(got, sizeof got, "%g", value.number);
    else
        snprintf(got, sizeof got, "%s", value.what);
    snprintf(what, sizeof what, "%smust be a number of %g to %g (got %s)",
             which, low, high, got);
    entry_problem(entry, setting, key, what);
    return false;
}

static config_setting_t *member(const struct entry *entry, const char *key)
{
    config_setting_t *setting = config_setting_get_member(entry->group, key);
    if (setting == NULL)
        entry_problem(entry, NULL, key, "missing");
    return setting;
}

static void read_scalar(const struct entry *entry, const struct scalar *scalar,
                        struct cg_material *material)
{
    config_setting_t *setting = member(entry, scalar->key);
    double number;
    if (setting != NULL && read_number(entry, setting, scalar->key, 0,
                                       scalar->low, scalar->high, &number))
        *(double *)((char *)material + scalar->offset) = number + scalar->shift;
}

/* Numbers of an array or list; returns how many, or 0 after trouble. */
static int read_array(const struct entry *entry, const char *key, double low,
                      double high, double value[CG_CURVE_POINTS])
{
    config_setting_t *setting = member(entry, key);
    char what[128];
    if (setting == NULL)
        return 0;
    int length = config_setting_is_array(setting) ||
                         config_setting_is_list(setting)
                     ? config_setting_length(setting)
                     : 0;
    if (length < 1 || length > CG_CURVE_POINTS) {
        snprintf(what, sizeof what,
                 "must be an array of 1 to %d numbers", CG_CURVE_POINTS);
        entry_problem(entry, setting, key, what);
        return 0;
    }
    for (int i = 0; i < length; i++) {
        config_setting_t *element =
            config_setting_get_elem(setting, (unsigned)i);
        if (!read_number(entry, element, key, i + 1, low, high, &value[i]))
            return 0;
    }
    return length;
}

static void read_curve(const struct entry *entry, const struct curve *curve,
                       struct cg_material *material)
{
    double temperature[CG_CURVE_POINTS], value[CG_CURVE_POINTS];
    int points = read_array(entry, curve->temperature_key, temperature_low,
                            temperature_high, temperature);
    int values = read_array(entry, curve->key, curve->low, curve->high, value);
    if (points == 0 || values == 0)
        return;
    if (points != values) {
        char what[128];
        snprintf(what, sizeof what, "has %d numbers, %s has %d; the same "
                 "number is allowed", values, curve->temperature_key, points);
        entry_problem(entry, NULL, curve->key, what);
        return;
    }
    struct cg_curve *target =
        (struct cg_curve *)((char *)material + curve->offset);
    for (int i = 0; i < points; i++) {
        if (i > 0 && !(temperature[i] > temperature[i - 1])) {
            entry_problem(entry, NULL, curve->temperature_key,
                          "temperatures must rise from place to place");
            return;
        }
        target->temperature[i] = temperature[i] + CG_ZERO_CELSIUS;
        target->value[i] = curve->scale * value[i];
    }
    target->points = points;
}

static void read_use(const struct entry *entry, bool role[CG_ROLES])
{
    config_setting_t *use = member(entry, "use");
    if (use == NULL)
        return;
    bool list = config_setting_is_array(use) || config_setting_is_list(use);
    int length = list ? config_setting_length(use) : 0;
    bool good = length > 0;
    for (int i = 0; i < length; i++) {
        config_setting_t *element = config_setting_get_elem(use, (unsigned)i);
        bool known = false;
        for (int r = 0; config_setting_type(element) == CONFIG_TYPE_STRING &&
                        r < CG_ROLES; r++) {
            if (strcmp(config_setting_get_string(element),
                       cg_role_text((enum cg_role)r)) != 0)
                continue;
            role[r] = known = true;
        }
        good = good && known;
    }
    if (!good)
        entry_problem(entry, use, "use", "must be an array of uses, allowed: "
                      "\"ring\", \"piston\", \"bore\", \"block\"");
}

static void check_keys(const struct entry *entry)
{
    for (int i = 0; i < config_setting_length(entry->group); i++) {
        config_setting_t *setting =
            config_setting_get_elem(entry->group, (unsigned)i);
        const char *key = config_setting_name(setting);
        size_t nearest = cg_nearest(key, keys, COUNT(keys));
        char what[128];
        if (strcmp(key, keys[nearest]) == 0)
            continue;
        snprintf(what, sizeof what, "unknown setting, the nearest is %s",
                 keys[nearest]);
        entry_problem(entry, setting, key, what);
    }
}

/* The name, which the entry's other trouble is told by. */
static bool read_name(struct entry *entry, const char *list,
                      struct cg_material *material)
{
    config_setting_t *setting = member(entry, "name");
    if (setting == NULL)
        return false;
    const char *name = config_setting_type(setting) == CONFIG_TYPE_STRING
                           ? config_setting_get_string(setting)
                           : "";
    if (name[0] == '\0' || strlen(name) >= CG_NAME_LENGTH) {
        entry_problem(entry, setting, "name",
                      "must be a name of 1 to 47 letters in quotes");
        return false;
    }
    strcpy(material->name, name);
    snprintf(entry->path, sizeof entry->path, "%s.%s", list, name);
    return true;
}

static void read_entry(struct entry *entry, const char *list,
                       struct cg_metals *metals, size_t first)
{
    struct cg_metal metal = {0};
    if (!config_setting_is_group(entry->group)) {
        entry_problem(entry, NULL, "", "must be a group { }");
        return;
    }
    if (!read_name(entry, list, &metal.material))
        return;
    for (size_t i = first; i < metals->count; i++)
        if (strcmp(metals->metal[i].material.name, metal.material.name) == 0)
            entry_problem(entry, NULL, "",
                          "this name stands twice, one is allowed");
    check_keys(entry);
    read_use(entry, metal.role);
    for (size_t i = 0; i < COUNT(scalars); i++)
        read_scalar(entry, &scalars[i], &metal.material);
    for (size_t i = 0; i < COUNT(curves); i++)
        read_curve(entry, &curves[i], &metal.material);
    if (metals->count == CG_METAL_ROOM)
        entry_problem(entry, NULL, "", "too many materials");
    else /* a bad one too: it is told, and its name is not unknown */
        metals->metal[metals->count++] = metal;
}

void cg_config_metals(const struct cg_config_file *file,
                      struct cg_metals *metals, struct cg_problems *problems)
{
    static const char *const lists[] = {CG_METAL_LISTS};
    size_t first = metals->count;
    for (size_t i = 0; i < COUNT(lists); i++) {
        config_setting_t *list = config_setting_get_member(
            config_root_setting(&file->config), lists[i]);
        if (list == NULL)
            continue;
        if (!config_setting_is_list(list)) {
            cg_problem(problems, cg_config_where(file, list), lists[i],
                       "must be a list ( { }, { }, ... )");
            continue;
        }
        for (int j = 0; j < config_setting_length(list); j++) {
            struct entry entry = {file, problems,
                                  config_setting_get_elem(list, (unsigned)j),
                                  ""};
            snprintf(entry.path, sizeof entry.path, "%s[%d]", lists[i], j);
            read_entry(&entry, lists[i], metals, first);
        }
    }
}
