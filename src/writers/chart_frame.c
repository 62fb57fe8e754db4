/* Frame, grid, ticks; the other units at the right. */
#include "chart_parts.h"

enum { TICKS_ACROSS = 7, TICKS_UP = 7 };

static struct cg_point point(double x, double y)
{
    return (struct cg_point){x, y};
}

static void across(struct cg_draw *draw, const struct cg_chart_plot *plot)
{
    struct cg_box frame = plot->frame;
    double foot = frame.y + frame.height;
    struct cg_ticks ticks = cg_ticks_in(plot->x.range, TICKS_ACROSS);
    for (int i = 0; i < ticks.count; i++) {
        double x = cg_scale_at(&plot->x, ticks.value[i]);
        cg_draw_grid(draw, point(x, frame.y), point(x, foot));
        cg_draw_line(draw, point(x, foot), point(x, foot + 3.0), 0.8);
        cg_draw_middle(draw, point(x, foot + 14.0), CG_CHART_LETTER, "%.*f",
                       ticks.digits, ticks.value[i]);
    }
    cg_draw_middle(draw, point(frame.x + 0.5 * frame.width, foot + 29.0),
                   CG_CHART_LETTER, "%s",
                   cg_chart_axis_words(plot->chart->x.name,
                                       plot->chart->x.kind, plot->chart->inch)
                       .text);
}

static void up(struct cg_draw *draw, const struct cg_chart_plot *plot)
{
    struct cg_box frame = plot->frame;
    double past = frame.x + frame.width;
    struct cg_ticks ticks = cg_ticks_in(plot->y.range, TICKS_UP);
    for (int i = 0; i < ticks.count; i++) {
        double y = cg_scale_at(&plot->y, ticks.value[i]);
        cg_draw_grid(draw, point(frame.x, y), point(past, y));
        cg_draw_line(draw, point(frame.x - 3.0, y), point(frame.x, y), 0.8);
        cg_draw_up_to(draw, point(frame.x - 5.0, y + 4.0), CG_CHART_LETTER,
                      "%.*f", ticks.digits, ticks.value[i]);
    }
    cg_draw_words(draw, point(CG_CHART_EDGE, frame.y - 7.0), CG_CHART_LETTER,
                  "%s",
                  cg_chart_axis_words(plot->chart->y.name,
                                      plot->chart->y.kind, plot->chart->inch)
                      .text);
}

/* What stands at the ends of the frame, in the other units. */
static struct cg_range other_range(const struct cg_chart_plot *plot)
{
    enum cg_kind kind = plot->chart->y.kind;
    bool inch = plot->chart->inch;
    struct cg_range si = {0.0, 1.0};
    double nothing = cg_quantity_number(cg_quantity(kind, si.low), inch);
    double one = cg_quantity_number(cg_quantity(kind, si.high), inch);
    double low = (plot->y.range.low - nothing) / (one - nothing);
    double high = (plot->y.range.high - nothing) / (one - nothing);
    return (struct cg_range){
        cg_quantity_number(cg_quantity(kind, low), !inch),
        cg_quantity_number(cg_quantity(kind, high), !inch)};
}

static void at_right(struct cg_draw *draw, const struct cg_chart_plot *plot)
{
    struct cg_box frame = plot->frame;
    double past = frame.x + frame.width;
    struct cg_scale scale = {other_range(plot), plot->y.from, plot->y.to};
    struct cg_ticks ticks = cg_ticks_in(scale.range, TICKS_UP);
    for (int i = 0; i < ticks.count; i++) {
        double y = cg_scale_at(&scale, ticks.value[i]);
        cg_draw_line(draw, point(past, y), point(past + 3.0, y), 0.8);
        cg_draw_words(draw, point(past + 5.0, y + 4.0), CG_CHART_LETTER, "%.*f",
                      ticks.digits, ticks.value[i]);
    }
    cg_draw_up_to(draw, point(CG_CHART_WIDTH - CG_CHART_EDGE, frame.y - 7.0),
                  CG_CHART_LETTER, "%s",
                  cg_kind_unit(plot->chart->y.kind, !plot->chart->inch));
}

void cg_chart_frame(struct cg_draw *draw, const struct cg_chart_plot *plot)
{
    struct cg_box frame = plot->frame;
    struct cg_point corner[] = {
        {frame.x, frame.y},
        {frame.x + frame.width, frame.y},
        {frame.x + frame.width, frame.y + frame.height},
        {frame.x, frame.y + frame.height}};
    across(draw, plot);
    up(draw, plot);
    if (cg_kind_converts(plot->chart->y.kind))
        at_right(draw, plot);
    for (int i = 0; i < 4; i++)
        cg_draw_line(draw, corner[i], corner[(i + 1) % 4], 0.8);
}
