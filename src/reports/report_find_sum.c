#include <math.h>

#include "confidence.h"
#include "evidence_gap.h"
#include "report_duties.h"
#include "report_find_parts.h"
#include "say_common.h"
#include "show.h"

static void tell_allowance(struct cg_report *report, const struct cg_case *c,
                           const struct cg_answer *answer)
{
    const struct cg_confidence *by = &answer->confidence;
    const struct cg_gap_sum *needed = cg_answer_needed(answer);
    double sigma = answer->duty[answer->hardest].sigma;
    cg_report_row(report, "spread_top", "Uncertainty allowance",
                  cg_quantity(CG_SHOW_GAP, needed->spread));
    if (needed->spread == cg_evidence_allowance(c, needed->closure))
        cg_report_remark(report, "by the gap whose ends touched");
    else if (by->samples > 0 && answer->hardest == 0 &&
             answer->top.spread == by->sampled.spread)
        cg_report_remark(report, "sampled, for a risk of %g", c->margin.risk);
    else
        cg_report_remark(report, "%.2f sigma, for a risk of %g",
                         sigma > 0.0 ? needed->spread / sigma
                                     : answer->quantile,
                         c->margin.risk);
}

/* The parts as shown add up to the gap as shown: what their own rounding takes
 * or adds goes to the last part. */
static void tell_sum(struct cg_report *report, const struct cg_case *c,
                     const struct cg_answer *answer)
{
    const struct cg_gap_sum *sum = cg_answer_needed(answer);
    if (answer->duties > 1)
        cg_report_words(report, "hardest", "Hardest duty", "%s",
                        answer->duty[answer->hardest].name);
    const double part[] = {sum->closure, sum->spread, sum->residual};
    cg_report_row(report, "closure_top", "Closure, middle estimate",
                  cg_quantity(CG_SHOW_GAP, sum->closure));
    tell_allowance(report, c, answer);
    cg_report_row(report, "residual", "Minimum hot gap",
                  cg_quantity(CG_SHOW_GAP, sum->residual));
    cg_report_words(
        report, "rounding", "Rounding up", "%s",
        cg_show_rest(sum->cold_gap, part, 3, cg_report_inch(report)).text);
    cg_report_row(report, "cold_gap_top", "Gap needed, top ring",
                  cg_quantity(CG_SHOW_GAP_ASKED, sum->cold_gap));
    cg_report_row(report, "shop_rule", "Shop rule, this bore and boost",
                  cg_quantity(CG_SHOW_GAP_ASKED, answer->shop_rule));
    cg_report_remark(report, "%s",
                     answer->file_to_top.past_rule
                         ? cg_say_rule_end(cg_report_inch(report)).text
                         : "common practice, no source");
    cg_report_row(report, "file_to", "File to",
                  cg_quantity(CG_SHOW_GAP_ASKED, answer->file_to_top.file_to));
    cg_report_remark(report, "the larger, until your own engine has shown "
                             "better");
    if (answer->confidence.samples > 0 && answer->hardest > 0)
        cg_report_say(report,
                      "The samples are of the duty asked for; the hardest is "
                      "worked out to first order: --duty %s samples it.",
                      answer->duty[answer->hardest].name);
    if (answer->confidence.samples == 0)
        cg_report_say(
            report,
            "The allowance is worked out to first order. %s For a "
            "risk of %g use --samples %.0f.",
            cg_say_first_order(cg_report_inch(report)).text, c->margin.risk,
            fmin(fmax(CG_CONFIDENCE_BEYOND / c->margin.risk, 1e3), 1e5));
}

static void tell_instant(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    const struct cg_course *log = cg_report_log(c, answer, answer->hardest);
    const struct cg_duty_answer *hard = &answer->duty[answer->hardest];
    const struct cg_extremes *e = &hard->extremes;
    cg_report_part(report, answer->duties > 1
                               ? "The tightest instant, in the hardest duty"
                               : "The tightest instant");
    cg_report_words(report, "tightest", "When", "%.2f s%s, %.0f rpm, %s",
                    e->time + (log != NULL ? log->log.begin : 0.0),
                    log != NULL ? " of the log" : "", e->speed * 60.0,
                    cg_say_load(e->load).text);
    cg_report_row(report, "tightest_stroke", "Depth below the deck",
                  cg_quantity(CG_SHOW_LENGTH, e->depth));
    cg_report_row(report, "ring_at", "Top ring",
                  cg_quantity(CG_SHOW_TEMPERATURE, e->ring_at));
    cg_report_row(report, "ring_growth", "Ring grows, around",
                  cg_quantity(CG_SHOW_GAP, e->ring_growth));
    cg_report_row(report, "bore_at", "Bore there",
                  cg_quantity(CG_SHOW_TEMPERATURE, e->bore_at));
    cg_report_row(report, "bore_growth",
                  c->bore.choke.narrower > 0.0
                      ? "Bore grows, around, choke taken off"
                      : "Bore grows, around",
                  cg_quantity(CG_SHOW_GAP, e->bore_growth));
    cg_report_row(report, "hot_gap_min", "Smallest hot gap",
                  cg_quantity(CG_SHOW_GAP, answer->verdict.hot_gap_min));
    cg_report_remark(report, "of a cold gap of %s",
                     cg_show_gap_of(answer->verdict.gap, answer->verdict.given,
                                    cg_report_inch(report))
                         .text);
}

void cg_report_find_sum(struct cg_report *report, const struct cg_case *c,
                        const struct cg_answer *answer,
                        const struct cg_find_chart *charts)
{
    cg_report_section(report, "How the gap comes about");
    tell_sum(report, c, answer);
    if (answer->duties > 1)
        cg_report_figure(report, "duties", "The duties side by side",
                         "For each duty a bar: closure, minimum hot gap and "
                         "uncertainty allowance; a line at the gap to file "
                         "to.");
    cg_find_chart_show(report, charts, "why",
                       "Growth of ring and bore over the duty asked for",
                       cg_find_chart_growth,
                       "Two curves over %.4g s: what the ring has grown and "
                       "what the bore has given back. What lies between is the "
                       "closure.",
                       answer->duration);
    tell_instant(report, c, answer);
    cg_find_chart_show(report, charts, "hot_gap",
                       "Gap left while hot, over the duty asked for",
                       cg_find_chart_gap,
                       "A curve that falls from the gap at the start to its "
                       "least, and a level line at the minimum hot gap.");
    cg_find_chart_show(report, charts, "stroke", "Hot gap along the bore",
                       cg_find_chart_bore,
                       "Curves of the gap against depth below the deck at five "
                       "instants, the tightest among them.");
}
