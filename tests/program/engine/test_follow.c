/* What is followed through a duty: the largest values and first crossings that
 * the solver's own instants lead to, against a look every few milliseconds. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "follow.h"
#include "growth.h"

static const struct {
    const char *file, *duty;
} duties[] = {{IRON_SIX, "duty.name=dyno_pull"},
              {IRON_SIX, "duty.name=road_lap"},
              {BOOSTED_FOUR, "duty.name=drag_pass"},
              {BOOSTED_FOUR, "duty.name=cold_start_abuse"},
              {PLAIN_FOUR, "duty.name=lean_event"}};

enum { CLOSURE, CROWN, RING, QUANTITIES };

struct looks {
    const struct cg_case *c;
    const struct cg_duty_run *run;
    double *strain;
    struct cg_follow follow;
    double most[QUANTITIES], passed[QUANTITIES]; /* of the fine looks */
};

static void read_all(void *context, const double *temperature, double *value)
{
    struct looks *looks = context;
    const struct cg_thermal *thermal = looks->run->thermal;
    cg_growth_bore(looks->c, thermal, temperature, looks->strain);
    double ring =
        cg_growth_ring(looks->c, thermal, temperature, CG_RING_TOP);
    value[CLOSURE] =
        cg_growth_closure(looks->c, thermal, looks->strain, ring, CG_RING_TOP,
                          looks->c->margin.residual)
            .closure;
    value[CROWN] = temperature[thermal->piston.node[0]];
    value[RING] = cg_thermal_ring_mean(thermal, temperature, CG_RING_TOP);
}

static enum cg_status see(void *context, const struct cg_instant *instant,
                          struct cg_error *error)
{
    struct looks *looks = context;
    double value[QUANTITIES];
    (void)error;
    cg_follow_see(&looks->follow, looks->run, instant);
    read_all(looks, instant->temperature, value);
    for (int k = 0; k < QUANTITIES; k++) {
        looks->most[k] = fmax(looks->most[k], value[k]);
        if (isnan(looks->passed[k]) && value[k] > looks->follow.limit[k])
            looks->passed[k] = instant->time;
    }
    return CG_OK;
}

static void run_looks(struct looks *looks, struct cg_duty_run *run,
                      double interval, const double *limit)
{
    ck_assert_int_eq(cg_follow_begin(run, QUANTITIES, &looks->follow, NULL),
                     CG_OK);
    looks->follow.read = read_all;
    looks->follow.context = looks;
    for (int k = 0; k < QUANTITIES; k++) {
        looks->follow.tolerance[k] = k == CLOSURE ? 1e-9 : 1e-3;
        looks->most[k] = -INFINITY;
        looks->passed[k] = NAN;
        if (limit != NULL)
            looks->follow.limit[k] = limit[k];
    }
    ck_assert_int_eq(
        cg_duty_run_go(looks->c, run, interval, see, looks, NULL, NULL), CG_OK);
    cg_follow_free(&looks->follow);
}

/* Limits half-way to the largest value are met inside steps; the largest value
 * is found to what was asked for, plus the solver's own tolerance (0.01 K). */
START_TEST(maxima_and_crossings_are_those_of_a_fine_look)
{
    struct cg_case c =
        case_of(duties[_i].file, &duties[_i].duty, 1);
    struct cg_duty_run *run = run_of(&c);
    struct looks coarse = {.c = &c, .run = run};
    coarse.strain =
        malloc(run->thermal->bore.grid.stations * sizeof *coarse.strain);
    struct looks fine = coarse;
    double start[QUANTITIES], limit[QUANTITIES];
    double *temperature =
        malloc(run->thermal->network->nodes * sizeof *temperature);

    run_looks(&fine, run, 0.005, NULL);
    run_looks(&coarse, run, 0.0, NULL);
    for (int k = 0; k < QUANTITIES; k++)
        ck_assert_double_eq_tol(coarse.follow.most[k], fine.most[k],
                                k == CLOSURE ? 5e-9 : 5e-3);

    cg_duty_run_start(&c, run, temperature);
    read_all(&coarse, temperature, start);
    for (int k = 0; k < QUANTITIES; k++)
        limit[k] = 0.5 * (start[k] + fine.most[k]);
    run_looks(&fine, run, 0.005, limit);
    run_looks(&coarse, run, 0.0, limit);
    for (int k = 0; k < QUANTITIES; k++)
        ck_assert_double_eq_tol(coarse.follow.passed[k], fine.passed[k],
                                0.00501);
    free(temperature);
    free(coarse.strain);
    cg_duty_run_free(run);
}
END_TEST

/* Nothing that a table asks for moves what is found, not by a bit. */
START_TEST(tables_do_not_tell)
{
    struct cg_case c =
        case_of(duties[_i].file, &duties[_i].duty, 1);
    struct cg_duty_run *run = run_of(&c);
    struct cg_extremes plain, tabled;
    memset(&plain, 0, sizeof plain);
    memset(&tabled, 0, sizeof tabled);
    ck_assert_int_eq(cg_answer_extremes(&c, run, 0.0, NULL, NULL, &plain, NULL,
                                        NULL), CG_OK);
    ck_assert_int_eq(cg_answer_extremes(&c, run, 0.0317, NULL, NULL, &tabled,
                                        NULL, NULL), CG_OK);
    ck_assert_mem_eq(&plain, &tabled, sizeof plain);
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("follow");
    TCase *tcase = tcase_create("follow");
    tcase_set_timeout(tcase, 120);
    tcase_add_loop_test(tcase, maxima_and_crossings_are_those_of_a_fine_look,
                        0, (int)COUNT_OF(duties));
    tcase_add_loop_test(tcase, tables_do_not_tell, 0, (int)COUNT_OF(duties));
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
