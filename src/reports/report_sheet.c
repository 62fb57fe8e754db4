#include "report_sheet.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "report_file_to.h"
#include "report_past.h"
#include "say_common.h"
#include "show.h"

static void tell_count(struct cg_report *report, const struct cg_sheet *sheet)
{
    static const char *const are[CG_FIT_STATES] = {
        [CG_FIT_UNKNOWN] = "not measured",
        [CG_FIT_TOO_SMALL] = "too small",
        [CG_FIT_FILE] = "to file",
        [CG_FIT_FITS] = "fit",
        [CG_FIT_TOO_WIDE] = "too wide"};
    static const enum cg_fit_state order[CG_FIT_STATES] = {
        CG_FIT_TOO_SMALL, CG_FIT_FILE, CG_FIT_FITS, CG_FIT_TOO_WIDE,
        CG_FIT_UNKNOWN};
    const int *count = sheet->fitting.count;
    char list[128] = "";
    for (int i = 0; i < CG_FIT_STATES; i++) {
        size_t used = strlen(list);
        if (count[order[i]] > 0)
            snprintf(list + used, sizeof list - used, "%s%d %s",
                     used > 0 ? ", " : "", count[order[i]], are[order[i]]);
        cg_report_key(report, cg_fit_word(order[i]), count[order[i]], "1");
    }
    bool small = count[CG_FIT_TOO_SMALL] > 0, file = count[CG_FIT_FILE] > 0;
    cg_report_verdict(report, !small && !file, "%s: %s.",
                      small  ? "NOT SAFE"
                      : file ? "BELOW WHAT TO FILE TO"
                             : "No ring measured is too small",
                      list);
}

/* Nothing to take off is a dash, not a nought. */
static void put_off(struct cg_report *report, double metres)
{
    cg_report_cell(report, metres > 0.0 ? metres : NAN);
}

static void put_cylinder(struct cg_report *report, const struct cg_sheet *sheet,
                         int cylinder)
{
    static const char *const state[CG_FIT_STATES] = {
        "not measured", "TOO SMALL", "file", "fits", "too wide"};
    const struct cg_fit *fit = sheet->fitting.cylinder[cylinder].ring;
    bool listed = sheet->gauged.cylinder[cylinder].listed;
    cg_report_cell(report, cylinder + 1);
    for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
        cg_report_cell_words(report, "%s",
                             listed ? state[fit[ring].state] : "not in file");
        put_off(report, fit[ring].take_off);
    }
    if (fit[0].state == CG_FIT_TOO_SMALL || fit[1].state == CG_FIT_TOO_SMALL)
        cg_report_mark(report, CG_MARK_BAD);
    else if (fit[0].state == CG_FIT_FITS && fit[1].state == CG_FIT_FITS)
        cg_report_mark(report, CG_MARK_GOOD);
}

static void tell_off(struct cg_report *report, const struct cg_sheet *sheet)
{
    static const struct cg_report_column column[] = {
        {"cylinder", "Cylinder", CG_SHOW_COUNT},
        {"top", "Top ring", CG_SHOW_WORDS},
        {"top_take_off", "Take off", CG_SHOW_GAP_ASKED},
        {"second", "Second ring", CG_SHOW_WORDS},
        {"second_take_off", "Take off", CG_SHOW_GAP_ASKED}};
    cg_report_table(report, "take_off", "Take off to the gap to file to",
                    column, sizeof column / sizeof column[0]);
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        put_cylinder(report, sheet, i);
}

/* What asks for more than a file. */
static void tell_notes(struct cg_report *report, const struct cg_sheet *sheet)
{
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
            const struct cg_fit *fit = &sheet->fitting.cylinder[i].ring[ring];
            if (fit->state == CG_FIT_TOO_WIDE)
                cg_report_note(
                    report,
                    "cylinder %d, %s ring: %s wider than to file to; "
                    "only another ring helps.",
                    i + 1, cg_fit_ring_word(ring),
                    cg_show_length(fit->gap - fit->asked,
                                   cg_report_inch(report))
                        .text);
        }
}

static void tell_rings(struct cg_report *report, const struct cg_sheet *sheet)
{
    static const struct cg_report_column column[] = {
        {"cylinder", "Cylinder", CG_SHOW_COUNT},
        {"ring", "Ring", CG_SHOW_WORDS},
        {"bore", "Bore", CG_SHOW_SMALL_LENGTH},
        {"gap", "Gap", CG_SHOW_SMALL_LENGTH},
        {"file_to", "File to", CG_SHOW_GAP_ASKED},
        {"steps", "Steps", CG_SHOW_COUNT},
        {"then", "Gap after them", CG_SHOW_SMALL_LENGTH}};
    char caption[128];
    snprintf(caption, sizeof caption,
             "Each filing step takes %s off; part of a step counts as one",
             cg_show_gap(sheet->fitting.step, cg_report_inch(report)).text);
    cg_report_table(report, "rings", caption, column,
                    sizeof column / sizeof column[0]);
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++) {
            const struct cg_fit *fit = &sheet->fitting.cylinder[i].ring[ring];
            if (!sheet->gauged.cylinder[i].listed)
                continue;
            cg_report_cell(report, i + 1);
            cg_report_cell_words(report, "%s", cg_fit_ring_word(ring));
            cg_report_cell(report, sheet->gauged.cylinder[i].bore);
            cg_report_cell(report, fit->gap);
            cg_report_cell(report, fit->asked);
            put_off(report, fit->steps);
            cg_report_cell(report, fit->then);
        }
}

/* What the tables took from elsewhere than a cylinder's own line. */
static void tell_taken(struct cg_report *report, const struct cg_sheet *sheet)
{
    bool inch = cg_report_inch(report);
    for (int i = 0; i < sheet->fitting.cylinders; i++) {
        const struct cg_gauged_cylinder *gauged = &sheet->gauged.cylinder[i];
        const struct cg_fitted_cylinder *fitted = sheet->fitting.cylinder;
        int from = gauged->measured_in - 1;
        if (!gauged->listed)
            cg_report_note(report,
                           "cylinder %d is not in the file: nothing is said "
                           "of it.",
                           i + 1);
        else if (isnan(gauged->bore))
            cg_report_note(
                report,
                "cylinder %d: bore not measured, engine.bore of %s is taken.",
                i + 1,
                cg_quantity_one(
                    cg_quantity(CG_SHOW_SMALL_LENGTH, fitted[i].bore), inch)
                    .text);
        if (from < 0 || from == i)
            continue;
        double more = cg_fit_carry(fitted[from].bore, fitted[i].bore);
        cg_report_note(report,
                       "cylinder %d: gaps measured in the bore of cylinder "
                       "%d; in its own they are %s %s.",
                       i + 1, from + 1, cg_show_length(fabs(more), inch).text,
                       more < 0.0 ? "smaller" : "larger");
    }
}

void cg_report_sheet(struct cg_report *report, const struct cg_sheet *sheet)
{
    static const char *const box[] = {"Engine", "Date", "Builder", "Checked"};
    cg_report_past(report, &sheet->c, &sheet->answer);
    cg_report_file_to(report, &sheet->answer);
    cg_say_gap_place(report, &sheet->c);
    tell_count(report, sheet);
    tell_off(report, sheet);
    tell_notes(report, sheet);
    cg_report_first_part_ends(report);
    cg_report_section(report, "Ring by ring");
    tell_rings(report, sheet);
    if (cg_report_inch(report))
        cg_report_say(report,
                      "Take off and file to are rounded up to half a "
                      "thousandth; steps and the gap after them go by the "
                      "filing step (margin.filing_step_in = 0.0005 files in "
                      "halves).");
    tell_taken(report, sheet);
    cg_report_sheet_wide(report, sheet);
    cg_report_sheet_bores(report, sheet);
    cg_report_sheet_method(report);
    cg_report_section(report, "Signed");
    for (size_t i = 0; i < sizeof box / sizeof box[0]; i++)
        cg_report_blank(report, box[i]);
    cg_report_sheet_gaps(report, sheet);
    cg_report_section(report, "What this leaves out");
    cg_report_say(report, "Taper and ovality of the bore, wear, light between "
                          "ring and bore. Every cylinder is taken to run as "
                          "hot as the config says.");
}
