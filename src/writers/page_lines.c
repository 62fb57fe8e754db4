#include <string.h>

#include "html_text.h"
#include "page_parts.h"

/* What the lines of a text are part of. */
enum block { NONE, WORDS, HAND, COLUMNS };

static const char *const opening[] = {
    [NONE] = "",
    [WORDS] = "<p>",
    [HAND] = "<pre class=\"hand\">",
    [COLUMNS] = ("<div class=\"table\" role=\"region\" tabindex=\"0\" "
                 "aria-label=\"lines in columns\"><pre>"),
};
static const char *const closing[] = {
    [NONE] = "",
    [WORDS] = "</p>\n",
    [HAND] = "</pre>\n",
    [COLUMNS] = "</pre></div>\n",
};

/* A block stays what its first line made it. */
static enum block block_of(const char *line, size_t length, enum block now)
{
    size_t indent = strspn(line, " ");
    if (length == 0)
        return NONE;
    if (indent < 2)
        return WORDS;
    if (now == HAND || now == COLUMNS)
        return now;
    return indent < 4 ? HAND : COLUMNS;
}

/* A line that is too long for the paper goes on further in. */
static void put_line(FILE *file, enum block block, const char *line)
{
    fputs(block == HAND ? "<span>" : "", file);
    cg_html_put(file, line);
    fputs(block == HAND ? "\n</span>" : "\n", file);
}

void cg_page_lines(struct cg_page *page, const char *text)
{
    char line[CG_PAGE_TEXT];
    enum block now = NONE;
    while (*text != '\0') {
        size_t length = strcspn(text, "\n");
        enum block next = block_of(text, length, now);
        if (next != now) {
            fputs(closing[now], page->file);
            fputs(opening[next], page->file);
        }
        now = next;
        snprintf(line, sizeof line, "%.*s", (int)length, text);
        if (now != NONE)
            put_line(page->file, now, line);
        text += length + (text[length] == '\n');
    }
    fputs(closing[now], page->file);
}
