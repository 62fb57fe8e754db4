#include "sheet_tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cautions.h"
#include "csv_text.h"
#include "table.h"

#define TITLE "What to take off each ring gap, by cylinder"

enum { LINE_LENGTH = 512, CELL_LENGTH = 32, QUOTED_LENGTH = 4096 };

/* What one line is made from. */
struct sheet_row {
    const struct cg_fitting *fitting;
    const struct cg_gauged_cylinder *gauged;
    const struct cg_fitted_cylinder *fitted;
    const struct cg_fit *fit;
    int ring;
};

#define CELL(name, expression)                                                 \
    static double cell_##name(const struct sheet_row *row)                     \
    {                                                                          \
        return expression;                                                     \
    }

CELL(bore, row->gauged->bore * 1e3)
CELL(opens, row->fitted->opens * 1e3)
CELL(measured, row->fit->measured * 1e3)
CELL(gap, row->fit->gap * 1e3)
CELL(need, row->fit->need * 1e3)
CELL(asked, row->fit->asked * 1e3)
CELL(take_off, row->fit->take_off * 1e3)
CELL(steps, row->fit->steps)
CELL(then, row->fit->then * 1e3)
CELL(too_wide, row->fitting->asked[row->ring].too_wide * 1e3)

/* Between the first two columns, cylinder and ring, and the last, state. */
static const struct {
    const char *name;
    double (*get)(const struct sheet_row *row);
} columns[] = {
    {"bore_mm", cell_bore},         {"opens_mm", cell_opens},
    {"measured_mm", cell_measured}, {"gap_mm", cell_gap},
    {"need_mm", cell_need},         {"asked_mm", cell_asked},
    {"take_off_mm", cell_take_off}, {"steps", cell_steps},
    {"then_mm", cell_then},         {"too_wide_mm", cell_too_wide},
};

enum { COLUMNS = sizeof columns / sizeof columns[0] };

/* A line that grows by cells; what does not fit is cut off. */
struct line {
    char text[LINE_LENGTH];
    size_t used;
    char separator;
};

static void add_cell(struct line *line, const char *cell)
{
    char before[2] = {line->used > 0 ? line->separator : '\0', '\0'};
    int written = snprintf(line->text + line->used, LINE_LENGTH - line->used,
                           "%s%s", before, cell);
    line->used += (size_t)written;
    if (line->used > LINE_LENGTH - 1)
        line->used = LINE_LENGTH - 1;
}

static void add_number(struct line *line, double value, const char *none,
                       char decimal)
{
    char cell[CELL_LENGTH];
    snprintf(cell, sizeof cell, "%.7g", value);
    char *point = strchr(cell, '.');
    if (point != NULL)
        *point = decimal;
    add_cell(line, isnan(value) ? none : cell);
}

/* How a kind of table writes its lines. */
struct style {
    const char *none; /* where there is no number */
    char separator, decimal;
};

static void write_row(struct cg_table *table, const struct sheet_row *row,
                      int cylinder, const struct style *style)
{
    struct line line = {.separator = style->separator};
    char number[CELL_LENGTH];
    snprintf(number, sizeof number, "%d", cylinder + 1);
    add_cell(&line, number);
    add_cell(&line, cg_fit_ring_word(row->ring));
    for (size_t i = 0; i < COLUMNS; i++)
        add_number(&line, columns[i].get(row), style->none, style->decimal);
    add_cell(&line, cg_fit_word(row->fit->state));
    cg_table_line(table, "%s", line.text);
}

static void write_rows(struct cg_table *table, const struct cg_sheet *sheet,
                       const struct style *style)
{
    const struct cg_fitting *fitting = &sheet->fitting;
    for (int i = 0; i < fitting->cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
            struct sheet_row row = {fitting, &sheet->gauged.cylinder[i],
                                    &fitting->cylinder[i],
                                    &fitting->cylinder[i].ring[ring], ring};
            write_row(table, &row, i, style);
        }
}

static enum cg_status write_dat(const char *dir, const struct cg_table_of *of,
                                const struct cg_sheet *sheet,
                                struct cg_error *error)
{
    static const struct style style = {"nan", ' ', '.'};
    char names[2 * LINE_LENGTH] = "cylinder  ring";
    for (size_t i = 0; i < COLUMNS; i++) {
        size_t used = strlen(names);
        snprintf(names + used, sizeof names - used, "  %s", columns[i].name);
    }
    strncat(names, "  state", sizeof names - strlen(names) - 1);
    struct cg_table_head head = {
        TITLE, of, names,
        "opens: a ring here against the smallest bore; gap: in its own bore; "
        "need: safe against closing; steps: of filing"};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "sheet.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(table, "measured %s", sheet->measured);
    write_rows(table, sheet, &style);
    return cg_table_close(table, CG_OK, error);
}

/* A remark is one cell, so that a spreadsheet does not tear it apart. */
static void write_remark(struct cg_table *table, const char *text)
{
    char cell[QUOTED_LENGTH];
    cg_csv_quote(text, cell, sizeof cell);
    cg_table_line(table, "%s", cell);
}

static void write_csv_head(struct cg_table *table, const struct cg_table_of *of,
                           const struct cg_sheet *sheet)
{
    char text[QUOTED_LENGTH];
    struct line line = {.separator = sheet->dialect.separator};
    write_remark(table, "# " TITLE);
    snprintf(text, sizeof text,
             "# coldgap " CG_VERSION ", config %s, measured %s", of->config,
             sheet->measured);
    write_remark(table, text);
    snprintf(text, sizeof text, "# %s", cg_cautions_short());
    write_remark(table, text);
    add_cell(&line, "cylinder");
    add_cell(&line, "ring");
    for (size_t i = 0; i < COLUMNS; i++)
        add_cell(&line, columns[i].name);
    add_cell(&line, "state");
    cg_table_line(table, "%s", line.text);
}

static enum cg_status write_csv(const char *dir, const struct cg_table_of *of,
                                const struct cg_sheet *sheet,
                                struct cg_error *error)
{
    struct style style = {"", sheet->dialect.separator, sheet->dialect.decimal};
    struct cg_table_head own = {NULL, NULL, NULL, NULL};
    struct cg_table *table;
    enum cg_status status =
        cg_table_open(dir, "sheet.csv", &own, &table, error);
    if (status != CG_OK)
        return status;
    write_csv_head(table, of, sheet);
    write_rows(table, sheet, &style);
    return cg_table_close(table, CG_OK, error);
}

enum cg_status cg_sheet_tables_write(const char *dir,
                                     const struct cg_table_of *of,
                                     const struct cg_sheet *sheet,
                                     struct cg_error *error)
{
    enum cg_status status = write_dat(dir, of, sheet, error);
    if (status == CG_OK)
        status = write_csv(dir, of, sheet, error);
    return status;
}
