/* That the default cells, steps and passes are fine enough: every one refined
 * moves the closure by little, and by less and less. */
#include <math.h>
#include <stdlib.h>

#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "viscosity.h"

static const char *const engines[] = {"boosted_four", "iron_six", "big_eight",
                                      "plain_four"};

static struct cg_case engine_case(int i, const char *duty)
{
    char file[256];
    snprintf(file, sizeof file, CG_TEST_CONFIGS "/engines/%s.cfg",
             engines[i]);
    return case_of(file, &duty, duty != NULL ? 1 : 0);
}

/* What may be refined: a count, or a step. */
static const struct knob {
    const char *name;
    size_t count, step; /* offset, whichever it is */
} knobs[] = {
#define COUNT(field) {#field, offsetof(struct cg_case, solver.field), 0}
#define STEP(field) {#field, 0, offsetof(struct cg_case, solver.field)}
    COUNT(stations),    COUNT(liner_cells), COUNT(block_cells),
    COUNT(crown_cells), COUNT(skirt_cells), COUNT(ring_cells),
    STEP(crank_step_deg), STEP(tolerance),
};

static void refine(const struct knob *knob, int times, struct cg_case *c)
{
    if (knob->count != 0)
        *(int *)((char *)c + knob->count) *= times;
    else
        *(double *)((char *)c + knob->step) /= times;
}

/* The promise: 1 % of the closure, or 2 um where that is more. */
static double promise(double closure)
{
    return fmax(0.01 * fabs(closure), 2e-6);
}

START_TEST(each_by_itself)
{
    const char *const duty[] = {NULL, "duty.name=settled"};
    const char *name = engines[_i / 2];
    struct cg_case c = engine_case(_i / 2, duty[_i % 2]);
    double base = extremes_of(&c).closure;
    printf("%s, %s: closure %.2f um\n", name, c.duty.name, base * 1e6);
    for (size_t k = 0; k < COUNT_OF(knobs); k++) {
        double error[3];
        const int times[] = {1, 2, 4};
        for (int t = 2; t >= 0; t--) {
            struct cg_case finer = c;
            refine(&knobs[k], times[t], &finer);
            error[t] = extremes_of(&finer).closure;
        }
        for (int t = 0; t < 3; t++)
            error[t] -= error[2];
        printf("  %-15s error %+.3f um, of half the step %+.3f um\n",
               knobs[k].name, error[0] * 1e6, error[1] * 1e6);
        ck_assert_msg(fabs(error[0]) < promise(base), "%s, %s: %s is off by "
                      "%.3f um", name, c.duty.name, knobs[k].name,
                      error[0] * 1e6);
        ck_assert_msg(fabs(error[1]) < 0.6 * fabs(error[0]) + 0.1e-6,
                      "%s, %s: %s does not converge: %.3f, then %.3f um",
                      name, c.duty.name, knobs[k].name, error[0] * 1e6,
                      error[1] * 1e6);
    }
}
END_TEST

/* The means of the gas side are integrated as the cycle is, leg by leg: the
 * longest step allowed will do. */
START_TEST(crank_steps_agree)
{
    const double steps[] = {0.25, 0.5, 1.0, 2.0};
    struct cg_case c = engine_case(_i / 2, _i % 2 ? "duty.name=settled" : NULL);
    double finest = 0.0;
    for (size_t s = 0; s < COUNT_OF(steps); s++) {
        c.solver.crank_step_deg = steps[s];
        double closure = extremes_of(&c).closure;
        if (s == 0)
            finest = closure;
        printf("%s, %s: %g deg: closure %.4f um\n", engines[_i / 2],
               c.duty.name, steps[s], closure * 1e6);
        check_within(closure, finest, 0.02e-6, engines[_i / 2]);
    }
}
END_TEST

START_TEST(all_at_once)
{
    struct cg_case c = engine_case(_i, NULL), finer = c;
    for (size_t k = 0; k < COUNT_OF(knobs); k++)
        refine(&knobs[k], 3, &finer);
    double base = extremes_of(&c).closure, fine = extremes_of(&finer).closure;
    printf("%s: all refined threefold moves the closure by %+.3f um\n",
           engines[_i], (fine - base) * 1e6);
    check_within(base, fine, promise(base), engines[_i]);
}
END_TEST

/* Every segment with a ramp given as `parts` short ones: the ends of those are
 * solved as points of their own. */
static void cut(struct cg_case *c, int parts)
{
    struct cg_duty_case whole = c->duty;
    int n = 0;
    for (int i = 0; i < whole.segments; i++) {
        struct cg_segment s = whole.segment[i];
        bool held = s.speed == s.speed_end && s.load == s.load_end;
        int of = held ? 1 : parts;
        for (int k = 0; k < of; k++) {
            struct cg_segment part = s;
            double from = (double)k / of, to = (double)(k + 1) / of;
            part.seconds = s.seconds / of;
            part.speed = s.speed + from * (s.speed_end - s.speed);
            part.speed_end = s.speed + to * (s.speed_end - s.speed);
            part.load = s.load + from * (s.load_end - s.load);
            part.load_end = s.load + to * (s.load_end - s.load);
            ck_assert_int_lt(n, CG_SEGMENTS);
            c->duty.segment[n++] = part;
        }
    }
    c->duty.segments = n;
}

START_TEST(ramps_cut_finer)
{
    static const struct {
        const char *duty;
        int parts;
    } rows[] = {{"duty.name=dyno_pull", 20}, {"duty.name=drag_pass", 5},
                {"duty.name=lean_event", 12}, {"duty.name=tow_grade", 24},
                {"duty.name=cold_start_abuse", 16}};
    for (size_t i = 0; i < COUNT_OF(rows); i++) {
        struct cg_case c = engine_case(_i, rows[i].duty), fine = c;
        cut(&fine, rows[i].parts);
        double a = extremes_of(&c).closure, b = extremes_of(&fine).closure;
        printf("%s, %s: ramps in %d parts move the closure by %+.3f %%\n",
               engines[_i], c.duty.name, rows[i].parts, 100.0 * (b / a - 1.0));
        check_close(a, b, 0.005, "duty_run.h, ramps");
    }
}
END_TEST

/* A film's thickness in mid-stroke from its temperature, by the rule in
 * operating_point_film.c: with the square root of the viscosity of a 95 / 14.4
 * mm2/s oil, from 140 C.
 */
static double film_at(double reference, double kelvin)
{
    return reference * sqrt(cg_viscosity_walther(95e-6, 14.4e-6, kelvin) /
                            cg_viscosity_walther(95e-6, 14.4e-6, 413.15));
}

static double film_temperature(const struct cg_thermal *thermal, int ring,
                               const double *temperature)
{
    const struct cg_ring_map *map = &thermal->ring[ring];
    double bore = 0.0, share = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        bore += map->share[s] *
                temperature[cg_thermal_liner_node(thermal, s, 0)];
        share += map->share[s];
    }
    return 0.5 * (temperature[map->face] + bore / share);
}

/* The uniform film of the same mean conductance, from that in mid-stroke. */
static double stroke_film(const struct cg_case *c, struct cg_duty_run *run,
                          const struct cg_operating_point *point, int ring)
{
    struct cg_point_workspace *work = &run->workspace;
    enum cg_ring_place place = (enum cg_ring_place)ring;
    double middle =
        film_at(c->ring[ring].film,
                film_temperature(run->thermal, ring, point->settled));
    cg_ring_gas_estimate(place, c->charge.ambient_pressure, point->cylinder,
                         work->ring_gas);
    double slope;
    return cg_ring_film_stroke(c, place, middle, work->ring_gas,
                               work->ring_film, &slope);
}

/* One more pass over films, cycle and walls changes little. */
START_TEST(one_more_pass)
{
    struct cg_case c = engine_case(_i, NULL);
    struct cg_duty_run *run = run_of(&c);
    struct cg_operating_point *full = &run->point[run->full_load];
    size_t nodes = run->thermal->network->nodes;
    double *before = malloc(nodes * sizeof *before), most = 0.0;
    ck_assert_ptr_nonnull(before);
    for (size_t i = 0; i < nodes; i++)
        before[i] = full->settled[i];
    for (int r = 0; r < CG_RINGS; r++) {
        double film = stroke_film(&c, run, full, r);
        check_close(full->film[r], film, 0.002, "the film's own rule");
        full->film[r] = film;
    }
    ck_assert_int_eq(
        cg_point_cycle(&c, run->thermal, &run->workspace, full, NULL), CG_OK);
    ck_assert_int_eq(cg_point_settle(run->thermal, &run->workspace, full, NULL),
                     CG_OK);
    for (size_t i = 0; i < nodes; i++)
        most = fmax(most, fabs(full->settled[i] - before[i]));
    printf("%s: one more pass moves no node by more than %.4f K (%d passes)\n",
           engines[_i], most, full->passes);
    ck_assert_double_lt(most, 0.1);
    free(before);
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("convergence");
    TCase *all = tcase_create("convergence");
    int count = (int)COUNT_OF(engines);
    tcase_set_timeout(all, 240);
    tcase_add_loop_test(all, each_by_itself, 0, 2 * count);
    tcase_add_loop_test(all, crank_steps_agree, 0, 2 * count);
    tcase_add_loop_test(all, all_at_once, 0, count);
    tcase_add_loop_test(all, ramps_cut_finer, 0, count);
    tcase_add_loop_test(all, one_more_pass, 0, count);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
