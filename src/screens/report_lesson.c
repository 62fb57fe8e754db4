#include "report_lesson.h"

#include <stdio.h>

#include "cautions.h"
#include "report_lesson_parts.h"
#include "show.h"

/* The way from boost to gap, by level. */
static const struct {
    const char *title;
    cg_lesson_step step[2];
} steps[CG_LESSON_STEPS] = {
    {"Boost packs the cylinder",
     {cg_lesson_boost_first, cg_lesson_boost_second}},
    {"More fuel, more heat", {cg_lesson_heat_first, cg_lesson_heat_second}},
    {"Where the ring stands",
     {cg_lesson_ladder_first, cg_lesson_ladder_second}},
    {"The ring grows", {cg_lesson_ring, cg_lesson_ring}},
    {"The bore grows too", {cg_lesson_bore_first, cg_lesson_bore_second}},
    {"What is left of the gap", {cg_lesson_left, cg_lesson_left}},
    [CG_LESSON_AT_BOOSTS] = {"The same at three boosts",
                             {cg_lesson_boosts, cg_lesson_boosts}},
    [CG_LESSON_AT_DUTY] = {"A duty: heat takes time",
                           {cg_lesson_duty, cg_lesson_duty}},
    {"When the ends touch", {cg_lesson_ends_first, cg_lesson_ends_second}},
    {"What a wide gap costs", {cg_lesson_leak_first, cg_lesson_leak_second}},
    [CG_LESSON_AT_GAP] = {"The gap to file", {cg_lesson_sum, cg_lesson_sum}},
    {"Hand and model", {cg_lesson_apart, cg_lesson_apart}},
};

const char *cg_lesson_title(int step)
{
    return steps[step].title;
}

void cg_lesson_print(FILE *out, int step, const struct cg_lesson_sheet *sheet,
                     enum cg_lesson_level level)
{
    steps[step].step[level](out, sheet);
}

const char *cg_lesson_how(void)
{
    return "Take a pocket calculator.  A line holds either x and /, or + and "
           "-: key it in\nfrom left to right and you get the number printed, "
           "since each number is rounded\nbefore it is used again.  Expansion "
           "is in millionths of the length for each degree.";
}

const char *cg_lesson_level_text(enum cg_lesson_level level)
{
    return level == CG_LESSON_FIRST
               ? "first; --level second reckons the heat too"
               : "second; --level first has fewer formulas";
}

struct cg_lesson_text cg_lesson_say(const struct cg_figure *figure)
{
    struct cg_lesson_text out;
    snprintf(out.text, sizeof out.text, "%s%s%s", figure->text,
             figure->unit[0] != '\0' ? " " : "", figure->unit);
    return out;
}

static void print_head(const struct cg_lesson_sheet *sheet, const char *config,
                       enum cg_lesson_level level)
{
    const struct cg_case *c = sheet->c;
    bool inch = sheet->inch;
    printf("coldgap lesson %s\n\n", config);
    printf("Engine   %d cylinders, %s x %s, %.0f rpm, boost %s\n",
           c->engine.cylinders, cg_show_length(c->engine.bore, inch).text,
           cg_show_length(c->engine.stroke, inch).text, c->engine.speed * 60.0,
           cg_show_boost(c->charge.boost, inch).text);
    printf("Parts    top ring %s, bore %s\n", c->ring[CG_RING_TOP].material,
           c->bore.material);
    printf("Level    %s\n\n", cg_lesson_level_text(level));
    printf("%s\n", cg_lesson_how());
}

static void print_questions(const struct cg_lesson_sheet *sheet,
                            enum cg_lesson_level level, bool answers)
{
    printf("\nQuestions%s\n\n",
           answers ? "" : " (--answers prints the answers)");
    cg_lesson_ask(stdout, sheet, level);
    if (!answers)
        return;
    printf("\nAnswers\n");
    cg_lesson_answer(stdout, sheet, level);
}

void cg_report_lesson(const struct cg_lesson_sheet *sheet, const char *config,
                      enum cg_lesson_level level, bool answers, bool quiet)
{
    if (quiet) {
        cg_lesson_sum(stdout, sheet);
    } else {
        print_head(sheet, config, level);
        for (int i = 0; i < CG_LESSON_STEPS; i++) {
            printf("\n%d. %s\n\n", i + 1, cg_lesson_title(i));
            cg_lesson_print(stdout, i, sheet, level);
        }
        print_questions(sheet, level, answers);
    }
    printf("\n");
    cg_cautions_print(stdout);
    printf("\n");
}
