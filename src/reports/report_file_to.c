#include "report_file_to.h"

#include "advice.h"
#include "say_common.h"
#include "show.h"

struct ring {
    const char *key, *ring, *name, *rule_name;
    const struct cg_verdict *verdict;
    const struct cg_gap_sum *sum;
    double rule, file_to;
    enum cg_advice_from from;
};

static void tell(struct cg_report *report, const struct ring *ring)
{
    bool inch = cg_report_inch(report);
    struct cg_text need = cg_show_gap_up(ring->sum->cold_gap, inch);
    if (ring->from == CG_ADVICE_NONE) {
        cg_report_verdict(report, false, "%s: %s.", ring->ring,
                          cg_say_beyond(ring->verdict, ring->sum, inch).text);
        return;
    }
    cg_report_answer(report, ring->key, ring->name,
                     cg_quantity(CG_SHOW_GAP_ASKED, ring->file_to));
    if (ring->from == CG_ADVICE_RULE)
        cg_report_remark(report, "%s; the model needs %s", ring->rule_name,
                         need.text);
    else
        cg_report_remark(report, "by the model; %s gives %s", ring->rule_name,
                         cg_show_gap_up(ring->rule, inch).text);
}

/* Where the rule is all there is, or cuts the gas model short, it is no second
 * opinion. */
static void tell_ruled(struct cg_report *report, const struct cg_answer *answer,
                       const struct ring *ring)
{
    bool limited = answer->second_reason == CG_SECOND_LIMITED;
    cg_report_answer(report, ring->key, ring->name,
                     cg_quantity(CG_SHOW_GAP_ASKED, ring->file_to));
    cg_report_remark(
        report, "%s; %s%s", ring->rule_name,
        limited ? "the gas model wants " : "the gas model gave no figure",
        limited
            ? cg_show_gap_up(answer->seating.gap, cg_report_inch(report)).text
            : "");
}

void cg_report_file_to_top(struct cg_report *report,
                           const struct cg_answer *answer)
{
    struct cg_advice advice = cg_advice_of(answer);
    struct ring top = {.key = "file_to_top",
                       .ring = "Top ring",
                       .name = "Top ring, file to",
                       .rule_name = "the shop rule",
                       .verdict = &answer->verdict,
                       .sum = &answer->top,
                       .rule = answer->shop_rule,
                       .file_to = advice.file_to_top,
                       .from = advice.from_top};
    tell(report, &top);
}

void cg_report_file_to_second(struct cg_report *report,
                              const struct cg_answer *answer)
{
    struct cg_advice advice = cg_advice_of(answer);
    struct ring second = {.key = "file_to_second",
                          .ring = "Second ring",
                          .name = "Second ring, file to",
                          .rule_name = "the shop rule",
                          .verdict = &answer->second_verdict,
                          .sum = &answer->second,
                          .rule = answer->second_rule,
                          .file_to = advice.file_to_second,
                          .from = advice.from_second};
    bool ruled = answer->second_reason == CG_SECOND_RULE ||
                 answer->second_reason == CG_SECOND_LIMITED;
    if (ruled && second.from != CG_ADVICE_NONE)
        tell_ruled(report, answer, &second);
    else
        tell(report, &second);
}

void cg_report_file_to(struct cg_report *report, const struct cg_answer *answer)
{
    cg_report_file_to_top(report, answer);
    cg_report_file_to_second(report, answer);
}
