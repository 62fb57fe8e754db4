/* An answer over all that the engine must survive against each duty alone. */
#include <math.h>
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "less_boost.h"

#define IDENTITY "by definition"

/* With the list that the reader makes of margin.duties. */
static struct cg_case listed(const char *const *set, size_t sets)
{
    struct cg_case c;
    struct cg_error error = {0};
    enum cg_status status = cg_config_read(BOOSTED_FOUR, set, sets, &c, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return c;
}

static struct cg_answer answer_of(const struct cg_case *c)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_answer answer;
    struct cg_error error = {0};
    enum cg_status status =
        cg_answer_find(c, run, 0.0, NULL, NULL, &answer, &error);
    if (status == CG_OK)
        status = cg_answer_second(c, run, &answer, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_duty_run_free(run);
    return answer;
}

static double need(const struct cg_gap_sum *sum)
{
    return sum->closure + sum->spread + sum->residual;
}

START_TEST(the_list_is_read_in_its_order)
{
    static const char *const names[] = {"dyno_pull", "settled",
                                        "cold_start_abuse", "lean_event"};
    static const char *const none[] = {"margin.duties="};
    static const char *const twice[] = {
        "margin.duties=settled, tow_grade settled dyno_pull"};
    struct cg_case c = listed(NULL, 0);
    ck_assert_int_eq(c.survive.duties, 3);
    ck_assert_str_eq(c.duty.name, names[0]);
    for (int i = 0; i < 3; i++)
        ck_assert_str_eq(c.survive.duty[i].name, names[i + 1]);
    ck_assert_int_eq(listed(none, 1).survive.duties, 0);
    c = listed(twice, 1);
    ck_assert_int_eq(c.survive.duties, 2);
    ck_assert_str_eq(c.survive.duty[0].name, "settled");
    ck_assert_str_eq(c.survive.duty[1].name, "tow_grade");
}
END_TEST

/* One of the list is as it is shipped, whatever the duty asked for begins
 * with. */
START_TEST(one_of_the_list_is_as_it_is_shipped)
{
    static const char *const cruise[] = {"duty.cruise_load=0.5",
                                         "duty.start=cold"};
    static const char *const lean[] = {"duty.name=lean_event"};
    struct cg_case c = listed(cruise, 2), own = listed(lean, 1);
    const struct cg_duty_case *third = &c.survive.duty[2];
    ck_assert_str_eq(third->name, "lean_event");
    ck_assert_int_eq(third->start, own.duty.start);
    ck_assert_double_eq(third->cruise_load, own.duty.cruise_load);
    ck_assert_double_eq(third->cruise_speed, own.duty.cruise_speed);
    ck_assert_int_eq(third->segments, own.duty.segments);
}
END_TEST

/* Each duty of the list is what it is alone, but for the tolerance of the
 * films that a run begins with; the hardest decides. */
START_TEST(each_as_alone_and_the_hardest_decides)
{
    struct cg_case c = listed(NULL, 0);
    struct cg_answer all = answer_of(&c);
    ck_assert_uint_eq(all.duties, 5);
    ck_assert_str_eq(all.duty[4].name, CG_LESS_BOOST_NAME);
    for (size_t i = 0; i < all.duties; i++) {
        const struct cg_duty_answer *duty = &all.duty[i];
        struct cg_case alone = c;
        alone.survive.duties = 0;
        size_t as = i == 4 ? all.less_of : i;
        if (as > 0)
            alone.duty = c.survive.duty[as - 1];
        if (i == 4)
            alone.charge.boost = all.less_boost;
        struct cg_answer one = answer_of(&alone);
        if (i < 4)
            ck_assert_str_eq(duty->name, alone.duty.name);
        ck_assert_str_eq(cg_answer_duty(&c, &all, i)->name, alone.duty.name);
        check_within(duty->extremes.closure, one.extremes.closure, 0.2e-6,
                     "alone");
        check_within(duty->top.spread, one.top.spread, 0.5e-6, "alone");
        check_within(duty->extremes.time, one.extremes.time, 0.05, "alone");
        ck_assert_double_le(need(&duty->top), need(&all.duty[all.hardest].top));
        ck_assert_double_le(need(&duty->second),
                            need(&all.duty[all.hardest_second].second));
        ck_assert_double_ge(all.file_to_top.at_least, need(&duty->top));
        ck_assert_double_ge(all.file_to_second.at_least, need(&duty->second));
        ck_assert_double_le(one.file_to_top.file_to, all.file_to_top.file_to);
    }
    ck_assert_ptr_eq(cg_answer_needed(&all), &all.duty[all.hardest].top);
    ck_assert_double_eq(all.verdict.need, need(cg_answer_needed(&all)));
}
END_TEST

/* The need does not fall (1 um) as the boost asked for rises, also where knock
 * retards the spark; what is looked at below it is where that begins. */
START_TEST(what_stands_a_boost_stands_less)
{
    static const char *const boosts[] = {
        "charge.boost_kPa=100", "charge.boost_kPa=120", "charge.boost_kPa=150",
        "charge.boost_kPa=220"};
    double least = 0.0;
    for (size_t i = 0; i < COUNT_OF(boosts); i++) {
        struct cg_case c = listed(&boosts[i], 1);
        struct cg_answer answer = answer_of(&c);
        bool late =
            answer.performance.burn50_deg > c.combustion.burn50_deg + 0.1;
        ck_assert_int_eq(late, i > 0);
        ck_assert_int_eq(isnan(answer.less_boost), !late);
        printf("%.2f um, with %.1f kPa\n", answer.verdict.need * 1e6,
               answer.less_boost * 1e-3);
        ck_assert_double_ge(answer.verdict.need, least - 1e-6);
        least = answer.verdict.need;
        if (!late)
            continue;
        c.charge.boost = answer.less_boost;
        struct cg_answer less = answer_of(&c);
        check_within(less.performance.knock_unretarded, 1.0, 0.01,
                     "where knock begins, walls as they are there");
        ck_assert_double_ge(answer.verdict.need, less.verdict.need - 1e-6);
    }
}
END_TEST

/* Given back, what to file to fits, and asks for the same second gap. */
START_TEST(given_back_it_fits_and_changes_nothing)
{
    struct cg_case c = listed(NULL, 0);
    struct cg_answer asked = answer_of(&c);
    ck_assert(cg_answer_stands(&asked));
    c.ring[CG_RING_TOP].cold_gap = asked.file_to_top.file_to;
    c.ring[CG_RING_SECOND].cold_gap = asked.file_to_second.file_to;
    struct cg_answer back = answer_of(&c);
    ck_assert_int_eq(back.verdict.fits, CG_FITS);
    ck_assert_int_eq(back.second_verdict.fits, CG_FITS);
    ck_assert(cg_answer_stands(&back));
    check_within(back.file_to_top.file_to, asked.file_to_top.file_to, 1e-12,
                 IDENTITY);
    check_within(back.file_to_second.file_to, asked.file_to_second.file_to,
                 1e-12, IDENTITY);
}
END_TEST

/* In three, at the need and at what to file to; below either it does not
 * stand. */
START_TEST(a_gap_is_judged_over_the_list)
{
    struct cg_case c = listed(NULL, 0);
    struct cg_answer asked = answer_of(&c);
    double maker = asked.verdict.need + 0.1e-3;
    c.ring[CG_RING_TOP].maker_minimum = maker;
    const struct {
        double gap;
        enum cg_fits fits;
    } rows[] = {{asked.verdict.need - 1e-6, CG_FITS_NOT},
                {asked.verdict.need + 1e-6, CG_FITS_BELOW},
                {maker - 1e-6, CG_FITS_BELOW},
                {maker, CG_FITS}};
    for (size_t i = 0; i < COUNT_OF(rows); i++) {
        c.ring[CG_RING_TOP].cold_gap = rows[i].gap;
        struct cg_answer answer = answer_of(&c);
        ck_assert_int_eq(answer.file_to_top.from, CG_ADVICE_MAKER);
        ck_assert_msg(answer.verdict.fits == rows[i].fits, "row %zu", i);
        ck_assert(answer.verdict.safe == (rows[i].fits != CG_FITS_NOT));
        ck_assert(cg_answer_stands(&answer) == (rows[i].fits == CG_FITS));
    }
}
END_TEST

/* Evidence takes the rule's place, never the model's or the maker's. */
START_TEST(what_is_earned_stands_for_the_rule)
{
    static const char *const alone[] = {"margin.duties="};
    struct cg_case c = listed(alone, 1);
    struct cg_answer before = answer_of(&c);
    ck_assert_int_eq(before.file_to_top.from, CG_ADVICE_RULE);
    double shown = 0.5 * (before.verdict.need + before.shop_rule);
    c.ends.clear_runs = 1;
    c.ends.clear[0] = (struct cg_clear_run){shown, before.extremes.closure, 0};
    struct cg_answer after = answer_of(&c);
    ck_assert_int_eq(after.file_to_top.from, CG_ADVICE_EVIDENCE);
    check_within(after.file_to_top.at_least, shown, 1e-12, IDENTITY);
    c.ends.clear[0].gap = 0.0;
    after = answer_of(&c);
    check_within(after.file_to_top.at_least, after.verdict.need, 1e-12,
                 IDENTITY);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("duties");
    TCase *all = tcase_create("duties");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, the_list_is_read_in_its_order);
    tcase_add_test(all, one_of_the_list_is_as_it_is_shipped);
    tcase_add_test(all, each_as_alone_and_the_hardest_decides);
    tcase_add_test(all, what_stands_a_boost_stands_less);
    tcase_add_test(all, given_back_it_fits_and_changes_nothing);
    tcase_add_test(all, a_gap_is_judged_over_the_list);
    tcase_add_test(all, what_is_earned_stands_for_the_rule);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
