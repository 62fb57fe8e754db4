#include "config_named.h"

#include <string.h>

#include "config_parts.h"

/* A duty that is none of the shipped ones, in a file beside the config. */
static bool is_file(const struct cg_reader *reader, const char *name,
                    const struct cg_data_names *shipped)
{
    char path[CG_PATH_LENGTH];
    for (size_t i = 0; i < shipped->count; i++)
        if (strcmp(shipped->name[i], name) == 0)
            return false;
    return cg_duty_path(reader, name, shipped, path);
}

static bool any_is_file(const struct cg_reader *reader, const char *words,
                        const struct cg_data_names *shipped)
{
    bool any = false;
    for (words += strspn(words, " "); *words != '\0' && !any;
         words += strspn(words, " ")) {
        char name[CG_NAME_LENGTH];
        size_t length = strcspn(words, " ");
        snprintf(name, sizeof name, "%.*s", (int)length, words);
        any = is_file(reader, name, shipped);
        words += length;
    }
    return any;
}

static const char *find(const struct cg_reader *reader, const struct cg_case *c,
                        const struct cg_data_names *shipped)
{
    /* of another duty than the config's own the log is left out */
    if (c->duty.course != NULL &&
        config_lookup(&reader->file.config, "duty.log") != NULL)
        return "duty.log";
    if (is_file(reader, c->duty.name, shipped))
        return "duty.name";
    return any_is_file(reader, c->margin.duties, shipped) ? "margin.duties"
                                                          : NULL;
}

enum cg_status cg_config_names_file(const char *path, const struct cg_case *c,
                                    const char **key, struct cg_error *error)
{
    struct cg_problems problems = {0};
    struct cg_reader reader = {.problems = &problems};
    struct cg_data_names shipped;
    enum cg_status status = cg_data_list("duties", &shipped, error);
    if (status != CG_OK)
        return status;
    status = cg_config_file_open(&reader.file, path, &problems, error);
    if (status == CG_OK)
        *key = find(&reader, c, &shipped);
    cg_config_file_close(&reader.file);
    return status;
}
