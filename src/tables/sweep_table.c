#include "sweep_table.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cautions.h"
#include "plain_text.h"
#include "setting_key.h"
#include "summary.h"

enum cg_status cg_part_set(size_t points, size_t number, size_t of,
                           struct cg_part *part, struct cg_error *error)
{
    if (!(number >= 1 && number <= of))
        return cg_error_set(error, CG_BAD_INPUT,
                            "--part %zu/%zu: K/N with K from 1 to N is "
                            "allowed",
                            number, of);
    *part = (struct cg_part){number, of, points * (number - 1) / of,
                             points * number / of};
    return CG_OK;
}

void cg_part_name(const struct cg_part *part, char name[64])
{
    if (part->of == 1) {
        snprintf(name, 64, "sweep.dat");
        return;
    }
    /* Leading zeros, so that a shell lists the parts in order. */
    int width = snprintf(NULL, 0, "%zu", part->of);
    snprintf(name, 64, "sweep_%0*zu_of_%zu.dat", width, part->number,
             part->of);
}

/* What becomes of a point, a word. */
static const struct {
    enum cg_status status;
    const char *word;
} outcomes[] = {
    {CG_OK, "ok"},
    {CG_BAD_INPUT, "not_allowed"},
    {CG_NOT_SAFE, "out_of_range"},
};

enum { OUTCOMES = sizeof outcomes / sizeof outcomes[0] };

#define NOT_COMPUTED "not_computed"

static const char *outcome_of(enum cg_status status)
{
    for (size_t i = 0; i < OUTCOMES; i++)
        if (outcomes[i].status == status)
            return outcomes[i].word;
    return NOT_COMPUTED;
}

static bool is_outcome(const char *word)
{
    for (size_t i = 0; i < OUTCOMES; i++)
        if (strcmp(outcomes[i].word, word) == 0)
            return true;
    return strcmp(NOT_COMPUTED, word) == 0;
}

#define WHY "# no answer: "

void cg_sweep_row_write(struct cg_table *table, const struct cg_sweep_row *row)
{
    if (row->why[0] != '\0')
        cg_table_line(table, WHY "%s", row->why);
    cg_table_line(table, "%s", row->text);
}

const char *cg_sweep_why(const char *line)
{
    return strncmp(line, WHY, strlen(WHY)) == 0 ? line + strlen(WHY) : NULL;
}

/* A column's name behind those before it. */
static void add_name(const char *key, const char *unit, char *text,
                     size_t capacity)
{
    size_t at = strlen(text);
    cg_table_name(key, unit, text + at, capacity - at);
    at += strlen(text + at);
    snprintf(text + at, capacity - at, "  ");
}

/* The columns' line: the varied settings, the summary's keys, the outcome. */
static void list_columns(const struct cg_grid *grid, char *text,
                         size_t capacity)
{
    size_t count;
    const struct cg_summary_key *keys = cg_summary_keys(&count);
    text[0] = '\0';
    for (size_t i = 0; i < grid->axes; i++)
        add_name(grid->axis[i].path, "", text, capacity);
    for (size_t i = 0; i < count; i++)
        add_name(keys[i].key, keys[i].unit, text, capacity);
    const struct cg_summary_word *words = cg_summary_words(&count);
    for (size_t i = 0; i < count; i++)
        add_name(words[i].key, "1", text, capacity);
    snprintf(text + strlen(text), capacity - strlen(text), "outcome");
}

/* One line that tells this grid from another one. */
static void list_grid(const struct cg_grid *grid, char *text, size_t capacity)
{
    size_t at = (size_t)snprintf(text, capacity, "grid of %zu points:",
                                 grid->points);
    for (size_t i = 0; i < grid->axes && at < capacity; i++)
        at += (size_t)snprintf(text + at, capacity - at, " %s=%s..%s (%zu)",
                               grid->axis[i].path, grid->axis[i].value[0],
                               grid->axis[i].value[grid->axis[i].count - 1],
                               grid->axis[i].count);
}

static bool is_row(const char *line)
{
    return line[0] != '#' && line[0] != '\n' && line[0] != '\0';
}

/* Whether an earlier row is that of the point now in its place. */
static bool row_fits(const char *line, const struct cg_grid *grid,
                     size_t point)
{
    for (size_t i = 0; i < grid->axes; i++) {
        const char *value = cg_grid_value(grid, point, i);
        size_t length = strlen(value);
        if (strncmp(line, value, length) != 0 || line[length] != ' ')
            return false;
        line += length + 1;
    }
    return true;
}

/* An earlier table whose rows are being taken over. */
struct taking {
    const struct cg_grid *grid;
    const struct cg_part *part;
    struct cg_table *table;
    const char *grid_line, *config;
    char why[512];             /* of the row to come; "" */
    bool same_grid, same_case; /* by its head */
    bool torn;                 /* a row that was cut short, the last one */
    struct cg_sweep_earlier *earlier;
};

/* Whether a row has all its columns. */
static bool is_whole(const char *line, const struct cg_grid *grid)
{
    struct cg_sweep_row copy;
    struct cg_sweep_point point;
    if (strlen(line) >= sizeof copy.text)
        return false;
    strcpy(copy.text, line);
    return cg_sweep_row_split(copy.text, grid, &point);
}

static enum cg_status take_row(void *context, const char *line,
                               struct cg_error *error)
{
    struct taking *taking = context;
    struct cg_sweep_earlier *earlier = taking->earlier;
    if (strncmp(line, "# ", 2) == 0 && strcmp(line + 2, taking->grid_line) == 0)
        taking->same_grid = true;
    if (cg_table_is_of(line, taking->config))
        taking->same_case = true;
    if (cg_sweep_why(line) != NULL)
        snprintf(taking->why, sizeof taking->why, "%s", cg_sweep_why(line));
    if (!is_row(line))
        return CG_OK;
    bool whole = is_whole(line, taking->grid);
    size_t point = taking->part->first + earlier->rows;
    if (!taking->same_grid || !taking->same_case || taking->torn ||
        (whole && (point >= taking->part->past ||
                   !row_fits(line, taking->grid, point))))
        return cg_error_set(error, CG_BAD_INPUT,
                            "--resume: the table there is of another sweep; "
                            "remove it or choose another folder");
    taking->torn = !whole;
    if (!whole)
        return CG_OK;
    strcpy(earlier->last.text, line);
    strcpy(earlier->last.why, taking->why);
    taking->why[0] = '\0';
    cg_sweep_row_write(taking->table, &earlier->last);
    if (earlier->rows++ == 0)
        earlier->first = earlier->last;
    return CG_OK;
}

/* The varied settings in words: what the axes of a picture say. */
static void note_axes(const struct cg_grid *grid, struct cg_table *table)
{
    for (size_t i = 0; i < grid->axes; i++) {
        struct cg_key key;
        char words[128];
        if (!cg_key_find(grid->axis[i].path, &key, NULL, 0))
            continue;
        snprintf(words, sizeof words, "%s", key.setting->path);
        for (char *at = words; *at != '\0'; at++)
            if (*at == '.' || *at == '_')
                *at = ' ';
        const char *unit = key.unit != NULL ? key.unit->suffix : "";
        cg_table_note(table, "axis %zu: %s%s%s", i + 1, words,
                      unit[0] != '\0' ? ", " : "",
                      strcmp(unit, "pct") == 0 ? "%" : unit);
    }
}

void cg_sweep_of(const char *config, const struct cg_case *base,
                 const struct cg_grid *grid, struct cg_table_of *of)
{
    cg_table_of_set(config, base, of);
    for (size_t i = 0; i < grid->axes; i++) {
        struct cg_key key;
        if (cg_key_find(grid->axis[i].path, &key, NULL, 0))
            cg_table_of_vary(of, key.setting->path);
    }
}

enum cg_status
cg_sweep_table_open(const char *dir, const struct cg_table_of *of,
                    const struct cg_grid *grid, const struct cg_part *part,
                    bool resume, struct cg_table **table,
                    struct cg_sweep_earlier *earlier, struct cg_error *error)
{
    char name[64], columns[2048], grid_line[1024];
    cg_part_name(part, name);
    list_columns(grid, columns, sizeof columns);
    list_grid(grid, grid_line, sizeof grid_line);
    struct cg_table_head head = {"Sweep: the answer over varied settings",
                                 of, columns, NULL};
    earlier->rows = 0;
    enum cg_status status =
        resume ? cg_table_rescue(dir, name, error) : CG_OK;
    if (status == CG_OK)
        status = cg_table_open(dir, name, &head, table, error);
    if (status != CG_OK)
        return status;
    cg_table_note(*table, "%s", grid_line);
    note_axes(grid, *table);
    if (!resume)
        return CG_OK;
    struct taking taking = {.grid = grid,
                            .part = part,
                            .table = *table,
                            .grid_line = grid_line,
                            .config = of->config,
                            .earlier = earlier};
    status = cg_table_earlier(*table, take_row, &taking, error);
    if (status != CG_OK) {
        cg_table_close(*table, status, error);
        *table = NULL;
    }
    return status;
}

void cg_sweep_row_set(struct cg_sweep_row *row, const struct cg_grid *grid,
                      size_t point, const struct cg_case *c,
                      const struct cg_answer *answer,
                      const struct cg_error *why)
{
    size_t count, at = 0, capacity = sizeof row->text;
    const struct cg_summary_key *keys = cg_summary_keys(&count);
    for (size_t i = 0; i < grid->axes && at < capacity; i++)
        at += (size_t)snprintf(row->text + at, capacity - at, "%s ",
                               cg_grid_value(grid, point, i));
    for (size_t i = 0; i < count && at < capacity; i++) {
        if (answer == NULL)
            at += (size_t)snprintf(row->text + at, capacity - at, "nan ");
        else
            at += (size_t)snprintf(row->text + at, capacity - at, "%.7g ",
                                   keys[i].get(c, answer));
    }
    const struct cg_summary_word *words = cg_summary_words(&count);
    for (size_t i = 0; i < count && at < capacity; i++)
        at += (size_t)snprintf(
            row->text + at, capacity - at, "%s ",
            cg_table_word(answer == NULL ? "" : words[i].get(answer)).text);
    row->why[0] = '\0';
    if (answer == NULL) {
        snprintf(row->why, sizeof row->why, "%.400s", why->text);
        cg_plain_make(row->why);
    }
    if (at < capacity)
        snprintf(row->text + at, capacity - at, "%s",
                 outcome_of(answer != NULL ? CG_OK : why->status));
}

/* Ends the word at *at and moves behind it; NULL when there is none. */
static char *next_word(char **at)
{
    char *word = *at;
    size_t length = strcspn(word, " ");
    if (length == 0 || word[length] == '\0')
        return NULL;
    word[length] = '\0';
    *at = word + length + 1;
    return word;
}

bool cg_sweep_row_split(char *line, const struct cg_grid *grid,
                        struct cg_sweep_point *point)
{
    size_t count;
    cg_summary_keys(&count);
    if (!is_row(line) || count > CG_SWEEP_KEYS)
        return false;
    for (size_t i = 0; i < grid->axes; i++)
        if ((point->setting[i] = next_word(&line)) == NULL)
            return false;
    for (size_t i = 0; i < count; i++) {
        char *word = next_word(&line), *end;
        if (word == NULL)
            return false;
        point->value[i] = strtod(word, &end);
        if (*end != '\0')
            return false;
    }
    cg_summary_words(&count);
    for (size_t i = 0; i < count && i < CG_SWEEP_WORDS; i++)
        if ((point->word[i] = next_word(&line)) == NULL)
            return false;
    point->outcome = line;
    return is_outcome(line);
}

const char *cg_sweep_word(const struct cg_sweep_point *point, const char *key)
{
    size_t count;
    const struct cg_summary_word *words = cg_summary_words(&count);
    for (size_t i = 0; i < count && i < CG_SWEEP_WORDS; i++)
        if (strcmp(words[i].key, key) == 0)
            return point->word[i];
    return "";
}

double cg_sweep_value(const struct cg_sweep_point *point, const char *key)
{
    size_t count;
    const struct cg_summary_key *keys = cg_summary_keys(&count);
    for (size_t i = 0; i < count && i < CG_SWEEP_KEYS; i++)
        if (strcmp(keys[i].key, key) == 0)
            return point->value[i];
    return NAN;
}
