#include "log_rows.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "csv_text.h"
#include "nearest.h"
#include "text_file.h"

enum { HEADINGS_BY = 1000 }; /* lines that may stand before the headings */

/* A file being read. */
struct reading {
    const char *path;
    const struct cg_case *c;
    const struct cg_log_column *column;
    struct cg_log_rows *rows;
    struct cg_problems *problems;
    size_t line;
    bool headed;            /* the headings were found */
    char separator;         /* ' ': any blanks */
    size_t cells;           /* of the line of headings */
    size_t cell[CG_LOGGED]; /* where each column stands */
    char decimal;           /* 0: none seen yet */
    size_t decimal_line;
    size_t matched;      /* headings in the best line so far, */
    size_t matched_line; /* that line, and one it has not */
    enum cg_logged missing;
    char near[CG_HEADING_LENGTH]; /* what stands there most like it */
    char copy[CG_TEXT_LINE];
};

static void problem(struct reading *reading, const char *heading,
                    const char *what)
{
    cg_problem(reading->problems,
               (struct cg_where){reading->path, (unsigned)reading->line, NULL},
               heading, "%s", what);
}

static bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

/* Cells parted by any blanks; quotes keep them together. */
static void split_blanks(char *at, struct cg_csv_record *record)
{
    record->cells = 0;
    while (record->cells < CG_CSV_CELLS) {
        while (is_blank(*at))
            at++;
        if (*at == '\0')
            return;
        bool quoted = *at == '"';
        at += quoted;
        record->cell[record->cells++] = at;
        while (*at != '\0' && (quoted ? *at != '"' : !is_blank(*at)))
            at++;
        if (*at != '\0')
            *at++ = '\0';
    }
}

/* The cells of a line, which is overwritten; false, with trouble or without,
 * where it has none. */
static bool split(char *line, char separator, struct cg_csv_record *record)
{
    struct cg_csv csv = {line, 1, separator};
    record->trouble = NULL;
    if (separator != ' ')
        return cg_csv_next(&csv, record) == CG_CSV_RECORD;
    split_blanks(line, record);
    return record->cells > 0;
}

/* Where the headings stand in the record; how many were found. */
static size_t match(struct reading *reading, const struct cg_csv_record *record,
                    size_t *asked)
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
static void remember(struct reading *reading,
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
static void check_once(struct reading *reading,
                       const struct cg_csv_record *record)
{
    for (int q = 0; q < CG_LOGGED; q++)
        for (size_t i = 0; reading->column[q].unit != NULL && i < record->cells;
             i++)
            if (i != reading->cell[q] &&
                strcmp(record->cell[i], reading->column[q].heading) == 0) {
                problem(reading, reading->column[q].heading,
                        "stands twice in the line of headings, once is "
                        "allowed");
                return;
            }
}

/* Looks for the headings in a line, by every separator. */
static void look_for_headings(struct reading *reading, const char *line)
{
    static const char separators[] = ",;\t ";
    line += strspn(line, "# ");
    for (const char *s = separators; *s != '\0' && !reading->headed; s++) {
        struct cg_csv_record record;
        size_t asked;
        snprintf(reading->copy, sizeof reading->copy, "%s", line);
        if (!split(reading->copy, *s, &record))
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

static bool is_nothing(const char *cell)
{
    return cell[0] == '\0' || strcmp(cell, "-") == 0 ||
           strcasecmp(cell, "nan") == 0;
}

/* One sign in the whole file: 1.234 and 1,234 side by side are a riddle. */
static bool agrees_on_sign(struct reading *reading, const char *heading,
                           char sign)
{
    char what[160];
    if (sign == '\0' || sign == reading->decimal)
        return true;
    if (reading->decimal == '\0') {
        reading->decimal = sign;
        reading->decimal_line = reading->line;
        return true;
    }
    snprintf(what, sizeof what,
             "a decimal %s here, a decimal %s in line %zu, one of them is "
             "allowed throughout",
             sign == ',' ? "comma" : "point", sign == ',' ? "point" : "comma",
             reading->decimal_line);
    problem(reading, heading, what);
    return false;
}

static void out_of_band(struct reading *reading, int q,
                        const struct cg_log_band *band, const char *cell)
{
    const struct cg_log_column *column = &reading->column[q];
    char what[240];
    snprintf(what, sizeof what,
             "cannot be, %.6g to %.6g%s%s is allowed (got "
             "%.40s)",
             cg_unit_from_si(column->unit, band->low),
             cg_unit_from_si(column->unit, band->high),
             column->unit->suffix[0] != '\0' ? " " : "", column->unit->suffix,
             cell);
    problem(reading, column->heading, what);
}

/* A cell in SI; NaN where it holds no value, or a wrong one, which is told. */
static double value_of(struct reading *reading, int q, const char *cell)
{
    const struct cg_log_column *column = &reading->column[q];
    struct cg_log_band band = cg_log_band_of(reading->c, (enum cg_logged)q);
    double value;
    char sign;
    if (is_nothing(cell))
        return NAN;
    const char *trouble =
        cg_csv_number(cell, reading->separator, &value, &sign);
    if (trouble != NULL) {
        char what[160];
        snprintf(what, sizeof what, "%s (got %.40s)", trouble, cell);
        problem(reading, column->heading, what);
        return NAN;
    }
    if (!agrees_on_sign(reading, column->heading, sign))
        return NAN;
    double si = cg_unit_to_si(column->unit, value);
    if (si >= band.low && si <= band.high)
        return si;
    out_of_band(reading, q, &band, cell);
    return NAN;
}

static enum cg_status add_row(struct reading *reading,
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
static bool is_units(const struct reading *reading,
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

/* Whether the row's time goes on from the row before; trouble is told. */
static bool goes_on(struct reading *reading, const struct cg_log_row *row)
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
        rows->repeated++;
    if (!(time < before))
        return time > before;
    snprintf(what, sizeof what,
             "goes back, from %.10g to %.10g; times must rise",
             cg_unit_from_si(column->unit, before),
             cg_unit_from_si(column->unit, time));
    problem(reading, column->heading, what);
    return false;
}

static enum cg_status take_cells(struct reading *reading,
                                 const struct cg_csv_record *record,
                                 struct cg_error *error)
{
    struct cg_log_row row = {.line = reading->line};
    if (record->cells != reading->cells) {
        if (is_units(reading, record))
            return CG_OK;
        char what[160];
        snprintf(
            what, sizeof what, "%zu cells, the line of headings has %zu%s",
            record->cells, reading->cells,
            cg_csv_too_many(record->cells, reading->cells, reading->separator));
        problem(reading, NULL, what);
        return CG_OK;
    }
    if (is_units(reading, record) && reading->matched_line == 0) {
        reading->matched_line = reading->line; /* once */
        return CG_OK;
    }
    size_t before = reading->problems->count;
    for (int q = 0; q < CG_LOGGED; q++)
        row.value[q] =
            reading->column[q].unit != NULL
                ? value_of(reading, q, record->cell[reading->cell[q]])
                : NAN;
    if (isnan(row.value[CG_LOGGED_TIME]) && reading->problems->count == before)
        problem(reading, reading->column[CG_LOGGED_TIME].heading,
                "no time, every line must have one");
    if (!goes_on(reading, &row))
        return CG_OK;
    return add_row(reading, &row, error);
}

static enum cg_status take_line(void *context, char *line, size_t number,
                                struct cg_error *error)
{
    struct reading *reading = context;
    struct cg_csv_record record;
    reading->line = number;
    if (number == 1 && strncmp(line, "\xEF\xBB\xBF", 3) == 0)
        line += 3; /* a byte order mark */
    if (line[strspn(line, " \t")] == '\0')
        return CG_OK;
    if (!reading->headed) {
        if (number <= HEADINGS_BY)
            look_for_headings(reading, line);
        if (reading->headed)
            reading->matched_line = 0;
        return CG_OK;
    }
    if (line[strspn(line, " \t")] == '#')
        return CG_OK;
    if (split(line, reading->separator, &record))
        return take_cells(reading, &record, error);
    if (record.trouble != NULL)
        problem(reading, NULL, record.trouble);
    return CG_OK;
}

static void tell_no_headings(struct reading *reading)
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
    problem(reading, column->heading, what);
}

enum cg_status cg_log_rows_read(const char *path, const struct cg_case *c,
                                const struct cg_log_column column[CG_LOGGED],
                                struct cg_log_rows *rows,
                                struct cg_problems *problems,
                                struct cg_error *error)
{
    *rows = (struct cg_log_rows){.rows = 0};
    struct reading *reading = calloc(1, sizeof *reading);
    if (reading == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    reading->path = path;
    reading->c = c;
    reading->column = column;
    reading->rows = rows;
    reading->problems = problems;
    enum cg_status status = cg_text_lines(path, take_line, reading, error);
    if (status == CG_OK && !reading->headed)
        tell_no_headings(reading);
    free(reading);
    return status;
}
