#include "page.h"

#include <ctype.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "cautions.h"
#include "html_text.h"
#include "page_parts.h"
#include "page_style.h"

enum cg_status cg_page_hold(const char *path, struct cg_part_file *part_file,
                            struct cg_error *error)
{
    return cg_part_file_open_at(path, part_file, error);
}

/* <tag class="..."> text </tag>, a line of its own. */
static void element(struct cg_page *page, const char *tag, const char *class,
                    const char *text)
{
    fprintf(page->file, "<%s", tag);
    if (class != NULL)
        fprintf(page->file, " class=\"%s\"", class);
    fputc('>', page->file);
    cg_html_put(page->file, text);
    fprintf(page->file, "</%s>\n", tag);
}

static void write_head(struct cg_page *page, const struct cg_page_head *head)
{
    fputs("<!DOCTYPE html>\n"
          "<html xmlns=\"http://www.w3.org/1999/xhtml\"",
          page->file);
    fputs(head->one_sheet ? " class=\"sheet\"" : "", page->file);
    fputs(" lang=\"en\">\n"
          "<head>\n<meta charset=\"utf-8\"/>\n"
          "<meta name=\"viewport\" content=\"width=device-width, "
          "initial-scale=1\"/>\n"
          "<meta name=\"color-scheme\" content=\"light dark\"/>\n"
          "<meta name=\"generator\" content=\"coldgap " CG_VERSION "\"/>\n"
          /* Else a browser asks the page's server for one. */
          "<link rel=\"icon\" href=\"data:,\"/>\n",
          page->file);
    element(page, "title", NULL, head->title);
    fprintf(page->file, "<style>\n%s", cg_page_style());
    cg_page_style_print(page->file);
    fputs("</style>\n</head>\n<body>\n<main>\n", page->file);
    element(page, "h1", NULL, head->title);
    fputs("<p class=\"run\">coldgap " CG_VERSION ": <code>", page->file);
    cg_html_put(page->file, head->run);
    fputs("</code></p>\n", page->file);
}

static void end_section(struct cg_page *page)
{
    if (page->in_section)
        fputs("</section>\n", page->file);
    page->in_section = false;
}

void cg_page_cautions(struct cg_page *page)
{
    end_section(page);
    page->cautioned = true;
    fputs("<section class=\"cautions\" aria-labelledby=\"cautions\">\n"
          "<h2 id=\"cautions\">Cautions</h2>\n<ul>\n",
          page->file);
    for (const char *const *line = cg_cautions_list(); *line != NULL; line++)
        element(page, "li", NULL, *line);
    fputs("</ul>\n</section>\n", page->file);
}

enum cg_status cg_page_open(const struct cg_part_file *part_file,
                            const struct cg_page_head *head,
                            struct cg_drawing *drawing, struct cg_page **page,
                            struct cg_error *error)
{
    struct cg_page *made = calloc(1, sizeof *made);
    if (made == NULL)
        return cg_error_set(error, CG_NO_MEMORY, "out of memory");
    made->part_file = *part_file;
    made->file = made->part_file.file;
    made->drawing = drawing;
    write_head(made, head);
    *page = made;
    return CG_OK;
}

enum cg_status cg_page_close(struct cg_page *page, enum cg_status status,
                             struct cg_error *error)
{
    end_section(page);
    if (!page->cautioned)
        cg_page_cautions(page);
    element(page, "p", "last", cg_cautions_short());
    fputs("</main>\n</body>\n</html>\n", page->file);
    status = cg_part_file_close(&page->part_file, status, error);
    free(page);
    return status;
}

void cg_page_section(struct cg_page *page, const char *title)
{
    end_section(page);
    page->sections++;
    fprintf(page->file,
            "<section aria-labelledby=\"section-%zu\">\n"
            "<h2 id=\"section-%zu\">",
            page->sections, page->sections);
    snprintf(page->heading, sizeof page->heading, "%s", title);
    cg_html_put(page->file, title);
    fputs("</h2>\n", page->file);
    page->in_section = true;
}

void cg_page_part(struct cg_page *page, const char *title)
{
    element(page, "h3", NULL, title);
}

/* The text of a format goes through a buffer of its own to be escaped. */
#define FORMATTED(text, format)                                              \
    char text[CG_PAGE_TEXT];                                                 \
    va_list args;                                                            \
    va_start(args, format);                                                  \
    vsnprintf(text, sizeof(text), format, args);                             \
    va_end(args)

void cg_page_say(struct cg_page *page, const char *format, ...)
{
    FORMATTED(text, format);
    element(page, "p", NULL, text);
}

void cg_page_note(struct cg_page *page, const char *format, ...)
{
    FORMATTED(text, format);
    fputs("<p class=\"note\"><strong>Note:</strong> ", page->file);
    cg_html_put(page->file, text);
    fputs("</p>\n", page->file);
}

void cg_page_answer(struct cg_page *page, const char *name, const char *first,
                    const char *other)
{
    fputs("<p class=\"answer\">", page->file);
    cg_html_put(page->file, name);
    fputs(" <strong>", page->file);
    cg_html_put(page->file, first);
    fputs("</strong>", page->file);
    if (other != NULL) {
        fputs(" <span>(", page->file);
        cg_html_put(page->file, other);
        fputs(")</span>", page->file);
    }
    fputs("</p>\n", page->file);
}

void cg_page_verdict(struct cg_page *page, bool good, const char *format, ...)
{
    FORMATTED(text, format);
    element(page, "p", good ? "verdict good" : "verdict bad", text);
}

void cg_page_list(struct cg_page *page)
{
    fputs("<ol>\n", page->file);
}

void cg_page_item(struct cg_page *page, const char *format, ...)
{
    FORMATTED(text, format);
    element(page, "li", NULL, text);
}

void cg_page_list_end(struct cg_page *page)
{
    fputs("</ol>\n", page->file);
}

void cg_page_blank(struct cg_page *page, const char *name)
{
    fputs("<p class=\"blank\">", page->file);
    cg_html_put(page->file, name);
    fputs(" <span></span></p>\n", page->file);
}
