#include <math.h>
#include <stdio.h>

#include "log_course.h"
#include "report_find_parts.h"
#include "setting.h"
#include "show.h"
#include "uncertain.h"

/* Inputs that changed less than this are not shown. */
#define MOVED 0.1     /* standard deviations of before */
#define NARROWED 0.95 /* spread over that of before */

enum { INPUT_TEXT = 96 };

/* Entries are told in three tables. */
enum kind { TEMPERATURE, SHARE, SIGN };

static enum kind kind_of(const struct cg_updated_case *updated, size_t i)
{
    enum cg_evidence_what what = updated->evidence.entry[i].what;
    return what == CG_EVIDENCE_ENDS      ? SIGN
           : what == CG_EVIDENCE_COOLANT ? SHARE
                                         : TEMPERATURE;
}

static bool has(const struct cg_updated_case *updated, enum kind kind)
{
    for (size_t i = 0; i < updated->learned.entries; i++)
        if (kind_of(updated, i) == kind)
            return true;
    return false;
}

/* Whether a notebook's builds are among the entries: 1 column more. */
static size_t has_builds(const struct cg_updated_case *updated)
{
    return updated->evidence.notebook[0] != '\0' ? 1 : 0;
}

/* "2026-03-14", the build's number where it has no date, and whether it is of
 * another engine. */
static void tell_build(struct cg_report *report,
                       const struct cg_updated_case *updated,
                       const struct cg_evidence_entry *entry)
{
    if (has_builds(updated) == 1)
        cg_report_cell_words(report, "%s%s",
                             entry->date[0] != '\0'   ? entry->date
                             : entry->from[0] != '\0' ? entry->from
                                                      : "-",
                             entry->engine > 0 ? ", other" : "");
}

static void tell_measured(struct cg_report *report,
                          const struct cg_updated_case *updated)
{
    static const struct cg_report_column columns[] = {
        {"what", "What", CG_SHOW_WORDS},
        {"depth", "depth", CG_SHOW_LENGTH},
        {"measured", "measured", CG_SHOW_TEMPERATURE},
        {"spread", "+-", CG_SHOW_KELVIN},
        {"before", "model before", CG_SHOW_TEMPERATURE},
        {"after", "after", CG_SHOW_TEMPERATURE},
        {"build", "build", CG_SHOW_WORDS}};
    const struct cg_learned *learned = &updated->learned;
    if (!has(updated, TEMPERATURE))
        return;
    cg_report_table(report, "measured",
                    "Temperatures measured, and the model there", columns,
                    6 + has_builds(updated));
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
        if (kind_of(updated, i) != TEMPERATURE)
            continue;
        cg_report_cell_words(report, "%s", cg_evidence_name(entry->what));
        cg_report_cell(report,
                       entry->what == CG_EVIDENCE_LINER ? entry->depth : NAN);
        cg_report_cell(report, entry->temperature);
        cg_report_cell(report, entry->spread);
        cg_report_cell(report, learned->before[i]);
        cg_report_cell(report, learned->after[i]);
        tell_build(report, updated, entry);
    }
}

/* What was taken of logs. */
static void tell_logs(struct cg_report *report,
                      const struct cg_updated_case *updated)
{
    const struct cg_evidence *evidence = &updated->evidence;
    for (size_t i = 0; i < updated->learned.entries; i++) {
        const struct cg_evidence_entry *entry = &evidence->entry[i];
        const struct cg_course *course = evidence->run[entry->run].duty.course;
        bool probe = entry->what == CG_EVIDENCE_PROBE;
        if (entry->log[0] == '\0')
            continue;
        cg_report_say(
            report, "%s: highest of \"%s\" in %s, %s at %.6g s of the log.%s",
            cg_evidence_name(entry->what), entry->column, entry->log,
            cg_quantity_text(
                cg_quantity(CG_SHOW_TEMPERATURE, entry->temperature),
                cg_report_inch(report))
                .text,
            entry->log_time,
            probe ? "" : " Beside it the model's highest of that run.");
        if (probe)
            cg_report_say(report,
                          "Beside it the engine held as it ran in the %g s "
                          "before: %.0f rpm, %.0f %% of full load.",
                          CG_LOG_PROBE_LAG,
                          60.0 * course->row[0].of[CG_CHANNEL_SPEED],
                          100.0 * course->row[0].of[CG_CHANNEL_LOAD]);
    }
}

static void tell_shares(struct cg_report *report,
                        const struct cg_updated_case *updated)
{
    static const struct cg_report_column columns[] = {
        {"measured", "measured", CG_SHOW_SHARE},
        {"spread", "+-", CG_SHOW_SHARE},
        {"before", "model before", CG_SHOW_SHARE},
        {"after", "after", CG_SHOW_SHARE},
        {"build", "build", CG_SHOW_WORDS}};
    const struct cg_learned *learned = &updated->learned;
    if (!has(updated, SHARE))
        return;
    cg_report_table(report, "coolant_share",
                    "The coolant's share of the fuel's energy", columns,
                    4 + has_builds(updated));
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
        if (kind_of(updated, i) != SHARE)
            continue;
        cg_report_cell(report, entry->share);
        cg_report_cell(report, entry->spread);
        cg_report_cell(report, learned->before[i]);
        cg_report_cell(report, learned->after[i]);
        tell_build(report, updated, entry);
    }
}

static void tell_ends(struct cg_report *report, const struct cg_updated_case *updated)
{
    static const struct cg_report_column columns[] = {
        {"what", "What", CG_SHOW_WORDS},
        {"cold_gap", "cold gap", CG_SHOW_SMALL_LENGTH},
        {"before", "model before", CG_SHOW_SMALL_LENGTH},
        {"after", "after", CG_SHOW_SMALL_LENGTH},
        {"build", "build", CG_SHOW_WORDS}};
    const struct cg_learned *learned = &updated->learned;
    if (!has(updated, SIGN))
        return;
    cg_report_table(report, "ends",
                    "Ends of the top ring as found, and the hot gap that the "
                    "model leaves",
                    columns, 4 + has_builds(updated));
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &updated->evidence.entry[i];
        if (kind_of(updated, i) != SIGN)
            continue;
        cg_report_cell_words(report, "%s",
                             entry->touched ? "touched" : "did not touch");
        cg_report_cell(report, entry->cold_gap);
        cg_report_cell(report, learned->before[i]);
        cg_report_cell(report, learned->after[i]);
        tell_build(report, updated, entry);
    }
}

/* How far builds of other engines count. */
static void tell_notebook(struct cg_report *report,
                          const struct cg_updated_case *updated)
{
    if (has_builds(updated) == 1)
        cg_report_say(report,
                      "From the notebook %s: findings of this engine count in "
                      "full; %zu of other engines with the scatter from engine "
                      "to engine, %.3g %% (uncertainty.engine_pct).",
                      updated->evidence.notebook, cg_evidence_others(&updated->evidence),
                      updated->prior.uncertainty.engine * 100.0);
}

/* An input against its setting: "x 1.13 +- 11 %" or "+0.4 +- 1.9 deg". */
static void input_text(const struct cg_uncertain *input,
                       const struct cg_case *before, double mean, double width,
                       char text[INPUT_TEXT])
{
    char path[INPUT_TEXT];
    double spread = cg_uncertain_spread(input, before);
    snprintf(path, sizeof path, "uncertainty.%s", input->name);
    const struct cg_setting *setting = cg_setting_find(path);
    if (input->relative)
        snprintf(text, INPUT_TEXT, "x %.2f +- %.3g %%", exp(mean * spread),
                 100.0 * spread * width);
    else
        snprintf(text, INPUT_TEXT, "%+.1f +- %.2g %s", mean * spread,
                 spread * width, setting->unit);
}

static double width_of(const struct cg_updated_case *updated, size_t input)
{
    return sqrt(updated->learned.covariance[input][input]);
}

/* Whether an input moved or narrowed enough to be shown. */
static bool has_moved(const struct cg_updated_case *updated, size_t input)
{
    return fabs(updated->learned.mean[input]) >= MOVED ||
           width_of(updated, input) <= NARROWED;
}

static void tell_inputs(struct cg_report *report,
                        const struct cg_updated_case *updated)
{
    static const struct cg_report_column columns[] = {
        {"input", "Input", CG_SHOW_WORDS},
        {"before", "before", CG_SHOW_WORDS},
        {"after", "after", CG_SHOW_WORDS}};
    size_t count, moved = 0;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        moved += has_moved(updated, i);
    if (moved == 0) {
        cg_report_say(report, "What was learned: little. No input moves by 0.1 "
                              "of its standard deviations or narrows by 5 %%.");
        return;
    }
    cg_report_table(report, "taught",
                    "What was learned, against the settings, +- one standard "
                    "deviation",
                    columns, 3);
    for (size_t i = 0; i < count; i++) {
        char before[INPUT_TEXT], after[INPUT_TEXT];
        if (!has_moved(updated, i))
            continue;
        input_text(&inputs[i], &updated->prior, 0.0, 1.0, before);
        input_text(&inputs[i], &updated->prior, updated->learned.mean[i],
                   width_of(updated, i), after);
        cg_report_cell_words(report, "%s", inputs[i].doc);
        cg_report_cell_words(report, "%s", before);
        cg_report_cell_words(report, "%s", after);
    }
}

void cg_report_find_evidence(struct cg_report *report,
                             const struct cg_updated_case *updated,
                             const struct cg_answer *without)
{
    const struct cg_gap_sum *sum = &without->top;
    if (updated->learned.entries == 0)
        return;
    cg_report_section(report, "Evidence");
    cg_report_say(report, "What was measured on the engine as the config says "
                          "it, and what the model learned from it.");
    tell_notebook(report, updated);
    tell_measured(report, updated);
    tell_logs(report, updated);
    tell_shares(report, updated);
    tell_ends(report, updated);
    tell_inputs(report, updated);
    cg_report_say(report, "It holds for this engine on this fuel and tune. "
                          "Every entry counts as found by itself: one finding "
                          "written down twice counts double.");
    cg_report_part(report, "The answer without it");
    cg_report_row(report, "closure_without", "Closure, middle estimate",
                  cg_quantity(CG_SHOW_GAP, sum->closure));
    cg_report_row(report, "spread_without", "Uncertainty allowance",
                  cg_quantity(CG_SHOW_GAP, sum->spread));
    cg_report_row(report, "cold_gap_without", "Gap needed, top ring",
                  cg_quantity(CG_SHOW_GAP_ASKED, sum->cold_gap));
}
