#include "write_text_table.h"

#include "wrap.h"

enum { MOST_COLUMNS = 32 };

static struct cg_text figure(const struct cg_report_table *table, size_t cell,
                             bool inch)
{
    struct cg_quantity quantity =
        cg_quantity(table->cell[cell].kind, table->cell[cell].value);
    return table->column[cell % table->columns].kind == CG_SHOW_WORDS
               ? cg_quantity_one(quantity, inch)
               : cg_quantity_bare(quantity, inch);
}

/* The cell's text, in `text` where it is a figure. */
static const char *shown(const struct cg_report_table *table, size_t cell,
                         bool inch, struct cg_text *text)
{
    if (table->cell[cell].words != NULL)
        return table->cell[cell].words;
    *text = figure(table, cell, inch);
    return text->text;
}

static void find_widths(const struct cg_report_table *table, bool inch,
                        int width[MOST_COLUMNS])
{
    struct cg_text text;
    for (size_t i = 0; i < table->columns; i++) {
        int head = cg_text_width(table->column[i].head);
        int unit = cg_text_width(cg_kind_unit(table->column[i].kind, inch));
        width[i] = head > unit ? head : unit;
    }
    for (size_t i = 0; i < table->cells; i++) {
        int own = cg_text_width(shown(table, i, inch, &text));
        if (own > width[i % table->columns])
            width[i % table->columns] = own;
    }
}

/* The first column and columns of words stand to the left. */
static void put(FILE *out, const struct cg_report_table *table, size_t column,
                const char *text, int width)
{
    int pad = width - cg_text_width(text);
    bool words = column == 0 || table->column[column].kind == CG_SHOW_WORDS;
    bool last = column + 1 == table->columns;
    if (column > 0)
        fputs("  ", out);
    fprintf(out, "%*s%s%*s", words ? 0 : pad, "", text,
            words && !last ? pad : 0, "");
    if (last)
        fputc('\n', out);
}

static bool has_units(const struct cg_report_table *table, bool inch)
{
    for (size_t i = 0; i < table->columns; i++)
        if (*cg_kind_unit(table->column[i].kind, inch) != '\0')
            return true;
    return false;
}

void cg_write_text_table(FILE *out, const struct cg_report_item *item,
                         bool inch)
{
    const struct cg_report_table *table = item->table;
    int width[MOST_COLUMNS];
    struct cg_text text;
    if (table->columns == 0)
        return;
    find_widths(table, inch, width);
    if (*item->text != '\0') {
        fputs("  ", out);
        cg_wrap(out, item->text, 2, 2);
    }
    fputs("    ", out);
    for (size_t i = 0; i < table->columns; i++)
        put(out, table, i, table->column[i].head, width[i]);
    if (has_units(table, inch)) {
        fputs("    ", out);
        for (size_t i = 0; i < table->columns; i++)
            put(out, table, i, cg_kind_unit(table->column[i].kind, inch),
                width[i]);
    }
    for (size_t i = 0; i < table->cells; i++) {
        size_t column = i % table->columns;
        if (column == 0)
            fputs(table->mark[i / table->columns] == CG_MARK_BAD ? "  ! "
                                                                 : "    ",
                  out);
        put(out, table, column, shown(table, i, inch, &text), width[column]);
    }
}
