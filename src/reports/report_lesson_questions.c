/* The lesson's questions, with this engine's numbers, and their answers. */
#include "lesson_sheet_parts.h"
#include "report_lesson_parts.h"
#include "say_common.h"

/* A question: asks, or when `answer` is set answers. */
typedef void (*question)(struct cg_report *report,
                         const struct cg_lesson_sheet *sheet, bool answer);

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

static void ask_hotter(struct cg_report *report,
                       const struct cg_lesson_sheet *sheet, bool answer)
{
    struct cg_hand more = hotter_ring(sheet);
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&more));
    else
        cg_report_step(report,
                       "The ring runs %s hotter than in step 4, the bore as "
                       "before. How much more does the gap close?",
                       cg_figure_text(&more.figure[2]).text);
}

static void ask_left(struct cg_report *report,
                     const struct cg_lesson_sheet *sheet, bool answer)
{
    struct cg_hand left = cg_lesson_work(
        sheet->inch, "left then", CG_LESSON_GROWTH, "-",
        CG_FIGURES(sheet->sum.left.result, hotter_ring(sheet).result));
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&left));
    else
        cg_report_step(report, "How much of the gap of step 6 is left then?");
}

static void ask_metal(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet, bool answer)
{
    struct cg_hand more =
        cg_lesson_work(sheet->inch, "more closure", CG_LESSON_GROWTH, "x/",
                       CG_FIGURES(cg_lesson_own(sheet)->ring.result,
                                  cg_figure_plain(10), cg_figure_plain(100)));
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&more));
    else
        cg_report_step(report, "The metal of another ring expands 10 %% more "
                               "for each degree. How much more does the gap "
                               "close?");
}

static void ask_coolant(struct cg_report *report,
                        const struct cg_lesson_sheet *sheet, bool answer)
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
        cg_report_step(report,
                       "Colder %s cools the bore by %s and the ring by "
                       "only %s. Does the gap open or close, and by how much?",
                       cg_say_outside(sheet->c),
                       cg_figure_text(&bore.figure[2]).text,
                       cg_figure_text(&ring.figure[2]).text);
        return;
    }
    cg_lesson_sums(report, CG_SUMS(&bore, &ring, &closes));
    cg_report_say(report, "The gap %s.",
                  closes.result.value > 0.0   ? "closes"
                  : closes.result.value < 0.0 ? "opens"
                                              : "does neither");
}

static void ask_bore(struct cg_report *report,
                     const struct cg_lesson_sheet *sheet, bool answer)
{
    struct cg_figure other =
        cg_figure_of("other bore", sheet->inch ? 4.0 : 100.0,
                     sheet->inch ? 3 : 2, sheet->inch ? "in" : "mm");
    struct cg_hand closure =
        cg_lesson_work(sheet->inch, "its closure", CG_LESSON_GROWTH, "x/",
                       CG_FIGURES(cg_lesson_own(sheet)->closure.result, other,
                                  sheet->arc.figure[1]));
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&closure));
    else
        cg_report_step(report,
                       "Another engine has a bore of %s, with the same metals "
                       "and temperatures. What is its closure?",
                       cg_figure_text(&other).text);
}

static void ask_file(struct cg_report *report,
                     const struct cg_lesson_sheet *sheet, bool answer)
{
    struct cg_figure asked =
        cg_lesson_gap_figure(sheet, "file to", cg_lesson_file_to(sheet));
    struct cg_figure measured = cg_figure_of("measured", 0.8 * asked.value,
                                             sheet->inch ? 4 : 3, asked.unit);
    struct cg_hand off =
        cg_lesson_work(sheet->inch, "to file off", CG_LESSON_GROWTH, "-",
                       CG_FIGURES(asked, measured));
    if (!answer) {
        cg_report_step(report,
                       "You measure a cold gap of %s. How much must come off "
                       "the ends to reach the gap to file to of step 12?",
                       cg_figure_text(&measured).text);
        return;
    }
    cg_lesson_sums(report, CG_SUMS(&off));
}

static void ask_boost(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet, bool answer)
{
    bool inch = sheet->inch;
    struct cg_figure more =
        cg_figure_of("more boost", inch ? 4.0 : 30.0, 0, inch ? "psi" : "kPa");
    struct cg_hand closes =
        cg_lesson_work(inch, "more closure", CG_LESSON_GROWTH, "x/",
                       CG_FIGURES(sheet->sum.per_boost.result, more,
                                  cg_figure_plain(inch ? 10 : 100)));
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&closes));
    else
        cg_report_step(report,
                       "You add %s of boost. By the last line of step 7, how "
                       "much more does the gap close?",
                       cg_figure_text(&more).text);
}

static void ask_stress(struct cg_report *report,
                       const struct cg_lesson_sheet *sheet, bool answer)
{
    struct cg_figure overlap = cg_lesson_figure(sheet->inch, "that overlap",
                                                CG_LESSON_GROWTH, 0.0508e-3);
    struct cg_hand stress = cg_lesson_work(
        sheet->inch, "stress", CG_LESSON_STRESS, "x/",
        CG_FIGURES(sheet->ends.stress.figure[0], overlap, sheet->arc.result));
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&stress));
    else
        cg_report_step(report,
                       "By mistake the gap is too small, and the ends would "
                       "overlap by %s. How hard is the ring squeezed?",
                       cg_figure_text(&overlap).text);
}

static void ask_cooler(struct cg_report *report,
                       const struct cg_lesson_sheet *sheet, bool answer)
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
    if (answer)
        cg_lesson_sums(report, CG_SUMS(&absolute, &air));
    else
        cg_report_step(report,
                       "The charge comes in %s hotter at the same pressure. "
                       "The air of step 1 shrinks by the ratio of the "
                       "absolute temperatures. How much goes in?",
                       cg_figure_text(&by).text);
}

static void ask_film(struct cg_report *report,
                     const struct cg_lesson_sheet *sheet, bool answer)
{
    const struct cg_lesson_ladder *ladder = &sheet->ladder;
    if (!answer) {
        cg_report_step(report, "The oil film is twice as thick, groove and "
                               "bore as before. How hot does the ring of step "
                               "3 run by hand?");
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
    cg_lesson_sums(report, CG_SUMS(&film, &total, &step, &ring));
}

/* Those of the first level, then those that the second adds. */
static const struct {
    const char *answer;
    question tell;
} questions[] = {
    {"Answer 1", ask_hotter}, {"Answer 2", ask_left},
    {"Answer 3", ask_metal},  {"Answer 4", ask_coolant},
    {"Answer 5", ask_bore},   {"Answer 6", ask_file},
    {"Answer 7", ask_boost},  {"Answer 8", ask_stress},
    {"Answer 9", ask_cooler}, {"Answer 10", ask_film},
};

enum { FIRST = 7, ALL = sizeof questions / sizeof questions[0] };

void cg_lesson_ask(struct cg_report *report,
                   const struct cg_lesson_sheet *sheet, bool second)
{
    for (int i = 0; i < (second ? ALL : FIRST); i++)
        questions[i].tell(report, sheet, false);
}

void cg_lesson_answer(struct cg_report *report,
                      const struct cg_lesson_sheet *sheet, bool second)
{
    for (int i = 0; i < (second ? ALL : FIRST); i++) {
        cg_report_part(report, questions[i].answer);
        questions[i].tell(report, sheet, true);
    }
}
