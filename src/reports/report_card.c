#include "report_card.h"

#include "constants.h"
#include "report_builds.h"
#include "report_file_to.h"
#include "report_find_parts.h"
#include "report_past.h"
#include "report_sheet.h"

/* How much above is allowed, and how warm the gauge. */
static void tell_filing(struct cg_report *report, const struct cg_card *card)
{
    const struct cg_case *c = &card->build->updated.c;
    cg_report_row(report, "filing_step", "Filing allowance, up",
                  cg_quantity(CG_SHOW_GAP, c->margin.filing_step));
    cg_report_remark(report, "one filing step past it at most, nothing below");
    cg_report_row(report, "too_wide_top", "Too wide above, top ring",
                  cg_quantity(CG_SHOW_GAP, card->asked[0].too_wide));
    cg_report_row(report, "too_wide_second", "Too wide above, second ring",
                  cg_quantity(CG_SHOW_GAP, card->asked[1].too_wide));
    cg_report_row(report, "gauge_at", "Gauge at",
                  cg_quantity(CG_SHOW_TEMPERATURE, CG_COLD_TEMPERATURE));
    cg_report_remark(report, "ring and block alike, each ring in its own bore");
}

static void tell_signed(struct cg_report *report)
{
    static const char *const box[] = {"Engine", "Date", "Builder", "Checked"};
    cg_report_section(report, "Signed");
    for (size_t i = 0; i < sizeof box / sizeof box[0]; i++)
        cg_report_blank(report, box[i]);
}

void cg_report_card(struct cg_report *report, const struct cg_card *card)
{
    const struct cg_build *build = card->build;
    const struct cg_case *c = &build->updated.c;
    struct cg_key_values keys = cg_card_keys(card);
    cg_report_find_keys(report, c, &build->answer);
    cg_report_keys(report, &keys);
    cg_report_past(report, c, &build->answer);
    cg_report_file_to(report, &build->answer);
    tell_filing(report, card);
    cg_report_find_judged(report, &build->updated, &build->answer,
                          &build->without);
    cg_report_first_part_ends(report);
    if (card->builds != NULL)
        cg_report_builds_changes(report, card->builds);
    cg_report_card_parts(report, card);
    cg_report_card_finish(report, &card->order);
    cg_report_card_measure(report);
    cg_report_card_holds_for(report, &build->updated.prior);
    tell_signed(report);
    if (card->builds != NULL)
        cg_report_builds(report, card->builds);
}
