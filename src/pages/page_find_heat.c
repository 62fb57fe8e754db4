#include <math.h>
#include <stdio.h>

#include "confidence.h"
#include "constants.h"
#include "input_law.h"
#include "network.h"
#include "page_find.h"
#include "page_values.h"
#include "show.h"


static void temperatures(struct cg_page *page, const struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    cg_page_values(page, "Hottest in the duty");
    cg_page_temperature(page, "Crown", e->crown_max);
    cg_page_temperature(page, "Top groove", e->groove_top_max);
    cg_page_temperature(page, "Top ring", e->ring_top_max);
    cg_page_temperature(page, "Second ring", e->ring_second_max);
    cg_page_temperature(page, "Bore where the top ring turns", e->liner_top_max);
    cg_page_values_end(page);
    cg_page_figure(page, "temperatures", "Temperatures over the duty",
                   "Six curves over %.4g s, hottest first: crown to %.0f, top "
                   "groove to %.0f, bore where the top ring turns to %.0f, top ring to "
                   "%.0f, second ring to %.0f degrees C, and the low bore.",
                   answer->duration, e->crown_max - 273.15,
                   e->groove_top_max - 273.15, e->liner_top_max - 273.15,
                   e->ring_top_max - 273.15, e->ring_second_max - 273.15);
}

static void full_load(struct cg_page *page, const struct cg_case *c,
                      const struct cg_answer *answer)
{
    const struct cg_performance *p = &answer->performance;
    char caption[160];
    snprintf(caption, sizeof caption,
             "Rated speed, full load (%s, factor %.3g)",
             c->combustion.heat_transfer, c->combustion.heat_factor);
    cg_page_values(page, caption);
    cg_page_pressure(page, "Indicated mean pressure", p->imep);
    cg_page_pressure(page, "Peak pressure", p->peak_pressure);
    cg_page_power(page, "Brake power", p->brake_power);
    cg_page_flow(page, "Air", p->air_flow);
    cg_page_flow(page, "Fuel", p->fuel_flow);
    cg_page_temperature(page, "Gas at the exhaust valve",
                        p->exhaust_temperature);
    cg_page_plain(page, "Crown flux, mean and peak",
                  "%.2f and %.1f MW/m\302\262", p->mean_flux / 1e6,
                  p->peak_flux / 1e6);
    cg_page_plain(page, "Heat to the walls", "%.1f %% of the fuel's",
                  p->wall_heat_share * 100.0);
    cg_page_plain(page, "Oil film, top and second ring",
                  "%.1f and %.1f \302\265m", answer->film[CG_RING_TOP] * 1e6,
                  answer->film[CG_RING_SECOND] * 1e6);
    cg_page_values_end(page);
    cg_page_figure(page, "cycle", "Engine cycle at rated speed, full load",
                   "Pressure and gas-side coefficient over crank angle: both "
                   "peak just after firing top dead centre, the pressure at "
                   "%.0f bar.",
                   p->peak_pressure / 1e5);
    if (c->film_law == CG_FILM_REYNOLDS)
        cg_page_figure(page, "film", "Oil film and friction of the rings",
                       "Film of top and second ring over crank angle, least "
                       "%.2f and %.2f \302\265m near the dead centres, and "
                       "the top ring's friction.",
                       answer->film_mean[CG_RING_TOP].minimum * 1e6,
                       answer->film_mean[CG_RING_SECOND].minimum * 1e6);
}

static void ledger_row(struct cg_page *page, const char *name, double joule)
{
    char kj[32], btu[32];
    snprintf(kj, sizeof kj, "%+.1f", joule / 1e3);
    snprintf(btu, sizeof btu, "%+.1f", joule / CG_BTU);
    const char *const cells[] = {name, kj, btu};
    cg_page_row(page, cells, 3, NULL);
}

static void ledger(struct cg_page *page, const struct cg_answer *answer)
{
    static const char *const heads[] = {"From", "kJ", "Btu"};
    cg_page_table(page, "Heat into one cylinder's metal over the duty", heads,
                  3);
    for (int side = 0; side < CG_SIDES; side++)
        if (answer->ledger.in[side] != 0.0)
            ledger_row(page, cg_side_text((enum cg_side)side),
                       answer->ledger.in[side]);
    ledger_row(page, "stored in the metal", answer->ledger.stored);
    cg_page_table_end(page);
    /* Rounding noise below these would differ between machines. */
    cg_page_say(page,
                "Energy in minus out minus stored: within %.0e of the "
                "turnover.",
                fmax(fabs(answer->ledger.residual), 1e-12));
}

void cg_page_heat(struct cg_page *page, const struct cg_case *c,
                  const struct cg_answer *answer)
{
    cg_page_section(page, "Heat");
    temperatures(page, answer);
    full_load(page, c, answer);
    ledger(page, answer);
}

static void shares(struct cg_page *page, const struct cg_answer *answer)
{
    static const char *const heads[] = {"Input", "mm", "thou", "alone, %",
                                        "with others, %"};
    bool sampled = answer->confidence.samples > 0;
    cg_page_table(page,
                  "What moves the closure: by how much for one standard "
                  "deviation of the input, and its share of the variance",
                  heads, sampled ? 5 : 4);
    for (size_t i = 0; i < answer->contributions; i++) {
        const struct cg_contribution *at = &answer->contribution[i];
        char mm[32], thou[32], alone[32], with[32];
        snprintf(mm, sizeof mm, "%.3f", at->shift * 1e3);
        snprintf(thou, sizeof thou, "%.2f", at->shift / CG_THOU);
        snprintf(alone, sizeof alone, "%.0f", at->share * 100.0);
        snprintf(with, sizeof with, "%.0f", at->total_effect * 100.0);
        const char *const cells[] = {at->doc, mm, thou, alone, with};
        cg_page_row(page, cells, sampled ? 5 : 4, NULL);
    }
    cg_page_table_end(page);
    if (answer->contributions > 0)
        cg_page_figure(page, "shares", "What the spread is made of",
                       "Bars of each input's share of the variance, largest "
                       "first: %s with %.0f %%.",
                       answer->contribution[0].doc,
                       answer->contribution[0].share * 100.0);
}

static void correlations(struct cg_page *page, const struct cg_answer *answer)
{
    cg_page_values(page, "Nominal closure by gas-side correlation");
    for (size_t i = 0; i < answer->correlations; i++) {
        const struct cg_correlation_answer *at = &answer->correlation[i];
        if (isnan(at->closure))
            cg_page_plain(page, at->name, "could not be computed");
        else
            cg_page_length(page, at->name, at->closure);
    }
    cg_page_values_end(page);
}

static void samples(struct cg_page *page, const struct cg_case *c,
                    const struct cg_answer *answer)
{
    const struct cg_confidence *found = &answer->confidence;
    char caption[128];
    if (found->samples == 0)
        return;
    snprintf(caption, sizeof caption,
             "All inputs moved at once: %zu samples, %zu failed, seed %lu",
             found->samples, found->failures, found->seed);
    cg_page_values(page, caption);
    cg_page_length(page, "Closure, mean", found->mean);
    cg_page_length(page, "Standard deviation", found->sd);
    cg_page_length(page, "Closure at the risk, sampled", found->quantile);
    cg_page_length(page, "its standard error", found->quantile_error);
    cg_page_length(page, "Closure at the risk, first order",
                   found->first_order.closure + found->first_order.spread);
    cg_page_values_end(page);
    if (found->few)
        cg_page_note(page,
                     "too few samples for a risk of %g (%.0f or more): the "
                     "answer uses the larger spread of the two.",
                     c->margin.risk, CG_CONFIDENCE_BEYOND / c->margin.risk);
    cg_page_figure(page, "histogram", "Closures sampled",
                   "Bars of the closures found, about %s, beside the normal "
                   "law of first order, and lines at the risk.",
                   cg_show_gap(found->mean, false).text);
}

void cg_page_spread(struct cg_page *page, const struct cg_updated_case *updated,
                    const struct cg_answer *answer)
{
    const struct cg_case *c = &updated->c;
    cg_page_section(page, "How sure it is");
    shares(page, answer);
    if (cg_inputs_correlated(c))
        cg_page_say(page, "Inputs are correlated: a share counts what an input "
                          "has in common with others.");
    correlations(page, answer);
    if (updated->learned.entries > 0)
        cg_page_say(page,
                    "The evidence was fitted with %s; the others take over "
                    "what it taught.",
                    c->combustion.heat_transfer);
    samples(page, c, answer);
}
