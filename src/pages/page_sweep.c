#include "page_sweep.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "constants.h"
#include "find_notes.h"
#include "show.h"
#include "sweep_table.h"

enum { MOST_ROWS = 400, OWN_COLUMNS = 7, LINE_LENGTH = 4096 };

/* What is known of the rows seen so far. */
struct rows {
    const struct cg_grid *grid;
    struct cg_page *page;
    char why[512];      /* of the row to come; "" */
    size_t shown, good;
    double least, most; /* top gap [mm] */
};

/* "-" for NaN. */
static void number(char text[32], double value, int digits)
{
    snprintf(text, 32, "%.*f", digits, value);
    if (isnan(value))
        snprintf(text, 32, "-");
}

static void write_row(struct rows *rows, const struct cg_sweep_point *point)
{
    bool good = strcmp(point->outcome, "ok") == 0;
    const char *cells[CG_AXES + OWN_COLUMNS];
    char text[6][32];
    size_t axes = rows->grid->axes;
    double top = cg_sweep_value(point, "cold_gap_top");
    double second = cg_sweep_value(point, "cold_gap_second");
    double ring = cg_sweep_value(point, "ring_top_max");
    number(text[0], cg_shown_up(top * 1e-3, false) * 1e3, 2);
    number(text[1], cg_shown_up(top * 1e-3, true) / CG_INCH, 4);
    number(text[2], cg_shown_up(second * 1e-3, false) * 1e3, 2);
    number(text[3], cg_shown_up(second * 1e-3, true) / CG_INCH, 4);
    number(text[4], ring, 0);
    number(text[5], ring * 1.8 + 32.0, 0);
    for (size_t i = 0; i < axes; i++)
        cells[i] = point->setting[i];
    for (size_t i = 0; i < 6; i++)
        cells[axes + i] = text[i];
    cells[axes + 6] = !good && rows->why[0] != '\0' ? rows->why
                                                    : point->outcome;
    cg_page_row(rows->page, cells, axes + OWN_COLUMNS,
                good ? NULL : "bad");
}

static enum cg_status take_row(void *context, const char *line,
                               struct cg_error *error)
{
    struct rows *rows = context;
    struct cg_sweep_point point;
    char own[LINE_LENGTH];
    (void)error;
    if (cg_sweep_why(line) != NULL)
        snprintf(rows->why, sizeof rows->why, "%s", cg_sweep_why(line));
    snprintf(own, sizeof own, "%s", line);
    if (!cg_sweep_row_split(own, rows->grid, &point))
        return CG_OK;
    double top = cg_sweep_value(&point, "cold_gap_top");
    if (!isnan(top)) {
        rows->least = rows->good == 0 ? top : fmin(rows->least, top);
        rows->most = rows->good == 0 ? top : fmax(rows->most, top);
        rows->good++;
    }
    if (rows->shown < MOST_ROWS)
        write_row(rows, &point);
    rows->why[0] = '\0';
    rows->shown++;
    return CG_OK;
}

static enum cg_status rows_part(struct rows *rows, const char *dir,
                                struct cg_error *error)
{
    static const char *const own[OWN_COLUMNS] = {
        "Top gap, mm",    "in",                   "Second gap, mm", "in",
        "Top ring, \302\260C", "\302\260F", "Outcome"};
    const struct cg_grid *grid = rows->grid;
    const char *heads[CG_AXES + OWN_COLUMNS];
    for (size_t i = 0; i < grid->axes; i++)
        heads[i] = grid->axis[i].path;
    for (size_t i = 0; i < OWN_COLUMNS; i++)
        heads[grid->axes + i] = own[i];
    cg_page_section(rows->page, "Smallest safe cold gap, point by point");
    cg_page_table(rows->page, "File to at least; temperatures are the hottest "
                              "in the duty",
                  heads, grid->axes + OWN_COLUMNS);
    enum cg_status status =
        cg_table_lines(dir, "sweep.dat", take_row, rows, error);
    cg_page_table_end(rows->page);
    if (rows->shown > MOST_ROWS)
        cg_page_note(rows->page, "these are the first %d of %zu points; all "
                                 "are in sweep.dat.",
                     MOST_ROWS, rows->shown);
    return status;
}

/* Whether an axis can be drawn: numbers, and more than one. */
static bool is_numeric(const struct cg_axis *axis)
{
    for (size_t i = 0; i < axis->count; i++) {
        char *end;
        strtod(axis->value[i], &end);
        if (end == axis->value[i] || *end != '\0')
            return false;
    }
    return axis->count > 1;
}

static void figures_part(const struct rows *rows)
{
    const struct cg_axis *axis = rows->grid->axis;
    size_t axes = rows->grid->axes;
    bool numbers = is_numeric(&axis[0]);
    if (rows->good < 2 || axes > 2 || (axes == 2 && !numbers))
        return;
    cg_page_section(rows->page, "As a picture");
    if (!numbers) {
        cg_page_figure(rows->page, "names", "Cold gap of the top ring by name",
                       "Bars of what the gap is made of, for each name of %s; "
                       "the answers go from %.3f to %.3f mm.",
                       axis[0].path, rows->least, rows->most);
        return;
    }
    if (axes == 1 && strncmp(axis[0].path, "charge.boost", 12) == 0)
        cg_page_figure(rows->page, "boost", "Cold gap of the top ring by boost",
                       "The gap from %.3f to %.3f mm over boost, in filing "
                       "steps, above a band for what is not known and the "
                       "nominal closure; the shop rule beside it.",
                       rows->least, rows->most);
    else if (axes == 2 && is_numeric(&axis[1]))
        cg_page_figure(rows->page, "map", "Gap needed, a map of two settings",
                       "Contours of the gap before rounding over %s and %s; "
                       "the answers go from %.3f to %.3f mm.",
                       axis[0].path, axis[1].path, rows->least, rows->most);
    else
        cg_page_figure(rows->page, "curves", "Gap needed by one setting",
                       "The gap before rounding over %s%s%s; the answers go "
                       "from %.3f to %.3f mm.",
                       axis[0].path, axes == 2 ? ", a curve for each " : "",
                       axes == 2 ? axis[1].path : "", rows->least, rows->most);
}

enum cg_status cg_page_sweep(void *story, struct cg_page *page,
                             struct cg_error *error)
{
    const struct cg_sweep_story *sweep = story;
    struct rows rows = {.grid = sweep->grid, .page = page};
    enum cg_status status = rows_part(&rows, sweep->dir, error);
    figures_part(&rows);
    cg_page_section(page, "What this leaves out");
    cg_page_say(page, "%s", cg_find_left_out());
    return status;
}
