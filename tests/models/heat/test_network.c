#include "check_close.h"

#include "network.h"

/* Two nodes and a bath each way: every flow can be added up by hand. */
static struct cg_network *pair(void)
{
    struct cg_network *network;
    ck_assert_int_eq(cg_network_create(&network, NULL), CG_OK);
    size_t a, b;
    cg_network_add_node(network, "crown", 3.5, &a, NULL);
    cg_network_add_node(network, "skirt", 1.25, &b, NULL);
    cg_network_add_link(network, a, b, 0.75, NULL, NULL);
    cg_network_add_bath(network, a, 2.0, 900, CG_SIDE_GAS, NULL, NULL);
    cg_network_add_bath(network, b, 4.0, 360, CG_SIDE_OIL, NULL, NULL);
    cg_network_add_bath(network, a, 0.5, 350, CG_SIDE_OIL, NULL, NULL);
    cg_network_add_source(network, b, 17, CG_SIDE_FRICTION, NULL, NULL);
    return network;
}

START_TEST(net_heat_by_hand)
{
    struct cg_network *network = pair();
    const double temperature[] = {500, 400};
    double net[2];
    cg_network_net_heat(network, temperature, net);
    check_close(net[0], -75.0 + 800 - 75, 1e-15, "by hand");
    check_close(net[1], 75.0 - 160 + 17, 1e-15, "by hand");
    cg_network_free(network);
}
END_TEST

START_TEST(heat_by_side_by_hand)
{
    struct cg_network *network = pair();
    const double temperature[] = {500, 400};
    double side[CG_SIDES];
    cg_network_heat_by_side(network, temperature, side);
    check_close(side[CG_SIDE_GAS], 800, 1e-15, "by hand");
    check_close(side[CG_SIDE_OIL], -235, 1e-15, "by hand");
    check_close(side[CG_SIDE_FRICTION], 17, 1e-15, "by hand");
    ck_assert_double_eq(side[CG_SIDE_COOLANT], 0);
    ck_assert_double_eq(side[CG_SIDE_AIR], 0);
    check_close(cg_network_stored_heat(network, temperature), 2250, 1e-15,
                "by hand");
    cg_network_free(network);
}
END_TEST

/* Links only move heat: what enters by the sides is what the nodes gain. */
START_TEST(sides_add_up_to_the_nodes)
{
    struct cg_network *network = pair();
    const double temperature[] = {523.7, 411.9};
    double net[2], side[CG_SIDES], sum = 0;
    cg_network_net_heat(network, temperature, net);
    cg_network_heat_by_side(network, temperature, side);
    for (size_t s = 0; s < CG_SIDES; s++)
        sum += side[s];
    check_close(net[0] + net[1], sum, 1e-14, "first law");
    cg_network_free(network);
}
END_TEST

START_TEST(indices_run_on_and_arrays_grow)
{
    struct cg_network *network;
    cg_network_create(&network, NULL);
    for (size_t i = 0; i < 1000; i++) {
        size_t index;
        cg_network_add_node(network, "n", 1 + (double)i, &index, NULL);
        ck_assert_uint_eq(index, i);
        if (i == 0)
            continue;
        cg_network_add_link(network, i - 1, i, (double)i, &index, NULL);
        ck_assert_uint_eq(index, i - 1);
        cg_network_add_bath(network, i, 2 * (double)i, 300, CG_SIDE_AIR, &index,
                            NULL);
        ck_assert_uint_eq(index, i - 1);
        cg_network_add_source(network, i, 3 * (double)i, CG_SIDE_FRICTION,
                              &index, NULL);
        ck_assert_uint_eq(index, i - 1);
    }
    ck_assert_uint_eq(network->nodes, 1000);
    for (size_t i = 1; i < 1000; i++) {
        ck_assert_double_eq(network->capacity[i], 1 + (double)i);
        ck_assert_uint_eq(network->link_b[i - 1], i);
        ck_assert_double_eq(network->link_conductance[i - 1], (double)i);
        ck_assert_double_eq(network->bath_conductance[i - 1], 2 * (double)i);
        ck_assert_double_eq(network->source_power[i - 1], 3 * (double)i);
    }
    cg_network_free(network);
}
END_TEST

START_TEST(long_names_are_cut)
{
    struct cg_network *network;
    cg_network_create(&network, NULL);
    cg_network_add_node(network, "a name of more than twenty-three letters", 1,
                        NULL, NULL);
    ck_assert_str_eq(network->name[0], "a name of more than twe");
    cg_network_free(network);
    cg_network_free(NULL);
}
END_TEST

START_TEST(floating_node_is_found)
{
    struct cg_network *network = pair();
    char grounded[4];
    ck_assert_uint_eq(cg_network_find_floating(network, grounded), 2);
    size_t third, fourth;
    cg_network_add_node(network, "pin", 1, &third, NULL);
    cg_network_add_node(network, "rod", 1, &fourth, NULL);
    cg_network_add_link(network, fourth, third, 1, NULL, NULL);
    ck_assert_uint_eq(cg_network_find_floating(network, grounded), 2);
    cg_network_add_link(network, fourth, 0, 0, NULL, NULL);
    ck_assert_msg(cg_network_find_floating(network, grounded) == 2,
                  "a link of 0 W/K leads nowhere");
    network->link_conductance[network->links - 1] = 1e-9;
    ck_assert_uint_eq(cg_network_find_floating(network, grounded), 4);
    cg_network_free(network);
}
END_TEST

/* A rewound network keeps its names and takes new values. */
START_TEST(rewind_keeps_names)
{
    struct cg_network *network;
    ck_assert_int_eq(cg_network_create(&network, NULL), CG_OK);
    ck_assert(!cg_network_has_name(network));
    cg_network_add_node(network, "one", 1.0, NULL, NULL);
    cg_network_add_node(network, "two", 2.0, NULL, NULL);
    cg_network_add_link(network, 0, 1, 3.0, NULL, NULL);
    cg_network_add_bath(network, 0, 1.0, 300.0, CG_SIDE_OIL, NULL, NULL);
    cg_network_add_source(network, 1, 5.0, CG_SIDE_FRICTION, NULL, NULL);
    cg_network_rewind(network);
    ck_assert_uint_eq(network->nodes + network->links + network->baths +
                          network->sources, 0);
    ck_assert(cg_network_has_name(network));
    cg_network_add_node(network, "", 7.0, NULL, NULL);
    cg_network_add_node(network, "", 8.0, NULL, NULL);
    ck_assert(!cg_network_has_name(network));
    cg_network_add_node(network, "three", 9.0, NULL, NULL);
    ck_assert_str_eq(network->name[0], "one");
    ck_assert_str_eq(network->name[1], "two");
    ck_assert_str_eq(network->name[2], "three");
    ck_assert_double_eq(network->capacity[1], 8.0);
    cg_network_free(network);
}
END_TEST

START_TEST(sides_have_names)
{
    ck_assert_str_eq(cg_side_text(CG_SIDE_GAS), "gas");
    ck_assert_str_eq(cg_side_text(CG_SIDE_FRICTION), "friction");
    for (int a = 0; a < CG_SIDES; a++)
        for (int b = 0; b < a; b++)
            ck_assert_str_ne(cg_side_text((enum cg_side)a),
                             cg_side_text((enum cg_side)b));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("network");
    TCase *tcase = tcase_create("network");
    tcase_add_test(tcase, net_heat_by_hand);
    tcase_add_test(tcase, heat_by_side_by_hand);
    tcase_add_test(tcase, sides_add_up_to_the_nodes);
    tcase_add_test(tcase, indices_run_on_and_arrays_grow);
    tcase_add_test(tcase, long_names_are_cut);
    tcase_add_test(tcase, floating_node_is_found);
    tcase_add_test(tcase, rewind_keeps_names);
    tcase_add_test(tcase, sides_have_names);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
