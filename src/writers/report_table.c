/* Tables of a report: filled cell by cell. */
#define _POSIX_C_SOURCE 200809L /* strdup */

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "report_items.h"

static struct cg_report_table *table_of(const struct cg_report_column *columns,
                                        size_t count)
{
    struct cg_report_table *made = calloc(1, sizeof *made);
    if (made == NULL)
        return NULL;
    made->column = calloc(count, sizeof *made->column);
    made->columns = made->column != NULL ? count : 0;
    bool whole = made->column != NULL;
    for (size_t i = 0; i < made->columns; i++) {
        made->column[i] = (struct cg_report_column){
            strdup(columns[i].key), strdup(columns[i].head), columns[i].kind};
        whole = whole && made->column[i].key != NULL &&
                made->column[i].head != NULL;
    }
    if (whole)
        return made;
    cg_report_table_free(made);
    return NULL;
}

void cg_report_table_free(struct cg_report_table *table)
{
    if (table == NULL)
        return;
    for (size_t i = 0; i < table->cells; i++)
        free(table->cell[i].words);
    for (size_t i = 0; i < table->columns; i++) {
        free((char *)table->column[i].key);
        free((char *)table->column[i].head);
    }
    free(table->column);
    free(table->cell);
    free(table->mark);
    free(table);
}

void cg_report_table(struct cg_report *report, const char *key,
                     const char *caption,
                     const struct cg_report_column *columns, size_t count)
{
    struct cg_report_table *table = table_of(columns, count);
    if (table == NULL)
        report->no_memory = true;
    cg_report_take(
        report, (struct cg_report_item){.kind = CG_ITEM_TABLE,
                                        .key = cg_report_copy(report, key),
                                        .text = cg_report_copy(report, caption),
                                        .table = table});
}

/* The table under way; NULL once memory is out. */
static struct cg_report_table *under_way(struct cg_report *report)
{
    if (report->no_memory)
        return NULL;
    assert(report->items > 0 &&
           report->item[report->items - 1].kind == CG_ITEM_TABLE);
    return report->item[report->items - 1].table;
}

static bool grow(struct cg_report_table *table)
{
    size_t allocated = table->allocated > 0 ? 2 * table->allocated : 64;
    struct cg_report_cell *cell =
        realloc(table->cell, allocated * sizeof *cell);
    if (cell != NULL)
        table->cell = cell;
    enum cg_report_mark *mark = realloc(table->mark, allocated * sizeof *mark);
    if (mark != NULL)
        table->mark = mark;
    if (cell == NULL || mark == NULL)
        return false;
    table->allocated = allocated;
    return true;
}

static void put(struct cg_report *report, struct cg_quantity quantity,
                char *words)
{
    struct cg_report_table *table = under_way(report);
    if (table == NULL || (table->cells == table->allocated && !grow(table))) {
        report->no_memory = true;
        free(words);
        return;
    }
    if (table->cells % table->columns == 0)
        table->mark[table->cells / table->columns] = CG_MARK_NONE;
    if (words == NULL &&
        table->column[table->cells % table->columns].kind != CG_SHOW_WORDS)
        quantity.kind = table->column[table->cells % table->columns].kind;
    table->cell[table->cells++] =
        (struct cg_report_cell){quantity.value, words, quantity.kind};
}

void cg_report_cell(struct cg_report *report, double value)
{
    put(report, cg_quantity(CG_SHOW_WORDS, value), NULL);
}

void cg_report_cell_quantity(struct cg_report *report,
                             struct cg_quantity quantity)
{
    put(report, quantity, NULL);
}

void cg_report_cell_words(struct cg_report *report, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    char *words = cg_report_text(report, format, args);
    va_end(args);
    put(report, cg_quantity(CG_SHOW_WORDS, 0.0), words);
}

void cg_report_mark(struct cg_report *report, enum cg_report_mark mark)
{
    struct cg_report_table *table = under_way(report);
    if (table != NULL && table->cells > 0)
        table->mark[(table->cells - 1) / table->columns] = mark;
}
