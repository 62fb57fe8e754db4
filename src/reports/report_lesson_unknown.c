/* The lesson's step on what is not known, and what it says of knock. */
#include <math.h>

#include "knock.h"
#include "report_lesson_parts.h"
#include "show.h"

static void tell_inputs(struct cg_report *report,
                        const struct cg_lesson_unknown *unknown)
{
    static const struct cg_report_column columns[] = {
        {"input", "Not known exactly", CG_SHOW_WORDS},
        {"closure", "Moves it by", CG_SHOW_SMALL_LENGTH},
        {"share", "Share", CG_SHOW_WHOLE_SHARE}};
    cg_report_table(report, "unknown",
                    "The largest, by their share of the variance", columns,
                    sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < unknown->inputs; i++) {
        cg_report_cell_words(report, "%s", unknown->input[i]->doc);
        cg_report_cell(report, fabs(unknown->input[i]->shift));
        cg_report_cell(report, unknown->input[i]->share);
    }
    cg_report_cell_words(report, "all others together");
    cg_report_cell(report, NAN);
    cg_report_cell(report, unknown->others);
}

/* What the gap would be if the largest were known. */
static void tell_largest(struct cg_report *report,
                         const struct cg_lesson_unknown *unknown, bool second)
{
    if (!unknown->one_leads)
        return;
    if (!second) {
        cg_report_say(report,
                      "If the first of them, the %s, were known exactly, the "
                      "allowance would be %s. That is what evidence from your "
                      "own engine is worth; a guess is worth nothing.",
                      unknown->input[0]->doc,
                      cg_figure_text(&unknown->then.result).text);
        return;
    }
    cg_report_say(report,
                  "The shares are of squares, so they add up. If the first of "
                  "them, the %s, were known exactly:",
                  unknown->input[0]->doc);
    cg_lesson_sums(report,
                   CG_SUMS(&unknown->rest, &unknown->root, &unknown->then));
    cg_report_say(report, "That is what evidence from your own engine is "
                          "worth; a guess is worth nothing.");
}

void cg_lesson_tell_unknown(struct cg_report *report,
                            const struct cg_lesson_sheet *sheet, bool second)
{
    const struct cg_lesson_unknown *unknown = &sheet->unknown;
    const struct cg_gap_sum *sum = &sheet->lesson->answer.top;
    if (unknown->known) {
        cg_report_say(report, "This config says that all is known exactly, so "
                              "nothing is allowed for. No engine is like "
                              "that.");
        return;
    }
    cg_report_say(report, "A closure worked out is a middle estimate: about "
                          "half of all engines built like this one close more. "
                          "So what is not known is part of the gap. Each input "
                          "is moved by one standard deviation (two engines in "
                          "three lie within it), the duty is run again, and "
                          "the closure moves:");
    tell_inputs(report, unknown);
    cg_report_say(report,
                  "All together make the standard deviation of the closure. "
                  "The uncertainty allowance is so many of them that only one "
                  "engine in %.0f closes more:",
                  1.0 / sheet->c->margin.risk);
    cg_lesson_sums(report, CG_SUMS(&unknown->deviations, &unknown->part));
    if (sum->spread > sum->closure && sum->spread > sum->residual)
        cg_report_say(report, "It is the largest part of the gap needed.");
    tell_largest(report, unknown, second);
}

/* Knock that the duty declares, with its number; or that one can. */
static void tell_declared(struct cg_report *report,
                          const struct cg_duty_case *duty)
{
    double most = cg_duty_knock_heat(duty);
    if (most > 0.0)
        cg_report_say(report,
                      "Knock itself is an input, never a result: this duty "
                      "(%s) declares it, with %.4g times the heat from the gas "
                      "while it lasts.",
                      duty->name, most);
    else
        cg_report_say(report, "Knock itself is an input, never a result: only "
                              "a duty that declares it has it, as lean_event "
                              "does with its knock_heat. This one has none.");
}

/* A diesel's. */
static void tell_injection(struct cg_report *report,
                           const struct cg_lesson_sheet *sheet)
{
    const struct cg_performance *at = &sheet->lesson->answer.performance;
    cg_report_say(report,
                  "The fuel is injected from %.1f deg after TDC firing on, into "
                  "air hot enough to fire it: it waits until %.1f deg. What has "
                  "mixed by then, %.0f %%, burns at once; the rest burns as it "
                  "mixes. Half is burned at %.1f deg.",
                  sheet->c->combustion.injection_deg, at->ignition_deg,
                  100.0 * at->premixed_share, at->burn50_deg);
}

void cg_lesson_tell_knock(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet)
{
    const struct cg_performance *at = &sheet->lesson->answer.performance;
    if (sheet->c->combustion.ignition == CG_IGNITION_COMPRESSION) {
        tell_injection(report, sheet);
        return;
    }
    const struct cg_hand *retard = &sheet->knock.retard;
    if (retard->result.value > 0.0) {
        cg_report_say(report,
                      "Pressed, the last gas would fire by itself: knock. So "
                      "the burn is retarded %s. Half is burned so many degrees "
                      "after TDC firing:",
                      isnan(sheet->c->combustion.retard_deg_per_100kPa)
                          ? "until it just does not (the knock limit)"
                          : "as combustion.retard_deg_per_100kPa says");
        cg_lesson_sums(report, CG_SUMS(retard));
        cg_report_say(report,
                      "The knock integral, of which 1 is knock, falls by that "
                      "from %.2f to %.2f.%s",
                      at->knock_unretarded, at->knock_integral,
                      at->knock_integral > CG_KNOCK_PREDICTED
                          ? " That is KNOCK still."
                          : "");
    } else {
        cg_report_say(report,
                      "The burn need not be retarded for knock here: the knock "
                      "integral is %.2f, and 1 is knock.",
                      at->knock_integral);
    }
    tell_declared(report, &sheet->c->duty);
}
