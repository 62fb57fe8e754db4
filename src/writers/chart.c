#include "chart.h"

#include <math.h>
#include <stdlib.h>

#include "chart_parts.h"

#define LEFT 44.0
#define RIGHT 46.0 /* with ticks there */
#define UP 190.0
#define AXIS_HEAD 22.0 /* above the frame: name and units of y */
#define AXIS_FOOT 38.0
#define MORE 0.07 /* above and below the curves */

static struct cg_range shown(struct cg_range range,
                             const struct cg_chart_axis *axis, bool inch)
{
    if (!(range.low <= range.high))
        return range;
    return (struct cg_range){
        cg_quantity_number(cg_quantity(axis->kind, range.low), inch),
        cg_quantity_number(cg_quantity(axis->kind, range.high), inch)};
}

/* What the axes span, as it is shown. */
static void set_ranges(struct cg_chart_plot *plot)
{
    const struct cg_chart *chart = plot->chart;
    struct cg_range x = cg_range_none(), y = cg_range_none();
    if (chart->from_zero)
        cg_range_add(&y, 0.0);
    for (size_t i = 0; i < chart->curves; i++) {
        cg_range_add_all(&x, chart->curve[i].x, chart->curve[i].count);
        cg_range_add_all(&y, chart->curve[i].y, chart->curve[i].count);
    }
    for (size_t i = 0; i < chart->bands; i++) {
        cg_range_add_all(&x, chart->band[i].x, chart->band[i].count);
        cg_range_add_all(&y, chart->band[i].low, chart->band[i].count);
        cg_range_add_all(&y, chart->band[i].high, chart->band[i].count);
    }
    for (size_t i = 0; i < chart->marks; i++) {
        cg_range_add(&x, chart->mark[i].x);
        cg_range_add(&y, chart->mark[i].y);
        cg_range_add(&y, chart->mark[i].to);
    }
    plot->x.range = cg_range_open(shown(x, &chart->x, chart->inch));
    plot->y.range = cg_range_wider(
        cg_range_open(shown(y, &chart->y, chart->inch)), MORE);
}

static void lay_out(struct cg_chart_plot *plot)
{
    const struct cg_chart *chart = plot->chart;
    double right = cg_kind_converts(chart->y.kind) ? RIGHT : CG_CHART_EDGE;
    double top = cg_chart_top(chart->head, chart->of) + AXIS_HEAD;
    plot->frame =
        (struct cg_box){LEFT, top, CG_CHART_WIDTH - LEFT - right, UP};
    set_ranges(plot);
    plot->x.from = plot->frame.x;
    plot->x.to = plot->frame.x + plot->frame.width;
    plot->y.from = plot->frame.y + plot->frame.height;
    plot->y.to = plot->frame.y;
    cg_chart_paths(plot);
    cg_chart_labels(plot);
}

/* A band's edges, one forth, one back. */
static void draw_band(struct cg_draw *draw, struct cg_chart_plot *plot,
                      size_t i)
{
    const struct cg_chart_path *low = &plot->low[i], *high = &plot->high[i];
    size_t count = 0;
    for (size_t k = 0; k < high->count; k++)
        plot->edge[count++] = high->point[k];
    for (size_t k = low->count; k-- > 0;)
        plot->edge[count++] = low->point[k];
    cg_draw_shade(draw, plot->edge, count, plot->chart->band[i].fill);
}

static void draw_mark(struct cg_draw *draw, const struct cg_chart_plot *plot,
                      const struct cg_chart_mark *mark)
{
    struct cg_point at = cg_chart_at(plot, mark->x, mark->y);
    if (!isfinite(at.x + at.y))
        return;
    if (isnan(mark->to))
        cg_draw_spot(draw, at, 3.5);
    else
        cg_draw_span(draw, at, cg_chart_at(plot, mark->x, mark->to));
}

static void put_label(struct cg_draw *draw, struct cg_box box,
                      const char *label)
{
    if (label != NULL && box.width > 0.0)
        cg_draw_words(draw, (struct cg_point){box.x, box.y + 9.0},
                      CG_CHART_LETTER, "%s", label);
}

static void draw_plot(struct cg_draw *draw, struct cg_chart_plot *plot)
{
    const struct cg_chart *chart = plot->chart;
    for (size_t i = 0; i < chart->bands; i++)
        draw_band(draw, plot, i);
    cg_chart_frame(draw, plot);
    for (size_t i = 0; i < chart->curves; i++)
        cg_draw_curve(draw, plot->curve[i].point, plot->curve[i].count,
                      chart->curve[i].dash);
    for (size_t i = 0; i < chart->marks; i++)
        draw_mark(draw, plot, &chart->mark[i]);
    for (size_t i = 0; i < chart->bands; i++)
        put_label(draw, plot->band_label[i], chart->band[i].label);
    for (size_t i = 0; i < chart->curves; i++)
        put_label(draw, plot->curve_label[i], chart->curve[i].label);
    for (size_t i = 0; i < chart->marks; i++)
        put_label(draw, plot->mark_label[i], chart->mark[i].label);
}

char *cg_chart_draw(const struct cg_chart *chart)
{
    struct cg_draw draw;
    struct cg_chart_plot *plot = calloc(1, sizeof *plot);
    if (plot == NULL)
        return NULL;
    plot->chart = chart;
    lay_out(plot);
    double key = plot->frame.y + plot->frame.height + AXIS_FOOT;
    double foot = key + CG_CHART_LINE * (double)plot->keys + 4.0;
    cg_chart_begin(&draw, foot + cg_chart_foot(), chart->title, chart->words,
                   chart->head, chart->of);
    draw_plot(&draw, plot);
    cg_chart_key(&draw, plot, key);
    free(plot);
    return cg_chart_end(&draw, foot);
}
