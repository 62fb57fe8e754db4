#include "report_evidence.h"

#include <math.h>
#include <stdio.h>

#include "constants.h"
#include "setting.h"
#include "show.h"
#include "table.h"
#include "uncertain.h"

/* Inputs that changed less than this are not shown. */
#define MOVED 0.1     /* standard deviations of before */
#define NARROWED 0.95 /* spread over that of before */

static bool is_sign(const struct cg_evidence_entry *entry)
{
    return entry->what == CG_EVIDENCE_ENDS;
}

enum { LINE = 96 };

static void entry_text(const struct cg_evidence_entry *entry, bool inch,
                       char text[LINE])
{
    if (is_sign(entry))
        snprintf(text, LINE, "ends %s at %s",
                 entry->touched ? "touched" : "apart",
                 cg_show_length(entry->cold_gap, inch).text);
    else if (entry->what == CG_EVIDENCE_LINER)
        snprintf(text, LINE, "liner at %s",
                 cg_show_length(entry->depth, inch).text);
    else
        snprintf(text, LINE, "%s", cg_evidence_name(entry->what));
}

static void print_entries(const struct cg_taught *taught, bool inch)
{
    const struct cg_lesson *lesson = &taught->lesson;
    printf("  %-26s %-16s %-12s %s\n", "", "measured", "model before",
           "after");
    for (size_t i = 0; i < lesson->entries; i++) {
        const struct cg_evidence_entry *entry = &taught->evidence.entry[i];
        char left[LINE], measured[LINE];
        entry_text(entry, inch, left);
        if (is_sign(entry)) {
            printf("  %-26s %-16s %-12s %s\n", left, "(hot gap left)",
                   cg_show_length(lesson->before[i], inch).text,
                   cg_show_length(lesson->after[i], inch).text);
            continue;
        }
        snprintf(measured, LINE, "%s +- %.0f %s",
                 cg_show_temperature(entry->temperature, inch).text,
                 inch ? entry->spread * 1.8 : entry->spread,
                 inch ? "F" : "K");
        printf("  %-26s %-16s %-12s %s\n", left, measured,
               cg_show_temperature(lesson->before[i], inch).text,
               cg_show_temperature(lesson->after[i], inch).text);
    }
}

/* An input against its setting: "x 1.13 +- 11 %" or "+0.4 +- 1.9 deg". */
static void input_text(const struct cg_uncertain *input,
                       const struct cg_case *before, double mean,
                       double width, char text[LINE])
{
    char path[LINE];
    double spread = cg_uncertain_spread(input, before);
    snprintf(path, sizeof path, "uncertainty.%s", input->name);
    const struct cg_setting *setting = cg_setting_find(path);
    if (input->relative)
        snprintf(text, LINE, "x %.2f +- %.3g %%",
                 exp(mean * spread), 100.0 * spread * width);
    else
        snprintf(text, LINE, "%+.1f +- %.2g %s",
                 mean * spread, spread * width, setting->unit);
}

static void print_inputs(const struct cg_taught *taught)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    const struct cg_lesson *lesson = &taught->lesson;
    bool none = true;
    printf("  What it taught, against the settings, +- one standard "
           "deviation\n");
    for (size_t i = 0; i < count; i++) {
        double mean = lesson->mean[i], width = sqrt(lesson->covariance[i][i]);
        if (fabs(mean) < MOVED && width > NARROWED)
            continue;
        char before[LINE], after[LINE];
        none = false;
        input_text(&inputs[i], &taught->untaught, 0.0, 1.0, before);
        input_text(&inputs[i], &taught->untaught, mean, width, after);
        printf("    %-24s %-18s to %s\n", inputs[i].doc, before, after);
    }
    if (none)
        printf("    little: no input moves by %g of its standard deviations "
               "or narrows by %.0f %%\n",
               MOVED, 100.0 * (1.0 - NARROWED));
}

void cg_report_evidence(const struct cg_taught *taught,
                        const struct cg_answer *without, bool inch)
{
    const struct cg_gap_sum *sum = &without->top;
    if (taught->lesson.entries == 0)
        return;
    printf("Evidence: what was measured on the engine as the config says it\n");
    print_entries(taught, inch);
    print_inputs(taught);
    printf("  Without it: closure %s, spread %s,\n"
           "    cold gap, top ring %s\n\n",
           cg_show_gap(sum->closure, inch).text,
           cg_show_gap(sum->spread, inch).text,
           cg_show_gap(sum->cold_gap, inch).text);
}

/* C, or mm of a sign. */
static double in_table(const struct cg_evidence_entry *entry, double value)
{
    return is_sign(entry) ? value * 1e3 : value - CG_ZERO_CELSIUS;
}

static void write_entries(struct cg_table *table,
                          const struct cg_taught *taught)
{
    const struct cg_lesson *lesson = &taught->lesson;
    cg_table_block(table, "entries");
    cg_table_line(table, "# what  measured [C; mm: cold gap of a sign]  "
                         "spread [K; mm]  before [C; mm: hot gap left]  "
                         "after [C; mm]");
    for (size_t i = 0; i < lesson->entries; i++) {
        const struct cg_evidence_entry *entry = &taught->evidence.entry[i];
        cg_table_line(table, "%s%s %.7g %.7g %.7g %.7g",
                      cg_evidence_name(entry->what),
                      !is_sign(entry)  ? ""
                      : entry->touched ? "_touched"
                                       : "_apart",
                      is_sign(entry)
                          ? entry->cold_gap * 1e3
                          : entry->temperature - CG_ZERO_CELSIUS,
                      is_sign(entry) ? entry->spread * 1e3 : entry->spread,
                      in_table(entry, lesson->before[i]),
                      in_table(entry, lesson->after[i]));
    }
}

enum cg_status cg_evidence_write(const char *dir, const char *config,
                                 const struct cg_taught *taught,
                                 struct cg_error *error)
{
    const struct cg_lesson *lesson = &taught->lesson;
    struct cg_table_head head = {
        "Evidence: the model before and after it, and what it taught", config,
        NULL};
    struct cg_table *table;
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    if (lesson->entries == 0)
        return cg_table_drop(dir, "evidence.dat", error);
    enum cg_status status =
        cg_table_open(dir, "evidence.dat", &head, &table, error);
    if (status != CG_OK)
        return status;
    write_entries(table, taught);
    cg_table_block(table, "inputs");
    cg_table_line(table, "# input  moved [standard deviations of before]  "
                         "width [1, spread over that of before]");
    for (size_t i = 0; i < count; i++)
        cg_table_line(table, "%s %.7g %.7g", inputs[i].name, lesson->mean[i],
                      sqrt(lesson->covariance[i][i]));
    cg_table_block(table, "correlations");
    cg_table_line(table, "# input  input  correlation [1], where it is at "
                         "least 0.01");
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < i; j++) {
            double r = lesson->covariance[i][j] /
                       sqrt(lesson->covariance[i][i] *
                            lesson->covariance[j][j]);
            if (fabs(r) >= 0.01)
                cg_table_line(table, "%s %s %.7g", inputs[j].name,
                              inputs[i].name, r);
        }
    return cg_table_close(table, CG_OK, error);
}
