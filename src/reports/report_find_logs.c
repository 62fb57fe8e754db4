/* Logged runs, and lists of segments too long to run one by one: what was taken
 * of them, what was left, and what leaving it moves. */
#include <math.h>
#include <stdio.h>

#include "course_refine.h"
#include "log_course.h"
#include "report_duties.h"
#include "report_find_parts.h"
#include "setting.h"

static const char *const name[CG_CHANNELS] = {
    [CG_CHANNEL_SPEED] = "speed",     [CG_CHANNEL_LOAD] = "load",
    [CG_CHANNEL_COOLANT] = "coolant", [CG_CHANNEL_LAMBDA] = "mixture",
    [CG_CHANNEL_BURN50] = "burn",     [CG_CHANNEL_OIL] = "oil",
    [CG_CHANNEL_AIR] = "air"};

/* A list within a sentence. */
struct names {
    char text[240];
};

/* The names of a course's channels. */
static struct names channels_of(const struct cg_course *course)
{
    struct names names = {""};
    size_t used = 0;
    for (int k = 0; k < CG_CHANNELS; k++)
        if (name[k] != NULL && !isnan(course->row[0].of[k]))
            used +=
                (size_t)snprintf(names.text + used, sizeof names.text - used,
                                 "%s%s", used > 0 ? ", " : "", name[k]);
    return names;
}

/* How many lines of the run a channel has no value of its own in. */
static struct names filled_of(const struct cg_log_note *log)
{
    struct names names = {""};
    size_t used = 0;
    for (int k = 0; k < CG_CHANNELS; k++)
        if (name[k] != NULL && log->filled[k] > 0)
            used += (size_t)snprintf(
                names.text + used, sizeof names.text - used, "%s%s %zu",
                used > 0 ? ", " : "", name[k], log->filled[k]);
    return names;
}

static void tell_taken(struct cg_report *report, const struct cg_course *course)
{
    const struct cg_log_note *log = &course->log;
    const struct cg_setting *lambda = cg_setting_find(CG_LOG_AS_LAMBDA);
    const struct cg_setting *burn50 = cg_setting_find(CG_LOG_AS_BURN50);
    struct names filled = filled_of(log);
    double length = course->row[course->rows - 1].time;
    cg_report_say(report,
                  "%s: %zu lines, %.6g to %.6g s, one every %.3g s. Taken: "
                  "%s, from %.6g to %.6g s.",
                  log->file, log->lines, log->first, log->last, log->interval,
                  channels_of(course).text, log->begin, log->begin + length);
    if (log->idle_begin > 0.0 || log->idle_end > 0.0)
        cg_report_say(report,
                      "Left out as idling: %.3g s before, %.3g s after.",
                      log->idle_begin, log->idle_end);
    if (log->repeated > 0)
        cg_report_say(report,
                      "Lines of the same time as the line before, left out: "
                      "%zu.",
                      log->repeated);
    if (filled.text[0] != '\0')
        cg_report_say(report,
                      "Straight lines where a column has no value, of %zu "
                      "lines taken: %s.",
                      log->taken, filled.text);
    if (log->held > 0)
        cg_report_say(report,
                      "Beyond what the model runs, and held at its end (lambda "
                      "%g to %g, half burned %g to %g deg): %zu values.",
                      lambda->low, lambda->high, burn50->low, burn50->high,
                      log->held);
}

/* Against what is allowed. */
static struct names below(double moved)
{
    struct names by;
    snprintf(by.text, sizeof by.text, "by %s than %g um",
             moved < CG_COURSE_ALLOWED ? "less" : "more",
             1e6 * CG_COURSE_ALLOWED);
    return by;
}

static void tell_error(struct cg_report *report,
                       const struct cg_course_fine *fine,
                       const struct cg_course_error *by)
{
    if (by->all > by->rows)
        cg_report_say(report,
                      "Run by %zu of %zu rows, straight lines between them: "
                      "with all rows before the tightest instant its closure "
                      "moves %s (%.2f um).",
                      by->rows, by->all, below(by->thinned).text,
                      1e6 * by->thinned);
    if (by->mapped)
        cg_report_say(report,
                      "Between %zu operating points by straight lines: "
                      "settled closures before the tightest instant move %s "
                      "(%.2f um) when solved there.",
                      by->points, below(by->between).text, 1e6 * by->between);
    if (fine->times > 0)
        cg_report_say(report,
                      "Run finer than usual, in step %d of %d at most: as "
                      "usual the closure would move by %.2f um.",
                      fine->times, CG_COURSE_REFINED, 1e6 * fine->before);
}

static void tell_tightest(struct cg_report *report,
                          const struct cg_course *course,
                          const struct cg_extremes *e)
{
    for (int i = 0; i < e->peaks; i++)
        cg_report_say(
            report, "%s at %.2f s of the log: %.0f rpm, closure %s.",
            i == 0 ? "Tightest" : "Then", course->log.begin + e->peak[i].time,
            60.0 * e->peak[i].speed,
            cg_quantity_text(cg_quantity(CG_SHOW_GAP, e->peak[i].closure),
                             cg_report_inch(report))
                .text);
}

void cg_report_find_logs(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    bool begun = false;
    for (size_t i = 0; i < cg_answer_own_duties(answer); i++) {
        const struct cg_course *course = cg_answer_duty(c, answer, i)->course;
        if (course == NULL)
            continue;
        if (!begun)
            cg_report_section(report, course->log.file[0] != '\0'
                                          ? "Logged runs"
                                          : "What was run of a long duty");
        begun = true;
        cg_report_part(report, answer->duty[i].name);
        if (course->log.file[0] != '\0') {
            tell_tightest(report, course, &answer->duty[i].extremes);
            tell_taken(report, course);
        }
        if (i == 0 && course->log.file[0] != '\0')
            cg_report_figure(report, "log", "The run as it was logged",
                             "Over the log's own time: speed and manifold "
                             "pressure, and below them the closure of the top "
                             "ring, its tightest instants marked.");
        tell_error(report, &course->fine, &answer->duty[i].course);
    }
}
