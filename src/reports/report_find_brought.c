/* Nitrous and spray among the figures of full load; nothing without them. */
#include "brought.h"
#include "nitrous.h"
#include "report_find_parts.h"

static void tell_nitrous(struct cg_report *report, const struct cg_case *c,
                         const struct cg_performance *p)
{
    cg_report_row(report, "nitrous_flow", "Nitrous",
                  cg_quantity(CG_SHOW_FLOW, p->nitrous_flow));
    cg_report_remark(report, "%s, on as %s has it at its most",
                     c->nitrous.state == CG_NITROUS_GAS ? "gas" : "liquid",
                     c->duty.name);
    cg_report_row(report, "nitrous_heat", "Heat of its coming apart",
                  cg_quantity(CG_SHOW_POWER,
                              p->nitrous_flow * cg_nitrous_decomposition()));
    cg_report_say(report, "Left out of nitrous: a flame that runs faster than "
                          "combustion.burn_duration, liquid that reaches a "
                          "cylinder, how the cylinders share it, a bottle that "
                          "cools as it empties.");
}

static void tell_spray(struct cg_report *report, const struct cg_performance *p)
{
    if (p->water_flow > 0.0)
        cg_report_row(report, "water_flow", "Water sprayed",
                      cg_quantity(CG_SHOW_FLOW, p->water_flow));
    if (p->alcohol_flow > 0.0) {
        cg_report_row(report, "alcohol_flow", "Methanol sprayed",
                      cg_quantity(CG_SHOW_FLOW, p->alcohol_flow));
        cg_report_remark(report, "in the fuel flow and in lambda");
    }
    cg_report_say(report, "Left out of the spray: water that gets into the oil "
                          "or past the rings, drops that have not evaporated "
                          "when it burns, what water does to the flame. If the "
                          "pump fails the engine runs without it: compare "
                          "--set spray.flow_g_s=0.");
}

void cg_report_find_brought(struct cg_report *report, const struct cg_case *c,
                            const struct cg_performance *full)
{
    if (full->nitrous_flow > 0.0)
        tell_nitrous(report, c, full);
    if (full->water_flow + full->alcohol_flow > 0.0)
        tell_spray(report, full);
}
