#include "report_evidence.h"

#include <stdio.h>

#include "evidence_text.h"
#include "show.h"
#include "uncertain.h"

static void print_entries(const struct cg_updated_case *updated, bool inch)
{
    const struct cg_learned *learned = &updated->learned;
    printf("  %-26s %-16s %-12s %s\n", "", "measured", "model before",
           "after");
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
        char left[CG_EVIDENCE_TEXT], measured[CG_EVIDENCE_TEXT];
        cg_evidence_entry_text(entry, inch, left);
        if (entry->what == CG_EVIDENCE_ENDS) {
            printf("  %-26s %-16s %-12s %s\n", left, "(hot gap left)",
                   cg_show_length(learned->before[i], inch).text,
                   cg_show_length(learned->after[i], inch).text);
            continue;
        }
        cg_evidence_measured_text(entry, inch, measured);
        printf("  %-26s %-16s %-12s %s\n", left, measured,
               cg_show_temperature(learned->before[i], inch).text,
               cg_show_temperature(learned->after[i], inch).text);
    }
}

static void print_inputs(const struct cg_updated_case *updated)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    bool none = true;
    printf("  What it taught, against the settings, +- one standard "
           "deviation\n");
    for (size_t i = 0; i < count; i++) {
        char before[CG_EVIDENCE_TEXT], after[CG_EVIDENCE_TEXT];
        if (!cg_evidence_moved(updated, i))
            continue;
        none = false;
        cg_evidence_input_text(updated, i, before, after);
        printf("    %-24s %-18s to %s\n", inputs[i].doc, before, after);
    }
    if (none)
        printf("    %s\n", cg_evidence_little());
}

void cg_report_evidence(const struct cg_updated_case *updated,
                        const struct cg_answer *answer,
                        const struct cg_answer *without, bool inch)
{
    const struct cg_gap_sum *sum = &without->top;
    if (updated->learned.entries == 0)
        return;
    printf("Evidence: what was measured on the engine as the config says it\n");
    print_entries(updated, inch);
    print_inputs(updated);
    printf("  Without it: closure %s, spread %s,\n"
           "    cold gap, top ring %s\n",
           cg_show_gap(sum->closure, inch).text,
           cg_show_gap(sum->spread, inch).text,
           cg_show_gap_up(sum->cold_gap, inch).text);
    if (answer->top.cold_gap < sum->cold_gap * (1.0 - 1e-9))
        printf("  What was found makes the gap smaller: be sure of it.\n");
    printf("  %s\n\n", cg_evidence_holds());
}
