/* What to measure, and what the card rests on.  The steps are common practice,
 * no source. */
#include "outside.h"
#include "report_card.h"
#include "report_sheet.h"
#include "say_common.h"
#include "scope.h"

static void tell_after(struct cg_report *report)
{
    cg_report_section(report, "After the first hours");
    cg_report_step(report, "Warm, after running in: leak-down and compression "
                           "of each cylinder, blow-by at full load if it can "
                           "be had.");
    cg_report_step(report, "Oil used, and what the filter holds: bright flakes "
                           "mean stop.");
    cg_report_step(report, "First strip: ring ends under a lens. Bright or "
                           "hammered ends touched: do not run it again so.");
    cg_report_step(report, "Ring faces, skirt and bore for scuffing; ring gaps "
                           "again, and the skirt.");
    cg_report_step(report, "Write what was found into the notebook, touched or "
                           "not: it teaches the next build.");
}

void cg_report_card_measure(struct cg_report *report)
{
    cg_report_sheet_method(report);
    cg_report_step(report, "Side clearance of each ring with a feeler all "
                           "round its groove; back: the ring lies below the "
                           "land.");
    cg_report_step(report, "Skirt at its gauge point against its own bore. "
                           "Write every figure beside its line here.");
    tell_after(report);
}

void cg_report_card_holds_for(struct cg_report *report, const struct cg_case *c)
{
    cg_report_section(report, "Holds for");
    cg_report_row(
        report, "ambient", "Air",
        cg_quantity(CG_SHOW_TEMPERATURE, c->charge.ambient_temperature));
    cg_report_row(report, "air_pressure", "Air pressure",
                  cg_quantity(CG_SHOW_PRESSURE, c->charge.ambient_pressure));
    if (c->combustion.ignition == CG_IGNITION_SPARK)
        cg_report_row(report, "octane", "Octane",
                      cg_quantity(CG_SHOW_NUMBER, c->fuel.octane));
    else
        cg_report_words(report, "injection", "Injection begins",
                        "%.1f deg after TDC firing",
                        c->combustion.injection_deg);
    cg_report_row(report, "cooler", "Charge cooler",
                  cg_quantity(CG_SHOW_SHARE, c->charge.cooler_effectiveness));
    if (c->charge.second_charger != CG_CHARGER_NONE)
        cg_report_row(
            report, "cooler_between", "Cooler between chargers",
            cg_quantity(CG_SHOW_SHARE, c->charge.between_effectiveness));
    cg_report_row(report, cg_air_cooled(c) ? "cooling_air" : "coolant",
                  cg_air_cooled(c) ? "Air at the fins" : "Coolant",
                  cg_quantity(CG_SHOW_TEMPERATURE, cg_outside_temperature(c)));
    cg_report_row(report, "oil_at", "Oil",
                  cg_quantity(CG_SHOW_TEMPERATURE, c->cooling.oil_temperature));
    cg_report_row(report, "risk", "Risk",
                  cg_quantity(CG_SHOW_NUMBER, c->margin.risk));
    cg_report_say(report, "Another boost, fuel, mixture or cooling is another "
                          "card.");
    cg_report_say(report, "%s", cg_scope());
    cg_report_say(report, "Left out: %s", cg_say_left_out(c));
}
