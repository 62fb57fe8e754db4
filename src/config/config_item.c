/* One group in a list of groups: `uncertainty.correlations`, `evidence`,
 * `builds` of a notebook. */
#include <stdarg.h>
#include <string.h>

#include "config_parts.h"
#include "nearest.h"

void cg_item_problem(const struct cg_item *item,
                     const config_setting_t *setting, const char *key,
                     const char *format, ...)
{
    char path[160], text[CG_PROBLEM_LENGTH / 2];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    snprintf(path, sizeof path, "%s%s%.60s", item->path,
             key[0] != '\0' ? "." : "", key);
    cg_problem(item->reader->problems,
               cg_config_where(&item->reader->file,
                               setting != NULL ? setting : item->group),
               path, "%s", text);
}

bool cg_item_number(const struct cg_item *item, const config_setting_t *setting,
                    const struct cg_unit *unit, double low, double high,
                    double *si)
{
    const char *key = config_setting_name(setting);
    struct cg_value value = cg_value_of(setting);
    double found = cg_unit_to_si(unit, value.number);
    if (value.kind != CG_VALUE_NUMBER)
        cg_item_problem(item, setting, key, "must be a number (got %s)",
                        value.what);
    else if (!(found >= low && found <= high))
        cg_item_problem(
            item, setting, key, "must be %.6g to %.6g%s%s (got %.6g)",
            cg_unit_from_si(unit, low), cg_unit_from_si(unit, high),
            unit->suffix[0] != '\0' ? " " : "", unit->suffix, value.number);
    else
        *si = found;
    return value.kind == CG_VALUE_NUMBER && found >= low && found <= high;
}

const char *cg_item_text(const struct cg_item *item,
                         const config_setting_t *setting)
{
    struct cg_value value = cg_value_of(setting);
    if (value.kind == CG_VALUE_TEXT)
        return value.text;
    cg_item_problem(item, setting, config_setting_name(setting),
                    "must be text in quotes (got %s)", value.what);
    return NULL;
}

void cg_item_unknown_key(const struct cg_item *item,
                         const config_setting_t *setting,
                         const char *const *keys, size_t count)
{
    const char *key = config_setting_name(setting);
    char hint[CG_PROBLEM_LENGTH / 2];
    cg_nearest_hint(key, keys, count, hint, sizeof hint);
    cg_item_problem(item, setting, key, "unknown setting, %s", hint);
}

void cg_items_read(struct cg_reader *reader, const char *path, int most,
                   void (*read)(struct cg_item *item, void *context),
                   void *context)
{
    const config_setting_t *list = config_lookup(&reader->file.config, path);
    if (list != NULL)
        cg_items_in(reader, list, path, most, read, context);
}

void cg_items_in(struct cg_reader *reader, const config_setting_t *list,
                 const char *path, int most,
                 void (*read)(struct cg_item *item, void *context),
                 void *context)
{
    int count = config_setting_is_list(list) ? config_setting_length(list) : -1;
    if (count < 0 || count > most) {
        cg_problem(reader->problems, cg_config_where(&reader->file, list), path,
                   "must be a list ( { }, ... ) of at most %d groups "
                   "(got %s)",
                   most, count > most ? "more" : cg_value_of(list).what);
        return;
    }
    for (int i = 0; i < count; i++) {
        struct cg_item item = {
            reader, config_setting_get_elem(list, (unsigned)i), "", i};
        snprintf(item.path, sizeof item.path, "%s[%d]", path, i);
        if (config_setting_is_group(item.group))
            read(&item, context);
        else
            cg_item_problem(&item, NULL, "", "must be a group { } (got %s)",
                            cg_value_of(item.group).what);
    }
}
