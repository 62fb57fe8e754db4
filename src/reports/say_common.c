#include "say_common.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "less_boost.h"
#include "outside.h"
#include "show.h"

const char *cg_say_fits(enum cg_fits fits, enum cg_advice_from from)
{
    if (fits == CG_FITS_NOT)
        return "is TOO SMALL";
    if (fits == CG_FITS)
        return "fits";
    return from == CG_ADVICE_MAKER  ? "is BELOW THE MAKER'S MINIMUM"
           : from == CG_ADVICE_RULE ? "is BELOW THE SHOP RULE"
                                    : "is LESS THAN TO FILE TO";
}

const char *cg_say_rule(const struct cg_ring_advice *advice)
{
    return advice->maker > advice->rule ? "maker" : "shop rule";
}

struct cg_sentence cg_say_rule_end(bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "its table, coldgap's own of common practice, ends at %s",
             cg_show_boost(CG_SHOP_RULE_END, inch).text);
    return out;
}

/* The sentence goes on where the boost is past the rule's end. */
static void add_rule_end(const struct cg_ring_advice *advice, bool inch,
                         struct cg_sentence *out)
{
    size_t length = strlen(out->text);
    if (advice->past_rule && !(advice->maker > advice->rule))
        snprintf(out->text + length, sizeof out->text - length, " (%.100s)",
                 cg_say_rule_end(inch).text);
}

struct cg_sentence cg_say_from(const struct cg_ring_advice *advice, double need,
                               const char *duty, bool inch)
{
    struct cg_sentence out;
    struct cg_text rule =
        cg_show_gap_up(fmax(advice->maker, advice->rule), inch);
    bool maker = advice->from == CG_ADVICE_MAKER;
    bool less = strcmp(duty, CG_LESS_BOOST_NAME) == 0;
    if (advice->from == CG_ADVICE_MODEL)
        snprintf(out.text, sizeof out.text, "needed%s%s; %s %s",
                 less              ? " with less boost"
                 : duty[0] != '\0' ? " in "
                                   : "",
                 less ? "" : duty, cg_say_rule(advice), rule.text);
    else if (advice->from == CG_ADVICE_EVIDENCE)
        snprintf(out.text, sizeof out.text,
                 "earned by this engine; the shop rule %s", rule.text);
    else
        snprintf(out.text, sizeof out.text, "%s; the model needs %s",
                 maker ? "the maker's minimum" : "the shop rule",
                 cg_show_gap_up(need, inch).text);
    add_rule_end(advice, inch, &out);
    return out;
}

struct cg_sentence cg_say_load(double load)
{
    struct cg_sentence out;
    if (load > 0.0)
        snprintf(out.text, sizeof out.text, "load %.2f", load);
    else
        snprintf(out.text, sizeof out.text, "throttle shut");
    return out;
}

struct cg_sentence cg_say_first_order(bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "With all inputs moved at once the shipped engines need up to %s "
             "more: find --samples works it out.",
             cg_show_length(CG_FIRST_ORDER_SHORT, inch).text);
    return out;
}

void cg_say_gaps_first_order(struct cg_report *report)
{
    cg_report_say(report, "The gaps needed are worked out to first order. %s",
                  cg_say_first_order(cg_report_inch(report)).text);
}

struct cg_sentence cg_say_beyond(const struct cg_verdict *verdict,
                                 const struct cg_gap_sum *sum, bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "no gap in range will do: the gap needed is %s, at most %s is "
             "allowed",
             cg_show_gap_up(sum->cold_gap, inch).text,
             cg_show_gap(verdict->most, inch).text);
    return out;
}

const char *cg_say_no_skirts(void)
{
    return "coldgap does not size skirts: go by the piston maker's clearance.";
}

const char *cg_say_skirt_lies(const struct cg_skirt_answer *skirt)
{
    if (isnan(skirt->trade.low))
        return "-";
    if (skirt->cold < skirt->trade.low)
        return "below";
    return skirt->cold > skirt->trade.high ? "above" : "in";
}

#define LEFT_OUT(burn, cooling)                                                \
    "Bore distortion and wear, ring twist, differences around the "            \
    "circumference and between cylinders, " burn ", boost lag unless given, "  \
    cooling ", gas pressure in the bore."
#define LEFT_OUT_BURN(cooling)                                                 \
    (c->combustion.ignition == CG_IGNITION_COMPRESSION                         \
         ? LEFT_OUT("pilot and split injection, cetane number, swirl",         \
                    cooling)                                                   \
         : LEFT_OUT("what knock does", cooling))

const char *cg_say_left_out(const struct cg_case *c)
{
    return cg_air_cooled(c)
               ? LEFT_OUT_BURN("heat from the head into the barrel's top and "
                               "what the fins store, limits of the head")
               : LEFT_OUT_BURN("coolant past boiling");
}

const char *cg_say_outside(const struct cg_case *c)
{
    return cg_air_cooled(c) ? "air" : "coolant";
}

void cg_say_size(struct cg_report *report, const struct cg_case *c)
{
    cg_report_row(report, "cylinders", "Cylinders",
                  cg_quantity(CG_SHOW_COUNT, c->engine.cylinders));
    cg_report_row(report, "bore", "Bore",
                  cg_quantity(CG_SHOW_LENGTH, c->engine.bore));
    cg_report_row(report, "stroke", "Stroke",
                  cg_quantity(CG_SHOW_LENGTH, c->engine.stroke));
}

void cg_say_cooling(struct cg_report *report, const struct cg_case *c)
{
    const struct cg_air_case *air = &c->cooling.air;
    bool fan = air->drive == CG_AIR_FAN;
    if (cg_air_cooled(c))
        cg_report_words(report, "cooled_by", "Cooled by",
                        "air %s, %.3g m/s between the fins%s",
                        fan ? "by a fan" : "in a stream", air->speed,
                        fan ? " at rated speed" : "");
    if (c->bore.choke.narrower > 0.0)
        cg_report_row(
            report, "choke", "Choke at the top",
            cg_quantity(CG_SHOW_SMALL_LENGTH, c->bore.choke.narrower));
}

void cg_say_gap_place(struct cg_report *report, const struct cg_case *c)
{
    if (c->bore.choke.narrower > 0.0)
        cg_report_note(
            report, "%s",
            c->bore.choke.gap_measured == CG_GAP_IN_CHOKE
                ? "every gap here is measured in the choke, where "
                  "the top ring turns."
                : "every gap here is measured below the choke, where "
                  "the barrel is straight.");
}

void cg_say_engine(struct cg_report *report, const struct cg_case *c)
{
    cg_say_size(report, c);
    cg_report_row(report, "boost", "Boost",
                  cg_quantity(CG_SHOW_BOOST, c->charge.boost));
    cg_say_cooling(report, c);
    cg_report_words(report, "duty", "Duty", "%s", c->duty.name);
}
