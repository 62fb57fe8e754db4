/* The lesson's questions, with this engine's numbers, and their answers. */
#include <stdio.h>

#include "report_lesson_parts.h"

/* A question: asks, or when `answer` is set answers. */
typedef void (*question)(FILE *out, const struct cg_lesson_sheet *sheet,
                         bool answer);

/* Degrees in the units of the sheet: whole, as the questions say them. */
static struct cg_figure degrees(const struct cg_lesson_sheet *sheet, double c,
                                double f)
{
    return cg_figure_of(NULL, sheet->inch ? f : c, 0, sheet->inch ? "F" : "C");
}

static struct cg_hand growth(const struct cg_lesson_sheet *sheet,
                             const char *name, struct cg_figure expansion,
                             struct cg_figure by)
{
    return cg_lesson_work(
        sheet->inch, name, CG_LESSON_GROWTH, "xx/",
        CG_FIGURES(sheet->arc.result, expansion, by, cg_figure_plain(1e6)));
}

static struct cg_hand hotter_ring(const struct cg_lesson_sheet *sheet)
{
    return growth(sheet, "more closure", cg_lesson_own(sheet)->ring.figure[1],
                  degrees(sheet, 20.0, 36.0));
}

static void ask_hotter(FILE *out, const struct cg_lesson_sheet *sheet,
                       bool answer)
{
    struct cg_hand more = hotter_ring(sheet);
    if (answer)
        cg_hand_print(out, &more);
    else
        fprintf(out,
                "The ring runs %s hotter than in step 4, the bore as before.  "
                "How much\n   more closure is that?\n",
                cg_lesson_say(&more.figure[2]).text);
}

static void ask_left(FILE *out, const struct cg_lesson_sheet *sheet,
                     bool answer)
{
    struct cg_hand left = cg_lesson_work(
        sheet->inch, "left then", CG_LESSON_GROWTH, "-",
        CG_FIGURES(sheet->sum.left.result, hotter_ring(sheet).result));
    if (answer)
        cg_hand_print(out, &left);
    else
        fprintf(out, "How much of the gap of step 6 is left then?\n");
}

static void ask_metal(FILE *out, const struct cg_lesson_sheet *sheet,
                      bool answer)
{
    struct cg_hand more =
        cg_lesson_work(sheet->inch, "more closure", CG_LESSON_GROWTH, "x/",
                       CG_FIGURES(cg_lesson_own(sheet)->ring.result,
                                  cg_figure_plain(10), cg_figure_plain(100)));
    if (answer)
        cg_hand_print(out, &more);
    else
        fprintf(out,
                "Another ring's metal expands 10 %% more for each degree.  How "
                "much more closure?\n");
}

static void ask_coolant(FILE *out, const struct cg_lesson_sheet *sheet,
                        bool answer)
{
    const struct cg_lesson_growing *own = cg_lesson_own(sheet);
    struct cg_hand bore =
        growth(sheet, "bore gives back less", own->bore.figure[1],
               degrees(sheet, 10.0, 18.0));
    struct cg_hand ring = growth(sheet, "ring grows less", own->ring.figure[1],
                                 degrees(sheet, 4.0, 7.0));
    struct cg_hand closes =
        cg_lesson_work(sheet->inch, "more closure", CG_LESSON_GROWTH, "-",
                       CG_FIGURES(bore.result, ring.result));
    if (!answer) {
        fprintf(out,
                "Colder coolant cools the bore by %s and the ring by only %s.  "
                "Does the gap\n   open or close, and by how much?\n",
                cg_lesson_say(&bore.figure[2]).text,
                cg_lesson_say(&ring.figure[2]).text);
        return;
    }
    cg_hand_print(out, &bore);
    cg_hand_print(out, &ring);
    cg_hand_print(out, &closes);
    fprintf(out, "  It %s.\n",
            closes.result.value > 0.0   ? "closes"
            : closes.result.value < 0.0 ? "opens"
                                        : "does neither");
}

static void ask_bore(FILE *out, const struct cg_lesson_sheet *sheet,
                     bool answer)
{
    struct cg_figure other =
        cg_figure_of("other bore", sheet->inch ? 4.0 : 100.0,
                     sheet->inch ? 3 : 2, sheet->inch ? "in" : "mm");
    struct cg_hand closure =
        cg_lesson_work(sheet->inch, "its closure", CG_LESSON_GROWTH, "x/",
                       CG_FIGURES(cg_lesson_own(sheet)->closure.result, other,
                                  sheet->arc.figure[1]));
    if (answer)
        cg_hand_print(out, &closure);
    else
        fprintf(out,
                "Another engine has a bore of %s and the same metals and "
                "temperatures.\n   What is its closure?\n",
                cg_lesson_say(&other).text);
}

static void ask_file(FILE *out, const struct cg_lesson_sheet *sheet,
                     bool answer)
{
    struct cg_figure asked = sheet->sum.gap.result;
    struct cg_figure measured = cg_figure_of("measured", 0.8 * asked.value,
                                             sheet->inch ? 4 : 3, asked.unit);
    struct cg_hand off =
        cg_lesson_work(sheet->inch, "to file off", CG_LESSON_GROWTH, "-",
                       CG_FIGURES(asked, measured));
    const struct cg_answer *found = &sheet->lesson->answer;
    if (!answer) {
        fprintf(
            out,
            "You measure a cold gap of %s.  How much must come off the ends "
            "for step 11?\n",
            cg_lesson_say(&measured).text);
        return;
    }
    cg_hand_print(out, &off);
    if (found->top.cold_gap < found->shop_rule)
        fprintf(out, "  And more, up to the shop rule of step 11, which is "
                     "larger.\n");
}

static void ask_boost(FILE *out, const struct cg_lesson_sheet *sheet,
                      bool answer)
{
    bool inch = sheet->inch;
    struct cg_figure more =
        cg_figure_of("more boost", inch ? 4.0 : 30.0, 0, inch ? "psi" : "kPa");
    struct cg_hand closes =
        cg_lesson_work(inch, "more closure", CG_LESSON_GROWTH, "x/",
                       CG_FIGURES(sheet->sum.per_boost.result, more,
                                  cg_figure_plain(inch ? 10 : 100)));
    if (answer)
        cg_hand_print(out, &closes);
    else
        fprintf(out, "By the slope of step 7, what do %s more boost close?\n",
                cg_lesson_say(&more).text);
}

static void ask_stress(FILE *out, const struct cg_lesson_sheet *sheet,
                       bool answer)
{
    struct cg_figure overlap = cg_lesson_figure(sheet->inch, "that overlap",
                                                CG_LESSON_GROWTH, 0.0508e-3);
    struct cg_hand stress = cg_lesson_work(
        sheet->inch, "stress", CG_LESSON_STRESS, "x/",
        CG_FIGURES(sheet->ends.stress.figure[0], overlap, sheet->arc.result));
    if (answer)
        cg_hand_print(out, &stress);
    else
        fprintf(out,
                "The ends would overlap by %s.  How hard is the ring "
                "squeezed?\n",
                cg_lesson_say(&overlap).text);
}

static void ask_cooler(FILE *out, const struct cg_lesson_sheet *sheet,
                       bool answer)
{
    const struct cg_lesson_charge *charge = &sheet->charge;
    struct cg_figure by = degrees(sheet, 40.0, 72.0);
    struct cg_figure here = charge->absolute.result;
    by.unit = here.unit; /* a difference is the same on either scale */
    struct cg_hand absolute =
        cg_lesson_work(sheet->inch, "hotter charge", CG_LESSON_ABSOLUTE, "+",
                       CG_FIGURES(here, by));
    struct cg_hand air =
        cg_lesson_work(sheet->inch, "air then", CG_LESSON_MASS, "x/",
                       CG_FIGURES(charge->air.result, here, absolute.result));
    if (!answer) {
        fprintf(out,
                "The charge comes in %s hotter at the same pressure.  How much "
                "air is that,\n   less than in step 1 by the ratio of the "
                "temperatures?\n",
                cg_lesson_say(&by).text);
        return;
    }
    cg_hand_print(out, &absolute);
    cg_hand_print(out, &air);
}

static void ask_film(FILE *out, const struct cg_lesson_sheet *sheet,
                     bool answer)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    if (!answer) {
        fprintf(
            out,
            "The oil film is twice as thick.  Where does the ring of step 3 "
            "stand by hand,\n   groove and bore as before?\n");
        return;
    }
    struct cg_hand film =
        cg_hand_work("film then", "K/W", -3, "x",
                     CG_FIGURES(ladder->film.result, cg_figure_plain(2)));
    struct cg_hand total = cg_hand_work(
        "series then", "K/W", -3, "++",
        CG_FIGURES(ladder->flank.result, ladder->inside.result, film.result));
    struct cg_hand step = cg_lesson_work(
        sheet->inch, "step then", CG_LESSON_RISE, "x/",
        CG_FIGURES(ladder->fall.result, ladder->flank.result, total.result));
    struct cg_hand ring =
        cg_lesson_work(sheet->inch, "ring then", CG_LESSON_RISE, "-",
                       CG_FIGURES(ladder->groove, step.result));
    cg_hand_print(out, &film);
    cg_hand_print(out, &total);
    cg_hand_print(out, &step);
    cg_hand_print(out, &ring);
}

/* Those of the first level, then those that the second adds. */
static const question questions[] = {
    ask_hotter, ask_left,  ask_metal,  ask_coolant, ask_bore,
    ask_file,   ask_boost, ask_stress, ask_cooler,  ask_film,
};

enum { FIRST = 7, ALL = sizeof questions / sizeof questions[0] };

static int count_of(enum cg_lesson_level level)
{
    return level == CG_LESSON_FIRST ? FIRST : ALL;
}

void cg_lesson_ask(FILE *out, const struct cg_lesson_sheet *sheet,
                   enum cg_lesson_level level)
{
    for (int i = 0; i < count_of(level); i++) {
        fprintf(out, "%d. ", i + 1);
        questions[i](out, sheet, false);
    }
}

void cg_lesson_answer(FILE *out, const struct cg_lesson_sheet *sheet,
                      enum cg_lesson_level level)
{
    for (int i = 0; i < count_of(level); i++) {
        fprintf(out, "\n%d.\n", i + 1);
        questions[i](out, sheet, true);
    }
}
