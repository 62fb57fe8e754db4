/* One entry of a list of metals:
 *   { name = "..."; use = [ "ring" ]; density_kg_m3 = ...; poisson = ...;
 *     expansion_C = [ ... ]; expansion_1e6_K = [ ... ]; ... hot_limit_C = ... }
 * Curves are pairs of arrays, temperature and value.  A ring metal may say its
 * kind, hardness_HV and hot_limit_high_C, a piston alloy skirt_per_bore. */
#include "config_metal.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "config_entry.h"
#include "constants.h"

/* Bands are wide: they catch a wrong unit, not an odd metal. */
static const double temperature_low = -100.0, temperature_high = 1500.0;

/* How far above its lower end a hot limit is certain where the entry does not
 * say it [K]: common practice, no source. */
#define HOT_LIMIT_WIDTH 40.0

struct scalar {
    const char *key;
    double low, high, shift; /* SI = value + shift */
    bool optional;           /* left as it is when missing */
    size_t offset;
};

static const struct scalar scalars[] = {
    {"density_kg_m3", 500.0, 25000.0, 0.0, false,
     offsetof(struct cg_material, density)},
    {"poisson", 0.05, 0.49, 0.0, false,
     offsetof(struct cg_material, poisson)},
    {"hot_limit_C", 50.0, 1500.0, CG_ZERO_CELSIUS, false,
     offsetof(struct cg_material, hot_limit)},
    {"hot_limit_high_C", 50.0, 1500.0, CG_ZERO_CELSIUS, true,
     offsetof(struct cg_material, hot_limit_high)},
    {"hardness_HV", 20.0, 5000.0, 0.0, true,
     offsetof(struct cg_material, hardness)},
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
    "heat_capacity_C", "heat_capacity_J_kgK", "modulus_C", "modulus_GPa",
    "kind", "hardness_HV", "hot_limit_high_C", "skirt_per_bore"};

static const char *const kinds[] = {CG_RING_KINDS};

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

static bool has(const struct cg_entry *entry, const char *key)
{
    return config_setting_get_member(entry->group, key) != NULL;
}

static void read_scalar(const struct cg_entry *entry,
                        const struct scalar *scalar,
                        struct cg_material *material)
{
    double number;
    if (scalar->optional && !has(entry, scalar->key))
        return;
    config_setting_t *setting = cg_entry_member(entry, scalar->key);
    if (setting != NULL && cg_entry_number(entry, setting, scalar->key, 0,
                                           scalar->low, scalar->high, &number))
        *(double *)((char *)material + scalar->offset) = number + scalar->shift;
}

static void read_curve(const struct cg_entry *entry, const struct curve *curve,
                       struct cg_material *material)
{
    double temperature[CG_CURVE_POINTS], value[CG_CURVE_POINTS];
    int points = cg_entry_array(entry, curve->temperature_key, 1,
                                CG_CURVE_POINTS, temperature_low,
                                temperature_high, temperature);
    int values = cg_entry_array(entry, curve->key, 1, CG_CURVE_POINTS,
                                curve->low, curve->high, value);
    if (points == 0 || values == 0)
        return;
    if (points != values) {
        char what[128];
        snprintf(what, sizeof what, "has %d numbers, %s has %d; the same "
                 "number is allowed", values, curve->temperature_key, points);
        cg_entry_problem(entry, NULL, curve->key, what);
        return;
    }
    struct cg_curve *target =
        (struct cg_curve *)((char *)material + curve->offset);
    for (int i = 0; i < points; i++) {
        if (i > 0 && !(temperature[i] > temperature[i - 1])) {
            cg_entry_problem(entry, NULL, curve->temperature_key,
                             "temperatures must rise from place to place");
            return;
        }
        target->temperature[i] = temperature[i] + CG_ZERO_CELSIUS;
        target->value[i] = curve->scale * value[i];
    }
    target->points = points;
}

static void read_use(const struct cg_entry *entry, bool role[CG_ROLES])
{
    config_setting_t *use = cg_entry_member(entry, "use");
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
        cg_entry_problem(entry, use, "use",
                         "must be an array of uses, allowed: "
                         "\"ring\", \"piston\", \"bore\", \"block\"");
}

/* The kind a ring metal is of: "other" where it is not said. */
static void read_kind(const struct cg_entry *entry,
                      struct cg_material *material)
{
    config_setting_t *setting = config_setting_get_member(entry->group, "kind");
    strcpy(material->kind, "other");
    if (setting == NULL)
        return;
    for (size_t i = 0; config_setting_type(setting) == CONFIG_TYPE_STRING &&
                       i < COUNT(kinds); i++) {
        if (strcmp(config_setting_get_string(setting), kinds[i]) != 0)
            continue;
        strcpy(material->kind, kinds[i]);
        return;
    }
    cg_entry_problem(entry, setting, "kind",
                     "must be a kind of ring metal, allowed: \"iron\", "
                     "\"steel\", \"nitriding_steel\", \"other\"");
}

/* What an entry may leave out, and what then holds. */
static void read_optional(const struct cg_entry *entry,
                          struct cg_material *material)
{
    read_kind(entry, material);
    if (has(entry, "skirt_per_bore"))
        cg_entry_band(entry, "skirt_per_bore", 1e-4, 1e-2,
                      &material->skirt_per_bore);
    if (isnan(material->hot_limit_high))
        material->hot_limit_high = material->hot_limit + HOT_LIMIT_WIDTH;
    if (!(material->hot_limit_high > material->hot_limit))
        cg_entry_problem(entry, NULL, "hot_limit_high_C",
                         "must be above hot_limit_C");
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
    struct cg_metal metal = {
        .material = {.hot_limit_high = NAN,
                     .hardness = NAN,
                     .skirt_per_bore = {NAN, NAN}}};
    if (!cg_entry_name(entry, list, metal.material.name))
        return;
    for (size_t i = target->first; i < metals->count; i++)
        if (strcmp(metals->metal[i].material.name, metal.material.name) == 0)
            cg_entry_twice(entry);
    cg_entry_check_keys(entry, keys, COUNT(keys));
    read_use(entry, metal.role);
    for (size_t i = 0; i < COUNT(scalars); i++)
        read_scalar(entry, &scalars[i], &metal.material);
    for (size_t i = 0; i < COUNT(curves); i++)
        read_curve(entry, &curves[i], &metal.material);
    read_optional(entry, &metal.material);
    if (metals->count == CG_METAL_ROOM)
        cg_entry_problem(entry, NULL, "", "too many materials");
    else /* a bad one too: it is told, and its name is not unknown */
        metals->metal[metals->count++] = metal;
}

void cg_config_metals(const struct cg_config_file *file,
                      struct cg_metals *metals, struct cg_problems *problems)
{
    static const char *const lists[] = {CG_METAL_LISTS};
    struct target target = {metals, metals->count};
    for (size_t i = 0; i < COUNT(lists); i++)
        cg_entries_read(file, lists[i], problems, read_entry, &target);
}
