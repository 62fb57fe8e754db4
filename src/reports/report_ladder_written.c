/* The config that --write has written: the gaps in it, and whether it stands.
 */
#include <stdio.h>

#include "report_file_to.h"
#include "report_ladder.h"
#include "report_past.h"
#include "say_common.h"
#include "show.h"

static const struct cg_ring_advice *advice_of(const struct cg_answer *answer,
                                              int ring)
{
    return ring == CG_RING_TOP ? &answer->file_to_top : &answer->file_to_second;
}

/* Wider than what the climb has asked for, for the config's own needs. */
static bool is_wider(const struct cg_ladder_written *written, int ring,
                     const struct cg_ring_advice *advice)
{
    return written != NULL && !written->kept[ring] &&
           advice->from != CG_ADVICE_NONE &&
           written->gap[ring] > advice->file_to * (1.0 + 1e-9);
}

double cg_ladder_written_gap(const struct cg_ladder_written *written, int ring,
                             const struct cg_answer *answer)
{
    const struct cg_ring_advice *advice = advice_of(answer, ring);
    return is_wider(written, ring, advice) ? written->gap[ring]
                                           : advice->file_to;
}

static void tell_wider(struct cg_report *report, const char *key,
                       const char *name,
                       const struct cg_ladder_written *written, int ring,
                       const struct cg_ladder *ladder)
{
    const struct cg_ring_advice *advice =
        advice_of(&ladder->after.answer, ring);
    bool inch = cg_report_inch(report);
    cg_report_answer(report, key, name,
                     cg_quantity(CG_SHOW_GAP_ASKED, written->gap[ring]));
    cg_report_remark(
        report, "as %s has it%s; the climb alone asks for %s at %s",
        written->path.text,
        written->left_out ? ", where evidence of the old engine is left out"
                          : ", for all boosts up to the target",
        cg_show_gap_up(advice->file_to, inch).text,
        cg_show_boost(ladder->target, inch).text);
}

void cg_report_ladder_file_to(struct cg_report *report,
                              const struct cg_ladder *ladder,
                              const struct cg_ladder_written *written)
{
    const struct cg_answer *answer = &ladder->after.answer;
    if (is_wider(written, CG_RING_TOP, &answer->file_to_top))
        tell_wider(report, "file_to_top", "Top ring, file to", written,
                   CG_RING_TOP, ladder);
    else
        cg_report_file_to_top(report, answer);
    if (is_wider(written, CG_RING_SECOND, &answer->file_to_second))
        tell_wider(report, "file_to_second", "Second ring, file to", written,
                   CG_RING_SECOND, ladder);
    else
        cg_report_file_to_second(report, answer);
}

/* Why find does not pass it, the first of the reasons. */
static struct cg_sentence why_not(const struct cg_answer *answer, bool inch)
{
    struct cg_sentence out;
    const struct cg_verdict *top = &answer->verdict;
    const struct cg_verdict *second = &answer->second_verdict;
    size_t past = cg_answer_past(answer);
    if (past < answer->duties)
        return cg_say_past(cg_limits_first(&answer->duty[past].limits),
                           &answer->duty[past].limits, inch);
    if (top->fits != CG_FITS)
        snprintf(out.text, sizeof out.text, "its top gap %s",
                 cg_say_fits(top->fits, answer->file_to_top.from));
    else if (second->fits != CG_FITS)
        snprintf(out.text, sizeof out.text, "its second gap %s",
                 cg_say_fits(second->fits, answer->file_to_second.from));
    else
        snprintf(out.text, sizeof out.text,
                 "its skirt clearance is TOO TIGHT for this duty");
    return out;
}

static void tell_stands(struct cg_report *report,
                        const struct cg_ladder_written *written)
{
    bool inch = cg_report_inch(report);
    if (cg_answer_stands(&written->answer))
        cg_report_verdict(report, true,
                          "%s: written, and read back; find passes it.",
                          written->path.text);
    else
        cg_report_verdict(report, false,
                          "%s: written, and read back, and find does NOT pass "
                          "it: %s.",
                          written->path.text,
                          why_not(&written->answer, inch).text);
}

static void tell_gaps(struct cg_report *report,
                      const struct cg_ladder_written *written)
{
    static const char *const name[CG_LADDER_GAPS] = {"top", "second"};
    bool inch = cg_report_inch(report);
    for (int k = 0; k < CG_LADDER_GAPS; k++)
        if (written->gap[k] > 0.0)
            cg_report_note(report, "its %s gap is %s%s.", name[k],
                           written->kept[k]
                               ? cg_show_gap(written->gap[k], inch).text
                               : cg_show_gap_up(written->gap[k], inch).text,
                           written->kept[k] ? ", the config's own, which is "
                                              "not changed"
                                            : "");
        else
            cg_report_note(report, "it gives no %s gap, as none will do.",
                           name[k]);
    if (written->left_out)
        cg_report_note(report, "what was found in the old engine, its "
                               "evidence, is left out of it.");
}

void cg_report_ladder_written(struct cg_report *report,
                              const struct cg_ladder_written *written)
{
    tell_stands(report, written);
    tell_gaps(report, written);
    cg_report_key_word(report, "written", written->path.text);
    cg_report_key(report, "written_gap_top", written->gap[CG_RING_TOP] * 1e3,
                  "mm");
    cg_report_key(report, "written_gap_second",
                  written->gap[CG_RING_SECOND] * 1e3, "mm");
    cg_report_key(report, "written_evidence_left_out", written->left_out, "1");
    cg_report_key(report, "written_stands", cg_answer_stands(&written->answer),
                  "1");
}
