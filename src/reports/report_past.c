#include "report_past.h"

#include <stdio.h>

#include "show.h"

const char *cg_say_past_word(enum cg_past past)
{
    static const char *const word[] = {
        [CG_PAST_MELTS] = "the crown, which would melt",
        [CG_PAST_CROWN] = "the crown's heat",
        [CG_PAST_GROOVE] = "the top groove's heat",
        [CG_PAST_FACE] = "the heat of the top ring's face",
        [CG_PAST_GRIPS] = "the top groove, which closes on its ring",
        [CG_PAST_KNOCK] = "knock",
        [CG_PAST_PRESSURE] = "the cylinder's pressure",
        [CG_PAST_COOLANT] = "the coolant, which boils",
        [CG_PAST_FLUX] = "the heat that the coolant takes",
        [CG_PAST_LIMITS] = "nothing"};
    return word[past];
}

/* "the crown reaches 412 C and stays over 300 C for 40 s; 12 s are allowed" */
static struct cg_sentence say_heat(const char *what, const char *limit_is,
                                   const struct cg_limit_seen *seen, bool inch)
{
    struct cg_sentence out;
    struct cg_text limit = cg_show_temperature(seen->limit, inch);
    if (seen->allowed > 0.0)
        snprintf(out.text, sizeof out.text,
                 "%s reaches %s and stays over %s, %s, for %.0f s; so hot, "
                 "%.2g s are allowed",
                 what, cg_show_temperature(seen->reached, inch).text,
                 limit.text, limit_is, seen->seconds, seen->allowed);
    else
        snprintf(out.text, sizeof out.text, "%s reaches %s; %s is %s", what,
                 cg_show_temperature(seen->reached, inch).text, limit.text,
                 limit_is);
    return out;
}

static struct cg_sentence say_knock(const struct cg_limits *limits)
{
    const struct cg_limit_seen *seen = &limits->of[CG_PAST_KNOCK];
    struct cg_sentence out;
    int length = snprintf(out.text, sizeof out.text,
                          "KNOCK is predicted for %.1f s on end, worst at %.0f "
                          "rpm, %.40s: the knock "
                          "integral is %.2f, and 1 is knock; ",
                          seen->seconds, limits->knock_speed * 60.0,
                          cg_say_load(limits->knock_load).text, seen->reached);
    if (seen->allowed > 0.0)
        snprintf(out.text + length, sizeof out.text - (size_t)length,
                 "%.0f s are allowed, below rated speed", seen->allowed);
    else
        snprintf(out.text + length, sizeof out.text - (size_t)length,
                 "none is allowed at rated speed");
    return out;
}

static struct cg_sentence say_grip(const struct cg_limit_seen *seen)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "the top groove closes on its ring: heat takes %.0f %% of the side "
             "clearance that is there cold; a wider groove mends that",
             100.0 * seen->reached);
    return out;
}

static struct cg_sentence say_pressure(const struct cg_limit_seen *seen,
                                       bool inch)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "the cylinder's pressure reaches %s; %s is the most that heavy "
             "engines are made for",
             cg_show_peak_pressure(seen->reached, inch).text,
             cg_show_peak_pressure(seen->limit, inch).text);
    return out;
}

static struct cg_sentence say_flux(const struct cg_limit_seen *seen)
{
    struct cg_sentence out;
    snprintf(out.text, sizeof out.text,
             "the bore wall gives its coolant %.2f MW/m2; past %.1f a film of "
             "steam parts them",
             seen->reached / 1e6, seen->limit / 1e6);
    return out;
}

struct cg_sentence cg_say_past(enum cg_past past,
                               const struct cg_limits *limits, bool inch)
{
    const struct cg_limit_seen *seen = &limits->of[past];
    switch (past) {
    case CG_PAST_MELTS:
        return say_heat("the crown", "where aluminium begins to melt", seen,
                        inch);
    case CG_PAST_CROWN:
        return say_heat("the crown", "its usual limit", seen, inch);
    case CG_PAST_GROOVE:
        return say_heat("the top groove", "where its alloy softens", seen,
                        inch);
    case CG_PAST_FACE:
        return say_heat("the top ring's face",
                        "the most that anyone fits it for", seen, inch);
    case CG_PAST_GRIPS:
        return say_grip(seen);
    case CG_PAST_KNOCK:
        return say_knock(limits);
    case CG_PAST_PRESSURE:
        return say_pressure(seen, inch);
    case CG_PAST_COOLANT:
        return say_heat("the coolant", "where it boils", seen, inch);
    case CG_PAST_FLUX:
        return say_flux(seen);
    case CG_PAST_LIMITS:
        break;
    }
    return (struct cg_sentence){""};
}

void cg_report_past(struct cg_report *report, const struct cg_case *c,
                    const struct cg_answer *answer)
{
    bool compression = c->combustion.ignition == CG_IGNITION_COMPRESSION;
    for (size_t i = 0; i < answer->duties; i++) {
        const struct cg_duty_answer *duty = &answer->duty[i];
        bool melts = duty->limits.of[CG_PAST_MELTS].past;
        for (int k = 0; duty->judged && k < CG_PAST_LIMITS; k++)
            if (duty->limits.of[k].past && !(melts && k == CG_PAST_CROWN))
                cg_report_verdict(report, false,
                                  "NOT SAFE AT ANY GAP: in %s %s.", duty->name,
                                  cg_say_past((enum cg_past)k, &duty->limits,
                                              cg_report_inch(report))
                                      .text);
    }
    if (cg_answer_past(answer) < answer->duties)
        cg_report_say(report,
                      "Less boost, a lower ratio, a cooler charge, %s or more "
                      "cooling mends that; a wider gap does not.",
                      compression ? "later injection" : "more octane");
}

void cg_report_past_notes(struct cg_report *report,
                          const struct cg_answer *answer)
{
    bool told = cg_answer_past(answer) < answer->duties;
    for (size_t i = 0; i < answer->duties && !told; i++) {
        const struct cg_duty_answer *duty = &answer->duty[i];
        enum cg_past first = cg_limits_first(&duty->limits);
        if (!duty->judged && first != CG_PAST_LIMITS)
            cg_report_note(
                report, "in %s, which your config does not name, %s.",
                duty->name,
                cg_say_past(first, &duty->limits, cg_report_inch(report)).text);
    }
}
