/* Walks the groups of a config, and applies overrides. */
#include "config_parts.h"

#include <stdlib.h>
#include <string.h>

#include "nearest.h"
#include "scope.h"

enum { TREE_PATH = 256, TREE_GROUPS = 32 };

/* Lists that are read elsewhere: the materials at the top, and these. */
static const char *const top_lists[] = {CG_METAL_LISTS, CG_FACE_LIST, "evidence"};
static const char *const inner_lists[] = {"duty.segments", "duty.log",
                                          "duty.columns",
                                          "uncertainty.correlations"};

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

static bool is_list(const char *path)
{
    for (size_t i = 0; i < COUNT(top_lists); i++)
        if (strcmp(path, top_lists[i]) == 0)
            return true;
    for (size_t i = 0; i < COUNT(inner_lists); i++)
        if (strcmp(path, inner_lists[i]) == 0)
            return true;
    return false;
}

/* The groups allowed right inside `inside` ("" or "rings"). */
static size_t list_groups(const char *inside,
                          char name[TREE_GROUPS][CG_NAME_LENGTH],
                          const char *list[TREE_GROUPS])
{
    size_t settings_count, count = 0, skip = strlen(inside);
    const struct cg_setting *settings = cg_settings(&settings_count);
    skip += skip > 0;
    for (size_t i = 0; i < settings_count; i++) {
        const char *path = settings[i].path;
        if (skip > 0 &&
            (strncmp(path, inside, skip - 1) != 0 || path[skip - 1] != '.'))
            continue;
        size_t length = strcspn(path + skip, ".");
        if (path[skip + length] == '\0' || length >= CG_NAME_LENGTH)
            continue;
        if (count > 0 && strlen(name[count - 1]) == length &&
            strncmp(name[count - 1], path + skip, length) == 0)
            continue;
        if (count == TREE_GROUPS)
            break;
        memcpy(name[count], path + skip, length);
        name[count][length] = '\0';
        list[count] = name[count];
        count++;
    }
    return count;
}

/* Whether a name at the top is rather a group's than a key's. */
static bool like_group(const char *inside, const char *name)
{
    char known[TREE_GROUPS][CG_NAME_LENGTH];
    const char *list[TREE_GROUPS];
    size_t count = list_groups("", known, list);
    return inside[0] == '\0' &&
           cg_edit_distance(name, list[cg_nearest(name, list, count)]) <= 2;
}

static void unknown_group(struct cg_reader *reader, struct cg_where where,
                          const char *inside, const char *path,
                          const char *last)
{
    char name[TREE_GROUPS][CG_NAME_LENGTH], allowed[CG_PROBLEM_LENGTH / 2];
    const char *list[TREE_GROUPS];
    size_t count = list_groups(inside, name, list);
    for (size_t i = 0; inside[0] == '\0' && count < TREE_GROUPS &&
                       i < COUNT(top_lists);
         i++)
        list[count++] = top_lists[i];
    cg_nearest_list(last, list, count, allowed, sizeof allowed);
    if (count > 0)
        cg_problem(reader->problems, where, path,
                   "unknown group, allowed: %s", allowed);
    else
        cg_problem(reader->problems, where, path,
                   "unknown group, no group is allowed in %s", inside);
}

static void read_key(struct cg_reader *reader, config_setting_t *setting,
                     struct cg_where where, const char *inside,
                     const char *path, enum cg_given given)
{
    struct cg_key key;
    char trouble[CG_PROBLEM_LENGTH / 2];
    struct cg_value value = cg_value_of(setting);
    bool full = cg_problems_full(reader->problems);
    if (cg_key_find(path, &key, trouble, full ? 0 : sizeof trouble))
        cg_value_store(reader, &key, &value, where, given);
    else if (full)
        cg_problem(reader->problems, where, path, "unknown");
    else if (cg_scope_refuses_key(path) == NULL &&
             (value.kind == CG_VALUE_OTHER || like_group(inside, path)))
        unknown_group(reader, where, inside, path,
                      config_setting_name(setting));
    else
        cg_problem(reader->problems, where, path, "%s", trouble);
}

/* Settings nest two deep at most, so the recursion ends there: an unknown
 * group is reported and not entered. */
static void read_group(struct cg_reader *reader,
                       const struct cg_config_file *file,
                       config_setting_t *group, const char *inside,
                       enum cg_given given)
{
    int count = config_setting_length(group);
    for (int i = 0; i < count; i++) {
        config_setting_t *setting =
            config_setting_get_elem(group, (unsigned)i);
        struct cg_where where = cg_config_where(file, setting);
        char path[TREE_PATH];
        snprintf(path, sizeof path, "%s%s%s", inside,
                 inside[0] != '\0' ? "." : "", config_setting_name(setting));
        if (is_list(path) || strcmp(path, CG_NOTEBOOK_KEY) == 0)
            continue;
        if (!cg_key_group(path))
            read_key(reader, setting, where, inside, path, given);
        else if (config_setting_is_group(setting))
            read_group(reader, file, setting, path, given);
        else
            cg_problem(reader->problems, where, path,
                       "must be a group { } (got %s)",
                       cg_value_of(setting).what);
    }
}

void cg_tree_read(struct cg_reader *reader, const struct cg_config_file *file,
                  const char *only, enum cg_given given)
{
    config_setting_t *root = config_root_setting(&file->config);
    if (only == NULL) {
        read_group(reader, file, root, "", given);
        return;
    }
    for (int i = 0; i < config_setting_length(root); i++) {
        config_setting_t *group = config_setting_get_elem(root, (unsigned)i);
        if (strcmp(config_setting_name(group), only) != 0)
            cg_problem(reader->problems, cg_config_where(file, group),
                       config_setting_name(group),
                       "does not belong here, allowed: %s", only);
        else if (config_setting_is_group(group))
            read_group(reader, file, group, only, given);
    }
}

/* A value on the command line is read as what its setting wants. */
static struct cg_value value_of_text(const struct cg_setting *setting,
                                     const char *text)
{
    struct cg_value value = {.kind = CG_VALUE_TEXT, .text = text,
                             .what = "text"};
    char *end;
    switch (setting->kind) {
    case CG_REAL:
    case CG_COUNT:
        value.number = strtod(text, &end);
        if (*text != '\0' && *end == '\0')
            value.kind = CG_VALUE_NUMBER;
        break;
    case CG_SWITCH:
        value.truth = strcmp(text, "true") == 0;
        if (value.truth || strcmp(text, "false") == 0)
            value.kind = CG_VALUE_TRUTH;
        break;
    case CG_CHOICE:
    case CG_NAME:
    case CG_WORDS:
        break;
    }
    return value;
}

void cg_override(struct cg_reader *reader, const char *set,
                 struct cg_where where)
{
    char path[TREE_PATH], trouble[CG_PROBLEM_LENGTH / 2];
    size_t length = strcspn(set, "=");
    if (length >= sizeof path)
        length = sizeof path - 1;
    memcpy(path, set, length);
    path[length] = '\0';
    struct cg_key key;
    if (set[length] != '=') {
        cg_problem(reader->problems, where, path,
                   "no value, write %sPATH=VALUE",
                   where.file == NULL ? "--set " : "");
    } else if (strcmp(path, CG_NOTEBOOK_KEY) == 0) {
        cg_problem(reader->problems, where, path,
                   "allowed in a config file only");
    } else if (cg_key_group(path) || is_list(path)) {
        cg_problem(reader->problems, where, path,
                   "not a single value, allowed in a config file only");
    } else if (!cg_key_find(path, &key, trouble, sizeof trouble)) {
        cg_problem(reader->problems, where, path, "%s", trouble);
    } else {
        struct cg_value value = value_of_text(key.setting, set + length + 1);
        cg_value_store(reader, &key, &value, where, CG_GIVEN_REPLACE);
    }
}
