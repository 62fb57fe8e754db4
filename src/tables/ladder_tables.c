#include "ladder_tables.h"

#include <stdio.h>
#include <string.h>

#include "ladder_text.h"
#include "table.h"

enum { WORDS = 512 };

/* All that is changed for a part, as one word: "a=1,b=2"; "-": nothing. */
static void write_changes(const struct cg_ladder *ladder,
                          enum cg_ladder_part part, char words[WORDS])
{
    size_t used = 0;
    strcpy(words, "-");
    for (size_t i = 0; i < ladder->changes; i++) {
        const struct cg_ladder_change *change = &ladder->change[i];
        if (change->part == part && used < WORDS - 1)
            used += (size_t)snprintf(
                words + used, WORDS - used, "%s%s=%s", used > 0 ? "," : "",
                cg_ladder_key(change, false).text,
                cg_table_word(cg_ladder_value(change, true, false).text).text);
    }
}

static enum cg_status write_parts(const char *dir, const struct cg_table_of *of,
                                  const struct cg_ladder *ladder,
                                  struct cg_error *error)
{
    struct cg_table_head head = {
        "What stops at which boost, and what to change", of,
        "part  stops_kPa  stops_high_kPa  holds_to_kPa  change  "
        "holds_high_kPa",
        "stops: no longer fits; high: no longer stands; holds: the same with "
        "all changes; nan: not up to the highest boost looked at"};
    enum cg_ladder_part order[CG_LADDER_PARTS];
    char words[WORDS];
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "ladder.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "target %.7g kPa; %.7g kPa is the highest looked at",
                  ladder->target / 1e3, ladder->end / 1e3);
    cg_ladder_order(&ladder->before, order);
    for (int i = 0; i < CG_LADDER_PARTS; i++) {
        if (!cg_ladder_has(ladder, order[i]))
            continue;
        const struct cg_ladder_stop *was = &ladder->before.stop[order[i]];
        const struct cg_ladder_stop *now = &ladder->after.stop[order[i]];
        write_changes(ladder, order[i], words);
        cg_table_line(table, "%s %.7g %.7g %.7g %s %.7g",
                      cg_ladder_word(order[i]), was->fits / 1e3,
                      was->stands / 1e3, now->fits / 1e3, words,
                      now->stands / 1e3);
    }
    return cg_table_close(table, CG_OK, error);
}

static void write_climb(struct cg_table *table, const char *name,
                        const struct cg_ladder_climb *climb)
{
    cg_table_block(table, "%s", name);
    for (size_t i = 0; i < climb->points; i++) {
        const struct cg_ladder_point *at = &climb->point[i];
        double values[] = {at->boost / 1e3, at->need * 1e3, at->file_to * 1e3,
                           at->rule * 1e3};
        cg_table_row(table, values, sizeof values / sizeof values[0]);
    }
}

static enum cg_status write_boosts(const char *dir,
                                   const struct cg_table_of *of,
                                   const struct cg_ladder *ladder,
                                   struct cg_error *error)
{
    struct cg_table_head head = {
        "The top gap over boost, before and after the changes", of,
        "boost_kPa  needed_mm  file_to_mm  rule_mm  block",
        "needed, file to: unrounded; rule: the shop rule"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "ladder_boost.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    write_climb(table, "before", &ladder->before);
    write_climb(table, "after", &ladder->after);
    return cg_table_close(table, CG_OK, error);
}

enum cg_status cg_ladder_tables_write(const char *dir,
                                      const struct cg_table_of *of,
                                      const struct cg_ladder *ladder,
                                      struct cg_error *error)
{
    enum cg_status status = write_parts(dir, of, ladder, error);
    return status == CG_OK ? write_boosts(dir, of, ladder, error) : status;
}
