/* The lesson: its arithmetic by hand, and the model's numbers behind it. */
#include <math.h>
#include <string.h>

#include "by_hand.h"
#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "lesson.h"
#include "lesson_sheet.h"

START_TEST(a_figure_is_worth_what_is_printed)
{
    struct cg_figure figure = cg_figure_of("x", 2.71828, 2, "mm");
    ck_assert_str_eq(figure.text, "2.72");
    ck_assert_double_eq(figure.value, 2.72);
    ck_assert_str_eq(cg_figure_of("x", -1e-9, 3, "").text, "0.000");
    ck_assert_str_eq(cg_figure_plain(1e6).text, "1000000");
    ck_assert_str_eq(cg_figure_plain(0.685).text, "0.685");
}
END_TEST

START_TEST(digits_that_count)
{
    static const struct {
        double value;
        const char *text;
    } row[] = {{0.05273, "0.0527"}, {5.273, "5.27"},     {527.3, "527"},
               {5273.0, "5273"},    {-0.5273, "-0.527"}, {0.0, "0.00"}};
    for (size_t i = 0; i < COUNT_OF(row); i++)
        ck_assert_str_eq(cg_figure_of("x", row[i].value, -3, "").text,
                         row[i].text);
}
END_TEST

/* The result comes from the rounded operands, from left to right. */
START_TEST(a_line_goes_on_with_rounded_numbers)
{
    struct cg_figure a = cg_figure_of("a", 1.2345, 1, "");
    struct cg_figure b = cg_figure_of("b", 3.4567, 1, "");
    struct cg_hand product = cg_hand_work("p", "", 4, "x", CG_FIGURES(a, b));
    ck_assert_str_eq(product.result.text, "4.2000"); /* 1.2 x 3.5 */
    struct cg_hand chain =
        cg_hand_work("c", "", 3, "/x", CG_FIGURES(a, b, cg_figure_plain(2)));
    ck_assert_str_eq(chain.result.text, "0.686"); /* (1.2 / 3.5) x 2 */
    struct cg_hand sum = cg_hand_work("s", "", 1, "-+", CG_FIGURES(a, b, b));
    ck_assert_str_eq(sum.result.text, "1.2");
    struct cg_hand root = cg_hand_root("r", "m", 2, &b);
    ck_assert_str_eq(root.result.text, "1.87");
    struct cg_hand_text lines = {""};
    cg_hand_add(&lines, &chain, true);
    cg_hand_add(&lines, &root, false);
    ck_assert_str_eq(lines.text, "  c = a / b x 2\n"
                                 "    = 1.2 / 3.5 x 2 = 0.686\n"
                                 "  r = sqrt 3.5 = 1.87 m\n");
}
END_TEST

static struct cg_lesson lesson_of(const struct cg_case *c)
{
    struct cg_lesson lesson;
    struct cg_error error = {0};
    enum cg_status status = cg_lesson_find(c, &lesson, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return lesson;
}

/* The lesson's own boost is the answer of find and its settled closure. */
START_TEST(the_model_behind_it_is_that_of_find)
{
    static const char *const engine[] = {PLAIN_FOUR, BOOSTED_FOUR, IRON_SIX};
    struct cg_case c = case_of(engine[_i], NULL, 0);
    struct cg_lesson lesson = lesson_of(&c);
    const struct cg_lesson_boost *own = &lesson.boost[lesson.own];
    ck_assert_double_eq(own->boost, c.charge.boost);
    check_within(own->growth.closure, lesson.answer.settled_closure, 1e-12,
                 "settled closure");
    check_within(own->cold_gap, lesson.answer.top.cold_gap, 0.0, "the gap");
    for (int i = 1; i < CG_LESSON_BOOSTS; i++) {
        const struct cg_lesson_boost *a = &lesson.boost[i - 1], *b = a + 1;
        ck_assert(b->boost > a->boost);
        ck_assert(b->crown_flux > a->crown_flux);
        ck_assert(b->growth.ring_temperature > a->growth.ring_temperature);
        ck_assert(b->growth.closure > a->growth.closure);
    }
    check_close(lesson.heat.crown_heat * c.engine.speed / 2.0 /
                    (CG_PI / 4.0 * c.engine.bore * c.engine.bore),
                own->crown_flux, 0.02, "heat a cycle is the mean flux");
}
END_TEST

/* Equal steps of time from the start to the tightest instant, where the closure
 * is the answer's. */
START_TEST(instants_lead_to_the_tightest)
{
    static const char *const duty[] = {
        "duty.name=dyno_pull", "duty.name=settled", "duty.name=road_lap",
        "duty.name=cold_start_abuse"};
    struct cg_case c = case_of(IRON_SIX, &duty[_i], 1);
    struct cg_lesson lesson = lesson_of(&c);
    const struct cg_extremes *e = &lesson.answer.extremes;
    const struct cg_lesson_instant *at = lesson.instant;
    double until = e->time > 0.0 ? e->time : lesson.answer.duration;
    for (int i = 0; i < CG_LESSON_INSTANTS; i++)
        check_within(at[i].time, until * i / (CG_LESSON_INSTANTS - 1), 1e-6,
                     "equal steps");
    check_within(at[CG_LESSON_INSTANTS - 1].growth.closure, e->closure, 2e-7,
                 "tightest at the last");
}
END_TEST

/* What the lesson teaches by hand is near what the model knows better. */
START_TEST(the_hand_is_near_the_model)
{
    static const char *const engine[] = {BOOSTED_FOUR, IRON_SIX};
    struct cg_case c = case_of(engine[_i], NULL, 0);
    struct cg_lesson lesson = lesson_of(&c);
    struct cg_lesson_sheet sheet;
    cg_lesson_sheet_set(&c, &lesson, false, &sheet);
    check_within(cg_lesson_own(&sheet)->closure.result.value,
                 lesson.boost[lesson.own].growth.closure * 1e3, 0.005,
                 "closure, mm");
    check_close(sheet.charge.air.result.value, lesson.heat.air * 1e3, 0.02,
                "gas law, g");
    check_close(sheet.burn.fuel.result.value, lesson.heat.fuel * 1e3, 0.02,
                "fuel, g");
    /* What friction and gas bring the ring besides is left out by hand. */
    double ring = lesson.heat.ring - CG_ZERO_CELSIUS;
    ck_assert_double_lt(sheet.ladder.ring.result.value, ring);
    ck_assert_double_gt(sheet.ladder.ring.result.value,
                        ring - 0.125 * sheet.ladder.fall.result.value);
    if (lesson.wall.has_block)
        check_close(sheet.layers.joined.result.value,
                    lesson.wall.bore_strain * 1e6, 0.03,
                    "two thin rings against thick cylinders");
}
END_TEST

/* Ends that touch: by hand as cg_gap_butting. */
START_TEST(overlap_by_hand)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_lesson lesson = lesson_of(&c);
    struct cg_lesson_sheet sheet;
    struct cg_butting butting;
    cg_lesson_sheet_set(&c, &lesson, false, &sheet);
    const struct cg_ring_case *ring = &c.ring[CG_RING_TOP];
    double modulus =
        cg_curve_at(&c.ring_material[CG_RING_TOP].modulus,
                    lesson.boost[lesson.own].growth.ring_temperature);
    cg_gap_butting(c.engine.bore, ring->depth, modulus,
                   sheet.ends.overlap.result.value * 1e-3, ring->pressure,
                   &butting);
    check_close(sheet.ends.stress.result.value, butting.hoop_stress / 1e6,
                0.005, "stress, MPa");
    check_close(sheet.ends.times.result.value, butting.times_tension, 0.01,
                "times its own tension");
}
END_TEST

/* The closure of the sum is worked out by hand at the tightest instant, and the
 * gap at the start is what the start's growths leave. */
START_TEST(the_duty_by_hand)
{
    static const char *const duty[] = {
        "duty.name=dyno_pull", "duty.name=settled", "duty.name=lean_event",
        "duty.name=cold_start_abuse"};
    struct cg_case c = case_of(IRON_SIX, &duty[_i], 1);
    struct cg_lesson lesson = lesson_of(&c);
    struct cg_lesson_sheet sheet;
    cg_lesson_sheet_set(&c, &lesson, false, &sheet);
    const struct cg_lesson_over_time *over = &sheet.over_time;
    check_within(over->tightest.closure.result.value,
                 lesson.answer.top.closure * 1e3, 0.003, "closure, mm");
    check_within(sheet.sum.gap.figure[0].value,
                 lesson.answer.top.closure * 1e3, 0.0006, "of the sum, mm");
    check_within(over->left.result.value,
                 sheet.sum.cold_gap.value -
                     lesson.instant[0].growth.closure * 1e3,
                 0.003, "gap at the start, mm");
}
END_TEST

/* The allowance by hand: so many deviations; what stays of it when one input is
 * known adds up with that input's part as squares do. */
START_TEST(what_is_not_known_by_hand)
{
    static const char *const engine[] = {PLAIN_FOUR, BOOSTED_FOUR, IRON_SIX};
    struct cg_case c = case_of(engine[_i], NULL, 0);
    struct cg_lesson lesson = lesson_of(&c);
    struct cg_lesson_sheet sheet;
    cg_lesson_sheet_set(&c, &lesson, false, &sheet);
    const struct cg_lesson_unknown *unknown = &sheet.unknown;
    const struct cg_answer *answer = &lesson.answer;
    double sum = unknown->others;
    ck_assert(!unknown->known && unknown->inputs == CG_LESSON_INPUTS);
    for (size_t i = 0; i < unknown->inputs; i++) {
        sum += unknown->input[i]->share;
        for (size_t j = 0; i == 0 && j < answer->contributions; j++)
            ck_assert_double_le(answer->contribution[j].share,
                                unknown->input[0]->share);
        if (i > 0)
            ck_assert_double_le(unknown->input[i]->share,
                                unknown->input[i - 1]->share);
    }
    check_within(sum, 1.0, 1e-9, "the shares");
    check_close(unknown->deviations.result.value,
                answer->top.spread / answer->sigma, 0.02, "deviations");
    ck_assert(unknown->one_leads);
    double all = answer->top.spread * 1e3;
    double then = unknown->then.result.value;
    check_close(then * then, all * all * (1.0 - unknown->input[0]->share),
                0.03, "what stays, squared");
}
END_TEST

/* Nothing uncertain: no sums of what is not known, and a gap all the same. */
START_TEST(all_known)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_lesson lesson = lesson_of(&c);
    struct cg_lesson_sheet sheet;
    lesson.answer.contributions = 0;
    lesson.answer.sigma = lesson.answer.top.spread = 0.0;
    cg_lesson_sheet_set(&c, &lesson, false, &sheet);
    ck_assert(sheet.unknown.known);
    ck_assert_uint_eq(sheet.unknown.inputs, 0);
    ck_assert_double_gt(sheet.sum.gap.result.value, 0.0);
}
END_TEST

/* The burn is later than without knock by what is shown, and not where nothing
 * knocks. */
START_TEST(knock_by_hand)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_lesson lesson = lesson_of(&c);
    struct cg_lesson_sheet sheet;
    cg_lesson_sheet_set(&c, &lesson, false, &sheet);
    check_within(sheet.knock.retard.result.value,
                 lesson.answer.performance.burn50_deg -
                     c.combustion.burn50_deg,
                 0.11, "retard, deg");
    ck_assert_double_gt(sheet.knock.retard.result.value, 0.0);
}
END_TEST

START_TEST(no_run_no_lesson)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_lesson lesson;
    struct cg_error error = {0};
    c.duty.segments = 0;
    ck_assert_int_eq(cg_lesson_find(&c, &lesson, &error), CG_BAD_INPUT);
    ck_assert_str_eq(error.text, "duty.segments: none given, at least one");
}
END_TEST

int main(void)
{
    TCase *hand = tcase_create("by_hand");
    tcase_add_test(hand, a_figure_is_worth_what_is_printed);
    tcase_add_test(hand, digits_that_count);
    tcase_add_test(hand, a_line_goes_on_with_rounded_numbers);
    TCase *model = tcase_create("model");
    tcase_set_timeout(model, 120);
    tcase_add_loop_test(model, the_model_behind_it_is_that_of_find, 0, 3);
    tcase_add_loop_test(model, instants_lead_to_the_tightest, 0, 4);
    tcase_add_loop_test(model, the_hand_is_near_the_model, 0, 2);
    tcase_add_test(model, overlap_by_hand);
    tcase_add_loop_test(model, the_duty_by_hand, 0, 4);
    tcase_add_loop_test(model, what_is_not_known_by_hand, 0, 3);
    tcase_add_test(model, all_known);
    tcase_add_test(model, knock_by_hand);
    tcase_add_test(model, no_run_no_lesson);
    Suite *suite = suite_create("lesson");
    suite_add_tcase(suite, hand);
    suite_add_tcase(suite, model);
    return check_run(suite);
}
