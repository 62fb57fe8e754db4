/* A chart's values in units, and no more points than can be seen. */
#include <math.h>

#include "chart_parts.h"

static struct cg_point at(const struct cg_chart_plot *plot, double x, double y)
{
    const struct cg_chart *chart = plot->chart;
    struct cg_quantity across = cg_quantity(chart->x.kind, x);
    struct cg_quantity up = cg_quantity(chart->y.kind, y);
    return (struct cg_point){
        cg_scale_at(&plot->x, cg_quantity_number(across, chart->inch)),
        cg_scale_at(&plot->y, cg_quantity_number(up, chart->inch))};
}

struct cg_point cg_chart_at(const struct cg_chart_plot *plot, double x,
                            double y)
{
    return at(plot, x, y);
}

/* A column of a unit: what is kept of it, in the order in which it came. */
struct column {
    struct cg_point first, last, least, most;
    size_t points, least_at, most_at;
};

static void add(struct cg_chart_path *path, struct cg_point point)
{
    struct cg_point *last = &path->point[path->count - 1];
    if (path->count > 0 && last->x == point.x && last->y == point.y)
        return;
    if (path->count < CG_CHART_POINTS)
        path->point[path->count++] = point;
}

static void leave(struct cg_chart_path *path, struct column *column)
{
    if (column->points > 0) {
        bool least_first = column->least_at < column->most_at;
        add(path, column->first);
        add(path, least_first ? column->least : column->most);
        add(path, least_first ? column->most : column->least);
        add(path, column->last);
    }
    column->points = 0;
}

static void enter(struct column *column, struct cg_point point)
{
    size_t i = column->points++;
    if (i == 0)
        column->first = point;
    if (i == 0 || point.y < column->least.y) {
        column->least = point;
        column->least_at = i;
    }
    if (i == 0 || point.y > column->most.y) {
        column->most = point;
        column->most_at = i;
    }
    column->last = point;
}

static void fill(const struct cg_chart_plot *plot, const double *x,
                 const double *y, size_t count, struct cg_chart_path *path)
{
    struct column column = {.points = 0};
    path->count = 0;
    for (size_t i = 0; i < count; i++) {
        struct cg_point point = at(plot, x[i], y[i]);
        if (!isfinite(point.x + point.y)) {
            leave(path, &column);
            if (path->count > 0 && path->count < CG_CHART_POINTS)
                path->point[path->count++] = (struct cg_point){NAN, NAN};
            continue;
        }
        if (column.points > 0 && floor(point.x) != floor(column.first.x))
            leave(path, &column);
        enter(&column, point);
    }
    leave(path, &column);
}

void cg_chart_paths(struct cg_chart_plot *plot)
{
    const struct cg_chart *chart = plot->chart;
    for (size_t i = 0; i < chart->curves; i++)
        fill(plot, chart->curve[i].x, chart->curve[i].y, chart->curve[i].count,
             &plot->curve[i]);
    for (size_t i = 0; i < chart->bands; i++) {
        const struct cg_chart_band *band = &chart->band[i];
        fill(plot, band->x, band->low, band->count, &plot->low[i]);
        fill(plot, band->x, band->high, band->count, &plot->high[i]);
    }
}
