/* uncertainty.correlations: which uncertain inputs go together.
 *   ( { a = "heat_factor"; b = "film"; r = 0.4; }, ... ) */
#include <math.h>
#include <string.h>

#include "config_parts.h"
#include "input_law.h"
#include "nearest.h"
#include "uncertain.h"

enum { PAIRS = CG_INPUTS * (CG_INPUTS - 1) / 2 };

static const char *const keys[] = {"a", "b", "r"};

/* Row of the input named; CG_INPUTS after trouble. */
static size_t read_input(const struct cg_item *item, const char *key)
{
    const config_setting_t *setting =
        config_setting_get_member(item->group, key);
    if (setting == NULL) {
        cg_item_problem(item, NULL, key,
                        "missing, the name of an uncertain input");
        return CG_INPUTS;
    }
    const char *name = cg_item_text(item, setting), *names[CG_INPUTS];
    if (name == NULL)
        return CG_INPUTS;
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        names[i] = inputs[i].name;
        if (strcmp(name, names[i]) == 0)
            return i;
    }
    char list[CG_PROBLEM_LENGTH / 2];
    cg_nearest_list(name, names, count, list, sizeof list);
    cg_item_problem(item, setting, key, "unknown input \"%.40s\", allowed: %s",
                    name, list);
    return CG_INPUTS;
}

static double read_r(const struct cg_item *item)
{
    const config_setting_t *setting =
        config_setting_get_member(item->group, "r");
    double r = NAN;
    if (setting == NULL)
        cg_item_problem(item, NULL, "r",
                        "missing, a correlation between -1 and 1");
    else if (cg_item_number(item, setting, cg_unit_find(CG_PLAIN, ""), -1.0,
                            1.0, &r) &&
             fabs(r) == 1.0) {
        cg_item_problem(item, setting, "r",
                        "must be between -1 and 1, both excluded (got %g)", r);
        r = NAN;
    }
    return r;
}

/* `context`: which pairs were given already. */
static void read_pair(struct cg_item *item, void *context)
{
    bool(*given)[CG_INPUTS] = context;
    for (int i = 0; i < config_setting_length(item->group); i++) {
        const config_setting_t *setting =
            config_setting_get_elem(item->group, (unsigned)i);
        const char *key = config_setting_name(setting);
        if (strcmp(key, "a") != 0 && strcmp(key, "b") != 0 &&
            strcmp(key, "r") != 0)
            cg_item_unknown_key(item, setting, keys, 3);
    }
    size_t a = read_input(item, "a"), b = read_input(item, "b");
    double r = read_r(item);
    if (a == CG_INPUTS || b == CG_INPUTS || isnan(r))
        return;
    if (a == b)
        cg_item_problem(item, NULL, "b",
                        "the same input as a, another is "
                        "allowed");
    else if (given[a][b])
        cg_item_problem(item, NULL, "",
                        "this pair stands twice, one is allowed");
    else
        cg_input_correlate(item->reader->c, a, b, r);
    given[a][b] = given[b][a] = true;
}

void cg_correlations_read(struct cg_reader *reader)
{
    size_t before = reader->problems->count, inputs, row[CG_INPUTS];
    bool given[CG_INPUTS][CG_INPUTS] = {{false}};
    cg_items_read(reader, "uncertainty.correlations", PAIRS, read_pair, given);
    if (reader->problems->count > before)
        return;
    struct cg_input_law law;
    struct cg_error trouble = {CG_OK, ""};
    (void)cg_uncertains(&inputs);
    for (size_t i = 0; i < inputs; i++)
        row[i] = i;
    if (cg_input_law_fill(reader->c, row, inputs, &law, &trouble) != CG_OK)
        cg_problem(reader->problems,
                   cg_config_where(&reader->file,
                                   config_lookup(&reader->file.config,
                                                 "uncertainty.correlations")),
                   "uncertainty.correlations", "%s; weaken or drop one",
                   trouble.text);
}
