/* The ring pack's own logic: slopes, balances, seating, hard cases. */
#include "check_close.h"
#include "pack_of.h"

static struct cg_ring_pack pack;
static struct cg_pack_record record[CG_PACK_NODES];

static void point_of(double p1, double p2, double p3, double x,
                     struct cg_pack_point *point)
{
    *point = (struct cg_pack_point){{p1, p2, p3}, {x, 0.4 * x}, {0.3, -0.1}};
}

/* Every slope against the difference quotient. */
START_TEST(slopes)
{
    static const double at[][4] = {
        {4.8e6, 1.1e6, 0.9e6, 2.1e-5},  /* gas flows down */
        {1.2e5, 3.9e5, 4.1e5, 4.7e-5},  /* and back */
        {1.9e6, 1.95e6, 2.6e5, 1.3e-6}, /* the top ring has given way */
    };
    static const double cylinder[] = {5.1e6, 1.05e5, 4.6e6};
    pack_set(&pack, 80.0, 3e-4, 4e-4);
    pack.port_area = 2e-6;
    for (int i = 0; i < 3; i++) {
        struct cg_pack_node node = pack.node[400];
        struct cg_pack_point point, moved;
        struct cg_pack_rates rates, up, down;
        node.pressure = cylinder[i];
        point_of(at[i][0], at[i][1], at[i][2], at[i][3], &point);
        cg_pack_rates(&pack, &node, &point, &rates);
        for (size_t v = 0; v < CG_PACK_VOLUMES; v++) {
            double h = 1e-6 * point.pressure[v];
            moved = point;
            moved.pressure[v] += h;
            cg_pack_rates(&pack, &node, &moved, &up);
            moved.pressure[v] -= 2.0 * h;
            cg_pack_rates(&pack, &node, &moved, &down);
            for (size_t f = 0; f < CG_PACK_FLOWS; f++)
                check_within(rates.flow[f].by_pressure[v],
                             (up.flow[f].rate - down.flow[f].rate) / (2 * h),
                             1e-5 * fabs(rates.flow[f].by_pressure[v]) +
                                 1e-9 * fabs(rates.flow[f].rate) / h + 1e-20,
                             "difference quotient");
            for (size_t k = 0; k < CG_PACK_RINGS; k++)
                check_within(
                    rates.push[k].by_pressure[v],
                    (up.push[k].acceleration - down.push[k].acceleration) /
                        (2 * h),
                    1e-5 * fabs(rates.push[k].by_pressure[v]) + 1e-9,
                    "difference quotient");
        }
        for (size_t k = 0; k < CG_PACK_RINGS; k++) {
            double h = 1e-4 * point.lift[k];
            moved = point;
            moved.lift[k] += h;
            cg_pack_rates(&pack, &node, &moved, &up);
            moved.lift[k] -= 2.0 * h;
            cg_pack_rates(&pack, &node, &moved, &down);
            for (size_t w = 0; w < CG_PACK_WAYS; w++) {
                size_t f = CG_PACK_FLOW(k, w);
                check_within(rates.flow[f].by_lift,
                             (up.flow[f].rate - down.flow[f].rate) / (2 * h),
                             1e-5 * fabs(rates.flow[f].by_lift) + 1e-12,
                             "difference quotient");
            }
            check_close(rates.push[k].by_lift,
                        (up.push[k].acceleration - down.push[k].acceleration) /
                            (2 * h),
                        1e-5, "difference quotient");
        }
    }
}
END_TEST

/* Half way between equal pressures nothing flows and nothing pushes but
 * inertia and friction. */
START_TEST(at_rest)
{
    struct cg_pack_point point;
    struct cg_pack_rates rates;
    pack_set(&pack, 50.0, 3e-4, 4e-4);
    struct cg_pack_node node = pack.node[0];
    node.pressure = pack.crankcase_pressure;
    node.acceleration = node.slide = 0.0;
    point_of(1e5, 1e5, 1e5, 0.0, &point);
    memset(point.speed, 0, sizeof point.speed);
    cg_pack_rates(&pack, &node, &point, &rates);
    for (size_t f = 0; f < CG_PACK_FLOWS; f++)
        check_within(rates.flow[f].rate, 0.0, 1e-18, "equal pressures");
    for (size_t k = 0; k < CG_PACK_RINGS; k++)
        check_within(rates.push[k].acceleration, 0.0, 1e-6, "equal pressures");
}
END_TEST

static struct cg_pack_settled settle(void)
{
    struct cg_pack_state state;
    struct cg_pack_settled settled;
    struct cg_error error = {0};
    enum cg_status status =
        cg_pack_settle(&pack, &cg_pack_control_usual, false, &state, &settled,
                       record, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return settled;
}

START_TEST(mass_closes_and_repeats)
{
    static const double speed[] = {10.0, 30.0, 60.0, 110.0, 150.0};
    for (int i = 0; i < 5; i++) {
        pack_set(&pack, speed[i], 3e-4, 4e-4);
        struct cg_pack_settled settled = settle();
        check_within(settled.cycle.residual, 0.0, 1e-12, "balance of mass");
        ck_assert_double_lt(settled.change, 1e-6);
        check_close(settled.cycle.from_cylinder, settled.cycle.to_crankcase,
                    1e-5, "nothing gathers in a settled pack");
        check_within(record[0].pressure[2], record[720].pressure[2], 0.0,
                     "one cycle follows the other");
        for (size_t n = 0; n < CG_PACK_NODES; n++)
            for (size_t k = 0; k < CG_PACK_RINGS; k++) {
                ck_assert_double_ge(record[n].lift[k], 0.0);
                ck_assert_double_le(record[n].lift[k],
                                    pack.ring[k].travel + 1e-9);
            }
    }
}
END_TEST

/* The record's flows are those of the cycle. */
START_TEST(record_adds_up)
{
    pack_set(&pack, 60.0, 3e-4, 4e-4);
    struct cg_pack_settled settled = settle();
    double down = 0.0;
    for (size_t n = 1; n < CG_PACK_NODES; n++)
        for (size_t f = 0; f < CG_PACK_FLOWS; f++)
            if (cg_pack_to[f] == CG_PACK_CRANKCASE)
                down += record[n].flow[f];
    check_close(down, settled.cycle.to_crankcase, 1e-9, "sum of the record");
}
END_TEST

/* Two controls, a hundred times apart. */
START_TEST(steps_are_short_enough)
{
    static const double second[] = {2e-4, 4e-4, 8e-4};
    for (int i = 0; i < 3; i++) {
        struct cg_pack_control fine = cg_pack_control_usual;
        struct cg_pack_settled settled, exact;
        struct cg_pack_state state;
        struct cg_error error = {0};
        fine.mass_tolerance *= 0.01;
        fine.lift_tolerance *= 0.05;
        pack_set(&pack, 45.0, 4e-4, second[i]);
        settled = settle();
        ck_assert_int_eq(cg_pack_settle(&pack, &fine, false, &state, &exact,
                                        NULL, &error),
                         CG_OK);
        ck_assert_int_gt((int)exact.cycle.steps, (int)settled.cycle.steps);
        check_close(settled.cycle.to_crankcase, exact.cycle.to_crankcase,
                    5e-4, "finer steps");
        check_within(settled.cycle.unseat_deg[0], exact.cycle.unseat_deg[0],
                     0.05, "finer steps");
        ck_assert_int_eq(cg_pack_settle(&pack, &cg_pack_control_quick, false,
                                        &state, &settled, NULL, &error),
                         CG_OK);
        check_within(settled.cycle.unseat_deg[0], exact.cycle.unseat_deg[0],
                     0.2, "finer steps");
    }
}
END_TEST

/* Gas cannot lift a ring that is held; inertia lifts a free one. */
START_TEST(inertia_lifts)
{
    pack_set(&pack, 150.0, 3e-4, 4e-4);
    struct cg_pack_settled settled = settle();
    ck_assert_int_ge(settled.cycle.lifts[0], 1);
    ck_assert_int_ge(settled.cycle.lifts[1], 1);
    for (size_t n = 370; n < 400; n++) /* pressed down while it burns */
        check_within(record[n].lift[0], 0.0, 0.0, "on its lower flank");
    pack.ring[0].pinned = pack.ring[1].pinned = true;
    settled = settle();
    ck_assert_int_eq(settled.cycle.lifts[0], 0);
    check_close(settled.cycle.unseat_deg[0], 720.0, 0.0, "held");
    check_close(settled.cycle.seated_share[1], 1.0, 1e-9, "held");
}
END_TEST

/* A ring behind which no gas comes is pushed in by the gas at its face. */
START_TEST(a_starved_groove_gives_way)
{
    double load[CG_PACK_REGIONS] = {5e6, 1e5, 1e5, 1e5, 1e5};
    pack_set(&pack, 50.0, 3e-4, 4e-4);
    ck_assert_double_lt(cg_pack_load(&pack.ring[0], 0, load), 0.0);
    load[CG_PACK_GROOVE_TOP] = 5e6;
    double all = cg_pack_load(&pack.ring[0], 0, load);
    const struct cg_pack_ring *ring = &pack.ring[0];
    check_close(all,
                (5e6 + ring->tension - 0.5 * (5e6 + 1e5)) * ring->perimeter *
                    ring->face_width,
                1e-12, "by hand");
}
END_TEST

/* Whatever is asked, an answer or a clear line; never nonsense. */
START_TEST(hard_cases)
{
    static const struct {
        const char *name;
        double speed, top, second, leak, travel, volume, port;
    } hard[] = {
        {"no gap at all", 100.0, 0.0, 0.0, 5e-7, 5e-5, 2e-7, 0.0},
        {"no top gap", 50.0, 0.0, 4e-4, 5e-7, 5e-5, 2e-7, 0.0},
        {"no second gap", 50.0, 4e-4, 0.0, 5e-7, 5e-5, 2e-7, 0.0},
        {"huge gaps", 50.0, 2e-2, 2e-2, 5e-7, 5e-5, 2e-7, 0.0},
        {"no second ring", 60.0, 3e-4, 0.27, 5e-7, 5e-5, 2e-7, 0.0},
        {"no top ring", 60.0, 0.27, 4e-4, 5e-7, 5e-5, 2e-7, 0.0},
        {"very fast", 420.0, 3e-4, 4e-4, 5e-7, 5e-5, 2e-7, 0.0},
        {"very slow", 1.0, 3e-4, 4e-4, 5e-7, 5e-5, 2e-7, 0.0},
        {"loose grooves", 100.0, 3e-4, 4e-4, 5e-6, 1e-3, 2e-7, 0.0},
        {"tight grooves", 100.0, 3e-4, 4e-4, 1e-7, 2e-6, 2e-7, 0.0},
        {"tiny land", 80.0, 3e-4, 4e-4, 5e-7, 5e-5, 1e-11, 0.0},
        {"huge land", 80.0, 3e-4, 4e-4, 5e-7, 5e-5, 1e-4, 0.0},
        {"huge ports", 80.0, 3e-4, 4e-4, 5e-7, 5e-5, 2e-7, 1e-3},
    };
    for (size_t i = 0; i < sizeof hard / sizeof hard[0]; i++) {
        struct cg_pack_state state;
        struct cg_pack_settled settled;
        struct cg_error error = {0};
        pack_set(&pack, hard[i].speed, hard[i].top, hard[i].second);
        pack.leak = hard[i].leak;
        pack.volume[1] = hard[i].volume;
        pack.port_area = hard[i].port;
        pack.ring[0].travel = pack.ring[1].travel = hard[i].travel;
        enum cg_status status =
            cg_pack_settle(&pack, &cg_pack_control_usual, false, &state,
                           &settled, record, &error);
        if (status != CG_OK) {
            ck_assert_msg(status == CG_NUMERICAL && error.text[0] != '\0',
                          "%s", hard[i].name);
            continue;
        }
        ck_assert_msg(isfinite(settled.cycle.to_crankcase) &&
                          settled.change < 1e-6 &&
                          fabs(settled.cycle.residual) < 1e-11,
                      "%s: blow-by %g, change %g, residual %g", hard[i].name,
                      settled.cycle.to_crankcase, settled.change,
                      settled.cycle.residual);
        for (size_t n = 0; n < CG_PACK_NODES; n++)
            for (size_t p = 0; p < CG_PACK_REGIONS; p++)
                ck_assert_msg(record[n].pressure[p] > 0.0 &&
                                  record[n].pressure[p] < 1e8,
                              "%s: node %zu place %zu: %g Pa", hard[i].name, n,
                              p, record[n].pressure[p]);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ring pack");
    TCase *tcase = tcase_create("all");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, slopes);
    tcase_add_test(tcase, at_rest);
    tcase_add_test(tcase, mass_closes_and_repeats);
    tcase_add_test(tcase, record_adds_up);
    tcase_add_test(tcase, steps_are_short_enough);
    tcase_add_test(tcase, inertia_lifts);
    tcase_add_test(tcase, a_starved_groove_gives_way);
    tcase_add_test(tcase, hard_cases);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
