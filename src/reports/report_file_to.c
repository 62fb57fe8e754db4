#include "report_file_to.h"

#include "say_common.h"
#include "show.h"

struct ring {
    const char *key, *ring, *name;
    const struct cg_verdict *verdict;
    const struct cg_gap_sum *sum;
    const struct cg_ring_advice *advice;
    const char *duty; /* hardest on it */
};

/* False: no gap in range will do, and that has been said. */
static bool tell(struct cg_report *report, const struct ring *ring)
{
    if (ring->advice->from == CG_ADVICE_NONE) {
        cg_report_verdict(
            report, false, "%s: %s.", ring->ring,
            cg_say_beyond(ring->verdict, ring->sum, cg_report_inch(report))
                .text);
        return false;
    }
    cg_report_answer(report, ring->key, ring->name,
                     cg_quantity(CG_SHOW_GAP_ASKED, ring->advice->file_to));
    return true;
}

void cg_report_file_to_top(struct cg_report *report,
                           const struct cg_answer *answer)
{
    struct ring top = {"file_to_top",
                       "Top ring",
                       "Top ring, file to",
                       &answer->verdict,
                       cg_answer_needed(answer),
                       &answer->file_to_top,
                       answer->duty[answer->hardest].name};
    if (tell(report, &top))
        cg_report_remark(report, "%s",
                         cg_say_from(top.advice, top.sum->cold_gap, top.duty,
                                     cg_report_inch(report))
                             .text);
}

void cg_report_file_to_second(struct cg_report *report,
                              const struct cg_answer *answer)
{
    bool inch = cg_report_inch(report);
    struct ring second = {"file_to_second",
                          "Second ring",
                          "Second ring, file to",
                          &answer->second_verdict,
                          &answer->second,
                          &answer->file_to_second,
                          answer->duty[answer->hardest_second].name};
    if (!tell(report, &second))
        return;
    if (second.advice->from == CG_ADVICE_RULE)
        cg_report_remark(
            report, "the shop rule: %.3g times a top gap of %s",
            answer->file_to_second.rule / answer->second_rule_top,
            cg_show_gap_of(answer->second_rule_top, answer->verdict.given, inch)
                .text);
    else
        cg_report_remark(
            report, "%s",
            cg_say_from(second.advice, answer->second_verdict.need, "", inch)
                .text);
}

void cg_report_file_to(struct cg_report *report, const struct cg_answer *answer)
{
    cg_report_file_to_top(report, answer);
    cg_report_file_to_second(report, answer);
}
