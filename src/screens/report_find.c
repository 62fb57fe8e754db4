#include "report_find.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cautions.h"
#include "confidence.h"
#include "constants.h"
#include "find_notes.h"
#include "input_law.h"
#include "network.h"
#include "report_confidence.h"
#include "report_evidence.h"
#include "report_film.h"
#include "show.h"

static void print_engine(const struct cg_case *c, const char *config, bool inch)
{
    printf("coldgap find %s\n\n", config);
    printf("Engine   %d cylinders, %s x %s, ratio %.4g, %.0f rpm\n"
           "Charge   boost %s, %s, lambda %.3g\n",
           c->engine.cylinders, cg_show_length(c->engine.bore, inch).text,
           cg_show_length(c->engine.stroke, inch).text,
           c->engine.compression_ratio, c->engine.speed * 60.0,
           cg_show_boost(c->charge.boost, inch).text, c->fuel.name,
           c->fuel.lambda);
    const struct cg_face *face = &c->ring_face[CG_RING_TOP];
    printf("Parts    top ring %s%s%s, piston %s%s,\n         bore %s",
           c->ring[0].material, face->thickness > 0.0 ? ", " : "",
           face->thickness > 0.0 ? face->name : "", c->piston.alloy,
           c->piston.oil_jet ? " with oil jet" : "", c->bore.material);
    if (c->bore.seat == CG_SEAT_CAST_IN || c->bore.seat == CG_SEAT_PRESSED)
        printf(" in %s", c->bore.block_material);
    printf(" (%s)\n", cg_find_seat_text(c->bore.seat));
}

/* The answer alone still says what it is the answer for. */
static void print_for(const struct cg_case *c, bool inch)
{
    printf("For      bore %s, boost %s, %s, lambda %.3g, duty %s\n",
           cg_show_length(c->engine.bore, inch).text,
           cg_show_boost(c->charge.boost, inch).text, c->fuel.name,
           c->fuel.lambda, c->duty.name);
}

static void print_full_load(const struct cg_case *c,
                            const struct cg_answer *answer, bool inch)
{
    const struct cg_performance *p = &answer->performance;
    printf("Duty     %s, %.4g s, starting %s\n\n", c->duty.name,
           answer->duration, cg_find_start_text(c->duty.start));
    printf("At rated speed and full load (%s, factor %.3g)\n",
           c->combustion.heat_transfer, c->combustion.heat_factor);
    printf("  indicated %s, brake %s, air %s, fuel %s\n",
           cg_show_pressure(p->imep, inch).text,
           cg_show_power(p->brake_power, inch).text,
           cg_show_flow(p->air_flow, inch).text,
           cg_show_flow(p->fuel_flow, inch).text);
    printf("  peak pressure %s, gas leaves the valve at %s\n"
           "  crown flux %.2f %s mean, %.1f peak\n",
           cg_show_peak_pressure(p->peak_pressure, inch).text,
           cg_show_temperature(p->exhaust_temperature, inch).text,
           cg_show_flux(p->mean_flux, inch), cg_show_flux_unit(inch),
           cg_show_flux(p->peak_flux, inch));
    printf("  heat to the walls %.1f %% of the fuel's; cycle energy closes to "
           "%.0e\n",
           p->wall_heat_share * 100.0, fabs(p->energy_residual));
    cg_report_film(c, answer, inch);
    printf("\n");
}

static void print_temperatures(const struct cg_answer *answer, bool inch)
{
    const struct cg_extremes *e = &answer->extremes;
    printf("Hottest in the duty\n");
    printf("  crown %s, top groove %s, top ring %s, second ring %s,\n"
           "  bore where the top ring turns %s\n",
           cg_show_temperature(e->crown_max, inch).text,
           cg_show_temperature(e->groove_top_max, inch).text,
           cg_show_temperature(e->ring_top_max, inch).text,
           cg_show_temperature(e->ring_second_max, inch).text,
           cg_show_temperature(e->liner_top_max, inch).text);
    printf("  heat into one cylinder's metal, %s:\n   ",
           cg_show_heat_unit(inch));
    for (int side = 0; side < CG_SIDES; side++)
        if (answer->ledger.in[side] != 0.0)
            printf(" %s %+.1f,", cg_side_text((enum cg_side)side),
                   cg_show_heat(answer->ledger.in[side], inch));
    printf(" stored %+.1f\n", cg_show_heat(answer->ledger.stored, inch));
    /* Rounding noise below 1e-12 would differ between machines. */
    printf("  energy in minus out minus stored: within %.0e of the turnover"
           "\n\n",
           fmax(fabs(answer->ledger.residual), 1e-12));
}

/* The parts as shown add up to the gap as shown: what their own rounding for
 * the screen takes or adds goes to the last part. */
static void print_sum(const struct cg_answer *answer, double risk, bool inch)
{
    const struct cg_gap_sum *sum = &answer->top;
    const double part[] = {sum->closure, sum->spread, sum->residual};
    const struct cg_confidence *by = &answer->confidence;
    printf("  closure, nominal        %s\n",
           cg_show_gap(sum->closure, inch).text);
    if (by->samples > 0 && sum->spread == by->sampled.spread)
        printf("  spread, sampled         ");
    else
        printf("  spread, %.2f sigma      ", answer->quantile);
    printf("%s, for a risk of %g\n", cg_show_gap(sum->spread, inch).text, risk);
    printf("  residual hot gap        %s\n",
           cg_show_gap(sum->residual, inch).text);
    printf("  rounding up             %s\n",
           cg_show_rest(sum->cold_gap, part, 3, inch).text);
    printf("  cold gap, top ring      %s\n",
           cg_show_gap_up(sum->cold_gap, inch).text);
    if (by->samples == 0)
        printf("  (first order; drawn all at once, the inputs ask for up to "
               "%s more on the\n  shipped engines: --samples %.0f tells)\n",
               cg_show_length(CG_FIRST_ORDER_SHORT, inch).text,
               fmin(fmax(CG_CONFIDENCE_BEYOND / risk, 1e3), 1e5));
    printf("\n");
}

/* The spread between published correlations is part of not knowing. */
static void print_correlations(const struct cg_answer *answer, bool inch)
{
    printf("Nominal closure by gas-side correlation\n");
    for (size_t i = 0; i < answer->correlations; i++) {
        const struct cg_correlation_answer *a = &answer->correlation[i];
        printf("  %-24s", a->name);
        if (isnan(a->closure))
            printf("could not be computed\n");
        else
            printf("%s\n", cg_show_gap(a->closure, inch).text);
    }
}

/* coldgap knows the block, the ring and the duty; the rule knows none, but
 * has broken rings behind it. */
static void print_shop_rule(const struct cg_answer *answer, bool inch)
{
    printf("Shop rule for this bore and boost: %s (common practice, no "
           "source)\n",
           cg_show_gap_up(answer->shop_rule, inch).text);
}

static void print_tightest(const struct cg_taught *taught,
                           const struct cg_answer *answer, bool inch)
{
    const struct cg_extremes *e = &answer->extremes;
    printf("Tightest at %.2f s (%.0f rpm, load %.2f), %s below the deck\n",
           e->time, e->speed * 60.0, e->load,
           cg_show_length(e->depth, inch).text);
    printf("  ring at %s grows %s of arc\n",
           cg_show_temperature(e->ring_at, inch).text,
           cg_show_gap(e->ring_growth, inch).text);
    printf("  bore at %s gives back %s\n",
           cg_show_temperature(e->bore_at, inch).text,
           cg_show_gap(e->bore_growth, inch).text);
    printf("\n");
    printf("What moves it most (closure for one standard deviation)\n");
    for (size_t i = 0; i < 3 && i < answer->contributions; i++)
        printf("  %-24s%s, %.0f %% of the variance\n",
               answer->contribution[i].doc,
               cg_show_gap(answer->contribution[i].shift, inch).text,
               answer->contribution[i].share * 100.0);
    if (cg_inputs_correlated(&taught->c))
        printf("  (inputs are correlated: a share counts what an input has in "
               "common with others)\n");
    print_correlations(answer, inch);
    if (taught->learned.entries > 0)
        printf("  (the evidence was fitted with %s; the others take over what "
               "it taught)\n",
               taught->c.combustion.heat_transfer);
    print_shop_rule(answer, inch);
    printf("\n");
}

/* The piston's own clearances, by the same margin. */
static void print_piston(const struct cg_case *c,
                         const struct cg_answer *answer, bool inch)
{
    const struct cg_skirt_answer *skirt = &answer->skirt;
    const struct cg_clearance *least = &answer->extremes.clearance;
    printf("Piston, cold skirt clearance by this model %s\n",
           cg_show_gap_up(skirt->cold, inch).text);
    printf("  closure %s + spread %s - spring %s, rounded up\n",
           cg_show_length(skirt->closure, inch).text,
           cg_show_length(skirt->spread, inch).text,
           cg_show_length(skirt->give, inch).text);
    if (!isnan(skirt->trade.low))
        printf("  the trade fits %s with %s to %s (common practice, no "
               "source)\n",
               c->piston.alloy, cg_show_length(skirt->trade.low, inch).text,
               cg_show_length(skirt->trade.high, inch).text);
    printf("  it errs to the wide side (ovality and pin bosses left out): the "
           "piston maker's\n  figure wins, larger or smaller; do not hone for "
           "this one\n");
    printf("  %s %s: %s",
           skirt->taken ? "taken for this alloy," : "yours",
           cg_show_length(skirt->given, inch).text,
           skirt->enough ? "enough" : "less");
    if (skirt->pressure > 0.0)
        printf(";\n  hot, nominally, it springs by %s (%s)\n",
               cg_show_length(-least->skirt, inch).text,
               cg_show_boost(skirt->pressure, inch).text);
    else
        printf(";\n  hot, nominally, %s stay open\n",
               cg_show_length(least->skirt, inch).text);
    if (skirt->too_tight && skirt->taken)
        printf("  TOO TIGHT: that is past margin.skirt_pressure, %s\n",
               cg_show_boost(c->margin.skirt_pressure, inch).text);
    printf("  smallest hot: top land %s (diametral), top groove side %s, back "
           "%s\n\n",
           cg_show_length(least->land[CG_RING_TOP], inch).text,
           cg_show_length(least->side[CG_RING_TOP], inch).text,
           cg_show_length(least->back[CG_RING_TOP], inch).text);
}

/* A duty is only as hard as it is long, and none is as hard as all. */
static void print_duty_notes(const struct cg_case *c,
                             const struct cg_answer *answer, bool inch)
{
    bool settled = strcmp(c->duty.name, "settled") == 0;
    bool abuse = strcmp(c->duty.name, "cold_start_abuse") == 0;
    printf("Other duties:%s\n",
           settled || abuse ? ""
                            : " the gap may close further in a harder one.");
    if (!settled)
        printf("  held at rated full load until settled it closes by %s:\n"
               "  --set duty.name=settled tells its gap\n",
               cg_show_gap(answer->settled_closure, inch).text);
    if (!abuse)
        printf("  hard driving before the engine is warm closes most:\n"
               "  --set duty.name=cold_start_abuse tells its gap\n");
}

/* A text of several lines, each as far in as the first begins. */
static void print_beside(const char *head, const char *text)
{
    printf("%s", head);
    for (; *text != '\0'; text++) {
        putchar(*text);
        if (*text == '\n')
            printf("%*s", (int)strlen(head), "");
    }
    printf("\n");
}

static void print_notes(const struct cg_case *c, const struct cg_answer *answer,
                        bool inch)
{
    struct cg_find_notes notes;
    cg_find_notes_fill(c, answer, inch, &notes);
    for (size_t i = 0; i < notes.count; i++)
        print_beside("Note: ", notes.text[i]);
    printf("\n");
}

static void print_verdict(const char *ring, const struct cg_verdict *v,
                          bool inch)
{
    char less[16], touch[16];
    if (!v->given)
        return;
    printf("Your %s gap of %s: %s; it takes %s\n", ring,
           cg_show_gap(v->gap, inch).text,
           v->safe ? "safe for this duty" : "TOO SMALL for this duty",
           cg_show_gap_up(v->need, inch).text);
    printf("  smallest hot gap %s; chance of less than the residual %s,\n"
           "  of touching %s\n",
           cg_show_gap(v->hot_gap_min, inch).text,
           cg_find_chance(v->chance_less, less),
           cg_find_chance(v->chance_touch, touch));
    if (v->touches)
        printf("  the ends touch: hoop stress %s in the ring, %s "
               "more on the bore,\n  %.0f times the ring's own tension - "
               "scuffing or a broken ring (rigid bore: upper bound)\n",
               cg_show_stress(v->butting.hoop_stress, inch).text,
               cg_show_wall_pressure(v->butting.wall_pressure, inch).text,
               v->butting.times_tension);
    printf("\n");
}

/* A skirt clearance given, and too small: the run ends with status 1. */
static void print_skirt_verdict(const struct cg_case *c,
                                const struct cg_skirt_answer *skirt, bool inch)
{
    if (!skirt->too_tight || skirt->taken)
        return;
    printf("Your skirt clearance of %s: TOO TIGHT for this duty\n"
           "  nominally the skirt bears on the bore with %s, past "
           "margin.skirt_pressure, %s\n\n",
           cg_show_gap(skirt->given, inch).text,
           cg_show_boost(skirt->pressure, inch).text,
           cg_show_boost(c->margin.skirt_pressure, inch).text);
}

static void print_second_reason(const struct cg_case *c,
                                const struct cg_answer *answer, bool inch)
{
    const struct cg_second_gap *s = &answer->seating;
    double rpm = s->speed * 60.0, wanted = c->seal.seated_to_deg;
    switch (answer->second_reason) {
    case CG_SECOND_OWN:
        printf("             (its own growth and margin; with it the top ring "
               "stays seated to\n             %.0f deg at full load and %.0f "
               "rpm, %.0f are asked for)\n",
               s->unseat_deg, rpm, wanted);
        break;
    case CG_SECOND_SEATING:
        printf(
            "             (its own growth asks for less, but only this keeps "
            "the top ring\n             seated to %.0f deg at full load "
            "and %.0f rpm)\n",
            wanted, rpm);
        break;
    case CG_SECOND_BEST:
        printf("             (no gap up to %.1f times the top one keeps the "
               "top ring seated to\n             %.0f deg at full load and "
               "%.0f rpm; this one does to %.0f)\n",
               CG_SECOND_MOST, wanted, rpm, s->unseat_deg);
        break;
    case CG_SECOND_LIMITED:
        printf("             (the gas model would have %s, to keep the top "
               "ring\n             seated to %.0f deg at full load and %.0f "
               "rpm; it is no safety figure, and\n             no more than "
               "the trade's rule is asked: metal does not come back)\n",
               cg_show_gap_up(s->gap, inch).text, wanted, rpm);
        break;
    case CG_SECOND_RULE:
        printf("             (the gas between the rings could not be "
               "computed: a rule of the trade)\n");
        break;
    }
}

/* A second gap that stays open may still be too small for the gas. */
static void print_second_note(const struct cg_answer *answer, bool inch)
{
    const struct cg_verdict *v = &answer->second_verdict;
    if (!v->given || answer->second_reason != CG_SECOND_SEATING ||
        v->gap >= answer->second.cold_gap * (1.0 - 1e-9))
        return;
    printf("Note: with your second gap of %s gas between the rings lifts the "
           "top\n      ring sooner than asked for (seal shows when).\n\n",
           cg_show_gap(v->gap, inch).text);
}

/* What is asked is below a rule of the trade. */
static const char to_the_larger[] = "             until your own engine has "
                                    "shown better, file to the larger.\n";

static void print_top_gap(const struct cg_answer *answer, bool inch)
{
    double gap = answer->top.cold_gap, rule = answer->shop_rule;
    if (answer->verdict.beyond) {
        print_beside("Top ring     ", cg_find_beyond(&answer->verdict,
                                                     &answer->top, inch)
                                          .text);
        return;
    }
    printf("Top ring     file to at least %s\n",
           cg_show_gap_up(gap, inch).text);
    if (gap < rule * (1.0 - 1e-9))
        printf("             The shop rule gives %s:\n%s",
               cg_show_gap_up(rule, inch).text, to_the_larger);
}

static void print_second_gap(const struct cg_case *c,
                             const struct cg_answer *answer, bool inch)
{
    double gap = answer->second.cold_gap, rule = answer->second_rule;
    double top = cg_answer_top_gap(answer);
    if (answer->second_verdict.beyond) {
        print_beside("Second ring  ", cg_find_beyond(&answer->second_verdict,
                                                     &answer->second, inch)
                                          .text);
        printf("\n");
        return;
    }
    const char *below = gap < rule * (1.0 - 1e-9) ? ":" : ".";
    printf("Second ring  file to at least %s", cg_show_gap_up(gap, inch).text);
    if (top > answer->top.cold_gap * (1.0 + 1e-9))
        printf(", for your top gap");
    printf("\n");
    print_second_reason(c, answer, inch);
    if (answer->second_reason != CG_SECOND_RULE)
        printf(
            "             The trade's rule, %.3g times a top gap of %s, gives"
            "\n             %s%s\n",
            c->margin.second_factor,
            cg_show_length_up(answer->second_rule_top, inch).text,
            cg_show_gap_up(rule, inch).text, below);
    if (answer->second_reason != CG_SECOND_RULE && *below == ':')
        printf("%s", to_the_larger);
    printf("\n");
}

void cg_report_find(const struct cg_taught *taught, const char *config,
                    const struct cg_answer *answer,
                    const struct cg_answer *without, bool inch, bool quiet,
                    double seconds)
{
    const struct cg_case *c = &taught->c;
    if (quiet) {
        print_for(c, inch);
    } else {
        print_engine(c, config, inch);
        print_full_load(c, answer, inch);
        print_temperatures(answer, inch);
        cg_report_evidence(taught, answer, without, inch);
        printf("Smallest safe cold gap, top ring\n");
        print_sum(answer, c->margin.risk, inch);
        cg_report_confidence(c, answer, inch);
        print_tightest(taught, answer, inch);
        print_piston(c, answer, inch);
        print_duty_notes(c, answer, inch);
    }
    print_notes(c, answer, inch);
    print_verdict("top", &answer->verdict, inch);
    print_verdict("second", &answer->second_verdict, inch);
    print_second_note(answer, inch);
    print_skirt_verdict(c, &answer->skirt, inch);
    print_top_gap(answer, inch);
    print_second_gap(c, answer, inch);
    if (!quiet)
        printf("%s\n", cg_find_left_out());
    cg_cautions_print(stdout);
    printf("\n");
    if (!quiet)
        printf("Computed in %.0f ms.\n", seconds * 1e3);
}
