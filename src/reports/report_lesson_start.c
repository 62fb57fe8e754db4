/* The gap at the start of a duty, and where it is tightest. */
#include "report_lesson_parts.h"

/* By numbers alone: the formula is that of steps 4 and 5. */
static void tell_growth(struct cg_report *report,
                        const struct cg_lesson_growing *at)
{
    struct cg_hand_text lines = {""};
    cg_hand_add(&lines, &at->ring, false);
    cg_hand_add(&lines, &at->bore, false);
    cg_report_lines(report, lines.text);
}

static void tell_from(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet)
{
    static const char *const from[] = {
        [CG_START_COLD] = "At the start nothing has warmed up",
        [CG_START_CRUISE] = "At the start the engine has cruised until nothing "
                            "changes any more",
        [CG_START_SETTLED] = "The duty starts settled at its first speed and "
                             "load"};
    const struct cg_lesson_growing *start = &sheet->over_time.start;
    cg_report_say(report, "%s, ring at %s, bore at %s. Both have grown:",
                  from[sheet->c->duty.start],
                  cg_figure_text(&start->ring_rise.figure[0]).text,
                  cg_figure_text(&start->bore_rise.figure[0]).text);
}

/* Wider or tighter than cold, and why. */
static void tell_why(struct cg_report *report,
                     const struct cg_lesson_growing *start)
{
    double closure = start->closure.result.value;
    bool hotter =
        start->ring_rise.figure[0].value > start->bore_rise.figure[0].value;
    cg_report_say(report,
                  "So the gap begins %s than cold.%s For each degree the ring "
                  "expands %s millionths, the bore %s.",
                  closure < 0.0 ? "wider" : "tighter",
                  !hotter         ? ""
                  : closure < 0.0 ? " With little heat through it the ring is "
                                    "only a little hotter than the bore."
                                  : " Heat goes through the ring to the bore, "
                                    "so the ring is the hotter of the two even "
                                    "then.",
                  start->ring.figure[1].text, start->bore.figure[1].text);
}

void cg_lesson_tell_start(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *start = &sheet->over_time.start;
    tell_from(report, sheet);
    tell_growth(report, start);
    cg_lesson_sums(report, CG_SUMS(&sheet->over_time.left));
    if (sheet->c->duty.start == CG_START_COLD)
        cg_report_say(report, "So the gap begins much as it was measured cold, "
                              "and has the whole way to go.");
    else
        tell_why(report, start);
}

static void tell_way(struct cg_report *report,
                     const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *at = &sheet->over_time.tightest;
    double time = sheet->lesson->answer.extremes.time;
    if (time > 0.0)
        cg_report_say(report,
                      "Then the ring warms faster than the bore. The gap is "
                      "tightest at %.1f s, ring at %s, bore at %s:",
                      time, cg_figure_text(&at->ring_rise.figure[0]).text,
                      cg_figure_text(&at->bore_rise.figure[0]).text);
    else
        cg_report_say(report, "There, at the start, the gap is tightest:");
    tell_growth(report, at);
    cg_lesson_sums(report, CG_SUMS(&at->closure));
}

/* The closure that the sum of the gap takes. */
void cg_lesson_tell_tightest(struct cg_report *report,
                             const struct cg_lesson_sheet *sheet)
{
    struct cg_figure closure =
        cg_lesson_figure(sheet->inch, "", CG_LESSON_GROWTH,
                         sheet->lesson->answer.extremes.closure);
    tell_way(report, sheet);
    cg_report_say(report,
                  "The model, which does not round on the way, has %s: step 12 "
                  "takes that. Settled at full load the closure is %s (step "
                  "6). A short pull needs less gap than a long one; a cold "
                  "engine driven hard needs most.",
                  cg_figure_text(&closure).text,
                  cg_figure_text(&cg_lesson_own(sheet)->closure.result).text);
}
