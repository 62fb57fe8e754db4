/* The hot gap along the bore. */
#include <math.h>
#include <stdlib.h>

#include "find_chart.h"
#include "growth.h"
#include "show.h"

/* The instants looked at: the tightest and, where they are others, the first
 * and the last of the duty. */
enum { TIGHTEST, START, END, INSTANTS };

struct along {
    size_t count;          /* of depths */
    const double *depth;   /* [m] */
    double *gap[INSTANTS]; /* [m]; one block, begun by the first */
};

static void fill(const struct cg_find_chart *of, const struct cg_moment *at,
                 const struct along *along, double *gap)
{
    const struct cg_thermal *thermal = of->history->run->thermal;
    for (size_t i = 0; i < along->count; i++)
        gap[i] = cg_growth_gap(
            of->c, of->answer->verdict.gap,
            cg_growth_at_depth(thermal, at->bore_strain, along->depth[i]),
            at->ring_strain);
}

/* False: out of memory. */
static bool along_create(const struct cg_find_chart *of, struct along *along)
{
    const struct cg_history *history = of->history;
    double *block = malloc(INSTANTS * history->depths * sizeof *block);
    if (block == NULL)
        return false;
    along->depth = history->depth;
    along->count = history->depths;
    for (int i = 0; i < INSTANTS; i++)
        along->gap[i] = block + (size_t)i * history->depths;
    fill(of, &history->tightest, along, along->gap[TIGHTEST]);
    fill(of, &history->moment[0], along, along->gap[START]);
    fill(of, &history->moment[history->moments - 1], along, along->gap[END]);
    return true;
}

#define SAME 1e-6 /* nowhere farther apart: one curve [m] */

static bool differs(const struct along *along, int which)
{
    for (size_t i = 0; i < along->count; i++)
        if (fabs(along->gap[which][i] - along->gap[TIGHTEST][i]) > SAME)
            return true;
    return false;
}

/* Adds an instant of its own beside the tightest. */
static void add_other(const struct along *along, int which, const char *label,
                      struct cg_chart *chart)
{
    if (!differs(along, which))
        return;
    chart->curve[chart->curves++] = (struct cg_chart_curve){
        along->depth, along->gap[which], along->count,
        which == START ? CG_DASH_DOTTED : CG_DASH_DASHED, label};
}

char *cg_find_chart_bore(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words)
{
    const struct cg_extremes *e = &of->answer->extremes;
    const struct cg_history *history = of->history;
    struct cg_find_chart_lines lines = cg_find_chart_lines(of);
    double begin = cg_find_chart_begin(of);
    struct along along;
    char label[INSTANTS][64], mark[64];
    if (!along_create(of, &along))
        return NULL;
    snprintf(label[TIGHTEST], sizeof label[0], "tightest instant, %.4g s",
             e->time + begin);
    snprintf(label[START], sizeof label[0], "start, %.4g s",
             history->moment[0].time + begin);
    snprintf(label[END], sizeof label[0], "end, %.4g s",
             history->moment[history->moments - 1].time + begin);
    snprintf(mark, sizeof mark, "tightest, %s down",
             cg_show_length(e->depth, of->inch).text);
    struct cg_chart chart = {
        .title = "Top ring: hot gap along the bore",
        .head = lines.head,
        .of = lines.of,
        .words = words->text,
        .inch = of->inch,
        .from_zero = true,
        .x = {"depth below the deck", CG_SHOW_LENGTH},
        .y = {"hot gap, middle estimate", CG_SHOW_GAP},
        .curve = {{along.depth, along.gap[TIGHTEST], along.count,
                   CG_DASH_SOLID, label[TIGHTEST]}},
        .curves = 1,
        .mark = {{e->depth, of->answer->verdict.gap - e->closure_then, NAN,
                  mark}},
        .marks = 1};
    snprintf(words->text, sizeof words->text,
             "The top ring's hot gap against depth below the deck in the duty "
             "%s, by the middle estimate: at the tightest instant, %.4g s, at "
             "the start and at the end. It is least %s below the deck.",
             of->c->duty.name, e->time + begin,
             cg_show_length(e->depth, of->inch).text);
    add_other(&along, START, label[START], &chart);
    add_other(&along, END, label[END], &chart);
    char *svg = cg_chart_draw(&chart);
    free(along.gap[0]);
    return svg;
}
