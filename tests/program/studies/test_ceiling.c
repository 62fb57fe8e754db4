/* The boost ceiling against the answer it inverts. */
#include <math.h>

#include "case_of.h"
#include "ceiling.h"
#include "check_close.h"

static struct cg_ceiling ceiling_of(const struct cg_case *c, double gap)
{
    struct cg_ceiling ceiling;
    struct cg_error error = {0};
    enum cg_status status = cg_ceiling_find(c, gap, &ceiling, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return ceiling;
}

/* What a gap must be to fit. */
static double need_at(const struct cg_case *c, double boost)
{
    struct cg_ceiling_point point;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_ceiling_at(c, boost, &point, &error), CG_OK);
    ck_assert_double_ge(point.file_to.at_least, point.need);
    ck_assert_double_ge(point.file_to.at_least, point.file_to.rule);
    return point.file_to.at_least;
}

/* What is needed at a boost has its ceiling there, where no less boost needs
 * more: below the knock limit and far above. */
START_TEST(round_trip)
{
    static const double boosts[] = {40e3, 80e3, 300e3};
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_ceiling found = ceiling_of(&c, need_at(&c, boosts[_i]));
    check_within(found.boost, boosts[_i], 200.0, "the same need, inverted");
}
END_TEST

/* What is needed may fall where the knock limit retards the burn, in one duty
 * or another, until the retard is at its most: whatever the gap, it is enough at the ceiling and at every
 * boost below, and not just above. */
START_TEST(no_lower_boost_needs_more)
{
    enum { BOOSTS = 31 };
    const double step = 10e3;
    double need[BOOSTS], most = 0.0;
    struct cg_case c = case_of(_i == 0 ? BOOSTED_FOUR : IRON_SIX, NULL, 0);
    for (int i = 0; i < BOOSTS; i++)
        need[i] = need_at(&c, i * step);
    for (int k = 8; k < BOOSTS; k += 6) {
        double gap = need[k] + 0.1e-6;
        struct cg_ceiling found = ceiling_of(&c, gap);
        printf("gap %.1f um, of %.0f kPa: ceiling %.1f kPa\n", gap * 1e6,
               k * step / 1e3, found.boost / 1e3);
        for (int i = 0; i < BOOSTS && i * step <= found.boost; i++)
            ck_assert_msg(need[i] <= gap, "ceiling %.1f kPa, but %.0f needs "
                          "%.1f um", found.boost / 1e3, i * step / 1e3,
                          need[i] * 1e6);
        most = fmax(most, found.boost);
        ck_assert(found.always_enough ||
                  need_at(&c, found.boost + 500.0) > gap);
    }
    ck_assert_double_gt(most, 250e3);
}
END_TEST

/* The rounded answer of find stands its own boost, and not much more than the
 * filing step is worth. */
START_TEST(answer_of_find_stands_its_boost)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    double step = c.margin.filing_step;
    double gap = step * ceil(need_at(&c, c.charge.boost) / step);
    struct cg_ceiling found = ceiling_of(&c, gap);
    ck_assert(found.boost >= c.charge.boost - 100.0);
    ck_assert_msg(need_at(&c, found.boost) <= gap + 1e-9, "ceiling is safe");
    ck_assert_msg(need_at(&c, found.boost + 1e3) > gap, "1 kPa more is not");
}
END_TEST

START_TEST(outside_the_range)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    ck_assert(ceiling_of(&c, 0.1e-3).never_enough);
    struct cg_ceiling wide = ceiling_of(&c, 5e-3);
    ck_assert(wide.always_enough && wide.boost == CG_CEILING_MOST);
}
END_TEST

/* Above the ceiling the time to touch comes sooner the smaller the gap. */
START_TEST(time_to_touch)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    double before = INFINITY;
    static const double gaps[] = {0.21e-3, 0.18e-3, 0.15e-3};
    for (size_t i = 0; i < COUNT_OF(gaps); i++) {
        struct cg_ceiling found = ceiling_of(&c, gaps[i]);
        ck_assert_msg(found.touch_time < before, "gap %g mm: %g s",
                      gaps[i] * 1e3, found.touch_time);
        ck_assert(found.residual_time <= found.touch_time);
        before = found.touch_time;
    }
    struct cg_ceiling safe =
        ceiling_of(&c, need_at(&c, c.charge.boost) + 1e-5);
    ck_assert(isnan(safe.touch_time) && isnan(safe.residual_time));
}
END_TEST

START_TEST(no_charger_is_refused)
{
    struct cg_case c = case_of(PLAIN_FOUR, NULL, 0);
    struct cg_ceiling found;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_ceiling_find(&c, 0.4e-3, &found, &error),
                     CG_BAD_INPUT);
    ck_assert(error.text[0] != '\0');
}
END_TEST

/* A case that cannot be run has no ceiling, and the reason is told. */
START_TEST(no_run_no_ceiling)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_ceiling found;
    struct cg_error error = {0};
    c.duty.segments = 0;
    ck_assert_int_eq(cg_ceiling_find(&c, 0.4e-3, &found, &error),
                     CG_BAD_INPUT);
    ck_assert_str_eq(error.text, "duty.segments: none given, at least one");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ceiling");
    TCase *all = tcase_create("ceiling");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, round_trip, 0, 3);
    tcase_add_loop_test(all, no_lower_boost_needs_more, 0, 2);
    tcase_add_test(all, answer_of_find_stands_its_boost);
    tcase_add_test(all, outside_the_range);
    tcase_add_test(all, time_to_touch);
    tcase_add_test(all, no_charger_is_refused);
    tcase_add_test(all, no_run_no_ceiling);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
