#include "check_close.h"

#include <stddef.h>

#include "constants.h"
#include "gas.h"

/* One species alone as a mixture. */
static struct cg_mixture pure(enum cg_species species)
{
    struct cg_mixture mixture;
    double moles[CG_SPECIES] = {0.0};
    moles[species] = 2.385;
    cg_mixture_set(&mixture, moles, 0.0, NULL);
    return mixture;
}

START_TEST(ranges_meet_at_1000_K)
{
    for (int s = 0; s < CG_FUEL; s++) {
        struct cg_mixture gas = pure((enum cg_species)s);
        double below = 1000.0 * (1.0 - 1e-15), above = 1000.0;
        check_close(cg_mixture_cp(&gas, above), cg_mixture_cp(&gas, below),
                    1e-8, "one curve");
        check_within(cg_mixture_enthalpy(&gas, above) -
                         cg_mixture_enthalpy(&gas, below),
                     0.0, 1.0, "one curve, to 1 J/kg");
    }
}
END_TEST

START_TEST(cp_is_the_slope_of_enthalpy)
{
    for (int s = 0; s < CG_FUEL; s++) {
        struct cg_mixture gas = pure((enum cg_species)s);
        for (double t = 171.3; t < 6000.0; t += 331.7) {
            double slope = (cg_mixture_enthalpy(&gas, t + 0.05) -
                            cg_mixture_enthalpy(&gas, t - 0.05)) / 0.1;
            check_close(cg_mixture_cp(&gas, t), slope, 1e-6,
                        "central difference");
        }
    }
}
END_TEST

START_TEST(cv_is_positive_wherever_a_cycle_may_go)
{
    for (int s = 0; s < CG_FUEL; s++) {
        struct cg_mixture gas = pure((enum cg_species)s);
        for (double t = 150.0; t <= 6000.0; t += 10.0)
            ck_assert(cg_mixture_cp(&gas, t) > 2.0 * gas.gas_constant);
    }
}
END_TEST

START_TEST(elements_have_no_heat_of_formation)
{
    const enum cg_species elements[] = {CG_N2, CG_O2, CG_AR, CG_H2};
    for (int i = 0; i < 4; i++) {
        struct cg_mixture gas = pure(elements[i]);
        check_within(cg_mixture_enthalpy(&gas, 298.15) / gas.gas_constant, 0.0,
                     1e-5, "convention, h/R [K] as printed");
    }
}
END_TEST

START_TEST(mixture_is_the_mass_mean)
{
    struct cg_mixture both, n2 = pure(CG_N2), h2o = pure(CG_H2O);
    double moles[CG_SPECIES] = {[CG_N2] = 3.1, [CG_H2O] = 1.7};
    cg_mixture_set(&both, moles, 0.0, NULL);
    double m1 = 3.1 * cg_species_molar_mass(CG_N2);
    double m2 = 1.7 * cg_species_molar_mass(CG_H2O);
    check_close(both.gas_constant, CG_GAS_CONSTANT * 4.8 / (m1 + m2), 1e-14,
                "R/M");
    for (double t = 240.0; t < 4000.0; t += 790.0) {
        double want = (m1 * cg_mixture_energy(&n2, t) +
                       m2 * cg_mixture_energy(&h2o, t)) / (m1 + m2);
        check_close(cg_mixture_energy(&both, t), want, 1e-12, "mass mean");
    }
}
END_TEST

START_TEST(energy_is_enthalpy_less_rt)
{
    struct cg_mixture gas = pure(CG_CO2);
    double difference = cg_mixture_enthalpy(&gas, 731.0) -
                        cg_mixture_energy(&gas, 731.0);
    check_close(difference, gas.gas_constant * 731.0, 1e-12, "definition");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("working gas");
    TCase *tcase = tcase_create("gas");
    tcase_add_test(tcase, ranges_meet_at_1000_K);
    tcase_add_test(tcase, cp_is_the_slope_of_enthalpy);
    tcase_add_test(tcase, cv_is_positive_wherever_a_cycle_may_go);
    tcase_add_test(tcase, elements_have_no_heat_of_formation);
    tcase_add_test(tcase, mixture_is_the_mass_mean);
    tcase_add_test(tcase, energy_is_enthalpy_less_rt);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
