#include <math.h>
#include <stdio.h>

#include "report_seal.h"

enum { WORDS = 192 };

/* How ring k moves. */
static void tell_ring(struct cg_report *report, const struct cg_seal *seal,
                      const struct cg_seal_answer *at, size_t k)
{
    static const char *const key[] = {"motion_top", "motion_second"};
    static const char *const label[] = {"Top ring", "Second ring"};
    const struct cg_pack_cycle *cycle = &at->settled.cycle;
    double unseat = cycle->unseat_deg[k];
    char seat[WORDS], lifts[WORDS] = "";
    if (unseat <= seal->peak_deg)
        snprintf(seat, sizeof seat, "is off its seat at peak pressure");
    else if (unseat >= 720.0)
        snprintf(seat, sizeof seat, "stays on its lower flank");
    else
        snprintf(seat, sizeof seat,
                 "leaves its lower flank %.0f deg after TDC firing", unseat);
    if (cycle->lifts[k] > 1)
        snprintf(lifts, sizeof lifts, "; lifts %d times a cycle",
                 cycle->lifts[k]);
    cg_report_words(report, key[k], label[k], "%s%s", seat, lifts);
    if (cycle->given_way_deg[k] > 0.5)
        cg_report_remark(report,
                         "gas pushes it off the bore for %.0f deg of a cycle",
                         cycle->given_way_deg[k]);
}

static void tell_blow_by(struct cg_report *report, const struct cg_seal *seal,
                         const struct cg_seal_answer *at)
{
    double power = seal->performance.brake_power;
    cg_report_row(report, "speed", "Speed",
                  cg_quantity(CG_SHOW_SPEED, seal->pack.speed));
    cg_report_row(
        report, "peak_pressure", "Peak pressure",
        cg_quantity(CG_SHOW_PRESSURE, seal->performance.peak_pressure));
    cg_report_remark(report, "%.0f deg after TDC firing", seal->peak_deg);
    cg_report_row(report, "blow_by", "Blow-by, whole engine",
                  cg_quantity(CG_SHOW_LEAK, at->blow_by));
    cg_report_row(report, "blow_by_share", "Share of the charge",
                  cg_quantity(CG_SHOW_SMALL_SHARE, at->blow_by_share));
    cg_report_row(report, "blow_by_volume", "Its volume",
                  cg_quantity(CG_SHOW_DRAUGHT, at->blow_by_volume));
    cg_report_remark(report, "as in the crankcase");
    if (power > 0.0) {
        cg_report_row(report, "brake_power", "Power",
                      cg_quantity(CG_SHOW_POWER, power));
        cg_report_row(
            report, "blow_by_per_power", "Its volume per power",
            cg_quantity(CG_SHOW_DRAUGHT_SHARE, at->blow_by_volume / power));
    }
    cg_report_row(report, "land_peak", "Between the rings, at most",
                  cg_quantity(CG_SHOW_PRESSURE, at->land_peak));
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        tell_ring(report, seal, at, k);
}

static void tell_friction(struct cg_report *report,
                          const struct cg_seal_friction *f)
{
    static const char *const key[] = {"friction_power_top",
                                      "friction_power_second"};
    static const char *const label[] = {"Friction, top ring",
                                        "Friction, second ring"};
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        if (isnan(f->power[0])) {
            cg_report_words(report, key[k], label[k],
                            "the oil film does not repeat");
        } else {
            cg_report_row(report, key[k], label[k],
                          cg_quantity(CG_SHOW_SMALL_POWER, f->power[k]));
            cg_report_remark(report,
                             "all cylinders; mixed %.0f %% of the time, metal "
                             "takes %.0f %% of it",
                             f->mixed[k] * 100.0, f->boundary[k] * 100.0);
        }
}

void cg_report_seal_rated(struct cg_report *report,
                          const struct cg_seal_study *study)
{
    const struct cg_seal_answer *at = &study->at_rated;
    cg_report_section(report, "At rated speed and full load, settled");
    tell_blow_by(report, study->rated, at);
    tell_friction(report, &study->friction);
    cg_report_row(report, "crevice_share", "Crevices hold, of the charge",
                  cg_quantity(CG_SHOW_SHARE, at->crevice_share));
    cg_report_remark(report, "at peak pressure");
    cg_report_row(report, "crevice_late", "Crevices give back",
                  cg_quantity(CG_SHOW_SHARE, at->crevice_late));
    cg_report_remark(report, "before the exhaust opens, too late to burn");
    cg_report_figure(report, "seal_cycle", "Gas around the rings",
                     "Above, pressure in the cylinder, behind the top ring, "
                     "between the rings and behind the second ring over crank "
                     "angle; below, how far each ring stands off its lower "
                     "flank.");
}

void cg_report_seal_hardest(struct cg_report *report,
                            const struct cg_seal_study *study)
{
    if (study->hardest == NULL)
        return;
    cg_report_section(report, "At the duty's lowest speed under full load");
    if (isnan(study->at_hardest.blow_by))
        cg_report_say(report,
                      "At %.0f rpm the rings do not settle to a motion that "
                      "repeats.",
                      study->hardest->pack.speed * 60.0);
    else
        tell_blow_by(report, study->hardest, &study->at_hardest);
}
