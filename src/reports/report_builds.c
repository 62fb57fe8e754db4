#include "report_builds.h"

#include <stdio.h>
#include <string.h>

#include "builds_table.h"
#include "setting_key.h"
#include "setting_text.h"

enum { VALUE = 320, KEY = 128 };

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

/* As a config writes it; a number that is not given as such. */
static void value_text(const struct cg_setting *setting,
                       const struct cg_case *c, bool inch, char text[VALUE])
{
    bool named = setting->kind == CG_NAME || setting->kind == CG_WORDS;
    double si = named ? 0.0 : cg_setting_get(setting, c);
    if (si != si) /* NaN */
        snprintf(text, VALUE, "not given");
    else
        cg_setting_value_text(setting, c, inch, text, VALUE);
}

static void tell_change(struct cg_report *report,
                        const struct cg_builds *builds, size_t i)
{
    const struct cg_setting *setting = builds->changes.setting[i];
    bool inch = cg_report_inch(report);
    char key[KEY], then[VALUE], now[VALUE];
    cg_key_write(setting, cg_setting_unit(setting, inch), true, key,
                 sizeof key);
    value_text(setting, &builds->then->updated.prior, inch, then);
    value_text(setting, &builds->now->updated.prior, inch, now);
    cg_report_words(report, key, key, "%s, was %s%s", now, then,
                    builds->changes.follows[i] ? " (by its default)" : "");
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
