/* The simulated surface: repeatable, the lower of its stages, and with the
 * trends a teacher would point at, beyond three standard errors. */
#include <check.h>
#include <math.h>
#include <string.h>

#include "check_close.h"
#include "constants.h"
#include "grit.h"
#include "honing.h"
#include "surface.h"

enum { SIDE = 200, SEEDS = 64 };

static double one[SIDE * SIDE], two[SIDE * SIDE];
static struct cg_error error;
static const struct cg_honing usual = {180, 600, 0.8, 45.0};

static void cut(struct cg_honing honing, unsigned long seed, double *height)
{
    ck_assert_int_eq(
        cg_honing_cut(&honing, SIDE, SIDE, 5e-6, seed, height, &error), CG_OK);
}

START_TEST(equal_seeds)
{
    cut(usual, 7, one);
    cut(usual, 7, two);
    ck_assert_int_eq(memcmp(one, two, sizeof one), 0);
    cut(usual, 8, two);
    ck_assert_int_ne(memcmp(one, two, sizeof one), 0);
}
END_TEST

/* The plateau stage takes metal off and leaves the valleys as they were. */
START_TEST(plateau_takes_off)
{
    struct cg_honing coarse = usual;
    int kept = 0;
    coarse.plateau_grit = 0;
    cut(coarse, 3, one);
    cut(usual, 3, two);
    for (int i = 0; i < SIDE * SIDE; i++) {
        ck_assert(isfinite(one[i]) && isfinite(two[i]));
        ck_assert_double_le(two[i], one[i]);
        kept += two[i] == one[i];
    }
    check_band((double)kept / (SIDE * SIDE), 0.05, 0.40,
               "a fifth of the base is meant to stay");
}
END_TEST

/* Grooves run along both ways of the cross-hatch: with one angle of 90
 * degrees, along the diagonals of a square grid. */
START_TEST(crosshatch_angle)
{
    struct cg_honing square = usual;
    double along = 0.0, across = 0.0;
    square.crosshatch_deg = 90.0;
    square.plateau_grit = 0;
    cut(square, 5, one);
    for (int row = 0; row + 1 < SIDE; row++)
        for (int column = 0; column + 1 < SIDE; column++) {
            const double *at = &one[row * SIDE + column];
            along += fabs(at[SIDE + 1] - at[0]) < 1e-12;
            across += fabs(at[1] - at[0]) < 1e-12;
        }
    /* a point lies in the groove of either way; half keep to this one */
    check_band(along / (SIDE * SIDE), 0.25, 0.75, "half of the points");
    ck_assert_double_lt(across, 0.01 * along);
}
END_TEST

/* Mean and standard error of a figure over seeds. */
struct mean {
    double value, error;
};

enum figure { RK, RVK, OIL, VALLEYS };

static struct mean over_seeds(struct cg_honing honing, enum figure figure)
{
    double sum = 0.0, squares = 0.0;
    for (unsigned long seed = 1; seed <= SEEDS; seed++) {
        struct cg_ratio_curve curve;
        struct cg_core core;
        cut(honing, seed, one);
        cg_ratio_curve_sort(one, SIDE * SIDE, &curve);
        cg_ratio_curve_core(&curve, &core);
        double found = figure == RK    ? core.rk
                       : figure == RVK ? core.rvk
                       : figure == OIL ? core.oil
                                       : 1.0 - core.mr2;
        sum += found;
        squares += found * found;
    }
    double mean = sum / SEEDS;
    double variance = (squares - SEEDS * mean * mean) / (SEEDS - 1.0);
    return (struct mean){mean, sqrt(variance / SEEDS)};
}

static void less(struct mean a, struct mean b)
{
    double apart = (b.value - a.value) / hypot(a.error, b.error);
    ck_assert_msg(apart > 3.0, "%g and %g: %.1f standard errors apart",
                  a.value, b.value, apart);
}

START_TEST(coarser_base_holds_more)
{
    struct cg_honing fine = usual, coarse = usual;
    fine.base_grit = 280;
    coarse.base_grit = 120;
    less(over_seeds(fine, OIL), over_seeds(usual, OIL));
    less(over_seeds(usual, OIL), over_seeds(coarse, OIL));
    less(over_seeds(fine, RVK), over_seeds(coarse, RVK));
}
END_TEST

START_TEST(longer_plateau_holds_less)
{
    struct cg_honing brief = usual, more = usual;
    brief.plateau_share = 0.65;
    more.plateau_share = 0.92;
    less(over_seeds(more, OIL), over_seeds(brief, OIL));
    less(over_seeds(more, VALLEYS), over_seeds(brief, VALLEYS));
}
END_TEST

START_TEST(finer_plateau_is_smoother)
{
    struct cg_honing rough = usual, none = usual;
    rough.plateau_grit = 320;
    none.plateau_grit = 0;
    less(over_seeds(usual, RK), over_seeds(rough, RK));
    less(over_seeds(rough, RK), over_seeds(none, RK));
}
END_TEST

START_TEST(grit_steps)
{
    for (int grit = CG_GRIT_COARSEST; grit < CG_GRIT_FINEST; grit += 7)
        ck_assert_double_gt(cg_grit_grain(grit), cg_grit_grain(grit + 7));
    ck_assert_int_eq(cg_grit_at_least(cg_grit_grain(220)), 220);
    ck_assert_int_eq(cg_grit_at_most(cg_grit_grain(220)), 220);
    ck_assert_int_eq(cg_grit_at_least(60e-6), 180);
    ck_assert_int_eq(cg_grit_at_most(60e-6), 220);
    ck_assert_int_eq(cg_grit_at_least(1.0), CG_GRIT_COARSEST);
    ck_assert_int_eq(cg_grit_at_most(0.0), CG_GRIT_FINEST);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("honing");
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 120.0);
    tcase_add_test(all, equal_seeds);
    tcase_add_test(all, plateau_takes_off);
    tcase_add_test(all, crosshatch_angle);
    tcase_add_test(all, coarser_base_holds_more);
    tcase_add_test(all, longer_plateau_holds_less);
    tcase_add_test(all, finer_plateau_is_smoother);
    tcase_add_test(all, grit_steps);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
