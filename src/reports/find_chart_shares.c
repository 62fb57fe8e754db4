/* What the allowance is made of. */
#include <math.h>

#include "chart_bars.h"
#include "find_chart.h"

enum { MOST = 8 }; /* bars; what is left is one more */

struct figures {
    char text[MOST + 1][48];
    char rest[48];
};

/* Contributions, the largest share first: with inputs that are correlated the
 * largest shift need not have it. */
static void sort(const struct cg_answer *answer,
                 const struct cg_contribution *sorted[CG_INPUTS])
{
    for (size_t i = 0; i < answer->contributions; i++) {
        const struct cg_contribution *next = &answer->contribution[i];
        size_t at = i;
        for (; at > 0 && sorted[at - 1]->share < next->share; at--)
            sorted[at] = sorted[at - 1];
        sorted[at] = next;
    }
}

static void add(struct cg_bars *bars, struct figures *figures,
                const char *label, double share, double more)
{
    size_t i = bars->bars++;
    snprintf(figures->text[i], sizeof figures->text[i], "%s",
             cg_quantity_one(cg_quantity(CG_SHOW_WHOLE_SHARE, share), false)
                 .text);
    bars->bar[i] = (struct cg_bar){label, figures->text[i], share, more};
}

/* The largest, and all others as one. */
static void fill(const struct cg_answer *answer, struct cg_bars *bars,
                 struct figures *figures)
{
    const struct cg_contribution *sorted[CG_INPUTS];
    double rest = 0.0;
    size_t many = answer->contributions;
    size_t shown = many > MOST + 1 ? MOST : many;
    sort(answer, sorted);
    for (size_t i = 0; i < shown; i++)
        add(bars, figures, sorted[i]->doc, sorted[i]->share,
            sorted[i]->total_effect);
    for (size_t i = shown; i < many; i++)
        rest += sorted[i]->share;
    snprintf(figures->rest, sizeof figures->rest, "%zu others", many - shown);
    if (many > shown)
        add(bars, figures, figures->rest, rest, NAN);
}

static void say(const struct cg_bars *bars, struct cg_find_chart_words *words)
{
    size_t used = (size_t)snprintf(words->text, sizeof words->text,
                                   "Shares of the variance, largest first: ");
    for (size_t i = 0; i < bars->bars && used < sizeof words->text; i++)
        used += (size_t)snprintf(words->text + used, sizeof words->text - used,
                                 "%s%s %s", i > 0 ? "; " : "",
                                 bars->bar[i].label, bars->bar[i].figure);
}

char *cg_find_chart_shares(const struct cg_find_chart *of,
                           struct cg_find_chart_words *words)
{
    const struct cg_answer *answer = of->answer;
    struct cg_find_chart_lines lines = cg_find_chart_lines(of);
    struct figures figures;
    char about[128];
    snprintf(about, sizeof about, "shares of the variance, duty %s",
             of->c->duty.name);
    struct cg_bars bars = {.title = "What the allowance is made of",
                           .head = lines.head,
                           .of = about,
                           .words = words->text,
                           .length = "alone (first order)",
                           .more = "alone and with others (sampled)"};
    fill(answer, &bars, &figures);
    say(&bars, words);
    return cg_bars_draw(&bars);
}
