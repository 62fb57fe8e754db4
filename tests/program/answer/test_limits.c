/* Limits past which the gap is not the trouble. */
#include <math.h>

#include "case_of.h"
#include "check_close.h"
#include "relaxation.h"

#define IDENTITY "by definition"

static struct cg_limits limits_of(const struct cg_case *c)
{
    struct cg_duty_run *run = run_of(c);
    struct cg_extremes extremes;
    struct cg_limits limits;
    struct cg_error error = {0};
    enum cg_status status =
        cg_answer_extremes(c, run, 0.0, NULL, NULL, &extremes, NULL, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    cg_limits_judge(c, run, &extremes, &limits);
    cg_duty_run_free(run);
    return limits;
}

static bool past(const struct cg_case *c, enum cg_past which)
{
    struct cg_limits limits = limits_of(c);
    return limits.of[which].past;
}

/* 100 h at the limit itself; the hotter the shorter, by Larson and Miller. */
START_TEST(softening_takes_its_time)
{
    double limit = 533.15, before = INFINITY;
    check_close(cg_softening_time(limit, limit), 360e3, 1e-9, IDENTITY);
    for (double kelvin = limit; kelvin < 800.0; kelvin += 20.0) {
        double time = cg_softening_time(limit, kelvin);
        ck_assert_double_lt(time, before);
        check_close(cg_larson_miller(kelvin, time),
                    cg_larson_miller(limit, 360e3), 1e-9, IDENTITY);
        before = time;
    }
}
END_TEST

/* A shipped engine in its own duty is past none. */
START_TEST(a_living_engine_is_past_none)
{
    static const char *const engine[] = {BOOSTED_FOUR, IRON_SIX, PLAIN_FOUR,
                                         TRUCK_SIX, PICKUP_EIGHT};
    struct cg_case c = case_of(engine[_i], NULL, 0);
    struct cg_limits limits = limits_of(&c);
    ck_assert_int_eq(cg_limits_first(&limits), CG_PAST_LIMITS);
}
END_TEST

/* A keystone groove cut as tight as a plain one is closed by a hot aluminium
 * piston, and no gap helps; cut wider it is not. */
START_TEST(a_groove_that_closes)
{
    static const char *const tight[] = {"rings.top.side_clearance_mm=0.045",
                                        "charge.boost_kPa=400"};
    struct cg_case c = case_of(PICKUP_EIGHT, tight, 2);
    struct cg_limits limits = limits_of(&c);
    ck_assert(limits.of[CG_PAST_GRIPS].past);
    ck_assert(limits.of[CG_PAST_GRIPS].reached < 1.2);
    c = case_of(PICKUP_EIGHT, tight + 1, 1);
    ck_assert(!past(&c, CG_PAST_GRIPS));
    c = case_of(PICKUP_EIGHT, tight, 1);
    ck_assert(!past(&c, CG_PAST_GRIPS));
}
END_TEST

/* Time over a limit is that of the duty at most, and all of it where the duty
 * is over from first to last. */
START_TEST(seconds_over)
{
    static const char *const settled[] = {"duty.name=settled"};
    struct cg_case c = case_of(BOOSTED_FOUR, settled, 1);
    struct cg_limits limits = limits_of(&c);
    const struct cg_limit_seen *groove = &limits.of[CG_PAST_GROOVE];
    ck_assert_double_gt(groove->reached, groove->limit);
    check_close(groove->seconds, 20.0, 1e-6, "settled all along");
    c = case_of(BOOSTED_FOUR, NULL, 0);
    limits = limits_of(&c);
    ck_assert_double_gt(groove->reached, groove->limit);
    ck_assert_double_gt(groove->seconds, 0.0);
    ck_assert_double_lt(groove->seconds, 17.5);
}
END_TEST

/* An alloy that softens at less is past its limit where the time is too. */
START_TEST(softer_alloys_are_past)
{
    static const char *const tow[] = {"duty.name=tow_grade"};
    struct cg_case c = case_of(PLAIN_FOUR, tow, 1);
    ck_assert(!past(&c, CG_PAST_GROOVE));
    c.piston_material.hot_limit -= 140.0;
    struct cg_limits limits = limits_of(&c);
    const struct cg_limit_seen *groove = &limits.of[CG_PAST_GROOVE];
    ck_assert(groove->past && groove->seconds > groove->allowed);
    check_close(groove->allowed,
                cg_softening_time(c.piston_material.hot_limit, groove->reached),
                1e-9, IDENTITY);
}
END_TEST

/* A face is past its limit at once, and just then. */
START_TEST(faces_at_once)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_limits limits = limits_of(&c);
    double reached = limits.of[CG_PAST_FACE].reached;
    c.ring_face[CG_RING_TOP].temperature.high = reached + 1.0;
    ck_assert(!past(&c, CG_PAST_FACE));
    c.ring_face[CG_RING_TOP].temperature.high = reached - 1.0;
    ck_assert(past(&c, CG_PAST_FACE));
}
END_TEST

/* Knock at rated speed is past at once, on the way there only if it lasts; a
 * duty that declares it is not judged by it. */
START_TEST(knock_by_its_length)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_limits limits = limits_of(&c);
    const struct cg_limit_seen *knock = &limits.of[CG_PAST_KNOCK];
    ck_assert_double_gt(knock->reached, knock->limit);
    ck_assert_double_lt(knock->seconds, CG_KNOCK_SECONDS);
    ck_assert(!knock->past);
    c.fuel.octane = 70.0;
    limits = limits_of(&c);
    ck_assert(knock->past && knock->allowed == 0.0);
    c.duty.segment[0].knock_heat = 1.2;
    ck_assert(!past(&c, CG_PAST_KNOCK));
}
END_TEST

START_TEST(coolant_that_boils)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    struct cg_limits limits = limits_of(&c);
    double boils = limits.of[CG_PAST_COOLANT].limit;
    c.cooling.coolant_temperature = boils - 0.5;
    ck_assert(!past(&c, CG_PAST_COOLANT));
    c.cooling.coolant_temperature = boils + 0.5;
    limits = limits_of(&c);
    ck_assert(limits.of[CG_PAST_COOLANT].past);
    check_close(limits.of[CG_PAST_COOLANT].seconds, 17.5, 1e-9,
                "the whole duty");
}
END_TEST

/* Duties that coldgap adds inform; those that the config names are judged. */
START_TEST(named_duties_are_judged)
{
    static const char *const named[] = {"margin.duties=tow_grade"};
    struct cg_case c, added;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_config_read(BOOSTED_FOUR, named, 1, &c, &error), CG_OK);
    ck_assert(c.survive.named);
    ck_assert_int_eq(cg_config_read(BOOSTED_FOUR, NULL, 0, &added, &error),
                     CG_OK);
    ck_assert(!added.survive.named);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("limits");
    TCase *all = tcase_create("limits");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, softening_takes_its_time);
    tcase_add_loop_test(all, a_living_engine_is_past_none, 0, 5);
    tcase_add_test(all, a_groove_that_closes);
    tcase_add_test(all, seconds_over);
    tcase_add_test(all, softer_alloys_are_past);
    tcase_add_test(all, faces_at_once);
    tcase_add_test(all, knock_by_its_length);
    tcase_add_test(all, coolant_that_boils);
    tcase_add_test(all, named_duties_are_judged);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
