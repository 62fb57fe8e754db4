#include "log_rows.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "log_reading.h"

enum { HEADINGS_BY = 1000 }; /* lines that may stand before the headings */

/* The share of lines that may repeat a time with other values and are left
 * out: a logger that stumbles, and not one whose times are too coarse (common
 * practice, no source). */
#define MOST_REPEATED 0.05

static enum cg_status add_row(struct cg_log_reading *reading,
                              const struct cg_log_row *row,
                              struct cg_error *error)
{
    struct cg_log_rows *rows = reading->rows;
    if (rows->rows == rows->allocated) {
        size_t wanted = 2 * rows->allocated + 64;
        void *grown = realloc(rows->row, wanted * sizeof *rows->row);
        if (grown == NULL)
            return cg_error_set(error, CG_NO_MEMORY, "out of memory");
        rows->row = grown;
        rows->allocated = wanted;
    }
    rows->row[rows->rows++] = *row;
    return CG_OK;
}

/* Units below the headings are words: not one number where numbers belong. */
static bool is_units(const struct cg_log_reading *reading,
                     const struct cg_csv_record *record)
{
    double value;
    char sign;
    for (int q = 0; q < CG_LOGGED; q++)
        if (reading->column[q].unit != NULL &&
            reading->cell[q] < record->cells &&
            cg_csv_number(record->cell[reading->cell[q]], reading->separator,
                          &value, &sign) == NULL)
            return false;
    return reading->rows->rows == 0;
}

/* Counts a row of a time that had one. */
static void repeat(struct cg_log_reading *reading, const struct cg_log_row *row)
{
    struct cg_log_rows *rows = reading->rows;
    const struct cg_log_row *kept = &rows->row[rows->rows - 1];
    bool same = true;
    for (int q = 0; q < CG_LOGGED; q++)
        same = same && (row->value[q] == kept->value[q] ||
                        (isnan(row->value[q]) && isnan(kept->value[q])));
    rows->repeated++;
    if (!same && reading->other++ == 0)
        reading->other_line = reading->line;
}

/* Whether the row's time goes on from the row before; trouble is told. */
static bool goes_on(struct cg_log_reading *reading,
                    const struct cg_log_row *row)
{
    struct cg_log_rows *rows = reading->rows;
    const struct cg_log_column *column = &reading->column[CG_LOGGED_TIME];
    double time = row->value[CG_LOGGED_TIME];
    char what[160];
    if (isnan(time))
        return false;
    if (rows->rows == 0)
        return true;
    double before = rows->row[rows->rows - 1].value[CG_LOGGED_TIME];
    if (time == before)
        repeat(reading, row);
    if (!(time < before))
        return time > before;
    snprintf(what, sizeof what,
             "goes back, from %.10g to %.10g; times must rise",
             cg_unit_from_si(column->unit, before),
             cg_unit_from_si(column->unit, time));
    cg_log_problem(reading, column->heading, what);
    return false;
}

static enum cg_status take_cells(struct cg_log_reading *reading,
                                 const struct cg_csv_record *record,
                                 struct cg_error *error)
{
    struct cg_log_row row = {.line = reading->line};
    if (is_units(reading, record)) {
        if (reading->units)
            cg_log_problem(
                reading, NULL,
                "no number in this line; one line of units below the "
                "headings is allowed");
        reading->units = true;
        return CG_OK;
    }
    if (record->cells != reading->cells) {
        char what[160];
        snprintf(what, sizeof what, "%zu cells, the line of headings has %zu%s",
                 record->cells, reading->cells,
                 cg_csv_too_many(record, reading->cells, reading->separator));
        cg_log_problem(reading, NULL, what);
        return CG_OK;
    }
    size_t before = reading->problems->count;
    for (int q = 0; q < CG_LOGGED; q++)
        row.value[q] =
            reading->column[q].unit != NULL
                ? cg_log_value(reading, q, record->cell[reading->cell[q]])
                : NAN;
    if (isnan(row.value[CG_LOGGED_TIME]) && reading->problems->count == before)
        cg_log_problem(reading, reading->column[CG_LOGGED_TIME].heading,
                       "no time, every line must have one");
    if (!goes_on(reading, &row))
        return CG_OK;
    return add_row(reading, &row, error);
}

/* Whether a line goes on after a carriage return: what follows would be lost.
 * Those at its very end are cut off. */
static bool has_return(char *line)
{
    size_t length = strlen(line);
    while (length > 0 && line[length - 1] == '\r')
        line[--length] = '\0';
    return strchr(line, '\r') != NULL;
}

static enum cg_status take_line(void *context, char *line, size_t number,
                                struct cg_error *error)
{
    struct cg_log_reading *reading = context;
    struct cg_csv_record record;
    reading->line = number;
    if (number == 1 && strncmp(line, "\xEF\xBB\xBF", 3) == 0)
        line += 3; /* a byte order mark */
    if (line[strspn(line, " \t\r")] == '\0')
        return CG_OK;
    if (has_return(line)) {
        cg_log_problem(
            reading, NULL,
            "a carriage return inside the line; lines that end with LF or "
            "CR LF are allowed, not with CR alone");
        return CG_OK;
    }
    if (!reading->headed) {
        if (number <= HEADINGS_BY)
            cg_log_look_for_headings(reading, line);
        return CG_OK;
    }
    if (line[strspn(line, " \t")] == '#')
        return CG_OK;
    if (cg_log_split(line, reading->separator, &record))
        return take_cells(reading, &record, error);
    if (record.trouble != NULL)
        cg_log_problem(reading, NULL, record.trouble);
    return CG_OK;
}

/* Lines left out are some, not a share of the run. */
static void check_repeated(struct cg_log_reading *reading)
{
    size_t lines = reading->rows->rows + reading->rows->repeated;
    char what[200];
    if (!((double)reading->other > MOST_REPEATED * (double)lines))
        return;
    snprintf(what, sizeof what,
             "the time of the line before again, with other values, in %zu of "
             "%zu lines; %.0f %% of them are allowed, times need their "
             "decimals",
             reading->other, lines, 100.0 * MOST_REPEATED);
    reading->line = reading->other_line;
    cg_log_problem(reading, reading->column[CG_LOGGED_TIME].heading, what);
}

enum cg_status cg_log_rows_read(const char *path, const struct cg_case *c,
                                const struct cg_log_column column[CG_LOGGED],
                                struct cg_log_rows *rows,
                                struct cg_problems *problems,
                                struct cg_error *error)
{
    *rows = (struct cg_log_rows){.rows = 0};
    struct cg_log_reading *reading = calloc(1, sizeof *reading);
    if (reading == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    reading->path = path;
    reading->c = c;
    reading->column = column;
    reading->rows = rows;
    reading->problems = problems;
    enum cg_status status = cg_text_lines(path, take_line, reading, error);
    if (status == CG_OK && !reading->headed)
        cg_log_tell_no_headings(reading);
    if (status == CG_OK)
        check_repeated(reading);
    free(reading);
    return status;
}
