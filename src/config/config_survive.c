/* The duties that margin.duties names. */
#include <string.h>

#include "config_parts.h"
#include "data_folder.h"
#include "outside.h"

/* The duty asked for, and those that are there already. */
static bool is_there(const struct cg_case *c, const char *name)
{
    bool there = strcmp(c->duty.name, name) == 0;
    for (int i = 0; i < c->survive.duties; i++)
        there = there || strcmp(c->survive.duty[i].name, name) == 0;
    return there;
}

/* A list of the user's own: the template's with the # taken away is none. */
static bool is_own_list(struct cg_reader *reader)
{
    return cg_origin_of(reader, "margin.duties")->given &&
           strcmp(reader->c->margin.duties,
                  cg_setting_find("margin.duties")->text) != 0;
}

/* No cold coolant is poured into an engine that air cools. */
#define AIR_DUTIES "settled cold_start_air lean_event"

static enum cg_status add(struct cg_reader *reader, const char *name,
                          const struct cg_data_names *names,
                          struct cg_error *error)
{
    struct cg_survive_case *survive = &reader->c->survive;
    char path[CG_PATH_LENGTH];
    if (is_there(reader->c, name))
        return CG_OK;
    if (!cg_duty_path(reader, name, names, path)) {
        cg_name_unknown(reader, "margin.duties", "unknown duty", name,
                        names->list, names->count);
        return CG_OK;
    }
    if (survive->duties == CG_DUTIES - 1) {
        cg_problem(reader->problems, cg_where_given(reader, "margin.duties"),
                   "margin.duties", "at most %d beside the duty asked for",
                   CG_DUTIES - 1);
        return CG_OK;
    }
    enum cg_status status =
        cg_duty_named(reader, name, path, &survive->duty[survive->duties], error);
    survive->duties += status == CG_OK;
    return status;
}

enum cg_status cg_survive_read(struct cg_reader *reader, struct cg_error *error)
{
    const char *words = reader->c->margin.duties;
    struct cg_data_names names;
    enum cg_status status = cg_data_list("duties", &names, error);
    reader->c->survive.duties = 0;
    reader->c->survive.named = is_own_list(reader);
    if (!reader->c->survive.named && cg_air_cooled(reader->c))
        strcpy(reader->c->margin.duties, AIR_DUTIES);
    words += strspn(words, " ");
    while (*words != '\0' && status == CG_OK) {
        size_t length = strcspn(words, " ");
        char name[CG_NAME_LENGTH];
        snprintf(name, sizeof name, "%.*s", (int)length, words);
        status = add(reader, name, &names, error);
        words += length;
        words += strspn(words, " ");
    }
    return status;
}
