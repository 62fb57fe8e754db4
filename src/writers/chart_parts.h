/* A chart under way: for chart*.c alone. */
#ifndef CG_CHART_PARTS_H
#define CG_CHART_PARTS_H

#include "chart.h"
#include "chart_place.h"
#include "chart_scale.h"

/* Lengths of all charts, in units. */
#define CG_CHART_WIDTH 360.0
#define CG_CHART_EDGE 8.0
#define CG_CHART_LETTER 11.0 /* of all figures but the head's */
#define CG_CHART_HEAD 12.5
#define CG_CHART_LINE 16.0 /* from a line of words to the next */

/* Title, head, what it is of; y below them.  Words that are too long are cut. */
double cg_chart_begin(struct cg_draw *draw, double height, const char *title,
                      const char *words, const char *head, const char *of);
/* How much room they take, and the cautions below all. */
double cg_chart_top(const char *head, const char *of);
double cg_chart_foot(void);
/* The cautions, from y on, and the drawing's text as cg_draw_end. */
char *cg_chart_end(struct cg_draw *draw, double y);

/* Words within a width, at their size, cut with "..." where they are longer. */
struct cg_chart_words {
    char text[256];
};
struct cg_chart_words cg_chart_fit(const char *text, double size, double width);
double cg_chart_width(const char *text, double size);

/* A name and the axis's unit: "time, s". */
struct cg_chart_words cg_chart_axis_words(const char *name, enum cg_kind kind,
                                          bool inch);

/* A curve in units, thinned so that no column of a unit holds more than its
 * first, its last, its least and its most. */
enum { CG_CHART_POINTS = 1500 };
struct cg_chart_path {
    size_t count;
    struct cg_point point[CG_CHART_POINTS];
};

struct cg_chart_plot {
    const struct cg_chart *chart;
    struct cg_scale x, y; /* of values as they are shown */
    struct cg_box frame;
    struct cg_chart_path curve[CG_CHART_CURVES];
    struct cg_chart_path low[CG_CHART_BANDS], high[CG_CHART_BANDS];
    struct cg_point edge[2 * CG_CHART_POINTS]; /* of the band being drawn */
    struct cg_place place;
    /* where each stands; width 0: among the key's lines below */
    struct cg_box curve_label[CG_CHART_CURVES], band_label[CG_CHART_BANDS],
        mark_label[CG_CHART_MARKS];
    size_t keys;
};

/* Fills the paths of curves and bands. */
void cg_chart_paths(struct cg_chart_plot *plot);
/* A point of the chart's values in units. */
struct cg_point cg_chart_at(const struct cg_chart_plot *plot, double x,
                            double y);

/* Where the labels go; counts those that are left for the key. */
void cg_chart_labels(struct cg_chart_plot *plot);

/* The lines of the key: what found no room where it runs. */
void cg_chart_key(struct cg_draw *draw, const struct cg_chart_plot *plot,
                  double y);

/* Frame, grid, ticks, names and units. */
void cg_chart_frame(struct cg_draw *draw, const struct cg_chart_plot *plot);

#endif
