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
    bool in_section, apart; /* the item before was words, not a row */
    int label;              /* width of the labels of the rows under way */
};

static bool is_row(const struct cg_report_item *item)
{
    return item->kind == CG_ITEM_ROW || item->kind == CG_ITEM_ANSWER;
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

static void write_section(struct text *text, const char *title)
{
    fprintf(text->out, "\n%s\n", title);
    text->in_section = true;
}

static void write_item(struct text *text, size_t at)
{
    const struct cg_report_item *item = &text->report->item[at];
    switch (item->kind) {
    case CG_ITEM_SECTION:
        write_section(text, item->text);
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
        write_words(text, "- ", item);
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
    fprintf(out, "\n%s", cg_cautions_text());
    return CG_OK;
}
