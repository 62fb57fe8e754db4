/* Ideal cycles with constant specific heats, worked out independently, run on
 * the zone that cycle.c uses; and what measured engines say of its results. */
#include "check_close.h"

#include <string.h>

#include "constants.h"
#include "cycle_case.h"
#include "zone.h"

#define HEAT_RELEASE                                                        \
    "C. R. Ferguson and A. T. Kirkpatrick, Internal Combustion Engines "      \
    "(2001), finite heat release, integrated independently"
#define HEAT_LOSS                                                           \
    "C. R. Ferguson and A. T. Kirkpatrick, Internal Combustion Engines "      \
    "(2001), heat release with heat loss, integrated independently"

/* Heat added over p1 V1. */
static const double heat_added = 20.0;

struct ideal {
    double peak, peak_deg;          /* pressure over p1 [1] */
    double efficiency, loss;        /* of the heat added [1] */
    double mean_flux, mean_h;       /* over the closed part [W/m2, W/(m2 K)] */
    double peak_flux, peak_h;
};

/* A gas of constant cp as two mixtures whose enthalpies differ by the heat
 * that burning adds. */
static void set_gas(struct cg_zone *zone, double gamma, double t1)
{
    const double r = 287.0;
    struct cg_mixture *gas = &zone->burned;
    memset(gas, 0, sizeof *gas);
    gas->gas_constant = r;
    gas->poly.low[0] = gas->poly.high[0] = gamma / (gamma - 1.0) * r;
    zone->fresh = zone->burned;
    zone->fresh.poly.low[5] = zone->fresh.poly.high[5] = heat_added * r * t1;
}

/* From bottom to bottom centre in quarter degrees, all of it with the closed
 * branch of the correlation, as the textbook's program has it. */
static struct ideal run(struct cg_zone *zone, double p1, double t1)
{
    struct cg_zone_node node[3];
    struct cg_zone_gas gas, side[3];
    cg_zone_node(zone, CG_PHASE_BURN, -180.0, &node[2]);
    double pv = p1 * node[2].volume, wall = zone->piston_temperature;
    double y[CG_ZONE_VARIABLES] = {
        [CG_ZONE_TEMPERATURE] = t1,
        [CG_ZONE_MASS] = pv / (zone->burned.gas_constant * t1)};
    cg_zone_close(zone, -180.0, y);
    cg_zone_node(zone, CG_PHASE_BURN, -180.0, &node[2]);

    struct ideal ideal = {0};
    for (int i = 0; i < 1440; i++) {
        double t = y[CG_ZONE_TEMPERATURE];
        node[0] = node[2];
        cg_zone_node(zone, CG_PHASE_BURN, -180.0 + 0.25 * i + 0.125, &node[1]);
        cg_zone_node(zone, CG_PHASE_BURN, -180.0 + 0.25 * i + 0.25, &node[2]);
        cg_zone_step(zone, CG_PHASE_BURN, node, y, side);
        gas = side[0];
        if (gas.pressure / p1 > ideal.peak) {
            ideal.peak = gas.pressure / p1;
            ideal.peak_deg = node[0].angle_deg;
        }
        ideal.mean_flux += gas.coefficient * (t - wall) / 1440.0;
        ideal.mean_h += gas.coefficient / 1440.0;
        ideal.peak_flux = fmax(ideal.peak_flux, gas.coefficient * (t - wall));
        ideal.peak_h = fmax(ideal.peak_h, gas.coefficient);
    }
    ideal.efficiency = y[CG_ZONE_WORK] / (heat_added * pv);
    ideal.loss = (y[CG_ZONE_HEAD] + y[CG_ZONE_PISTON] + y[CG_ZONE_LINER]) /
                 (heat_added * pv);
    return ideal;
}

static struct ideal adiabatic(double start_deg)
{
    /* A rod without end makes the volume a plain cosine. */
    const struct cg_crank crank = {0.1, 0.1, 1e6, 10.0};
    struct cg_zone zone = {.correlation = cg_heat_transfer_find("woschni"),
                           .wiebe = {start_deg, 40.0, 5.0, 3.0},
                           .motored_exponent = 1.4};
    cg_zone_shape(&zone, &crank, 30.0, 1.0);
    set_gas(&zone, 1.4, 300.0);
    return run(&zone, 100e3, 300.0);
}

START_TEST(heat_release_without_loss)
{
    struct ideal early = adiabatic(-20.0), late = adiabatic(0.0);
    check_close(early.peak, 87.78, 2e-4, HEAT_RELEASE);
    check_within(early.peak_deg, 10.75, 0.25, HEAT_RELEASE);
    check_close(early.efficiency, 0.5957, 2e-4, HEAT_RELEASE);
    check_close(late.peak, 53.53, 2e-4, HEAT_RELEASE);
    check_within(late.peak_deg, 27.75, 0.25, HEAT_RELEASE);
    check_close(late.efficiency, 0.5549, 2e-4, HEAT_RELEASE);
    ck_assert(early.loss == 0.0);
    /* The Otto cycle is the bound: 1 - r^(1 - gamma). */
    ck_assert(early.efficiency < 1.0 - pow(10.0, -0.4));
}
END_TEST

/* Area A0 (1 + beta V/V1), A0 = 4 V1/(bore beta): its growth with V is that of
 * the liner, its rest is given to head and piston. */
static struct ideal with_loss(double p1, double omega, double start_deg)
{
    const double ratio = 9.0, beta = 1.5, gamma = 1.31509, wall = 360.0;
    const struct cg_crank crank = {0.085725, 0.0889, 1e6, ratio};
    struct cg_zone zone = {.correlation =
                               cg_heat_transfer_find("woschni_heywood"),
                           .heat_factor = 1.0,
                           .head_temperature = wall,
                           .piston_temperature = wall,
                           .liner_temperature = wall,
                           .wiebe = {start_deg, 40.0, 5.0, 3.0},
                           .motored_exponent = gamma};
    double v1 = cg_crank_volume(&crank, 180.0);
    double fixed = 4.0 * v1 / (crank.bore * beta) * (1.0 + beta / ratio);
    double bore_area = 0.25 * CG_PI * crank.bore * crank.bore;
    cg_zone_shape(&zone, &crank, omega / (2.0 * CG_PI),
                  fixed / bore_area - 1.0);
    set_gas(&zone, gamma, 300.0);
    return run(&zone, p1, 300.0);
}

START_TEST(heat_loss_over_a_boost_sweep)
{
    static const struct {
        double p1, peak, peak_deg, efficiency, loss, peak_h, peak_flux,
            mean_flux, mean_h;
    } rows[] = {
        {100e3, 55.18, 14.50, 0.4099, 0.2164, 1723, 2.985e6, 0.3298e6, 330.2},
        {200e3, 55.49, 14.75, 0.4190, 0.1931, 3017, 5.270e6, 0.5872e6, 578.7},
        {300e3, 55.65, 14.75, 0.4239, 0.1804, 4185, 7.344e6, 0.8221e6, 803.3},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct ideal got = with_loss(rows[i].p1, 200.0, -15.0);
        check_close(got.peak, rows[i].peak, 2e-3, HEAT_LOSS);
        check_within(got.peak_deg, rows[i].peak_deg, 0.5, HEAT_LOSS);
        check_close(got.efficiency, rows[i].efficiency, 2e-3, HEAT_LOSS);
        check_close(got.loss, rows[i].loss, 3e-3, HEAT_LOSS);
        check_close(got.peak_h, rows[i].peak_h, 3e-3, HEAT_LOSS);
        check_close(got.peak_flux, rows[i].peak_flux, 3e-3, HEAT_LOSS);
        check_close(got.mean_flux, rows[i].mean_flux, 3e-3, HEAT_LOSS);
        check_close(got.mean_h, rows[i].mean_h, 3e-3, HEAT_LOSS);
    }
}
END_TEST

START_TEST(exponents_of_boost_speed_and_spark)
{
    struct ideal base = with_loss(100e3, 200.0, -15.0);
    struct ideal boost = with_loss(300e3, 200.0, -15.0);
    struct ideal speed = with_loss(100e3, 400.0, -15.0);
    struct ideal retard = with_loss(100e3, 200.0, -5.0);
    struct ideal advance = with_loss(100e3, 200.0, -25.0);
    check_within(log(boost.mean_flux / base.mean_flux) / log(3.0), 0.831, 0.005,
                 HEAT_LOSS);
    check_within(log(boost.peak_flux / base.peak_flux) / log(3.0), 0.820, 0.005,
                 HEAT_LOSS);
    check_within(log(boost.peak_h / base.peak_h) / log(3.0), 0.808, 0.005,
                 HEAT_LOSS);
    check_within(log(speed.mean_flux / base.mean_flux) / log(2.0), 0.49, 0.02,
                 HEAT_LOSS);
    ck_assert(boost.loss < base.loss && speed.loss < base.loss);
    check_within(retard.mean_flux / base.mean_flux - 1.0, -0.22, 0.01,
                 HEAT_LOSS);
    check_within(advance.mean_flux / base.mean_flux - 1.0, 0.28, 0.01,
                 HEAT_LOSS);
}
END_TEST

static struct cg_cycle cycle;

START_TEST(energy_balance_of_a_car_engine)
{
    struct cg_cycle_input input = rated();
    struct cg_error error;
    ck_assert_msg(cg_cycle_run(&input, &cycle, &error) == CG_OK, "%s",
                  error.text);
    double heat = cycle.heat_head + cycle.heat_piston + cycle.heat_liner;
    double exhaust = cycle.fuel_energy - cycle.gross_work -
                     cycle.pumping_work - heat - cycle.unburned_energy;
    check_band(exhaust / cycle.fuel_energy, 0.34, 0.45,
               "J. B. Heywood (1988), table 12.1, from memory");
    check_band(cycle.imep_gross, 10e5, 15e5, "common practice, no source");
}
END_TEST

START_TEST(flux_peaks_in_the_expansion_stroke)
{
    struct cg_cycle_input input = rated();
    struct cg_error error;
    ck_assert_msg(cg_cycle_run(&input, &cycle, &error) == CG_OK, "%s",
                  error.text);
    double peak = 0.0, peak_deg = 0.0;
    for (size_t i = 0; i < cycle.points; i++) {
        const struct cg_cycle_point *point = &cycle.point[i];
        double flux = point->coefficient * (point->temperature - 530.0);
        if (flux > peak) {
            peak = flux;
            peak_deg = point->crank_deg;
        }
    }
    check_most(peak / 1e6, 10.0,
               "J. B. Heywood (1988), sec. 12.1: up to 10 MW/m2, from memory");
    ck_assert_msg(peak_deg > 0.0 && peak_deg < 60.0, "%g", peak_deg);
}
END_TEST

START_TEST(residual_share_of_the_charge)
{
    struct cg_cycle_input input = rated();
    struct cg_error error;
    ck_assert(cg_cycle_run(&input, &cycle, &error) == CG_OK);
    /* No overlap: the clearance full of port gas at 900 to 1400 K. */
    double cold = 1.0 / 9.5 * 113.0 / 98.0 * 310.0;
    double open = cycle.residual_mass / cycle.trapped_mass;
    ck_assert(open >= cold / 1400.0 && open <= cold / 900.0);
    input.manifold_pressure = 40e3;
    input.volumetric_efficiency = 0.80;
    ck_assert(cg_cycle_run(&input, &cycle, &error) == CG_OK);
    double throttled = cycle.residual_mass / cycle.trapped_mass;
    check_most(throttled, 0.20,
               "J. B. Heywood (1988), sec. 6.4: up to 20 % throttled, from "
               "memory");
    ck_assert_double_gt(throttled, 1.5 * open);
}
END_TEST

/* The burn's marks lie where the exponent m + 1 = 3 puts them, whatever the
 * constant: angles go as the cube root of -ln(1 - burned). */
START_TEST(burn_has_the_usual_form)
{
    const char *const source =
        "J. B. Heywood (1988), sec. 9.2.3: Wiebe's law with m = 2, from "
        "memory; marks by hand";
    struct cg_wiebe wiebe = cg_wiebe_from_burn(10.0, 30.0);
    double at50 = 10.0, at10 = at50 - 0.486551 * 30.0;
    check_within(cg_wiebe_burned(&wiebe, at10), 0.1, 1e-6, source);
    check_within(cg_wiebe_burned(&wiebe, at50), 0.5, 1e-6, source);
    check_within(cg_wiebe_burned(&wiebe, at10 + 30.0), 0.9, 1e-6, source);
    check_within((at10 - wiebe.start_deg) / 30.0, 0.556843, 2e-6, source);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("engine cycle, published values");
    TCase *tcase = tcase_create("cycle");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, heat_release_without_loss);
    tcase_add_test(tcase, heat_loss_over_a_boost_sweep);
    tcase_add_test(tcase, exponents_of_boost_speed_and_spark);
    tcase_add_test(tcase, energy_balance_of_a_car_engine);
    tcase_add_test(tcase, flux_peaks_in_the_expansion_stroke);
    tcase_add_test(tcase, residual_share_of_the_charge);
    tcase_add_test(tcase, burn_has_the_usual_form);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
