#include "page_find.h"

#include <math.h>
#include <stdio.h>

#include "find_notes.h"
#include "page_second.h"
#include "page_values.h"
#include "show.h"

static void say_verdict(struct cg_page *page, const char *ring,
                        const struct cg_verdict *v)
{
    char less[16], touch[16];
    if (!v->given)
        return;
    cg_page_verdict(page, v->safe, "Your %s gap of %s: %s; it takes %s", ring,
                    cg_show_gap(v->gap, false).text,
                    v->safe ? "safe for this duty" : "TOO SMALL for this duty",
                    cg_show_gap_up(v->need, false).text);
    cg_page_say(page,
                "Smallest hot gap %s; chance of less than the residual %s, of "
                "touching %s.",
                cg_show_gap(v->hot_gap_min, false).text,
                cg_find_chance(v->chance_less, less),
                cg_find_chance(v->chance_touch, touch));
    if (v->touches)
        cg_page_say(page,
                    "The ends touch: hoop stress %s (%s) in the ring, %s (%s) "
                    "more on the bore, %.0f times the ring's own tension: "
                    "scuffing or a broken ring (rigid bore: upper bound).",
                    cg_show_stress(v->butting.hoop_stress, false).text,
                    cg_show_stress(v->butting.hoop_stress, true).text,
                    cg_show_wall_pressure(v->butting.wall_pressure, false).text,
                    cg_show_wall_pressure(v->butting.wall_pressure, true).text,
                    v->butting.times_tension);
}

/* A second gap that stays open may still be too small for the gas. */
static void note_second(struct cg_page *page, const struct cg_answer *answer)
{
    const struct cg_verdict *v = &answer->second_verdict;
    if (v->given && answer->second_reason == CG_SECOND_SEATING &&
        v->gap < answer->second.cold_gap * (1.0 - 1e-9))
        cg_page_note(page,
                     "with your second gap of %s gas between the rings lifts "
                     "the top ring sooner than asked for (seal shows when).",
                     cg_show_gap(v->gap, false).text);
}

static void say_gap(struct cg_page *page, const char *ring,
                    const struct cg_verdict *verdict,
                    const struct cg_gap_sum *sum)
{
    if (verdict->beyond) {
        cg_page_verdict(page, false, "%s: %s", ring,
                        cg_find_beyond(verdict, sum, false).text);
    } else {
        char name[64];
        snprintf(name, sizeof name, "%s: file to at least", ring);
        cg_page_answer(page, name, cg_show_length_up(sum->cold_gap, false).text,
                       cg_show_length_up(sum->cold_gap, true).text);
    }
}

static void answer_part(struct cg_page *page, const struct cg_case *c,
                        const struct cg_answer *answer)
{
    double top = answer->top.cold_gap;
    cg_page_section(page, "Answer");
    say_gap(page, "Top ring", &answer->verdict, &answer->top);
    say_gap(page, "Second ring", &answer->second_verdict, &answer->second);
    if (!answer->second_verdict.beyond)
        cg_page_second(page, c, answer);
    say_verdict(page, "top", &answer->verdict);
    say_verdict(page, "second", &answer->second_verdict);
    note_second(page, answer);
    if (top < answer->shop_rule)
        cg_page_note(page,
                     "the answer is below the shop rule for this bore and "
                     "boost, %s (common practice, no source). Until your own "
                     "engine has shown better, file to the larger.",
                     cg_show_gap_up(answer->shop_rule, false).text);
}

static void notes_part(struct cg_page *page, const struct cg_case *c,
                       const struct cg_answer *answer)
{
    struct cg_find_notes notes;
    cg_find_notes_fill(c, answer, cg_page_inch(page), &notes);
    for (size_t i = 0; i < notes.count; i++)
        cg_page_note(page, "%s", notes.text[i]);
}

static void engine_part(struct cg_page *page, const struct cg_case *c,
                        const struct cg_answer *answer)
{
    bool let_in =
        c->bore.seat == CG_SEAT_CAST_IN || c->bore.seat == CG_SEAT_PRESSED;
    bool faced = c->ring_face[0].thickness > 0.0;
    cg_page_section(page, "Engine and duty");
    cg_page_values(page, "What was asked");
    cg_page_plain(page, "Cylinders", "%d", c->engine.cylinders);
    cg_page_length(page, "Bore", c->engine.bore);
    cg_page_length(page, "Stroke", c->engine.stroke);
    cg_page_plain(page, "Compression ratio", "%.4g",
                  c->engine.compression_ratio);
    cg_page_plain(page, "Speed", "%.0f rpm", c->engine.speed * 60.0);
    cg_page_both(page, "Boost", cg_show_boost(c->charge.boost, false).text,
                 cg_show_boost(c->charge.boost, true).text);
    cg_page_plain(page, "Fuel", "%s, lambda %.3g", c->fuel.name,
                  c->fuel.lambda);
    cg_page_plain(page, "Top ring", "%s%s%s", c->ring[0].material,
                  faced ? ", " : "", faced ? c->ring_face[0].name : "");
    cg_page_plain(page, "Piston", "%s%s", c->piston.alloy,
                  c->piston.oil_jet ? " with oil jet" : "");
    cg_page_plain(page, "Bore", "%s%s%s (%s)", c->bore.material,
                  let_in ? " in " : "", let_in ? c->bore.block_material : "",
                  cg_find_seat_text(c->bore.seat));
    cg_page_plain(page, "Duty", "%s, %.4g s, starting %s", c->duty.name,
                  answer->duration, cg_find_start_text(c->duty.start));
    cg_page_values_end(page);
}

static void sum_part(struct cg_page *page, const struct cg_case *c,
                     const struct cg_answer *answer)
{
    const struct cg_gap_sum *sum = &answer->top;
    const double part[] = {sum->closure, sum->spread, sum->residual};
    bool sampled = answer->confidence.samples > 0 &&
                   sum->spread == answer->confidence.sampled.spread;
    char spread[64];
    if (sampled)
        snprintf(spread, sizeof spread, "Spread, sampled, for a risk of %g",
                 c->margin.risk);
    else
        snprintf(spread, sizeof spread, "Spread, %.2f sigma, for a risk of %g",
                 answer->quantile, c->margin.risk);
    cg_page_section(page, "What the gap is made of");
    cg_page_values(page, "Top ring, cold gap and its parts");
    cg_page_length(page, "Closure, nominal", sum->closure);
    cg_page_length(page, spread, sum->spread);
    cg_page_length(page, "Residual hot gap", sum->residual);
    cg_page_both(page, "Rounding up",
                 cg_show_rest_length(sum->cold_gap, part, 3, false).text,
                 cg_show_rest_length(sum->cold_gap, part, 3, true).text);
    cg_page_gap_up(page, "Cold gap, top ring", sum->cold_gap);
    cg_page_gap_up(page, "Shop rule (common practice, no source)",
                   answer->shop_rule);
    cg_page_values_end(page);
    if (!sampled)
        cg_page_say(page,
                    "The spread is of first order; drawn all at once, the "
                    "inputs ask for up to %s more on the shipped engines: "
                    "--samples tells.",
                    cg_show_gap(CG_FIRST_ORDER_SHORT, false).text);
}

/* A duty is only as hard as it is long, and none is as hard as all. */
static void say_other_duties(struct cg_page *page,
                             const struct cg_answer *answer)
{
    cg_page_say(page,
                "Other duties: the gap may close further in a harder one. Held "
                "at rated full load until settled it closes by %s "
                "(--set duty.name=settled tells its gap); hard driving before "
                "the engine is warm closes most "
                "(--set duty.name=cold_start_abuse).",
                cg_show_gap(answer->settled_closure, false).text);
}

static void why_part(struct cg_page *page, const struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    const struct cg_verdict *v = &answer->verdict;
    cg_page_section(page, "Why the gap closes");
    cg_page_figure(
        page, "why", "Growth of ring and bore over the duty",
        "Two curves over %.4g s. At the tightest instant, %.2f s, "
        "the ring has grown %s of arc and the bore has given back "
        "%s; what lies between is the closure, %s of a cold gap of "
        "%s.",
        answer->duration, e->time, cg_show_gap(e->ring_growth, false).text,
        cg_show_gap(e->bore_growth, false).text,
        cg_show_gap(e->closure, false).text,
        cg_show_gap_of(v->gap, v->given, false).text);
    cg_page_values(page, "The tightest instant");
    cg_page_plain(page, "When", "%.2f s, %.0f rpm, load %.2f", e->time,
                  e->speed * 60.0, e->load);
    cg_page_length(page, "Depth below the deck", e->depth);
    cg_page_temperature(page, "Ring", e->ring_at);
    cg_page_length(page, "Ring grows, of arc", e->ring_growth);
    cg_page_temperature(page, "Bore there", e->bore_at);
    cg_page_length(page, "Bore gives back, of arc", e->bore_growth);
    cg_page_length(page, "Smallest hot gap", v->hot_gap_min);
    cg_page_values_end(page);
    cg_page_figure(page, "hot_gap", "Gap left while hot, over the duty",
                   "A curve that falls from the gap at the start to its "
                   "least, %s, and a level line at the %s that must remain.",
                   cg_show_gap(v->hot_gap_min, false).text,
                   cg_show_gap(answer->top.residual, false).text);
    cg_page_figure(page, "stroke", "Hot gap along the bore",
                   "Curves of the gap against depth below the deck at five "
                   "instants; the tightest place is %s down, at %.2f s.",
                   cg_show_length(e->depth, false).text, e->time);
    say_other_duties(page, answer);
}

void cg_page_find(struct cg_page *page, const struct cg_updated_case *updated,
                  const struct cg_answer *answer,
                  const struct cg_answer *without)
{
    const struct cg_case *c = &updated->c;
    answer_part(page, c, answer);
    notes_part(page, c, answer);
    sum_part(page, c, answer);
    why_part(page, answer);
    cg_page_heat(page, c, answer);
    cg_page_evidence(page, updated, answer, without);
    cg_page_spread(page, updated, answer);
    cg_page_piston(page, c, answer);
    engine_part(page, c, answer);
    cg_page_section(page, "What this leaves out");
    cg_page_say(page, "%s", cg_find_left_out());
}
