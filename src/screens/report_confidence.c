#include "report_confidence.h"

#include <math.h>
#include <stdio.h>

#include "confidence.h"
#include "input_law.h"
#include "show.h"

enum { SHARES_SHOWN = 6 };

static void print_row(const char *what, double first_order, double sampled,
                      struct cg_text (*show)(double metres, bool inch),
                      bool inch)
{
    printf("  %-23s %-22s %s\n", what, show(first_order, inch).text,
           isnan(sampled) ? "-" : show(sampled, inch).text);
}

static void print_shares(const struct cg_answer *answer, bool correlated)
{
    printf("  share of the variance   %s\n",
           correlated ? "with what it shares    left, all others known"
                      : "alone, first order     alone and with others");
    for (size_t i = 0; i < SHARES_SHOWN && i < answer->contributions; i++) {
        const struct cg_contribution *at = &answer->contribution[i];
        printf("    %-21s %2.0f %%                   %2.0f +- %.0f %%\n",
               at->doc, at->share * 100.0, at->total_effect * 100.0,
               at->total_effect_error * 100.0);
    }
}

static void print_used(const struct cg_case *c, const struct cg_answer *answer)
{
    const struct cg_confidence *found = &answer->confidence;
    if (found->failures > 0)
        printf("  %zu of the samples failed and are left out.\n",
               found->failures);
    if (!found->few)
        printf("  The answer uses the sampled spread.\n\n");
    else
        printf("  Too few samples for a risk of %g (%.0f or more): the answer "
               "uses the larger\n  spread of the two.\n\n",
               c->margin.risk, CG_CONFIDENCE_BEYOND / c->margin.risk);
}

void cg_report_confidence(const struct cg_case *c,
                          const struct cg_answer *answer, bool inch)
{
    const struct cg_confidence *found = &answer->confidence;
    const struct cg_gap_sum *line = &found->first_order;
    if (found->samples == 0)
        return;
    bool correlated = cg_inputs_correlated(c);
    printf("Confidence: all inputs moved at once, %s; %zu samples, seed %lu\n",
           correlated ? "correlated" : "as independent", found->samples,
           found->seed);
    printf("  %-23s %-22s %s\n", "", "first order", "sampled");
    print_row("closure, mean", line->closure, found->mean, cg_show_gap, inch);
    print_row("standard deviation", answer->sigma, found->sd, cg_show_gap, inch);
    /* with less than one sample beyond it a quantile means nothing */
    bool told = (double)found->samples * c->margin.risk >= 1.0;
    print_row("closure at the risk", line->closure + line->spread,
              told ? found->quantile : NAN, cg_show_gap, inch);
    if (told)
        printf("  %-23s %-22s %s\n", "  its standard error", "",
               cg_show_gap(found->quantile_error, inch).text);
    print_row("cold gap, top ring", line->cold_gap,
              told ? found->sampled.cold_gap : NAN, cg_show_gap_up, inch);
    print_shares(answer, correlated);
    print_used(c, answer);
}
