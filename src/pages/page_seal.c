#include "page_seal.h"

#include <math.h>
#include <stdio.h>

#include "find_notes.h"
#include "page_second.h"
#include "page_values.h"
#include "ports_text.h"
#include "report_seal.h"
#include "show.h"

static void answer_part(struct cg_page *page, const struct cg_seal_study *study)
{
    const struct cg_answer *answer = &study->answer;
    const struct cg_seal_answer *at = &study->at_rated;
    double second = answer->second.cold_gap;
    cg_page_section(page, "Answer");
    if (answer->verdict.beyond)
        cg_page_verdict(
            page, false, "Top ring: %s",
            cg_find_beyond(&answer->verdict, &answer->top, false).text);
    else if (!answer->verdict.safe)
        cg_page_verdict(page, false,
                        "This top gap is TOO SMALL for the duty: it takes %s",
                        cg_show_gap_up(answer->verdict.need, false).text);
    cg_page_answer(page, "Blow-by, rated speed and full load:",
                   cg_show_leak(at->blow_by, false).text,
                   cg_show_leak(at->blow_by, true).text);
    cg_page_say(page, "That is %.2g %% of the charge.",
                at->blow_by_share * 100.0);
    if (answer->second_verdict.beyond) {
        cg_page_verdict(page, false, "Second ring: %s",
                        cg_find_beyond(&answer->second_verdict, &answer->second,
                                       false).text);
    } else {
        cg_page_answer(page, "Second ring, for this top gap: at least",
                       cg_show_length_up(second, false).text,
                       cg_show_length_up(second, true).text);
        cg_page_second(page, study->c, answer);
    }
    if (!study->whole)
        cg_page_note(page, "the second ring's gap is without the margin for "
                           "what is not known: that takes find.");
    if (!(at->hot_gap[0] > 0.0))
        cg_page_note(page, "settled at this load the top ring's ends touch; "
                           "its gap counts as shut.");
}

static void gaps_part(struct cg_page *page, const struct cg_seal_study *study)
{
    static const char *const cold[] = {"Top ring, cold", "Second ring, cold"};
    static const char *const hot[] = {"Top ring, hot", "Second ring, hot"};
    const struct cg_case *c = study->c;
    cg_page_section(page, "What was looked at");
    cg_page_values(page, "Engine and gaps");
    cg_page_plain(page, "Cylinders", "%d", c->engine.cylinders);
    cg_page_length(page, "Bore", c->engine.bore);
    cg_page_length(page, "Stroke", c->engine.stroke);
    cg_page_both(page, "Boost", cg_show_boost(c->charge.boost, false).text,
                 cg_show_boost(c->charge.boost, true).text);
    for (size_t k = 0; k < CG_PACK_RINGS; k++) {
        char name[64];
        snprintf(name, sizeof name, "%s (%s)", cold[k],
                 study->given[k]              ? "yours"
                 : k == 0 || !study->given[0] ? "the answer of find"
                                              : "computed for your top gap");
        (study->given[k] ? cg_page_length : cg_page_gap_up)(page, name,
                                                            study->gap[k]);
        cg_page_length(page, hot[k], study->at_rated.hot_gap[k]);
    }
    cg_page_both(page, "Gas ports",
                 cg_ports_text(c, (enum cg_port_kind)c->seal.ports, false).text,
                 cg_ports_text(c, (enum cg_port_kind)c->seal.ports, true).text);
    cg_page_values_end(page);
    cg_page_say(page,
                "Hot: settled at full load, at firing top centre. Duty: "
                "%s.",
                c->duty.name);
}

static void price_part(struct cg_page *page, const struct cg_seal_study *study)
{
    cg_page_section(page, "What a wider top gap costs");
    if (isnan(study->power_loss)) {
        cg_page_say(page, "With %s more top gap the rings do not settle.",
                    cg_show_gap(CG_SEAL_MORE_GAP, false).text);
    } else {
        cg_page_values(page, "At rated speed and full load");
        cg_page_length(page, "More top gap", CG_SEAL_MORE_GAP);
        cg_page_small_power(page, "Power lost", study->power_loss);
        cg_page_leak(page, "More blow-by", study->blow_by_more);
        cg_page_values_end(page);
    }
    cg_page_figure(page, "seal_gap", "What a top gap risks, and what it leaks",
                   "Against the cold gap, for each boost: the chance of less "
                   "than the residual falls from near 100 %% to none, and "
                   "blow-by rises; marks at the foot are the smallest safe "
                   "gaps.");
}

static void port_row(struct cg_page *page, const struct cg_seal_study *study,
                     enum cg_port_kind kind, const struct cg_seal_answer *at,
                     bool inch)
{
    struct cg_ports_text name = cg_ports_text(study->c, kind, inch);
    char lag[24] = "never", filled[24];
    const char *const none[] = {name.text, "does not settle", "-", "-", "-",
                                "-"};
    if (isnan(at->blow_by)) {
        cg_page_row(page, none, 6, NULL);
        return;
    }
    if (at->groove_lag_deg < 360.0)
        snprintf(lag, sizeof lag, "%.2f deg", at->groove_lag_deg);
    snprintf(filled, sizeof filled, "%.1f %%", at->groove_peak * 100.0);
    struct cg_text mean = cg_show_force(at->face_load, inch);
    struct cg_text least = cg_show_force(at->face_load_least, inch);
    struct cg_text blow_by = cg_show_leak(at->blow_by, inch);
    const char *const cells[] = {name.text, lag,        filled,
                                 mean.text, least.text, blow_by.text};
    cg_page_row(page, cells, 6, NULL);
}

static void ports_table(struct cg_page *page, const struct cg_seal_study *study,
                        bool inch)
{
    static const char *const heads[] = {"Ports", "lag",   "filled",
                                        "mean",  "least", "blow-by"};
    cg_page_table(page,
                  inch ? "Gas ports, rated speed, inch"
                       : "Gas ports, rated speed, metric",
                  heads, 6);
    port_row(page, study, (enum cg_port_kind)study->c->seal.ports,
             &study->at_rated, inch);
    port_row(page, study, study->other_ports, &study->at_other, inch);
    cg_page_table_end(page);
}

static void ports_part(struct cg_page *page, const struct cg_seal_study *study)
{
    cg_page_section(page, "Gas ports");
    ports_table(page, study, cg_page_inch(page));
    ports_table(page, study, !cg_page_inch(page));
    cg_page_say(page, "Lag: of the top groove behind the cylinder's "
                      "pressure; filled: at peak pressure. Mean and least: how "
                      "hard gas and tension press the top ring on the bore.");
    cg_page_figure(page, "seal_ports", "With gas ports and without",
                   "Above, cylinder less groove pressure over crank angle; "
                   "below, what passes into the crankcase: as fitted, and "
                   "with %s.",
                   cg_ports_text(study->c, study->other_ports, false).text);
}

static void proof_part(struct cg_page *page, const struct cg_seal_study *study)
{
    const struct cg_seal_answer *at = &study->at_rated;
    const struct cg_pack_settled *settled = &at->settled;
    cg_page_section(page, "What stands behind it");
    if (settled->period > 1)
        cg_page_say(page,
                    "The rings do not move alike in every cycle: all repeats "
                    "after %d, the figures are means.",
                    settled->period);
    /* Rounding noise below these would differ between machines. */
    cg_page_say(page,
                "Cycle follows cycle within %.0e; mass closes to %.0e of what "
                "goes in. The cylinder's pressure is not corrected for the gas "
                "in the ring pack, at most %.1f %% of what it holds.",
                fmax(settled->change, 1e-7),
                fmax(fabs(settled->cycle.residual), 1e-12),
                at->leaked_share * 100.0);
    cg_page_say(page, "%s", cg_seal_left_out());
}

void cg_page_seal(struct cg_page *page, const struct cg_seal_study *study)
{
    answer_part(page, study);
    gaps_part(page, study);
    cg_page_seal_rated(page, study);
    cg_page_seal_hardest(page, study);
    price_part(page, study);
    ports_part(page, study);
    proof_part(page, study);
}
