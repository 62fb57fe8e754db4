#include <math.h>

#include "report_sheet.h"
#include "show.h"

static void price_table(struct cg_report *report, const struct cg_sheet *sheet)
{
    static const struct cg_report_column column[] = {
        {"cylinder", "Cylinder", CG_SHOW_COUNT},
        {"ring", "Ring", CG_SHOW_WORDS},
        {"wider", "Wider by", CG_SHOW_SMALL_LENGTH},
        {"blow_by", "More blow-by", CG_SHOW_LEAK},
        {"volume", "Its volume", CG_SHOW_DRAUGHT}};
    cg_report_table(report, "too_wide",
                    "What it costs in blow-by in that cylinder", column,
                    sizeof column / sizeof column[0]);
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
            const struct cg_fit *fit = &sheet->fitting.cylinder[i].ring[ring];
            const struct cg_gap_price *price = &sheet->prices.ring[i][ring];
            if (fit->state != CG_FIT_TOO_WIDE)
                continue;
            cg_report_cell(report, i + 1);
            cg_report_cell_words(report, "%s", cg_fit_ring_word(ring));
            cg_report_cell(report, fit->gap - fit->asked);
            cg_report_cell(report, price->blow_by);
            cg_report_cell(report, price->volume);
        }
}

void cg_report_sheet_wide(struct cg_report *report,
                          const struct cg_sheet *sheet)
{
    double needed = sheet->prices.asked;
    if (sheet->fitting.count[CG_FIT_TOO_WIDE] == 0)
        return;
    cg_report_section(report, "Too wide");
    price_table(report, sheet);
    if (isnan(needed))
        cg_report_say(report,
                      "What it costs is not known: with the gaps needed the "
                      "rings do not settle to a motion that repeats.");
    else
        cg_report_say(
            report,
            "Taken at rated speed and full load, where %s pass in one "
            "cylinder with the gaps needed (the model of seal). A "
            "dash: the rings do not settle to a motion that "
            "repeats.",
            cg_show_leak(needed, cg_report_inch(report)).text);
}

void cg_report_sheet_bores(struct cg_report *report,
                           const struct cg_sheet *sheet)
{
    static const struct cg_report_column column[] = {
        {"cylinder", "Cylinder", CG_SHOW_COUNT},
        {"bore", "Bore larger by", CG_SHOW_SMALL_LENGTH},
        {"gap", "Gap larger by", CG_SHOW_SMALL_LENGTH}};
    const struct cg_fitting *fitting = &sheet->fitting;
    const struct cg_fitted_cylinder *cylinder = fitting->cylinder;
    int small = fitting->smallest, large = fitting->largest;
    if (small < 0)
        return;
    cg_report_section(report, "Gap against bore");
    cg_report_say(report, "The same ring opens by pi times what the bore is "
                          "larger. Closure and uncertainty allowance grow with "
                          "the bore itself.");
    cg_report_table(report, "bores", "Against the smallest bore measured",
                    column, sizeof column / sizeof column[0]);
    for (int i = 0; i < fitting->cylinders; i++) {
        if (isnan(cylinder[i].opens))
            continue;
        cg_report_cell(report, i + 1);
        cg_report_cell(report, cylinder[i].bore - cylinder[small].bore);
        cg_report_cell(report, cylinder[i].opens);
    }
    if (cylinder[large].opens > 0.0)
        cg_report_say(
            report,
            "A ring filed in cylinder %d and run in cylinder %d has %s less "
            "than was gauged: file each ring in the bore it runs in.",
            large + 1, small + 1,
            cg_show_length(cylinder[large].opens, cg_report_inch(report)).text);
}

/* Common practice, no source. */
void cg_report_sheet_method(struct cg_report *report)
{
    cg_report_section(report, "How to measure");
    cg_report_step(report, "Let block and rings lie until both are at room "
                           "temperature, clean and dry.");
    cg_report_step(report, "Bore: set the bore gauge on a micrometer. Measure "
                           "where the ring will be gauged, along the crank and "
                           "across it, and write down the mean.");
    cg_report_step(report, "Gap: push the ring alone down its own bore with a "
                           "bare piston, so that it lies square. The thickest "
                           "feeler that slides with a light drag is the gap.");
    cg_report_step(report, "File one end only, square, from the face inwards. "
                           "Measure again after every few steps. Take the burr "
                           "off every edge; wash.");
    cg_report_step(report, "Write down the gap you end with: what was filed "
                           "off does not go back.");
}
