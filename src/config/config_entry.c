#include "config_entry.h"

#include <stdio.h>
#include <string.h>

#include "config_parts.h"
#include "nearest.h"

void cg_entries_read(const struct cg_config_file *file, const char *list,
                     struct cg_problems *problems,
                     void (*read)(struct cg_entry *entry, const char *list,
                                  void *context),
                     void *context)
{
    config_setting_t *found = config_setting_get_member(
        config_root_setting(&file->config), list);
    if (found == NULL)
        return;
    if (!config_setting_is_list(found)) {
        cg_problem(problems, cg_config_where(file, found), list,
                   "must be a list ( { }, { }, ... )");
        return;
    }
    for (int i = 0; i < config_setting_length(found); i++) {
        struct cg_entry entry = {file, problems,
                                 config_setting_get_elem(found, (unsigned)i),
                                 ""};
        snprintf(entry.path, sizeof entry.path, "%s[%d]", list, i);
        if (config_setting_is_group(entry.group))
            read(&entry, list, context);
        else
            cg_entry_problem(&entry, NULL, "", "must be a group { }");
    }
}

void cg_entry_problem(const struct cg_entry *entry,
                      const config_setting_t *setting, const char *key,
                      const char *what)
{
    char path[2 * CG_ENTRY_PATH];
    snprintf(path, sizeof path, "%s%s%s", entry->path,
             key[0] != '\0' ? "." : "", key);
    cg_problem(entry->problems,
               cg_config_where(entry->file,
                               setting != NULL ? setting : entry->group),
               path, "%s", what);
}

void cg_entry_twice(const struct cg_entry *entry)
{
    cg_entry_problem(entry, NULL, "", "this name stands twice, one is allowed");
}

static const char *text_of(const config_setting_t *setting)
{
    return config_setting_type(setting) == CONFIG_TYPE_STRING
               ? config_setting_get_string(setting)
               : "";
}

bool cg_entry_name(struct cg_entry *entry, const char *list,
                   char name[CG_NAME_LENGTH])
{
    config_setting_t *setting = cg_entry_member(entry, "name");
    if (setting == NULL)
        return false;
    const char *text = text_of(setting);
    char trouble[CG_NAME_TROUBLE];
    if (!cg_name_fits(text, trouble)) {
        cg_entry_problem(entry, setting, "name", trouble);
        return false;
    }
    strcpy(name, text);
    snprintf(entry->path, sizeof entry->path, "%s.%s", list, text);
    return true;
}

static bool is_among(const char *key, const char *const *keys, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(key, keys[i]) == 0)
            return true;
    return false;
}

void cg_entry_check_keys(const struct cg_entry *entry, const char *const *keys,
                         size_t count)
{
    for (int i = 0; i < config_setting_length(entry->group); i++) {
        config_setting_t *setting =
            config_setting_get_elem(entry->group, (unsigned)i);
        const char *key = config_setting_name(setting);
        char what[CG_PROBLEM_LENGTH / 2 + 32], hint[CG_PROBLEM_LENGTH / 2];
        if (is_among(key, keys, count))
            continue;
        cg_nearest_hint(key, keys, count, hint, sizeof hint);
        snprintf(what, sizeof what, "unknown setting, %s", hint);
        cg_entry_problem(entry, setting, key, what);
    }
}

config_setting_t *cg_entry_member(const struct cg_entry *entry,
                                  const char *key)
{
    config_setting_t *setting = config_setting_get_member(entry->group, key);
    if (setting == NULL)
        cg_entry_problem(entry, NULL, key, "missing");
    return setting;
}

bool cg_entry_number(const struct cg_entry *entry,
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
    cg_entry_problem(entry, setting, key, what);
    return false;
}

/* Length of an array or list; 0 for anything else. */
static int length_of(const config_setting_t *setting)
{
    return config_setting_is_array(setting) || config_setting_is_list(setting)
               ? config_setting_length(setting)
               : 0;
}

int cg_entry_array(const struct cg_entry *entry, const char *key, int least,
                   int most, double low, double high, double *value)
{
    config_setting_t *setting = cg_entry_member(entry, key);
    if (setting == NULL)
        return 0;
    int length = length_of(setting);
    if (length < least || length > most) {
        char what[128];
        if (least == most)
            snprintf(what, sizeof what, "must be an array of %d numbers",
                     most);
        else
            snprintf(what, sizeof what,
                     "must be an array of %d to %d numbers", least, most);
        cg_entry_problem(entry, setting, key, what);
        return 0;
    }
    for (int i = 0; i < length; i++) {
        config_setting_t *element =
            config_setting_get_elem(setting, (unsigned)i);
        if (!cg_entry_number(entry, element, key, i + 1, low, high, &value[i]))
            return 0;
    }
    return length;
}

bool cg_entry_band(const struct cg_entry *entry, const char *key, double low,
                   double high, struct cg_band *band)
{
    double value[2];
    if (cg_entry_array(entry, key, 2, 2, low, high, value) == 0)
        return false;
    if (!(value[0] < value[1])) {
        cg_entry_problem(entry, config_setting_get_member(entry->group, key),
                         key, "the first must be below the second");
        return false;
    }
    *band = (struct cg_band){value[0], value[1]};
    return true;
}

int cg_entry_words(const struct cg_entry *entry, const char *key, int most,
                   char word[][CG_NAME_LENGTH])
{
    config_setting_t *setting = cg_entry_member(entry, key);
    if (setting == NULL)
        return 0;
    int length = length_of(setting);
    char trouble[CG_NAME_TROUBLE];
    snprintf(trouble, sizeof trouble,
             "must be an array of 1 to %d texts in quotes", most);
    bool good = length >= 1 && length <= most;
    for (int i = 0; good && i < length; i++) {
        const char *text =
            text_of(config_setting_get_elem(setting, (unsigned)i));
        good = text[0] != '\0' && cg_name_fits(text, trouble);
        if (good)
            strcpy(word[i], text);
    }
    if (!good)
        cg_entry_problem(entry, setting, key, trouble);
    return good ? length : 0;
}
