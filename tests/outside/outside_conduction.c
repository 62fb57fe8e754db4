/* Chains and stepper against published solutions of heat conduction. */
#include "heat_fixture.h"

#include "chain.h"
#include "constants.h"

#include <stdlib.h>

static const char example_5_4[] =
    "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, Example "
    "5.4, by a published worked companion";
static const char series_5_4[] =
    "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, Example "
    "5.4, the whole series by hand";
static const char example_5_10[] =
    "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, Example "
    "5.10, by a published worked companion";
static const char bessel_3_10[] =
    "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, Example "
    "3.10, efficiency by the Bessel solution, evaluated";
static const char semi_infinite[] =
    "H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids (1959), "
    "chapter 2; Incropera et al., section 5.7; evaluated";
static const char wall_table[] =
    "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, Table "
    "5.1; evaluated from zeta tan zeta = Bi";
static const char periodic[] =
    "H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids (1959), "
    "section 2.6: (q0/k) sqrt(alpha/omega), evaluated by hand";

/* A plane body of 1 m2 with nodes on both faces, all at `start`. */
static double *make_slab(double length, size_t cells, struct cg_solid solid,
                         double start)
{
    struct cg_chain slab = {.shape = CG_CHAIN_PLANE,
                            .to = length,
                            .width = 1,
                            .solid = solid,
                            .cells = cells,
                            .nodes_on_faces = true};
    ck_assert_int_eq(cg_chain_add(network, "slab", &slab, NULL), CG_OK);
    double *t = malloc((cells + 1) * sizeof *t);
    ck_assert_ptr_nonnull(t);
    for (size_t i = 0; i <= cells; i++)
        t[i] = start;
    return t;
}

static void film(size_t node, double conductance, double temperature)
{
    cg_network_add_bath(network, node, conductance, temperature, CG_SIDE_GAS,
                        NULL, NULL);
}

static void conduct(const struct cg_drive *drive, double from, double to,
                    double tolerance, double step, double *t,
                    struct cg_heat_ledger *ledger)
{
    struct cg_step_control control = {.tolerance = tolerance,
                                      .fixed_step = step};
    if (stepper == NULL)
        make_stepper();
    run(drive, from, to, &control, t, ledger);
}

/* Steel pipe wall of 1 m diameter, 40 mm, insulated outside, hot oil inside
 * for 8 minutes. */
START_TEST(pipe_wall_heated_from_one_side)
{
    struct cg_solid steel = {63.9, 7832.0 * 434};
    double *t = make_slab(0.040, 40, steel, -20);
    film(40, 500, 60);
    struct cg_heat_ledger ledger = {0};
    conduct(NULL, 0, 480, 1e-5, 0, t, &ledger);
    /* the book keeps one term of the series and rounds */
    check_within(t[0], 43.02, 0.02, series_5_4);
    check_within(t[40], 45.36, 0.02, series_5_4);
    check_within(t[0], 42.92, 0.2, example_5_4);
    check_close(500 * (t[40] - 60), -7362.49, 0.01, example_5_4);
    check_close(CG_PI * ledger.in[CG_SIDE_GAS], 2.72e7, 0.01, example_5_4);
    free(t);
}
END_TEST

/* Thick copper slab, 0.3 MW/m2 at the face for 2 minutes. */
START_TEST(half_space_under_constant_flux)
{
    double alpha = 117e-6, k = 401, time = 120, flux = 3e5;
    struct cg_solid copper = {k, k / alpha};
    double *t = make_slab(1.5, 600, copper, 20);
    cg_network_add_source(network, 0, flux, CG_SIDE_GAS, NULL, NULL);
    conduct(NULL, 0, time, 1e-4, 0, t, NULL);
    check_within(t[0], 120.0, 0.1, example_5_10);
    check_within(t[60], 45.4, 0.1, example_5_10);
    for (size_t i = 0; i <= 300; i += 30) {
        double x = 0.0025 * (double)i, spread = sqrt(4 * alpha * time);
        double ierfc = exp(-x * x / (spread * spread)) / sqrt(CG_PI) -
                       x / spread * erfc(x / spread);
        check_within(t[i], 20 + flux / k * spread * ierfc, 0.01, semi_infinite);
    }
    free(t);
}
END_TEST

START_TEST(half_space_behind_a_film)
{
    double k = 46, alpha = 46 / 3.6e6, h = 2500, time = 3.0;
    struct cg_solid iron = {k, 3.6e6};
    double *t = make_slab(0.06, 600, iron, 350);
    film(0, h, 1100);
    conduct(NULL, 0, time, 1e-4, 0, t, NULL);
    for (size_t i = 0; i <= 200; i += 20) {
        double x = 1e-4 * (double)i, spread = sqrt(4 * alpha * time);
        double push = h * sqrt(alpha * time) / k;
        double rise = erfc(x / spread) -
                      exp(h * x / k + push * push) * erfc(x / spread + push);
        check_within(t[i], 350 + 750 * rise, 0.01, semi_infinite);
    }
    free(t);
}
END_TEST

static const struct {
    double biot, zeta, amplitude;
} table_5_1[] = {
    {0.1, 0.3111, 1.0161}, {0.5, 0.6533, 1.0701}, {1, 0.8603, 1.1191},
    {2, 1.0769, 1.1785},   {5, 1.3138, 1.2402},   {10, 1.4289, 1.2620},
    {100, 1.5552, 1.2731},
};

/* The wall's slowest mode as our cells show it: decay rate and amplitude after
 * the others have died out. */
START_TEST(slowest_mode_of_a_wall)
{
    double biot = table_5_1[_i].biot, first = 0.8, second = 1.6;
    struct cg_solid unit = {1, 1};
    double *t = make_slab(1, 100, unit, 1);
    film(100, biot, 0);
    conduct(NULL, 0, first, 0, 1e-3, t, NULL);
    double early = t[0];
    conduct(NULL, first, second, 0, 1e-3, t, NULL);
    double rate = log(early / t[0]) / (second - first);
    check_within(sqrt(rate), table_5_1[_i].zeta, 1e-4, wall_table);
    check_within(t[0] * exp(rate * second), table_5_1[_i].amplitude, 1e-4,
                 wall_table);
    free(t);
}
END_TEST

/* Motorcycle cylinder of 0.15 m with five annular fins of 6 mm; the tip's area
 * is counted by a fin longer by half its thickness. */
START_TEST(annular_fins_on_a_cylinder)
{
    double inner = 0.025, outer = 0.048, h = 50, base = 500, air = 300;
    struct cg_chain fin = {.shape = CG_CHAIN_RADIAL,
                           .from = inner,
                           .to = outer,
                           .width = 0.006,
                           .solid = {186, 2.4e6},
                           .cells = 40};
    cg_chain_add(network, "fin", &fin, NULL);
    cg_network_add_bath(network, 0, cg_chain_end_conductance(&fin, 0), base,
                        CG_SIDE_GAS, NULL, NULL);
    for (size_t c = 0; c < 40; c++)
        cg_network_add_bath(network, c, 2 * h * cg_chain_flat_area(&fin, c),
                            air, CG_SIDE_AIR, NULL, NULL);
    double t[40], side[CG_SIDES];
    ck_assert_int_eq(cg_stepper_create(network, &stepper, NULL), CG_OK);
    ck_assert_int_eq(cg_stepper_settle(stepper, network, t, NULL), CG_OK);
    cg_network_heat_by_side(network, t, side);
    double bare = h * 2 * CG_PI * inner * (0.15 - 5 * 0.006) * (base - air);
    double area = 2 * CG_PI * (outer * outer - inner * inner);
    check_close(side[CG_SIDE_GAS] / (h * area * (base - air)), 0.97855, 1e-4,
                bessel_3_10);
    check_close(bare + 5 * side[CG_SIDE_GAS], 704.66, 1e-4, bessel_3_10);
}
END_TEST

static void swing_flux(void *context, double time, struct cg_network *n)
{
    n->source_power[0] = 1e6 * cos(*(const double *)context * time);
}

/* Amplitude at a node over one period of 200 steps that begins at `from`. */
static void amplitudes(double omega, double from, double *t, size_t count,
                       const size_t *node, double *amplitude)
{
    enum { STEPS = 200, MOST = 3 };
    double period = 2 * CG_PI / omega, c[MOST] = {0}, s[MOST] = {0};
    struct cg_drive drive = {swing_flux, &omega, true};
    for (int i = 0; i < STEPS; i++) {
        double start = from + period * i / STEPS;
        double end = from + period * (i + 1) / STEPS;
        conduct(&drive, start, end, 0, end - start, t, NULL);
        for (size_t k = 0; k < count; k++) {
            c[k] += t[node[k]] * cos(omega * end) * 2 / STEPS;
            s[k] += t[node[k]] * sin(omega * end) * 2 / STEPS;
        }
    }
    for (size_t k = 0; k < count; k++)
        amplitude[k] = hypot(c[k], s[k]);
}

/* Surface swing of a four-stroke's walls under a flux of 1 MW/m2 amplitude. */
static const struct {
    double conductivity, density, heat, speed; /* SI, [rev/min] */
    double swing, depth;                       /* [K] [mm] */
} wall[] = {
    {155, 2680, 960, 1500, 5.65, 1.239}, {155, 2680, 960, 3000, 3.996, 0.876},
    {155, 2680, 960, 6000, 2.83, 0.619}, {46, 7200, 500, 1500, 8.77, 0.570},
    {46, 7200, 500, 3000, 6.200, 0.403}, {46, 7200, 500, 6000, 4.38, 0.285},
};

START_TEST(periodic_surface_flux)
{
    enum { PER_DEPTH = 24, DEPTHS = 14 };
    double omega = 2 * CG_PI * wall[_i].speed / 120;
    struct cg_solid solid = {wall[_i].conductivity,
                             wall[_i].density * wall[_i].heat};
    double delta = wall[_i].depth * 1e-3;
    double *t = make_slab(DEPTHS * delta, DEPTHS * PER_DEPTH, solid, 0);
    cg_network_add_source(network, 0, 0, CG_SIDE_GAS, NULL, NULL);
    struct cg_drive drive = {swing_flux, &omega, true};
    double period = 2 * CG_PI / omega, amplitude[3];
    conduct(&drive, 0, 12 * period, 0, period / 200, t, NULL);
    const size_t node[] = {0, PER_DEPTH, 3 * PER_DEPTH};
    amplitudes(omega, 12 * period, t, 3, node, amplitude);
    check_close(amplitude[0], wall[_i].swing, 3e-3, periodic);
    check_close(amplitude[1] / amplitude[0], exp(-1), 3e-3, periodic);
    check_close(amplitude[2] / amplitude[0], exp(-3), 5e-3, periodic);
    free(t);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("outside conduction");
    TCase *tcase = tcase_create("conduction");
    tcase_set_timeout(tcase, 60);
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_add_test(tcase, pipe_wall_heated_from_one_side);
    tcase_add_test(tcase, half_space_under_constant_flux);
    tcase_add_test(tcase, half_space_behind_a_film);
    tcase_add_loop_test(tcase, slowest_mode_of_a_wall, 0,
                        (int)(sizeof table_5_1 / sizeof *table_5_1));
    tcase_add_test(tcase, annular_fins_on_a_cylinder);
    tcase_add_loop_test(tcase, periodic_surface_flux, 0,
                        (int)(sizeof wall / sizeof *wall));
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
