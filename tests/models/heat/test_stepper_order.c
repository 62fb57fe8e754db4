/* Observed orders of the stepper and the chains on problems of known answer. */
#include "heat_fixture.h"

#include "chain.h"
#include "constants.h"

#include <stdbool.h>

/* Observed order of errors at h and h/2. */
static void check_order(double coarse, double fine, double want)
{
    double order = log2(fabs(coarse) / fabs(fine));
    check_band(order, 0.95 * want, 1.05 * want, "order of the scheme");
}

/* One lump of 2.5 J/K behind 0.8 W/K to a bath at 0 K. */
static void make_lump(void)
{
    cg_network_add_node(network, "lump", 2.5, NULL, NULL);
    cg_network_add_bath(network, 0, 0.8, 0, CG_SIDE_OIL, NULL, NULL);
    make_stepper();
}

START_TEST(order_in_time_of_free_decay)
{
    make_lump();
    double exact = 300 * exp(-0.8 / 2.5 * 7), miss[3];
    for (int i = 0; i < 3; i++) {
        double t = 300;
        run_fixed(NULL, 7, 0.4 / (1 << i), &t);
        miss[i] = t - exact;
    }
    check_order(miss[0], miss[1], 4);
    check_order(miss[1], miss[2], 4);
}
END_TEST

static void ramp_conductance(void *context, double time, struct cg_network *n)
{
    (void)context;
    n->bath_conductance[0] = 0.8 + 0.35 * time;
}

START_TEST(order_in_time_with_ramped_conductance)
{
    make_lump();
    struct cg_drive drive = {ramp_conductance, NULL, false};
    double exact = 300 * exp(-(0.8 * 4 + 0.35 * 8) / 2.5), miss[3];
    for (int i = 0; i < 3; i++) {
        double t = 300;
        run_fixed(&drive, 4, 0.05 / (1 << i), &t);
        miss[i] = t - exact;
    }
    check_order(miss[0], miss[1], 4);
    check_order(miss[1], miss[2], 4);
}
END_TEST

static void swing_bath(void *context, double time, struct cg_network *n)
{
    (void)context;
    n->bath_temperature[0] = 400 + 50 * sin(1.7 * time);
}

START_TEST(order_in_time_with_swinging_bath)
{
    make_lump();
    struct cg_drive drive = {swing_bath, NULL, true};
    double a = 0.8 / 2.5, w = 1.7, time = 5, miss[3];
    /* T' = a (400 + 50 sin wt - T), T(0) = 300 */
    double swing = 50 * a / (a * a + w * w);
    double exact = 400 + swing * (a * sin(w * time) - w * cos(w * time)) +
                   (-100 + swing * w) * exp(-a * time);
    for (int i = 0; i < 3; i++) {
        double t = 300;
        run_fixed(&drive, time, 0.2 / (1 << i), &t);
        miss[i] = t - exact;
    }
    check_order(miss[0], miss[1], 4);
    check_order(miss[1], miss[2], 4);
}
END_TEST

/* Plane wall, insulated at x = 0, film at x = L, from 1 to 0:
 * sum of C cos(zeta x/L) exp(-zeta^2 Fo), zeta tan zeta = Bi. */
static double wall_series(double biot, double fourier, double x)
{
    double sum = 0;
    for (int k = 0; k < 40; k++) {
        double low = k * CG_PI, high = low + CG_PI / 2;
        for (int i = 0; i < 100; i++) {
            double zeta = 0.5 * (low + high);
            if (zeta * tan(zeta) > biot)
                high = zeta;
            else
                low = zeta;
        }
        double zeta = 0.5 * (low + high);
        sum += 4 * sin(zeta) / (2 * zeta + sin(2 * zeta)) * cos(zeta * x) *
               exp(-zeta * zeta * fourier);
    }
    return sum;
}

/* Largest miss of a unit wall with Bi 1.3 at Fo 0.31. */
static double wall_miss(size_t cells, bool nodes_on_faces, double step)
{
    teardown();
    setup();
    struct cg_chain wall = {.shape = CG_CHAIN_PLANE,
                            .to = 1,
                            .width = 1,
                            .solid = {1, 1},
                            .cells = cells,
                            .nodes_on_faces = nodes_on_faces};
    cg_chain_add(network, "wall", &wall, NULL);
    double film = nodes_on_faces
                      ? 1.3
                      : cg_series(1.3, cg_chain_end_conductance(&wall, 1));
    size_t nodes = cg_chain_nodes(&wall);
    cg_network_add_bath(network, nodes - 1, film, 0, CG_SIDE_AIR, NULL, NULL);
    make_stepper();
    enum { MOST = 64 };
    double t[MOST + 1], miss = 0;
    ck_assert_uint_le(nodes, MOST + 1);
    for (size_t i = 0; i < nodes; i++)
        t[i] = 1;
    run_fixed(NULL, 0.31, step, t);
    for (size_t i = 0; i < nodes; i++) {
        double want = wall_series(1.3, 0.31, cg_chain_position(&wall, i));
        miss = fmax(miss, fabs(t[i] - want));
    }
    return miss;
}

START_TEST(order_in_space_of_a_wall_with_film)
{
    bool on_faces = _i == 1;
    double miss[3];
    for (size_t i = 0; i < 3; i++)
        miss[i] = wall_miss((size_t)8 << i, on_faces, 2e-4);
    check_order(miss[0], miss[1], 2);
    check_order(miss[1], miss[2], 2);
}
END_TEST

START_TEST(order_in_time_and_space_together)
{
    double coarse = wall_miss(8, false, 0.31 / 8);
    double middle = wall_miss(16, false, 0.31 / 16);
    double fine = wall_miss(32, false, 0.31 / 32);
    check_order(coarse, middle, 2);
    check_order(middle, fine, 2);
}
END_TEST

/* Insulated bar with the profile cos(pi x/L): the cells' own decay rate is
 * known, so that only the error in time is left. */
START_TEST(order_in_time_of_a_bar)
{
    enum { CELLS = 12 };
    struct cg_chain bar = {.shape = CG_CHAIN_PLANE,
                           .to = 0.06,
                           .width = 3e-4,
                           .solid = {155, 2.57e6},
                           .cells = CELLS};
    cg_chain_add(network, "bar", &bar, NULL);
    make_stepper();
    double dx = 0.06 / CELLS, root = sin(CG_PI / (2 * CELLS)), miss[3];
    double rate = 4 * 155 / 2.57e6 / (dx * dx) * root * root;
    double time = 1.5 / rate;
    for (int k = 0; k < 3; k++) {
        double t[CELLS];
        for (size_t i = 0; i < CELLS; i++)
            t[i] = 400 + 70 * cos(CG_PI * ((double)i + 0.5) / CELLS);
        run_fixed(NULL, time, time / (10 << k), t);
        miss[k] = t[0] - 400 - 70 * cos(CG_PI * 0.5 / CELLS) * exp(-1.5);
    }
    check_order(miss[0], miss[1], 4);
    check_order(miss[1], miss[2], 4);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("stepper order");
    TCase *tcase = tcase_create("order");
    tcase_set_timeout(tcase, 60);
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_add_test(tcase, order_in_time_of_free_decay);
    tcase_add_test(tcase, order_in_time_with_ramped_conductance);
    tcase_add_test(tcase, order_in_time_with_swinging_bath);
    tcase_add_test(tcase, order_in_time_of_a_bar);
    tcase_add_loop_test(tcase, order_in_space_of_a_wall_with_film, 0, 2);
    tcase_add_test(tcase, order_in_time_and_space_together);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
