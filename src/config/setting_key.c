#include "setting_key.h"

#include <stdio.h>
#include <string.h>

#include "nearest.h"
#include "scope.h"
#include "trade_word.h"

enum { CLOSE_EDITS = 2, BEGINNING = 4, KEY_LENGTH = 128 };

/* The part after the last dot. */
static const char *last_part(const char *path)
{
    const char *dot = strrchr(path, '.');
    return dot != NULL ? dot + 1 : path;
}

void cg_key_write(const struct cg_setting *setting, const struct cg_unit *unit,
                  bool whole, char *key, size_t size)
{
    const char *suffix = unit != NULL ? unit->suffix : setting->unit;
    snprintf(key, size, "%s%s%s",
             whole ? setting->path : last_part(setting->path),
             suffix[0] != '\0' ? "_" : "", suffix);
}

/* What follows the name in `path`: "" or "_..."; NULL if the path does not
 * start with that name. */
static const char *after_name(const char *path, const char *name)
{
    size_t length = strlen(name);
    if (strncmp(path, name, length) != 0)
        return NULL;
    path += length;
    return *path == '\0' || *path == '_' ? path : NULL;
}

const struct cg_unit *cg_key_unit(const char *key, const char *name,
                                  enum cg_dimension dimension)
{
    const char *rest = after_name(key, name);
    if (rest == NULL)
        return NULL;
    if (dimension == CG_PLAIN)
        return *rest == '\0' ? cg_unit_find(CG_PLAIN, "") : NULL;
    return *rest == '_' ? cg_unit_find(dimension, rest + 1) : NULL;
}

static size_t smaller(size_t a, size_t b)
{
    return a < b ? a : b;
}

static bool well_begun(const char *said, const char *name)
{
    return strlen(said) >= BEGINNING && strncmp(name, said, strlen(said)) == 0;
}

/* Whether a name as given is near a setting's, as `key` with a unit. */
static bool is_near(const char *said, const struct cg_setting *setting,
                    const char *key)
{
    const char *name = last_part(setting->path);
    return cg_near(said, key) || cg_near(said, name) || well_begun(said, name);
}

/* Edits between a path as given and one of our settings, as `key` with a unit.
 * A wrong group counts little, for people remember the name better than the
 * place; a unit that is not there counts as one edit, the rest of a name well
 * begun as two. */
static size_t path_distance(const char *path, const struct cg_setting *setting,
                            const char *key)
{
    char given[KEY_LENGTH], group[KEY_LENGTH], said[KEY_LENGTH];
    snprintf(given, sizeof given, "%.*s", (int)(last_part(path) - path), path);
    snprintf(group, sizeof group, "%.*s", (int)(last_part(key) - key), key);
    cg_trade_word(last_part(path), said, sizeof said);
    const char *name = last_part(setting->path);
    size_t edits = smaller(cg_edit_distance(said, last_part(key)),
                           cg_edit_distance(said, name) +
                               (setting->dimension == CG_PLAIN ? 0 : 1));
    if (well_begun(said, name))
        edits = smaller(edits, CLOSE_EDITS);
    return edits + smaller(cg_edit_distance(given, group), CLOSE_EDITS);
}

/* The nearest key over all settings in all their units. */
static size_t nearest_key(const char *path, struct cg_key *nearest)
{
    size_t setting_count, unit_count, least = (size_t)-1;
    const struct cg_setting *settings = cg_settings(&setting_count);
    const struct cg_unit *units = cg_units(&unit_count);
    for (size_t i = 0; i < setting_count; i++) {
        for (size_t j = 0; j < unit_count; j++) {
            if (units[j].dimension != settings[i].dimension)
                continue;
            char key[KEY_LENGTH];
            cg_key_write(&settings[i], &units[j], true, key, sizeof key);
            size_t edits = path_distance(path, &settings[i], key);
            if (edits < least) {
                least = edits;
                *nearest = (struct cg_key){&settings[i], &units[j]};
            }
        }
    }
    return least;
}

/* All ways to write a setting: "bore_mm, bore_um, bore_in, bore_thou". */
static void list_units(const struct cg_setting *setting, char *list,
                       size_t size)
{
    size_t count, used = 0;
    const struct cg_unit *units = cg_units(&count);
    list[0] = '\0';
    for (size_t i = 0; i < count && used < size; i++) {
        if (units[i].dimension != setting->dimension)
            continue;
        char key[KEY_LENGTH];
        cg_key_write(setting, &units[i], false, key, sizeof key);
        used += (size_t)snprintf(list + used, size - used, "%s%s",
                                 used > 0 ? ", " : "", key);
    }
}

static void unit_trouble(const struct cg_setting *setting, const char *rest,
                         char *trouble, size_t size)
{
    char list[KEY_LENGTH];
    list_units(setting, list, sizeof list);
    if (setting->dimension == CG_PLAIN)
        snprintf(trouble, size, "takes no unit, write %s", list);
    else if (*rest == '\0')
        snprintf(trouble, size, "has no unit, allowed: %s", list);
    else
        snprintf(trouble, size, "unknown unit %.40s, allowed: %s", rest + 1,
                 list);
}

static bool find_exact(const char *path, struct cg_key *key)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++) {
        const struct cg_unit *unit =
            cg_key_unit(path, settings[i].path, settings[i].dimension);
        if (unit != NULL) {
            *key = (struct cg_key){&settings[i], unit};
            return true;
        }
    }
    return false;
}

/* With a builder's word for ours: "rings.top.gap_mm". */
static bool find_said(const char *path, struct cg_key *key)
{
    char ours[KEY_LENGTH], whole[2 * KEY_LENGTH];
    const char *last = last_part(path);
    if (last - path >= KEY_LENGTH || !cg_trade_key(last, ours, sizeof ours))
        return false;
    snprintf(whole, sizeof whole, "%.*s%s", (int)(last - path), path, ours);
    return find_exact(whole, key);
}

/* The setting whose path, the longest of all, `path` begins with: "coolant" and
 * "coolant_film" both begin "coolant_film_x". */
static const struct cg_setting *setting_named(const char *path)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count), *named = NULL;
    for (size_t i = 0; i < count; i++)
        if (after_name(path, settings[i].path) != NULL &&
            (named == NULL || strlen(settings[i].path) > strlen(named->path)))
            named = &settings[i];
    return named;
}

bool cg_key_find(const char *path, struct cg_key *key, char *trouble,
                 size_t size)
{
    if (find_exact(path, key) || find_said(path, key))
        return true;
    if (size == 0)
        return false;
    const struct cg_setting *named = setting_named(path);
    size_t count;
    struct cg_key nearest = {&cg_settings(&count)[0], NULL};
    size_t edits = nearest_key(path, &nearest);
    char name[KEY_LENGTH];
    cg_key_write(nearest.setting, nearest.unit, true, name, sizeof name);
    const char *refused = named == NULL ? cg_scope_refuses_key(path) : NULL;
    if (refused != NULL)
        snprintf(trouble, size, "%s", refused);
    else if (named != NULL && (nearest.setting == named || edits > CLOSE_EDITS))
        unit_trouble(named, after_name(path, named->path), trouble, size);
    else if (is_near(last_part(path), nearest.setting, last_part(name)))
        snprintf(trouble, size, "unknown setting, the nearest is %s", name);
    else
        snprintf(trouble, size,
                 "unknown setting, coldgap template lists what is allowed");
    return false;
}

bool cg_key_group(const char *path)
{
    size_t count, length = strlen(path);
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++)
        if (strncmp(settings[i].path, path, length) == 0 &&
            settings[i].path[length] == '.')
            return true;
    return false;
}
