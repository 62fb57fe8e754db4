#include "report_finish.h"

#include <stdio.h>
#include <string.h>

#include "cautions.h"
#include "constants.h"
#include "show.h"

#define UM 1e6 /* from m */
#define UIN (1e6 / CG_INCH)
#define OIL 1e5 /* mm3/cm2 from m3/m2 */

static struct cg_text length_text(const struct cg_finish_story *story,
                                  size_t points)
{
    return cg_show_length((double)points * story->surface->level.spacing,
                          story->inch);
}

static void print_source(const struct cg_finish_story *story)
{
    const struct cg_profile *level = &story->surface->level;
    const struct cg_finish_case *finish = &story->c->bore.finish;
    printf("coldgap finish %s\n\n", story->config);
    if (story->profile != NULL)
        printf("Profile  %s%s\n", story->profile,
               story->note->smd ? " (ISO 5436-2 text)" : "");
    else if (strcmp(story->simulate, "coarse") == 0)
        printf("Profile  simulated for teaching, base stage of %d grit alone, "
               "seed %lu\n",
               finish->base_grit, story->seed);
    else
        printf("Profile  simulated for teaching, base stage of %d grit, "
               "plateau of %d, seed %lu\n",
               finish->base_grit, finish->plateau_grit, story->seed);
    printf("         %zu points, %.4g %s apart, %s", level->points,
           level->spacing * (story->inch ? UIN : UM),
           story->inch ? "uin" : "um",
           length_text(story, level->points).text);
    if (story->surface->evaluated < level->points)
        printf(", of which %s evaluated",
               length_text(story, story->surface->evaluated).text);
    printf("\n");
    if (story->note != NULL && story->note->guessed_um)
        printf("         Positions taken in um: as mm they would lie too far "
               "apart.\n");
    if (story->note != NULL && story->note->usual_spacing)
        printf("         No spacing given; only Rz's sections depend on it.\n");
}

static void print_filter(const struct cg_finish_story *story)
{
    const struct cg_surface *surface = story->surface;
    struct cg_text shown = cg_show_length(surface->cutoff, story->inch);
    double length = (double)surface->evaluated * surface->level.spacing;
    switch (surface->filter) {
    case CG_FILTER_STANDARD:
        printf("Filter   standard, cut-off %s: Ra, Rq, Rz by the Gaussian "
               "(ISO 16610-21),\n         the rest by the two-step one for "
               "deep valleys (ISO 13565-1)\n",
               shown.text);
        break;
    case CG_FILTER_GAUSSIAN:
        printf("Filter   Gaussian (ISO 16610-21), cut-off %s\n",
               shown.text);
        break;
    case CG_FILTER_ROBUST:
        printf("Filter   robust Gaussian regression (ISO 16610-31), cut-off "
               "%s\n",
               shown.text);
        break;
    default:
        printf("Filter   none: heights as they stand, about their mean\n");
        break;
    }
    if (surface->filter != CG_FILTER_NONE && length < 4.999 * surface->cutoff)
        printf("Note: fewer than five cut-offs are evaluated; figures "
               "scatter more.\n");
    printf("\n");
}

/* The asked unit first: um to three digits, microinches to one. */
static void height(const char *name, double metres, const char *words,
                   bool inch)
{
    if (inch)
        printf("  %-4s %8.1f %8.3f   %s\n", name, metres * UIN, metres * UM,
               words);
    else
        printf("  %-4s %8.3f %8.1f   %s\n", name, metres * UM, metres * UIN,
               words);
}

static void print_figures(const struct cg_surface *surface, bool inch)
{
    const struct cg_amplitude *a = &surface->amplitude;
    const struct cg_core *core = &surface->core;
    const struct cg_probability *p = &surface->probability;
    printf("       %8s %8s\n", inch ? "uin" : "um", inch ? "um" : "uin");
    height("Ra", a->ra, "mean deviation", inch);
    height("Rq", a->rq, "root of the mean square", inch);
    height("Rz", a->rz, "highest to lowest, mean over the sections", inch);
    height("Rpk", core->rpk, "peaks that run in", inch);
    height("Rk", core->rk, "core that bears", inch);
    height("Rvk", core->rvk, "valleys that hold oil", inch);
    height("A1", core->a1, "area of the peaks, per length", inch);
    height("A2", core->a2, "area of the valleys, per length", inch);
    height("Rpq", p->rpq, "plateau's slope on probability paper", inch);
    height("Rvq", p->rvq, "valleys' slope", inch);
    printf("  Mr1 %.1f %%, Mr2 %.1f %% of the area (core from, to)",
           core->mr1 * 100.0, core->mr2 * 100.0);
    if (p->bends)
        printf(", Rmq %.1f %%\n\n", p->rmq * 100.0);
    else
        printf("; one line on\n  probability paper: no plateau stage shows, "
               "and no Rmq\n\n");
}

static void print_patches(const struct cg_patch *patch, bool inch)
{
    static const char *const name[CG_STAGES] = {"coarse", "plateau"};
    double unit = inch ? UIN : UM;
    int digits = inch ? 1 : 3;
    if (patch == NULL)
        return;
    printf("Simulated patches, %s square, invented for teaching (%s)\n"
           "             Ra      Rk     Rpk     Rvk     Mr2   Vo mm3/cm2\n",
           inch ? "0.0394 in" : "1 mm", inch ? "uin" : "um");
    for (int i = 0; i < CG_STAGES; i++) {
        const struct cg_surface *surface = patch[i].surface;
        const struct cg_core *core = &surface->core;
        printf("  %-8s %6.*f  %6.*f  %6.*f  %6.*f  %5.1f%%   %.4f\n", name[i],
               digits, surface->amplitude.ra * unit, digits, core->rk * unit,
               digits, core->rpk * unit, digits, core->rvk * unit,
               core->mr2 * 100.0, core->oil * OIL);
    }
    printf("\n");
}

/* A volume per area in both ways of saying it. */
static struct cg_text oil_text(double metres, bool inch)
{
    struct cg_text out;
    if (inch)
        snprintf(out.text, sizeof out.text, "%.1f uin deep (%.4f mm3/cm2)",
                 metres * UIN, metres * OIL);
    else
        snprintf(out.text, sizeof out.text, "%.4f mm3/cm2 (%.1f uin deep)",
                 metres * OIL, metres * UIN);
    return out;
}

static void print_oil(const struct cg_finish_story *story, bool inch)
{
    const struct cg_case *c = story->c;
    const struct cg_finish_verdict *v = story->verdict;
    printf("Oil against fuel, at boost %s and %.0f rpm (fuel %s)\n",
           cg_show_boost(c->charge.boost, inch).text, c->engine.speed * 60.0,
           cg_show_flow(v->fuel_flow, inch).text);
    printf("  fuel, a cycle    %s of swept bore\n",
           oil_text(v->fuel_per_area, inch).text);
    printf("  oil held, Vo     %s\n", oil_text(v->oil_held, inch).text);
    printf("  oil needed       %s\n", oil_text(v->oil_needed, inch).text);
    printf("  Reference: unboosted road engines hold Vo %.3f mm3/cm2 (Rvk "
           "%.2g um, Mr2 80 %%)\n  against %.2f mm3/cm2 of fuel a cycle; more "
           "fuel thins and washes more oil, so the\n  oil asked for rises "
           "with fuel to the power %.2g. Common practice, no source:\n  a "
           "scale, not a law.\n\n",
           c->bore.finish.reference_oil * OIL,
           c->bore.finish.reference_oil * 2.0 / 0.2 * UM,
           c->bore.finish.reference_fuel * OIL, c->bore.finish.fuel_exponent);
}

static const char *reason_text(enum cg_finish_reason reason)
{
    switch (reason) {
    case CG_FINISH_SHALLOW:
        return "valleys too shallow";
    case CG_FINISH_WORN:
        return "deep valleys, but too few are left";
    case CG_FINISH_DEEP:
        return "far more oil than needed: it is burned";
    case CG_FINISH_PEAKS:
        return "Rpk above 0.3 um wears the ring's face";
    case CG_FINISH_ROUGH:
        return "Rk above 1 um is no plateau yet";
    case CG_FINISH_BARE:
        return "Mr2 below 67 %: too little area bears";
    }
    return "";
}

/* "Base stage", and what to change about it and why. */
static const char *advice_parts(const struct cg_case *c,
                                const struct cg_finish_advice *advice,
                                char *change, size_t size)
{
    static const struct {
        const char *stage, *change;
        bool base;
    } text[] = {
        [CG_BASE_COARSER] = {"Base stage", "coarser stones", true},
        [CG_BASE_FINER] = {"Base stage", "finer stones", true},
        [CG_PLATEAU_SHORTER] = {"Plateau stage", "fewer strokes", false},
        [CG_PLATEAU_LONGER] = {"Plateau stage", "more strokes", false},
        [CG_PLATEAU_FINER] = {"Plateau stage", "finer stones or brush", false},
    };
    int now = text[advice->change].base ? c->bore.finish.base_grit
                                        : c->bore.finish.plateau_grit;
    char grit[48] = "";
    if (advice->grit > 0)
        snprintf(grit, sizeof grit, ", %d grit for %d", advice->grit, now);
    snprintf(change, size, "%s%s: %s", text[advice->change].change, grit,
             reason_text(advice->reason));
    return text[advice->change].stage;
}

void cg_finish_advice_text(const struct cg_case *c,
                           const struct cg_finish_advice *advice, char *text,
                           size_t size)
{
    char change[160];
    const char *stage = advice_parts(c, advice, change, sizeof change);
    snprintf(text, size, "%s: %s.", stage, change);
}

static void print_advice(const struct cg_case *c,
                         const struct cg_finish_advice *advice)
{
    char change[160];
    const char *stage = advice_parts(c, advice, change, sizeof change);
    printf("  %-14s %s\n", stage, change);
}

static void print_verdict(const struct cg_finish_story *story)
{
    const struct cg_finish_verdict *v = story->verdict;
    printf("Verdict  %s%s for this boost: Vo %.4f mm3/cm2, needed %.4f\n",
           story->simulate != NULL ? "(simulated) " : "",
           v->holds ? "oil enough" : "too little oil", v->oil_held * OIL,
           v->oil_needed * OIL);
    if (v->advices == 0)
        printf("  No stage of the honing needs a change.\n");
    for (int i = 0; i < v->advices; i++)
        print_advice(story->c, &v->advice[i]);
}

const char *cg_finish_left_out(void)
{
    return "Left out: scatter over the bore (take the mean of three traces or "
           "more), stylus tip\nand short-wave filter, how much fuel reaches "
           "the wall, oil flow and consumption, torn\nor folded metal. Grits "
           "count from bore.finish.base_grit and plateau_grit.";
}

void cg_report_finish(const struct cg_finish_story *story)
{
    bool inch = story->inch, quiet = story->quiet;
    if (!quiet) {
        print_source(story);
        print_filter(story);
        print_figures(story->surface, inch);
        print_patches(story->patch, inch);
        print_oil(story, inch);
    } else if (story->simulate != NULL)
        printf("Profile  simulated for teaching (%s), seed %lu: of no bore\n",
               story->simulate, story->seed);
    print_verdict(story);
    if (!quiet)
        printf("\n%s\n", cg_finish_left_out());
    printf("\n");
    cg_cautions_print(stdout);
}
