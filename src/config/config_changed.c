#include "config_changed.h"

#include <string.h>

#include "config_parts.h"
#include "plain_text.h"
#include "setting_text.h"

/* A number or one of the table's own words fits NUMBER. */
enum { PATH = 256, INDENT = 4, NUMBER = 80 };

static void indent(FILE *out, int depth)
{
    fprintf(out, "%*s", depth * INDENT, "");
}

/* A text as a config writes it: quotes, and what libconfig reads with a
 * backslash. */
static void put_letters(FILE *out, const char *text, size_t length)
{
    fputc('"', out);
    for (size_t i = 0; i < length; i++) {
        unsigned char byte = (unsigned char)text[i];
        if (byte == '"' || byte == '\\')
            fprintf(out, "\\%c", byte);
        else if (byte < 0x20 || byte == 0x7f)
            fprintf(out, "\\x%02x", byte);
        else
            fputc(byte, out);
    }
    fputc('"', out);
}

static void put_text(FILE *out, const char *text)
{
    put_letters(out, text, strlen(text));
}

/* Words parted by blanks, as a list. */
static void put_words(FILE *out, const char *words)
{
    const char *before = "";
    fputc('[', out);
    for (words += strspn(words, " "); *words != '\0';
         words += strspn(words, " ")) {
        size_t length = strcspn(words, " ");
        fputs(before, out);
        put_letters(out, words, length);
        before = ", ";
        words += length;
    }
    fputc(']', out);
}

/* The value of a setting that is changed: texts are data. */
static void put_changed(FILE *out, const struct cg_config_change *change)
{
    const struct cg_setting *setting = change->setting;
    const char *text = (const char *)change->c + setting->offset;
    char number[NUMBER];
    if (setting->kind == CG_NAME)
        put_text(out, text);
    else if (setting->kind == CG_WORDS)
        put_words(out, text);
    else {
        cg_setting_value_text(setting, change->c, false, number, sizeof number);
        fputs(number, out);
    }
}

/* Always with a point or an exponent, so that it stays what it is. */
static void put_float(FILE *out, double value)
{
    char text[40];
    snprintf(text, sizeof text, "%.15g", value);
    fprintf(out, "%s%s", text, strpbrk(text, ".e") == NULL ? ".0" : "");
}

static void put_members(FILE *out, const config_setting_t *setting, int depth);

static void put_list(FILE *out, const config_setting_t *setting, int depth);

static void put_value(FILE *out, const config_setting_t *setting, int depth)
{
    switch (config_setting_type(setting)) {
    case CONFIG_TYPE_INT:
        fprintf(out, "%d", config_setting_get_int(setting));
        break;
    case CONFIG_TYPE_INT64:
        fprintf(out, "%lldL", config_setting_get_int64(setting));
        break;
    case CONFIG_TYPE_FLOAT:
        put_float(out, config_setting_get_float(setting));
        break;
    case CONFIG_TYPE_STRING:
        put_text(out, config_setting_get_string(setting));
        break;
    case CONFIG_TYPE_BOOL:
        fputs(config_setting_get_bool(setting) ? "true" : "false", out);
        break;
    case CONFIG_TYPE_GROUP:
        fputs("{\n", out);
        put_members(out, setting, depth + 1);
        indent(out, depth);
        fputc('}', out);
        break;
    default:
        put_list(out, setting, depth);
        break;
    }
}

static void put_list(FILE *out, const config_setting_t *setting, int depth)
{
    bool array = config_setting_is_array(setting);
    int count = config_setting_length(setting);
    fputs(array ? "[" : "(", out);
    for (int i = 0; i < count; i++) {
        fputs(i > 0 ? ", " : " ", out);
        put_value(out, config_setting_get_elem(setting, (unsigned)i),
                  depth + 1);
    }
    fputs(array ? " ]" : " )", out);
}

/* A changed one carries its change. */
static void put_member(FILE *out, const config_setting_t *setting, int depth)
{
    const struct cg_config_change *change = config_setting_get_hook(setting);
    indent(out, depth);
    fprintf(out, "%s = ", config_setting_name(setting));
    if (change != NULL) {
        put_changed(out, change);
        fprintf(out, "; # %s\n", cg_plain(change->comment).text);
    } else {
        put_value(out, setting, depth);
        fputs(";\n", out);
    }
}

/* Groups nest as deep as the bounds of a config allow (config_scan.h). */
static void put_members(FILE *out, const config_setting_t *setting, int depth)
{
    int count = config_setting_length(setting);
    for (int i = 0; i < count; i++)
        put_member(out, config_setting_get_elem(setting, (unsigned)i), depth);
}

/* The group a setting stands in, made where it is missing; NULL: no memory. */
static config_setting_t *group_of(config_setting_t *root, const char *path)
{
    config_setting_t *group = root;
    for (size_t length; path[length = strcspn(path, ".")] == '.';
         path += length + 1) {
        char name[CG_NAME_LENGTH];
        snprintf(name, sizeof name, "%.*s", (int)length, path);
        config_setting_t *next = config_setting_get_member(group, name);
        if (next == NULL)
            next = config_setting_add(group, name, CONFIG_TYPE_GROUP);
        if (next == NULL || !config_setting_is_group(next))
            return NULL;
        group = next;
    }
    return group;
}

/* Whether a member of the group that `setting` stands in is that setting, in
 * whatever unit. */
static bool is_setting(const config_setting_t *member,
                       const struct cg_setting *setting)
{
    char path[PATH];
    struct cg_key key;
    const char *dot = strrchr(setting->path, '.');
    snprintf(path, sizeof path, "%.*s.%s", (int)(dot - setting->path),
             setting->path, config_setting_name(member));
    return cg_key_find(path, &key, NULL, 0) && key.setting == setting;
}

/* Another duty takes the place of the config's own segments or log. */
static void drop_own_duty(config_setting_t *root,
                          const struct cg_config_change *change)
{
    static const char *const own[] = {"segments", "log", "columns"};
    config_setting_t *duty = config_setting_get_member(root, "duty");
    const char *name = "own";
    if (duty == NULL || strcmp(change->setting->path, "duty.name") != 0)
        return;
    (void)config_setting_lookup_string(duty, "name", &name);
    for (size_t i = 0; i < sizeof own / sizeof own[0]; i++)
        if (strcmp(name, change->c->duty.name) != 0)
            (void)config_setting_remove(duty, own[i]);
}

static bool change_one(config_setting_t *root,
                       const struct cg_config_change *change)
{
    char name[PATH];
    drop_own_duty(root, change);
    config_setting_t *group = group_of(root, change->setting->path);
    for (int i = group != NULL ? config_setting_length(group) : 0; i-- > 0;)
        if (is_setting(config_setting_get_elem(group, (unsigned)i),
                       change->setting))
            config_setting_remove_elem(group, (unsigned)i);
    cg_key_write(change->setting, NULL, false, name, sizeof name);
    config_setting_t *made =
        group != NULL ? config_setting_add(group, name, CONFIG_TYPE_INT) : NULL;
    if (made != NULL)
        config_setting_set_hook(made, (void *)change);
    return made != NULL;
}

/* What was found in the old engine is not of the new one. */
static bool drop(config_setting_t *root, const char *name)
{
    return config_setting_remove(root, name) == CONFIG_TRUE;
}

static enum cg_status write_from(FILE *out, const struct cg_config_file *file,
                                 const struct cg_config_change *change,
                                 size_t changes, bool *left_out,
                                 struct cg_error *error)
{
    config_setting_t *root = config_root_setting(&file->config);
    bool list = drop(root, "evidence"), notebook = drop(root, CG_NOTEBOOK_KEY);
    *left_out = list || notebook;
    for (size_t i = 0; i < changes; i++)
        if (!change_one(root, &change[i]))
            return cg_error_set(error, CG_NO_MEMORY, "%s: out of memory",
                                file->path);
    fprintf(out,
            "# %s, changed by coldgap; a line so changed says what it was.\n",
            cg_plain(file->path).text);
    if (*left_out)
        fputs("# What was found in that engine is left out: this is another "
              "one.  A notebook\n# (evidence_from) can name it as a build.\n",
              out);
    fputc('\n', out);
    put_members(out, root, 0);
    return CG_OK;
}

enum cg_status cg_config_changed_write(FILE *out, const char *from,
                                       const struct cg_config_change *change,
                                       size_t changes, bool *left_out,
                                       struct cg_error *error)
{
    struct cg_problems problems = {0};
    struct cg_config_file file;
    enum cg_status status = cg_config_file_open(&file, from, &problems, error);
    if (status == CG_OK && problems.count > 0)
        status = cg_error_set(error, CG_BAD_INPUT, "%.500s", problems.line[0]);
    if (status == CG_OK)
        status = write_from(out, &file, change, changes, left_out, error);
    cg_config_file_close(&file);
    return status;
}
