#include <math.h>

#include "report_find_parts.h"
#include "say_common.h"
#include "show.h"

static void tell_trade(struct cg_report *report,
                       const struct cg_skirt_answer *skirt)
{
    bool inch = cg_report_inch(report);
    if (isnan(skirt->trade.low))
        cg_report_say(report,
                      "%s No band of the trade is known here for this "
                      "alloy.",
                      cg_say_no_skirts());
    else
        cg_report_say(
            report,
            "%s The trade fits this alloy with %s to %s (common "
            "practice, no source); this model's %s lies %s that "
            "band.",
            cg_say_no_skirts(), cg_show_gap(skirt->trade.low, inch).text,
            cg_show_gap(skirt->trade.high, inch).text,
            cg_show_gap_up(skirt->cold, inch).text, cg_say_skirt_lies(skirt));
}

void cg_report_find_skirt(struct cg_report *report, const struct cg_case *c,
                          const struct cg_skirt_answer *skirt)
{
    bool inch = cg_report_inch(report);
    cg_report_verdict(report, skirt->enough, "%s: %s. %s",
                      skirt->taken ? "Skirt clearance assumed for this alloy"
                                   : "Your skirt clearance",
                      cg_show_gap(skirt->given, inch).text,
                      skirt->enough ? "This model wants no more."
                                    : "This model would want more.");
    if (skirt->too_tight && skirt->taken)
        cg_report_note(report,
                       "TOO TIGHT: hot, the skirt bears on the bore with more "
                       "than margin.skirt_pressure, %s.",
                       cg_show_boost(c->margin.skirt_pressure, inch).text);
    tell_trade(report, skirt);
}

static void tell_cold(struct cg_report *report,
                      const struct cg_skirt_answer *skirt)
{
    cg_report_part(report, "Cold skirt clearance by this model, with the same "
                           "margin, and its parts");
    cg_report_row(report, "skirt_closure", "Closure",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, skirt->closure));
    cg_report_row(report, "skirt_spread", "Uncertainty allowance",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, skirt->spread));
    cg_report_row(report, "skirt_give", "Less what it springs",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, skirt->give));
    cg_report_row(report, "skirt_cold", "This model's, rounded up",
                  cg_quantity(CG_SHOW_GAP_ASKED, skirt->cold));
}

static void tell_hot(struct cg_report *report, const struct cg_answer *answer)
{
    const struct cg_clearance *least = &answer->extremes.clearance;
    const struct cg_skirt_answer *skirt = &answer->skirt;
    bool springs = skirt->pressure > 0.0;
    cg_report_part(report, "Smallest hot clearances, middle estimate");
    cg_report_row(
        report, "skirt_hot",
        springs ? "The skirt springs by" : "Skirt, diametral",
        cg_quantity(CG_SHOW_GAP, springs ? -least->skirt : least->skirt));
    if (springs)
        cg_report_remark(
            report, "%s",
            cg_show_boost(skirt->pressure, cg_report_inch(report)).text);
    cg_report_row(report, "land_top", "Top land, diametral",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, least->land[CG_RING_TOP]));
    cg_report_row(report, "side_top", "Top groove, side",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, least->side[CG_RING_TOP]));
    cg_report_row(report, "back_top", "Top groove, back",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, least->back[CG_RING_TOP]));
    cg_report_figure(report, "clearance", "Hot clearances over the duty",
                     "Skirt and ring side clearances over %.4g s; below zero "
                     "the skirt springs.",
                     answer->duration);
}

void cg_report_find_piston(struct cg_report *report, const struct cg_case *c,
                           const struct cg_answer *answer)
{
    cg_report_section(report, "Piston");
    cg_report_find_skirt(report, c, &answer->skirt);
    tell_cold(report, &answer->skirt);
    tell_hot(report, answer);
}
