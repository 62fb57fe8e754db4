/* The lesson's steps on a gap too small, one too wide, and the one to file
 * to. */
#include "lesson_drawing.h"
#include "outside.h"
#include "report_lesson_parts.h"
#include "say_common.h"
#include "show.h"

static void tell_overlap(struct cg_report *report,
                         const struct cg_lesson_ends *ends)
{
    if (ends->supposed) {
        cg_report_say(report,
                      "Here the bore grows nearly as much as the ring, or "
                      "more, so hardly any gap would close. Suppose all the "
                      "same that the ends overlap by %s.",
                      cg_figure_text(&ends->stress.figure[1]).text);
        return;
    }
    cg_report_say(report, "Suppose somebody filed only half the closure of "
                          "step 6:");
    cg_lesson_sums(report, CG_SUMS(&ends->overlap));
}

void cg_lesson_tell_ends(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    static const char fails[] =
        "The oil film fails, ring and bore scuff, or the ring breaks.";
    const struct cg_lesson_ends *ends = &sheet->ends;
    cg_report_note(report, "this is a MISTAKE, shown for what it does. File to "
                           "no figure of this step.");
    tell_overlap(report, ends);
    if (!second) {
        cg_report_say(report,
                      "The ends cannot overlap. The bore holds the ring, so "
                      "the metal is squeezed: to %s in this ring. It presses "
                      "on the bore %s times as hard as its own tension does. "
                      "%s (A bore that gives makes it a little less.)",
                      cg_figure_text(&ends->stress.result).text,
                      ends->times.result.text, fails);
        return;
    }
    cg_report_say(report, "The bore holds the ring to one turn, so its metal "
                          "is squeezed by that much over the arc. The balance "
                          "of half a ring gives the pressure on the bore:");
    cg_lesson_sums(report,
                   CG_SUMS(&ends->stress, &ends->pressure, &ends->times));
    cg_report_say(report,
                  "It presses that many times as hard as by its own tension. "
                  "%s (This is a thin ring in a rigid bore; one that gives "
                  "makes it less.)",
                  fails);
}

static void tell_hole(struct cg_report *report,
                      const struct cg_lesson_leak *leak)
{
    cg_report_say(report,
                  "The leak is a small hole: the width of the gap times the "
                  "clearance of the top land, hot and radial. Gas goes through "
                  "it no faster than sound, whatever is behind it (choked "
                  "flow, Heywood 1988, app. C: 0.685 for a ratio of specific "
                  "heats of 1.4). The factor 0.86 is for its sharp edges "
                  "(Namazian and Heywood 1982, from memory).");
    cg_lesson_sums(report, CG_SUMS(&leak->area, &leak->product, &leak->speed,
                                   &leak->volume, &leak->mass, &leak->second,
                                   &leak->share, &leak->power));
}

void cg_lesson_tell_leak(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    const struct cg_lesson_leak *leak = &sheet->leak;
    if (leak->closed) {
        cg_report_say(report, "No gas passes the top land here: hot, it has no "
                              "clearance.");
        return;
    }
    if (second)
        tell_hole(report, leak);
    else
        cg_report_say(report,
                      "A gap %s wider than it need be leaks %s %% of the "
                      "charge. That costs about %s.",
                      cg_figure_text(&leak->area.figure[0]).text,
                      leak->share.result.text,
                      cg_figure_text(&leak->power.result).text);
    cg_report_say(report,
                  "That is the price of a wide gap. The price of a tight one "
                  "is the engine. A gap much too wide also burns oil and fouls "
                  "it: gas that passes the ring has to go somewhere.");
    cg_report_say(report,
                  "This is a hand estimate of one cylinder: one hole at the "
                  "mean pressure of the cylinder, no second ring behind it, "
                  "the gas as warm as the groove.");
}

/* A duty that ends before the parts are as hot as they get. */
static void tell_longer(struct cg_report *report,
                        const struct cg_lesson_sheet *sheet)
{
    const struct cg_answer *answer = &sheet->lesson->answer;
    if (answer->duties > 1 || /* the hardest of them stands above */
        !(answer->settled_closure > answer->top.closure * (1.0 + 1e-9)))
        return;
    cg_report_say(
        report,
        "The duty %s lets go before all is hot. Held at full load, as in step "
        "6, the gap closes %s, and the same sum asks for more: coldgap lesson "
        "with --set duty.name=settled works it out.",
        sheet->c->duty.name,
        cg_figure_text(&cg_lesson_own(sheet)->closure.result).text);
}

void cg_lesson_tell_gap(struct cg_report *report,
                        const struct cg_lesson_sheet *sheet, bool second)
{
    const struct cg_answer *answer = &sheet->lesson->answer;
    (void)second;
    cg_report_say(report,
                  "The gap must cover the closure over the duty %s, worked out "
                  "in step 8, and the uncertainty allowance of step 11. The "
                  "minimum hot gap must stay open on top. The sum is rounded "
                  "up to the filing step:",
                  sheet->c->duty.name);
    cg_lesson_sums(report, CG_SUMS(&sheet->sum.gap));
    cg_report_row(report, "cold_gap_top", "Gap needed in this duty",
                  cg_quantity(CG_SHOW_GAP_ASKED, answer->top.cold_gap));
    if (answer->hardest > 0) {
        cg_report_row(
            report, "cold_gap_hardest", "Gap needed in the hardest",
            cg_quantity(CG_SHOW_GAP_ASKED, cg_answer_needed(answer)->cold_gap));
        cg_report_remark(report, "%s", answer->duty[answer->hardest].name);
    }
    cg_report_row(report, "shop_rule", "Shop rule",
                  cg_quantity(CG_SHOW_GAP_ASKED, answer->shop_rule));
    cg_report_remark(report, "common practice, no source");
    tell_longer(report, sheet);
    cg_lesson_show(report, sheet, cg_lesson_draw_gap);
    if (!answer->verdict.beyond)
        cg_report_say(
            report, "File the top ring to %s.",
            cg_show_gap_up(cg_lesson_file_to(sheet), sheet->inch).text);
}

void cg_lesson_tell_apart(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet, bool second)
{
    (void)second;
    cg_report_say(report, "The closure of step 6, by hand and by the model:");
    cg_lesson_sums(report, CG_SUMS(&sheet->sum.off));
    cg_report_say(report, "Degrees are whole here, and half a degree of the "
                          "ring is worth:");
    cg_lesson_sums(report, CG_SUMS(&sheet->sum.half_degree));
    cg_report_say(report, "The other numbers are rounded too, and the model "
                          "takes the gap off the arc. Both leave out:");
    cg_report_say(report, "%s", cg_say_left_out(sheet->c));
}

/* The order is the trade's: common practice, no source. */
void cg_lesson_tell_next(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool second)
{
    (void)second;
    cg_report_say(report,
                  "More boost asks more of every part at once, yet they "
                  "give up one after the other:");
    cg_report_step(report, "The gap first. It closes with every kelvin (step "
                           "7), and filing is the least work.");
    cg_report_step(report,
                   "The ring's face and metal. Pressure presses the face "
                   "on the bore; heat takes the ring's tension.");
    cg_report_step(report,
                   "Gas ports and the bore's finish. Gas must get behind "
                   "the ring in time, and more fuel washes more oil "
                   "off.");
    cg_report_step(report, "The piston and its cooling. They carry all of the "
                           "crown's heat, and change the whole engine.");
    if (sheet->c->combustion.ignition == CG_IGNITION_COMPRESSION)
        cg_report_step(report,
                       "Injection, ratio and charge air, wherever the "
                       "cylinder's pressure comes to its limit: head and "
                       "bearings stand no more.");
    else
        cg_report_step(report,
                       "Fuel, spark and charge air, wherever knock comes: no "
                       "part stands it, so where it comes first it goes "
                       "first.");
    cg_report_say(report,
                  "That is common practice, no source. An engine of your "
                  "own may differ: coldgap ladder finds the boost at "
                  "which each part stops, and draws it.");
}
