#include "write_html.h"

#include <stdio.h>
#include <string.h>

#include "report_items.h"
#include "write_html_table.h"

/* Where the writer stands. */
struct html {
    struct cg_page *page;
    const struct cg_report *report;
    const char *about; /* the heading over it: captions of rows */
};

static enum cg_item_kind kind_at(const struct html *html, size_t at)
{
    return at < html->report->items ? html->report->item[at].kind
                                    : CG_ITEM_SECTION;
}

/* The rows from `at` on, a table; where the next item stands. */
static size_t rows(struct html *html, size_t at)
{
    cg_write_html_rows(html->page, html->about);
    for (; kind_at(html, at) == CG_ITEM_ROW; at++)
        cg_write_html_row(html->page, &html->report->item[at],
                          html->report->inch);
    cg_page_table_end(html->page);
    return at;
}

static size_t steps(struct html *html, size_t at)
{
    cg_page_list(html->page);
    for (; kind_at(html, at) == CG_ITEM_STEP; at++)
        cg_page_item(html->page, "%s", html->report->item[at].text);
    cg_page_list_end(html->page);
    return at;
}

static void answer(struct html *html, const struct cg_report_item *item)
{
    if (item->text != NULL)
        cg_page_answer(html->page, item->label, item->text, NULL);
    else
        cg_page_answer(
            html->page, item->label,
            cg_quantity_one(item->quantity, html->report->inch).text,
            cg_quantity_one(item->quantity, !html->report->inch).text);
    if (item->remark != NULL)
        cg_page_say(html->page, "%s", item->remark);
}

/* A heading right above rows is their caption. */
static void heading(struct html *html, size_t at)
{
    html->about = html->report->item[at].text;
    if (kind_at(html, at) == CG_ITEM_SECTION)
        cg_page_section(html->page, html->about);
    else if (kind_at(html, at + 1) != CG_ITEM_ROW)
        cg_page_part(html->page, html->about);
}

/* One item, or several that belong together; where the next stands. */
static size_t write_item(struct html *html, size_t at)
{
    const struct cg_report_item *item = &html->report->item[at];
    switch (item->kind) {
    case CG_ITEM_SECTION:
    case CG_ITEM_PART:
        heading(html, at);
        break;
    case CG_ITEM_ANSWER:
        answer(html, item);
        break;
    case CG_ITEM_ROW:
        return rows(html, at);
    case CG_ITEM_STEP:
        return steps(html, at);
    case CG_ITEM_VERDICT:
        cg_page_verdict(html->page, item->good, "%s", item->text);
        break;
    case CG_ITEM_SAY:
        cg_page_say(html->page, "%s", item->text);
        break;
    case CG_ITEM_NOTE:
        cg_page_note(html->page, "%s", item->text);
        break;
    case CG_ITEM_TABLE:
        cg_write_html_table(html->page, item, html->report->inch);
        break;
    case CG_ITEM_BLANK:
        cg_page_blank(html->page, item->label);
        break;
    case CG_ITEM_LINES:
        cg_page_lines(html->page, item->text);
        break;
    case CG_ITEM_FIGURE:
        cg_page_figure(html->page, item->key, item->label, "%s", item->text);
        break;
    case CG_ITEM_DRAWING:
        cg_page_drawing(html->page, item->svg, item->label,
                        item->words != NULL ? item->words : item->text);
        break;
    case CG_ITEM_FIRST_END:
        cg_page_cautions(html->page);
        break;
    case CG_ITEM_KEY:
        break;
    }
    return at + 1;
}

enum cg_status cg_write_html(struct cg_page *page,
                             const struct cg_report *report,
                             struct cg_error *error)
{
    struct html html = {page, report, report->title};
    enum cg_status status = cg_report_status(report, error);
    if (status != CG_OK)
        return status;
    for (size_t at = 0; at < report->items;)
        at = write_item(&html, at);
    return CG_OK;
}
