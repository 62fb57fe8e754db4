#define _POSIX_C_SOURCE 200809L /* open_memstream */
#include "svg_draw.h"

#include <math.h>
#include <stdarg.h>
#include <stdlib.h>

#include "html_text.h"

/* A machine without it takes its own without serifs. */
#define FONT "font-family=\"DejaVu Sans, Verdana, sans-serif\""

static const char *const fills[] = {[CG_GREY_WHITE] = "#ffffff",
                                    [CG_GREY_LIGHT] = "#e2e2e2",
                                    [CG_GREY_MIDDLE] = "#c4c4c4",
                                    [CG_GREY_DARK] = "#9a9a9a"};

const char *cg_grey_code(enum cg_grey grey)
{
    return fills[grey];
}

void cg_draw_begin(struct cg_draw *draw, double width, double height,
                   const char *title, const char *words)
{
    *draw = (struct cg_draw){NULL, NULL, 0};
    draw->file = open_memstream(&draw->text, &draw->length);
    if (draw->file == NULL)
        return;
    fprintf(draw->file,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" "
            "height=\"%.0f\" viewBox=\"0 0 %.0f %.0f\">\n<title>",
            width, height, width, height);
    cg_html_put(draw->file, title);
    fputs("</title>\n<desc>", draw->file);
    cg_html_put(draw->file, words);
    fputs("</desc>\n", draw->file);
    cg_draw_box(draw, 0.0, 0.0, width, height, CG_GREY_WHITE);
}

void cg_draw_box(struct cg_draw *draw, double x, double y, double width,
                 double height, enum cg_grey fill)
{
    if (draw->file != NULL)
        fprintf(draw->file,
                "<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" "
                "fill=\"%s\" stroke=\"%s\" stroke-width=\"0.8\"/>\n",
                x, y, fmax(width, 0.0), fmax(height, 0.0), fills[fill],
                fill == CG_GREY_WHITE ? "none" : "#000000");
}

void cg_draw_area(struct cg_draw *draw, const struct cg_point *points,
                  size_t count, enum cg_grey fill)
{
    if (draw->file == NULL)
        return;
    fputs("<polygon points=\"", draw->file);
    for (size_t i = 0; i < count; i++)
        fprintf(draw->file, "%s%.2f,%.2f", i > 0 ? " " : "", points[i].x,
                points[i].y);
    fprintf(draw->file,
            "\" fill=\"%s\" stroke=\"#000000\" stroke-width=\"0.8\"/>\n",
            fills[fill]);
}

static void stroke(struct cg_draw *draw, struct cg_point from,
                   struct cg_point to, double width, const char *more)
{
    if (draw->file != NULL)
        fprintf(draw->file,
                "<path d=\"M%.2f,%.2f L%.2f,%.2f\" fill=\"none\" "
                "stroke=\"#000000\" stroke-width=\"%.2f\"%s/>\n",
                from.x, from.y, to.x, to.y, width, more);
}

void cg_draw_line(struct cg_draw *draw, struct cg_point from,
                  struct cg_point to, double width)
{
    stroke(draw, from, to, width, "");
}

void cg_draw_dashes(struct cg_draw *draw, struct cg_point from,
                    struct cg_point to)
{
    stroke(draw, from, to, 1.0, " stroke-dasharray=\"3,2\"");
}

/* A head of so many units at `to`. */
static void put_head(struct cg_draw *draw, struct cg_point from,
                     struct cg_point to, double size)
{
    double length = hypot(to.x - from.x, to.y - from.y);
    if (draw->file == NULL || !(length > 0.0))
        return;
    double x = (to.x - from.x) / length, y = (to.y - from.y) / length;
    fprintf(draw->file,
            "<polygon points=\"%.2f,%.2f %.2f,%.2f %.2f,%.2f\" "
            "fill=\"#000000\"/>\n",
            to.x, to.y, to.x - size * x - 0.5 * size * y,
            to.y - size * y + 0.5 * size * x, to.x - size * x + 0.5 * size * y,
            to.y - size * y - 0.5 * size * x);
}

void cg_draw_arrow(struct cg_draw *draw, struct cg_point from,
                   struct cg_point to, double width)
{
    double head = 3.0 * width, length = hypot(to.x - from.x, to.y - from.y);
    double part = length > head ? (length - head) / length : 0.0;
    struct cg_point neck = {from.x + part * (to.x - from.x),
                            from.y + part * (to.y - from.y)};
    stroke(draw, from, neck, width, "");
    put_head(draw, from, to, head);
}

void cg_draw_span(struct cg_draw *draw, struct cg_point from,
                  struct cg_point to)
{
    double size = fmin(6.0, 0.4 * hypot(to.x - from.x, to.y - from.y));
    stroke(draw, from, to, 1.0, "");
    put_head(draw, from, to, size);
    put_head(draw, to, from, size);
}

void cg_draw_circle(struct cg_draw *draw, struct cg_point at, double radius,
                    double width)
{
    if (draw->file != NULL)
        fprintf(draw->file,
                "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"%.2f\" fill=\"none\" "
                "stroke=\"#000000\" stroke-width=\"%.2f\"/>\n",
                at.x, at.y, radius, width);
}

void cg_draw_number(struct cg_draw *draw, struct cg_point at, int number)
{
    if (draw->file == NULL)
        return;
    fprintf(draw->file,
            "<circle cx=\"%.2f\" cy=\"%.2f\" r=\"8\" fill=\"#ffffff\" "
            "stroke=\"#000000\" stroke-width=\"1\"/>\n",
            at.x, at.y);
    cg_draw_middle(draw, (struct cg_point){at.x, at.y + 4.0}, 11.0, "%d",
                   number);
}

static void put_words(struct cg_draw *draw, struct cg_point at, double size,
                      const char *anchor, const char *format, va_list args)
{
    char text[512];
    vsnprintf(text, sizeof text, format, args);
    if (draw->file == NULL)
        return;
    fprintf(draw->file,
            "<text x=\"%.2f\" y=\"%.2f\" " FONT " font-size=\"%.1f\" "
            "text-anchor=\"%s\" fill=\"#000000\">",
            at.x, at.y, size, anchor);
    cg_html_put(draw->file, text);
    fputs("</text>\n", draw->file);
}

void cg_draw_words(struct cg_draw *draw, struct cg_point at, double size,
                   const char *format, ...)
{
    va_list args;
    va_start(args, format);
    put_words(draw, at, size, "start", format, args);
    va_end(args);
}

void cg_draw_middle(struct cg_draw *draw, struct cg_point at, double size,
                    const char *format, ...)
{
    va_list args;
    va_start(args, format);
    put_words(draw, at, size, "middle", format, args);
    va_end(args);
}

void cg_draw_up_to(struct cg_draw *draw, struct cg_point at, double size,
                   const char *format, ...)
{
    va_list args;
    va_start(args, format);
    put_words(draw, at, size, "end", format, args);
    va_end(args);
}

char *cg_draw_end(struct cg_draw *draw)
{
    if (draw->file == NULL)
        return NULL;
    fputs("</svg>\n", draw->file);
    if (fclose(draw->file) == 0)
        return draw->text;
    free(draw->text);
    return NULL;
}
