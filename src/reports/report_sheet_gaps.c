#include <stdio.h>

#include "report_duties.h"
#include "report_second.h"
#include "report_sheet.h"
#include "say_common.h"

static void tell_engine(struct cg_report *report, const struct cg_sheet *sheet)
{
    const struct cg_case *c = &sheet->c;
    cg_report_row(report, "cylinders", "Cylinders",
                  cg_quantity(CG_SHOW_COUNT, c->engine.cylinders));
    cg_report_row(report, "bore", "Bore",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, c->engine.bore));
    cg_report_row(report, "boost", "Boost",
                  cg_quantity(CG_SHOW_BOOST, c->charge.boost));
    cg_report_words(report, "fuel", "Fuel", "%s", c->fuel.name);
    cg_report_words(report, "ring_top", "Top ring", "%s",
                    c->ring[CG_RING_TOP].material);
    cg_report_words(report, "ring_second", "Second ring", "%s",
                    c->ring[CG_RING_SECOND].material);
    cg_report_words(report, "duty", "Duty", "%s, %.4g s", c->duty.name,
                    sheet->answer.duration);
    cg_report_row(report, "risk", "Risk",
                  cg_quantity(CG_SHOW_NUMBER, c->margin.risk));
}

/* A row of one ring's; the key says whose. */
static void row(struct cg_report *report, int ring, const char *name,
                const char *label, enum cg_kind kind, double metres)
{
    char key[48];
    snprintf(key, sizeof key, "%s_%s", name, cg_fit_ring_word(ring));
    cg_report_row(report, key, label, cg_quantity(kind, metres));
}

static void tell_sum(struct cg_report *report, const struct cg_sheet *sheet,
                     int ring)
{
    const struct cg_fit_asked *asked = &sheet->fitting.asked[ring];
    row(report, ring, "closure", "Closure", CG_SHOW_SMALL_LENGTH,
        asked->closure);
    row(report, ring, "allowance", "Uncertainty allowance",
        CG_SHOW_SMALL_LENGTH, asked->spread);
    row(report, ring, "minimum_hot_gap", "Minimum hot gap",
        CG_SHOW_SMALL_LENGTH, asked->minimum_hot_gap);
    row(report, ring, "safe_from", "Safe against closing from",
        CG_SHOW_GAP_ASKED, cg_fit_need(asked, 1.0));
    row(report, ring, "too_wide", "Too wide above", CG_SHOW_SMALL_LENGTH,
        asked->too_wide);
}

void cg_report_sheet_gaps(struct cg_report *report,
                          const struct cg_sheet *sheet)
{
    cg_report_section(report, "Where the gaps come from");
    tell_engine(report, sheet);
    cg_report_duties(report, &sheet->c, &sheet->answer);
    cg_report_part(report, "Top ring, in a bore of the config's size");
    tell_sum(report, sheet, 0);
    cg_report_row(report, "shop_rule", "Shop rule",
                  cg_quantity(CG_SHOW_GAP_ASKED, sheet->answer.shop_rule));
    cg_report_remark(report, "%s",
                     sheet->answer.file_to_top.past_rule
                         ? cg_say_rule_end(cg_report_inch(report)).text
                         : "common practice, no source");
    cg_report_part(report, "Second ring, in a bore of the config's size");
    tell_sum(report, sheet, 1);
    cg_report_second(report, &sheet->c, &sheet->answer);
    cg_report_say(report,
                  "Too wide is margin.wide_factor times what to file to "
                  "(common practice, no source).");
}
