#include "report_ladder.h"

#include <math.h>
#include <stdio.h>

#include "ladder_text.h"
#include "report_past.h"
#include "say_common.h"
#include "say_ladder.h"
#include "show.h"

/* A price of less nobody sees on an engine; no source. */
#define LEAK_SEEN 1e-5     /* [kg/s] */
#define FRICTION_SEEN 10.0 /* [W] */
#define POWER_SEEN 500.0   /* [W] */

static bool stops(const struct cg_ladder *ladder, double boost)
{
    return boost < ladder->target || boost <= 0.0;
}

/* The parts that no longer stand the target, and those that are marginal. */
static void tell_open(struct cg_report *report, const struct cg_ladder *ladder)
{
    bool inch = cg_report_inch(report);
    for (int k = 0; k < CG_LADDER_PARTS; k++) {
        enum cg_ladder_part part = (enum cg_ladder_part)k;
        const struct cg_ladder_stop *stop = &ladder->after.stop[k];
        if (stops(ladder, stop->stands))
            cg_report_verdict(report, false,
                              "NOTHING OFFERED WILL DO for %s: it holds to %s "
                              "(%s).",
                              cg_say_part(part),
                              cg_show_boost(stop->stands, inch).text,
                              cg_say_stops(part, stop->why));
        else if (stops(ladder, stop->fits))
            cg_report_note(report, "%s is marginal from %s on (%s), %s.",
                           cg_say_part(part),
                           cg_show_boost(stop->fits, inch).text,
                           cg_say_stops(part, stop->why),
                           cg_ladder_lived_with(ladder, part)
                               ? "as it is at the config's boost"
                               : "and nothing offered betters it");
    }
}

static int steps_of(const struct cg_ladder *ladder)
{
    int steps = 0;
    for (size_t i = 0; i < ladder->changes; i++)
        steps += i == 0 || ladder->change[i].step != ladder->change[i - 1].step;
    return steps;
}

static void tell_verdict(struct cg_report *report,
                         const struct cg_ladder *ladder)
{
    bool inch = cg_report_inch(report);
    struct cg_text target = cg_show_boost(ladder->target, inch);
    int steps = steps_of(ladder);
    if (!ladder->stands)
        cg_report_verdict(report, false,
                          "%s does NOT stand, with all that is offered.",
                          target.text);
    else if (steps == 0)
        cg_report_verdict(report, true, "Nothing to change for %s.",
                          target.text);
    else
        cg_report_verdict(report, true, "%s stands with %d change%s.",
                          target.text, steps, steps == 1 ? "" : "s");
    tell_open(report, ladder);
}

/* More or less than before; nothing of what is not known or less than `least`,
 * which is not seen. */
static void add_price(char *text, size_t size, size_t *used, const char *what,
                      struct cg_quantity quantity, double least, bool inch)
{
    if (isnan(quantity.value) || fabs(quantity.value) < least ||
        !(*used < size))
        return;
    *used += (size_t)snprintf(
        text + *used, size - *used, "%s%s %s%s", *used > 0 ? ", " : "", what,
        quantity.value >= 0.0 ? "+" : "", cg_quantity_one(quantity, inch).text);
}

static struct cg_sentence price_of(const struct cg_ladder_cost *price,
                                   bool inch)
{
    struct cg_sentence out = {""};
    size_t used = 0;
    add_price(out.text, sizeof out.text, &used, "blow-by",
              cg_quantity(CG_SHOW_ROUGH_LEAK, price->leak), LEAK_SEEN, inch);
    add_price(out.text, sizeof out.text, &used, "ring friction",
              cg_quantity(CG_SHOW_ROUGH_POWER, price->friction), FRICTION_SEEN,
              inch);
    add_price(out.text, sizeof out.text, &used, "power",
              cg_quantity(CG_SHOW_POWER, price->brake), POWER_SEEN, inch);
    return out;
}

/* "rings.top.face chromium (was bare), ..." of one step from `first` on. */
static struct cg_sentence settings_of(const struct cg_ladder *ladder,
                                      size_t first, bool inch)
{
    struct cg_sentence out = {""};
    size_t used = 0;
    int step = ladder->change[first].step;
    for (size_t i = first;
         i < ladder->changes && ladder->change[i].step == step; i++) {
        const struct cg_ladder_change *change = &ladder->change[i];
        if (used < sizeof out.text)
            used += (size_t)snprintf(out.text + used, sizeof out.text - used,
                                     "%s%s = %s (was %s)", used > 0 ? ", " : "",
                                     cg_ladder_key(change, inch).text,
                                     cg_ladder_value(change, true, inch).text,
                                     cg_ladder_value(change, false, inch).text);
    }
    return out;
}

static struct cg_sentence holds_to(const struct cg_ladder *ladder,
                                   const struct cg_ladder_change *change,
                                   bool inch)
{
    struct cg_sentence out;
    if (isnan(change->holds_to))
        snprintf(out.text, sizeof out.text, "%s and more",
                 cg_show_boost(ladder->end, inch).text);
    else
        snprintf(out.text, sizeof out.text, "%s",
                 cg_show_boost(change->holds_to, inch).text);
    return out;
}

static void tell_changes(struct cg_report *report,
                         const struct cg_ladder *ladder)
{
    bool inch = cg_report_inch(report);
    for (size_t i = 0; i < ladder->changes; i++) {
        const struct cg_ladder_change *change = &ladder->change[i];
        if (i > 0 && change->step == ladder->change[i - 1].step)
            continue;
        struct cg_sentence price = price_of(&change->price, inch);
        cg_report_step(
            report, "%s, from %s on: %s. Why: %s%s. Holds to %s%s. Price: %s.",
            cg_say_part(change->part), cg_show_boost(change->from, inch).text,
            settings_of(ladder, i, inch).text,
            cg_say_stops(change->part, change->why),
            change->follows ? ", with the other changes" : "",
            holds_to(ladder, change, inch).text,
            change->fits ? "" : ", though marginal",
            price.text[0] != '\0' ? price.text : "none to be seen");
    }
}

static void tell_part(struct cg_report *report, const struct cg_ladder *ladder,
                      enum cg_ladder_part part)
{
    const struct cg_ladder_stop *was = &ladder->before.stop[part];
    const struct cg_ladder_stop *now = &ladder->after.stop[part];
    bool stopped = stops(ladder, was->fits);
    cg_report_cell_words(report, "%s", cg_say_part(part));
    cg_report_cell(report, was->fits);
    cg_report_cell(report, was->stands);
    cg_report_cell_words(report, "%s",
                         isnan(was->fits) ? "-" : cg_say_stops(part, was->why));
    cg_report_cell(report, now->fits);
    cg_report_mark(report, stops(ladder, now->stands) ? CG_MARK_BAD
                           : stopped                  ? CG_MARK_NONE
                                                      : CG_MARK_GOOD);
}

static void tell_parts(struct cg_report *report, const struct cg_ladder *ladder)
{
    static const struct cg_report_column columns[] = {
        {"part", "Part", CG_SHOW_WORDS},
        {"stops", "fits to", CG_SHOW_BOOST},
        {"stops_high", "stands to", CG_SHOW_BOOST},
        {"why", "then", CG_SHOW_WORDS},
        {"holds_to", "changed", CG_SHOW_BOOST}};
    enum cg_ladder_part order[CG_LADDER_PARTS];
    bool inch = cg_report_inch(report);
    cg_ladder_order(&ladder->before, order);
    cg_report_section(report, "Where each part stops");
    cg_report_table(report, "parts",
                    "Boost, gauge, to which each part fits and stands as the "
                    "config has it, and to which it fits with the changes.",
                    columns, sizeof columns / sizeof columns[0]);
    for (int i = 0; i < CG_LADDER_PARTS; i++)
        if (cg_ladder_has(ladder, order[i]))
            tell_part(report, ladder, order[i]);
    cg_report_say(report, "- is not up to %s, the highest looked at.",
                  cg_show_boost(ladder->end, inch).text);
    cg_report_figure(
        report, "ladder", "What stops at which boost",
        "Above, the top gap to file to over boost, and the shop rule; below, "
        "a bar a part, before the changes and after: where it "
        "fits, is marginal, and is no more.");
}

/* In the order in which the trade looks: common practice, no source. */
static int usual(enum cg_ladder_part part)
{
    static const int place[CG_LADDER_PARTS] = {
        [CG_LADDER_RING_FACE] = 1, [CG_LADDER_RING_METAL] = 1,
        [CG_LADDER_SEATING] = 2,   [CG_LADDER_FINISH] = 2,
        [CG_LADDER_PISTON] = 3,    [CG_LADDER_SKIRT] = 3,
        [CG_LADDER_LANDS] = 3,     [CG_LADDER_BORE_OIL] = 3,
        [CG_LADDER_COOLANT] = 3,   [CG_LADDER_SPARK] = 3,
        [CG_LADDER_PRESSURE] = 3,  [CG_LADDER_CHARGE] = 3};
    return place[part]; /* the gaps first */
}

static void tell_order(struct cg_report *report, const struct cg_ladder *ladder)
{
    for (size_t i = 1; i < ladder->changes; i++) {
        enum cg_ladder_part first = ladder->change[i - 1].part;
        enum cg_ladder_part next = ladder->change[i].part;
        if (usual(first) <= usual(next))
            continue;
        cg_report_say(report,
                      "The trade looks at gaps first, then at the ring's face "
                      "and metal, at ports and finish, at piston and cooling "
                      "(common practice, no source). Here %s comes before "
                      "%s, as its limit is met at less boost.",
                      cg_say_part(first), cg_say_part(next));
        return;
    }
}

static void tell_rest(struct cg_report *report, const struct cg_ladder *ladder)
{
    cg_report_section(report, "What this rests on");
    cg_report_say(report, "The engine: %s, duty %s.",
                  ladder->asked.engine.name[0] != '\0'
                      ? ladder->asked.engine.name
                      : "as the config has it",
                  ladder->asked.duty.name);
    tell_order(report, ladder);
    cg_report_say(report,
                  "Where bands end is mostly common practice. The bore's "
                  "finish is a simulated one of the config's stones: measure "
                  "yours, and ask `coldgap finish --profile`.");
    cg_report_say(report, "The oil ring's tension, head gasket, rods and "
                          "charger are not looked at.");
    cg_say_gaps_first_order(report);
}

/* What the parts show at the target, for programs; `top` and `second`: the gaps
 * to file to. */
static void tell_keys(struct cg_report *report, const char *when,
                      const struct cg_ladder_climb *climb, double top,
                      double second)
{
    const struct {
        const char *key;
        double value;
        const char *unit;
    } rows[] = {
        {"file_to_top", top * 1e3, "mm"},
        {"file_to_second", second * 1e3, "mm"},
        {"blow_by", climb->cost.leak * 1e3, "g/s"},
        {"ring_friction", climb->cost.friction, "W"},
        {"brake_power", climb->cost.brake / 1e3, "kW"},
        {"unseat_angle", climb->unseat_deg, "deg"},
        {"oil_held", climb->oil_held * 1e6, "um"},
        {"oil_needed", climb->oil_needed * 1e6, "um"}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char key[64];
        snprintf(key, sizeof key, "%s%s", rows[i].key, when);
        cg_report_key(report, key, rows[i].value, rows[i].unit);
    }
}

void cg_report_ladder(struct cg_report *report, const struct cg_ladder *ladder,
                      const struct cg_ladder_written *written)
{
    const struct cg_answer *after = &ladder->after.answer;
    cg_report_ladder_file_to(report, ladder, written);
    cg_say_gap_place(report, &ladder->changed);
    tell_verdict(report, ladder);
    tell_changes(report, ladder);
    if (written != NULL)
        cg_report_ladder_written(report, written);
    cg_report_first_part_ends(report);
    tell_parts(report, ladder);
    tell_rest(report, ladder);
    cg_report_key(report, "target", ladder->target / 1e3, "kPa");
    tell_keys(report, "_before", &ladder->before,
              ladder->before.answer.file_to_top.file_to,
              ladder->before.answer.file_to_second.file_to);
    tell_keys(report, "_after", &ladder->after,
              cg_ladder_written_gap(written, CG_RING_TOP, after),
              cg_ladder_written_gap(written, CG_RING_SECOND, after));
}
