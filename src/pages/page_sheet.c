#include "page_sheet.h"

#include <math.h>
#include <stdio.h>

#include "find_notes.h"
#include "page_second.h"
#include "page_values.h"
#include "report_sheet.h"
#include "show.h"

/* A length to be taken off; "-" for none. */
static struct cg_text off(double metres, bool inch)
{
    return cg_sheet_length_up(metres > 0.0 ? metres : NAN, inch);
}

static void ring_row(struct cg_page *page, const struct cg_sheet *sheet,
                     int cylinder, int ring, bool inch)
{
    static const char *const state[CG_FIT_STATES] = {
        "not measured", "TOO SMALL", "file", "fits", "too wide"};
    const struct cg_fit *fit = &sheet->fitting.cylinder[cylinder].ring[ring];
    char name[48], steps[16] = "-";
    snprintf(name, sizeof name, "%d\302\240%s", cylinder + 1,
             cg_fit_ring_word(ring));
    if (fit->steps > 0.0)
        snprintf(steps, sizeof steps, "%.0f", fit->steps);
    struct cg_text bore =
        cg_sheet_length(sheet->gauged.cylinder[cylinder].bore, inch);
    struct cg_text gap = cg_sheet_length(fit->gap, inch);
    struct cg_text asked = cg_sheet_length_up(fit->asked, inch);
    struct cg_text take_off = off(fit->take_off, inch);
    struct cg_text then = cg_sheet_length(fit->then, inch);
    struct cg_text rule = off(fit->rule_take_off, inch);
    const char *const cells[] = {name,      state[fit->state],
                                 take_off.text, steps,
                                 gap.text,  asked.text,
                                 then.text, rule.text,
                                 bore.text};
    cg_page_row(page, cells, 9,
                fit->state == CG_FIT_TOO_SMALL ? "bad"
                : fit->state == CG_FIT_FITS    ? "good"
                                               : NULL);
}

static void rings_table(struct cg_page *page, const struct cg_sheet *sheet,
                        bool inch)
{
    static const char *const heads[] = {
        "Cylinder, ring", "State", "Take off", "Steps", "Gap",
        "Asked",          "Then",  "To rule",  "Bore"};
    cg_page_table(page,
                  inch ? "By cylinder, lengths in inches"
                       : "By cylinder, lengths in mm",
                  heads, 9);
    for (int i = 0; i < sheet->fitting.cylinders; i++)
        for (int ring = 0; ring < CG_FIT_RINGS; ring++)
            ring_row(page, sheet, i, ring, inch);
    cg_page_table_end(page);
}

static void say_beyond(struct cg_page *page, const char *ring,
                       const struct cg_verdict *verdict,
                       const struct cg_gap_sum *sum)
{
    if (verdict->beyond)
        cg_page_verdict(page, false, "%s ring: %s", ring,
                        cg_find_beyond(verdict, sum, false).text);
}

static void rings_part(struct cg_page *page, const struct cg_sheet *sheet,
                       bool inch)
{
    const int *count = sheet->fitting.count;
    const struct cg_answer *answer = &sheet->answer;
    cg_page_section(page, "What to take off");
    cg_page_verdict(page, count[CG_FIT_TOO_SMALL] == 0,
                    "%s: %d too small, %d to file, %d fit, %d too wide, %d "
                    "not measured",
                    count[CG_FIT_TOO_SMALL] > 0
                        ? "NOT SAFE for this duty before the small ones are "
                          "filed"
                        : "No measured ring is too small",
                    count[CG_FIT_TOO_SMALL], count[CG_FIT_FILE],
                    count[CG_FIT_FITS], count[CG_FIT_TOO_WIDE],
                    count[CG_FIT_UNKNOWN]);
    say_beyond(page, "Top", &answer->verdict, &answer->top);
    say_beyond(page, "Second", &answer->second_verdict, &answer->second);
    rings_table(page, sheet, inch);
    rings_table(page, sheet, !inch);
    cg_page_say(page,
                "A filing step is %s, steps counted up. To rule: what to take "
                "off to reach the shop rule where that asks for more (common "
                "practice, no source).",
                cg_show_gap(sheet->fitting.step, inch).text);
}

static void taken_notes(struct cg_page *page, const struct cg_sheet *sheet)
{
    for (int i = 0; i < sheet->fitting.cylinders; i++) {
        const struct cg_gauged_cylinder *gauged = &sheet->gauged.cylinder[i];
        int from = gauged->measured_in - 1;
        if (gauged->listed && isnan(gauged->bore))
            cg_page_note(page,
                         "cylinder %d: bore not measured, engine.bore of %s "
                         "mm is taken.",
                         i + 1,
                         cg_sheet_length(sheet->c.engine.bore, false).text);
        if (from >= 0 && from != i)
            cg_page_note(page,
                         "cylinder %d: gaps measured in the bore of cylinder "
                         "%d; in its own they change by %+.3f mm.",
                         i + 1, from + 1,
                         cg_fit_carry(sheet->fitting.cylinder[from].bore,
                                      sheet->fitting.cylinder[i].bore) *
                             1e3);
    }
}

static void asked_table(struct cg_page *page, const struct cg_sheet *sheet,
                        int ring, const char *caption)
{
    const struct cg_fit_asked *asked = &sheet->fitting.asked[ring];
    double need = cg_fit_need(asked, 1.0);
    cg_page_values(page, caption);
    cg_page_length(page, "Closure", asked->closure);
    cg_page_length(page, "Spread", asked->spread);
    cg_page_length(page, "Residual", asked->minimum_hot_gap);
    cg_page_gap_up(page, "Safe against closing from", need);
    cg_page_gap_up(page, "Asked",
                   cg_fit_asks(asked, 1.0, sheet->fitting.step));
    cg_page_gap_up(page, "Shop rule", asked->rule);
    cg_page_length(page, "Too wide above", asked->too_wide);
    cg_page_values_end(page);
}

static void asked_part(struct cg_page *page, const struct cg_sheet *sheet)
{
    const struct cg_case *c = &sheet->c;
    const struct cg_fit_asked *top = &sheet->fitting.asked[0];
    cg_page_section(page, "What is asked");
    cg_page_say(page,
                "Engine: %d cylinders, bore %s (%s), boost %s, %s. Rings: "
                "top %s, second %s. Duty: %s, %.4g s, risk %g.",
                c->engine.cylinders,
                cg_show_length(c->engine.bore, false).text,
                cg_show_length(c->engine.bore, true).text,
                cg_show_boost(c->charge.boost, false).text, c->fuel.name,
                c->ring[CG_RING_TOP].material,
                c->ring[CG_RING_SECOND].material, c->duty.name,
                sheet->answer.duration, c->margin.risk);
    asked_table(page, sheet, 0, "Top ring, in a bore of the config's size");
    asked_table(page, sheet, 1, "Second ring, in a bore of the config's size");
    cg_page_second(page, c, &sheet->answer);
    if (cg_fit_need(top, 1.0) < top->rule)
        cg_page_note(page, "the answer is below the shop rule: until your own "
                           "engine has shown better, file to the larger.");
}

void cg_page_sheet(struct cg_page *page, const struct cg_sheet *sheet)
{
    static const char *const box[] = {"Engine", "Date", "Builder", "Checked"};
    rings_part(page, sheet, cg_page_inch(page));
    taken_notes(page, sheet);
    cg_page_too_wide(page, sheet);
    cg_page_section(page, "How to measure");
    cg_page_steps(page, cg_sheet_method());
    cg_page_section(page, "Signed");
    for (size_t i = 0; i < sizeof box / sizeof box[0]; i++)
        cg_page_blank(page, box[i]);
    asked_part(page, sheet);
    cg_page_section(page, "What this leaves out");
    cg_page_say(page, "Taper and ovality of the bore, wear, light between "
                      "ring and bore; every cylinder is taken to run as hot "
                      "as the config says.");
}
