/* The words around a chart. */
#include <string.h>

#include "cautions.h"
#include "chart_parts.h"
#include "plain_text.h"
#include "wrap.h"

#define EM 0.6 /* how wide a letter is, of its size */
#define TITLE 13.0
#define SMALL 10.0
#define SMALL_LINE 13.0
#define ROOM (CG_CHART_WIDTH - 2.0 * CG_CHART_EDGE)
enum { FOOT_LINES = 3 };

double cg_chart_width(const char *text, double size)
{
    return EM * size * cg_text_width(text);
}

struct cg_chart_words cg_chart_fit(const char *text, double size, double width)
{
    struct cg_chart_words out = {""};
    size_t used = 0;
    double letters = width / (EM * size);
    bool whole = cg_text_width(text) <= letters;
    for (int n = 0; *text != '\0' && (whole || n + 4 <= letters); n++) {
        bool shown;
        size_t length = cg_plain_step(text, &shown);
        if (used + length + sizeof "..." > sizeof out.text)
            break;
        memcpy(out.text + used, text, length);
        used += length;
        text += length;
    }
    memcpy(out.text + used, *text != '\0' ? "..." : "", *text != '\0' ? 4 : 1);
    return out;
}

struct cg_chart_words cg_chart_axis_words(const char *name, enum cg_kind kind,
                                          bool inch)
{
    struct cg_chart_words out;
    const char *unit = cg_kind_unit(kind, inch);
    snprintf(out.text, sizeof out.text, "%s%s%s", name,
             unit[0] != '\0' ? ", " : "", unit);
    return out;
}

double cg_chart_top(const char *head, const char *of)
{
    return 22.0 + (head != NULL ? CG_CHART_LINE : 0.0) +
           (of != NULL ? CG_CHART_LINE : 0.0);
}

double cg_chart_begin(struct cg_draw *draw, double height, const char *title,
                      const char *words, const char *head, const char *of)
{
    double y = 18.0;
    cg_draw_begin(draw, CG_CHART_WIDTH, height, title, words);
    cg_draw_words(draw, (struct cg_point){CG_CHART_EDGE, y}, TITLE, "%s",
                  cg_chart_fit(title, TITLE, ROOM).text);
    if (head != NULL)
        cg_draw_words(draw, (struct cg_point){CG_CHART_EDGE, y += CG_CHART_LINE},
                      CG_CHART_HEAD, "%s",
                      cg_chart_fit(head, CG_CHART_HEAD, ROOM).text);
    if (of != NULL)
        cg_draw_words(draw, (struct cg_point){CG_CHART_EDGE, y += CG_CHART_LINE},
                      CG_CHART_LETTER, "%s",
                      cg_chart_fit(of, CG_CHART_LETTER, ROOM).text);
    return cg_chart_top(head, of);
}

/* Bytes of the words that fit a line. */
static size_t line_of(const char *text, double width)
{
    size_t best = 0, letters = (size_t)(width / (EM * SMALL));
    size_t length = strlen(text);
    if (length <= letters)
        return length;
    for (size_t i = 0; i <= letters; i++)
        if (text[i] == ' ')
            best = i;
    return best > 0 ? best : letters;
}

double cg_chart_foot(void)
{
    return FOOT_LINES * SMALL_LINE + 5.0;
}

char *cg_chart_end(struct cg_draw *draw, double y)
{
    const char *const *caution = cg_cautions_list();
    for (int i = 0, line = 0; i < 2; i++)
        for (const char *text = caution[i]; *text != '\0' && line < FOOT_LINES;
             line++) {
            size_t length = line_of(text, ROOM);
            cg_draw_words(
                draw,
                (struct cg_point){CG_CHART_EDGE, y + SMALL + line * SMALL_LINE},
                SMALL, "%.*s", (int)length, text);
            text += length;
            text += strspn(text, " ");
        }
    return cg_draw_end(draw);
}
