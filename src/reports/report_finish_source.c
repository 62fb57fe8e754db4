#include <stdio.h>

#include "report_finish.h"
#include "show.h"

static const char *filter_words(enum cg_filter filter)
{
    switch (filter) {
    case CG_FILTER_STANDARD:
        return "standard: Ra, Rq, Rz by the Gaussian (ISO 16610-21), the rest "
               "by the two-step one for deep valleys (ISO 13565-1)";
    case CG_FILTER_GAUSSIAN:
        return "Gaussian (ISO 16610-21)";
    case CG_FILTER_ROBUST:
        return "robust Gaussian regression (ISO 16610-31)";
    default:
        return "none: heights as they stand, about their mean";
    }
}

static void tell_trace(struct cg_report *report,
                       const struct cg_finish_story *story)
{
    const struct cg_surface *surface = story->surface;
    const struct cg_profile *level = &surface->level;
    cg_report_words(
        report, "profile", "Profile", "%s%s",
        story->profile != NULL ? story->profile : "simulated",
        story->note != NULL && story->note->smd ? " (ISO 5436-2 text)" : "");
    cg_report_row(report, "trace_points", "Points",
                  cg_quantity(CG_SHOW_COUNT, (double)level->points));
    cg_report_row(report, "spacing", "Spacing",
                  cg_quantity(CG_SHOW_ROUGHNESS, level->spacing));
    cg_report_row(report, "trace_length", "Length",
                  cg_quantity(CG_SHOW_SMALL_LENGTH,
                              (double)level->points * level->spacing));
    cg_report_row(report, "length", "Evaluated",
                  cg_quantity(CG_SHOW_SMALL_LENGTH,
                              (double)surface->evaluated * level->spacing));
    cg_report_words(report, "filter", "Filter", "%s",
                    filter_words(surface->filter));
    cg_report_row(report, "cutoff", "Cut-off",
                  cg_quantity(CG_SHOW_SMALL_LENGTH, surface->cutoff));
}

static void tell_patches(struct cg_report *report, const struct cg_patch *patch)
{
    static const struct cg_report_column columns[] = {
        {"surface", "Surface", CG_SHOW_WORDS},
        {"Ra", "Ra", CG_SHOW_ROUGHNESS},
        {"Rk", "Rk", CG_SHOW_ROUGHNESS},
        {"Rpk", "Rpk", CG_SHOW_ROUGHNESS},
        {"Rvk", "Rvk", CG_SHOW_ROUGHNESS},
        {"Mr2", "Mr2", CG_SHOW_SHARE},
        {"Vo", "Vo", CG_SHOW_OIL}};
    static const char *const name[CG_STAGES] = {"coarse", "plateau"};
    char caption[128];
    snprintf(caption, sizeof caption,
             "Simulated patches, %s square, invented for teaching",
             cg_show_length((double)CG_PATCH_SIDE * CG_PATCH_STEP,
                            cg_report_inch(report))
                 .text);
    cg_report_table(report, "patches", caption, columns, 7);
    for (int i = 0; i < CG_STAGES; i++) {
        const struct cg_core *core = &patch[i].surface->core;
        cg_report_cell_words(report, "%s", name[i]);
        cg_report_cell(report, patch[i].surface->amplitude.ra);
        cg_report_cell(report, core->rk);
        cg_report_cell(report, core->rpk);
        cg_report_cell(report, core->rvk);
        cg_report_cell(report, core->mr2);
        cg_report_cell(report, core->oil);
    }
    cg_report_figure(report, "finish_patch", "Honed surfaces, simulated",
                     "Invented for teaching: two patches of a bore in grey, "
                     "crossing grooves of the "
                     "base stage, and the same with its tops cut to a "
                     "plateau.");
}

void cg_report_finish_source(struct cg_report *report,
                             const struct cg_finish_story *story)
{
    cg_report_section(report, "Where it comes from");
    tell_trace(report, story);
    if (story->patch != NULL)
        tell_patches(report, story->patch);
}
