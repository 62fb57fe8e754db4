/* What a reader of an answer that evidence moved must see, however brief it is. */
#include "report_find_parts.h"
#include "show.h"

/* The most valuable evidence there is: what is wrong is not known, the engine
 * says it all the same. */
static void note_too_low(struct cg_report *report,
                         const struct cg_updated_case *updated)
{
    const struct cg_learned *learned = &updated->learned;
    bool inch = cg_report_inch(report);
    if (!learned->too_low)
        return;
    const struct cg_evidence_entry *entry =
        &updated->evidence.entry[learned->lowest];
    bool own = entry->engine == 0;
    cg_report_note(
        report,
        "the ends touched at %s%s, where the model leaves %s: something that "
        "is not in it is at work in %s engine. Find out what.%s",
        cg_show_length_up(entry->cold_gap, inch).text,
        own ? "" : " in another engine",
        cg_show_length(learned->before[learned->lowest], inch).text,
        own ? "this" : "that",
        own ? " The gap needed is never less than what touched and the "
              "minimum hot gap."
            : "");
}

/* Which run without contact stands in the place of the shop rule. */
static void note_earned(struct cg_report *report,
                        const struct cg_updated_case *updated,
                        const struct cg_answer *answer)
{
    if (answer->file_to_top.from != CG_ADVICE_EVIDENCE)
        return;
    const struct cg_evidence_entry *entry =
        &updated->evidence.entry[answer->earned.entry];
    cg_report_note(report,
                   "less than the shop rule was earned by evidence %zu%s%s: "
                   "this engine ran a duty as hard without contact at %s.",
                   answer->earned.entry + 1,
                   entry->date[0] != '\0' ? " of " : "", entry->date,
                   cg_show_length_up(entry->cold_gap, cg_report_inch(report))
                       .text);
}

void cg_report_find_evidence_notes(struct cg_report *report,
                                   const struct cg_updated_case *updated,
                                   const struct cg_answer *answer,
                                   const struct cg_answer *without)
{
    double before = cg_answer_needed(without)->cold_gap;
    if (updated->learned.entries == 0)
        return;
    note_too_low(report, updated);
    note_earned(report, updated, answer);
    if (cg_answer_needed(answer)->cold_gap < before * (1.0 - 1e-9))
        cg_report_note(report,
                       "your evidence makes the gap needed smaller, from %s: "
                       "be sure of it.",
                       cg_show_length_up(before, cg_report_inch(report)).text);
    if (cg_evidence_others(&updated->evidence) > 0 &&
        !(updated->prior.uncertainty.engine > 0.0))
        cg_report_note(report, "with no scatter from engine to engine other "
                               "engines count as this one: give "
                               "uncertainty.engine_pct.");
}
