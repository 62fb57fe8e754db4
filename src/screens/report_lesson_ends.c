/* The lesson's steps on a gap too small, one too wide, and the one to file. */
#include <stdio.h>

#include "find_notes.h"
#include "report_lesson_parts.h"
#include "show.h"

static void print_overlap(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ends *ends = &sheet->ends;
    if (ends->supposed) {
        fprintf(out,
                "Here the bore grows nearly as much as the ring, or more, so "
                "hardly any gap would\nclose.  Suppose all the same that the "
                "ends overlap by %s.\n\n",
                cg_lesson_say(&ends->stress.figure[1]).text);
        return;
    }
    fprintf(out,
            "Suppose the gap was filed to half the closure of step 6:\n\n");
    cg_hand_print(out, &ends->overlap);
    fprintf(out, "\n");
}

void cg_lesson_ends_first(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ends *ends = &sheet->ends;
    print_overlap(out, sheet);
    fprintf(
        out,
        "The ends cannot overlap.  The bore holds the ring, so the metal is "
        "squeezed: to\n%s in this ring, and it presses on the bore %s times "
        "as hard as its own\ntension does.  The oil film fails, ring and "
        "bore scuff, or the ring breaks.\n(A bore that gives makes it a "
        "little less.)\n",
        cg_lesson_say(&ends->stress.result).text, ends->times.result.text);
}

void cg_lesson_ends_second(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_ends *ends = &sheet->ends;
    print_overlap(out, sheet);
    fprintf(out,
            "The bore holds the ring at one turn, so its metal is squeezed by "
            "that much of\nits arc.  Half a ring in balance gives the pressure "
            "on the bore:\n\n");
    cg_hand_print(out, &ends->stress);
    cg_hand_print(out, &ends->pressure);
    cg_hand_print(out, &ends->times);
    fprintf(out,
            "\nSo many times the pressure of its own tension: the oil film "
            "fails, ring and bore\nscuff, or the ring breaks.  (Thin ring, "
            "rigid bore: one that gives makes it less.)\n");
}

static bool leaks(FILE *out, const struct cg_lesson_sheet *sheet)
{
    if (sheet->leak.closed)
        fprintf(out,
                "The top land has no clearance left when hot, so that no gas "
                "passes there: look at\nthe piston maker's clearance before "
                "the ring's gap.\n");
    return !sheet->leak.closed;
}

/* What the estimate stands on. */
static void print_estimate(FILE *out)
{
    fprintf(out,
            "A hand estimate of one cylinder: one orifice at the cylinder's "
            "mean pressure, no\nsecond ring behind it, the gas as warm as the "
            "groove.\n");
}

void cg_lesson_leak_first(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_leak *leak = &sheet->leak;
    if (!leaks(out, sheet))
        return;
    fprintf(out,
            "A gap %s wider than it need be leaks %s %% of the charge, about\n"
            "%s of power.  That is the price of being wide; the price of being "
            "tight is\nthe engine.  Much too wide also burns oil and fouls it: "
            "gas that passes the ring\nhas to go somewhere.\n",
            cg_lesson_say(&leak->area.figure[0]).text, leak->share.result.text,
            cg_lesson_say(&leak->power.result).text);
    print_estimate(out);
}

void cg_lesson_leak_second(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_lesson_leak *leak = &sheet->leak;
    if (!leaks(out, sheet))
        return;
    fprintf(out,
            "The leak is a small hole: the gap's width times the top land's "
            "clearance, hot and\nradial.  Gas goes through it no faster than "
            "sound, whatever is behind (choked flow,\nHeywood 1988, app. C: "
            "0.685 for a ratio of specific heats of 1.4).  0.86 is for its\n"
            "sharp edges (Namazian and Heywood 1982, from memory).\n\n");
    cg_hand_print(out, &leak->area);
    cg_hand_print(out, &leak->product);
    cg_hand_print(out, &leak->speed);
    cg_hand_print(out, &leak->volume);
    cg_hand_print(out, &leak->mass);
    cg_hand_print(out, &leak->second);
    cg_hand_print(out, &leak->share);
    cg_hand_print(out, &leak->power);
    fprintf(out,
            "\nThat is the price of being wide; the price of being tight is "
            "the engine.  Much too\nwide also burns oil and fouls it.\n");
    print_estimate(out);
}

void cg_lesson_sum(FILE *out, const struct cg_lesson_sheet *sheet)
{
    const struct cg_answer *answer = &sheet->lesson->answer;
    fprintf(out,
            "coldgap adds what is not known (heat, films, metals, boost; for a "
            "risk of %g),\nthe hot gap that must remain, and rounds up to the "
            "filing step.  Over the duty\n%s:\n\n",
            sheet->c->margin.risk, sheet->c->duty.name);
    cg_hand_print(out, &sheet->sum.gap);
    if (answer->verdict.beyond) {
        fprintf(out, "\nTop ring: %s.\n",
                cg_find_beyond(&answer->verdict, &answer->top, sheet->inch)
                    .text);
        return;
    }
    fprintf(out, "\nFile the top ring to at least %s.\n",
            cg_show_gap_up(answer->top.cold_gap, sheet->inch).text);
    fprintf(out,
            "Shop rule for this bore and boost: %s (common practice, no "
            "source)\n",
            cg_show_gap_up(answer->shop_rule, sheet->inch).text);
    if (answer->top.cold_gap < answer->shop_rule)
        fprintf(out,
                "The answer is below the rule: until your own engine has shown "
                "better, file to the\nlarger.\n");
    if (answer->verdict.given)
        fprintf(out, "Your gap of %s is %s.\n",
                cg_show_gap(answer->verdict.gap, sheet->inch).text,
                answer->verdict.safe ? "safe for this duty"
                                     : "TOO SMALL for this duty");
}

void cg_lesson_apart(FILE *out, const struct cg_lesson_sheet *sheet)
{
    fprintf(out, "The closure of step 6, by hand and by the model:\n\n");
    cg_hand_print(out, &sheet->sum.off);
    fprintf(out,
            "\nWhy they differ: degrees are whole here, and half a degree of "
            "the ring is worth\n\n");
    cg_hand_print(out, &sheet->sum.half_degree);
    fprintf(out,
            "\nthe other numbers are rounded too, and the model takes the gap "
            "off the arc.  In\nneither: bore distortion and wear, ring twist, "
            "differences around the circumference\nand between cylinders, "
            "knock, gas pressure in the bore.\n");
}
