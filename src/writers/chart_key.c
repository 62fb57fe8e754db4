/* What found no room where it runs is named below the axes. */
#include <math.h>

#include "chart_parts.h"

#define SAMPLE 30.0 /* of the line, band or mark */
#define LEFT CG_CHART_EDGE
#define PAST (CG_CHART_EDGE + SAMPLE)

/* y of the next line. */
static double put_words(struct cg_draw *draw, double y, const char *label)
{
    double x = PAST + 6.0, room = CG_CHART_WIDTH - CG_CHART_EDGE - x;
    cg_draw_words(draw, (struct cg_point){x, y + 11.0}, CG_CHART_LETTER, "%s",
                  cg_chart_fit(label, CG_CHART_LETTER, room).text);
    return y + CG_CHART_LINE;
}

static void put_mark(struct cg_draw *draw, double y, bool spot)
{
    struct cg_point from = {LEFT, y}, to = {PAST, y};
    if (spot)
        cg_draw_spot(draw, (struct cg_point){0.5 * (LEFT + PAST), y}, 3.5);
    else
        cg_draw_span(draw, from, to);
}

void cg_chart_key(struct cg_draw *draw, const struct cg_chart_plot *plot,
                  double y)
{
    const struct cg_chart *chart = plot->chart;
    for (size_t i = 0; i < chart->curves; i++) {
        struct cg_point line[] = {{LEFT, y + 7.0}, {PAST, y + 7.0}};
        if (chart->curve[i].label == NULL || plot->curve_label[i].width > 0.0)
            continue;
        cg_draw_curve(draw, line, 2, chart->curve[i].dash);
        y = put_words(draw, y, chart->curve[i].label);
    }
    for (size_t i = 0; i < chart->bands; i++) {
        if (chart->band[i].label == NULL || plot->band_label[i].width > 0.0)
            continue;
        cg_draw_box(draw, LEFT, y + 2.0, SAMPLE, 10.0, chart->band[i].fill);
        y = put_words(draw, y, chart->band[i].label);
    }
    for (size_t i = 0; i < chart->marks; i++) {
        if (chart->mark[i].label == NULL || plot->mark_label[i].width > 0.0)
            continue;
        put_mark(draw, y + 7.0, isnan(chart->mark[i].to));
        y = put_words(draw, y, chart->mark[i].label);
    }
}
