#include "evidence_text.h"

#include <math.h>
#include <stdio.h>

#include "setting.h"
#include "show.h"
#include "uncertain.h"

/* Inputs that changed less than this are not shown. */
#define MOVED 0.1     /* standard deviations of before */
#define NARROWED 0.95 /* spread over that of before */

void cg_evidence_entry_text(const struct cg_evidence_entry *entry, bool inch,
                            char text[CG_EVIDENCE_TEXT])
{
    if (entry->what == CG_EVIDENCE_ENDS)
        snprintf(text, CG_EVIDENCE_TEXT, "ends %s at %s",
                 entry->touched ? "touched" : "apart",
                 cg_show_length(entry->cold_gap, inch).text);
    else if (entry->what == CG_EVIDENCE_LINER)
        snprintf(text, CG_EVIDENCE_TEXT, "liner at %s",
                 cg_show_length(entry->depth, inch).text);
    else
        snprintf(text, CG_EVIDENCE_TEXT, "%s", cg_evidence_name(entry->what));
}

void cg_evidence_measured_text(const struct cg_evidence_entry *entry, bool inch,
                               char text[CG_EVIDENCE_TEXT])
{
    snprintf(text, CG_EVIDENCE_TEXT, "%s +- %.0f %s",
             cg_show_temperature(entry->temperature, inch).text,
             inch ? entry->spread * 1.8 : entry->spread, inch ? "F" : "K");
}

static double width_of(const struct cg_updated_case *updated, size_t input)
{
    return sqrt(updated->learned.covariance[input][input]);
}

bool cg_evidence_moved(const struct cg_updated_case *updated, size_t input)
{
    return fabs(updated->learned.mean[input]) >= MOVED ||
           width_of(updated, input) <= NARROWED;
}

/* An input against its setting: "x 1.13 +- 11 %" or "+0.4 +- 1.9 deg". */
static void input_text(const struct cg_uncertain *input,
                       const struct cg_case *before, double mean, double width,
                       char text[CG_EVIDENCE_TEXT])
{
    char path[CG_EVIDENCE_TEXT];
    double spread = cg_uncertain_spread(input, before);
    snprintf(path, sizeof path, "uncertainty.%s", input->name);
    const struct cg_setting *setting = cg_setting_find(path);
    if (input->relative)
        snprintf(text, CG_EVIDENCE_TEXT, "x %.2f +- %.3g %%",
                 exp(mean * spread), 100.0 * spread * width);
    else
        snprintf(text, CG_EVIDENCE_TEXT, "%+.1f +- %.2g %s", mean * spread,
                 spread * width, setting->unit);
}

void cg_evidence_input_text(const struct cg_updated_case *updated, size_t input,
                            char before[CG_EVIDENCE_TEXT],
                            char after[CG_EVIDENCE_TEXT])
{
    size_t count;
    const struct cg_uncertain *one = &cg_uncertains(&count)[input];
    input_text(one, &updated->prior, 0.0, 1.0, before);
    input_text(one, &updated->prior, updated->learned.mean[input],
               width_of(updated, input), after);
}

const char *cg_evidence_little(void)
{
    return "little: no input moves by 0.1 of its standard deviations or "
           "narrows by 5 %";
}

const char *cg_evidence_holds(void)
{
    return "It holds for this engine on this fuel and tune.  Every entry counts "
           "as found by\n  itself: one finding written down twice counts double.";
}
