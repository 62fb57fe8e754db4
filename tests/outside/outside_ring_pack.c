/* The ring pack against what is known of gaps in series and of crevices that
 * empty: closed formulas, and what engines have shown. */
#include "check_close.h"
#include "pack_of.h"

#define SHAPIRO                                                               \
    "by the formula of A. H. Shapiro, Compressible Fluid Flow (1953), ch. 4"
#define WENTWORTH                                                             \
    SHAPIRO "; that the smaller of the two gaps governs: Wentworth, SAE "     \
            "680109 (1968)"

static struct cg_ring_pack pack;

/* A steady cylinder, all gas at one temperature: two orifices in series. */
static double steady(double gamma, double second_over_top, double *flow)
{
    struct cg_pack_state state;
    struct cg_pack_settled settled;
    struct cg_error error = {0};
    pack_set(&pack, 50.0, 2e-4, 2e-4 * second_over_top);
    pack_tight(&pack);
    cg_flow_gas_set(&pack.gas, 287.0, gamma);
    pack.discharge = 0.86;
    for (size_t i = 0; i < CG_PACK_REGIONS; i++)
        pack.temperature[i] = 450.0;
    for (size_t i = 0; i < CG_PACK_NODES; i++)
        pack.node[i].pressure = 5e6;
    enum cg_status status =
        cg_pack_settle(&pack, &cg_pack_control_usual, false, &state, &settled,
                       NULL, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    *flow = settled.cycle.to_crankcase * pack.speed / 2.0;
    ck_assert_double_eq_tol(settled.cycle.from_cylinder,
                            settled.cycle.to_crankcase,
                            1e-5 * settled.cycle.to_crankcase);
    return state.mass[1] / cg_pack_capacity(&pack, 1) / 5e6;
}

START_TEST(two_gaps_in_series)
{
    static const double ratio[] = {0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0};
    static const struct {
        double gamma, pressure[8];
    } row[] = {{1.4, {0.9855, 0.9444, 0.8825, 0.8075, 0.7266, 0.6459, 0.5,
                      1.0 / 3.0}},
               {1.3, {0.9862, 0.9469, 0.8868, 0.8129, 0.7319, 0.6497, 0.5,
                      1.0 / 3.0}}};
    for (int g = 0; g < 2; g++)
        for (int i = 0; i < 8; i++) {
            double flow;
            check_close(steady(row[g].gamma, ratio[i], &flow),
                        row[g].pressure[i], 1e-3, SHAPIRO);
        }
}
END_TEST

START_TEST(the_smaller_gap_controls)
{
    double base, wider;
    /* Top gap the smaller, choked: the second may be anything. */
    steady(1.4, 2.0, &base);
    steady(1.4, 4.0, &wider);
    ck_assert_double_eq_tol(wider, base, 1e-4 * base);
    /* The top gap doubled: from k = 2 to k = 1 at twice the area. */
    steady(1.4, 1.0, &wider);
    check_close(2.0 * wider / base, 1.615, 2e-3, WENTWORTH);
    /* From equal gaps the second doubled. */
    check_close(base / wider, 1.238, 2e-3, WENTWORTH);
}
END_TEST

/* Half a cubic centimetre through a gap of 0.30 by 0.05 mm, choked; nothing
 * comes from above. */
START_TEST(a_crevice_empties)
{
    struct cg_pack_state state;
    struct cg_pack_cycle cycle;
    struct cg_error error = {0};
    pack_set(&pack, 25.0, 0.0, 3e-4);
    pack_tight(&pack);
    cg_flow_gas_set(&pack.gas, 287.0, 1.4);
    pack.volume[1] = 0.3e-6; /* and the groove it opens into, 0.2e-6 */
    for (size_t i = 0; i < CG_PACK_REGIONS; i++)
        pack.temperature[i] = 450.0;
    for (size_t i = 0; i < CG_PACK_NODES; i++) {
        pack.node[i].clearance[1] = 5e-5;
        pack.node[i].pressure = 5e6;
    }
    cg_pack_state_set(&pack, 0.0, (double[]){5e6, 5e6, 5e6}, &state);
    double before = state.mass[1];
    ck_assert_int_eq(cg_pack_cycle_run(&pack, &cg_pack_control_usual, &state,
                                       &cycle, NULL, &error),
                     CG_OK);
    double seconds = 720.0 / (360.0 * 25.0);
    check_close(-seconds / log(state.mass[1] / before), 0.1575, 2e-3,
                "V/(Cd A psi sqrt(R T)), choked (" SHAPIRO ")");
}
END_TEST

/* While the side clearance is open the groove follows the cylinder: its
 * channel passes a thousand times what the gap does. */
START_TEST(the_groove_follows)
{
    struct cg_pack_state state;
    struct cg_pack_settled settled;
    static struct cg_pack_record record[CG_PACK_NODES];
    struct cg_error error = {0};
    pack_set(&pack, 50.0, 3e-4, 4e-4);
    ck_assert_int_eq(cg_pack_settle(&pack, &cg_pack_control_usual, false,
                                    &state, &settled, record, &error),
                     CG_OK);
    for (size_t i = 360; i < 460; i++)
        ck_assert_double_eq_tol(record[i].pressure[CG_PACK_GROOVE_TOP],
                                record[i].pressure[CG_PACK_CYLINDER],
                                0.01 * record[i].pressure[CG_PACK_CYLINDER]);
}
END_TEST

/* A small second gap lets gas gather between the rings, and the top ring
 * lifts sooner. */
START_TEST(a_small_second_gap_lifts_the_top_ring)
{
    double last = 0.0;
    for (int i = 0; i < 4; i++) {
        struct cg_pack_state state;
        struct cg_pack_settled settled;
        struct cg_error error = {0};
        pack_set(&pack, 45.0, 4e-4, 1e-4 + 2e-4 * i);
        ck_assert_int_eq(cg_pack_settle(&pack, &cg_pack_control_usual, false,
                                        &state, &settled, NULL, &error),
                         CG_OK);
        ck_assert_double_gt(settled.cycle.unseat_deg[0], last + 1.0);
        last = settled.cycle.unseat_deg[0];
    }
    ck_assert_double_lt(last, 180.0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ring pack, published");
    TCase *tcase = tcase_create("all");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, two_gaps_in_series);
    tcase_add_test(tcase, the_smaller_gap_controls);
    tcase_add_test(tcase, a_crevice_empties);
    tcase_add_test(tcase, the_groove_follows);
    tcase_add_test(tcase, a_small_second_gap_lifts_the_top_ring);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
