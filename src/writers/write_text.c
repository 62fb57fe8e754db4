#include "write_text.h"

#include <string.h>

#include "cautions.h"
#include "report_items.h"
#include "wrap.h"
#include "write_text_table.h"

enum { INDENT = 2, GAP = 2, WIDEST_LABEL = 32 };

/* Where the writer stands. */
struct text {
    FILE *out;
    const struct cg_report *report;
    bool in_section;
    int label; /* width of the labels of the rows under way */
};

static bool is_row(const struct cg_report_item *item)
{
    return item->kind == CG_ITEM_ROW || item->kind == CG_ITEM_ANSWER;
}

static bool is_heading(const struct cg_report_item *item)
{
    return item->kind == CG_ITEM_SECTION || item->kind == CG_ITEM_PART;
}

/* Widest label of the rows from item `at` on. */
static int label_width(const struct cg_report *report, size_t at)
{
    int width = 0;
    for (; at < report->items && is_row(&report->item[at]); at++) {
        int own = cg_text_width(report->item[at].label);
        if (own > width && own <= WIDEST_LABEL)
            width = own;
    }
    return width;
}

static void write_row(struct text *text, size_t at)
{
    const struct cg_report_item *item = &text->report->item[at];
    if (at == 0 || !is_row(&text->report->item[at - 1]))
        text->label = label_width(text->report, at);
    int own = cg_text_width(item->label);
    int pad = text->label > own ? text->label - own : 0;
    int indent = text->in_section ? INDENT : 0;
    int column = indent + own + pad + GAP;
    fprintf(text->out, "%*s%s%*s", indent, "", item->label, pad + GAP, "");
    struct cg_text shown = cg_quantity_text(item->quantity, text->report->inch);
    const char *value = item->text != NULL ? item->text : shown.text;
    if (item->remark == NULL) {
        cg_wrap(text->out, value, column, column);
        return;
    }
    if (item->kind == CG_ITEM_ANSWER) {
        fprintf(text->out, "%s\n%*s", value, column, "");
        cg_wrap(text->out, item->remark, column, column);
        return;
    }
    cg_wrap_pair(text->out, value, item->remark, column);
}

static void write_words(struct text *text, const char *before,
                        const struct cg_report_item *item)
{
    int indent = text->in_section ? INDENT : 0;
    int hang = indent + (int)strlen(before);
    fprintf(text->out, "%*s%s", indent, "", before);
    cg_wrap(text->out, item->text, hang, hang);
}

/* With its number among those that follow each other. */
static void write_step(struct text *text, size_t at)
{
    char before[32];
    size_t number = 1;
    while (number <= at && text->report->item[at - number].kind == CG_ITEM_STEP)
        number++;
    snprintf(before, sizeof before, "%zu. ", number);
    write_words(text, before, &text->report->item[at]);
}

static bool shows(const struct cg_report_item *item)
{
    return item->kind != CG_ITEM_FIGURE && item->kind != CG_ITEM_DRAWING &&
           item->kind != CG_ITEM_FIRST_END && item->kind != CG_ITEM_KEY;
}

/* Whether a section has pictures alone, which a terminal does not show. */
static bool only_figures(const struct cg_report *report, size_t at)
{
    bool any = false;
    while (++at < report->items && !shows(&report->item[at]) &&
           report->item[at].kind != CG_ITEM_FIRST_END)
        any = true;
    return any &&
           (at == report->items || report->item[at].kind == CG_ITEM_SECTION);
}

static void write_section(struct text *text, size_t at)
{
    if (only_figures(text->report, at))
        return;
    fprintf(text->out, "\n%s\n", text->report->item[at].text);
    text->in_section = true;
}

/* Lines stand apart from what is above and below, a table from what is above;
 * headings see to that by themselves. */
static void write_space(struct text *text, size_t at)
{
    const struct cg_report_item *item = text->report->item;
    size_t before = at;
    while (before > 0 && !shows(&item[before - 1]))
        before--;
    if (before == 0 || !shows(&item[at]))
        return;
    const struct cg_report_item *above = &item[before - 1], *below = &item[at];
    bool table = below->kind == CG_ITEM_TABLE && text->in_section;
    if ((above->kind == CG_ITEM_LINES || below->kind == CG_ITEM_LINES ||
         table) &&
        !is_heading(above) && !is_heading(below))
        fputc('\n', text->out);
}

static void write_item(struct text *text, size_t at)
{
    const struct cg_report_item *item = &text->report->item[at];
    write_space(text, at);
    switch (item->kind) {
    case CG_ITEM_SECTION:
        write_section(text, at);
        break;
    case CG_ITEM_PART:
        fprintf(text->out, "\n%*s%s\n", INDENT, "", item->text);
        break;
    case CG_ITEM_ANSWER:
    case CG_ITEM_ROW:
        write_row(text, at);
        break;
    case CG_ITEM_VERDICT:
    case CG_ITEM_SAY:
        write_words(text, "", item);
        break;
    case CG_ITEM_STEP:
        write_step(text, at);
        break;
    case CG_ITEM_NOTE:
        write_words(text, "Note: ", item);
        break;
    case CG_ITEM_TABLE:
        cg_write_text_table(text->out, item, text->report->inch);
        break;
    case CG_ITEM_BLANK:
        fprintf(text->out, "%*s%s ______________________\n", INDENT, "",
                item->label);
        break;
    case CG_ITEM_LINES:
        fputs(item->text, text->out);
        break;
    case CG_ITEM_FIGURE:
    case CG_ITEM_DRAWING:
    case CG_ITEM_FIRST_END:
    case CG_ITEM_KEY:
        break;
    }
}

enum cg_status cg_write_text(FILE *out, const struct cg_report *report,
                             bool brief, struct cg_error *error)
{
    struct text text = {.out = out, .report = report};
    enum cg_status status = cg_report_status(report, error);
    if (status != CG_OK)
        return status;
    fprintf(out, "%s\n\n", report->run);
    for (size_t i = 0; i < report->items; i++) {
        if (brief && report->item[i].kind == CG_ITEM_FIRST_END)
            break;
        write_item(&text, i);
    }
    fputc('\n', out);
    cg_cautions_print(out);
    return CG_OK;
}
