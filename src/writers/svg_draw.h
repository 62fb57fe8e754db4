/* A drawing made by the program itself: lines, areas and words in SVG, of what
 * a page takes over (svg_allowed.h) and nothing else.  Lengths are in user
 * units, y runs down; greys alone, so that print and colour blindness lose
 * nothing.  Nothing here can fail: where memory runs out cg_draw_end says so.
 */
#ifndef CG_SVG_DRAW_H
#define CG_SVG_DRAW_H

#include <stdbool.h>
#include <stdio.h>

#include "status.h"

struct cg_draw {
    FILE *file; /* NULL: out of memory */
    char *text;
    size_t length;
};

struct cg_point {
    double x, y;
};

/* Greys of the parts of a drawing. */
enum cg_grey { CG_GREY_WHITE, CG_GREY_LIGHT, CG_GREY_MIDDLE, CG_GREY_DARK };
const char *cg_grey_code(enum cg_grey grey);

/* Begins a drawing of so many units; title and words, escaped, are for those
 * who do not see it. */
void cg_draw_begin(struct cg_draw *draw, double width, double height,
                   const char *title, const char *words);

/* Areas with a thin edge; a white one has none. */
void cg_draw_box(struct cg_draw *draw, double x, double y, double width,
                 double height, enum cg_grey fill);
void cg_draw_area(struct cg_draw *draw, const struct cg_point *points,
                  size_t count, enum cg_grey fill);

/* A line; dashed; one with a head at its end, or at both. */
void cg_draw_line(struct cg_draw *draw, struct cg_point from,
                  struct cg_point to, double width);
void cg_draw_dashes(struct cg_draw *draw, struct cg_point from,
                    struct cg_point to);
void cg_draw_arrow(struct cg_draw *draw, struct cg_point from,
                   struct cg_point to, double width);
void cg_draw_span(struct cg_draw *draw, struct cg_point from,
                  struct cg_point to);

/* How lines differ from each other, without colour. */
enum cg_dash {
    CG_DASH_SOLID,
    CG_DASH_DASHED,
    CG_DASH_DOTTED,
    CG_DASH_DASH_DOT,
    CG_DASH_THIN,
    CG_DASH_SPOTS, /* no line: a spot at each point */
    CG_DASHES
};

/* A line through points, a grid's line, and an area without an edge.  A point
 * that is not finite parts a line in two, and is left out of an area. */
void cg_draw_curve(struct cg_draw *draw, const struct cg_point *points,
                   size_t count, enum cg_dash dash);
void cg_draw_grid(struct cg_draw *draw, struct cg_point from,
                  struct cg_point to);
void cg_draw_shade(struct cg_draw *draw, const struct cg_point *points,
                   size_t count, enum cg_grey fill);

/* A spot. */
void cg_draw_spot(struct cg_draw *draw, struct cg_point at, double radius);

/* A circle, and a number in one that stands for a line of the legend. */
void cg_draw_circle(struct cg_draw *draw, struct cg_point at, double radius,
                    double width);
void cg_draw_number(struct cg_draw *draw, struct cg_point at, int number);

/* Words from `at` on, around it, or up to it; escaped.  Letters about 0.6 of `size`
 * wide. */
void cg_draw_words(struct cg_draw *draw, struct cg_point at, double size,
                   const char *format, ...) CG_FORMAT(4, 5);
void cg_draw_middle(struct cg_draw *draw, struct cg_point at, double size,
                    const char *format, ...) CG_FORMAT(4, 5);
void cg_draw_up_to(struct cg_draw *draw, struct cg_point at, double size,
                   const char *format, ...) CG_FORMAT(4, 5);

/* The drawing's text, which the caller frees; NULL: out of memory. */
char *cg_draw_end(struct cg_draw *draw);

#endif
