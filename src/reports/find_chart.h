/* The pictures of `find`, drawn from one run of the duty asked for. */
#ifndef CG_FIND_CHART_H
#define CG_FIND_CHART_H

#include <stdbool.h>

#include "answer.h"
#include "chart.h"
#include "history.h"
#include "report.h"

struct cg_find_chart {
    const struct cg_case *c;
    const struct cg_answer *answer;
    const struct cg_history *history; /* NULL: no pictures were asked for */
    bool inch;
};

/* What a picture shows, for those who do not see it. */
struct cg_find_chart_words {
    char text[512];
};

/* Each returns the drawing's text, which the caller frees; NULL: out of memory.
 * `words` are set. */

/* What ring and bore grow around the bore, over the duty, and the closure
 * between them. */
char *cg_find_chart_growth(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words);
/* The hot gap over the duty, its least, and what that is above the minimum. */
char *cg_find_chart_gap(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words);
/* The hot gap along the bore, at the tightest instant, at the start and at the
 * end. */
char *cg_find_chart_bore(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words);
/* What the allowance is made of, largest first. */
char *cg_find_chart_shares(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words);

/* Shows one of them, drawn by `draw`, as a figure of the report; the last words
 * say what it is where it is not drawn.  Cannot fail but for memory (cg_report_status). */
void cg_find_chart_show(struct cg_report *report,
                        const struct cg_find_chart *of, const char *key,
                        const char *title,
                        char *(*draw)(const struct cg_find_chart *of,
                                      struct cg_find_chart_words *words),
                        const char *format, ...) CG_FORMAT(6, 7);

/* The lines above a chart: what to file to, which no figure of a chart is
 * larger than; and which duty and gap it is of. */
struct cg_find_chart_lines {
    char head[128], of[192];
};
struct cg_find_chart_lines cg_find_chart_lines(const struct cg_find_chart *of);

/* Seconds that the duty's own time begins with: that of a log, else 0. */
double cg_find_chart_begin(const struct cg_find_chart *of);
const char *cg_find_chart_time(const struct cg_find_chart *of);

#endif
