#include "heat_fixture.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <gsl/gsl_rng.h>
#include <stdio.h>
#include <string.h>

enum { MOST = 64 };

/* One lump of 2.5 J/K behind 0.8 W/K to a bath at 0 K. */
static void make_lump(void)
{
    cg_network_add_node(network, "lump", 2.5, NULL, NULL);
    cg_network_add_bath(network, 0, 0.8, 0, CG_SIDE_OIL, NULL, NULL);
    make_stepper();
}

static void ramp_conductance(void *context, double time, struct cg_network *n)
{
    (void)context;
    n->bath_conductance[0] = 0.8 + 0.35 * time;
}

static void swing_bath(void *context, double time, struct cg_network *n)
{
    (void)context;
    n->bath_temperature[0] = 400 + 50 * sin(1.7 * time);
}

START_TEST(stiff_mode_is_damped_at_once)
{
    make_lump();
    network->bath_conductance[0] = 0.8e9; /* rate 3.2e8 1/s */
    double last = 1;
    for (int k = 0; k < 3; k++) {
        double step = pow(100, k) * 1e-4, t = 1;
        run_fixed(NULL, step, step, &t);
        /* an A-stable scheme would keep some share for ever */
        check_within(t * 3.2e8 * step, 0, 12, "L-stable: R(z) falls as 1/|z|");
        if (k > 0)
            check_close(last / t, 100, 0.01, "L-stable");
        last = t;
    }
}
END_TEST

START_TEST(series_lets_stiff_modes_die)
{
    make_lump();
    network->bath_conductance[0] = 0.8e9;
    for (int k = 0; k < 4; k++) {
        struct cg_step_control control = {.tolerance = 1e-3};
        double t = 300;
        run(NULL, 0, pow(100, k) * 1e-6, &control, &t, NULL);
        check_within(t, 0, 1e-3, "dead after hundreds of time constants");
    }
}
END_TEST

/* Random links between neighbours and afar, baths of all sides. */
static void make_random(gsl_rng *rng, size_t nodes)
{
    for (size_t i = 0; i < nodes; i++) {
        char name[32];
        snprintf(name, sizeof name, "node_%zu", i);
        cg_network_add_node(network, name, 0.5 + 3 * gsl_rng_uniform(rng), NULL,
                            NULL);
        if (i > 0)
            cg_network_add_link(network, i - 1, i,
                                20 * gsl_rng_uniform_pos(rng), NULL, NULL);
        if (i > 4)
            cg_network_add_link(network, i, gsl_rng_uniform_int(rng, i - 1),
                                gsl_rng_uniform(rng), NULL, NULL);
        cg_network_add_bath(network, i, 0.4 * gsl_rng_uniform(rng),
                            300 + 700 * gsl_rng_uniform(rng),
                            (enum cg_side)gsl_rng_uniform_int(rng, CG_SIDES),
                            NULL, NULL);
        if (i % 3 == 0)
            cg_network_add_source(network, i, 30 * gsl_rng_uniform(rng),
                                  CG_SIDE_FRICTION, NULL, NULL);
    }
    make_stepper();
}

/* Everything in a random network moves with time. */
static void move_all(void *context, double time, struct cg_network *n)
{
    double still = *(const double *)context;
    for (size_t b = 0; b < n->baths; b++) {
        double phase = 0.7 * (double)b;
        n->bath_temperature[b] = 600 + 250 * sin(still * time + phase);
        n->bath_conductance[b] = 0.3 + 0.2 * cos(1.3 * still * time - phase);
    }
    for (size_t l = 0; l < n->links; l++)
        n->link_conductance[l] = 3 + 2 * sin(0.9 * still * time + (double)l);
    for (size_t s = 0; s < n->sources; s++)
        n->source_power[s] = 40 + 30 * sin(2 * still * time);
}

START_TEST(energy_closes_to_rounding)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 40);
    double pace = 1.1, t[40], in = 0;
    struct cg_drive moving = {move_all, &pace, false};
    struct cg_step_control control = {.tolerance = 0.01};
    struct cg_heat_ledger ledger = {0};
    for (size_t i = 0; i < 40; i++)
        t[i] = 300;
    double before = cg_network_stored_heat(network, t);
    run(&moving, 0, 8, &control, t, &ledger);
    run(NULL, 8, 20, &control, t, &ledger);
    run(&moving, 20, 31, &control, t, &ledger);
    for (size_t s = 0; s < CG_SIDES; s++)
        in += ledger.in[s];
    check_within(ledger.residual, 0, 1e-12, "first law");
    check_close(in, cg_network_stored_heat(network, t) - before, 1e-10,
                "counted again from outside");
    ck_assert_double_ge(ledger.turnover, fabs(ledger.stored));
    ck_assert_int_gt(ledger.steps, 30);
    gsl_rng_free(rng);
}
END_TEST

START_TEST(settled_state_is_where_a_long_run_ends)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 30);
    double settled[30], t[30], net[30];
    ck_assert_int_eq(cg_stepper_settle(stepper, network, settled, NULL), CG_OK);
    cg_network_net_heat(network, settled, net);
    struct cg_step_control control = {.tolerance = 1e-6};
    for (size_t i = 0; i < 30; i++)
        t[i] = 293;
    run(NULL, 0, 2000, &control, t, NULL);
    for (size_t i = 0; i < 30; i++) {
        check_within(net[i], 0, 1e-9, "no net heat");
        check_within(t[i], settled[i], 1e-6, "long run");
    }
    gsl_rng_free(rng);
}
END_TEST

/* After a small change, corrections by the old factors end where new factors
 * do, each a small part of the one before; taken over by another stepper they
 * are the same to the bit. */
START_TEST(corrections_end_in_the_settled_state)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 30);
    struct cg_stepper *other;
    double t[30], u[30], settled[30], before = INFINITY, size = INFINITY;
    ck_assert_int_eq(cg_stepper_create(network, &other, NULL), CG_OK);
    ck_assert_double_eq(cg_stepper_correct(stepper, network, t), INFINITY);
    ck_assert_int_eq(cg_stepper_settle(stepper, network, t, NULL), CG_OK);
    memcpy(u, t, sizeof u);
    cg_stepper_take_factors(other, stepper);
    for (size_t l = 0; l < network->links; l++)
        network->link_conductance[l] *= 1.0 + 0.02 * (double)(l % 3);
    network->bath_temperature[0] += 10;
    for (int i = 0; i < 8; i++) {
        size = cg_stepper_correct(stepper, network, t);
        ck_assert_double_lt(size, 0.25 * before);
        before = size;
        ck_assert_double_eq(cg_stepper_correct(other, network, u), size);
    }
    ck_assert_double_lt(size, 1e-6);
    ck_assert_int_eq(cg_stepper_settle(stepper, network, settled, NULL), CG_OK);
    for (size_t i = 0; i < 30; i++) {
        check_within(t[i], settled[i], 1e-6, "new factors");
        ck_assert_double_eq(u[i], t[i]);
    }
    cg_stepper_free(other);
    gsl_rng_free(rng);
}
END_TEST

/* A settled network that stays: no step, and the ledger of a run in steps. */
START_TEST(a_settled_interval_takes_no_step)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 30);
    double t[30], u[30];
    ck_assert_int_eq(cg_stepper_settle(stepper, network, t, NULL), CG_OK);
    memcpy(u, t, sizeof u);
    struct cg_step_control still = {.settled = true, .tolerance = 1e-6};
    struct cg_step_control steps = {.fixed_step = 1.0};
    struct cg_heat_ledger a = {0}, b = {0};
    run(NULL, 3, 13, &still, t, &a);
    run(NULL, 3, 13, &steps, u, &b);
    ck_assert_int_eq(a.steps, 0);
    ck_assert_int_eq(a.solutions, 0);
    for (size_t i = 0; i < 30; i++)
        check_within(t[i], u[i], 1e-9, "nothing moves");
    for (int s = 0; s < CG_SIDES; s++)
        check_within(a.in[s], b.in[s], 1e-9 * b.turnover, "the same heat");
    check_within(a.residual, 0, 1e-12, "what goes in comes out");
    gsl_rng_free(rng);
}
END_TEST

START_TEST(unconnected_node_has_no_settled_state)
{
    make_lump();
    cg_network_add_node(network, "gudgeon", 1, NULL, NULL);
    make_stepper();
    double t[2] = {1, 2};
    ck_assert_int_eq(cg_stepper_settle(stepper, network, t, &error),
                     CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "gudgeon") != NULL, "%s", error.text);
    ck_assert_msg(t[0] == 1 && t[1] == 2, "results are left alone");
}
END_TEST

/* Notes what the observer is shown. */
struct record {
    double time[4000], temperature[4000];
    double half_way[4000]; /* temperature between this and the one before */
    size_t count, stop_at;
};

static enum cg_status note(void *context, double time,
                           const double *temperature, struct cg_error *problem)
{
    struct record *record = context;
    if (record->count == record->stop_at)
        return cg_error_set(problem, CG_FILE, "disk full");
    record->time[record->count] = time;
    record->temperature[record->count] = temperature[0];
    size_t i = record->count++;
    if (i > 0 && time > record->time[i - 1]) {
        double between[MOST];
        cg_stepper_between(stepper, 0.5 * (record->time[i - 1] + time),
                           between);
        record->half_way[i] = between[0];
    }
    return CG_OK;
}

static struct record record;

static enum cg_status observed(const struct cg_drive *drive, double from,
                              double to, double tolerance, double *temperature)
{
    struct cg_step_control control = {.tolerance = tolerance};
    return cg_stepper_run(stepper, network, drive, from, to, &control,
                          temperature, NULL, note, &record, &error);
}

START_TEST(intervals_end_exactly_and_without_slivers)
{
    make_lump();
    record = (struct record){.stop_at = 4000};
    double t = 500, to[] = {0.1, 0.7, 0.7001, 5.3, 60.0}, from = 0;
    for (size_t k = 0; k < 5; k++) {
        size_t before = record.count;
        network->bath_temperature[0] = 100.0 * (double)k;
        ck_assert_int_eq(observed(NULL, from, to[k], 1e-3, &t), CG_OK);
        ck_assert_double_eq(record.time[before], from);
        ck_assert_double_eq(record.time[record.count - 1], to[k]);
        size_t n = record.count;
        if (n - before > 2) {
            double last = record.time[n - 1] - record.time[n - 2];
            double next = record.time[n - 2] - record.time[n - 3];
            ck_assert_msg(last > 0.49 * next, "sliver %g after %g", last, next);
        }
        from = to[k];
    }
}
END_TEST

/* T' = k (400 + 50 sin wt - T), T(0) = 300 */
static double swinging(double time)
{
    double k = 0.8 / 2.5, w = 1.7, swing = 50 * k / (k * k + w * w);
    return 400 + swing * (k * sin(w * time) - w * cos(w * time)) +
           (-100 + swing * w) * exp(-k * time);
}

START_TEST(observer_sees_all_times_of_a_driven_interval)
{
    make_lump();
    record = (struct record){.stop_at = 4000};
    double t = 300;
    struct cg_drive drive = {swing_bath, NULL, true};
    ck_assert_int_eq(observed(&drive, 0, 9, 1e-3, &t), CG_OK);
    ck_assert_uint_gt(record.count, 8);
    for (size_t k = 1; k < record.count; k++) {
        double middle = 0.5 * (record.time[k - 1] + record.time[k]);
        check_within(record.temperature[k], swinging(record.time[k]), 1e-3,
                     "exact");
        check_within(record.half_way[k], swinging(middle), 4e-3, "exact");
    }
}
END_TEST

START_TEST(observer_sees_all_times_of_a_constant_interval)
{
    make_lump();
    record = (struct record){.stop_at = 4000};
    double t = 300;
    ck_assert_int_eq(observed(NULL, 2, 90, 1e-3, &t), CG_OK);
    ck_assert_uint_gt(record.count, 4);
    for (size_t k = 1; k < record.count; k++) {
        double middle = 0.5 * (record.time[k - 1] + record.time[k]);
        double rate = 0.8 / 2.5;
        check_within(record.temperature[k],
                     300 * exp(-rate * (record.time[k] - 2)), 1e-3, "exact");
        check_within(record.half_way[k], 300 * exp(-rate * (middle - 2)), 1e-3,
                     "exact");
    }
}
END_TEST

START_TEST(a_settled_interval_is_observed)
{
    make_lump();
    network->bath_temperature[0] = 340;
    record = (struct record){.stop_at = 4000};
    double t = 340;
    struct cg_step_control control = {.settled = true, .tolerance = 1e-3};
    ck_assert_int_eq(cg_stepper_run(stepper, network, NULL, 2, 7, &control, &t,
                                    NULL, note, &record, NULL), CG_OK);
    ck_assert_uint_eq(record.count, 2);
    ck_assert_double_eq(record.time[0], 2);
    ck_assert_double_eq(record.time[1], 7);
    ck_assert_double_eq(record.half_way[1], 340);
}
END_TEST

START_TEST(observer_may_stop_the_run)
{
    make_lump();
    record = (struct record){.stop_at = 3};
    double t = 300;
    ck_assert_int_eq(observed(NULL, 0, 9, 1e-4, &t), CG_FILE);
    ck_assert_str_eq(error.text, "disk full");
    ck_assert_uint_eq(record.count, 3);
}
END_TEST

/* The series against many small steps, from a jump at every node. */
START_TEST(series_agrees_with_steps)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 50);
    static const double to[] = {0.01, 0.3, 4, 25, 400};
    for (size_t k = 0; k < 5; k++) {
        double exact[50];
        for (size_t i = 0; i < 50; i++)
            exact[i] = 350 + 3 * (double)(i * 7 % 10);
        run_fixed(NULL, fmin(to[k], 25), fmin(to[k], 25) / 4000, exact);
        if (to[k] > 25)
            cg_stepper_settle(stepper, network, exact, NULL);
        for (double tolerance = 1; tolerance > 1e-6; tolerance /= 8) {
            struct cg_step_control control = {.tolerance = tolerance};
            struct cg_heat_ledger ledger = {0};
            double t[50];
            for (size_t i = 0; i < 50; i++)
                t[i] = 350 + 3 * (double)(i * 7 % 10);
            run(NULL, 0, to[k], &control, t, &ledger);
            for (size_t i = 0; i < 50; i++)
                check_within(t[i], exact[i], tolerance, "same problem");
            check_within(ledger.residual, 0, 1e-12, "first law");
        }
    }
    gsl_rng_free(rng);
}
END_TEST

START_TEST(series_of_a_network_without_baths_keeps_its_heat)
{
    for (size_t i = 0; i < 30; i++) {
        cg_network_add_node(network, "cell", 1 + 0.1 * (double)i, NULL, NULL);
        if (i > 0)
            cg_network_add_link(network, i - 1, i, 2, NULL, NULL);
    }
    make_stepper();
    double t[30] = {700};
    double heat = cg_network_stored_heat(network, t), capacity = 0;
    for (size_t i = 0; i < 30; i++)
        capacity += network->capacity[i];
    struct cg_step_control control = {.tolerance = 1e-3};
    run(NULL, 0, 20, &control, t, NULL);
    check_close(cg_network_stored_heat(network, t), heat, 1e-13, "first law");
    run(NULL, 20, 1e5, &control, t, NULL);
    check_close(cg_network_stored_heat(network, t), heat, 1e-11, "first law");
    for (size_t i = 0; i < 30; i++)
        check_within(t[i], heat / capacity, 1e-3, "evened out");
}
END_TEST

/* Sets what is already set: the stepper must not know better. */
static void stay(void *context, double time, struct cg_network *n)
{
    (void)context;
    (void)time;
    (void)n;
}

START_TEST(held_and_driven_paths_agree)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 50);
    double t[3][50];
    struct cg_heat_ledger ledger[3];
    const struct cg_drive drive[] = {
        {NULL, NULL, true}, {stay, NULL, true}, {stay, NULL, false}};
    struct cg_step_control control = {.tolerance = 0.003};
    for (size_t k = 0; k < 3; k++) {
        for (size_t i = 0; i < 50; i++)
            t[k][i] = 350;
        memset(&ledger[k], 0, sizeof ledger[k]);
        run(&drive[k], 0, 25, &control, t[k], &ledger[k]);
    }
    for (size_t k = 1; k < 3; k++) {
        ck_assert_int_lt(ledger[0].factorings, ledger[k].factorings);
        for (size_t i = 0; i < 50; i++)
            check_within(t[k][i], t[0][i], 0.003, "same problem");
    }
    gsl_rng_free(rng);
}
END_TEST

START_TEST(fixed_steps_agree_on_all_paths)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 50);
    double t[3][50];
    const struct cg_drive drive[] = {
        {NULL, NULL, true}, {stay, NULL, true}, {stay, NULL, false}};
    for (size_t k = 0; k < 3; k++) {
        for (size_t i = 0; i < 50; i++)
            t[k][i] = 350 + (double)i;
        run_fixed(&drive[k], 25, 0.21, t[k]);
    }
    for (size_t i = 0; i < 50; i++) {
        check_close(t[1][i], t[0][i], 1e-12, "same steps");
        check_close(t[2][i], t[0][i], 1e-12, "same steps");
    }
    gsl_rng_free(rng);
}
END_TEST

START_TEST(factors_are_kept)
{
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, 20);
    struct cg_step_control control = {.fixed_step = 0.125};
    struct cg_heat_ledger ledger = {0};
    double t[20];
    for (size_t i = 0; i < 20; i++)
        t[i] = 350;
    run(NULL, 0, 5, &control, t, &ledger);
    ck_assert_int_eq(ledger.factorings, 1);
    run(NULL, 5, 10, &control, t, &ledger);
    ck_assert_msg(ledger.factorings == 1, "same matrix in the next stretch");
    network->bath_temperature[3] += 40;
    network->source_power[1] = 3;
    run(NULL, 10, 15, &control, t, &ledger);
    ck_assert_msg(ledger.factorings == 1, "baths are no part of the matrix");
    network->link_conductance[3] *= 1.5;
    run(NULL, 15, 20, &control, t, &ledger);
    ck_assert_int_eq(ledger.factorings, 2);
    network->bath_conductance[3] *= 1.5;
    run(NULL, 20, 25, &control, t, &ledger);
    ck_assert_int_eq(ledger.factorings, 3);
    ck_assert_int_eq(ledger.steps, 200);
    gsl_rng_free(rng);
}
END_TEST

/* What one step of the lump's cooling errs by, over its excess. */
static double one_step_errs(double decay)
{
    double bath = network->bath_temperature[0], start = bath + 100, t = start;
    double seconds =
        decay * network->capacity[0] / network->bath_conductance[0];
    struct cg_step_control control = {.fixed_step = seconds};
    run(NULL, 0, seconds, &control, &t, NULL);
    return fabs((t - bath) / (start - bath) - exp(-decay));
}

/* All coefficients together: a wrong one costs the step at least an order. */
START_TEST(one_step_errs_by_the_fifth_power)
{
    make_lump();
    double coarse = one_step_errs(0.4), fine = one_step_errs(0.1);
    ck_assert_double_lt(coarse, 1e-4);
    double order = log(coarse / fine) / log(4.0);
    ck_assert_msg(order > 4.7 && order < 5.4, "%g, from %g to %g", order,
                  coarse, fine);
}
END_TEST

START_TEST(bad_values_are_refused)
{
    make_lump();
    double t = 300;
    network->bath_temperature[0] = NAN;
    struct cg_step_control control = {.tolerance = 0.01};
    ck_assert_int_eq(cg_stepper_run(stepper, network, NULL, 0, 1, &control, &t,
                                    NULL, NULL, NULL, &error),
                     CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "lump") != NULL, "%s", error.text);
    ck_assert_double_eq(t, 300);
    struct cg_step_control fixed = {.fixed_step = 0.1};
    ck_assert_int_eq(cg_stepper_run(stepper, network, NULL, 0, 1, &fixed, &t,
                                    NULL, NULL, NULL, &error),
                     CG_NUMERICAL);
    network->bath_temperature[0] = 400;
    network->bath_conductance[0] = -1e9;
    ck_assert_int_eq(cg_stepper_run(stepper, network, NULL, 0, 1, &control, &t,
                                    NULL, NULL, NULL, &error),
                     CG_NUMERICAL);
    network->bath_conductance[0] = 1;
    control.max_steps = 3;
    control.max_step = 1e-3;
    ck_assert_int_eq(cg_stepper_run(stepper, network, NULL, 0, 1, &control, &t,
                                    NULL, NULL, NULL, &error),
                     CG_NUMERICAL);
    ck_assert_msg(strstr(error.text, "3 steps") != NULL, "%s", error.text);
}
END_TEST

START_TEST(error_follows_the_tolerance)
{
    make_lump();
    struct cg_drive drive = {ramp_conductance, NULL, false};
    double exact = 300 * exp(-(0.8 * 4 + 0.35 * 8) / 2.5), last = 1e9;
    for (double tolerance = 0.3; tolerance > 1e-4; tolerance /= 10) {
        double t = 300;
        struct cg_step_control control = {.tolerance = tolerance};
        run(&drive, 0, 4, &control, &t, NULL);
        double miss = fabs(t - exact);
        check_within(miss, 0, 10 * tolerance, "a few steps' worth");
        ck_assert_double_lt(miss, last);
        last = miss;
    }
}
END_TEST

/* The same network for GSL's stiff stepper. */
struct peer {
    const struct cg_drive *drive;
};

static int peer_rate(double time, const double t[], double rate[], void *params)
{
    const struct peer *peer = params;
    peer->drive->at(peer->drive->context, time, network);
    cg_network_net_heat(network, t, rate);
    for (size_t i = 0; i < network->nodes; i++)
        rate[i] /= network->capacity[i];
    return GSL_SUCCESS;
}

static void add_to(double *jacobian, size_t row, size_t column, double value)
{
    jacobian[row * network->nodes + column] += value / network->capacity[row];
}

static int peer_jacobian(double time, const double t[], double *jacobian,
                         double by_time[], void *params)
{
    const struct peer *peer = params;
    size_t n = network->nodes;
    double later[MOST], now[MOST];
    peer_rate(time + 1e-5, t, later, params);
    peer_rate(time, t, now, params);
    for (size_t i = 0; i < n; i++)
        by_time[i] = (later[i] - now[i]) / 1e-5;
    peer->drive->at(peer->drive->context, time, network);
    memset(jacobian, 0, n * n * sizeof *jacobian);
    for (size_t l = 0; l < network->links; l++) {
        size_t a = network->link_a[l], b = network->link_b[l];
        double g = network->link_conductance[l];
        add_to(jacobian, a, a, -g);
        add_to(jacobian, b, b, -g);
        add_to(jacobian, a, b, g);
        add_to(jacobian, b, a, g);
    }
    for (size_t k = 0; k < network->baths; k++)
        add_to(jacobian, network->bath_node[k], network->bath_node[k],
               -network->bath_conductance[k]);
    return GSL_SUCCESS;
}

START_TEST(agrees_with_a_peer_on_a_moving_network)
{
    enum { N = 25 };
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    make_random(rng, N);
    double pace = 0.8, ours[N], theirs[N], time = 0;
    struct cg_drive moving = {move_all, &pace, false};
    struct peer peer = {&moving};
    for (size_t i = 0; i < N; i++)
        ours[i] = theirs[i] = 320 + 4 * (double)i;
    gsl_odeiv2_system system = {peer_rate, peer_jacobian, N, &peer};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(
        &system, gsl_odeiv2_step_bsimp, 1e-4, 1e-9, 0);
    ck_assert_int_eq(gsl_odeiv2_driver_apply(driver, &time, 6, theirs),
                     GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
    struct cg_step_control control = {.tolerance = 1e-4};
    run(&moving, 0, 6, &control, ours, NULL);
    for (size_t i = 0; i < N; i++)
        check_within(ours[i], theirs[i], 2e-3,
                     "M. Galassi et al., GNU Scientific Library, implicit "
                     "Bulirsch-Stoer stepper");
    gsl_rng_free(rng);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("stepper");
    TCase *tcase = tcase_create("stepper");
    tcase_set_timeout(tcase, 60);
    tcase_add_checked_fixture(tcase, setup, teardown);
    tcase_add_test(tcase, stiff_mode_is_damped_at_once);
    tcase_add_test(tcase, series_lets_stiff_modes_die);
    tcase_add_test(tcase, energy_closes_to_rounding);
    tcase_add_test(tcase, settled_state_is_where_a_long_run_ends);
    tcase_add_test(tcase, corrections_end_in_the_settled_state);
    tcase_add_test(tcase, a_settled_interval_takes_no_step);
    tcase_add_test(tcase, a_settled_interval_is_observed);
    tcase_add_test(tcase, unconnected_node_has_no_settled_state);
    tcase_add_test(tcase, intervals_end_exactly_and_without_slivers);
    tcase_add_test(tcase, observer_sees_all_times_of_a_driven_interval);
    tcase_add_test(tcase, observer_sees_all_times_of_a_constant_interval);
    tcase_add_test(tcase, observer_may_stop_the_run);
    tcase_add_test(tcase, series_agrees_with_steps);
    tcase_add_test(tcase, series_of_a_network_without_baths_keeps_its_heat);
    tcase_add_test(tcase, held_and_driven_paths_agree);
    tcase_add_test(tcase, fixed_steps_agree_on_all_paths);
    tcase_add_test(tcase, factors_are_kept);
    tcase_add_test(tcase, one_step_errs_by_the_fifth_power);
    tcase_add_test(tcase, bad_values_are_refused);
    tcase_add_test(tcase, error_follows_the_tolerance);
    tcase_add_test(tcase, agrees_with_a_peer_on_a_moving_network);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
