#include "report_evidence.h"

#include <math.h>
#include <stdio.h>

#include "setting.h"
#include "show.h"
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
    const struct cg_learned *learned = &taught->learned;
    printf("  %-26s %-16s %-12s %s\n", "", "measured", "model before",
           "after");
    for (size_t i = 0; i < learned->entries; i++) {
        const struct cg_evidence_entry *entry = &taught->evidence.entry[i];
        char left[LINE], measured[LINE];
        entry_text(entry, inch, left);
        if (is_sign(entry)) {
            printf("  %-26s %-16s %-12s %s\n", left, "(hot gap left)",
                   cg_show_length(learned->before[i], inch).text,
                   cg_show_length(learned->after[i], inch).text);
            continue;
        }
        snprintf(measured, LINE, "%s +- %.0f %s",
                 cg_show_temperature(entry->temperature, inch).text,
                 inch ? entry->spread * 1.8 : entry->spread,
                 inch ? "F" : "K");
        printf("  %-26s %-16s %-12s %s\n", left, measured,
               cg_show_temperature(learned->before[i], inch).text,
               cg_show_temperature(learned->after[i], inch).text);
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
    const struct cg_learned *learned = &taught->learned;
    bool none = true;
    printf("  What it taught, against the settings, +- one standard "
           "deviation\n");
    for (size_t i = 0; i < count; i++) {
        double mean = learned->mean[i], width = sqrt(learned->covariance[i][i]);
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
    if (taught->learned.entries == 0)
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
