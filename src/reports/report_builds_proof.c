/* What was proven by the build before, and what of it still holds. */
#include <math.h>
#include <stdio.h>

#include "report_builds.h"
#include "say_common.h"
#include "show.h"

enum { FOUND = 200 };

/* "ends apart at 0.280 mm, drag_pass, 160 kPa (2026-03-14)" */
static void found_text(const struct cg_updated_case *then, size_t i, bool inch,
                       char text[FOUND])
{
    const struct cg_evidence_entry *entry = &then->evidence.entry[i];
    const struct cg_case *run = &then->evidence.run[entry->run];
    char what[64];
    if (entry->what == CG_EVIDENCE_ENDS)
        snprintf(what, sizeof what, "ends %s at %s",
                 entry->touched ? "touched" : "apart",
                 cg_show_length_up(entry->cold_gap, inch).text);
    else if (entry->what == CG_EVIDENCE_COOLANT)
        snprintf(what, sizeof what, "coolant's share %s",
                 cg_quantity_one(cg_quantity(CG_SHOW_SHARE, entry->share), inch)
                     .text);
    else
        snprintf(what, sizeof what, "%s %s", cg_evidence_name(entry->what),
                 cg_show_temperature(entry->temperature, inch).text);
    snprintf(text, FOUND, "%s, in %s at %s%s%s%s%s", what, run->duty.name,
             cg_show_boost(run->charge.boost, inch).text,
             entry->date[0] != '\0' ? ", " : "", entry->date,
             entry->engine > 0 ? ", another engine" : "",
             entry->from[0] != '\0' ? ", notebook" : "");
}

/* "it closed 0.221 mm there, 0.252 mm in the hardest duty now" */
static struct cg_sentence closures(double run, double closure, bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "the gap closed by %s there, and closes by %s in the hardest duty "
             "now",
             cg_show_gap(run, inch).text, cg_show_gap(closure, inch).text);
    return out;
}

static void tell_entry(struct cg_report *report, const struct cg_builds *builds,
                       size_t i)
{
    const struct cg_updated_case *then = &builds->then->updated;
    const struct cg_evidence_entry *entry = &then->evidence.entry[i];
    double run = then->learned.closure[i];
    bool inch = cg_report_inch(report);
    char found[FOUND];
    found_text(then, i, inch, found);
    switch (cg_build_proof(entry, run, builds->closure, &builds->changes)) {
    case CG_PROOF_HOLDS:
        cg_report_step(report, "HOLDS: %s. That run was at least as hard: %s.",
                       found, closures(run, builds->closure, inch).text);
        break;
    case CG_PROOF_EASIER:
        cg_report_step(report, "NO PROOF NOW: %s. That run was easier: %s.",
                       found, closures(run, builds->closure, inch).text);
        break;
    case CG_PROOF_PARTS:
        cg_report_step(report,
                       "NO PROOF NOW: %s. Other parts: size, piston, rings or "
                       "bore are changed.",
                       found);
        break;
    case CG_PROOF_MODEL:
        cg_report_step(report,
                       "NO PROOF NOW: %s. The model itself is set otherwise, "
                       "so that the two closures do not compare.",
                       found);
        break;
    case CG_PROOF_OTHER:
        cg_report_step(report,
                       "NO PROOF: %s. Found in another engine; it informs the "
                       "model, and earns nothing.",
                       found);
        break;
    case CG_PROOF_WARNS:
        cg_report_step(report,
                       "WARNS STILL: %s. What touched may touch again: stay "
                       "above it.",
                       found);
        break;
    case CG_PROOF_MEASURED:
        cg_report_step(report,
                       "NO PROOF OF A GAP: %s. It moves the model, which a "
                       "config with this evidence takes over.",
                       found);
        break;
    }
}

static size_t holding(const struct cg_builds *builds)
{
    const struct cg_updated_case *then = &builds->then->updated;
    size_t count = 0;
    for (size_t i = 0; i < then->learned.entries; i++)
        count +=
            cg_build_proof(&then->evidence.entry[i], then->learned.closure[i],
                           builds->closure, &builds->changes) == CG_PROOF_HOLDS;
    return count;
}

void cg_report_builds_proof(struct cg_report *report,
                            const struct cg_builds *builds)
{
    const struct cg_updated_case *then = &builds->then->updated;
    cg_report_section(report, "What of the proof still holds");
    if (then->learned.entries == 0) {
        cg_report_say(report, "The build before has no evidence: it may have "
                              "lived, and nothing shows at which gap and how "
                              "hard it ran. evidence in its config, or a "
                              "notebook, would.");
        return;
    }
    cg_report_words(report, "proof_from", "Evidence", "%zu %s, from %s%s%s",
                    then->learned.entries,
                    then->learned.entries == 1 ? "entry" : "entries",
                    builds->then->name,
                    then->evidence.notebook[0] != '\0' ? ", notebook " : "",
                    then->evidence.notebook);
    cg_report_row(report, "proof_holds", "Runs that still prove a gap",
                  cg_quantity(CG_SHOW_COUNT, (double)holding(builds)));
    for (size_t i = 0; i < then->learned.entries; i++)
        tell_entry(report, builds, i);
    cg_report_say(report,
                  "A run without contact proves the gap that it was found at, "
                  "for the same parts and duties no harder: closures by the "
                  "model as that evidence moved it. The gaps to file to above "
                  "rest on this config's own evidence alone.");
}
