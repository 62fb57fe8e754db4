#include "page_finish.h"

#include <stdio.h>

#include "constants.h"
#include "page_values.h"
#include "show.h"

#define UM 1e6 /* from m */
#define UIN (1e6 / CG_INCH)
#define OIL 1e5 /* mm3/cm2 from m3/m2 */

static void height(struct cg_page *page, const char *name, double metres)
{
    char metric[32], inch[32];
    snprintf(metric, sizeof metric, "%.3f \302\265m", metres * UM);
    snprintf(inch, sizeof inch, "%.1f \302\265in", metres * UIN);
    cg_page_both(page, name, metric, inch);
}

/* A volume per area, and how deep it would stand. */
static void oil(struct cg_page *page, const char *name, double metres)
{
    char metric[48], inch[48];
    snprintf(metric, sizeof metric, "%.4f mm\302\263/cm\302\262",
             metres * OIL);
    snprintf(inch, sizeof inch, "%.1f \302\265in", metres * UIN);
    cg_page_both(page, name, metric, inch);
}

static void verdict_part(struct cg_page *page,
                         const struct cg_finish_story *story)
{
    const struct cg_finish_verdict *v = story->verdict;
    cg_page_section(page, "Answer");
    cg_page_verdict(page, v->holds,
                    "%s for this boost: Vo %.4f mm\302\263/cm\302\262, needed "
                    "%.4f",
                    v->holds ? "Oil enough" : "TOO LITTLE oil",
                    v->oil_held * OIL, v->oil_needed * OIL);
    if (v->advices == 0)
        cg_page_say(page, "No stage of the honing needs a change.");
    for (int i = 0; i < v->advices; i++) {
        char text[160];
        cg_finish_advice_text(story->c, &v->advice[i], text, sizeof text);
        cg_page_say(page, "%s", text);
    }
    cg_page_values(page, "Oil against fuel: volume to an area, and how deep it "
                         "would stand");
    oil(page, "Fuel, a cycle, of swept bore", v->fuel_per_area);
    oil(page, "Oil held, Vo", v->oil_held);
    oil(page, "Oil needed", v->oil_needed);
    cg_page_values_end(page);
    cg_page_say(page, "The oil needed is a scale from trade practice, not a "
                      "law (common practice, no source).");
}

static void figures_part(struct cg_page *page,
                         const struct cg_surface *surface)
{
    const struct cg_core *core = &surface->core;
    const struct cg_probability *p = &surface->probability;
    cg_page_section(page, "Finish");
    cg_page_values(page, "What the profile measures");
    height(page, "Ra, mean deviation", surface->amplitude.ra);
    height(page, "Rq, root of the mean square", surface->amplitude.rq);
    height(page, "Rz, highest to lowest", surface->amplitude.rz);
    height(page, "Rpk, peaks that run in", core->rpk);
    height(page, "Rk, core that bears", core->rk);
    height(page, "Rvk, valleys that hold oil", core->rvk);
    height(page, "A1, area of the peaks, per length", core->a1);
    height(page, "A2, area of the valleys, per length", core->a2);
    height(page, "Rpq, plateau's slope on probability paper", p->rpq);
    height(page, "Rvq, valleys' slope", p->rvq);
    cg_page_plain(page, "Mr1 and Mr2, core from and to", "%.1f and %.1f %%",
                  core->mr1 * 100.0, core->mr2 * 100.0);
    cg_page_values_end(page);
    cg_page_figure(page, "finish_ratio", "Material ratio curve",
                   "Height against the share of the length above it, falling: "
                   "peaks of %.3f, a core of %.3f and valleys of %.3f "
                   "\302\265m, the core from %.1f to %.1f %%.",
                   core->rpk * UM, core->rk * UM, core->rvk * UM,
                   core->mr1 * 100.0, core->mr2 * 100.0);
    cg_page_figure(page, "finish_probability", "The same on probability paper",
                   p->bends ? "The curve follows two straight lines, plateau "
                              "and valleys."
                            : "The curve follows one straight line: no "
                              "plateau stage shows.");
}

static void source_part(struct cg_page *page,
                        const struct cg_finish_story *story)
{
    const struct cg_surface *surface = story->surface;
    cg_page_section(page, "Where it comes from");
    if (story->profile != NULL)
        cg_page_say(page, "Profile: %s.", story->profile);
    else
        cg_page_say(page, "Profile: simulated for teaching (%s), seed %lu.",
                    story->simulate, story->seed);
    cg_page_say(page,
                "%zu points, %.4g \302\265m apart, %zu of them evaluated; "
                "filter %s, cut-off %g mm.",
                surface->level.points, surface->level.spacing * UM,
                surface->evaluated, cg_filter_name(surface->filter),
                surface->cutoff * 1e3);
    if (story->patch != NULL)
        cg_page_figure(page, "finish_patch",
                       "Simulated honed surfaces, invented for teaching",
                       "Two patches of a bore, 1 mm square, in grey: crossing "
                       "grooves of the base stage, and the same with its tops "
                       "cut to a plateau.");
}

void cg_page_finish(struct cg_page *page, const struct cg_finish_story *story)
{
    verdict_part(page, story);
    figures_part(page, story->surface);
    source_part(page, story);
    cg_page_section(page, "What this leaves out");
    cg_page_say(page, "%s", cg_finish_left_out());
}
