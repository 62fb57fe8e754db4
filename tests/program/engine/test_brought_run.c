/* Nitrous and spray in the shipped engines that have them: what they do to the
 * charge, the knock limit and the gap, through a duty. */
#include <math.h>

#include "case_of.h"
#include "check_close.h"

#define NITROUS_EIGHT CG_TEST_CONFIGS "/engines/nitrous_eight.cfg"
#define SPRAYED_FOUR CG_TEST_CONFIGS "/engines/sprayed_four.cfg"

/* Of the full load that the duty asks for, and the duty's closure. */
struct seen {
    struct cg_performance full;
    double closure;
};

static struct seen look_at(const struct cg_case *c)
{
    struct seen seen = {.closure = extremes_of(c).closure};
    struct cg_duty_run *run = run_of(c);
    seen.full = run->point[run->full_load].performance;
    cg_duty_run_free(run);
    return seen;
}

START_TEST(more_nitrous_is_more_of_everything)
{
    struct cg_case c = case_of(NITROUS_EIGHT, NULL, 0);
    struct seen before = {.closure = -1.0};
    for (int i = 0; i < 6; i++) {
        c.nitrous.flow = i > 0 ? 0.025 * i : 1e-9;
        struct seen now = look_at(&c);
        check_within(now.full.energy_residual, 0.0, 1e-6, "first law");
        if (i > 0) {
            check_least(now.closure, before.closure + 5e-6, "more heat");
            check_least(now.full.peak_pressure,
                        1.02 * before.full.peak_pressure, "more heat");
            check_least(now.full.brake_power, 1.02 * before.full.brake_power,
                        "more heat");
            check_least(now.full.fuel_flow, 1.02 * before.full.fuel_flow,
                        "more oxygen");
            check_least(now.full.knock_unretarded, before.full.knock_unretarded,
                        "more pressure");
            ck_assert(now.full.air_flow < before.full.air_flow);
        }
        before = now;
    }
}
END_TEST

/* The rule for the power asked for, against the cycle: to a quarter. */
START_TEST(power_asked_for_is_about_what_comes)
{
    struct cg_case c = case_of(NITROUS_EIGHT, NULL, 0);
    c.nitrous.flow = 1e-9;
    double without = look_at(&c).full.brake_power;
    for (double power = 50e3; power < 250e3; power += 75e3) {
        c.nitrous.flow = 0.0;
        c.nitrous.power = power;
        check_close(look_at(&c).full.brake_power - without, power, 0.25,
                    "common practice, no source");
    }
}
END_TEST

/* It is on in the middle of the pull, and nowhere else. */
START_TEST(it_comes_on_in_the_pull)
{
    struct cg_case c = case_of(NITROUS_EIGHT, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    double first = INFINITY, last = 0.0;
    for (size_t i = 0; i < run->pieces; i++) {
        const struct cg_piece *piece = &run->piece[i];
        bool on = run->point[piece->start].performance.nitrous_flow > 0.0;
        ck_assert(on == (run->point[piece->end].operating.nitrous > 0.0));
        first = on ? fmin(first, piece->from) : first;
        last = on ? fmax(last, piece->to) : last;
    }
    check_close(first, 3.0, 1e-12, "nitrous_pull.cfg");
    check_close(last, 10.5, 1e-12, "nitrous_pull.cfg");
    check_close(run->point[run->full_load].performance.nitrous_flow, 0.060,
                1e-12, "full load as the duty asks for");
    cg_duty_run_free(run);
    const char *set = "duty.name=dyno_pull";
    c = case_of(NITROUS_EIGHT, &set, 1);
    ck_assert_double_eq(look_at(&c).full.nitrous_flow, 0.0);
}
END_TEST

/* Boost that lags makes the segments a course; hardly lagging, it is the same
 * duty, nitrous and all. */
START_TEST(a_course_carries_it)
{
    const char *sets[] = {"duty.name=nitrous_pull", "nitrous.flow_g_s=15",
                          "charge.boost_time_s=0.001"};
    struct cg_case at_once = case_of(BOOSTED_FOUR, sets, 2);
    struct cg_case lagged = case_of(BOOSTED_FOUR, sets, 3);
    struct cg_case without = at_once;
    for (int i = 0; i < without.duty.segments; i++)
        without.duty.segment[i].nitrous = 0.0;
    ck_assert(at_once.duty.course == NULL && lagged.duty.course != NULL);
    check_close(cg_duty_nitrous(&lagged.duty), 1.0, 1e-12, "definition");
    double closure = extremes_of(&at_once).closure;
    check_within(extremes_of(&lagged).closure, closure, 2e-6,
                 "the thinned course's band");
    check_least(closure, extremes_of(&without).closure + 5e-6, "more heat");
    cg_case_free(&lagged);
}
END_TEST

START_TEST(spray_cools_and_holds_knock_back)
{
    struct cg_case c = case_of(SPRAYED_FOUR, NULL, 0);
    struct seen before = {.closure = 0.0};
    for (int i = 0; i < 5; i++) {
        c.spray.flow = 0.004 * i;
        struct seen now = look_at(&c);
        check_within(now.full.energy_residual, 0.0, 1e-6, "first law");
        if (i > 0) {
            check_most(now.full.knock_unretarded,
                       0.95 * before.full.knock_unretarded, "cooler end gas");
            check_most(now.full.exhaust_temperature,
                       before.full.exhaust_temperature - 5.0, "heat taken");
        }
        before = now;
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("brought run");
    TCase *all = tcase_create("brought run");
    tcase_set_timeout(all, 300);
    tcase_add_test(all, more_nitrous_is_more_of_everything);
    tcase_add_test(all, power_asked_for_is_about_what_comes);
    tcase_add_test(all, it_comes_on_in_the_pull);
    tcase_add_test(all, a_course_carries_it);
    tcase_add_test(all, spray_cools_and_holds_knock_back);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
