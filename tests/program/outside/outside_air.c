/* Engines that air cools.  No constant of air cooling is calibrated, so all of
 * these are kept back: they check alone. */
#include <gsl/gsl_errno.h>

#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "heat_balance.h"

#define MANUAL                                                                 \
    "IOF-550-B maintenance manual: 0.81 mm in the choke; bore from memory"

/* 133.4 x 108 mm, six cylinders, ratio 8.5, 2700 rpm, a barrel of steel: from
 * memory.  Choke unknown, so a
 * straight bore and one of 0.1 mm. */
static struct cg_case flat_six(const char *choke, const char *air)
{
    const char *const set[] = {"engine.bore_mm=133.4",
                               "engine.stroke_mm=108",
                               "engine.cylinders=6",
                               "engine.compression_ratio=8.5",
                               "engine.speed_rpm=2700",
                               "charge.charger=none",
                               "fuel.octane=100",
                               "fuel.lambda=0.8",
                               "bore.material=barrel_steel",
                               "bore.seat=parent",
                               "cooling.medium=air",
                               "bore.gap_measured_at=choke",
                               "cooling.oil_grade=50",
                               "duty.name=settled",
                               choke,
                               air};
    return case_of(CG_TEST_CONFIGS "/../tests/program/defaults.cfg", set,
                   COUNT_OF(set));
}

/* What the rings close, settled at full power: no more than what the maker's
 * smallest gaps leave. */
START_TEST(no_contact_at_the_rating)
{
    static const char *const choke[] = {"bore.choke_mm=0", "bore.choke_mm=0.1"};
    static const char *const air[] = {"cooling.air_speed_m_s=15",
                                      "cooling.air_speed_m_s=30",
                                      "cooling.air_speed_m_s=60"};
    struct cg_case c = flat_six(choke[_i / 3], air[_i % 3]);
    struct cg_extremes e = extremes_of(&c);
    check_most(e.closure * 1e3, 0.81, MANUAL);
    check_most(e.second_closure * 1e3, 0.81 + 0.15,
               MANUAL "; second ring 0.15 mm more");
}
END_TEST

#define PINKEL                                                                 \
    "B. Pinkel, NACA Report 612 (1938), from memory; fuel to air near 0.08"

/* Heat to the cooling air and the mean of the barrel's outside, settled. */
static void barrel(const char *air, double *heat, double *wall)
{
    struct cg_case c = flat_six("bore.choke_mm=0", air);
    struct cg_duty_run *run = run_of(&c);
    const struct cg_operating_point *at = &run->point[run->full_load];
    struct cg_heat_balance balance = cg_heat_balance_at(&c, run->thermal, at);
    const struct cg_bore_map *bore = &run->thermal->bore;
    double weight = 0.0, sum = 0.0;
    for (size_t s = 0; s < bore->grid.stations; s++) {
        weight += bore->outside[s];
        sum += bore->outside[s] * at->settled[cg_thermal_liner_node(
                                      run->thermal, s, bore->per_station - 1)];
    }
    *wall = sum / weight;
    *heat = at->operating.cooling_flow * weight *
            (*wall - at->operating.coolant_temperature);
    printf("barrel %.0f K, %.2f kW; head's gas %.0f K; heat to air %.1f kW\n",
           *wall, *heat / 1e3, at->crown.temperature, balance.coolant / 1e3);
    cg_duty_run_free(run);
}

START_TEST(gas_as_the_barrel_feels_it)
{
    double heat[2], wall[2];
    barrel("cooling.air_speed_m_s=20", &heat[0], &wall[0]);
    barrel("cooling.air_speed_m_s=45", &heat[1], &wall[1]);
    double feels =
        wall[0] + heat[0] * (wall[0] - wall[1]) / (heat[1] - heat[0]);
    printf("effective gas temperature of the barrel %.0f C\n", feels - 273.15);
    check_close(feels - CG_ZERO_CELSIUS, 316.0, 0.3, PINKEL);
}
END_TEST

int main(void)
{
    gsl_set_error_handler_off();
    Suite *suite = suite_create("outside air");
    TCase *all = tcase_create("air");
    tcase_set_timeout(all, 240);
    tcase_add_loop_test(all, no_contact_at_the_rating, 0, 6);
    tcase_add_test(all, gas_as_the_barrel_feels_it);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
