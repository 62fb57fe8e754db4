#include "report_sweep.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "constants.h"
#include "plain_text.h"
#include "say_common.h"
#include "sweep_chart.h"
#include "sweep_table.h"
#include "unit.h"

enum { MOST_ROWS = 400, OWN_COLUMNS = 6, LINE_LENGTH = 4096 };

/* The rows as they go by, and what is known of those seen so far. */
struct rows {
    const struct cg_grid *grid;
    struct cg_report *report;
    void (*take)(struct rows *rows, const struct cg_sweep_point *point);
    size_t seen, good;
    double least, most; /* top gap [m] */
    char why[512];      /* the row at hand has no answer; "" */
    char reason[512];   /* of the first point without an answer */
    struct cg_sweep_boosts boosts; /* with room for all that have an answer */
};

static enum cg_status take_line(void *context, const char *line,
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
    rows->seen++;
    rows->take(rows, &point);
    rows->why[0] = '\0';
    return CG_OK;
}

static bool is_ok(const struct cg_sweep_point *point)
{
    return strcmp(point->outcome, "ok") == 0;
}

/* The line above the row, or where someone took that out, the row's word. */
static const char *reason_of(const struct rows *rows,
                             const struct cg_sweep_point *point)
{
    return rows->why[0] != '\0' ? rows->why : point->outcome;
}

static void count(struct rows *rows, const struct cg_sweep_point *point)
{
    double top = cg_sweep_value(point, "file_to_top") * 1e-3;
    if (is_ok(point)) {
        rows->least = rows->good == 0 ? top : fmin(rows->least, top);
        rows->most = rows->good == 0 ? top : fmax(rows->most, top);
        rows->good++;
    } else if (rows->reason[0] == '\0') {
        snprintf(rows->reason, sizeof rows->reason, "%s",
                 reason_of(rows, point));
    }
}

static void tell_point(struct rows *rows, const struct cg_sweep_point *point)
{
    if (rows->seen > MOST_ROWS)
        return;
    for (size_t i = 0; i < rows->grid->axes; i++)
        cg_report_cell_words(rows->report, "%s",
                             cg_plain(point->setting[i]).text);
    cg_report_cell(rows->report, cg_sweep_value(point, "file_to_top") * 1e-3);
    cg_report_cell(rows->report,
                   cg_sweep_value(point, "file_to_second") * 1e-3);
    cg_report_cell_words(rows->report, "%s",
                         cg_sweep_word(point, "file_to_from"));
    cg_report_cell(rows->report, cg_sweep_value(point, "cold_gap_top") * 1e-3);
    cg_report_cell_words(rows->report, "%s",
                         cg_sweep_word(point, "hardest_duty"));
    cg_report_cell(rows->report,
                   cg_sweep_value(point, "ring_top_max") + CG_ZERO_CELSIUS);
    if (!is_ok(point))
        cg_report_mark(rows->report, CG_MARK_BAD);
}

static void tell_reason(struct rows *rows, const struct cg_sweep_point *point)
{
    char label[256] = "";
    if (rows->seen > MOST_ROWS || is_ok(point))
        return;
    for (size_t i = 0; i < rows->grid->axes; i++) {
        size_t used = strlen(label);
        snprintf(label + used, sizeof label - used, "%s%.60s",
                 i > 0 ? ", " : "", cg_plain(point->setting[i]).text);
    }
    cg_report_words(rows->report, "no_answer", label, "%s",
                    reason_of(rows, point));
}

/* The last word of a setting's path, where no other axis has the same. */
static const char *head_of(const struct cg_grid *grid, size_t axis)
{
    const char *path = grid->axis[axis].path, *dot = strrchr(path, '.');
    const char *word = dot != NULL ? dot + 1 : path;
    for (size_t i = 0; i < grid->axes; i++) {
        const char *other = strrchr(grid->axis[i].path, '.');
        if (i != axis && other != NULL && strcmp(other + 1, word) == 0)
            return path;
    }
    return word;
}

static void begin_table(const struct rows *rows)
{
    static const struct cg_report_column own[OWN_COLUMNS] = {
        {"file_to_top", "Top", CG_SHOW_GAP_ASKED},
        {"file_to_second", "Second", CG_SHOW_GAP_ASKED},
        {"file_to_from", "from", CG_SHOW_WORDS},
        {"cold_gap_top", "Needed, top", CG_SHOW_GAP_ASKED},
        {"hardest_duty", "Hardest", CG_SHOW_WORDS},
        {"ring_top_max", "Top ring", CG_SHOW_TEMPERATURE}};
    const struct cg_grid *grid = rows->grid;
    struct cg_report_column column[CG_AXES + OWN_COLUMNS];
    for (size_t i = 0; i < grid->axes; i++)
        column[i] = (struct cg_report_column){grid->axis[i].path,
                                              head_of(grid, i), CG_SHOW_WORDS};
    memcpy(column + grid->axes, own, sizeof own);
    cg_report_table(
        rows->report, "points",
        "File to, cold, and where it comes from; the gap needed and the duty "
        "it is needed in; the top ring at its hottest in the duty",
        column, grid->axes + OWN_COLUMNS);
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

/* The unit of an axis of boost; NULL: it is none. */
static const struct cg_unit *boost_unit(const struct cg_axis *axis)
{
    static const char path[] = "charge.boost_";
    size_t length = strlen(path);
    return strncmp(axis->path, path, length) == 0
               ? cg_unit_find(CG_PRESSURE, axis->path + length)
               : NULL;
}

static void gather(struct rows *rows, const struct cg_sweep_point *point)
{
    const struct cg_unit *unit = boost_unit(&rows->grid->axis[0]);
    if (!is_ok(point) || rows->boosts.count == rows->good)
        return;
    rows->boosts.point[rows->boosts.count++] = (struct cg_sweep_boost){
        cg_unit_to_si(unit, strtod(point->setting[0], NULL)),
        cg_sweep_value(point, "file_to_top") * 1e-3,
        cg_sweep_value(point, "closure_top") * 1e-3,
        cg_sweep_value(point, "spread_top") * 1e-3,
        cg_sweep_value(point, "residual") * 1e-3};
}

#define BOOST_TITLE "Cold gap of the top ring by boost"
#define BOOST_FIGURE                                                           \
    "The gap over boost, in filing steps, above a band for what is not known " \
    "and the closure; the shop rule beside it."

/* Over boost the program draws by itself. */
static enum cg_status tell_boost(struct rows *rows,
                                 const struct cg_sweep_story *story,
                                 struct cg_error *error)
{
    struct cg_sweep_boosts *boosts = &rows->boosts;
    char words[512];
    if (!story->drawings) {
        cg_report_figure(rows->report, "boost", BOOST_TITLE, "%s",
                         BOOST_FIGURE);
        return CG_OK;
    }
    *boosts = (struct cg_sweep_boosts){
        malloc(rows->good * sizeof *boosts->point), 0, story->c,
        cg_report_inch(rows->report)};
    if (boosts->point == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    rows->take = gather;
    enum cg_status status =
        cg_table_lines(story->dir, story->name, take_line, rows, error);
    if (status == CG_OK && boosts->count > 0) {
        char *svg = cg_sweep_chart_boost(boosts, words);
        cg_report_drawn(rows->report, "boost", svg, BOOST_TITLE, BOOST_FIGURE,
                        words);
        free(svg);
    }
    free(boosts->point);
    return status;
}

static enum cg_status tell_figure(struct rows *rows,
                                  const struct cg_sweep_story *story,
                                  struct cg_error *error)
{
    const struct cg_axis *axis = rows->grid->axis;
    size_t axes = rows->grid->axes;
    bool numbers = is_numeric(&axis[0]);
    if (rows->good < 2 || axes > 2 || (axes == 2 && !numbers))
        return CG_OK;
    cg_report_section(rows->report, "As a picture");
    if (!numbers)
        cg_report_figure(rows->report, "names",
                         "Cold gap of the top ring by name",
                         "Bars of what the gap is made of, for each name of "
                         "%s.",
                         axis[0].path);
    else if (axes == 1 && boost_unit(&axis[0]) != NULL)
        return tell_boost(rows, story, error);
    else if (axes == 2 && is_numeric(&axis[1]))
        cg_report_figure(rows->report, "map",
                         "Gap needed, a map of two settings",
                         "Contours of the gap before rounding over %s and %s.",
                         axis[0].path, axis[1].path);
    else
        cg_report_figure(rows->report, "curves", "Gap needed by one setting",
                         "The gap before rounding over %s%s%s.", axis[0].path,
                         axes == 2 ? ", a curve for each " : "",
                         axes == 2 ? axis[1].path : "");
    return CG_OK;
}

static void tell_first(const struct rows *rows)
{
    struct cg_report *report = rows->report;
    if (rows->good > 0) {
        cg_report_row(report, "least_top", "Top ring, file to, least",
                      cg_quantity(CG_SHOW_GAP_ASKED, rows->least));
        cg_report_row(report, "most_top", "Top ring, file to, largest",
                      cg_quantity(CG_SHOW_GAP_ASKED, rows->most));
    }
    if (rows->good < rows->seen)
        cg_report_note(report,
                       "%zu of %zu points without an answer; the first: "
                       "%s",
                       rows->seen - rows->good, rows->seen, rows->reason);
    if (rows->seen > MOST_ROWS)
        cg_report_note(report,
                       "the first %d of %zu points are listed; all "
                       "are in sweep.dat.",
                       MOST_ROWS, rows->seen);
    cg_report_key(report, "points", (double)rows->seen, "1");
    cg_report_first_part_ends(report);
}

enum cg_status cg_report_sweep(struct cg_report *report,
                               const struct cg_sweep_story *story,
                               struct cg_error *error)
{
    struct rows all = {.grid = story->grid,
                       .report = report,
                       .take = count,
                       .least = NAN,
                       .most = NAN};
    struct rows rows = all;
    enum cg_status status =
        cg_table_lines(story->dir, story->name, take_line, &all, error);
    if (status != CG_OK)
        return status;
    tell_first(&all);
    cg_report_section(report, "Point by point");
    begin_table(&rows);
    rows.take = tell_point;
    status = cg_table_lines(story->dir, story->name, take_line, &rows, error);
    if (status == CG_OK && all.good < all.seen) {
        cg_report_part(report, "Points without an answer");
        rows.take = tell_reason;
        rows.seen = 0;
        status =
            cg_table_lines(story->dir, story->name, take_line, &rows, error);
    }
    if (status == CG_OK)
        status = tell_figure(&all, story, error);
    cg_report_section(report, "What this leaves out");
    cg_report_say(report, "%s", cg_say_left_out(story->c));
    return status;
}
