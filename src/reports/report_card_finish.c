/* The finish to order from the machine shop. */
#include <math.h>
#include <stdio.h>

#include "report_card.h"
#include "surface.h"

static void put(struct cg_report *report, const char *what, enum cg_kind kind,
                struct cg_band band)
{
    cg_report_cell_words(report, "%s", what);
    cg_report_cell_quantity(report,
                            cg_quantity(kind, band.low > 0.0 ? band.low : NAN));
    cg_report_cell_quantity(report, cg_quantity(kind, band.high));
    cg_report_cell_words(report, "________");
}

static void tell_bands(struct cg_report *report,
                       const struct cg_finish_order *order)
{
    static const struct cg_report_column columns[] = {
        {"figure", "Figure", CG_SHOW_WORDS},
        {"least", "at least", CG_SHOW_WORDS},
        {"most", "at most", CG_SHOW_WORDS},
        {"found", "found", CG_SHOW_WORDS}};
    char caption[128];
    snprintf(
        caption, sizeof caption,
        "Mean of three traces or more, by ISO 13565 with a cut-off of %s",
        cg_quantity_one(cg_quantity(CG_SHOW_LENGTH, CG_SURFACE_USUAL_CUTOFF),
                        cg_report_inch(report))
            .text);
    cg_report_table(report, "finish_order", caption, columns,
                    sizeof columns / sizeof columns[0]);
    put(report, "Rpk", CG_SHOW_ROUGHNESS, order->rpk);
    put(report, "Rk", CG_SHOW_ROUGHNESS, order->rk);
    put(report, "Rvk", CG_SHOW_ROUGHNESS, order->rvk);
    put(report, "Mr1", CG_SHOW_SHARE, order->mr1);
    put(report, "Mr2", CG_SHOW_SHARE, order->mr2);
    put(report, "Vo, oil held", CG_SHOW_OIL, order->oil);
}

void cg_report_card_finish(struct cg_report *report,
                           const struct cg_finish_order *order)
{
    cg_report_section(report, "Finish to order");
    tell_bands(report, order);
    cg_report_row(report, "crosshatch", "Cross-hatch, between the ways",
                  cg_quantity(CG_SHOW_ANGLE, order->crosshatch_deg));
    cg_report_words(report, "grits", "Stones to begin with",
                    "base %d grit, then plateau %d", order->base_grit,
                    order->plateau_grit);
    if (!order->passes)
        cg_report_note(report, "on a simulated bore no grit known here gives "
                               "this finish: ask the shop, and measure.");
    cg_report_say(report,
                  "Bands and oil are a scale of common practice, no source; "
                  "the stones are a start for the first bore. Measure it: "
                  "finish --profile judges the trace.");
}
