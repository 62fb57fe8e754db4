#include "page_second.h"

#include "find_notes.h"
#include "show.h"

static void say_seating(struct cg_page *page, const struct cg_case *c,
                        const struct cg_answer *answer)
{
    const struct cg_second_gap *s = &answer->seating;
    cg_page_say(page,
                "With it the top ring stays seated to %.0f deg after firing "
                "top centre at full load and %.0f rpm; %.0f are asked for, a "
                "second ring that lifts not counted on.",
                s->unseat_deg, s->speed * 60.0, c->seal.seated_to_deg);
}

void cg_page_second(struct cg_page *page, const struct cg_case *c,
                    const struct cg_answer *answer)
{
    double rule = answer->second_rule;
    double top = cg_answer_top_gap(answer);
    bool given = answer->verdict.given && answer->verdict.safe;
    struct cg_text top_text = cg_show_gap_up(answer->second_rule_top, false);
    cg_page_say(page, "Second ring, for a top gap of %s: %s.",
                cg_show_gap_of(top, given, false).text,
                cg_find_second_reason(answer));
    if (answer->second_reason == CG_SECOND_RULE) {
        cg_page_say(page, "The gas between the rings could not be computed.");
        return;
    }
    if (answer->second_reason == CG_SECOND_LIMITED)
        cg_page_say(page,
                    "The gas model would have %s, to keep the top ring seated "
                    "to %.0f deg; that is no safety figure, and no more than "
                    "the trade's rule is asked: metal does not come back.",
                    cg_show_gap_up(answer->seating.gap, false).text,
                    c->seal.seated_to_deg);
    else
        say_seating(page, c, answer);
    if (answer->second.cold_gap < rule * (1.0 - 1e-9))
        cg_page_note(
            page,
            "the second ring's gap is below the trade's rule, %.3g "
            "times a top gap of %s, which gives %s. Until your own engine "
            "has shown better, file to the larger.",
            c->margin.second_factor, top_text.text,
            cg_show_gap_up(rule, false).text);
    else
        cg_page_say(page,
                    "The trade's rule, %.3g times a top gap of %s, gives %s.",
                    c->margin.second_factor, top_text.text,
                    cg_show_gap_up(rule, false).text);
}
