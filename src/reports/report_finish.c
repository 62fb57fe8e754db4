#include "report_finish.h"

#include <stdio.h>
#include <string.h>

#include "finish_tables.h"
#include "show.h"

static const char *reason_of(enum cg_finish_reason reason)
{
    switch (reason) {
    case CG_FINISH_SHALLOW:
        return "the valleys are too shallow";
    case CG_FINISH_WORN:
        return "the valleys are deep, but too few are left";
    case CG_FINISH_DEEP:
        return "the bore holds far more oil than needed, and burns it";
    case CG_FINISH_PEAKS:
        return "Rpk wears the ring's face above ";
    case CG_FINISH_ROUGH:
        return "Rk is no plateau yet above ";
    case CG_FINISH_STRAIGHT:
        return "the heights follow one law, as a base stage leaves them, and "
               "a plateau makes two";
    case CG_FINISH_BARE:
        return "too little area bears: Mr2 is below ";
    }
    return "";
}

/* The limit that a reason ends with, if it does. */
static struct cg_text limit_of(enum cg_finish_reason reason, bool inch)
{
    struct cg_text none = {""};
    if (reason == CG_FINISH_PEAKS)
        return cg_quantity_one(cg_quantity(CG_SHOW_FILM, CG_FINISH_MOST_RPK),
                               inch);
    if (reason == CG_FINISH_ROUGH)
        return cg_quantity_one(cg_quantity(CG_SHOW_FILM, CG_FINISH_MOST_RK),
                               inch);
    if (reason == CG_FINISH_BARE)
        return cg_quantity_one(
            cg_quantity(CG_SHOW_SMALL_SHARE, CG_FINISH_LEAST_MR2), inch);
    return none;
}

static void tell_advice(struct cg_report *report, const struct cg_case *c,
                        const struct cg_finish_advice *advice)
{
    static const struct {
        const char *text;
        bool base;
    } change[] = {
        [CG_BASE_COARSER] = {"Base stage: coarser stones", true},
        [CG_BASE_FINER] = {"Base stage: finer stones", true},
        [CG_PLATEAU_SHORTER] = {"Plateau stage: fewer strokes", false},
        [CG_PLATEAU_LONGER] = {"Plateau stage: more strokes", false},
        [CG_PLATEAU_FINER] = {"Plateau stage: finer stones or brush", false},
    };
    int now = change[advice->change].base ? c->bore.finish.base_grit
                                          : c->bore.finish.plateau_grit;
    char grit[48] = "";
    if (advice->grit > 0)
        snprintf(grit, sizeof grit, ", %d grit for %d", advice->grit, now);
    cg_report_step(report, "%s%s. Why: %s%s.", change[advice->change].text,
                   grit, reason_of(advice->reason),
                   limit_of(advice->reason, cg_report_inch(report)).text);
}

/* What the reader must know of the trace before he trusts its figures. */
static void tell_notes(struct cg_report *report,
                       const struct cg_finish_story *story)
{
    const struct cg_surface *surface = story->surface;
    const struct cg_finish_case *finish = &story->c->bore.finish;
    double length = (double)surface->evaluated * surface->level.spacing;
    char plateau[48] = "alone";
    if (story->simulate != NULL && strcmp(story->simulate, "coarse") != 0)
        snprintf(plateau, sizeof plateau, "and a plateau of %d",
                 finish->plateau_grit);
    if (story->simulate != NULL)
        cg_report_note(report,
                       "simulated for teaching, of no bore: a base stage of "
                       "%d grit %s, seed %lu.",
                       finish->base_grit, plateau, story->seed);
    if (story->note != NULL && story->note->guessed_um)
        cg_report_note(report, "positions taken in um: as mm they would lie "
                               "too far apart.");
    if (story->note != NULL && story->note->usual_spacing)
        cg_report_note(report, "no spacing was given; only Rz's sections "
                               "depend on it.");
    if (surface->filter == CG_FILTER_NONE)
        cg_report_note(report, "with no filter waves are left in and hide a "
                               "plateau: judge by --filter standard.");
    if (surface->filter != CG_FILTER_NONE && length < 4.999 * surface->cutoff)
        cg_report_note(report, "fewer than five cut-offs are evaluated, so "
                               "the figures scatter more.");
}

static void tell_first(struct cg_report *report,
                       const struct cg_finish_story *story)
{
    const struct cg_finish_verdict *v = story->verdict;
    enum cg_finish_reason lacks =
        v->bends ? CG_FINISH_ROUGH : CG_FINISH_STRAIGHT;
    bool inch = cg_report_inch(report);
    cg_report_verdict(report, v->holds, "%s oil for this boost.",
                      v->holds ? "Enough" : "TOO LITTLE");
    if (!v->plateau)
        cg_report_verdict(report, false,
                          "NO PLATEAU, so do not run this bore: %s%s.",
                          reason_of(lacks), limit_of(lacks, inch).text);
    if (v->advices == 0)
        cg_report_say(report, "No stage of the honing needs a change.");
    for (int i = 0; i < v->advices; i++)
        tell_advice(report, story->c, &v->advice[i]);
    cg_report_row(report, "Vo", "Oil held, Vo",
                  cg_quantity(CG_SHOW_OIL, v->oil_held));
    cg_report_row(report, "Vo_needed", "Oil needed",
                  cg_quantity(CG_SHOW_OIL, v->oil_needed));
    cg_report_remark(report, "a scale, not a law (common practice, no "
                             "source)");
    tell_notes(report, story);
}

static void tell_fuel(struct cg_report *report,
                      const struct cg_finish_story *story)
{
    const struct cg_case *c = story->c;
    const struct cg_finish_case *finish = &c->bore.finish;
    bool inch = cg_report_inch(report);
    double oil = finish->reference_oil, rvk = 2.0 * oil / 0.2;
    cg_report_section(report, "Oil against fuel");
    cg_report_row(report, "boost", "Boost",
                  cg_quantity(CG_SHOW_BOOST, c->charge.boost));
    cg_report_row(report, "speed", "Speed",
                  cg_quantity(CG_SHOW_SPEED, c->engine.speed));
    cg_report_row(report, "fuel_flow", "Fuel",
                  cg_quantity(CG_SHOW_FLOW, story->verdict->fuel_flow));
    cg_report_row(report, "fuel_per_area", "Fuel, a cycle, of swept bore",
                  cg_quantity(CG_SHOW_OIL, story->verdict->fuel_per_area));
    cg_report_say(
        report,
        "Reference: unboosted road engines hold a Vo of %s (Rvk %s, Mr2 80 %%) "
        "against fuel of %s a cycle. More fuel thins and washes more oil, so "
        "the oil needed rises with fuel to the power %.2g.",
        cg_quantity_one(cg_quantity(CG_SHOW_OIL, oil), inch).text,
        cg_quantity_one(cg_quantity(CG_SHOW_FILM, rvk), inch).text,
        cg_quantity_one(cg_quantity(CG_SHOW_OIL, finish->reference_fuel), inch)
            .text,
        finish->fuel_exponent);
}

static void tell_figures(struct cg_report *report,
                         const struct cg_surface *surface)
{
    const struct cg_amplitude *a = &surface->amplitude;
    const struct cg_core *core = &surface->core;
    const struct cg_probability *p = &surface->probability;
    const struct {
        const char *key, *label;
        double value;
        const char *remark;
    } row[] = {
        {"Ra", "Ra, mean deviation", a->ra, NULL},
        {"Rq", "Rq, root of the mean square", a->rq, NULL},
        {"Rz", "Rz, highest to lowest", a->rz, "mean over the sections"},
        {"Rpk", "Rpk, peaks that run in", core->rpk, NULL},
        {"Rk", "Rk, core that bears", core->rk, NULL},
        {"Rvk", "Rvk, valleys that hold oil", core->rvk, NULL},
        {"A1", "A1, area of the peaks", core->a1, "per length"},
        {"A2", "A2, area of the valleys", core->a2, "per length"},
        {"Rpq", "Rpq, slope of the plateau", p->rpq, "on probability paper"},
        {"Rvq", "Rvq, slope of the valleys", p->rvq, "on probability paper"},
    };
    cg_report_section(report, "The finish");
    for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
        cg_report_row(report, row[i].key, row[i].label,
                      cg_quantity(CG_SHOW_ROUGHNESS, row[i].value));
        if (row[i].remark != NULL)
            cg_report_remark(report, "%s", row[i].remark);
    }
    cg_report_row(report, "Mr1", "Mr1, where the core begins",
                  cg_quantity(CG_SHOW_SHARE, core->mr1));
    cg_report_row(report, "Mr2", "Mr2, where the core ends",
                  cg_quantity(CG_SHOW_SHARE, core->mr2));
    if (p->bends)
        cg_report_row(report, "Rmq", "Rmq, plateau to valleys",
                      cg_quantity(CG_SHOW_SHARE, p->rmq));
    else
        cg_report_words(report, "Rmq", "Rmq, plateau to valleys",
                        "none: one line on probability paper, so no plateau "
                        "stage shows");
}

static void draw_figures(struct cg_report *report, bool bends)
{
    cg_report_figure(report, "finish_ratio", "Material ratio curve",
                     "Height against the share of the length above it, "
                     "falling from the peaks over the core to the valleys.");
    cg_report_figure(report, "finish_probability",
                     "The same on probability paper",
                     bends ? "The curve follows two straight lines, plateau "
                             "and valleys."
                           : "The curve follows one straight line.");
}

void cg_report_finish(struct cg_report *report,
                      const struct cg_finish_story *story)
{
    struct cg_key_values keys = cg_finish_keys(story->surface, story->verdict);
    tell_first(report, story);
    cg_report_first_part_ends(report);
    tell_fuel(report, story);
    tell_figures(report, story->surface);
    draw_figures(report, story->surface->probability.bends);
    cg_report_finish_source(report, story);
    cg_report_section(report, "What this leaves out");
    cg_report_say(report,
                  "Scatter over the bore (take the mean of three traces or "
                  "more), stylus tip and short-wave filter, how much fuel "
                  "reaches the wall, oil flow and consumption, torn or folded "
                  "metal. Grits count from bore.finish.base_grit and "
                  "plateau_grit.");
    cg_report_keys(report, &keys);
}
