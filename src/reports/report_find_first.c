#include <stdio.h>

#include "report_duties.h"
#include "report_file_to.h"
#include "report_find_parts.h"
#include "report_past.h"
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
    bool alone = c->survive.duties == 0;
    bool inch = cg_report_inch(report);
    cg_report_say(report, "For bore %s, boost %s, %s, lambda %.3g, duty %s%s.",
                  cg_show_length(c->engine.bore, inch).text,
                  cg_show_boost(c->charge.boost, inch).text, c->fuel.name,
                  c->fuel.lambda, c->duty.name, alone ? " alone" : "");
}

/* What would make a gap acceptable that the model calls safe. */
static void tell_below(struct cg_report *report,
                       const struct cg_ring_advice *advice)
{
    bool maker = advice->from == CG_ADVICE_MAKER;
    cg_report_say(report, "The model calls it safe. File to %s%s.",
                  cg_show_gap_up(advice->at_least, cg_report_inch(report)).text,
                  maker ? ", or ask the ring's maker"
                        : ", or give evidence of a run with it");
}

static void tell_verdict(struct cg_report *report, const char *ring,
                         const struct cg_verdict *v,
                         const struct cg_ring_advice *advice)
{
    bool inch = cg_report_inch(report);
    if (!v->given)
        return;
    cg_report_verdict(report, v->fits == CG_FITS,
                      "Your %s gap of %s %s; the gap needed is %s.", ring,
                      cg_show_gap(v->gap, inch).text,
                      cg_say_fits(v->fits, advice->from),
                      cg_show_gap_up(v->need, inch).text);
    if (v->fits == CG_FITS_BELOW)
        tell_below(report, advice);
    if (v->fits != CG_FITS_NOT)
        return;
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

static void tell_verdicts(struct cg_report *report,
                          const struct cg_answer *answer)
{
    const struct cg_verdict *second = &answer->second_verdict;
    tell_verdict(report, "top", &answer->verdict, &answer->file_to_top);
    tell_verdict(report, "second", second, &answer->file_to_second);
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


void cg_report_find_first(struct cg_report *report,
                          const struct cg_updated_case *updated,
                          const struct cg_answer *answer,
                          const struct cg_answer *without)
{
    cg_report_past(report, &updated->c, answer);
    cg_report_file_to(report, answer);
    cg_report_find_judged(report, updated, answer, without);
}

void cg_report_find_judged(struct cg_report *report,
                           const struct cg_updated_case *updated,
                           const struct cg_answer *answer,
                           const struct cg_answer *without)
{
    const struct cg_case *c = &updated->c;
    tell_for(report, c);
    tell_verdicts(report, answer);
    tell_skirt(report, c, &answer->skirt);
    cg_report_find_evidence_notes(report, updated, answer, without);
    cg_report_duties(report, c, answer);
    cg_report_find_notes(report, c, answer);
}
