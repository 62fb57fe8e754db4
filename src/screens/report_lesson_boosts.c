/* The lesson's steps over boost and over time. */
#include <stdio.h>

#include "constants.h"
#include "report_lesson_parts.h"
#include "show.h"

static void print_boost(FILE *out, const struct cg_lesson_sheet *sheet,
                        size_t i)
{
    const struct cg_lesson_boost *at = &sheet->lesson->boost[i];
    const struct cg_lesson_growing *grown = &sheet->boost[i];
    fprintf(out, "\nBoost %s, ring at %s, bore at %s\n",
            cg_show_boost(at->boost, sheet->inch).text,
            cg_lesson_say(&grown->ring_rise.figure[0]).text,
            cg_lesson_say(&grown->bore_rise.figure[0]).text);
    cg_hand_print_numbers(out, &grown->ring);
    cg_hand_print_numbers(out, &grown->bore);
    cg_hand_print_numbers(out, &grown->closure);
    fprintf(out, "  over the duty coldgap asks for a cold gap of %s\n",
            cg_show_gap_up(at->cold_gap, sheet->inch).text);
}

void cg_lesson_boosts(FILE *out, const struct cg_lesson_sheet *sheet)
{
    if (sheet->lesson->own > 0)
        fprintf(out, "Settled at full load, growth as in steps 4 and 5.\n");
    else
        fprintf(out,
                "Suppose a %s pressed in the air.  Settled at full load, "
                "growth as in\nsteps 4 and 5.\n",
                sheet->c->charge.charger == CG_CHARGER_BELT ? "blower"
                                                            : "turbine");
    for (size_t i = 0; i < CG_LESSON_BOOSTS; i++)
        print_boost(out, sheet, i);
    fprintf(out, "\n");
    cg_hand_print(out, &sheet->sum.more);
    cg_hand_print(out, &sheet->sum.per_boost);
}

/* Growth around the bore as the model has it; their difference by hand. */
static void print_instant(FILE *out, const struct cg_lesson_sheet *sheet,
                          const struct cg_lesson_instant *at)
{
    bool inch = sheet->inch;
    double around = CG_PI * sheet->c->engine.bore;
    const struct cg_lesson_growth *grown = &at->growth;
    struct cg_hand closure = cg_lesson_work(
        inch, "closure", CG_LESSON_GROWTH, "-",
        CG_FIGURES(cg_lesson_figure(inch, "ring's growth", CG_LESSON_GROWTH,
                                    around * grown->ring_strain),
                   cg_lesson_figure(inch, "bore's growth", CG_LESSON_GROWTH,
                                    around * grown->bore_strain)));
    fprintf(out, "  %8.1f %6.0f %6.2f %6s %6s %10s %10s %9s\n", at->time,
            at->speed * 60.0, at->load,
            cg_lesson_figure(inch, "", CG_LESSON_TEMPERATURE,
                             grown->ring_temperature)
                .text,
            cg_lesson_figure(inch, "", CG_LESSON_TEMPERATURE,
                             grown->wall_temperature)
                .text,
            closure.figure[0].text, closure.figure[1].text,
            closure.result.text);
}

void cg_lesson_duty(FILE *out, const struct cg_lesson_sheet *sheet)
{
    bool inch = sheet->inch;
    const struct cg_answer *answer = &sheet->lesson->answer;
    struct cg_figure closure =
        cg_lesson_figure(inch, "", CG_LESSON_GROWTH, answer->extremes.closure);
    fprintf(out,
            "Metal takes time to warm.  In every line ring less bore is the "
            "closure, in %s.\nDuty %s, %.4g s:\n\n",
            inch ? "inches" : "mm", sheet->c->duty.name, answer->duration);
    fprintf(out,
            "    time s    rpm   load ring %s bore %s  ring grew  bore grew   "
            "closure\n",
            inch ? "F" : "C", inch ? "F" : "C");
    for (size_t i = 0; i < CG_LESSON_INSTANTS; i++)
        print_instant(out, sheet, &sheet->lesson->instant[i]);
    fprintf(out,
            "\nTightest at %.1f s, closure %s; settled at full load (step 6) "
            "%s.\nA short pull needs less than a long one, and a cold engine "
            "driven hard needs most.\n",
            answer->extremes.time, cg_lesson_say(&closure).text,
            cg_lesson_say(&cg_lesson_own(sheet)->closure.result).text);
}
