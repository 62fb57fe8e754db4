#include <math.h>
#include <stdio.h>

#include "page_find.h"
#include "page_values.h"
#include "show.h"

static void say_trade(struct cg_page *page, const struct cg_case *c,
                      const struct cg_skirt_answer *skirt)
{
    if (isnan(skirt->trade.low))
        return;
    cg_page_say(page,
                "The trade fits %s with %s to %s (%s to %s; common practice, "
                "no source).",
                c->piston.alloy, cg_show_length(skirt->trade.low, false).text,
                cg_show_length(skirt->trade.high, false).text,
                cg_show_length(skirt->trade.low, true).text,
                cg_show_length(skirt->trade.high, true).text);
}

static void say_yours(struct cg_page *page, const struct cg_case *c,
                      const struct cg_skirt_answer *skirt,
                      const struct cg_clearance *least)
{
    cg_page_verdict(page, skirt->enough, "Skirt clearance%s of %s: %s",
                    skirt->taken ? " taken for this alloy," : "",
                    cg_show_gap(skirt->given, false).text,
                    skirt->enough ? "enough" : "less than asked");
    if (skirt->pressure > 0.0)
        cg_page_say(page, "Hot, nominally, it springs by %s (%s, %s).",
                    cg_show_gap(-least->skirt, false).text,
                    cg_show_boost(skirt->pressure, false).text,
                    cg_show_boost(skirt->pressure, true).text);
    else
        cg_page_say(page, "Hot, nominally, %s stay open.",
                    cg_show_gap(least->skirt, false).text);
    if (skirt->too_tight)
        cg_page_note(page,
                     "TOO TIGHT: that is past margin.skirt_pressure, %s "
                     "(%s).",
                     cg_show_boost(c->margin.skirt_pressure, false).text,
                     cg_show_boost(c->margin.skirt_pressure, true).text);
}

void cg_page_piston(struct cg_page *page, const struct cg_case *c,
                    const struct cg_answer *answer)
{
    const struct cg_skirt_answer *skirt = &answer->skirt;
    const struct cg_clearance *least = &answer->extremes.clearance;
    cg_page_section(page, "Piston");
    say_yours(page, c, skirt, least);
    cg_page_say(page,
                "This model errs to the wide side (ovality and pin bosses "
                "left out): the piston maker's figure wins, larger or "
                "smaller; do not hone for this one.");
    cg_page_values(page, "Cold skirt clearance by this model, with the same "
                         "margin, and its parts");
    cg_page_length(page, "Closure", skirt->closure);
    cg_page_length(page, "Spread", skirt->spread);
    cg_page_length(page, "less what it springs", skirt->give);
    cg_page_gap_up(page, "Asked, rounded up", skirt->cold);
    cg_page_values_end(page);
    say_trade(page, c, skirt);
    cg_page_values(page, "Smallest hot clearances");
    cg_page_length(page, "Top land, diametral", least->land[CG_RING_TOP]);
    cg_page_length(page, "Top groove, side", least->side[CG_RING_TOP]);
    cg_page_length(page, "Top groove, back", least->back[CG_RING_TOP]);
    cg_page_values_end(page);
    cg_page_figure(page, "clearance", "Hot clearances over the duty",
                   "Skirt and ring side clearances over %.4g s; below zero the "
                   "skirt springs.",
                   answer->duration);
}
