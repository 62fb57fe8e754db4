/* The line of a log that holds all the headings asked for. */
#include <string.h>

#include "log_reading.h"
#include "nearest.h"

/* Where the headings stand in the record; how many were found. */
static size_t match(struct cg_log_reading *reading,
                    const struct cg_csv_record *record, size_t *asked)
{
    size_t found = 0;
    *asked = 0;
    for (int q = 0; q < CG_LOGGED; q++) {
        const struct cg_log_column *column = &reading->column[q];
        if (column->unit == NULL)
            continue;
        size_t at = 0;
        while (at < record->cells &&
               strcmp(record->cell[at], column->heading) != 0)
            at++;
        reading->cell[q] = at;
        found += at < record->cells;
        *asked += 1;
    }
    return found;
}

/* The best line of headings so far, for what to say if none has them all. */
static void remember(struct cg_log_reading *reading,
                     const struct cg_csv_record *record, size_t found)
{
    const char *const *cells = (const char *const *)record->cell;
    if (found < reading->matched ||
        (found == reading->matched && reading->matched_line > 0))
        return;
    reading->matched = found;
    reading->matched_line = reading->line;
    for (int q = CG_LOGGED - 1; q >= 0; q--)
        if (reading->column[q].unit != NULL &&
            reading->cell[q] == record->cells)
            reading->missing = (enum cg_logged)q;
    const char *heading = reading->column[reading->missing].heading;
    snprintf(reading->near, sizeof reading->near, "%s",
             cells[cg_nearest(heading, cells, record->cells)]);
}

/* A heading that stands twice names no column. */
static void check_once(struct cg_log_reading *reading,
                       const struct cg_csv_record *record)
{
    for (int q = 0; q < CG_LOGGED; q++)
        for (size_t i = 0; reading->column[q].unit != NULL && i < record->cells;
             i++)
            if (i != reading->cell[q] &&
                strcmp(record->cell[i], reading->column[q].heading) == 0) {
                cg_log_problem(reading, reading->column[q].heading,
                               "stands twice in the line of headings, once is "
                               "allowed");
                return;
            }
}

void cg_log_look_for_headings(struct cg_log_reading *reading, const char *line)
{
    static const char separators[] = ",;\t ";
    line += strspn(line, "# ");
    for (const char *s = separators; *s != '\0' && !reading->headed; s++) {
        struct cg_csv_record record;
        size_t asked;
        snprintf(reading->copy, sizeof reading->copy, "%s", line);
        if (!cg_log_split(reading->copy, *s, &record))
            continue;
        size_t found = match(reading, &record, &asked);
        reading->headed = found == asked;
        if (!reading->headed) {
            remember(reading, &record, found);
            continue;
        }
        reading->separator = *s;
        reading->cells = record.cells;
        check_once(reading, &record);
    }
}

void cg_log_tell_no_headings(struct cg_log_reading *reading)
{
    const struct cg_log_column *column = &reading->column[reading->missing];
    char what[240];
    reading->line = reading->matched_line;
    if (reading->matched_line == 0)
        snprintf(what, sizeof what, "no line of headings");
    else if (cg_near(column->heading, reading->near))
        snprintf(what, sizeof what,
                 "no such heading for %.40s, the nearest is %.60s", column->key,
                 reading->near);
    else
        snprintf(what, sizeof what,
                 "no such heading for %.40s, a line with all of those that "
                 "duty.columns names is allowed",
                 column->key);
    cg_log_problem(reading, column->heading, what);
}
