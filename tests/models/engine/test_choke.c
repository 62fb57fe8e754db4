#include "check_close.h"

#include "choke.h"
#include "constants.h"
#include "geometry.h"
#include "setting.h"

#define BY_HAND "worked by hand from the formula in the header"

static struct cg_case choked(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.bore = 0.1;
    c.engine.stroke = 0.1;
    c.engine.speed = 50.0;
    ck_assert_ptr_null(cg_case_complete(&c));
    c.bore.choke.narrower = 0.1e-3;
    c.bore.choke.length = cg_ring_turn(&c, CG_RING_TOP) + 0.04;
    return c;
}

START_TEST(full_above_straight_below)
{
    struct cg_case c = choked();
    double full = cg_ring_turn(&c, CG_RING_TOP);
    check_close(cg_choke_at(&c, 0.0), 0.1e-3, 1e-12, BY_HAND);
    check_close(cg_choke_at(&c, full), 0.1e-3, 1e-12, BY_HAND);
    check_close(cg_choke_at(&c, full + 0.01), 0.075e-3, 1e-9, BY_HAND);
    ck_assert_double_eq(cg_choke_at(&c, full + 0.05), 0.0);
}
END_TEST

/* A bore that heat widens by as much as the choke takes is the straight cold
 * one again. */
START_TEST(heat_makes_up_for_the_choke)
{
    struct cg_case c = choked();
    check_within(cg_choke_strain(&c, 0.0, 1.0 / 999.0), 0.0, 1e-12, BY_HAND);
    check_close(cg_choke_strain(&c, 0.0, 0.0), -1e-3, 1e-9, BY_HAND);
    check_close(cg_choke_strain(&c, 0.1, 0.002), 0.002, 1e-12, BY_HAND);
}
END_TEST

START_TEST(the_gap_is_narrower_in_the_choke)
{
    struct cg_case c = choked();
    ck_assert_double_eq(cg_choke_gap(&c), 0.0);
    c.bore.choke.gap_measured = CG_GAP_IN_CHOKE;
    check_close(cg_choke_gap(&c), 0.314159265e-3, 1e-8, BY_HAND);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("choke");
    TCase *all = tcase_create("choke");
    tcase_add_test(all, full_above_straight_below);
    tcase_add_test(all, heat_makes_up_for_the_choke);
    tcase_add_test(all, the_gap_is_narrower_in_the_choke);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
