#include "check_close.h"

#include "chain.h"
#include "constants.h"
#include "stepper.h"

static const struct cg_solid iron = {46, 3.6e6};

static struct cg_network *network;

static struct cg_chain chain(enum cg_chain_shape shape, double from, double to,
                             double width, const struct cg_solid *solid,
                             size_t cells)
{
    return (struct cg_chain){.shape = shape,
                             .from = from,
                             .to = to,
                             .width = width,
                             .solid = *solid,
                             .cells = cells};
}

static void setup(void)
{
    ck_assert_int_eq(cg_network_create(&network, NULL), CG_OK);
}

static void teardown(void)
{
    cg_network_free(network);
}

/* From a bath through a film to the end's node [W/K]. */
static double through_film(const struct cg_chain *body, double film, int end)
{
    return body->nodes_on_faces
               ? film
               : cg_series(film, cg_chain_end_conductance(body, end));
}

/* Films of given conductance at both ends, and the settled temperatures. */
static void settle(const struct cg_chain *body, double inner, double t_inner,
                   double outer, double t_outer, double *temperature)
{
    cg_network_add_bath(network, body->first, through_film(body, inner, 0),
                        t_inner, CG_SIDE_GAS, NULL, NULL);
    cg_network_add_bath(network, body->first + cg_chain_nodes(body) - 1,
                        through_film(body, outer, 1), t_outer, CG_SIDE_COOLANT,
                        NULL, NULL);
    struct cg_stepper *stepper;
    ck_assert_int_eq(cg_stepper_create(network, &stepper, NULL), CG_OK);
    ck_assert_int_eq(cg_stepper_settle(stepper, network, temperature, NULL),
                     CG_OK);
    cg_stepper_free(stepper);
}

START_TEST(geometry_of_cells)
{
    struct cg_chain wall =
        chain(CG_CHAIN_RADIAL, 0.043, 0.049, 0.004, &iron, 6);
    check_close(cg_chain_face(&wall, 0), 0.043, 1e-15, "inner face");
    check_close(cg_chain_face(&wall, 6), 0.049, 1e-15, "outer face");
    check_close(cg_chain_centre(&wall, 2), 0.0455, 1e-15, "by hand");
    double area = 0;
    for (size_t c = 0; c < 6; c++)
        area += cg_chain_flat_area(&wall, c);
    check_close(area, CG_PI * (0.049 * 0.049 - 0.043 * 0.043), 1e-13,
                "annulus");
}
END_TEST

START_TEST(whole_capacity_is_kept)
{
    struct cg_chain wall = chain(CG_CHAIN_RADIAL, 0.0, 0.0425, 0.008, &iron, 9);
    struct cg_chain bar = chain(CG_CHAIN_PLANE, -0.01, 0.06, 3.7e-4, &iron, 5);
    cg_chain_add(network, "disk", &wall, NULL);
    cg_chain_add(network, "bar", &bar, NULL);
    ck_assert_uint_eq(bar.first, 9);
    double disk = 0, rest = 0;
    for (size_t c = 0; c < 9; c++)
        disk += network->capacity[c];
    for (size_t c = 9; c < 14; c++)
        rest += network->capacity[c];
    check_close(disk, 3.6e6 * CG_PI * 0.0425 * 0.0425 * 0.008, 1e-13, "volume");
    check_close(rest, 3.6e6 * 0.07 * 3.7e-4, 1e-13, "volume");
}
END_TEST

START_TEST(nodes_on_faces_share_the_cells)
{
    struct cg_chain wall = chain(CG_CHAIN_RADIAL, 0.04, 0.05, 0.1, &iron, 5);
    wall.nodes_on_faces = true;
    cg_chain_add(network, "wall", &wall, NULL);
    ck_assert_uint_eq(network->nodes, 6);
    ck_assert_uint_eq(cg_chain_nodes(&wall), 6);
    check_close(cg_chain_position(&wall, 0), 0.04, 1e-15, "on the face");
    check_close(cg_chain_position(&wall, 5), 0.05, 1e-15, "on the face");
    /* the first stands for half a cell, 0.040 to 0.041 m */
    check_close(cg_chain_flat_area(&wall, 0), CG_PI * 81e-6, 1e-13, "by hand");
    double total = 0;
    for (size_t i = 0; i < 6; i++)
        total += network->capacity[i];
    check_close(total, 3.6e6 * CG_PI * 900e-6 * 0.1, 1e-13, "volume");
    check_close(network->link_conductance[0],
                2 * CG_PI * 46 * 0.1 / log(0.042 / 0.040), 1e-13,
                "hollow cylinder");
}
END_TEST

START_TEST(names_are_numbered)
{
    struct cg_chain wall = chain(CG_CHAIN_PLANE, 0, 1, 1, &iron, 2);
    struct cg_chain lump = chain(CG_CHAIN_PLANE, 0, 1, 1, &iron, 1);
    cg_chain_add(network, "wall", &wall, NULL);
    cg_chain_add(network, "lump", &lump, NULL);
    ck_assert_str_eq(network->name[0], "wall_1");
    ck_assert_str_eq(network->name[1], "wall_2");
    ck_assert_str_eq(network->name[2], "lump");
}
END_TEST

/* Steady profiles are exact at the centres for any number of cells. */
START_TEST(steady_plane_wall_is_exact)
{
    struct cg_chain wall = chain(CG_CHAIN_PLANE, 0.1, 0.16, 2.5e-3, &iron, 7);
    wall.nodes_on_faces = _i == 1;
    cg_chain_add(network, "wall", &wall, NULL);
    double t[8], inner = 3.1, outer = 7.7;
    settle(&wall, inner, 900, outer, 360, t);
    double body = 46 * 2.5e-3 / 0.06;
    double flow = 540 / (1 / inner + 1 / body + 1 / outer);
    for (size_t c = 0; c < cg_chain_nodes(&wall); c++) {
        double x = cg_chain_position(&wall, c) - 0.1;
        check_close(t[c], 900 - flow * (1 / inner + x / (46 * 2.5e-3)), 1e-13,
                    "straight profile");
    }
}
END_TEST

START_TEST(steady_cylinder_wall_is_exact)
{
    struct cg_chain wall = chain(CG_CHAIN_RADIAL, 0.043, 0.051, 0.12, &iron, 5);
    wall.nodes_on_faces = _i == 1;
    cg_chain_add(network, "wall", &wall, NULL);
    double t[6], inner = 12.0, outer = 130.0;
    settle(&wall, inner, 1150, outer, 365, t);
    double line = 2 * CG_PI * 46 * 0.12;
    double flow = 785 / (1 / inner + log(0.051 / 0.043) / line + 1 / outer);
    for (size_t c = 0; c < cg_chain_nodes(&wall); c++) {
        double r = cg_chain_position(&wall, c);
        check_close(t[c], 1150 - flow * (1 / inner + log(r / 0.043) / line),
                    1e-13, "logarithmic profile");
    }
}
END_TEST

START_TEST(steady_layered_wall_is_exact)
{
    static const struct cg_solid alloy = {150, 2.5e6};
    struct cg_chain liner = chain(CG_CHAIN_RADIAL, 0.043, 0.047, 0.1, &iron, 3);
    struct cg_chain block =
        chain(CG_CHAIN_RADIAL, 0.047, 0.055, 0.1, &alloy, 4);
    cg_chain_add(network, "liner", &liner, NULL);
    cg_chain_add(network, "block", &block, NULL);
    double contact = 250.0, inner = 9.0, outer = 95.0;
    cg_network_add_link(
        network, 2, 3,
        cg_series(contact, cg_series(cg_chain_end_conductance(&liner, 1),
                                     cg_chain_end_conductance(&block, 0))),
        NULL, NULL);
    cg_network_add_bath(network, 0,
                        cg_series(inner, cg_chain_end_conductance(&liner, 0)),
                        1000, CG_SIDE_GAS, NULL, NULL);
    cg_network_add_bath(network, 6,
                        cg_series(outer, cg_chain_end_conductance(&block, 1)),
                        360, CG_SIDE_COOLANT, NULL, NULL);
    struct cg_stepper *stepper;
    double t[7];
    cg_stepper_create(network, &stepper, NULL);
    ck_assert_int_eq(cg_stepper_settle(stepper, network, t, NULL), CG_OK);
    cg_stepper_free(stepper);
    double first = log(0.047 / 0.043) / (2 * CG_PI * 46 * 0.1);
    double second = log(0.055 / 0.047) / (2 * CG_PI * 150 * 0.1);
    double flow = 640 / (1 / inner + first + 1 / contact + second + 1 / outer);
    double side[CG_SIDES];
    cg_network_heat_by_side(network, t, side);
    check_close(side[CG_SIDE_GAS], flow, 1e-13, "resistances in series");
    check_close(side[CG_SIDE_COOLANT], -flow, 1e-13, "resistances in series");
    double r = cg_chain_centre(&block, 1);
    check_close(
        t[4],
        360 + flow * (1 / outer + log(0.055 / r) / (2 * CG_PI * 150 * 0.1)),
        1e-13, "logarithmic profile of the outer layer");
}
END_TEST

START_TEST(series_of_conductances)
{
    check_close(cg_series(3, 6), 2, 1e-15, "1/3 + 1/6 = 1/2");
    ck_assert_double_eq(cg_series(0, 5), 0);
    ck_assert_double_eq(cg_series(5, 0), 0);
    ck_assert_double_eq(cg_series(0, 0), 0);
    check_close(cg_series(INFINITY, 7), 7, 1e-15, "perfect contact");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("chain");
    TCase *tcase = tcase_create("chain");
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_add_test(tcase, geometry_of_cells);
    tcase_add_test(tcase, whole_capacity_is_kept);
    tcase_add_test(tcase, nodes_on_faces_share_the_cells);
    tcase_add_test(tcase, names_are_numbered);
    tcase_add_loop_test(tcase, steady_plane_wall_is_exact, 0, 2);
    tcase_add_loop_test(tcase, steady_cylinder_wall_is_exact, 0, 2);
    tcase_add_test(tcase, steady_layered_wall_is_exact);
    tcase_add_test(tcase, series_of_conductances);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
