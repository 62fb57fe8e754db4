#include <math.h>

#include "constants.h"
#include "report_find_parts.h"
#include "report_past.h"
#include "say_common.h"
#include "show.h"

static void note_duty(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    if (e->time >= answer->duration && c->duty.start != CG_START_SETTLED)
        cg_report_note(report, "the gap is still closing when the duty ends; a "
                               "longer one needs more.");
}

/* The cap is passed, or the user's own rule of retard does not do. */
static void note_knock(struct cg_report *report, const struct cg_case *c,
                       const struct cg_performance *full)
{
    double retard = full->burn50_deg - c->combustion.burn50_deg;
    if (full->knock_integral > CG_KNOCK_PREDICTED)
        cg_report_note(report,
                       "KNOCK is predicted at rated speed and full load: with "
                       "the burn %.0f deg late%s the knock integral is %.2f, "
                       "and 1 is knock. What knock does to the parts is not in "
                       "these figures. Less boost, a lower ratio, a cooler "
                       "charge or more octane than %.4g would mend it.",
                       retard,
                       isnan(c->combustion.retard_deg_per_100kPa)
                           ? ", the most anyone retards,"
                           : " by combustion.retard",
                       full->knock_integral, c->fuel.octane);
}

/* The user's own word, and what it stands on. */
static void note_declared_knock(struct cg_report *report,
                                const struct cg_duty_case *duty)
{
    double most = cg_duty_knock_heat(duty);
    if (most > 0.0)
        cg_report_note(report,
                       "the duty declares knock, with %.4g times the gas-side "
                       "heat. That number is an assumption: %.2g to %.2g by "
                       "one simulation, read of at second hand; none was "
                       "measured.",
                       most, CG_KNOCK_HEAT_LEAST, CG_KNOCK_HEAT_MOST);
}

/* Of a crown whose alloy has no limit of its own above aluminium's. */
static bool crown_passes(const struct cg_case *c, const struct cg_extremes *e)
{
    return e->crown_max > CG_CROWN_LIMIT &&
           !(cg_crown_limit(c) > CG_CROWN_LIMIT);
}

static void note_surfaces(struct cg_report *report, const struct cg_case *c,
                          const struct cg_extremes *e)
{
    bool crown = crown_passes(c, e),
         bore = e->liner_top_max > CG_BORE_LIMIT;
    bool inch = cg_report_inch(report);
    struct cg_text crown_limit = cg_show_temperature(CG_CROWN_LIMIT, inch);
    struct cg_text bore_limit = cg_show_temperature(CG_BORE_LIMIT, inch);
    if (crown && bore)
        cg_report_note(report,
                       "the crown passes %s, the bore %s where the top ring "
                       "turns.",
                       crown_limit.text, bore_limit.text);
    else if (crown)
        cg_report_note(report,
                       "the crown passes %s, the usual limit for "
                       "aluminium.",
                       crown_limit.text);
    else if (bore)
        cg_report_note(report,
                       "the bore passes %s where the top ring turns: "
                       "its oil begins to fail.",
                       bore_limit.text);
}

void cg_report_find_limits(struct cg_report *report, const struct cg_case *c,
                           const struct cg_extremes *e)
{
    bool inch = cg_report_inch(report);
    if (crown_passes(c, e) || e->liner_top_max > CG_BORE_LIMIT)
        cg_report_say(report,
                      "Usual limits: %s for an aluminium crown, %s for the "
                      "bore, whose oil begins to fail there (Heywood 1988, "
                      "sec. 12.1).",
                      cg_show_temperature(CG_CROWN_LIMIT, inch).text,
                      cg_show_temperature(CG_BORE_LIMIT, inch).text);
    if (!isnan(e->boiling_time))
        cg_report_say(report,
                      "The coolant starts to boil at the bore wall at %.1f s "
                      "(%s). That cools the bore more at first and tightens "
                      "the gap; it is left out.",
                      e->boiling_time,
                      cg_show_temperature(e->boiling_point, inch).text);
}

/* What the figure hangs on that was not given. */
static void note_block(struct cg_report *report, const struct cg_answer *answer)
{
    struct cg_band need = cg_answer_block(answer);
    bool inch = cg_report_inch(report);
    double unit = inch ? CG_INCH : 1e-3;
    if (!isnan(need.low))
        cg_report_note(report,
                       "bore.block_thickness is not given: with %.2g to %.2g "
                       "%s of it the gap needed is %s to %s.",
                       CG_BLOCK_LEAST / unit, CG_BLOCK_MOST / unit,
                       inch ? "in" : "mm", cg_show_gap_up(need.low, inch).text,
                       cg_show_gap_up(need.high, inch).text);
}

void cg_report_find_notes(struct cg_report *report, const struct cg_case *c,
                          const struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    const struct cg_material *ring = &c->ring_material[CG_RING_TOP];
    const struct cg_material *alloy = &c->piston_material;
    bool inch = cg_report_inch(report);
    if (!answer->duty[0].limits.of[CG_PAST_KNOCK].past)
        note_knock(report, c, &answer->performance);
    cg_say_gap_place(report, c);
    note_block(report, answer);
    note_declared_knock(report, &c->duty);
    note_duty(report, c, answer);
    if (e->ring_top_max > ring->hot_limit)
        cg_report_note(
            report, "the top ring passes %s, where %s begins to lose tension.",
            cg_show_temperature(ring->hot_limit, inch).text, ring->name);
    if (e->groove_top_max > alloy->hot_limit)
        cg_report_note(
            report, "the top groove passes %s, where piston alloy %s softens.",
            cg_show_temperature(alloy->hot_limit, inch).text, alloy->name);
    note_surfaces(report, c, e);
    cg_report_past_notes(report, answer);
}
