/* The gas past the rings of whole engines against what engines have shown. */
#include "case_of.h"
#include "check_close.h"
#include "seal.h"

static struct cg_seal_answer look(const char *file, const char *const *set,
                                  size_t sets, double top, double second)
{
    struct cg_case c = case_of(file, set, sets);
    struct cg_duty_run *run = run_of(&c);
    struct cg_seal *seal;
    struct cg_seal_answer at;
    struct cg_error error = {0};
    enum cg_status status =
        cg_seal_create(&c, run, run->full_load, &seal, &error);
    if (status == CG_OK)
        status = cg_seal_solve(seal, top, second, &at, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    ck_assert_double_lt(at.settled.change, 1e-6);
    ck_assert_double_eq_tol(at.settled.cycle.residual, 0.0, 1e-12);
    cg_seal_free(seal);
    cg_duty_run_free(run);
    return at;
}

/* What the crevices hold at peak pressure comes back late, but mostly. */
START_TEST(crevices_give_back)
{
    static const char *const set[] = {"engine.speed_rpm=2500"};
    struct cg_seal_answer at = look(PLAIN_FOUR, set, 1, 0.35e-3, 0.45e-3);
    ck_assert_double_lt(at.crevice_late, at.crevice_share);
    ck_assert_double_gt(at.crevice_late, 0.5 * at.crevice_share);
}
END_TEST

START_TEST(the_smaller_gap_controls)
{
    static const char *const set[] = {"engine.speed_rpm=2500"};
    const char *source = "Wentworth, SAE 680109 (1968)";
    double base =
        look(PLAIN_FOUR, set, 1, 0.25e-3, 0.60e-3).blow_by;
    double second = look(PLAIN_FOUR, set, 1, 0.25e-3, 0.80e-3).blow_by;
    double top = look(PLAIN_FOUR, set, 1, 0.333e-3, 0.60e-3).blow_by;
    /* Either gap by a third: the smaller counts for more. */
    ck_assert_msg(top > base && second > base && top - base > 2.0 *
                      (second - base), "%g %g %g (%s)", base, second, top,
                  source);
    base = look(PLAIN_FOUR, set, 1, 0.60e-3, 0.25e-3).blow_by;
    second = look(PLAIN_FOUR, set, 1, 0.60e-3, 0.333e-3).blow_by;
    top = look(PLAIN_FOUR, set, 1, 0.80e-3, 0.25e-3).blow_by;
    ck_assert_msg(second > base && second - base > 2.0 * (top - base),
                  "%g %g %g (%s)", base, second, top, source);
}
END_TEST

/* Ports let the groove follow faster, and less gas pass, up to the speed at
 * which the ring floats. */
START_TEST(ports)
{
    static const char *const speed[] = {
        "engine.speed_rpm=6000", "engine.speed_rpm=7000",
        "engine.speed_rpm=8000"};
    static const char *const kind[] = {
        "rings.top.ports=crown", "rings.top.ports=land",
        "rings.top.ports=through"};
    for (size_t i = 0; i < COUNT_OF(speed); i++) {
        const char *set[] = {speed[i], "rings.top.side_clearance_mm=0.02",
                             "rings.top.ports=none"};
        struct cg_seal_answer none =
            look(PLAIN_FOUR, set, 3, 0.40e-3, 0.45e-3);
        for (size_t k = 0; k < COUNT_OF(kind); k++) {
            set[2] = kind[k];
            struct cg_seal_answer with =
                look(PLAIN_FOUR, set, 3, 0.40e-3, 0.45e-3);
            ck_assert_double_lt(with.groove_lag_deg, none.groove_lag_deg);
            ck_assert_msg(with.blow_by < none.blow_by, "%s %s: %g, %g g/s",
                          speed[i], kind[k], with.blow_by * 1e3,
                          none.blow_by * 1e3);
            if (k < 2)
                ck_assert_double_lt(with.groove_lag_deg,
                                    0.3 * none.groove_lag_deg);
        }
    }
}
END_TEST

/* Above some speed inertia beats the gas: the top ring floats, gas pushes it
 * off the bore, and blow-by rises many times. */
START_TEST(rings_float_at_very_high_speed)
{
    static const char *const slow[] = {"engine.speed_rpm=7500"};
    static const char *const fast[] = {"engine.speed_rpm=9500"};
    const char *source = "P. de K. Dykes, Piston Ring Movement during "
                         "Blow-by in High-speed Petrol Engines, Proc. "
                         "I.Mech.E. (1947) (from memory)";
    struct cg_seal_answer below = look(PLAIN_FOUR, slow, 1, 0.4e-3, 0.45e-3);
    struct cg_seal_answer above = look(PLAIN_FOUR, fast, 1, 0.4e-3, 0.45e-3);
    ck_assert_double_gt(below.settled.cycle.unseat_deg[0], 120.0);
    ck_assert(below.settled.cycle.given_way_deg[0] == 0.0);
    ck_assert_double_lt(above.settled.cycle.unseat_deg[0], 30.0);
    ck_assert_double_gt(above.settled.cycle.given_way_deg[0], 2.0);
    ck_assert_msg(above.blow_by > 5.0 * below.blow_by, "%g, %g g/s (%s)",
                  below.blow_by * 1e3, above.blow_by * 1e3, source);
}
END_TEST

/* What is known worst of the flanks must not decide. */
START_TEST(flank_cushion_decides_little)
{
    static const double cushion[] = {1.5e-6, 3e-6, 6e-6};
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    struct cg_seal *seal;
    struct cg_seal_answer at;
    struct cg_error error = {0};
    double first = 0.0;
    ck_assert_int_eq(
        cg_seal_create(&c, run, run->full_load, &seal, &error), CG_OK);
    for (size_t i = 0; i < COUNT_OF(cushion); i++) {
        seal->pack.cushion = cushion[i];
        ck_assert_int_eq(cg_seal_solve(seal, 0.46e-3, 0.50e-3, &at, &error),
                         CG_OK);
        if (i == 0)
            first = at.blow_by;
        ck_assert_double_eq_tol(at.blow_by, first, 0.02 * first);
    }
    cg_seal_free(seal);
    cg_duty_run_free(run);
}
END_TEST

/* A wider gap leaks more and costs power. */
START_TEST(a_wider_gap_costs)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    struct cg_duty_run *run = run_of(&c);
    struct cg_seal *seal;
    struct cg_seal_answer at;
    struct cg_error error = {0};
    double blow_by = 0.0, power = -INFINITY;
    ck_assert_int_eq(
        cg_seal_create(&c, run, run->full_load, &seal, &error), CG_OK);
    for (double gap = 0.3e-3; gap < 0.85e-3; gap += 0.1e-3) {
        ck_assert_int_eq(cg_seal_solve(seal, gap, 0.6e-3, &at, &error), CG_OK);
        ck_assert_double_gt(at.blow_by, blow_by);
        ck_assert_double_gt(cg_seal_power(seal, &at), power);
        blow_by = at.blow_by;
        power = cg_seal_power(seal, &at);
    }
    /* No more than all that leaks could have done: its share of the
     * indicated work, and some for what flows back cooled. */
    double indicated = seal->performance.imep *
                       cg_crank_swept(&run->point[0].input.crank) * 0.5 *
                       seal->pack.speed * c.engine.cylinders;
    ck_assert_double_lt(power, 2.0 * at.leaked_share * indicated);
    cg_seal_free(seal);
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("gas past the rings, published");
    TCase *tcase = tcase_create("all");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, crevices_give_back);
    tcase_add_test(tcase, the_smaller_gap_controls);
    tcase_add_test(tcase, ports);
    tcase_add_test(tcase, rings_float_at_very_high_speed);
    tcase_add_test(tcase, flank_cushion_decides_little);
    tcase_add_test(tcase, a_wider_gap_costs);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
