#include "report_find.h"

#include "outside.h"
#include "report_find_parts.h"
#include "report_second.h"
#include "say_common.h"
#include "scope.h"
#include "summary.h"

void cg_report_find_keys(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    size_t count;
    const struct cg_summary_key *keys = cg_summary_keys(&count);
    for (size_t i = 0; i < count; i++)
        cg_report_key(report, keys[i].key, keys[i].get(c, answer),
                      keys[i].unit);
    const struct cg_summary_word *words = cg_summary_words(&count);
    for (size_t i = 0; i < count; i++)
        cg_report_key_word(report, words[i].key, words[i].get(answer));
}

static void tell_second(struct cg_report *report, const struct cg_case *c,
                        const struct cg_answer *answer)
{
    cg_report_section(report, "The second ring");
    cg_report_second(report, c, answer);
}

void cg_report_find(struct cg_report *report, const struct cg_updated_case *updated,
                    const struct cg_answer *answer,
                    const struct cg_answer *without,
                    const struct cg_history *history)
{
    const struct cg_case *c = &updated->c;
    const struct cg_find_chart charts = {c, answer, history,
                                         cg_report_inch(report)};
    cg_report_find_keys(report, c, answer);
    cg_report_find_first(report, updated, answer, without);
    cg_report_first_part_ends(report);
    cg_report_find_sum(report, c, answer, &charts);
    cg_report_find_logs(report, c, answer);
    cg_report_find_heat(report, c, answer);
    cg_report_find_sure(report, updated, answer, &charts);
    cg_report_find_evidence(report, updated, without);
    tell_second(report, c, answer);
    cg_report_find_piston(report, c, answer);
    cg_report_find_engine(report, c, answer);
    cg_report_section(report, "What this leaves out");
    cg_report_say(report, "%s", cg_scope());
    cg_report_say(report, "%s", cg_say_left_out(c));
}
