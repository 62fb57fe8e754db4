#include "report_second.h"

#include "say_common.h"
#include "show.h"

static void tell_reason(struct cg_report *report, const struct cg_case *c,
                        const struct cg_answer *answer)
{
    const struct cg_second_gap *s = &answer->seating;
    double rpm = s->speed * 60.0, wanted = c->seal.seated_to_deg;
    switch (answer->second_reason) {
    case CG_SECOND_OWN:
        cg_report_say(report,
                      "Its own closure, uncertainty allowance and minimum hot "
                      "gap decide it. With it the top ring stays seated to "
                      "%.0f deg after TDC firing at full load and %.0f rpm; "
                      "%.0f deg is the aim.",
                      s->unseat_deg, rpm, wanted);
        break;
    case CG_SECOND_SEATING:
        cg_report_say(report,
                      "By its own closure it could be smaller, but a smaller "
                      "one does not keep the top ring seated to %.0f deg after "
                      "TDC firing at full load and %.0f rpm.",
                      wanted, rpm);
        break;
    case CG_SECOND_BEST:
        cg_report_say(report,
                      "No gap up to %.1f times the top gap keeps the top ring "
                      "seated a degree past %.0f deg after TDC firing at full "
                      "load and %.0f rpm; this one keeps it seated to %.0f "
                      "deg.",
                      CG_SECOND_MOST, wanted, rpm, s->unseat_deg);
        break;
    case CG_SECOND_LIMITED:
        cg_report_say(report,
                      "The gas model wants %s, to keep the top ring seated to "
                      "%.0f deg after TDC firing at full load and %.0f rpm. "
                      "That is no safety figure, and no more than the shop "
                      "rule is taken: metal does not come back.",
                      cg_show_gap_up(s->gap, cg_report_inch(report)).text,
                      wanted, rpm);
        break;
    case CG_SECOND_RULE:
        cg_report_say(report, "The gas between the rings could not be "
                              "computed, so the shop rule stands.");
        break;
    }
    if (answer->second_reason != CG_SECOND_RULE)
        cg_report_say(report, "The model does not rely on the second ring "
                              "lifting.");
}

void cg_report_second(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer)
{
    bool inch = cg_report_inch(report);
    bool given = answer->verdict.given && answer->verdict.fits == CG_FITS;
    if (answer->second_verdict.beyond) {
        cg_report_verdict(
            report, false, "Second ring: %s.",
            cg_say_beyond(&answer->second_verdict, &answer->second, inch).text);
        return;
    }
    bool gas = answer->second_reason == CG_SECOND_SEATING ||
               answer->second_reason == CG_SECOND_BEST;
    cg_report_row(
        report, "needed_second", "Gap needed, second ring",
        cg_quantity(CG_SHOW_GAP_ASKED, gas ? answer->second.cold_gap
                                           : answer->second_verdict.need));
    cg_report_row(report, "second_for_top", "For a top gap of",
                  cg_quantity(given ? CG_SHOW_GAP : CG_SHOW_GAP_ASKED,
                              answer->second_rule_top));
    cg_report_row(report, "second_rule", "Shop rule, second ring",
                  cg_quantity(CG_SHOW_GAP_ASKED, answer->second_rule));
    cg_report_remark(report,
                     "%.3g times a top gap of %s, common practice, no source",
                     c->margin.second_factor,
                     cg_show_gap_of(answer->second_rule_top, given, inch).text);
    tell_reason(report, c, answer);
}
