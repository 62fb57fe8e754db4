#include "write_html_table.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { MOST_COLUMNS = 32, CELL = 256 };

void cg_write_html_rows(struct cg_page *page, const char *caption)
{
    static const char *const heads[] = {"Quantity", "Value", "In other units"};
    cg_page_table(page, caption, heads, 3);
}

void cg_write_html_row(struct cg_page *page, const struct cg_report_item *item,
                       bool inch)
{
    char name[CELL];
    struct cg_text shown = cg_quantity_one(item->quantity, inch);
    struct cg_text other = cg_quantity_one(item->quantity, !inch);
    bool both = cg_kind_converts(item->quantity.kind);
    snprintf(name, sizeof name, "%s%s%s", item->label,
             item->remark != NULL ? ", " : "",
             item->remark != NULL ? item->remark : "");
    const char *const cells[] = {name, shown.text, other.text};
    if (both)
        cg_page_row(page, cells, 3, NULL);
    else
        cg_page_wide_row(page, name,
                         item->text != NULL ? item->text : shown.text);
}

/* "closure, mm (in)". */
static void head_of(const struct cg_report_column *column, bool inch,
                    char head[CELL])
{
    const char *unit = cg_kind_unit(column->kind, inch);
    if (*unit == '\0')
        snprintf(head, CELL, "%s", column->head);
    else if (cg_kind_converts(column->kind))
        snprintf(head, CELL, "%s, %s (%s)", column->head, unit,
                 cg_kind_unit(column->kind, !inch));
    else
        snprintf(head, CELL, "%s, %s", column->head, unit);
}

static void cell_of(const struct cg_report_table *table, size_t at, bool inch,
                    char cell[CELL])
{
    struct cg_quantity quantity =
        cg_quantity(table->cell[at].kind, table->cell[at].value);
    bool own = table->column[at % table->columns].kind == CG_SHOW_WORDS;
    struct cg_text (*show)(struct cg_quantity, bool) =
        own ? cg_quantity_one : cg_quantity_bare;
    if (table->cell[at].words != NULL)
        snprintf(cell, CELL, "%s", table->cell[at].words);
    else if (cg_kind_converts(quantity.kind) && !isnan(quantity.value))
        snprintf(cell, CELL, "%s (%s)", show(quantity, inch).text,
                 show(quantity, !inch).text);
    else
        snprintf(cell, CELL, "%s", show(quantity, inch).text);
}

static const char *class_of(enum cg_report_mark mark)
{
    return mark == CG_MARK_GOOD ? "good" : mark == CG_MARK_BAD ? "bad" : NULL;
}

void cg_write_html_table(struct cg_page *page,
                         const struct cg_report_item *item, bool inch)
{
    const struct cg_report_table *table = item->table;
    char text[MOST_COLUMNS][CELL];
    const char *cells[MOST_COLUMNS];
    for (size_t i = 0; i < table->columns; i++) {
        head_of(&table->column[i], inch, text[i]);
        cells[i] = text[i];
    }
    cg_page_table(page, item->text, cells, table->columns);
    for (size_t row = 0; (row + 1) * table->columns <= table->cells; row++) {
        for (size_t i = 0; i < table->columns; i++)
            cell_of(table, row * table->columns + i, inch, text[i]);
        cg_page_row(page, cells, table->columns, class_of(table->mark[row]));
    }
    cg_page_table_end(page);
}
