/* What a chart draws with: lines through many points, shades, spots. */
#include <math.h>

#include "svg_draw.h"

static const char *const look[CG_DASHES] = {
    [CG_DASH_SOLID] = "stroke-width=\"2.2\"",
    [CG_DASH_DASHED] = "stroke-width=\"1.8\" stroke-dasharray=\"7,3\"",
    [CG_DASH_DOTTED] = "stroke-width=\"1.8\" stroke-dasharray=\"1.8,2.6\"",
    [CG_DASH_DASH_DOT] = "stroke-width=\"1.5\" stroke-dasharray=\"8,3,1.5,3\"",
    [CG_DASH_THIN] = "stroke-width=\"1\""};

static bool is_finite(struct cg_point point)
{
    return isfinite(point.x) && isfinite(point.y);
}

void cg_draw_curve(struct cg_draw *draw, const struct cg_point *points,
                   size_t count, enum cg_dash dash)
{
    bool begun = false, on = false;
    for (size_t i = 0; dash == CG_DASH_SPOTS && i < count; i++)
        cg_draw_spot(draw, points[i], 2.6);
    if (dash == CG_DASH_SPOTS)
        return;
    for (size_t i = 0; draw->file != NULL && i < count; i++) {
        bool drawn = is_finite(points[i]);
        if (drawn && !begun)
            fputs("<path d=\"", draw->file);
        if (drawn)
            fprintf(draw->file, "%s%s%.1f,%.1f", begun ? " " : "",
                    on ? "L" : "M", points[i].x, points[i].y);
        begun = begun || drawn;
        on = drawn;
    }
    if (begun)
        fprintf(draw->file, "\" fill=\"none\" stroke=\"#000000\" %s/>\n",
                look[dash]);
}

void cg_draw_grid(struct cg_draw *draw, struct cg_point from,
                  struct cg_point to)
{
    if (draw->file != NULL)
        fprintf(draw->file,
                "<path d=\"M%.2f,%.2f L%.2f,%.2f\" fill=\"none\" "
                "stroke=\"#d0d0d0\" stroke-width=\"0.7\"/>\n",
                from.x, from.y, to.x, to.y);
}

void cg_draw_shade(struct cg_draw *draw, const struct cg_point *points,
                   size_t count, enum cg_grey fill)
{
    bool begun = false;
    for (size_t i = 0; draw->file != NULL && i < count; i++) {
        if (!is_finite(points[i]))
            continue;
        fprintf(draw->file, "%s%.1f,%.1f", begun ? " " : "<polygon points=\"",
                points[i].x, points[i].y);
        begun = true;
    }
    if (begun)
        fprintf(draw->file, "\" fill=\"%s\" stroke=\"none\"/>\n",
                cg_grey_code(fill));
}

void cg_draw_spot(struct cg_draw *draw, struct cg_point at, double radius)
{
    if (draw->file != NULL && is_finite(at))
        fprintf(draw->file,
                "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" "
                "fill=\"#000000\" stroke=\"#ffffff\" stroke-width=\"1\"/>\n",
                at.x, at.y, radius);
}
