#include "report_duties.h"

#include "less_boost.h"
#include "show.h"

const struct cg_course *cg_report_log(const struct cg_case *c,
                                      const struct cg_answer *answer, size_t i)
{
    const struct cg_course *course = cg_answer_duty(c, answer, i)->course;
    return course != NULL && course->log.file[0] != '\0' ? course : NULL;
}

static void tell_duty(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer, size_t i)
{
    const struct cg_duty_answer *duty = &answer->duty[i];
    const struct cg_course *log = cg_report_log(c, answer, i);
    bool hardest = answer->duties > 1 && i == answer->hardest;
    cg_report_cell_words(report, "%s%s", duty->name,
                         hardest ? ", hardest" : "");
    cg_report_cell(report, duty->extremes.ring_top_max);
    cg_report_cell(report, duty->extremes.closure);
    cg_report_cell(report, duty->top.cold_gap);
    cg_report_cell(report, duty->extremes.time +
                               (log != NULL ? log->log.begin : 0.0));
    cg_report_cell(report, duty->extremes.depth);
}

/* Less boost takes the place of its duty where it decides. */
void cg_report_duties(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer)
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
    size_t less = cg_answer_own_duties(answer);
    bool logged = false;
    bool decides = answer->hardest == less || answer->hardest_second == less;
    for (size_t i = 0; i < less; i++) {
        tell_duty(report, c, answer,
                  decides && i == answer->less_of ? less : i);
        logged = logged || cg_report_log(c, answer, i) != NULL;
    }
    if (logged)
        cg_report_note(report,
                       "A logged run is tightest at the log's own time.");
    if (decides)
        cg_report_note(
            report, "%s is %s at %s, before knock retards the spark.",
            CG_LESS_BOOST_NAME, answer->duty[answer->less_of].name,
            cg_show_boost(answer->less_boost, cg_report_inch(report)).text);
}
