#include "report_duties.h"

void cg_report_duties(struct cg_report *report, const struct cg_answer *answer)
{
    static const struct cg_report_column columns[] = {
        {"duty", "Duty", CG_SHOW_WORDS},
        {"ring_top", "Top ring", CG_SHOW_TEMPERATURE},
        {"closure_top", "Closure", CG_SHOW_GAP},
        {"gap_needed_top", "Gap needed", CG_SHOW_GAP_ASKED},
        {"tightest_time", "Tightest at", CG_SHOW_TIME},
        {"tightest_stroke", "depth", CG_SHOW_LENGTH}};
    cg_report_table(report, "duties", "", columns,
                    sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < answer->duties; i++) {
        const struct cg_duty_answer *duty = &answer->duty[i];
        bool hardest = answer->duties > 1 && i == answer->hardest;
        cg_report_cell_words(report, "%s%s", duty->name,
                             hardest ? ", hardest" : "");
        cg_report_cell(report, duty->extremes.ring_top_max);
        cg_report_cell(report, duty->extremes.closure);
        cg_report_cell(report, duty->top.cold_gap);
        cg_report_cell(report, duty->extremes.time);
        cg_report_cell(report, duty->extremes.depth);
    }
}
