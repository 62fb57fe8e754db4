#include "find_chart.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>

#include "report_duties.h"
#include "show.h"

void cg_find_chart_show(struct cg_report *report,
                        const struct cg_find_chart *of, const char *key,
                        const char *title,
                        char *(*draw)(const struct cg_find_chart *of,
                                      struct cg_find_chart_words *words),
                        const char *format, ...)
{
    char figure[512];
    struct cg_find_chart_words words = {""};
    va_list args;
    va_start(args, format);
    vsnprintf(figure, sizeof figure, format, args);
    va_end(args);
    if (of->history == NULL) {
        cg_report_figure(report, key, title, "%s", figure);
        return;
    }
    char *svg = draw(of, &words);
    cg_report_drawn(report, key, svg, title, figure, words.text);
    free(svg);
}

struct cg_find_chart_lines cg_find_chart_lines(const struct cg_find_chart *of)
{
    struct cg_find_chart_lines lines;
    const struct cg_answer *answer = of->answer;
    const struct cg_verdict *verdict = &answer->verdict;
    bool none = answer->file_to_top.from == CG_ADVICE_NONE;
    if (none)
        snprintf(lines.head, sizeof lines.head,
                 "Top ring: no gap in range will do");
    else
        snprintf(lines.head, sizeof lines.head, "Top ring: file to %s",
                 cg_show_gap_up(answer->file_to_top.file_to, of->inch).text);
    snprintf(lines.of, sizeof lines.of, "%s%s%s, duty %s",
             verdict->given ? "your gap "
             : none         ? "drawn for "
                            : "filed to ",
             verdict->given ? cg_show_length(verdict->gap, of->inch).text
                            : cg_show_length_up(verdict->gap, of->inch).text,
             verdict->given && verdict->fits == CG_FITS_NOT ? ", TOO SMALL" : "",
             of->c->duty.name);
    return lines;
}

double cg_find_chart_begin(const struct cg_find_chart *of)
{
    const struct cg_course *log = cg_report_log(of->c, of->answer, 0);
    return log != NULL ? log->log.begin : 0.0;
}

const char *cg_find_chart_time(const struct cg_find_chart *of)
{
    return cg_report_log(of->c, of->answer, 0) != NULL ? "time of the log"
                                                       : "time";
}
