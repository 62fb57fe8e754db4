#include <math.h>
#include <stdio.h>

#include "constants.h"
#include "page_seal.h"
#include "page_values.h"
#include "report_seal.h"
#include "show.h"


/* Three digits that count. */
static void small(struct cg_page *page, const char *name, double metric,
                  const char *metric_unit, double inch, const char *inch_unit)
{
    char left[48], right[48];
    snprintf(left, sizeof left, "%.3g %s", metric, metric_unit);
    snprintf(right, sizeof right, "%.3g %s", inch, inch_unit);
    cg_page_both(page, name, left, right);
}

static void say_ring(struct cg_page *page, const char *name,
                     const struct cg_pack_cycle *cycle, size_t k,
                     double peak_deg)
{
    char text[CG_SEAL_TEXT];
    cg_seal_ring_text(cycle, k, peak_deg, text);
    if (cycle->given_way_deg[k] > 0.5)
        cg_page_say(page,
                    "The %s ring %s; gas pushes it off the bore for %.0f deg "
                    "of a cycle.",
                    name, text, cycle->given_way_deg[k]);
    else
        cg_page_say(page, "The %s ring %s.", name, text);
}

static void say_rings(struct cg_page *page, const struct cg_seal *seal,
                      const struct cg_seal_answer *at)
{
    say_ring(page, "top", &at->settled.cycle, 0, seal->peak_deg);
    say_ring(page, "second", &at->settled.cycle, 1, seal->peak_deg);
}

static void blow_by_rows(struct cg_page *page, const struct cg_seal *seal,
                         const struct cg_seal_answer *at)
{
    double power = seal->performance.brake_power;
    double metric = cg_show_draught(at->blow_by_volume, false);
    double inch = cg_show_draught(at->blow_by_volume, true);
    cg_page_leak(page, "Blow-by", at->blow_by);
    small(page, "Its volume", metric, cg_show_draught_unit(false), inch,
          cg_show_draught_unit(true));
    if (power > 0.0)
        small(page, "Per power", metric / (power / 1e3), "L/min/kW",
              inch / (power / CG_HORSEPOWER), "cfm/hp");
    cg_page_plain(page, "Share of the charge", "%.2g %%",
                  at->blow_by_share * 100.0);
    cg_page_pressure(page, "Between rings", at->land_peak);
}

static void friction_rows(struct cg_page *page,
                          const struct cg_seal_friction *f)
{
    if (isnan(f->power[0]))
        return;
    cg_page_small_power(page, "Friction, top", f->power[0]);
    cg_page_small_power(page, "Friction, second", f->power[1]);
}

static void say_friction(struct cg_page *page, const struct cg_seal_friction *f)
{
    if (isnan(f->power[0]))
        cg_page_say(page, "Ring friction: the oil film does not repeat.");
    else
        cg_page_say(page,
                    "Friction is of all cylinders. Top and second ring run "
                    "mixed %.0f and %.0f %% of the time; metal takes %.0f and "
                    "%.0f %% of their friction.",
                    f->mixed[0] * 100.0, f->mixed[1] * 100.0,
                    f->boundary[0] * 100.0, f->boundary[1] * 100.0);
}

void cg_page_seal_rated(struct cg_page *page, const struct cg_seal_study *study)
{
    const struct cg_seal *seal = study->rated;
    const struct cg_seal_answer *at = &study->at_rated;
    char caption[96];
    snprintf(caption, sizeof caption, "%.0f rpm, settled",
             seal->pack.speed * 60.0);
    cg_page_section(page, "At rated speed and full load");
    cg_page_values(page, caption);
    cg_page_both(page, "Peak pressure",
                 cg_show_pressure(seal->performance.peak_pressure, false).text,
                 cg_show_pressure(seal->performance.peak_pressure, true).text);
    blow_by_rows(page, seal, at);
    friction_rows(page, &study->friction);
    cg_page_values_end(page);
    cg_page_say(page, "Blow-by is of the whole engine, its volume as in the "
                      "crankcase; pressure between the rings at most.");
    say_rings(page, seal, at);
    cg_page_say(page,
                "Pressure peaks %.0f deg after firing top centre. Crevices "
                "then hold %.1f %% of the charge; %.1f %% comes back before "
                "the exhaust opens, too late to burn.",
                seal->peak_deg, at->crevice_share * 100.0,
                at->crevice_late * 100.0);
    say_friction(page, &study->friction);
    cg_page_figure(page, "seal_cycle", "Gas around the rings",
                   "Above, pressure in the cylinder, behind the top ring, "
                   "between the rings (at most %s) and behind the second ring "
                   "over crank angle; below, how far each ring stands off its "
                   "lower flank.",
                   cg_show_pressure(at->land_peak, false).text);
}

void cg_page_seal_hardest(struct cg_page *page,
                          const struct cg_seal_study *study)
{
    char caption[96];
    if (study->hardest == NULL)
        return;
    snprintf(caption, sizeof caption, "%.0f rpm, full load",
             study->hardest->pack.speed * 60.0);
    cg_page_section(page, "At the duty's lowest speed under full load");
    if (isnan(study->at_hardest.blow_by)) {
        cg_page_say(page,
                    "%s: the rings do not settle to a motion that "
                    "repeats.",
                    caption);
        return;
    }
    cg_page_values(page, caption);
    blow_by_rows(page, study->hardest, &study->at_hardest);
    cg_page_values_end(page);
    say_rings(page, study->hardest, &study->at_hardest);
}
