#include "report_seal.h"

#include <math.h>
#include <stdio.h>

#include "cautions.h"
#include "constants.h"
#include "find_notes.h"
#include "ports_text.h"
#include "show.h"


static void print_gaps(const struct cg_seal_study *study, const char *config,
                       bool inch)
{
    static const char *const ring[] = {"top", "second"};
    const struct cg_case *c = study->c;
    printf("coldgap seal %s\n\n", config);
    printf("Engine   %d cylinders, %s x %s, boost %s, duty %s\n",
           c->engine.cylinders, cg_show_length(c->engine.bore, inch).text,
           cg_show_length(c->engine.stroke, inch).text,
           cg_show_boost(c->charge.boost, inch).text, c->duty.name);
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        printf("%s%-6s %s cold (%s), %s hot\n",
               k == 0 ? "Gaps     " : "         ", ring[k],
               cg_show_gap_of(study->gap[k], study->given[k], inch).text,
               study->given[k] ? "yours"
               : k == 0 || !study->given[0] ? "the answer of find"
                                            : "computed for your top gap",
               cg_show_length(study->at_rated.hot_gap[k], inch).text);
    printf("         (hot: settled at full load, at firing top centre); %s"
           "\n\n",
           cg_ports_text(c, (enum cg_port_kind)c->seal.ports, inch)
               .text);
}

void cg_seal_ring_text(const struct cg_pack_cycle *cycle, size_t k,
                       double peak_deg, char text[CG_SEAL_TEXT])
{
    int used;
    if (cycle->unseat_deg[k] <= peak_deg)
        used = snprintf(text, CG_SEAL_TEXT,
                        "is off its seat at peak pressure");
    else if (cycle->unseat_deg[k] >= 720.0)
        used = snprintf(text, CG_SEAL_TEXT, "stays on its lower flank");
    else
        used = snprintf(text, CG_SEAL_TEXT,
                        "leaves its lower flank %.0f deg after firing top "
                        "centre",
                        cycle->unseat_deg[k]);
    if (cycle->lifts[k] > 1)
        snprintf(text + used, (size_t)(CG_SEAL_TEXT - used),
                 "; lifts %d times a cycle", cycle->lifts[k]);
}

static void print_ring(const char *name, const struct cg_pack_cycle *cycle,
                       size_t k, double peak_deg)
{
    char text[CG_SEAL_TEXT];
    cg_seal_ring_text(cycle, k, peak_deg, text);
    printf("  %-20s %s\n", name, text);
    if (cycle->given_way_deg[k] > 0.5)
        printf("  %-20s gas pushes it off the bore for %.0f deg of a cycle\n",
               "", cycle->given_way_deg[k]);
}

static void print_blow_by(const struct cg_seal *seal,
                          const struct cg_seal_answer *at, bool inch)
{
    const struct cg_performance *p = &seal->performance;
    double volume = cg_show_draught(at->blow_by_volume, inch);
    const char *unit = cg_show_draught_unit(inch);
    printf("  blow-by              %s, %.3g %s, %.2g %% of the charge",
           cg_show_leak(at->blow_by, inch).text, volume, unit,
           at->blow_by_share * 100.0);
    if (p->brake_power > 0.0)
        printf(",\n  %-20s %.2g %s for each %s of %s; as in the crankcase",
               "", volume / (p->brake_power / (inch ? CG_HORSEPOWER : 1e3)),
               unit, inch ? "hp" : "kW", cg_show_power(p->brake_power, inch).text);
    printf("\n");
    print_ring("top ring", &at->settled.cycle, 0, seal->peak_deg);
    print_ring("second ring", &at->settled.cycle, 1, seal->peak_deg);
    printf("  between the rings    at most %s\n",
           cg_show_pressure(at->land_peak, inch).text);
}

static void print_friction(const struct cg_seal_study *study, bool inch)
{
    const struct cg_seal_friction *f = &study->friction;
    if (isnan(f->power[0])) {
        printf("  ring friction        the oil film does not repeat\n");
        return;
    }
    double unit = inch ? CG_HORSEPOWER : 1e3;
    printf("  ring friction        top %.2f, second %.2f %s, all cylinders; "
           "mixed %.0f and %.0f %%\n  %-20s of the time, metal takes %.0f and "
           "%.0f %% of it\n",
           f->power[0] / unit, f->power[1] / unit, inch ? "hp" : "kW",
           f->mixed[0] * 100.0, f->mixed[1] * 100.0, "",
           f->boundary[0] * 100.0, f->boundary[1] * 100.0);
}

static void print_rated(const struct cg_seal_study *study, bool inch)
{
    const struct cg_seal *seal = study->rated;
    const struct cg_seal_answer *at = &study->at_rated;
    printf("At rated speed and full load, settled (%.0f rpm, peak %s at %.0f "
           "deg)\n",
           seal->pack.speed * 60.0,
           cg_show_pressure(seal->performance.peak_pressure, inch).text,
           seal->peak_deg);
    print_blow_by(seal, at, inch);
    printf("  crevices             hold %.1f %% of the charge at peak "
           "pressure; %.1f %% comes back\n"
           "  %-20s before the exhaust opens, too late to burn\n",
           at->crevice_share * 100.0, at->crevice_late * 100.0, "");
    print_friction(study, inch);
    if (isnan(study->power_loss))
        printf("  with %s more top gap the rings do not settle\n\n",
               cg_show_length(CG_SEAL_MORE_GAP, inch).text);
    else
        printf("  %s more top gap costs %.2g %s and %s of blow-by\n\n",
               cg_show_length(CG_SEAL_MORE_GAP, inch).text,
               study->power_loss / (inch ? CG_HORSEPOWER : 1e3),
               inch ? "hp" : "kW",
               cg_show_leak(study->blow_by_more, inch).text);
}

static void print_ports_row(const struct cg_case *c, enum cg_port_kind kind,
                            const struct cg_seal_answer *at, bool inch)
{
    char lag[16] = "    never";
    if (isnan(at->blow_by)) {
        printf("  %-34s the rings do not settle\n",
               cg_ports_text(c, kind, inch).text);
        return;
    }
    if (at->groove_lag_deg < 360.0)
        snprintf(lag, sizeof lag, "%5.2f deg", at->groove_lag_deg);
    printf("  %-34s %s %5.1f %% %7s %7s %s\n",
           cg_ports_text(c, kind, inch).text, lag, at->groove_peak * 100.0,
           cg_show_force(at->face_load, inch).text,
           cg_show_force(at->face_load_least, inch).text,
           cg_show_leak(at->blow_by, inch).text);
}

static void print_ports(const struct cg_seal_study *study, bool inch)
{
    const struct cg_case *c = study->c;
    printf("Gas ports, rated speed (groove: behind the cylinder, filled at peak "
           "pressure;\n  ring on the bore by gas and tension, mean and least)\n"
           "  %-34s %9s %7s %7s %7s blow-by\n",
           "", "behind", "filled", "mean", "least");
    print_ports_row(c, (enum cg_port_kind)c->seal.ports, &study->at_rated,
                    inch);
    print_ports_row(c, study->other_ports, &study->at_other, inch);
    printf("\n");
}

static void print_hardest(const struct cg_seal_study *study, bool inch)
{
    if (study->hardest == NULL)
        return;
    printf("At %.0f rpm and full load, the lowest speed of the duty there\n",
           study->hardest->pack.speed * 60.0);
    if (isnan(study->at_hardest.blow_by)) {
        printf("  the rings do not settle to a motion that repeats\n\n");
        return;
    }
    print_blow_by(study->hardest, &study->at_hardest, inch);
    printf("\n");
}

static void print_proof(const struct cg_seal_study *study)
{
    const struct cg_seal_answer *at = &study->at_rated;
    const struct cg_pack_settled *settled = &at->settled;
    if (settled->period > 1)
        printf("The rings do not move alike in every cycle: all repeats after "
               "%d, the figures are means.\n",
               settled->period);
    /* Rounding noise below these would differ between machines. */
    printf("Cycle follows cycle within %.0e; mass closes to %.0e of what goes "
           "in.\n",
           fmax(settled->change, 1e-7),
           fmax(fabs(settled->cycle.residual), 1e-12));
    printf("The cylinder's pressure is not corrected for the gas in the ring "
           "pack, at most\n%.1f %% of what it holds.\n\n",
           at->leaked_share * 100.0);
}

static void print_second(const struct cg_seal_study *study, bool inch)
{
    const struct cg_answer *answer = &study->answer;
    const struct cg_second_gap *s = &answer->seating;
    if (answer->second_reason == CG_SECOND_RULE)
        return;
    if (answer->second_verdict.beyond) {
        printf("Second ring  %s\n\n",
               cg_find_beyond(&answer->second_verdict, &answer->second, inch)
                   .text);
        return;
    }
    printf("Second ring  %s at least, for this top gap\n             (",
           cg_show_gap_up(answer->second.cold_gap, inch).text);
    if (answer->second_reason == CG_SECOND_OWN)
        printf("its own growth%s", study->whole ? " and margin" : "");
    else if (answer->second_reason == CG_SECOND_SEATING)
        printf("less unseats the top ring too soon");
    else if (answer->second_reason == CG_SECOND_LIMITED)
        printf("the trade's rule: gas would have it wider yet");
    else
        printf("none up to %.1f top gaps is enough", CG_SECOND_MOST);
    printf(";\n             %s keeps the top ring seated to %.0f deg at %.0f rpm, "
           "%.0f asked for;\n             a second ring that lifts is not "
           "counted on)\n",
           answer->second_reason == CG_SECOND_LIMITED
               ? cg_show_length_up(s->gap, inch).text
               : "it",
           s->unseat_deg, s->speed * 60.0, study->c->seal.seated_to_deg);
    if (!study->whole)
        printf("             (without the margin for what is not known: that "
               "takes find)\n");
    printf("             The trade's rule, %.3g times a top gap of %s, gives\n"
           "             %s%s.\n\n",
           study->c->margin.second_factor,
           cg_show_length_up(answer->second_rule_top, inch).text,
           cg_show_gap_up(answer->second_rule, inch).text,
           answer->second.cold_gap < answer->second_rule * (1.0 - 1e-9)
               ? ":\n             until your own engine has shown better, file "
                 "to the larger"
               : "");
}

const char *cg_seal_left_out(void)
{
    return "Left out: chamfers at the gap's ends, bore distortion, ring "
           "twist, piston tilt,\noil in the grooves; valve guides and "
           "turbocharger, which a blow-by meter sees too:\nat high speed it "
           "reads several times this.";
}

void cg_report_seal(const struct cg_seal_study *study, const char *config,
                    bool inch, bool quiet, double seconds)
{
    const struct cg_verdict *verdict = &study->answer.verdict;
    if (!quiet) {
        print_gaps(study, config, inch);
        if (!(study->at_rated.hot_gap[0] > 0.0))
            printf("Note: settled at this load the top ring's ends touch; its "
                   "gap counts as shut.\n\n");
        print_rated(study, inch);
        print_ports(study, inch);
        print_hardest(study, inch);
        print_proof(study);
    }
    print_second(study, inch);
    if (verdict->beyond)
        printf("Top ring     %s\n\n",
               cg_find_beyond(verdict, &study->answer.top, inch).text);
    else if (!verdict->safe)
        printf("This top gap is TOO SMALL for the duty: it takes %s.\n\n",
               cg_show_gap_up(verdict->need, inch).text);
    printf("Blow-by  %s, %.2g %% of the charge\n\n",
           cg_show_leak(study->at_rated.blow_by, inch).text,
           study->at_rated.blow_by_share * 100.0);
    if (!quiet)
        printf("%s\n", cg_seal_left_out());
    cg_cautions_print(stdout);
    printf("\n");
    if (!quiet)
        printf("Computed in %.0f ms.\n", seconds * 1e3);
}
