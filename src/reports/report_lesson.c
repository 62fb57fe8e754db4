#include <stdlib.h>

#include "lesson_drawing.h"
#include "report_file_to.h"
#include "report_lesson_parts.h"
#include "say_common.h"
#include "show.h"

/* The way from boost to gap. */
static const struct {
    const char *title;
    cg_lesson_step tell;
} steps[] = {
    {"1. Boost packs the cylinder", cg_lesson_tell_boost},
    {"2. More fuel, more heat", cg_lesson_tell_heat},
    {"3. How hot the ring runs", cg_lesson_tell_ladder},
    {"4. The ring grows", cg_lesson_tell_ring},
    {"5. The bore grows too", cg_lesson_tell_bore},
    {"6. What is left of the gap", cg_lesson_tell_left},
    {"7. The same at three boosts", cg_lesson_tell_boosts},
    {"8. A duty: heat takes time", cg_lesson_tell_duty},
    {"9. A mistake: a gap too small", cg_lesson_tell_ends},
    {"10. What a wide gap costs", cg_lesson_tell_leak},
    {"11. What is not known", cg_lesson_tell_unknown},
    {"12. The gap to file to", cg_lesson_tell_gap},
    {"13. Hand and model", cg_lesson_tell_apart},
    {"14. What must change next, and why", cg_lesson_tell_next},
};

void cg_lesson_sums(struct cg_report *report, const struct cg_hand *const *sums)
{
    struct cg_hand_text lines = {""};
    for (; *sums != NULL; sums++)
        cg_hand_add(&lines, *sums, true);
    cg_report_lines(report, lines.text);
}

void cg_lesson_show(struct cg_report *report,
                    const struct cg_lesson_sheet *sheet,
                    void (*draw)(const struct cg_lesson_sheet *sheet,
                                 struct cg_lesson_drawing *out))
{
    struct cg_lesson_drawing drawing;
    draw(sheet, &drawing);
    cg_report_drawing(report, drawing.name, drawing.svg, drawing.title,
                      drawing.words);
    free(drawing.svg);
}

/* What a gap given comes to, and what else asks for action. */
static void tell_warnings(struct cg_report *report,
                          const struct cg_lesson_sheet *sheet)
{
    const struct cg_answer *answer = &sheet->lesson->answer;
    const struct cg_verdict *verdict = &answer->verdict;
    if (verdict->given)
        cg_report_verdict(
            report, verdict->fits == CG_FITS, "Your gap of %s %s.",
            cg_show_gap(verdict->gap, cg_report_inch(report)).text,
            cg_say_fits(verdict->fits, answer->file_to_top.from));
    if (sheet->sum.left.result.value < 0.0)
        cg_report_note(report,
                       "held at full load until settled, a gap of %s "
                       "closes and the ends touch (step 6).",
                       cg_figure_text(&sheet->sum.cold_gap).text);
    if (sheet->leak.closed)
        cg_report_note(report, "the top land has no clearance left when hot: "
                               "look at the piston maker's clearance before "
                               "the ring's gap.");
}

static void tell_first_part(struct cg_report *report,
                            const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    cg_report_file_to_top(report, &sheet->lesson->answer);
    cg_say_gap_place(report, sheet->c);
    tell_warnings(report, sheet);
    cg_report_say(report,
                  "Held at full load, the ring reaches %s and grows %s.",
                  cg_figure_text(&own->ring_rise.figure[0]).text,
                  cg_figure_text(&own->ring.result).text);
    cg_report_say(report,
                  "The bore grows %s and gives that back: %s of the gap "
                  "closes.",
                  cg_figure_text(&own->bore.result).text,
                  cg_figure_text(&own->closure.result).text);
    if (own->chokes != 0.0)
        cg_report_say(report, "In that the choke %s %s.",
                      own->chokes > 0.0 ? "takes" : "gives back",
                      cg_figure_text(&own->choke).text);
    cg_report_say(report, "The gap must cover what closes over the duty, what "
                          "is not known, and the gap that must stay open.");
    cg_report_first_part_ends(report);
}

static void tell_engine(struct cg_report *report, const struct cg_case *c,
                        enum cg_lesson_level level)
{
    cg_report_section(report, "The engine");
    cg_say_size(report, c);
    cg_report_row(report, "speed", "Speed",
                  cg_quantity(CG_SHOW_SPEED, c->engine.speed));
    cg_report_row(report, "boost", "Boost",
                  cg_quantity(CG_SHOW_BOOST, c->charge.boost));
    cg_report_words(report, "top_ring", "Top ring", "%s",
                    c->ring[CG_RING_TOP].material);
    cg_report_words(report, "bore_metal", "Bore's metal", "%s",
                    c->bore.material);
    cg_report_words(report, "level", "Level", "%s",
                    level == CG_LESSON_FIRST
                        ? "first; --level second reckons the heat too"
                        : "second; --level first has fewer formulas");
    cg_report_section(report, "How to key it in");
    cg_report_say(report,
                  "Take a pocket calculator. A line has either x and /, or + "
                  "and -. Key it in from left to right and you get the number "
                  "printed, because each number is rounded before it is used "
                  "again. Expansion is in millionths of the length for each "
                  "degree.");
}

void cg_report_lesson(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet,
                      enum cg_lesson_level level, bool answers)
{
    bool second = level == CG_LESSON_SECOND;
    tell_first_part(report, sheet);
    tell_engine(report, sheet->c, level);
    for (size_t i = 0; i < sizeof steps / sizeof steps[0]; i++) {
        cg_report_section(report, steps[i].title);
        steps[i].tell(report, sheet, second);
    }
    cg_report_section(report, "Questions");
    cg_lesson_ask(report, sheet, second);
    if (!answers) {
        cg_report_say(report, "With --answers the answers follow.");
        return;
    }
    cg_report_section(report, "Answers");
    cg_lesson_answer(report, sheet, second);
}
