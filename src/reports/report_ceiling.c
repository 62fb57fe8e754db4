#include "report_ceiling.h"

#include <math.h>

#include "answer.h"
#include "constants.h"
#include "operating.h"
#include "report_past.h"
#include "say_common.h"
#include "show.h"

/* Down to the digit that is shown: 1 kPa or 0.1 psi; of a middle estimate 10
 * kPa or 1 psi. */
static double floor_shown(double boost, bool band, bool inch)
{
    double step = (inch ? 0.1 * CG_PSI : 1e3) * (band ? 10.0 : 1.0);
    return step * floor(boost / step * (1.0 + 1e-9));
}

/* What stops the boost, beside it. */
static void tell_stop(struct cg_report *report, const struct cg_ceiling *at)
{
    bool inch = cg_report_inch(report);
    struct cg_text gap =
        cg_show_boost(floor_shown(at->boost, false, inch), inch);
    const char *more = at->always_enough ? " and more" : "";
    switch (at->by) {
    case CG_CEILING_GAP:
        cg_report_remark(report, "stopped by the gap");
        break;
    case CG_CEILING_LIMIT:
        cg_report_remark(report,
                         "about, by the middle estimate: stopped by %s; the "
                         "gap stands %s%s",
                         cg_say_past_word(at->past), gap.text, more);
        break;
    case CG_CEILING_SPARK:
        cg_report_remark(report,
                         "about, by the middle estimate: stopped by the spark, "
                         "retarded by the most that anyone does, %.0f deg; the "
                         "gap stands %s%s",
                         CG_RETARD_MOST, gap.text, more);
        break;
    case CG_CEILING_RULE:
        cg_report_remark(report, "stopped by the end of the shop rule; the gap "
                                 "stands that");
        break;
    }
}

static void tell_ceiling(struct cg_report *report, const struct cg_ceiling *at)
{
    bool inch = cg_report_inch(report);
    bool band = at->by == CG_CEILING_LIMIT || at->by == CG_CEILING_SPARK;
    if (at->never_enough) {
        cg_report_verdict(report, false,
                          "No ceiling: this gap is too small even without "
                          "boost.");
        return;
    }
    cg_report_answer(
        report, "ceiling", "Ceiling, boost",
        cg_quantity(CG_SHOW_BOOST, floor_shown(at->stops, band, inch)));
    tell_stop(report, at);
}

/* When it goes wrong, of a gap below the need. */
static void tell_touch(struct cg_report *report, const struct cg_ceiling *at)
{
    if (!isnan(at->touch_time))
        cg_report_say(report,
                      "By the middle estimate the ends touch %.1f s into the "
                      "duty.",
                      at->touch_time);
    else if (!isnan(at->residual_time))
        cg_report_say(report,
                      "By the middle estimate the ends do not touch, but less "
                      "than the minimum hot gap is open from %.1f s on.",
                      at->residual_time);
    else
        cg_report_say(report,
                      "By the middle estimate the minimum hot gap stays open; "
                      "the uncertainty allowance is what is missing.");
}

/* The target is the boost that the config has. */
static void tell_target(struct cg_report *report, const struct cg_case *c,
                        const struct cg_ceiling *at)
{
    bool inch = cg_report_inch(report);
    const struct cg_ceiling_point *target = &at->at_target;
    enum cg_fits fits =
        cg_advice_fits(at->gap, target->need, target->file_to.at_least);
    enum cg_past past = cg_limits_first(&target->limits);
    if (past != CG_PAST_LIMITS)
        cg_report_verdict(report, false,
                          "At the config's boost, NOT SAFE AT ANY GAP: in %s "
                          "%s.",
                          target->duty,
                          cg_say_past(past, &target->limits, inch).text);
    cg_report_verdict(report, fits == CG_FITS,
                      "Your gap of %s %s at the config's boost of %s.",
                      cg_show_gap(at->gap, inch).text,
                      cg_say_fits(fits, target->file_to.from),
                      cg_show_boost(c->charge.boost, inch).text);
    if (fits == CG_FITS_NOT)
        tell_touch(report, at);
}

/* What the figure rests on: boost is limited by more than the ring. */
static void tell_limits(struct cg_report *report, const struct cg_case *c)
{
    bool inch = cg_report_inch(report);
    cg_report_section(report, "What this leaves out");
    cg_say_gaps_first_order(report);
    cg_report_say(report,
                  "Head gasket, rods and turbocharger have ceilings of their "
                  "own, not looked at here.");
    if (c->combustion.ignition == CG_IGNITION_COMPRESSION)
        cg_report_say(report,
                      "Injection begins %.1f deg after TDC firing at any boost.",
                      c->combustion.injection_deg);
    else if (isnan(c->combustion.retard_deg_per_100kPa))
        cg_report_say(report,
                      "The burn is as late as knock makes it with octane "
                      "%.4g, %.0f deg at most.",
                      c->fuel.octane, CG_RETARD_MOST);
    else
        cg_report_say(report,
                      "The burn is taken %.*f deg later for each %s of boost "
                      "on gasoline, %.0f deg at most.",
                      inch ? 1 : 0,
                      c->combustion.retard_deg_per_100kPa *
                          (inch ? 10.0 * CG_PSI / 100e3 : 1.0),
                      inch ? "10 psi" : "100 kPa", CG_RETARD_MOST);
}

void cg_report_ceiling(struct cg_report *report, const struct cg_case *c,
                       const struct cg_ceiling *at)
{
    tell_ceiling(report, at);
    cg_report_row(
        report, "file_to_top", "File to, at the config's boost",
        cg_quantity(CG_SHOW_GAP_ASKED, at->at_target.file_to.file_to));
    cg_report_remark(report, "%s",
                     cg_say_from(&at->at_target.file_to, at->at_target.need,
                                 at->at_target.hardest, cg_report_inch(report))
                         .text);
    tell_target(report, c, at);
    if (!at->rises)
        cg_report_note(report, "what to file to does not rise all the way with "
                               "boost; the gap's ceiling is the lowest "
                               "crossing.");
    cg_report_first_part_ends(report);
    cg_report_section(report, "What it is for");
    cg_report_row(report, "gap", "Top ring gap",
                  cg_quantity(CG_SHOW_GAP, at->gap));
    cg_report_words(report, "duty", "Duty", "%s", c->duty.name);
    cg_report_row(report, "risk", "Risk",
                  cg_quantity(CG_SHOW_NUMBER, c->margin.risk));
    cg_report_row(report, "file_to_at_none", "File to, without boost",
                  cg_quantity(CG_SHOW_GAP_ASKED, at->at_none.file_to.at_least));
    cg_report_row(report, "needed_at_none", "Gap needed without boost",
                  cg_quantity(CG_SHOW_GAP_ASKED, at->at_none.need));
    cg_report_row(report, "needed_at_target",
                  "Gap needed at the config's boost",
                  cg_quantity(CG_SHOW_GAP_ASKED, at->at_target.need));
    tell_limits(report, c);
}
