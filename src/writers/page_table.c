#include <string.h>

#include "html_text.h"
#include "page_parts.h"

/* A name such as charge.boost_kPa may break after its signs. */
static void put_head(FILE *file, const char *text)
{
    char piece[CG_PAGE_TEXT];
    while (*text != '\0') {
        size_t length = strcspn(text, "._");
        length += text[length] != '\0';
        snprintf(piece, sizeof piece, "%.*s", (int)length, text);
        cg_html_put(file, piece);
        text += length;
        if (*text != '\0')
            fputs("<wbr/>", file);
    }
}

/* A table wider than the screen scrolls in its own box, by keyboard too. */
void cg_page_table(struct cg_page *page, const char *caption,
                   const char *const *heads, size_t columns)
{
    page->tables++;
    fprintf(page->file,
            "<div class=\"table\" role=\"region\" tabindex=\"0\" "
            "aria-labelledby=\"table-%zu\">\n<table>\n"
            "<caption%s><span id=\"table-%zu\">",
            page->tables,
            strcmp(caption, page->heading) == 0 ? " class=\"unseen\"" : "",
            page->tables);
    cg_html_put(page->file, caption);
    fputs("</span></caption>\n<thead><tr>", page->file);
    for (size_t i = 0; i < columns; i++) {
        fputs("<th scope=\"col\">", page->file);
        put_head(page->file, heads[i]);
        fputs("</th>", page->file);
    }
    fputs("</tr></thead>\n<tbody>\n", page->file);
}

void cg_page_row(struct cg_page *page, const char *const *cells,
                 size_t columns, const char *class)
{
    if (class != NULL)
        fprintf(page->file, "<tr class=\"%s\">", class);
    else
        fputs("<tr>", page->file);
    for (size_t i = 0; i < columns; i++) {
        fputs(i == 0 ? "<th scope=\"row\">" : "<td>", page->file);
        cg_html_put(page->file, cells[i]);
        fputs(i == 0 ? "</th>" : "</td>", page->file);
    }
    fputs("</tr>\n", page->file);
}

void cg_page_wide_row(struct cg_page *page, const char *name,
                      const char *text)
{
    fputs("<tr><th scope=\"row\">", page->file);
    cg_html_put(page->file, name);
    fputs("</th><td colspan=\"2\" class=\"plain\">", page->file);
    cg_html_put(page->file, text);
    fputs("</td></tr>\n", page->file);
}

void cg_page_table_end(struct cg_page *page)
{
    fputs("</tbody>\n</table>\n</div>\n", page->file);
}
