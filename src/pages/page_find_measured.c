#include <stdio.h>

#include "evidence_text.h"
#include "page_find.h"
#include "page_values.h"
#include "show.h"
#include "uncertain.h"

static void entry_row(struct cg_page *page,
                      const struct cg_updated_case *updated, size_t i,
                      bool inch)
{
    const struct cg_learned *learned = &updated->learned;
    const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
    bool ends = entry->what == CG_EVIDENCE_ENDS;
    char name[CG_EVIDENCE_TEXT], measured[CG_EVIDENCE_TEXT] = "hot gap left";
    cg_evidence_entry_text(entry, inch, name);
    if (!ends)
        cg_evidence_measured_text(entry, inch, measured);
    struct cg_text before = ends
                                ? cg_show_length(learned->before[i], inch)
                                : cg_show_temperature(learned->before[i], inch);
    struct cg_text after = ends ? cg_show_length(learned->after[i], inch)
                                : cg_show_temperature(learned->after[i], inch);
    const char *const cells[] = {name, measured, before.text, after.text};
    cg_page_row(page, cells, 4, NULL);
}

static void entries_table(struct cg_page *page,
                          const struct cg_updated_case *updated, bool inch)
{
    static const char *const heads[] = {"What", "Measured", "Model before",
                                        "Model after"};
    cg_page_table(page,
                  inch ? "What was measured, and the model there, inch"
                       : "What was measured, and the model there, metric",
                  heads, 4);
    for (size_t i = 0; i < updated->learned.entries; i++)
        entry_row(page, updated, i, inch);
    cg_page_table_end(page);
}

static void inputs_table(struct cg_page *page,
                         const struct cg_updated_case *updated)
{
    static const char *const heads[] = {"Input", "Before", "After"};
    size_t count, moved = 0;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        moved += cg_evidence_moved(updated, i);
    if (moved == 0) {
        cg_page_say(page, "What it taught: %s.", cg_evidence_little());
        return;
    }
    cg_page_table(page,
                  "What it taught, against the settings, +- one "
                  "standard deviation",
                  heads, 3);
    for (size_t i = 0; i < count; i++) {
        char before[CG_EVIDENCE_TEXT], after[CG_EVIDENCE_TEXT];
        if (!cg_evidence_moved(updated, i))
            continue;
        cg_evidence_input_text(updated, i, before, after);
        const char *const cells[] = {inputs[i].doc, before, after};
        cg_page_row(page, cells, 3, NULL);
    }
    cg_page_table_end(page);
}

void cg_page_evidence(struct cg_page *page,
                      const struct cg_updated_case *updated,
                      const struct cg_answer *answer,
                      const struct cg_answer *without)
{
    const struct cg_gap_sum *sum = &without->top;
    if (updated->learned.entries == 0)
        return;
    cg_page_section(page, "Evidence");
    cg_page_say(page, "What was measured on the engine as the config says it, "
                      "and what the model learned from it.");
    entries_table(page, updated, cg_page_inch(page));
    entries_table(page, updated, !cg_page_inch(page));
    inputs_table(page, updated);
    cg_page_say(page, "%s", cg_evidence_holds());
    if (answer->top.cold_gap < sum->cold_gap * (1.0 - 1e-9))
        cg_page_note(page, "What was found makes the gap smaller: be sure of "
                           "it.");
    cg_page_values(page, "The answer without it");
    cg_page_length(page, "Closure, nominal", sum->closure);
    cg_page_length(page, "Spread", sum->spread);
    cg_page_gap_up(page, "Cold gap, top ring", sum->cold_gap);
    cg_page_values_end(page);
}
