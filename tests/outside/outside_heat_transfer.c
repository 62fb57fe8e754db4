#include "check_close.h"

#include <stddef.h>
#include <string.h>

#include "constants.h"
#include "heat_transfer.h"

#define WOSCHNI                                                            \
    "G. Woschni, SAE 670931 (1967), by hand at this point with T^-0.53"
#define HEYWOOD "J. B. Heywood (1988), eq. 12.19, by hand at this point"
#define HOHENBERG "G. F. Hohenberg, SAE 790825 (1979), by hand at this point"
#define ANNAND "W. J. D. Annand, Proc. IMechE 177 (1963), by hand at this point"

static double coefficient(const char *name, const struct cg_gas_side *state)
{
    return cg_heat_transfer_find(name)->coefficient(state);
}

/* Early expansion in an 86 by 86 mm engine of ratio 9.5 at 6000 rev/min. */
static struct cg_gas_side combustion(void)
{
    return (struct cg_gas_side){
        .pressure = 6000e3, .temperature = 2300.0, .wall_temperature = 480.0,
        .volume = 7.0526e-5, .bore = 0.086, .piston_speed = 17.2,
        .swept_volume = 4.9956e-4, .reference_temperature = 350.0,
        .reference_pressure = 200e3, .reference_volume = 4.9956e-4 * 9.5 / 8.5,
        .motored_pressure = 2500e3, .gas_constant = 287.0, .burning = true};
}

START_TEST(woschni_in_combustion)
{
    struct cg_gas_side state = combustion();
    check_close(cg_woschni_velocity(&state) - 2.28 * 17.2, 17.756, 1e-4,
                WOSCHNI);
    check_close(cg_woschni_velocity(&state), 56.972, 1e-4, WOSCHNI);
    check_close(coefficient("woschni", &state), 2353.0, 1e-3, WOSCHNI);
    check_close(coefficient("woschni_heywood", &state), 2015.7, 1e-3, HEYWOOD);
    check_close(coefficient("woschni_heywood", &state) * (2300.0 - 480.0),
                3.669e6, 1e-3, HEYWOOD);
}
END_TEST

START_TEST(woschni_in_compression)
{
    struct cg_gas_side state = combustion();
    state.burning = false;
    state.piston_speed = 10.0;
    state.pressure = 1500e3;
    state.temperature = 650.0;
    state.bore = 0.1;
    check_close(coefficient("woschni_heywood", &state), 621.35, 1e-4, HEYWOOD);
    check_close(coefficient("woschni", &state), 707.28, 1e-4, WOSCHNI);
    double once = coefficient("woschni", &state);
    state.pressure *= 2.0;
    check_close(coefficient("woschni", &state) / once, 1.7411, 1e-4, WOSCHNI);
}
END_TEST

START_TEST(woschni_with_open_valves)
{
    struct cg_gas_side state = combustion();
    state.burning = false;
    state.gas_exchange = true;
    state.piston_speed = 10.0;
    state.pressure = 100e3;
    state.temperature = 350.0;
    state.bore = 0.1;
    check_close(coefficient("woschni_heywood", &state), 222.21, 1e-4, HEYWOOD);
    check_close(coefficient("woschni", &state), 249.83, 1e-4, WOSCHNI);
}
END_TEST

START_TEST(woschni_in_the_units_it_was_printed_in)
{
    /* 110 kcal/(m2 h K) with p in kp/cm2 and T^-0.53. */
    struct cg_gas_side state = combustion();
    double kp = 6000e3 / 98066.5, w = cg_woschni_velocity(&state);
    double printed = 110.0 * 4186.8 / 3600.0 * pow(0.086, -0.2) *
                     pow(kp, 0.8) * pow(2300.0, -0.53) * pow(w, 0.8);
    check_close(coefficient("woschni", &state), printed, 2e-3, "G. Woschni, SAE 670931 (1967), from memory");
}
END_TEST

START_TEST(woschni_does_not_slow_the_gas)
{
    struct cg_gas_side state = combustion();
    state.motored_pressure = 6100e3;
    ck_assert_double_eq_tol(cg_woschni_velocity(&state), 2.28 * 17.2, 4e-13);
}
END_TEST

START_TEST(hohenberg_in_combustion)
{
    struct cg_gas_side state = combustion();
    check_close(coefficient("hohenberg", &state), 2860.8, 1e-4, HOHENBERG);
    check_close(coefficient("hohenberg", &state) * (2300.0 - 480.0), 5.207e6,
                1e-3, HOHENBERG);
}
END_TEST

static struct cg_gas_side annand_point(bool burning)
{
    struct cg_gas_side state = combustion();
    state.pressure = 40e5;
    state.temperature = 2000.0;
    state.wall_temperature = 450.0;
    state.piston_speed = 10.0;
    state.bore = 0.1;
    state.burning = burning;
    return state;
}

START_TEST(annand_convection_and_radiation)
{
    struct cg_gas_side closed = annand_point(false), fired = annand_point(true);
    double convection = coefficient("annand", &closed);
    double radiation = coefficient("annand", &fired) - convection;
    check_close(convection, 1864.0, 1e-3, ANNAND);
    check_close(radiation, 43.8, 2e-3, ANNAND);
    double t = 2000.0, wall = 450.0;
    check_close(radiation * (t - wall),
                0.075 * CG_STEFAN_BOLTZMANN * (pow(t, 4) - pow(wall, 4)), 1e-9,
                "Stefan-Boltzmann law");
}
END_TEST

START_TEST(correlations_spread_within_a_factor_of_two)
{
    struct cg_gas_side state = combustion();
    size_t count;
    const struct cg_heat_transfer *all = cg_heat_transfers(&count);
    double low = INFINITY, high = 0.0;
    for (size_t i = 0; i < count; i++) {
        double h = all[i].coefficient(&state);
        low = fmin(low, h);
        high = fmax(high, h);
        ck_assert_ptr_eq(cg_heat_transfer_find(all[i].name), &all[i]);
        ck_assert(strlen(all[i].doc) > 0 && strlen(all[i].source) > 0);
    }
    ck_assert_uint_eq(count, 4);
    ck_assert_double_lt(high, 2.0 * low);
    ck_assert_ptr_null(cg_heat_transfer_find("nusselt"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("heat transfer, published forms");
    TCase *tcase = tcase_create("heat transfer");
    tcase_add_test(tcase, woschni_in_combustion);
    tcase_add_test(tcase, woschni_in_compression);
    tcase_add_test(tcase, woschni_with_open_valves);
    tcase_add_test(tcase, woschni_in_the_units_it_was_printed_in);
    tcase_add_test(tcase, woschni_does_not_slow_the_gas);
    tcase_add_test(tcase, hohenberg_in_combustion);
    tcase_add_test(tcase, annand_convection_and_radiation);
    tcase_add_test(tcase, correlations_spread_within_a_factor_of_two);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
