#include "sweep_chart.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "answer.h"
#include "chart.h"
#include "show.h"

enum { RULE = 33 }; /* points of the shop rule, which bends */

/* One block of memory, begun by `boost`. */
struct columns {
    double *boost, *each, *warm, *worst, *closure; /* [count] */
    double *step, *file_to;                         /* [2 count] */
    double rule_boost[RULE], rule[RULE];
};

static int by_boost(const void *left, const void *right)
{
    const struct cg_sweep_boost *a = left, *b = right;
    return (a->boost > b->boost) - (a->boost < b->boost);
}

/* Up first, then on: between two points the larger gap of both. */
static void add_steps(const struct cg_sweep_boosts *of, struct columns *columns,
                      size_t i)
{
    const struct cg_sweep_boost *at = &of->point[i];
    const struct cg_sweep_boost *before = &of->point[i > 0 ? i - 1 : 0];
    double between = fmax(at->file_to, before->file_to);
    columns->step[2 * i] = before->boost;
    columns->file_to[2 * i] = between;
    columns->step[2 * i + 1] = at->boost;
    columns->file_to[2 * i + 1] = between;
}

static void fill(const struct cg_sweep_boosts *of, struct columns *columns)
{
    double least = of->point[0].boost, most = of->point[of->count - 1].boost;
    for (size_t i = 0; i < of->count; i++) {
        const struct cg_sweep_boost *at = &of->point[i];
        columns->boost[i] = at->boost;
        columns->each[i] = at->file_to;
        columns->closure[i] = at->closure;
        columns->warm[i] = at->closure + at->residual;
        columns->worst[i] = columns->warm[i] + at->spread;
        add_steps(of, columns, i);
    }
    for (int i = 0; i < RULE; i++) {
        columns->rule_boost[i] = least + (most - least) * i / (RULE - 1);
        columns->rule[i] =
            cg_shop_rule(of->c->engine.bore, columns->rule_boost[i]);
    }
}

/* False: out of memory. */
static bool columns_create(const struct cg_sweep_boosts *of,
                           struct columns *columns)
{
    size_t n = of->count;
    double *block = malloc(9 * n * sizeof *block);
    if (block == NULL)
        return false;
    columns->boost = block;
    columns->each = block + n;
    columns->warm = block + 2 * n;
    columns->worst = block + 3 * n;
    columns->closure = block + 4 * n;
    columns->step = block + 5 * n;
    columns->file_to = block + 7 * n;
    fill(of, columns);
    return true;
}

static void say(const struct cg_sweep_boosts *of, char words[512])
{
    const struct cg_sweep_boost *least = &of->point[0];
    const struct cg_sweep_boost *most = &of->point[of->count - 1];
    snprintf(words, 512,
             "The top ring's cold gap over boost, computed at %zu boosts: what "
             "to file to, %s at %s and %s at %s; the gap needed; closure and "
             "minimum hot gap with the uncertainty allowance above them; the "
             "shop rule.",
             of->count, cg_show_gap_up(least->file_to, of->inch).text,
             cg_show_boost(least->boost, of->inch).text,
             cg_show_gap_up(most->file_to, of->inch).text,
             cg_show_boost(most->boost, of->inch).text);
}

/* Above the chart; no figure in it is larger. */
static void set_head(const struct cg_sweep_boosts *of, char head[224])
{
    const struct cg_sweep_boost *least = &of->point[0];
    const struct cg_sweep_boost *most = &of->point[of->count - 1];
    snprintf(head, 224, "File to %s at %s, %s at %s",
             cg_show_length_up(least->file_to, of->inch).text,
             cg_show_boost(least->boost, of->inch).text,
             cg_show_length_up(most->file_to, of->inch).text,
             cg_show_boost(most->boost, of->inch).text);
}

char *cg_sweep_chart_boost(struct cg_sweep_boosts *of, char words[512])
{
    struct columns at;
    char head[224], about[160];
    qsort(of->point, of->count, sizeof *of->point, by_boost);
    if (!columns_create(of, &at))
        return NULL;
    say(of, words);
    set_head(of, head);
    snprintf(about, sizeof about, "%zu boosts computed, a spot each; duty %s",
             of->count, of->c->duty.name);
    size_t n = of->count;
    struct cg_chart chart = {
        .title = "Top ring: cold gap against boost",
        .head = head,
        .of = about,
        .words = words,
        .inch = of->inch,
        .from_zero = true,
        .x = {"boost, gauge", CG_SHOW_BOOST},
        .y = {"cold gap", CG_SHOW_GAP},
        .curve = {{at.step, at.file_to, 2 * n, CG_DASH_SOLID, "file to"},
                  {at.boost, at.each, n, CG_DASH_SPOTS, NULL},
                  {at.boost, at.worst, n, CG_DASH_DASHED, "needed, by the model"},
                  {at.rule_boost, at.rule, RULE, CG_DASH_DOTTED, "shop rule"},
                  {at.boost, at.warm, n, CG_DASH_THIN,
                   "closure and minimum hot gap"},
                  {at.boost, at.closure, n, CG_DASH_DASH_DOT,
                   "closure: ends touch"}},
        .curves = 6,
        .band = {{at.boost, at.warm, at.worst, n, CG_GREY_LIGHT,
                  "allowance"}},
        .bands = 1};
    char *svg = cg_chart_draw(&chart);
    free(at.boost);
    return svg;
}
