/* Bars that lie, a line of words above each, drawn as a chart is (chart.h). */
#ifndef CG_CHART_BARS_H
#define CG_CHART_BARS_H

#include <stddef.h>

enum { CG_BARS = 16 };

struct cg_bar {
    const char *label;
    const char *figure;  /* the first length in words, at the bar's end */
    double length, more; /* of one kind; below nothing is drawn as none, more
                            NaN: there is no second */
};

struct cg_bars {
    const char *title, *head, *of, *words; /* as in struct cg_chart */
    const char *length, *more; /* what the two are; shown where there are two */
    struct cg_bar bar[CG_BARS];
    size_t bars;
};

/* The drawing's text, which the caller frees; NULL: out of memory. */
char *cg_bars_draw(const struct cg_bars *bars);

#endif
