/* Where a chart's words go: marks first, as they must stand at their place,
 * then curves, then bands. */
#include <math.h>

#include "chart_parts.h"

#define HEIGHT 11.0
#define SPOT 4.0

static double width_of(const char *label)
{
    return cg_chart_width(label, CG_CHART_LETTER);
}

static void keep(struct cg_chart_plot *plot, struct cg_box box)
{
    if (box.width > 0.0)
        cg_place_take(&plot->place, box);
    else
        plot->keys++;
}

/* The spots and spans themselves. */
static void take_marks(struct cg_chart_plot *plot)
{
    for (size_t i = 0; i < plot->chart->marks; i++) {
        const struct cg_chart_mark *mark = &plot->chart->mark[i];
        struct cg_point a = cg_chart_at(plot, mark->x, mark->y);
        struct cg_point b = isnan(mark->to)
                                ? a
                                : cg_chart_at(plot, mark->x, mark->to);
        cg_place_take(&plot->place,
                      (struct cg_box){a.x - SPOT, fmin(a.y, b.y) - SPOT,
                                      2.0 * SPOT,
                                      fabs(a.y - b.y) + 2.0 * SPOT});
    }
}

/* Beside a span its middle is meant. */
static struct cg_box mark_label(const struct cg_chart_plot *plot,
                                const struct cg_chart_mark *mark)
{
    double y = isnan(mark->to) ? mark->y : 0.5 * (mark->y + mark->to);
    struct cg_point at = cg_chart_at(plot, mark->x, y);
    if (!isfinite(at.x + at.y))
        return (struct cg_box){0.0, 0.0, 0.0, 0.0};
    return cg_place_around(&plot->place, at, width_of(mark->label), HEIGHT);
}

void cg_chart_labels(struct cg_chart_plot *plot)
{
    const struct cg_chart *chart = plot->chart;
    struct cg_place *place = &plot->place;
    place->frame = plot->frame;
    for (size_t i = 0; i < chart->curves; i++)
        cg_place_curve(place, plot->curve[i].point, plot->curve[i].count);
    for (size_t i = 0; i < chart->bands; i++) {
        cg_place_curve(place, plot->low[i].point, plot->low[i].count);
        cg_place_curve(place, plot->high[i].point, plot->high[i].count);
    }
    take_marks(plot);
    for (size_t i = 0; i < chart->marks; i++)
        if (chart->mark[i].label != NULL)
            keep(plot, plot->mark_label[i] = mark_label(plot, &chart->mark[i]));
    for (size_t i = 0; i < chart->curves; i++)
        if (chart->curve[i].label != NULL)
            keep(plot, plot->curve_label[i] = cg_place_beside(
                       place, plot->curve[i].point, plot->curve[i].count,
                       width_of(chart->curve[i].label), HEIGHT));
    for (size_t i = 0; i < chart->bands; i++)
        if (chart->band[i].label != NULL)
            keep(plot, plot->band_label[i] = cg_place_between(
                       place, plot->low[i].point, plot->low[i].count,
                       plot->high[i].point, plot->high[i].count,
                       width_of(chart->band[i].label), HEIGHT));
}
