#include "measured.h"

#include <math.h>
#include <stdlib.h>

#include "measured_columns.h"
#include "text_file.h"

/* A gap thinner than any feeler leaf was not measured, and one above this
 * share of the bore is no fitted ring's: most likely another unit was meant
 * (common practice, no source). */
#define GAP_LEAST 0.02e-3
#define GAP_MOST_PER_BORE 0.02

/* A file being read. */
struct reading {
    const struct cg_case *c;
    const char *path;
    struct cg_csv csv;
    struct cg_measured_columns columns;
    struct cg_gauged gauged;
    unsigned line[CG_FIT_CYLINDERS]; /* where each cylinder stands; 0: not */
    char decimal;                    /* 0: none seen yet */
    unsigned decimal_line;           /* where it was seen first */
    struct cg_problems problems;
};

static struct cg_where at_line(const struct reading *reading, unsigned line)
{
    return (struct cg_where){reading->path, line, NULL};
}

/* Values allowed in SI, ends included. */
struct band {
    double low, high;
    const char *why; /* "" for none */
};

static struct band band_of(const struct cg_case *c, enum cg_quantity quantity)
{
    double bore = c->engine.bore;
    switch (quantity) {
    case CG_MEASURED_BORE:
        return (struct band){bore * (1.0 - CG_FIT_BORE_BAND),
                             bore * (1.0 + CG_FIT_BORE_BAND),
                             ", within 1 % of engine.bore"};
    case CG_MEASURED_TOP_GAP:
    case CG_MEASURED_SECOND_GAP:
        return (struct band){GAP_LEAST, GAP_MOST_PER_BORE * bore,
                             ", from the thinnest feeler to 2 % of the bore"};
    default:
        return (struct band){1.0, c->engine.cylinders,
                             ", whole, up to engine.cylinders"};
    }
}

/* One sign in the whole file: 1.234 and 1,234 side by side are a riddle. */
static bool agrees_on_sign(struct reading *reading, unsigned line,
                           const struct cg_measured_column *column, char sign)
{
    if (sign == '\0' || sign == reading->decimal)
        return true;
    if (reading->decimal == '\0') {
        reading->decimal = sign;
        reading->decimal_line = line;
        return true;
    }
    cg_problem(&reading->problems, at_line(reading, line), column->name,
               "a decimal %s here, a decimal %s in line %u, one of them is "
               "allowed throughout",
               sign == ',' ? "comma" : "point", sign == ',' ? "point" : "comma",
               reading->decimal_line);
    return false;
}

/* A cell's value in SI; NaN when it is empty or wrong, and the trouble told. */
static double read_cell(struct reading *reading, unsigned line,
                        const struct cg_measured_column *column,
                        const char *cell)
{
    double value;
    char sign;
    if (cell[0] == '\0')
        return NAN;
    const char *trouble =
        cg_csv_number(cell, reading->csv.separator, &value, &sign);
    if (trouble != NULL) {
        cg_problem(&reading->problems, at_line(reading, line), column->name,
                   "%s (got %.40s)", trouble, cell);
        return NAN;
    }
    if (!agrees_on_sign(reading, line, column, sign))
        return NAN;
    struct band band = band_of(reading->c, column->quantity);
    double si = cg_unit_to_si(column->unit, value);
    bool whole = column->unit->dimension != CG_PLAIN || si == floor(si);
    if (si >= band.low && si <= band.high && whole)
        return si;
    cg_problem(&reading->problems, at_line(reading, line), column->name,
               "must be %.6g to %.6g%s%s%s (got %.40s)",
               cg_unit_from_si(column->unit, band.low),
               cg_unit_from_si(column->unit, band.high),
               column->unit->suffix[0] != '\0' ? " " : "", column->unit->suffix,
               band.why, cell);
    return NAN;
}

/* A row's cells in SI, by quantity; false when it is not a row. */
static bool read_cells(struct reading *reading,
                       const struct cg_csv_record *record,
                       double value[CG_MEASURED_QUANTITIES])
{
    const struct cg_measured_columns *columns = &reading->columns;
    size_t before = reading->problems.count;
    struct cg_where where = at_line(reading, record->line);
    if (record->cells != columns->count) {
        cg_problem(&reading->problems, where, NULL,
                   "%zu cells, the header names %zu columns%s", record->cells,
                   columns->count,
                   cg_csv_too_many(record, columns->count,
                                   reading->csv.separator));
        return false;
    }
    for (int q = 0; q < CG_MEASURED_QUANTITIES; q++)
        value[q] = NAN;
    for (size_t i = 0; i < record->cells; i++) {
        const struct cg_measured_column *column = &columns->column[i];
        if (column->quantity != CG_MEASURED_NOTHING)
            value[column->quantity] =
                read_cell(reading, record->line, column, record->cell[i]);
        else if (record->cell[i][0] != '\0')
            cg_problem(&reading->problems, where, NULL,
                       "%.40s stands in column %zu, which the header does not "
                       "name",
                       record->cell[i], i + 1);
    }
    return reading->problems.count == before;
}

static bool is_empty(const struct cg_csv_record *record)
{
    for (size_t i = 0; i < record->cells; i++)
        if (record->cell[i][0] != '\0')
            return false;
    return true;
}

static void read_row(struct reading *reading,
                     const struct cg_csv_record *record)
{
    double value[CG_MEASURED_QUANTITIES];
    struct cg_where where = at_line(reading, record->line);
    if (is_empty(record) || !read_cells(reading, record, value))
        return;
    double number = value[CG_MEASURED_CYLINDER];
    if (isnan(number)) {
        cg_problem(&reading->problems, where, "cylinder",
                   "no number, 1 to %d is allowed",
                   reading->c->engine.cylinders);
        return;
    }
    int cylinder = (int)number - 1;
    if (reading->line[cylinder] != 0) {
        cg_problem(&reading->problems, where, "cylinder",
                   "%d stands in line %u already, once is allowed",
                   cylinder + 1, reading->line[cylinder]);
        return;
    }
    reading->line[cylinder] = record->line;
    double from = value[CG_MEASURED_IN];
    reading->gauged.cylinder[cylinder] = (struct cg_gauged_cylinder){
        true,
        value[CG_MEASURED_BORE],
        {value[CG_MEASURED_TOP_GAP], value[CG_MEASURED_SECOND_GAP]},
        isnan(from) ? 0 : (int)from};
}

/* A gap measured in another bore can be carried over only between bores that
 * are both known. */
static void check_carried(struct reading *reading)
{
    const struct cg_gauged_cylinder *at = reading->gauged.cylinder;
    for (int i = 0; i < reading->gauged.cylinders; i++) {
        int from = at[i].measured_in - 1;
        if (from < 0 || from == i)
            continue;
        if (isnan(at[from].bore) || isnan(at[i].bore))
            cg_problem(&reading->problems, at_line(reading, reading->line[i]),
                       "measured_in",
                       "the bore of cylinder %d is not measured, bores of "
                       "both cylinders must be",
                       isnan(at[from].bore) ? from + 1 : i + 1);
    }
}

static void read_rows(struct reading *reading)
{
    struct cg_csv_record record;
    enum cg_csv_read read;
    bool header = true;
    size_t rows = 0;
    while ((read = cg_csv_next(&reading->csv, &record)) != CG_CSV_END) {
        struct cg_where where = at_line(reading, record.line);
        if (read == CG_CSV_TROUBLE) {
            cg_problem(&reading->problems, where, NULL, "%s", record.trouble);
            if (header)
                return;
        } else if (header) {
            if (!cg_measured_header(&record, where, &reading->columns,
                                    &reading->problems))
                return;
            header = false;
        } else {
            read_row(reading, &record);
            rows++;
        }
    }
    if (rows == 0 && reading->problems.count == 0)
        cg_problem(
            &reading->problems, at_line(reading, 0), NULL,
            "no lines under the header, one line for each cylinder is allowed");
    if (reading->problems.count == 0)
        check_carried(reading);
}

static void read_text(struct reading *reading, char *text)
{
    reading->gauged.cylinders = reading->c->engine.cylinders;
    for (int i = 0; i < CG_FIT_CYLINDERS; i++)
        reading->gauged.cylinder[i] =
            (struct cg_gauged_cylinder){false, NAN, {NAN, NAN}, 0};
    const char *trouble = cg_csv_begin(&reading->csv, text);
    if (trouble != NULL)
        cg_problem(&reading->problems, at_line(reading, reading->csv.line),
                   NULL, "%s", trouble);
    else
        read_rows(reading);
}

enum cg_status cg_measured_read(const char *path, const struct cg_case *c,
                                struct cg_gauged *gauged,
                                struct cg_csv_dialect *dialect,
                                struct cg_error *error)
{
    struct reading reading = {.c = c, .path = path};
    char *text = NULL;
    enum cg_status status = cg_text_read(path, &text, error);
    if (status != CG_OK)
        return status;
    read_text(&reading, text);
    free(text);
    cg_problems_print(&reading.problems, stderr);
    if (reading.problems.count > 0)
        return cg_error_set(error, CG_BAD_INPUT, "%zu error%s in %s",
                            reading.problems.count,
                            reading.problems.count == 1 ? "" : "s", path);
    *gauged = reading.gauged;
    *dialect = (struct cg_csv_dialect){
        reading.csv.separator, reading.decimal != '\0' ? reading.decimal : '.'};
    return CG_OK;
}
