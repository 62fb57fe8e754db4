#include <stdio.h>
#include <string.h>

#include "advice.h"
#include "report_file_to.h"
#include "report_find_parts.h"
#include "say_common.h"
#include "show.h"

/* A chance as a number; far out is beyond what a normal law can promise. */
static struct cg_text chance(double value)
{
    struct cg_text out = {"under 1e-4"};
    if (!(value < 1e-4))
        snprintf(out.text, sizeof out.text, "%.2g", value);
    return out;
}

/* The answer alone still says what it is the answer for. */
static void tell_for(struct cg_report *report, const struct cg_case *c)
{
    bool inch = cg_report_inch(report);
    cg_report_say(report, "For bore %s, boost %s, %s, lambda %.3g, duty %s.",
                  cg_show_length(c->engine.bore, inch).text,
                  cg_show_boost(c->charge.boost, inch).text, c->fuel.name,
                  c->fuel.lambda, c->duty.name);
}

static void tell_verdict(struct cg_report *report, const char *ring,
                         const struct cg_verdict *v)
{
    bool inch = cg_report_inch(report);
    if (!v->given)
        return;
    cg_report_verdict(report, v->safe,
                      "Your %s gap of %s is %s for this duty; the gap needed "
                      "is %s.",
                      ring, cg_show_gap(v->gap, inch).text,
                      v->safe ? "safe" : "TOO SMALL",
                      cg_show_gap_up(v->need, inch).text);
    cg_report_say(report,
                  "The smallest hot gap is %s; the chance of less than the "
                  "minimum hot gap is %s, of touching ends %s.",
                  cg_show_gap(v->hot_gap_min, inch).text,
                  chance(v->chance_less).text, chance(v->chance_touch).text);
    if (v->touches)
        cg_report_note(
            report,
            "the ends touch: hoop stress %s in the ring, %s more on "
            "the bore, %.0f times the ring's own tension. That "
            "scuffs the bore or breaks the ring (rigid bore: upper "
            "bound).",
            cg_show_stress(v->butting.hoop_stress, inch).text,
            cg_show_wall_pressure(v->butting.wall_pressure, inch).text,
            v->butting.times_tension);
}

/* Safe by the model, and yet less than to file to. */
static void note_below(struct cg_report *report, const char *ring,
                       const char *rule, const struct cg_verdict *v,
                       double file_to)
{
    if (v->given && v->safe && v->gap < file_to * (1.0 - 1e-9))
        cg_report_note(report, "your %s gap is below %s: %s", ring, rule,
                       cg_say_file_to_larger());
}

static void tell_verdicts(struct cg_report *report,
                          const struct cg_answer *answer)
{
    const struct cg_verdict *second = &answer->second_verdict;
    struct cg_advice advice = cg_advice_of(answer);
    tell_verdict(report, "top", &answer->verdict);
    note_below(report, "top", "the shop rule", &answer->verdict,
               advice.file_to_top);
    tell_verdict(report, "second", second);
    note_below(report, "second", "the shop rule", second,
               advice.file_to_second);
    if (second->given && answer->second_reason == CG_SECOND_SEATING &&
        second->gap < answer->second.cold_gap * (1.0 - 1e-9))
        cg_report_note(report,
                       "with your second gap of %s gas between the rings lifts "
                       "the top ring too soon (seal shows when).",
                       cg_show_gap(second->gap, cg_report_inch(report)).text);
}

/* A skirt clearance given, and too small: the run ends with status 1. */
static void tell_skirt(struct cg_report *report, const struct cg_case *c,
                       const struct cg_skirt_answer *skirt)
{
    bool inch = cg_report_inch(report);
    if (skirt->too_tight && !skirt->taken)
        cg_report_verdict(report, false,
                          "Your skirt clearance of %s is TOO TIGHT for this "
                          "duty: by the middle estimate the skirt bears on the bore with "
                          "%s, past margin.skirt_pressure, %s.",
                          cg_show_gap(skirt->given, inch).text,
                          cg_show_boost(skirt->pressure, inch).text,
                          cg_show_boost(c->margin.skirt_pressure, inch).text);
}

/* A duty is only as hard as it is long, and none is as hard as all. */
static void tell_harder(struct cg_report *report, const struct cg_case *c,
                        const struct cg_answer *answer)
{
    bool abuse = strcmp(c->duty.name, "cold_start_abuse") == 0;
    bool further =
        answer->settled_closure > answer->top.closure * (1.0 + 1e-9) &&
        strcmp(c->duty.name, "settled") != 0;
    if (further)
        cg_report_say(report, "It closes more in the duty settled%s.",
                      abuse ? "" : ", and most in cold_start_abuse");
    else if (!abuse)
        cg_report_say(report, "It closes most in the duty cold_start_abuse.");
}

/* When, where and why. */
static void tell_reasons(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    const struct cg_contribution *first = &answer->contribution[0];
    bool inch = cg_report_inch(report);
    cg_report_say(report,
                  "The top ring reaches %s; its gap is tightest at %.2f s "
                  "(%.0f rpm, %s), %s below the deck.",
                  cg_show_temperature(e->ring_top_max, inch).text, e->time,
                  e->speed * 60.0, cg_say_load(e->load).text,
                  cg_show_length(e->depth, inch).text);
    if (answer->contributions > 0)
        cg_report_say(report,
                      "Least sure is the %s: %.0f %% of the variance of the gap.",
                      first->doc, first->share * 100.0);
    tell_harder(report, c, answer);
}

void cg_report_find_first(struct cg_report *report,
                          const struct cg_updated_case *updated,
                          const struct cg_answer *answer,
                          const struct cg_answer *without)
{
    const struct cg_case *c = &updated->c;
    cg_report_file_to(report, answer);
    tell_for(report, c);
    tell_verdicts(report, answer);
    tell_skirt(report, c, &answer->skirt);
    cg_report_find_evidence_notes(report, updated, answer, without);
    cg_report_find_notes(report, c, answer);
    tell_reasons(report, c, answer);
}
