/* The trade-off of a top gap, and what the rings rub away. */
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "ring_film.h"
#include "seal_friction.h"
#include "seal_tradeoff.h"

#define IDENTITY "by definition"

/* Short and settled: cheap. */
static struct cg_case six(void)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    hold(&c, 1.0, 1.0);
    return c;
}

static struct cg_tradeoff tradeoff_of(const struct cg_case *c, double boost,
                                double least, double most)
{
    struct cg_tradeoff tradeoff = {.boost = boost};
    struct cg_error error = {0};
    enum cg_status status =
        cg_seal_tradeoff(c, least, most, 1.2, &tradeoff, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return tradeoff;
}

START_TEST(boosts_to_look_at)
{
    struct cg_case c = case_of(IRON_SIX, NULL, 0);
    double boost[3] = {NAN, NAN, NAN};
    c.charge.boost = 80e3;
    ck_assert_int_eq(cg_seal_tradeoff_boosts(&c, boost), 3);
    check_close(boost[0], 40e3, 1e-12, IDENTITY);
    ck_assert_double_eq(boost[1], 80e3);
    check_close(boost[2], 120e3, 1e-12, IDENTITY);
    /* half as much again would be beyond what is looked at */
    c.charge.boost = 0.9 * CG_TRADEOFF_MOST;
    ck_assert_int_eq(cg_seal_tradeoff_boosts(&c, boost), 2);
    ck_assert_double_eq(boost[1], c.charge.boost);
    c = case_of(PLAIN_FOUR, NULL, 0);
    ck_assert_int_eq(cg_seal_tradeoff_boosts(&c, boost), 1);
    ck_assert_double_eq(boost[0], 0.0);
}
END_TEST

/* The wider the gap the smaller the chance of touching, and the more leaks. */
START_TEST(safety_against_blow_by)
{
    struct cg_case c = six();
    struct cg_tradeoff tradeoff =
        tradeoff_of(&c, c.charge.boost, 0.2e-3, 0.8e-3);
    ck_assert_double_eq(tradeoff.point[0].gap, 0.2e-3);
    for (int i = 1; i < CG_TRADEOFF_POINTS; i++) {
        const struct cg_tradeoff_point *b = &tradeoff.point[i], *a = b - 1;
        check_close(b->gap - a->gap, 0.6e-3 / (CG_TRADEOFF_POINTS - 1), 1e-9,
                    "equal steps");
        ck_assert_double_lt(b->chance_less, a->chance_less);
        ck_assert_double_le(b->chance_touch, b->chance_less);
        ck_assert_double_gt(b->blow_by, a->blow_by);
        check_close(b->blow_by / a->blow_by,
                    b->blow_by_share / a->blow_by_share, 1e-12,
                    "of one and the same charge");
    }
    ck_assert_double_lt(tradeoff.point[CG_TRADEOFF_POINTS - 1].chance_less,
                        1e-6);
}
END_TEST

/* A gap as large as the closure leaves none in one engine of two; one that is
 * larger by the residual, less than that. */
START_TEST(the_closure_is_the_middle)
{
    struct cg_case c = six();
    c.uncertainty.other_laws = false; /* the others' middles lie elsewhere */
    double closure = extremes_of(&c).closure, residual = c.margin.residual;
    struct cg_tradeoff tradeoff =
        tradeoff_of(&c, c.charge.boost, closure, closure + residual);
    check_close(tradeoff.point[0].chance_touch, 0.5, 1e-9, IDENTITY);
    check_close(tradeoff.point[CG_TRADEOFF_POINTS - 1].chance_less, 0.5, 1e-9,
                IDENTITY);
}
END_TEST

/* The safe gap is the smallest in whole filing steps that keeps the risk. */
START_TEST(the_safe_gap_keeps_the_risk)
{
    struct cg_case c = six();
    double step = c.margin.filing_step;
    double safe = tradeoff_of(&c, 50e3, 0.4e-3, 0.5e-3).safe_gap;
    struct cg_tradeoff tradeoff = tradeoff_of(&c, 50e3, safe, safe + 0.1e-3);
    ck_assert_double_le(tradeoff.point[0].chance_less, c.margin.risk);
    tradeoff = tradeoff_of(&c, 50e3, safe - step, safe);
    ck_assert_double_gt(tradeoff.point[0].chance_less, c.margin.risk);
    ck_assert_double_lt(safe, tradeoff_of(&c, 150e3, 0.4e-3, 0.5e-3).safe_gap);
}
END_TEST

/* With nothing uncertain it is safe or not, and nothing between. */
START_TEST(without_spread_chances_are_none_or_one)
{
    struct cg_case c = six();
    c.uncertainty = (struct cg_uncertainty_case){0};
    c.margin.skirt_expansion = 0.0;
    struct cg_tradeoff tradeoff =
        tradeoff_of(&c, c.charge.boost, 0.1e-3, 0.7e-3);
    for (int i = 0; i < CG_TRADEOFF_POINTS; i++) {
        double gap = tradeoff.point[i].gap,
               chance = tradeoff.point[i].chance_less;
        if (gap >= tradeoff.safe_gap)
            ck_assert_double_eq(chance, 0.0);
        else if (gap < tradeoff.safe_gap - c.margin.filing_step)
            ck_assert_double_eq(chance, 1.0);
    }
}
END_TEST

START_TEST(a_case_that_cannot_be_run_is_told)
{
    struct cg_case c = six();
    struct cg_tradeoff tradeoff = {.boost = 100e3};
    strcpy(c.cooling.oil_grade, "lard");
    struct cg_error error = {0};
    ck_assert_int_eq(
        cg_seal_tradeoff(&c, 0.3e-3, 0.5e-3, 1.2, &tradeoff, &error),
        CG_BAD_INPUT);
    ck_assert_str_eq(error.text, "cooling.oil_grade: no grade \"lard\"");
}
END_TEST

/* Friction of the rings of `c` at rated speed, with usual gaps. */
static struct cg_seal_friction friction_of(struct cg_case *c,
                                           struct cg_film_mean *by_hand)
{
    struct cg_duty_run *run = run_of(c);
    const struct cg_operating_point *point = &run->point[run->full_load];
    struct cg_seal *seal;
    struct cg_seal_answer at;
    struct cg_seal_friction friction;
    struct cg_error error = {0};
    static struct cg_ring_film_workspace workspace;
    static struct cg_ring_gas gas;
    ck_assert_int_eq(cg_seal_create(c, run, run->full_load, &seal, &error),
                     CG_OK);
    ck_assert_int_eq(cg_seal_solve(seal, 0.5e-3, 0.6e-3, &at, &error), CG_OK);
    enum cg_status status =
        cg_seal_friction_find(seal, run, run->full_load, &friction, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    /* the film again, with pressures picked out of the record in its order:
     * cylinder, top groove, land, second groove, below */
    for (int k = 0; k < CG_PACK_RINGS; k++) {
        for (size_t i = 0; i < CG_RING_FILM_POINTS; i++) {
            const struct cg_pack_record *row = &seal->record[2 * i];
            gas.above[i] =
                row->pressure[k == 0 ? CG_PACK_CYLINDER : CG_PACK_LAND];
            gas.behind[i] = row->pressure[k == 0 ? CG_PACK_GROOVE_TOP
                                              : CG_PACK_GROOVE_SECOND];
            gas.below[i] =
                row->pressure[k == 0 ? CG_PACK_LAND : CG_PACK_CRANKCASE];
        }
        status = cg_ring_film_solve(c, run->thermal, point->settled,
                                    (enum cg_ring_place)k, c->engine.speed,
                                    &gas, &workspace, &by_hand[k], &error);
        ck_assert_msg(status == CG_OK, "%s", error.text);
    }
    cg_seal_free(seal);
    cg_duty_run_free(run);
    return friction;
}

START_TEST(friction_is_that_of_the_films)
{
    struct cg_case c = six();
    struct cg_film_mean film[CG_PACK_RINGS];
    struct cg_seal_friction at = friction_of(&c, film);
    for (int k = 0; k < CG_PACK_RINGS; k++) {
        double power = film[k].viscous_power + film[k].boundary_power;
        check_close(at.power[k], power * 3.14159265 * c.engine.bore * 6.0,
                    1e-8, "six bores around");
        check_close(at.boundary[k], film[k].boundary_power / power, 1e-12,
                    IDENTITY);
        ck_assert_double_eq(at.minimum[k], film[k].minimum);
        ck_assert_double_eq(at.mixed[k], film[k].mixed_share);
    }
}
END_TEST

/* A ring pressed harder on the bore rubs more, and on a thinner film. */
START_TEST(tension_rubs)
{
    struct cg_case c = six();
    struct cg_film_mean film[CG_PACK_RINGS];
    struct cg_seal_friction weak = friction_of(&c, film);
    c.ring[CG_RING_SECOND].pressure *= 2.0;
    struct cg_seal_friction strong = friction_of(&c, film);
    ck_assert_double_gt(strong.power[1], 1.1 * weak.power[1]);
    ck_assert_double_lt(strong.minimum[1], weak.minimum[1]);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("seal trade");
    TCase *all = tcase_create("trade");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, boosts_to_look_at);
    tcase_add_test(all, safety_against_blow_by);
    tcase_add_test(all, the_closure_is_the_middle);
    tcase_add_test(all, the_safe_gap_keeps_the_risk);
    tcase_add_test(all, without_spread_chances_are_none_or_one);
    tcase_add_test(all, a_case_that_cannot_be_run_is_told);
    tcase_add_test(all, friction_is_that_of_the_films);
    tcase_add_test(all, tension_rubs);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
