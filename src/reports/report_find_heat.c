#include <math.h>
#include <stdio.h>

#include "network.h"
#include "report_find_parts.h"
#include "show.h"

static void tell_temperatures(struct cg_report *report, const struct cg_case *c,
                              const struct cg_answer *answer)
{
    const struct cg_extremes *e = &answer->extremes;
    const struct {
        const char *key, *label;
        double kelvin;
    } rows[] = {
        {"crown_max", "Crown", e->crown_max},
        {"groove_top_max", "Top groove", e->groove_top_max},
        {"ring_top_max", "Top ring", e->ring_top_max},
        {"ring_second_max", "Second ring", e->ring_second_max},
        {"liner_top_max", "Bore where the top ring turns", e->liner_top_max},
    };
    cg_report_part(report, "Hottest in the duty");
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        cg_report_row(report, rows[i].key, rows[i].label,
                      cg_quantity(CG_SHOW_TEMPERATURE, rows[i].kelvin));
    cg_report_find_limits(report, c, e);
    cg_report_figure(report, "temperatures", "Temperatures over the duty",
                     "Six curves over %.4g s: crown, top groove, bore where "
                     "the top ring turns, top ring, second ring, low bore.",
                     answer->duration);
}

static void tell_load(struct cg_report *report, const struct cg_performance *p)
{
    cg_report_row(report, "imep", "Indicated mean pressure",
                  cg_quantity(CG_SHOW_PRESSURE, p->imep));
    cg_report_row(report, "peak_pressure", "Peak pressure",
                  cg_quantity(CG_SHOW_PEAK_PRESSURE, p->peak_pressure));
    cg_report_row(report, "brake_power", "Brake power",
                  cg_quantity(CG_SHOW_POWER, p->brake_power));
    cg_report_row(report, "air_flow", "Air",
                  cg_quantity(CG_SHOW_FLOW, p->air_flow));
    cg_report_row(report, "fuel_flow", "Fuel flow",
                  cg_quantity(CG_SHOW_FLOW, p->fuel_flow));
    cg_report_row(report, "exhaust", "Gas at the exhaust valve",
                  cg_quantity(CG_SHOW_TEMPERATURE, p->exhaust_temperature));
    cg_report_row(report, "mean_flux", "Crown flux, mean",
                  cg_quantity(CG_SHOW_FLUX, p->mean_flux));
    cg_report_row(report, "peak_flux", "Crown flux, peak",
                  cg_quantity(CG_SHOW_PEAK_FLUX, p->peak_flux));
    cg_report_row(report, "wall_heat", "Heat to the walls",
                  cg_quantity(CG_SHOW_SHARE, p->wall_heat_share));
    cg_report_remark(report, "of the fuel's");
    cg_report_words(report, "cycle_residual", "Cycle energy closes to", "%.0e",
                    fabs(p->energy_residual));
}

/* When the injected fuel fires, and how it burns. */
static void tell_injection(struct cg_report *report, const struct cg_case *c,
                           const struct cg_performance *p)
{
    cg_report_words(report, "injection", "Injection begins",
                    "%.1f deg after TDC firing", c->combustion.injection_deg);
    cg_report_words(report, "ignition", "Fires", "%.1f deg after TDC firing",
                    p->ignition_deg);
    cg_report_remark(report, "%.0f %% burns premixed",
                     100.0 * p->premixed_share);
    cg_report_words(report, "burn50", "Half burned",
                    "%.1f deg after TDC firing", p->burn50_deg);
}

/* How late it burns for the sake of knock, and what is left of it. */
static void tell_burn(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer)
{
    const struct cg_performance *p = &answer->performance;
    const struct cg_knock_seen *worst = &answer->knock;
    cg_report_words(report, "burn50", "Half burned",
                    "%.1f deg after TDC firing", p->burn50_deg);
    cg_report_remark(report, "%.1f of them by retard",
                     p->burn50_deg - c->combustion.burn50_deg);
    cg_report_words(report, "knock_integral", "Knock integral", "%.2f",
                    p->knock_integral);
    cg_report_remark(report, "%.2f without retard by knock; 1 is knock, "
                     "octane %.4g", p->knock_unretarded, c->fuel.octane);
    if (worst->integral > CG_KNOCK_PREDICTED)
        cg_report_say(report,
                      "The duty asks for more than the fuel stands at %.0f "
                      "rpm, load %.2f: %.2f with the burn %.0f deg late. Hold "
                      "the boost back there.",
                      worst->speed * 60.0, worst->load, worst->integral,
                      worst->burn50_deg - c->combustion.burn50_deg);
}

static void tell_full_load(struct cg_report *report, const struct cg_case *c,
                           const struct cg_answer *answer)
{
    char title[160];
    snprintf(title, sizeof title, "Rated speed, full load (%s, factor %.3g)",
             c->combustion.heat_transfer, c->combustion.heat_factor);
    cg_report_part(report, title);
    tell_load(report, &answer->performance);
    if (c->combustion.ignition == CG_IGNITION_COMPRESSION)
        tell_injection(report, c, &answer->performance);
    else
        tell_burn(report, c, answer);
    cg_report_find_brought(report, c, &answer->performance);
    cg_report_figure(report, "cycle", "Engine cycle at rated speed, full load",
                     "Pressure and gas-side coefficient over crank angle: both "
                     "peak just after TDC firing.");
}

static void tell_probe(struct cg_report *report,
                       const struct cg_heat_balance *balance)
{
    const struct cg_exhaust *exhaust = &balance->exhaust;
    cg_report_row(report, balance->air ? "heat_to_air" : "heat_to_coolant",
                  balance->air ? "Heat to the air past the fins"
                               : "Heat to the coolant",
                  cg_quantity(CG_SHOW_POWER, balance->coolant));
    cg_report_row(report, "heat_to_oil", "Heat to the oil",
                  cg_quantity(CG_SHOW_POWER, balance->oil));
    cg_report_row(report, "probe", "A probe in the collector reads about",
                  cg_quantity(CG_SHOW_TEMPERATURE, exhaust->reading));
    cg_report_row(report, "probe_port", "Less than at the valve, by the port",
                  cg_quantity(CG_SHOW_KELVIN, exhaust->port_drop));
    cg_report_row(report, "probe_radiation",
                  "and by the probe's radiation to the pipe",
                  cg_quantity(CG_SHOW_KELVIN, exhaust->radiation));
    cg_report_say(report,
                  "The gas is averaged by mass. Left out: heat lost between "
                  "port and collector, conduction along the probe, rest "
                  "between pulses: some tens of degrees, most of it lower "
                  "yet.");
}

static void tell_balance(struct cg_report *report,
                         const struct cg_heat_balance *balance, bool nitrous)
{
    static const struct cg_report_column columns[] = {
        {"to", "To", CG_SHOW_WORDS},
        {"power", "power", CG_SHOW_POWER},
        {"share", "share", CG_SHOW_SHARE}};
    cg_report_table(report, "balance",
                    "The fuel's energy at rated speed, full load", columns, 3);
    for (int i = 0; i < CG_BALANCE_PARTS; i++)
        if (balance->part[i] != 0.0) {
            cg_report_cell_words(report, "%s",
                                 cg_balance_text((enum cg_balance_part)i));
            cg_report_cell(report, balance->part[i]);
            cg_report_cell(report, balance->part[i] / balance->fuel);
        }
    cg_report_cell_words(report, nitrous ? "fuel and nitrous" : "fuel");
    cg_report_cell(report, balance->fuel);
    cg_report_cell(report, 1.0);
    tell_probe(report, balance);
}

static void tell_ledger(struct cg_report *report,
                        const struct cg_answer *answer)
{
    static const struct cg_report_column columns[] = {
        {"from", "From", CG_SHOW_WORDS}, {"heat", "heat", CG_SHOW_HEAT}};
    const struct cg_heat_ledger *ledger = &answer->ledger;
    cg_report_table(report, "ledger",
                    "Heat into one cylinder's metal over the duty", columns, 2);
    for (int side = 0; side < CG_SIDES; side++)
        if (ledger->in[side] != 0.0) {
            cg_report_cell_words(report, "%s",
                                 cg_side_text((enum cg_side)side));
            cg_report_cell(report, ledger->in[side]);
        }
    cg_report_cell_words(report, "stored in the metal");
    cg_report_cell(report, ledger->stored);
    /* Rounding noise below these would differ between machines. */
    cg_report_say(report,
                  "Energy in minus out minus stored: within %.0e of the "
                  "turnover.",
                  fmax(fabs(ledger->residual), 1e-12));
}

void cg_report_find_heat(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    cg_report_section(report, "Heat and temperatures");
    tell_temperatures(report, c, answer);
    tell_full_load(report, c, answer);
    tell_balance(report, &answer->balance,
                 answer->performance.nitrous_flow > 0.0);
    tell_ledger(report, answer);
    cg_report_find_film(report, c, answer);
}
