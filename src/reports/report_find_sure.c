#include <math.h>

#include "confidence.h"
#include "input_law.h"
#include "report_find_parts.h"
#include "show.h"
#include "uncertain.h"

static void tell_shares(struct cg_report *report,
                        const struct cg_answer *answer,
                        const struct cg_find_chart *charts)
{
    static const struct cg_report_column columns[] = {
        {"input", "Input", CG_SHOW_WORDS},
        {"closure", "closure", CG_SHOW_SMALL_LENGTH},
        {"alone", "alone", CG_SHOW_WHOLE_SHARE},
        {"with_others", "with others", CG_SHOW_WHOLE_SHARE},
        {"error", "+-", CG_SHOW_WHOLE_SHARE}};
    bool sampled = answer->confidence.samples > 0;
    cg_report_table(report, "shares",
                    "What moves the closure: by how much for one standard "
                    "deviation of the input, and its share of the variance",
                    columns, sampled ? 5 : 3);
    for (size_t i = 0; i < answer->contributions; i++) {
        const struct cg_contribution *at = &answer->contribution[i];
        cg_report_cell_words(report, "%s", at->doc);
        cg_report_cell(report, at->shift);
        cg_report_cell(report, at->share);
        if (!sampled)
            continue;
        cg_report_cell(report, at->total_effect);
        cg_report_cell(report, at->total_effect_error);
    }
    cg_find_chart_show(report, charts, "shares",
                       "What the allowance is made of", cg_find_chart_shares,
                       "Bars of each input's share of the variance, largest "
                       "first.");
}

/* The difference between published correlations is part of not knowing. */
static void tell_correlations(struct cg_report *report,
                              const struct cg_answer *answer)
{
    if (answer->correlations == 0)
        return;
    cg_report_part(report, "Closure by gas-side correlation as calibrated, "
                           "middle estimate");
    for (size_t i = 0; i < answer->correlations; i++) {
        const struct cg_correlation_answer *at = &answer->correlation[i];
        if (isnan(at->closure))
            cg_report_words(report, at->name, at->name,
                            "could not be computed");
        else
            cg_report_row(report, at->name, at->name,
                          cg_quantity(CG_SHOW_GAP, at->closure));
    }
}

static void add_pair(struct cg_report *report, const char *name,
                     double first_order, double sampled)
{
    cg_report_cell_words(report, "%s", name);
    cg_report_cell(report, first_order);
    cg_report_cell(report, sampled);
}

static void tell_pairs(struct cg_report *report, const struct cg_case *c,
                       const struct cg_answer *answer)
{
    static const struct cg_report_column columns[] = {
        {"what", "Top ring", CG_SHOW_WORDS},
        {"first_order", "first order", CG_SHOW_SMALL_LENGTH},
        {"sampled", "sampled", CG_SHOW_SMALL_LENGTH}};
    const struct cg_confidence *found = &answer->confidence;
    const struct cg_gap_sum *line = &found->first_order;
    /* with less than one sample beyond it a quantile means nothing */
    bool told = (double)found->samples * c->margin.risk >= 1.0;
    cg_report_table(report, "sampled",
                    cg_inputs_correlated(c)
                        ? "All inputs moved at once, correlated"
                        : "All inputs moved at once, as independent",
                    columns, 3);
    add_pair(report, "closure, mean", line->closure, found->mean);
    add_pair(report, "standard deviation", answer->sigma, found->sd);
    add_pair(report, "closure at the risk", line->closure + line->spread,
             told ? found->quantile : NAN);
    add_pair(report, "its standard error", NAN,
             told ? found->quantile_error : NAN);
    cg_report_row(report, "needed_first_order", "Gap needed, first order",
                  cg_quantity(CG_SHOW_GAP_ASKED, line->cold_gap));
    cg_report_row(
        report, "needed_sampled", "Gap needed, sampled",
        cg_quantity(CG_SHOW_GAP_ASKED, told ? found->sampled.cold_gap : NAN));
}

static void tell_samples(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    const struct cg_confidence *found = &answer->confidence;
    if (found->samples == 0)
        return;
    tell_pairs(report, c, answer);
    cg_report_say(report, "%zu samples, seed %lu; %zu failed and are left out.",
                  found->samples, found->seed, found->failures);
    if (found->few)
        cg_report_note(report,
                       "too few samples for a risk of %g (%.0f or more): the "
                       "answer uses the larger allowance of the two.",
                       c->margin.risk, CG_CONFIDENCE_BEYOND / c->margin.risk);
    else
        cg_report_say(report, "The answer uses the sampled allowance.");
    cg_report_figure(report, "histogram", "Closures sampled",
                     "Bars of the closures found beside the normal law of "
                     "first order, and lines at the risk.");
}

void cg_report_find_sure(struct cg_report *report,
                         const struct cg_updated_case *updated,
                         const struct cg_answer *answer,
                         const struct cg_find_chart *charts)
{
    const struct cg_case *c = &updated->c;
    cg_report_section(report, "How sure it is");
    tell_shares(report, answer, charts);
    if (cg_inputs_correlated(c))
        cg_report_say(report, "Inputs are correlated: a share counts what an "
                              "input has in common with others.");
    tell_correlations(report, answer);
    if (updated->learned.entries > 0)
        cg_report_say(report,
                      "The evidence was fitted with %s; the others take over "
                      "what was learned.",
                      c->combustion.heat_transfer);
    tell_samples(report, c, answer);
}
