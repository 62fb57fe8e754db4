/* Where words find room among curves: boxes that are taken, and curves that
 * must stay in sight.  Lengths in units, y runs down. */
#ifndef CG_CHART_PLACE_H
#define CG_CHART_PLACE_H

#include <stdbool.h>
#include <stddef.h>

#include "svg_draw.h"

struct cg_box {
    double x, y, width, height;
};

enum { CG_PLACES = 48, CG_PLACE_CURVES = 16 };

struct cg_place {
    struct cg_box frame; /* nothing leaves it */
    struct cg_box taken[CG_PLACES];
    size_t boxes;
    struct {
        const struct cg_point *point;
        size_t count;
    } curve[CG_PLACE_CURVES];
    size_t curves;
};

/* Beyond what there is room for nothing is kept. */
void cg_place_take(struct cg_place *place, struct cg_box box);
void cg_place_curve(struct cg_place *place, const struct cg_point *point,
                    size_t count);

/* Whether a box, with so much air around it, is within the frame and free of
 * all that is taken and of all curves. */
bool cg_place_free(const struct cg_place *place, struct cg_box box, double air);

/* Whether a straight line passes through a box. */
bool cg_box_crossed(struct cg_box box, struct cg_point from, struct cg_point to);

/* A free place for words of so many units beside a curve, where it is level and
 * others are not near; width 0: there is none. */
struct cg_box cg_place_beside(const struct cg_place *place,
                              const struct cg_point *point, size_t count,
                              double width, double height);

/* The same between two curves. */
struct cg_box cg_place_between(const struct cg_place *place,
                               const struct cg_point *low, size_t lows,
                               const struct cg_point *high, size_t highs,
                               double width, double height);

/* The same around a spot, as near as may be. */
struct cg_box cg_place_around(const struct cg_place *place, struct cg_point at,
                              double width, double height);

#endif
