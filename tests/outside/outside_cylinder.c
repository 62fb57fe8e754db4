/* Thick cylinders, shrink fits and heated hollow cylinders against published
 * values.  Stresses are recovered from our displacements by Hooke's law. */
#include "check_close.h"

#include "cylinder.h"

#include <stddef.h>

static const char lame[] = "S. Timoshenko and J. N. Goodier, Theory of "
                           "Elasticity (1951), Lame's problem; from memory";
static const char shrink[] = "shrink fit worked example, novasolver.jp "
                             "(default case: 100/150 mm, 0.1 mm, 210 GPa)";
static const char heated[] = "S. Timoshenko and J. N. Goodier, Theory of "
                             "Elasticity (1951), heated hollow cylinder, free "
                             "ends; log profile evaluated by hand";
static const char bimetal[] = "S. Timoshenko, Strength of Materials II, "
                              "compound cylinders; from memory";

/* Hoop stress at `radius` where the radial stress is -pressure: plane stress,
 * E u / r = stress_hoop - nu stress_radial. */
static double hoop_stress(const struct cg_layer *layer, double displacement,
                          double radius, double pressure)
{
    return layer->modulus * displacement / radius - layer->poisson * pressure;
}

START_TEST(tube_twice_as_wide_outside)
{
    /* b = 2 a under inner pressure: hoop 5/3 p inside, 2/3 p outside. */
    struct cg_layer tube = {0.0371, 0.0742, 113e9, 0.27, 0};
    double p = 17e6;
    double inside = cg_lame_displacement(&tube, p, 0, tube.inner);
    double outside = cg_lame_displacement(&tube, p, 0, tube.outer);
    check_close(hoop_stress(&tube, inside, tube.inner, p), 5 * p / 3, 1e-12,
                lame);
    check_close(hoop_stress(&tube, outside, tube.outer, 0), 2 * p / 3, 1e-12,
                lame);
}
END_TEST

START_TEST(shaft_and_small_hole_under_outer_pressure)
{
    struct cg_layer shaft = {0, 0.05, 210e9, 0.3, 0};
    double p = 40e6;
    check_close(cg_lame_displacement(&shaft, 0, p, 0.05),
                -(1 - 0.3) * p * 0.05 / 210e9, 1e-12, lame);
    /* A pin hole doubles the hoop stress of the solid disc. */
    struct cg_layer drilled = {1e-7, 0.05, 210e9, 0.3, 0};
    double hole = cg_lame_displacement(&drilled, 0, p, 1e-7);
    check_close(hoop_stress(&drilled, hole, 1e-7, 0), -2 * p, 1e-9, lame);
}
END_TEST

START_TEST(thin_tube_is_the_boiler_formula)
{
    /* p r^2 / (E t), the boiler maker's formula, within the wall's thinness */
    struct cg_layer tube = {0.05, 0.05 + 5e-6, 200e9, 0.3, 0};
    check_close(cg_lame_displacement(&tube, 1e5, 0, 0.05),
                1e5 * 0.05 * 0.05 / (200e9 * 5e-6), 2e-4, lame);
}
END_TEST

START_TEST(shrink_fit_on_a_solid_shaft)
{
    struct cg_layer shaft = {0, 0.05, 210e9, 0.3, 0};
    struct cg_layer hub = {0.05, 0.075, 210e9, 0.3, 0};
    double p = cg_joint_pressure(&shaft, &hub, 0.05e-3); /* 0.1 mm on dia. */
    check_close(p, 58.3e6, 2e-3, shrink);
    double opened = cg_lame_displacement(&hub, p, 0, 0.05);
    check_close(hoop_stress(&hub, opened, 0.05, p), 151.7e6, 2e-3, shrink);
    /* Equal metals: p = E d (c^2 - b^2) / (2 b c^2), d radial; 58.333 MPa. */
    check_close(p, 175e6 / 3, 1e-12, bimetal);
    check_close(hoop_stress(&hub, opened, 0.05, p), 455e6 / 3, 1e-12, bimetal);
}
END_TEST

START_TEST(shrink_fit_pressure_knows_no_poisson_for_one_metal)
{
    struct cg_layer shaft = {0, 0.05, 210e9, 0.1, 0};
    struct cg_layer hub = {0.05, 0.075, 210e9, 0.1, 0};
    check_close(cg_joint_pressure(&shaft, &hub, 0.05e-3), 175e6 / 3, 1e-12,
                bimetal);
}
END_TEST

enum { MANY_CELLS = 4000 };

/* Area mean of a log temperature profile over `cells` rings. */
static double log_profile_mean(int cells, double a, double b, double at_a,
                               double at_b)
{
    static double values[MANY_CELLS];
    double width = (b - a) / cells;
    for (int i = 0; i < cells; i++) {
        double r = a + (i + 0.5) * width;
        values[i] = at_a + (at_b - at_a) * log(r / a) / log(b / a);
    }
    return cg_area_mean(a, b, cells, values);
}

START_TEST(log_profile_area_mean)
{
    double a = 0.043, b = 0.049;
    /* 2/(b^2 - a^2) times the integral of T r dr, in closed form */
    double exact = 160 - 80 * (b * b / (b * b - a * a) - 0.5 / log(b / a));
    ck_assert_double_eq_tol(exact, 118.260, 5e-4);
    double mean = log_profile_mean(MANY_CELLS, a, b, 160, 80);
    check_close(mean, exact, 1e-9, heated);
    double coarse = log_profile_mean(10, a, b, 160, 80) - exact;
    double fine = log_profile_mean(20, a, b, 160, 80) - exact;
    ck_assert_double_eq_tol(coarse / fine, 4.0, 0.08); /* second order */
}
END_TEST

START_TEST(log_profile_growth_and_hoop_stress)
{
    double mean = log_profile_mean(MANY_CELLS, 0.043, 0.049, 160, 80);
    struct cg_layer wall = {0.043, 0.049, 110e9, 0.26, 11e-6 * mean};
    struct cg_bore_growth growth;
    cg_bore_grow(CG_SEAT_PARENT, &wall, NULL, 0, 0, &growth);
    check_within(growth.radial, 55.937e-6, 0.5e-9, heated);
    check_within(wall.strain * wall.outer, 63.742e-6, 0.5e-9, heated);
    /* At the bore: E (u/a - alpha T). */
    check_within(110e9 * (growth.radial / 0.043 - 11e-6 * 160), -50.50e6,
                 0.01e6, heated);
    /* By the bore surface's rise it would be a third too much. */
    check_close(11e-6 * 160 * 0.043 / growth.radial, 1.353, 1e-3, heated);
}
END_TEST

START_TEST(two_bonded_halves_are_one_heated_cylinder)
{
    /* The area-mean theorem: cut the wall at any radius, give each part its
     * own mean; bonded again, the bore grows by the mean of the whole. */
    double cut = 0.0452;
    double whole = log_profile_mean(MANY_CELLS, 0.043, 0.049, 160, 80);
    double at_cut = 160 - 80 * log(cut / 0.043) / log(0.049 / 0.043);
    double inner = log_profile_mean(MANY_CELLS, 0.043, cut, 160, at_cut);
    double outer = log_profile_mean(MANY_CELLS, cut, 0.049, at_cut, 80);
    struct cg_layer liner = {0.043, cut, 110e9, 0.26, 11e-6 * inner};
    struct cg_layer block = {cut, 0.049, 110e9, 0.26, 11e-6 * outer};
    struct cg_bore_growth growth;
    cg_bore_grow(CG_SEAT_CAST_IN, &liner, &block, 0, 0, &growth);
    check_close(growth.radial, 11e-6 * whole * 0.043, 1e-8, heated);
}
END_TEST

/* Thin rings of equal Poisson's ratio: the common strain is the mean weighted
 * by modulus times thickness. */
START_TEST(thin_bimetal_ring_shares_by_stiffness)
{
    double r = 0.05, t = 1e-7;
    struct cg_layer iron = {r - 2 * t, r, 110e9, 0.3, 1.0e-3};
    struct cg_layer alloy = {r, r + 3 * t, 70e9, 0.3, 2.0e-3};
    struct cg_bore_growth growth;
    cg_bore_grow(CG_SEAT_CAST_IN, &iron, &alloy, 0, 0, &growth);
    double shared =
        (110.0 * 2 * 1.0e-3 + 70.0 * 3 * 2.0e-3) / (110.0 * 2 + 70.0 * 3);
    check_close(growth.radial / iron.inner, shared, 1e-4, bimetal);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside cylinder");
    TCase *tcase = tcase_create("cylinder");
    tcase_add_test(tcase, tube_twice_as_wide_outside);
    tcase_add_test(tcase, shaft_and_small_hole_under_outer_pressure);
    tcase_add_test(tcase, thin_tube_is_the_boiler_formula);
    tcase_add_test(tcase, shrink_fit_on_a_solid_shaft);
    tcase_add_test(tcase, shrink_fit_pressure_knows_no_poisson_for_one_metal);
    tcase_add_test(tcase, log_profile_area_mean);
    tcase_add_test(tcase, log_profile_growth_and_hoop_stress);
    tcase_add_test(tcase, two_bonded_halves_are_one_heated_cylinder);
    tcase_add_test(tcase, thin_bimetal_ring_shares_by_stiffness);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
