/* The parts to fit, and the clearances to check on them. */
#include "ports_text.h"
#include "report_card.h"
#include "report_find_parts.h"

static void tell_parts(struct cg_report *report, const struct cg_card *card)
{
    const struct cg_case *c = &card->build->updated.c;
    cg_report_find_engine(report, c, &card->build->answer);
    cg_report_words(report, "second_ring", "Second ring", "%s",
                    c->ring[CG_RING_SECOND].material);
    cg_report_words(report, "top_face", "Top ring's face", "%s",
                    c->ring_face[CG_RING_TOP].name);
    cg_report_words(report, "ports", "Gas ports", "%s",
                    cg_ports_text(c, (enum cg_port_kind)c->seal.ports,
                                  cg_report_inch(report))
                        .text);
    cg_report_words(report, "oil", "Oil", "%s", c->cooling.oil_grade);
}

/* One clearance: as the config has it, and what is left of it at the hottest.
 */
static void put(struct cg_report *report, const char *what, double cold,
                double hot)
{
    cg_report_cell_words(report, "%s", what);
    cg_report_cell(report, cold);
    cg_report_cell(report, hot);
    cg_report_cell_words(report, "________");
}

static void tell_clearances(struct cg_report *report,
                            const struct cg_card *card)
{
    static const struct cg_report_column columns[] = {
        {"clearance", "Clearance", CG_SHOW_WORDS},
        {"cold", "cold", CG_SHOW_SMALL_LENGTH},
        {"hot", "least hot", CG_SHOW_SMALL_LENGTH},
        {"found", "found", CG_SHOW_WORDS}};
    const struct cg_case *c = &card->build->updated.c;
    const struct cg_clearance *hot = &card->build->answer.extremes.clearance;
    const struct cg_ring_case *top = &c->ring[CG_RING_TOP];
    cg_report_section(report, "Clearances to check");
    cg_report_table(report, "clearances",
                    "Cold as the config has it, and the least left hot, middle "
                    "estimate",
                    columns, sizeof columns / sizeof columns[0]);
    put(report, "Skirt, diametral", c->piston.skirt_clearance, hot->skirt);
    put(report, "Top land, diametral", c->piston.land_clearance,
        hot->land[CG_RING_TOP]);
    put(report, "Top ring, side", top->side_clearance, hot->side[CG_RING_TOP]);
    put(report, "Top ring, back", top->back_clearance, hot->back[CG_RING_TOP]);
    if (hot->skirt < 0.0)
        cg_report_say(report, "The skirt's minus: hot, it would be wider than "
                              "its bore by that, and bears on it.");
    cg_report_find_skirt(report, c, &card->build->answer.skirt);
}

void cg_report_card_parts(struct cg_report *report, const struct cg_card *card)
{
    tell_parts(report, card);
    tell_clearances(report, card);
}
