/* One build of a notebook: its keys. */
#include "config_build.h"

#include <string.h>

static const char *const keys[] = {"engine", "set", "date", "found"};

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

bool cg_path_in(const struct cg_config_file *file, const char *name,
                char path[CG_PATH_LENGTH])
{
    bool here = strcmp(file->folder, ".") == 0;
    int length = snprintf(path, CG_PATH_LENGTH, "%s%s%s",
                          here ? "" : file->folder, here ? "" : "/", name);
    return length < CG_PATH_LENGTH;
}

/* Year, month and day: "2026-03-14". */
static bool is_date(const char *text)
{
    static const char like[] = "0000-00-00";
    if (strlen(text) != strlen(like))
        return false;
    for (size_t i = 0; like[i] != '\0'; i++)
        if (like[i] == '-' ? text[i] != '-' : text[i] < '0' || text[i] > '9')
            return false;
    return true;
}

static void read_date(struct cg_build *build, const config_setting_t *setting)
{
    const char *text = cg_item_text(build->item, setting);
    if (text != NULL && is_date(text))
        memcpy(build->date, text, sizeof build->date - 1);
    else if (text != NULL)
        cg_item_problem(build->item, setting, "date",
                        "must be year, month and day as in \"2026-03-14\"");
}

static void read_engine(struct cg_build *build, const config_setting_t *setting)
{
    build->engine = cg_item_text(build->item, setting);
    if (build->engine != NULL &&
        (build->engine[0] == '\0' ||
         !cg_path_in(&build->item->reader->file, build->engine, build->path))) {
        cg_item_problem(build->item, setting, "engine",
                        "must be the name of a config, from the notebook's "
                        "own folder");
        build->engine = NULL;
    }
}

static void read_set(struct cg_build *build, const config_setting_t *setting)
{
    bool texts =
        config_setting_is_list(setting) || config_setting_is_array(setting);
    for (int i = 0; texts && i < config_setting_length(setting); i++)
        texts = config_setting_type(config_setting_get_elem(
                    setting, (unsigned)i)) == CONFIG_TYPE_STRING;
    if (texts)
        build->set = setting;
    else
        cg_item_problem(build->item, setting, "set",
                        "must be a list of texts ( \"PATH=VALUE\", ... )");
}

static void read_key(struct cg_build *build, const config_setting_t *setting)
{
    const char *key = config_setting_name(setting);
    if (strcmp(key, "engine") == 0)
        read_engine(build, setting);
    else if (strcmp(key, "set") == 0)
        read_set(build, setting);
    else if (strcmp(key, "date") == 0)
        read_date(build, setting);
    else if (strcmp(key, "found") == 0)
        build->found = setting;
    else
        cg_item_unknown_key(build->item, setting, keys, COUNT(keys));
}

bool cg_build_keys_read(const struct cg_item *item, struct cg_build *build)
{
    size_t before = item->reader->problems->count;
    memset(build, 0, sizeof *build);
    build->item = item;
    for (int i = 0; i < config_setting_length(item->group); i++)
        read_key(build, config_setting_get_elem(item->group, (unsigned)i));
    if (build->found == NULL)
        cg_item_problem(item, NULL, "found",
                        "missing, a list of what was found");
    if (build->engine == NULL && build->set == NULL &&
        item->reader->problems->count == before)
        cg_item_problem(item, NULL, "engine",
                        "missing, a config or set = ( \"PATH=VALUE\", ... )");
    return item->reader->problems->count == before;
}
