/* An engine that air cools: heat closes, trends of air and barrel, nothing of a
 * coolant; and what the choke does to the gap. */
#include <gsl/gsl_errno.h>

#include "case_of.h"
#include "case_ready.h"
#include "check_close.h"
#include "constants.h"
#include "heat_balance.h"
#include "outside.h"

#define AIR_TWIN CG_TEST_CONFIGS "/engines/air_twin.cfg"

static struct cg_case settled(const char *const *more, size_t count)
{
    const char *set[8] = {"duty.name=settled"};
    for (size_t i = 0; i < count; i++)
        set[1 + i] = more[i];
    return case_of(AIR_TWIN, set, count + 1);
}

static struct cg_extremes with(const char *change)
{
    struct cg_case c = settled(&change, change != NULL);
    return extremes_of(&c);
}

START_TEST(heat_closes)
{
    struct cg_case c = case_of(AIR_TWIN, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    struct cg_extremes extremes;
    struct cg_heat_ledger ledger = {0};
    struct cg_error error = {0};
    ck_assert_int_eq(cg_answer_extremes(&c, run, 0.0, NULL, NULL, &extremes,
                                        &ledger, &error),
                     CG_OK);
    ck_assert_double_lt(fabs(ledger.residual), 1e-9);
    ck_assert_double_eq(ledger.in[CG_SIDE_COOLANT], 0.0);
    ck_assert_double_lt(ledger.in[CG_SIDE_AIR], 0.0);
    struct cg_heat_balance balance =
        cg_heat_balance_at(&c, run->thermal, &run->point[run->full_load]);
    const double *part = balance.part;
    double given = part[CG_BALANCE_PISTON] + part[CG_BALANCE_HEAD] +
                   part[CG_BALANCE_BORE] + part[CG_BALANCE_CREVICE] +
                   part[CG_BALANCE_PORT] + part[CG_BALANCE_EVAPORATION] +
                   part[CG_BALANCE_FRICTION];
    ck_assert(balance.air);
    check_close(balance.coolant + balance.oil, given, 0.03, "two models");
    cg_duty_run_free(run);
}
END_TEST

/* Nothing that only a coolant does, nor anything that moves with its settings.
 */
START_TEST(no_coolant)
{
    struct cg_case c = settled(NULL, 0), other = c;
    other.cooling.coolant_temperature = 400.0;
    other.cooling.coolant_coefficient *= 3.0;
    other.cooling.head_coefficient *= 3.0;
    other.cooling.deck_coefficient = other.cooling.dry_coefficient = 77.0;
    other.cooling.coolant_pressure = 90e3;
    other.bore.jacket_top = 0.03;
    struct cg_extremes a = extremes_of(&c), b = extremes_of(&other);
    ck_assert_double_eq(a.closure, b.closure);
    ck_assert_double_eq(a.crown_max, b.crown_max);
    ck_assert(isnan(a.boiling_time) && isinf(a.boiling_point));
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer answer;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error),
                     CG_OK);
    bool fins = false, cylinder = false;
    for (size_t i = 0; i < answer.contributions; i++) {
        const char *name = answer.contribution[i].name;
        ck_assert_msg(strstr(name, "coolant") == NULL, "%s", name);
        fins |=
            strcmp(name, "fins") == 0 && answer.contribution[i].shift != 0.0;
        cylinder |= strcmp(name, "cylinder_fins") == 0 &&
                    answer.contribution[i].shift != 0.0;
    }
    ck_assert(fins && cylinder);
    ck_assert(!answer.duty[0].limits.of[CG_PAST_COOLANT].past &&
              !answer.duty[0].limits.of[CG_PAST_FLUX].past);
    cg_duty_run_free(run);
}
END_TEST

/* Nor anything of air where coolant cools. */
START_TEST(no_fins)
{
    const char *const set = "duty.name=settled";
    struct cg_case c = case_of(PLAIN_FOUR, &set, 1), other = c;
    other.cooling.air = (struct cg_air_case){.rise = 99.0,
                                             .speed = 9.0,
                                             .drive = CG_AIR_FAN,
                                             .fins = 99.0,
                                             .deck = 9.0,
                                             .lower = 9.0,
                                             .head = 99.0,
                                             .top = 0.01,
                                             .length = 0.01};
    ck_assert_double_eq(extremes_of(&c).closure, extremes_of(&other).closure);
}
END_TEST

START_TEST(more_air_cools)
{
    struct cg_extremes slow = with("cooling.air_speed_m_s=20"),
                       usual = with(NULL),
                       fast = with("cooling.air_speed_m_s=45");
    ck_assert_double_gt(slow.liner_top_max, usual.liner_top_max + 5.0);
    ck_assert_double_gt(usual.liner_top_max, fast.liner_top_max + 5.0);
    ck_assert_double_gt(slow.ring_top_max, usual.ring_top_max);
    ck_assert_double_gt(usual.ring_top_max, fast.ring_top_max);
    ck_assert_double_gt(slow.crown_max, fast.crown_max);
}
END_TEST

START_TEST(barrel_follows_the_air)
{
    struct cg_extremes usual = with(NULL), hot = with("cooling.air_rise_K=50");
    double rise = hot.liner_top_max - usual.liner_top_max;
    ck_assert_msg(rise > 12.0 && rise < 30.0, "%g K of 30", rise);
    ck_assert_double_gt(with("charge.ambient_pressure_kPa=80").coolant_side_max,
                        0.0);
    ck_assert_double_gt(usual.coolant_side_max - CG_ZERO_CELSIUS, 60.0);
}
END_TEST

/* At rated speed a fan is as good as a stream, below it is not. */
START_TEST(fan_tires_with_the_engine)
{
    struct cg_case c = settled(NULL, 0);
    hold(&c, 1.0, 1.0);
    c.duty.start = CG_START_SETTLED;
    struct cg_case fan = c;
    fan.cooling.air.drive = CG_AIR_FAN;
    check_close(extremes_of(&fan).liner_top_max, extremes_of(&c).liner_top_max,
                1e-9, "the same flow");
    c.duty.segment[0].speed = c.duty.segment[0].speed_end =
        0.5 * c.engine.speed;
    fan.duty.segment[0] = c.duty.segment[0];
    ck_assert_double_gt(extremes_of(&fan).liner_top_max,
                        extremes_of(&c).liner_top_max + 10.0);
}
END_TEST

/* What is filed is the same ring: its gap is pi times the choke less in the
 * choke, and so is what closes. */
START_TEST(where_the_gap_is_measured)
{
    struct cg_extremes in = with(NULL),
                       below = with("bore.gap_measured_at=skirt");
    struct cg_case c = settled(NULL, 0);
    check_within(below.closure - in.closure, CG_PI * c.bore.choke.narrower,
                 1e-9, "geometry");
    check_within(below.second_closure - in.second_closure,
                 CG_PI * c.bore.choke.narrower, 1e-9, "geometry");
    ck_assert_double_eq(below.ring_top_max, in.ring_top_max);
    check_within(below.ring_growth, in.ring_growth, 1e-9, "the same ring");
}
END_TEST

/* Cold, the choke takes of the gap; hot, a straight bore is widest at the top,
 * and one with a choke is straighter. */
START_TEST(choke_straightens_the_hot_barrel)
{
    const char *const set[] = {"bore.choke_mm=0", "bore.gap_measured_at=skirt"};
    struct cg_case straight = settled(set, 2), choked = settled(set + 1, 1);
    struct cg_extremes a = extremes_of(&straight), b = extremes_of(&choked);
    ck_assert_double_ge(b.closure, a.closure);
    double most = CG_PI * choked.bore.choke.narrower;
    ck_assert_double_le(b.closure, a.closure + most);
}
END_TEST

START_TEST(duties_set_no_coolant)
{
    struct cg_case c = settled(NULL, 0);
    struct cg_error error = {0};
    ck_assert_msg(cg_case_ready(&c, &error) == CG_OK, "%s", error.text);
    c.duty.segment[0].coolant_temperature = 350.0;
    ck_assert_int_eq(cg_case_ready(&c, &error), CG_BAD_INPUT);
    ck_assert_ptr_nonnull(strstr(error.text, "coolant"));
}
END_TEST

/* A segment may have less of the air, alone or in a long list that is one
 * course. */
START_TEST(less_air_for_a_while)
{
    struct cg_case c = settled(NULL, 0), less = c;
    struct cg_course *list = NULL, *course = NULL;
    struct cg_error error = {0};
    hold(&c, 120.0, 1.0);
    c.duty.start = CG_START_CRUISE;
    less = c;
    less.duty.segment[0].air = 0.4;
    less.duty.segment[1] = less.duty.segment[0];
    less.duty.segment[1].air = 0.0;
    less.duty.segments = 2;
    struct cg_extremes usual = extremes_of(&c), hot = extremes_of(&less);
    ck_assert_double_gt(hot.liner_top_max, usual.liner_top_max + 15.0);
    ck_assert_int_eq(cg_course_of_segments(less.duty.segment, 2,
                                           cg_outside_temperature(&c), &list,
                                           &course, &error),
                     CG_OK);
    less.duty.course = course;
    struct cg_extremes mapped = extremes_of(&less);
    check_within(mapped.closure, hot.closure, 1e-6, "the same duty");
    check_within(mapped.liner_top_max, hot.liner_top_max, 0.5, "the same duty");
    cg_courses_free(list);
}
END_TEST

/* Tightest at its start, whatever is between the rows: it is answered. */
START_TEST(lag_of_a_duty_that_opens)
{
    const char *const set[] = {"charge.boost_time_s=2"};
    struct cg_case c = settled(set, 1);
    ck_assert_ptr_nonnull(c.duty.course);
    struct cg_duty_run *run = run_of(&c);
    struct cg_answer answer;
    struct cg_error error = {0};
    ck_assert_msg(cg_answer_find(&c, run, 0.0, NULL, NULL, &answer, &error) ==
                      CG_OK,
                  "%s", error.text);
    cg_duty_run_free(run);
    cg_case_free(&c);
}
END_TEST

int main(void)
{
    gsl_set_error_handler_off();
    Suite *suite = suite_create("air");
    TCase *all = tcase_create("air");
    tcase_set_timeout(all, 240);
    tcase_add_test(all, heat_closes);
    tcase_add_test(all, no_coolant);
    tcase_add_test(all, no_fins);
    tcase_add_test(all, more_air_cools);
    tcase_add_test(all, barrel_follows_the_air);
    tcase_add_test(all, fan_tires_with_the_engine);
    tcase_add_test(all, where_the_gap_is_measured);
    tcase_add_test(all, choke_straightens_the_hot_barrel);
    tcase_add_test(all, duties_set_no_coolant);
    tcase_add_test(all, less_air_for_a_while);
    tcase_add_test(all, lag_of_a_duty_that_opens);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
