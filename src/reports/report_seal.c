#include "report_seal.h"

#include <math.h>

#include "ports_text.h"
#include "report_file_to.h"
#include "report_second.h"
#include "say_common.h"
#include "seal_tables.h"
#include "show.h"

/* Without an allowance there is nothing to file to. */
static void tell_file_to(struct cg_report *report,
                         const struct cg_seal_study *study)
{
    const struct cg_answer *answer = &study->answer;
    if (study->whole) {
        cg_report_file_to(report, answer);
        return;
    }
    cg_report_note(report, "with both gaps given, no uncertainty allowance is "
                           "worked out for either ring: file to what find "
                           "says.");
}

static void tell_first(struct cg_report *report,
                       const struct cg_seal_study *study)
{
    const struct cg_answer *answer = &study->answer;
    const struct cg_verdict *verdict = &answer->verdict;
    const struct cg_seal_answer *at = &study->at_rated;
    bool inch = cg_report_inch(report);
    tell_file_to(report, study);
    if (!verdict->beyond && verdict->fits != CG_FITS)
        cg_report_verdict(
            report, false, "This top gap %s: the gap needed is %s, file to %s.",
            cg_say_fits(verdict->fits, answer->file_to_top.from),
            cg_show_gap_up(verdict->need, inch).text,
            cg_show_gap_up(answer->file_to_top.file_to, inch).text);
    cg_report_answer(report, "blow_by", "Blow-by",
                     cg_quantity(CG_SHOW_LEAK, at->blow_by));
    cg_report_remark(
        report,
        "%.2g %% of the charge, at rated speed and full load, with gaps of "
        "%s and %s",
        at->blow_by_share * 100.0,
        cg_show_gap_of(study->gap[0], study->given[0], inch).text,
        cg_show_gap_of(study->gap[1], study->given[1], inch).text);
    if (!(at->hot_gap[0] > 0.0))
        cg_report_note(report, "settled at this load the top ring's ends "
                               "touch; its gap counts as shut.");
}

static void tell_gap(struct cg_report *report,
                     const struct cg_seal_study *study, size_t k)
{
    static const char *const cold[] = {"Top ring, cold", "Second ring, cold"};
    static const char *const hot[] = {"Top ring, hot", "Second ring, hot"};
    static const char *const cold_key[] = {"cold_gap_top_fitted",
                                           "cold_gap_second_fitted"};
    static const char *const hot_key[] = {"hot_gap_top", "hot_gap_second"};
    bool given = study->given[k];
    cg_report_row(
        report, cold_key[k], cold[k],
        cg_quantity(given ? CG_SHOW_GAP : CG_SHOW_GAP_ASKED, study->gap[k]));
    cg_report_remark(report, given ? "yours"
                             : k == 0 || !study->given[0]
                                 ? "what find says to file to"
                                 : "worked out for your top "
                                   "gap");
    cg_report_row(report, hot_key[k], hot[k],
                  cg_quantity(CG_SHOW_GAP, study->at_rated.hot_gap[k]));
}

static void tell_gaps(struct cg_report *report,
                      const struct cg_seal_study *study)
{
    const struct cg_case *c = study->c;
    enum cg_port_kind ports = (enum cg_port_kind)c->seal.ports;
    cg_report_section(report, "What was looked at");
    cg_say_engine(report, c);
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        tell_gap(report, study, k);
    cg_report_words(report, "ports", "Gas ports", "%s",
                    cg_ports_text(c, ports, cg_report_inch(report)).text);
    cg_report_say(report, "Hot: settled at full load, at TDC firing.");
}

static void tell_price(struct cg_report *report,
                       const struct cg_seal_study *study)
{
    cg_report_section(report, "What a wider top gap costs");
    cg_report_row(report, "more_gap", "More top gap",
                  cg_quantity(CG_SHOW_GAP, CG_SEAL_MORE_GAP));
    if (isnan(study->power_loss)) {
        cg_report_remark(report, "with it the rings do not settle");
    } else {
        cg_report_row(report, "power_loss", "Power lost",
                      cg_quantity(CG_SHOW_SMALL_POWER, study->power_loss));
        cg_report_row(report, "blow_by_more", "More blow-by",
                      cg_quantity(CG_SHOW_LEAK, study->blow_by_more));
    }
    cg_report_figure(report, "seal_gap",
                     "What a top gap risks, and what it leaks",
                     "Against the cold gap, for each boost: the chance of less "
                     "than the minimum hot gap falls from near 100 %% to none, "
                     "and blow-by rises; marks at the foot are the gaps "
                     "to file to.");
}

static void tell_port(struct cg_report *report,
                      const struct cg_seal_study *study, enum cg_port_kind kind,
                      const struct cg_seal_answer *at)
{
    bool settles = !isnan(at->blow_by);
    cg_report_cell_words(
        report, "%s",
        cg_ports_text(study->c, kind, cg_report_inch(report)).text);
    if (settles && at->groove_lag_deg < 360.0)
        cg_report_cell(report, at->groove_lag_deg);
    else
        cg_report_cell_words(report, settles ? "never" : "not settled");
    cg_report_cell(report, settles ? at->groove_peak : NAN);
    cg_report_cell(report, settles ? at->face_load : NAN);
    cg_report_cell(report, settles ? at->face_load_least : NAN);
    cg_report_cell(report, at->blow_by);
}

static void tell_ports(struct cg_report *report,
                       const struct cg_seal_study *study)
{
    static const struct cg_report_column columns[] = {
        {"ports", "Ports", CG_SHOW_WORDS},
        {"groove_lag", "lag", CG_SHOW_SMALL_ANGLE},
        {"groove_peak", "filled", CG_SHOW_SHARE},
        {"face_load", "mean", CG_SHOW_FORCE},
        {"face_load_least", "least", CG_SHOW_FORCE},
        {"blow_by", "blow-by", CG_SHOW_LEAK}};
    cg_report_section(report, "Gas ports");
    cg_report_table(report, "ports",
                    "At rated speed. Lag: of the top groove behind the "
                    "cylinder's pressure; filled: at peak pressure. Mean and "
                    "least: how hard gas and tension press the top ring on the "
                    "bore.",
                    columns, sizeof columns / sizeof columns[0]);
    tell_port(report, study, (enum cg_port_kind)study->c->seal.ports,
              &study->at_rated);
    tell_port(report, study, study->other_ports, &study->at_other);
    cg_report_figure(
        report, "seal_ports", "With gas ports and without",
        "Above, cylinder less groove pressure over crank angle; "
        "below, what passes into the crankcase: as fitted, and "
        "with %s.",
        cg_ports_text(study->c, study->other_ports, cg_report_inch(report))
            .text);
}

static void tell_proof(struct cg_report *report,
                       const struct cg_seal_study *study)
{
    const struct cg_seal_answer *at = &study->at_rated;
    const struct cg_pack_settled *settled = &at->settled;
    cg_report_section(report, "What stands behind it");
    if (settled->period > 1)
        cg_report_say(report,
                      "The rings do not move alike in every cycle: all repeats "
                      "after %d, the figures are means.",
                      settled->period);
    /* Rounding noise below these would differ between machines. */
    cg_report_say(report,
                  "Cycle follows cycle within %.0e; mass closes to %.0e of "
                  "what goes in.",
                  fmax(settled->change, 1e-7),
                  fmax(fabs(settled->cycle.residual), 1e-12));
    cg_report_say(report,
                  "The cylinder's pressure is not corrected for the gas in the "
                  "ring pack, at most %.1f %% of what it holds.",
                  at->leaked_share * 100.0);
}

void cg_report_seal(struct cg_report *report, const struct cg_seal_study *study)
{
    struct cg_key_values keys = cg_seal_keys(study);
    tell_first(report, study);
    cg_report_first_part_ends(report);
    cg_report_section(report, "Second ring");
    cg_report_second(report, study->c, &study->answer);
    tell_gaps(report, study);
    cg_report_seal_rated(report, study);
    cg_report_seal_hardest(report, study);
    tell_price(report, study);
    tell_ports(report, study);
    tell_proof(report, study);
    cg_report_section(report, "What this leaves out");
    cg_report_say(report,
                  "Chamfers at the gap's ends, bore distortion, ring twist, "
                  "piston tilt, oil in the grooves. A blow-by meter sees valve "
                  "guides and turbocharger too: at high speed it reads several "
                  "times this.");
    cg_report_keys(report, &keys);
}
