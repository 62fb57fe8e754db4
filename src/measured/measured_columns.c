#include "measured_columns.h"

#include <ctype.h>
#include <string.h>

#include "nearest.h"

enum { MOST_NAMES = 32, LIST_LENGTH = 160 };

static const struct {
    const char *name;
    enum cg_dimension dimension;
} quantities[CG_MEASURED_QUANTITIES] = {
    [CG_MEASURED_CYLINDER] = {"cylinder", CG_PLAIN},
    [CG_MEASURED_BORE] = {"bore", CG_LENGTH},
    [CG_MEASURED_TOP_GAP] = {"top_gap", CG_LENGTH},
    [CG_MEASURED_SECOND_GAP] = {"second_gap", CG_LENGTH},
    [CG_MEASURED_IN] = {"measured_in", CG_PLAIN},
};

/* Every way to write a column; returns how many. */
static size_t list_columns(struct cg_measured_column all[MOST_NAMES])
{
    size_t units, kept = 0;
    const struct cg_unit *unit = cg_units(&units);
    for (int q = 0; q < CG_MEASURED_QUANTITIES; q++)
        for (size_t u = 0; u < units && kept < MOST_NAMES; u++) {
            struct cg_measured_column *column = &all[kept];
            if (unit[u].dimension != quantities[q].dimension)
                continue;
            column->quantity = (enum cg_quantity)q;
            column->unit = &unit[u];
            snprintf(column->name, sizeof column->name, "%s%s%s",
                     quantities[q].name, unit[u].suffix[0] != '\0' ? "_" : "",
                     unit[u].suffix);
            kept++;
        }
    return kept;
}

/* All names of one quantity, or of all of them. */
static void list_names(const struct cg_measured_column *all, size_t count,
                       enum cg_quantity quantity, char list[LIST_LENGTH])
{
    size_t used = 0;
    list[0] = '\0';
    for (size_t i = 0; i < count && used < LIST_LENGTH; i++)
        if (all[i].quantity == quantity)
            used += (size_t)snprintf(list + used, LIST_LENGTH - used, "%s%s",
                                     used > 0 ? ", " : "", all[i].name);
}

/* Finds a column by its written name; one without name is no column. */
static bool find_column(const char *name, struct cg_where where,
                        struct cg_measured_column *column,
                        struct cg_problems *problems)
{
    struct cg_measured_column all[MOST_NAMES];
    const char *names[MOST_NAMES];
    char list[LIST_LENGTH];
    size_t count = list_columns(all);
    *column = (struct cg_measured_column){.quantity = CG_MEASURED_NOTHING};
    if (name[0] == '\0')
        return true;
    for (size_t i = 0; i < count; i++) {
        names[i] = all[i].name;
        if (strcmp(name, all[i].name) == 0) {
            *column = all[i];
            return true;
        }
    }
    for (int q = 0; q < CG_MEASURED_QUANTITIES; q++)
        if (strcmp(name, quantities[q].name) == 0) {
            list_names(all, count, (enum cg_quantity)q, list);
            cg_problem(problems, where, name, "has no unit, allowed: %s", list);
            return false;
        }
    char shown[CG_COLUMN_LENGTH], hint[CG_PROBLEM_LENGTH / 2];
    snprintf(shown, sizeof shown, "%s", name);
    cg_nearest_hint(name, names, count, hint, sizeof hint);
    cg_problem(problems, where, shown, "unknown column, %s", hint);
    return false;
}

static void need(const struct cg_measured_columns *columns,
                 enum cg_quantity quantity, struct cg_where where,
                 struct cg_problems *problems)
{
    struct cg_measured_column all[MOST_NAMES];
    char list[LIST_LENGTH];
    if (columns->given[quantity])
        return;
    list_names(all, list_columns(all), quantity, list);
    cg_problem(problems, where, quantities[quantity].name,
               "no such column, allowed: %s", list);
}

bool cg_measured_header(const struct cg_csv_record *header,
                        struct cg_where where,
                        struct cg_measured_columns *columns,
                        struct cg_problems *problems)
{
    size_t before = problems->count;
    *columns = (struct cg_measured_columns){.count = header->cells};
    if (isdigit((unsigned char)header->cell[0][0])) {
        cg_problem(problems, where, NULL,
                   "a number, the first line must name the columns");
        return false;
    }
    for (size_t i = 0; i < header->cells; i++) {
        struct cg_measured_column *column = &columns->column[i];
        if (!find_column(header->cell[i], where, column, problems) ||
            column->quantity == CG_MEASURED_NOTHING)
            continue;
        if (columns->given[column->quantity])
            cg_problem(problems, where, column->name,
                       "given twice, one column of %s is allowed",
                       quantities[column->quantity].name);
        columns->given[column->quantity] = true;
    }
    if (problems->count > before)
        return false; /* a column missing may be one misspelt */
    need(columns, CG_MEASURED_CYLINDER, where, problems);
    need(columns, CG_MEASURED_BORE, where, problems);
    if (!columns->given[CG_MEASURED_SECOND_GAP])
        need(columns, CG_MEASURED_TOP_GAP, where, problems);
    return problems->count == before;
}
