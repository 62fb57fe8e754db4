#include "page_rings.h"

#include <math.h>
#include <stdio.h>

#include "constants.h"
#include "page_values.h"
#include "report_rings.h"
#include "show.h"


enum { NAME = 128 };

static void ring_name(const struct cg_ring_choice *ring, char name[NAME])
{
    snprintf(name, NAME, "%s, %s%s", ring->material->name, ring->face->name,
             ring->own ? " (yours)" : "");
}

static void verdicts(struct cg_page *page, const struct cg_rings_answer *answer)
{
    char name[NAME], why[CG_REASON];
    const struct cg_ring_choice *first = &answer->ring[0];
    ring_name(first, name);
    cg_page_verdict(page, first->verdict != CG_RING_UNFIT,
                    "First of %zu: %s: %s", answer->rings, name,
                    cg_ring_verdict_text(first->verdict));
    for (size_t i = 1; i < answer->rings; i++) {
        const struct cg_ring_choice *ring = &answer->ring[i];
        if (!ring->own)
            continue;
        ring_name(ring, name);
        cg_ring_reason_both(ring, cg_page_inch(page), why);
        cg_page_say(page, "%s is number %zu: %s; %s.", name, i + 1,
                    cg_ring_verdict_text(ring->verdict), why);
    }
}

static void ring_row(struct cg_page *page, const struct cg_ring_choice *ring,
                     size_t place, double reached, bool inch)
{
    char name[NAME], left[16], stops[64], number[NAME + 24];
    bool never = ring->stops_fitting >= reached;
    ring_name(ring, name);
    snprintf(number, sizeof number, "%zu.\302\240%s", place, name);
    snprintf(left, sizeof left, "%.0f %%", ring->tension_left.low * 100.0);
    snprintf(stops, sizeof stops, "%s%s", never ? ">" : "",
             cg_show_boost(never ? reached : ring->stops_fitting, inch).text);
    struct cg_text gap = cg_show_length_up(ring->cold_gap, inch);
    struct cg_text heat = cg_show_temperature(ring->ring, inch);
    const char *const cells[] = {number,    cg_ring_verdict_text(ring->verdict),
                                 gap.text,  stops,
                                 heat.text, left};
    cg_page_row(page, cells, 6,
                ring->verdict == CG_RING_FITS    ? "good"
                : ring->verdict == CG_RING_UNFIT ? "bad"
                                                 : NULL);
}

static void rings_table(struct cg_page *page,
                        const struct cg_rings_answer *answer, bool inch)
{
    static const char *const heads[] = {"Top ring, face", "Verdict", "Cold gap",
                                        "Stops at",       "Ring",    "Left"};
    cg_page_table(page, inch ? "Ranked, inch" : "Ranked, metric", heads, 6);
    for (size_t i = 0; i < answer->rings; i++)
        ring_row(page, &answer->ring[i], i + 1, answer->reached, inch);
    cg_page_table_end(page);
}

static void answer_part(struct cg_page *page, const struct cg_case *c,
                        const struct cg_rings_answer *answer)
{
    cg_page_section(page, "Answer");
    verdicts(page, answer);
    rings_table(page, answer, cg_page_inch(page));
    rings_table(page, answer, !cg_page_inch(page));
    cg_page_say(page,
                "Stops at: the boost where it leaves \"fits\". Ring: its "
                "hottest mean. Left: tension after %g h at the duty's hottest "
                "(Larson-Miller).",
                c->ring[CG_RING_TOP].service / 3600.0);
    cg_page_figure(page, "rings", "Boost up to which each ring fits",
                   "A bar a ring, in the order of the table, from no boost to "
                   "where it stops fitting, hatched to where it is unfit; a "
                   "line at this engine's %s.",
                   cg_show_boost(c->charge.boost, false).text);
}

static void reasons_part(struct cg_page *page,
                         const struct cg_rings_answer *answer)
{
    char name[NAME], why[CG_REASON];
    cg_page_section(page, "Why, ring by ring");
    cg_page_say(page, "What stops it now, or first with more boost (next): "
                      "load of this engine, and the band in which it fails.");
    cg_page_list(page);
    for (size_t i = 0; i < answer->rings; i++) {
        ring_name(&answer->ring[i], name);
        cg_ring_reason_both(&answer->ring[i], cg_page_inch(page), why);
        cg_page_item(page, "%s: %s", name, why);
    }
    cg_page_list_end(page);
}

static void face_row(struct cg_page *page, const struct cg_ring_choice *ring)
{
    char name[NAME], kelvin[16], fahrenheit[16], from[2][112];
    const struct cg_band *hot = &ring->limit[CG_LIMIT_RING_HEAT];
    ring_name(ring, name);
    snprintf(kelvin, sizeof kelvin, "%+.1f", ring->coat_effect);
    snprintf(fahrenheit, sizeof fahrenheit, "%+.1f", ring->coat_effect * 1.8);
    for (int inch = 0; inch < 2; inch++)
        snprintf(from[inch], sizeof from[inch], "%s to %s",
                 cg_show_temperature(hot->low, inch).text,
                 cg_show_temperature(hot->high, inch).text);
    const char *const cells[] = {
        name,
        cg_face_hardness_class(cg_face_hardness(ring->face, ring->material)),
        kelvin,
        fahrenheit,
        from[0],
        from[1]};
    cg_page_row(page, cells, 6, NULL);
}

static void faces_part(struct cg_page *page,
                       const struct cg_rings_answer *answer)
{
    static const char *const heads[] = {"Top ring, face", "Hardness",
                                        "Coat adds, K",   "Coat adds, F",
                                        "Goes slack, C",  "Goes slack, F"};
    cg_page_section(page, "Faces");
    cg_page_table(page,
                  "Hardness class, what the coat adds to the ring's "
                  "temperature, and where the ring loses its tension",
                  heads, 6);
    for (size_t i = 0; i < answer->rings; i++)
        face_row(page, &answer->ring[i]);
    cg_page_table_end(page);
}

static void alloy_row(struct cg_page *page, const struct cg_alloy_choice *a)
{
    char name[64], trade[2][112] = {"-", "-"};
    struct cg_text cold[2], closure[2];
    snprintf(name, sizeof name, "%s%s", a->alloy->name,
             a->own ? " (yours)" : "");
    for (int inch = 0; inch < 2; inch++) {
        cold[inch] = cg_show_length_up(a->skirt.cold, inch);
        closure[inch] = cg_show_length(a->skirt.closure, inch);
        if (!isnan(a->skirt.trade.low))
            snprintf(trade[inch], sizeof trade[inch], "%s to %s",
                     cg_show_length(a->skirt.trade.low, inch).text,
                     cg_show_length(a->skirt.trade.high, inch).text);
    }
    const char *const cells[] = {name,           cold[0].text, cold[1].text,
                                 trade[0],       trade[1],     closure[0].text,
                                 closure[1].text};
    cg_page_row(page, cells, 7, NULL);
}

static void pistons_part(struct cg_page *page,
                         const struct cg_rings_answer *answer)
{
    static const char *const heads[] = {
        "Alloy",     "Asked, mm",   "Asked, in",  "Trade, mm",
        "Trade, in", "Closure, mm", "Closure, in"};
    cg_page_section(page, "Pistons");
    cg_page_table(page,
                  "Cold skirt clearance by the same margin, and what the "
                  "trade fits",
                  heads, 7);
    for (size_t i = 0; i < answer->alloys; i++)
        alloy_row(page, &answer->alloy[i]);
    cg_page_table_end(page);
    cg_page_say(page, "The trade's figures are common practice, no source; the "
                      "piston maker's wins.");
    cg_page_figure(page, "pistons", "Skirt clearance by piston alloy",
                   "For each alloy a bar of what this duty asks for, and the "
                   "band that the trade fits.");
}

static void engine_part(struct cg_page *page, const struct cg_case *c,
                        const struct cg_ring_choice *any)
{
    double rise = any->load[CG_LIMIT_RISE];
    char metric[32], inch[32];
    snprintf(metric, sizeof metric, "%.1f bar/deg", rise / 1e5);
    snprintf(inch, sizeof inch, "%.0f psi/deg", rise / CG_PSI);
    cg_page_section(page, "Engine and duty");
    cg_page_values(page, "What was asked, and the loads it makes");
    cg_page_plain(page, "Cylinders", "%d", c->engine.cylinders);
    cg_page_length(page, "Bore", c->engine.bore);
    cg_page_length(page, "Stroke", c->engine.stroke);
    cg_page_both(page, "Boost", cg_show_boost(c->charge.boost, false).text,
                 cg_show_boost(c->charge.boost, true).text);
    cg_page_both(
        page, "Peak pressure",
        cg_show_peak_pressure(any->load[CG_LIMIT_PRESSURE], false).text,
        cg_show_peak_pressure(any->load[CG_LIMIT_PRESSURE], true).text);
    cg_page_both(page, "Pressure rises by at most", metric, inch);
    cg_page_plain(page, "Duty", "%s", c->duty.name);
    cg_page_values_end(page);
    cg_page_say(page, "The rise is of the burn alone, without knock.");
    if (c->charge.charger == CG_CHARGER_NONE)
        cg_page_note(page, "this engine has no charger; higher boosts are "
                           "looked at as if it had a turbine.");
}

void cg_page_rings(struct cg_page *page, const struct cg_case *c,
                   const struct cg_rings_answer *answer)
{
    answer_part(page, c, answer);
    reasons_part(page, answer);
    faces_part(page, answer);
    pistons_part(page, answer);
    engine_part(page, c, &answer->ring[0]);
    cg_page_section(page, "What this leaves out");
    cg_page_say(page, "%s", cg_rings_left_out());
}
