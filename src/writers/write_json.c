#include "write_json.h"

#include <math.h>

#include "cautions.h"
#include "json_text.h"
#include "report_items.h"

static const char *const word_of[] = {
    [CG_ITEM_SECTION] = "section", [CG_ITEM_PART] = "part",
    [CG_ITEM_ANSWER] = "answer",   [CG_ITEM_VERDICT] = "verdict",
    [CG_ITEM_NOTE] = "note",       [CG_ITEM_SAY] = "say",
    [CG_ITEM_ROW] = "row",         [CG_ITEM_TABLE] = "table",
    [CG_ITEM_FIGURE] = "figure",   [CG_ITEM_STEP] = "step",
    [CG_ITEM_DRAWING] = "figure",
    [CG_ITEM_BLANK] = "blank",     [CG_ITEM_LINES] = "lines",
};

static void put_member(FILE *out, const char *name, const char *text)
{
    if (text == NULL)
        return;
    fprintf(out, ", \"%s\": ", name);
    cg_json_string(out, text);
}

static void put_quantity(FILE *out, struct cg_quantity quantity)
{
    fputs(", \"value\": ", out);
    cg_json_number(out, quantity.value);
    put_member(out, "unit", cg_kind_si(quantity.kind));
    put_member(out, "metric", cg_quantity_one(quantity, false).text);
    put_member(out, "inch", cg_quantity_one(quantity, true).text);
}

static void put_cell(FILE *out, const struct cg_report_table *table,
                     size_t cell)
{
    if (table->cell[cell].words != NULL)
        cg_json_string(out, table->cell[cell].words);
    else
        cg_json_number(out, table->cell[cell].value);
}

static void put_shown(FILE *out, const struct cg_report_table *table,
                      size_t cell, bool inch)
{
    struct cg_quantity quantity = {table->cell[cell].kind,
                                   table->cell[cell].value};
    if (table->cell[cell].words != NULL)
        cg_json_string(out, table->cell[cell].words);
    else
        cg_json_string(out, cg_quantity_one(quantity, inch).text);
}

/* What the table shows: its values, or its texts in one system of units. */
enum shown { VALUES, METRIC, INCH };

static void put_rows(FILE *out, const char *name,
                     const struct cg_report_table *table, enum shown shown)
{
    fprintf(out, ", \"%s\": [", name);
    size_t column = 0;
    for (size_t i = 0; i < table->cells; i++) {
        fputs(column > 0 ? ", " : i > 0 ? "], [" : "[", out);
        if (shown == VALUES)
            put_cell(out, table, i);
        else
            put_shown(out, table, i, shown == INCH);
        column = column + 1 < table->columns ? column + 1 : 0;
    }
    fputs(table->cells > 0 ? "]]" : "]", out);
}

static void put_table(FILE *out, const struct cg_report_table *table)
{
    fputs(", \"columns\": [", out);
    for (size_t i = 0; i < table->columns; i++) {
        fprintf(out, "%s{\"key\": ", i > 0 ? ", " : "");
        cg_json_string(out, table->column[i].key);
        put_member(out, "head", table->column[i].head);
        put_member(out, "unit", cg_kind_si(table->column[i].kind));
        fputc('}', out);
    }
    fputc(']', out);
    put_rows(out, "rows", table, VALUES);
    put_rows(out, "metric", table, METRIC);
    put_rows(out, "inch", table, INCH);
}

static void put_drawing(FILE *out, const struct cg_report_item *item)
{
    fputs("{\"is\": \"drawing\"", out);
    put_member(out, "name", item->key);
    put_member(out, "title", item->label);
    put_member(out, "words", item->words != NULL ? item->words : item->text);
    put_member(out, "svg", item->svg);
    fputc('}', out);
}

static void put_item(FILE *out, const struct cg_report_item *item)
{
    fprintf(out, "{\"is\": \"%s\"", word_of[item->kind]);
    put_member(out, "key", item->key);
    put_member(out, "label", item->label);
    if (item->kind == CG_ITEM_VERDICT)
        fprintf(out, ", \"good\": %s", item->good ? "true" : "false");
    put_member(out, "text", item->text);
    put_member(out, "remark", item->remark);
    if (item->quantity.kind != CG_SHOW_WORDS)
        put_quantity(out, item->quantity);
    if (item->table != NULL)
        put_table(out, item->table);
    fputc('}', out);
}

/* Items `from` up to the end of their part; where the next begins. */
static size_t put_items(FILE *out, const struct cg_report *report,
                        bool drawings, size_t from)
{
    bool any = false;
    for (; from < report->items; from++) {
        const struct cg_report_item *item = &report->item[from];
        if (item->kind == CG_ITEM_FIRST_END)
            return from + 1;
        if (item->kind == CG_ITEM_KEY)
            continue;
        fputs(any ? ",\n  " : "\n  ", out);
        if (drawings && item->kind == CG_ITEM_DRAWING)
            put_drawing(out, item);
        else
            put_item(out, item);
        any = true;
    }
    return from;
}

static void put_summary(FILE *out, const struct cg_report *report)
{
    bool any = false;
    for (size_t i = 0; i < report->items; i++) {
        const struct cg_report_item *item = &report->item[i];
        if (item->kind != CG_ITEM_KEY)
            continue;
        fputs(any ? ",\n  " : "\n  ", out);
        cg_json_string(out, item->key);
        fputs(": {\"value\": ", out);
        if (item->remark != NULL)
            cg_json_string(out, item->remark);
        else
            cg_json_number(out, item->quantity.value);
        put_member(out, "unit", item->text);
        fputc('}', out);
        any = true;
    }
}

static void put_cautions(FILE *out)
{
    const char *const *line = cg_cautions_list();
    for (size_t i = 0; line[i] != NULL; i++) {
        fputs(i > 0 ? ",\n  " : "\n  ", out);
        cg_json_string(out, line[i]);
    }
}

enum cg_status cg_write_json(FILE *out, const struct cg_report *report,
                             bool drawings, struct cg_error *error)
{
    enum cg_status status = cg_report_status(report, error);
    if (status != CG_OK)
        return status;
    fputs("{\"program\": \"coldgap\"", out);
    put_member(out, "version", CG_VERSION);
    put_member(out, "run", report->run);
    put_member(out, "title", report->title);
    fputs(",\n\"cautions\": [", out);
    put_cautions(out);
    fputs("],\n\"summary\": {", out);
    put_summary(out, report);
    fputs("},\n\"first\": [", out);
    size_t next = put_items(out, report, drawings, 0);
    fputs("],\n\"rest\": [", out);
    put_items(out, report, drawings, next);
    fputs("]}\n", out);
    return CG_OK;
}
