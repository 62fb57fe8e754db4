/* The config as it stands on the page, to be kept as a file. */
#include <stdio.h>
#include <string.h>

#include "config.h"
#include "config_changed.h"
#include "page_commands.h"
#include "setting_key.h"

/* Each setting once, whatever was said of it before: the case has its last. */
static size_t list(const struct cg_options *options, const struct cg_case *c,
                   struct cg_config_change *change)
{
    size_t count = 0;
    for (size_t i = 0; i < options->sets; i++) {
        char path[CG_CHANGED_TEXT];
        struct cg_key key;
        size_t length = strcspn(options->set[i], "="), k = 0;
        snprintf(path, sizeof path, "%.*s", (int)length, options->set[i]);
        if (!cg_key_find(path, &key, NULL, 0))
            continue;
        while (k < count && change[k].setting != key.setting)
            k++;
        change[k].setting = key.setting;
        change[k].c = c;
        snprintf(change[k].comment, sizeof change[k].comment, "by the page");
        count += k == count;
    }
    return count;
}

enum cg_status cg_page_keep(const struct cg_options *options,
                            struct cg_error *error)
{
    static struct cg_config_change change[CG_OPTION_REPEATS];
    struct cg_case c = {.courses = NULL};
    bool left_out;
    enum cg_status status =
        cg_config_read(options->config, options->set, options->sets, &c, error);
    if (status != CG_OK)
        return status;
    size_t count = list(options, &c, change);
    status = cg_config_changed_write(stdout, options->config, change, count,
                                     &left_out, error);
    cg_case_free(&c);
    return status;
}
