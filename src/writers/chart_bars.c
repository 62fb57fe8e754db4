#include "chart_bars.h"

#include <math.h>

#include "chart_parts.h"

#define BAR 9.0       /* how thick */
#define GROUP 6.0     /* between two bars' words and bars */
#define FIGURE 60.0   /* room for a figure behind the longest */
#define SAMPLE 30.0

static double length_of(double length)
{
    return isfinite(length) ? fmax(length, 0.0) : 0.0;
}

static bool has_two(const struct cg_bars *bars)
{
    for (size_t i = 0; i < bars->bars; i++)
        if (isfinite(bars->bar[i].more))
            return true;
    return false;
}

static double longest(const struct cg_bars *bars)
{
    double most = 0.0;
    for (size_t i = 0; i < bars->bars; i++)
        most = fmax(most, fmax(length_of(bars->bar[i].length),
                               length_of(bars->bar[i].more)));
    return most > 0.0 ? most : 1.0;
}

static double height_of(bool two)
{
    return CG_CHART_LINE + (two ? 2.0 : 1.0) * BAR + GROUP;
}

static void put_bar(struct cg_draw *draw, double y, const struct cg_bar *bar,
                    double scale, bool two)
{
    double room = CG_CHART_WIDTH - 2.0 * CG_CHART_EDGE;
    double first = scale * length_of(bar->length);
    double second = two ? scale * length_of(bar->more) : 0.0;
    cg_draw_words(draw, (struct cg_point){CG_CHART_EDGE, y + 11.0},
                  CG_CHART_LETTER, "%s",
                  cg_chart_fit(bar->label, CG_CHART_LETTER, room).text);
    y += CG_CHART_LINE;
    cg_draw_box(draw, CG_CHART_EDGE, y, first, BAR, CG_GREY_DARK);
    if (two && isfinite(bar->more))
        cg_draw_box(draw, CG_CHART_EDGE, y + BAR, second, BAR, CG_GREY_LIGHT);
    cg_draw_words(draw,
                  (struct cg_point){CG_CHART_EDGE + fmax(first, second) + 6.0,
                                    y + 8.5 + (two ? 0.5 * BAR : 0.0)},
                  CG_CHART_LETTER, "%s", bar->figure);
}

static double put_key(struct cg_draw *draw, double y, const char *words,
                      enum cg_grey fill)
{
    cg_draw_box(draw, CG_CHART_EDGE, y + 2.0, SAMPLE, BAR, fill);
    cg_draw_words(draw, (struct cg_point){CG_CHART_EDGE + SAMPLE + 6.0, y + 11.0},
                  CG_CHART_LETTER, "%s", words);
    return y + CG_CHART_LINE;
}

char *cg_bars_draw(const struct cg_bars *bars)
{
    struct cg_draw draw;
    bool two = has_two(bars);
    double scale =
        (CG_CHART_WIDTH - 2.0 * CG_CHART_EDGE - FIGURE) / longest(bars);
    double foot = cg_chart_top(bars->head, bars->of) + GROUP +
                  (double)bars->bars * height_of(two) +
                  (two ? 2.0 * CG_CHART_LINE : 0.0) + 4.0;
    double y = cg_chart_begin(&draw, foot + cg_chart_foot(), bars->title,
                              bars->words, bars->head, bars->of) +
               GROUP;
    for (size_t i = 0; i < bars->bars; i++, y += height_of(two))
        put_bar(&draw, y, &bars->bar[i], scale, two);
    if (two) {
        y = put_key(&draw, y, bars->length, CG_GREY_DARK);
        put_key(&draw, y, bars->more, CG_GREY_LIGHT);
    }
    return cg_chart_end(&draw, foot);
}
