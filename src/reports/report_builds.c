#include "report_builds.h"

#include <math.h>
#include <string.h>

#include "builds_table.h"
#include "setting_key.h"
#include "setting_text.h"

enum { KEY = 128 };

static void put(struct cg_report *report, const struct cg_build_figure *figure,
                const struct cg_build *build)
{
    if (figure->word != NULL)
        cg_report_cell_words(report, "%s", figure->word(build));
    else
        cg_report_cell_quantity(report,
                                cg_quantity(figure->kind, figure->get(build)));
}

static void tell_figures(struct cg_report *report,
                         const struct cg_builds *builds)
{
    static const struct cg_report_column columns[] = {
        {"figure", "Figure", CG_SHOW_WORDS},
        {"then", "then", CG_SHOW_WORDS},
        {"now", "now", CG_SHOW_WORDS},
        {"moves", "Change", CG_SHOW_WORDS}};
    size_t count;
    const struct cg_build_figure *figure = cg_build_figures(&count);
    cg_report_table(report, "builds",
                    "Then and now; temperatures are the highest of the duty "
                    "asked for.",
                    columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < count; i++) {
        cg_report_cell_words(report, "%s", figure[i].label);
        put(report, &figure[i], builds->then);
        put(report, &figure[i], builds->now);
        cg_report_cell_words(
            report, "%s",
            cg_build_figure_moves(&figure[i], builds) ? "changed" : "-");
    }
}

/* A gap that is no more given is still read: it is the old build's. */
static bool is_old_gap(const struct cg_builds *builds, size_t i)
{
    const struct cg_setting *setting = builds->changes.setting[i];
    bool gap = strcmp(setting->path, "rings.top.cold_gap") == 0 ||
               strcmp(setting->path, "rings.second.cold_gap") == 0;
    return gap && isnan(cg_setting_get(setting, &builds->now->updated.prior));
}

static void tell_change(struct cg_report *report,
                        const struct cg_builds *builds, size_t i)
{
    const struct cg_setting *setting = builds->changes.setting[i];
    bool inch = cg_report_inch(report);
    char key[KEY];
    cg_key_write(setting, cg_setting_unit(setting, inch), true, key,
                 sizeof key);
    cg_report_words(report, key, key, "%s, was %s%s",
                    cg_build_now(builds, i, inch).text,
                    cg_build_then(builds, i, inch).text,
                    builds->changes.follows[i] ? " (by its default)"
                    : is_old_gap(builds, i) ? " (the old gap is not to file to)"
                                            : "");
}

void cg_report_builds_changes(struct cg_report *report,
                              const struct cg_builds *builds)
{
    const struct cg_build_changes *changes = &builds->changes;
    cg_report_section(report, "What is changed");
    if (cg_build_same(changes))
        cg_report_say(report, "Nothing: every setting, metal, face and duty is "
                              "the same in both.");
    for (size_t i = 0; i < changes->count; i++)
        tell_change(report, builds, i);
    for (int i = 0; i < CG_MATTERS; i++)
        if (changes->matter[i])
            cg_report_say(report,
                          "The %s has the same name in both, but other values.",
                          cg_build_matter_word((enum cg_build_matter)i));
}

void cg_report_builds(struct cg_report *report, const struct cg_builds *builds)
{
    cg_report_section(report, "The build before, and this one");
    cg_report_words(report, "then", "Then", "%s", builds->then->name);
    cg_report_words(report, "now", "Now", "%s", builds->now->name);
    tell_figures(report, builds);
    cg_report_builds_proof(report, builds);
}
