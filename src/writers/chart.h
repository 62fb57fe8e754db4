/* A chart: curves and bands over an axis, marks and their words, drawn into SVG
 * of 360 units' width (svg_draw.h).  Curves differ by dash, bands by grey; each
 * is named where it runs, and below the axes where there is no room.  It knows
 * no engine: values are in SI, and their kind (quantity.h) decides the units.
 */
#ifndef CG_CHART_H
#define CG_CHART_H

#include <stdbool.h>
#include <stddef.h>

#include "quantity.h"
#include "svg_draw.h"

enum { CG_CHART_CURVES = 6, CG_CHART_BANDS = 2, CG_CHART_MARKS = 12 };

struct cg_chart_axis {
    const char *name; /* "time"; the unit follows it */
    enum cg_kind kind;
};

struct cg_chart_curve {
    const double *x, *y; /* [count], x does not fall; what is not finite is a
                            hole */
    size_t count;
    enum cg_dash dash;
    const char *label; /* NULL: none */
};

struct cg_chart_band {
    const double *x, *low, *high; /* [count]; low may be the higher */
    size_t count;
    enum cg_grey fill;
    const char *label; /* NULL: none */
};

struct cg_chart_mark {
    double x, y;
    double to; /* a span from y to there; NaN: a spot at y */
    const char *label; /* NULL: none */
};

struct cg_chart {
    const char *title; /* without figures */
    const char *head;  /* what no other figure is larger than; NULL: none */
    const char *of;    /* what it is of; NULL: nothing to be said */
    const char *words; /* what it shows, for those who do not see it */
    bool inch;         /* which units come first; y has the others at the right */
    bool from_zero;    /* y begins at nothing, or lower */
    struct cg_chart_axis x, y;
    struct cg_chart_curve curve[CG_CHART_CURVES];
    struct cg_chart_band band[CG_CHART_BANDS];
    struct cg_chart_mark mark[CG_CHART_MARKS];
    size_t curves, bands, marks;
};

/* The drawing's text, which the caller frees; NULL: out of memory.  With nothing
 * to be drawn the axes are empty. */
char *cg_chart_draw(const struct cg_chart *chart);

#endif
