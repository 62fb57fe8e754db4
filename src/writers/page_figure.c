#include <assert.h>
#include <stdarg.h>
#include <stdlib.h>

#include "html_text.h"
#include "page_parts.h"
#include "svg_inline.h"

/* Why there is no picture; what stands in the way of all is said once. */
static void tell_why(struct cg_page *page)
{
    const struct cg_drawing *drawing = page->drawing;
    if (drawing->trouble[0] == '\0') {
        cg_page_note(page, "A picture is left out: %s.", drawing->failed);
        return;
    }
    if (!page->told)
        cg_page_note(page,
                     "Pictures are left out: %s.  These are drawn by gnuplot; on "
                     "Debian, apt-get install gnuplot-nox, and make this page "
                     "again.",
                     drawing->trouble);
    page->told = true;
}

static void write_figure(struct cg_page *page, const char *svg,
                         const char *title, const char *words)
{
    char mark[32];
    page->figures++;
    snprintf(mark, sizeof mark, "figure-%zu", page->figures);
    struct cg_svg_words about = {mark, title, words};
    fputs("<figure>\n", page->file);
    cg_svg_inline(page->file, svg, &about);
    fprintf(page->file, "\n<figcaption>Figure %zu. ", page->figures);
    cg_html_put(page->file, title);
    fputs("</figcaption>\n</figure>\n", page->file);
}

void cg_page_drawing(struct cg_page *page, const char *svg, const char *title,
                     const char *words)
{
    assert(cg_svg_is_drawing(svg));
    write_figure(page, svg, title, words);
}

void cg_page_figure(struct cg_page *page, const char *script, const char *title,
                    const char *format, ...)
{
    char words[CG_PAGE_TEXT], *svg;
    va_list args;
    va_start(args, format);
    vsnprintf(words, sizeof words, format, args);
    va_end(args);
    cg_drawing_make(page->drawing, script, &svg);
    if (svg == NULL)
        tell_why(page);
    else if (cg_svg_is_drawing(svg))
        write_figure(page, svg, title, words);
    else
        cg_page_note(page,
                     "A picture is left out: plots/%s.gp drew what a "
                     "page does not take.",
                     script);
    free(svg);
}
