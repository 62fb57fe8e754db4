/* What to file to: the larger of the gap needed and the rule, and which. */
#include <math.h>

#include "advice.h"
#include "check_close.h"

static struct cg_answer answer_of(double needed, double rule)
{
    struct cg_answer answer = {0};
    answer.top.cold_gap = needed;
    answer.shop_rule = rule;
    answer.second.cold_gap = needed + 0.05e-3;
    answer.second_rule = rule + 0.10e-3;
    return answer;
}

START_TEST(rule_where_it_is_larger)
{
    struct cg_answer answer = answer_of(0.46e-3, 0.50e-3);
    struct cg_advice advice = cg_advice_of(&answer);
    ck_assert(advice.file_to_top == answer.shop_rule);
    ck_assert_int_eq(advice.from_top, CG_ADVICE_RULE);
    ck_assert(advice.file_to_second == answer.second_rule);
    ck_assert_int_eq(advice.from_second, CG_ADVICE_RULE);
}
END_TEST

START_TEST(model_where_it_is_larger)
{
    struct cg_answer answer = answer_of(0.70e-3, 0.50e-3);
    struct cg_advice advice = cg_advice_of(&answer);
    ck_assert(advice.file_to_top == answer.top.cold_gap);
    ck_assert_int_eq(advice.from_top, CG_ADVICE_MODEL);
    ck_assert(advice.file_to_second == answer.second.cold_gap);
    ck_assert_int_eq(advice.from_second, CG_ADVICE_MODEL);
}
END_TEST

/* Each ring by itself: 0.52 + 0.05 mm is below 0.50 + 0.10 mm. */
START_TEST(each_ring_by_itself)
{
    struct cg_answer answer = answer_of(0.52e-3, 0.50e-3);
    struct cg_advice advice = cg_advice_of(&answer);
    ck_assert_int_eq(advice.from_top, CG_ADVICE_MODEL);
    ck_assert_int_eq(advice.from_second, CG_ADVICE_RULE);
}
END_TEST

START_TEST(equal_is_the_models)
{
    struct cg_answer answer = answer_of(0.50e-3, 0.50e-3 * (1.0 + 1e-13));
    struct cg_advice advice = cg_advice_of(&answer);
    ck_assert(advice.file_to_top == answer.top.cold_gap);
    ck_assert_int_eq(advice.from_top, CG_ADVICE_MODEL);
}
END_TEST

/* A rule is no way out where the model finds that no gap will do. */
START_TEST(none_where_no_gap_will_do)
{
    struct cg_answer answer = answer_of(9e-3, 10e-3);
    answer.verdict.beyond = true;
    struct cg_advice advice = cg_advice_of(&answer);
    ck_assert(isnan(advice.file_to_top));
    ck_assert_int_eq(advice.from_top, CG_ADVICE_NONE);
    ck_assert(advice.file_to_second == answer.second_rule);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("advice");
    TCase *all = tcase_create("advice");
    tcase_add_test(all, rule_where_it_is_larger);
    tcase_add_test(all, model_where_it_is_larger);
    tcase_add_test(all, each_ring_by_itself);
    tcase_add_test(all, equal_is_the_models);
    tcase_add_test(all, none_where_no_gap_will_do);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
