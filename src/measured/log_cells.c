/* The cells of a line of a log, and the values in them. */
#include <math.h>
#include <string.h>
#include <strings.h>

#include "log_reading.h"

void cg_log_problem(struct cg_log_reading *reading, const char *heading,
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

bool cg_log_split(char *line, char separator, struct cg_csv_record *record)
{
    struct cg_csv csv = {line, 1, separator};
    record->trouble = NULL;
    if (separator != ' ')
        return cg_csv_next(&csv, record) == CG_CSV_RECORD;
    split_blanks(line, record);
    return record->cells > 0;
}

static bool is_nothing(const char *cell)
{
    return cell[0] == '\0' || strcmp(cell, "-") == 0 ||
           strcasecmp(cell, "nan") == 0;
}

/* One sign in the whole file: 1.234 and 1,234 side by side are a riddle. */
static bool agrees_on_sign(struct cg_log_reading *reading, const char *heading,
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
    cg_log_problem(reading, heading, what);
    return false;
}

static void out_of_band(struct cg_log_reading *reading, int q,
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
    cg_log_problem(reading, column->heading, what);
}

double cg_log_value(struct cg_log_reading *reading, int q, const char *cell)
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
        cg_log_problem(reading, column->heading, what);
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
