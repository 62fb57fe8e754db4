/* Logged runs, and lists of segments too long to run one by one: what was taken
 * of them, what was left, and what leaving it moves. */
#include <math.h>
#include <stdio.h>

#include "report_find_parts.h"

/* The names of a course's channels, as a sentence lists them. */
struct names {
    char text[160];
};

static struct names channels_of(const struct cg_course *course)
{
    static const char *const name[CG_CHANNELS] = {
        [CG_CHANNEL_SPEED] = "speed",     [CG_CHANNEL_LOAD] = "load",
        [CG_CHANNEL_COOLANT] = "coolant", [CG_CHANNEL_LAMBDA] = "mixture",
        [CG_CHANNEL_BURN50] = "burn",     [CG_CHANNEL_OIL] = "oil",
        [CG_CHANNEL_AIR] = "air"};
    struct names names = {""};
    size_t used = 0;
    for (int k = 0; k < CG_CHANNELS; k++)
        if (name[k] != NULL && !isnan(course->row[0].of[k]))
            used +=
                (size_t)snprintf(names.text + used, sizeof names.text - used,
                                 "%s%s", used > 0 ? ", " : "", name[k]);
    return names;
}

static const struct cg_course *course_of(const struct cg_case *c, size_t i)
{
    return i == 0 ? c->duty.course : c->survive.duty[i - 1].course;
}

static void tell_taken(struct cg_report *report, const struct cg_course *course)
{
    const struct cg_log_note *log = &course->log;
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
    if (log->filled > 0)
        cg_report_say(report, "Cells filled by straight lines: %zu.",
                      log->filled);
    if (log->held > 0)
        cg_report_say(report,
                      "Beyond what the model runs, and held at its end (lambda "
                      "0.6 to 1.8, half burned -10 to 60 deg): %zu values.",
                      log->held);
}

static const char *below(double moved)
{
    return moved < CG_COURSE_ALLOWED ? "by less than 1 um"
                                     : "by more than 1 um";
}

static void tell_error(struct cg_report *report,
                       const struct cg_course_error *by)
{
    if (by->all > by->rows)
        cg_report_say(report,
                      "Run by %zu of %zu rows, straight lines between them: "
                      "with all rows before the tightest instant its closure "
                      "moves %s (%.2f um).",
                      by->rows, by->all, below(by->thinned), 1e6 * by->thinned);
    if (by->mapped)
        cg_report_say(report,
                      "Between %zu operating points by straight lines: "
                      "settled closures before the tightest instant move %s "
                      "(%.2f um) when solved there.",
                      by->points, below(by->between), 1e6 * by->between);
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
    for (size_t i = 0; i < answer->duties; i++) {
        const struct cg_course *course = course_of(c, i);
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
        tell_error(report, &answer->duty[i].course);
    }
}
