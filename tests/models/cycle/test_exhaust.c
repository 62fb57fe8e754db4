#include "check_close.h"

#include "constants.h"
#include "exhaust.h"

static struct cg_exhaust_input rated(void)
{
    return (struct cg_exhaust_input){0.0863, 0.0612, 1287.0, 1.5, 361.0};
}

/* Nu = 1.5 0.023 Re^0.8 Pr^0.4 in a tube of 0.42 by 1.1 bores, keyed in. */
START_TEST(port_by_hand)
{
    struct cg_exhaust_input input = rated();
    struct cg_exhaust got = cg_exhaust_at(&input);
    double width = 0.42 * 0.0863, length = 1.1 * 0.0863;
    double mu = 4.702e-7 * pow(1287.0, 0.645), k = 1300.0 * mu / 0.7;
    double open = 0.0612 * 720.0 / 230.0;
    double reynolds = 4.0 * open / (CG_PI * width * mu);
    double h = 1.5 * 0.023 * pow(reynolds, 0.8) * pow(0.7, 0.4) * k / width;
    double units = h * CG_PI * width * length / (open * 1300.0);
    double drop = (1287.0 - 441.0) * (1.0 - exp(-units));
    check_close(got.port_drop, drop, 1e-12, "by hand from the header");
    check_close(got.port_heat, 0.0612 * 1300.0 * drop, 1e-12, "first law");
}
END_TEST

START_TEST(a_port_without_heat_takes_nothing)
{
    struct cg_exhaust_input input = rated();
    input.port_factor = 0.0;
    struct cg_exhaust got = cg_exhaust_at(&input);
    ck_assert(got.port_drop == 0.0 && got.port_heat == 0.0);
    check_close(got.reading, 1287.0 - got.radiation, 1e-14, "by definition");
}
END_TEST

/* What convection brings is what radiation takes. */
START_TEST(the_probe_is_at_rest)
{
    struct cg_exhaust_input input = rated();
    struct cg_exhaust got = cg_exhaust_at(&input);
    double gas = input.temperature - got.port_drop, t = got.reading;
    double width = 0.42 * 0.0863, mu = 4.702e-7 * pow(gas, 0.645);
    double flux = 0.0612 / (0.25 * CG_PI * width * width);
    double h = 0.44 * sqrt(flux * 3e-3 / mu) * 1300.0 * mu / 0.7 / 3e-3;
    check_close(h * got.radiation,
                0.8 * CG_STEFAN_BOLTZMANN *
                    (pow(t, 4.0) - pow(gas - 200.0, 4.0)),
                1e-9, "balance of the probe");
    ck_assert(got.radiation > 0.0 && got.radiation < 200.0);
    input.flow *= 1e8;
    ck_assert(cg_exhaust_at(&input).radiation < 0.1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("exhaust");
    TCase *all = tcase_create("exhaust");
    tcase_add_test(all, port_by_hand);
    tcase_add_test(all, a_port_without_heat_takes_nothing);
    tcase_add_test(all, the_probe_is_at_rest);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
