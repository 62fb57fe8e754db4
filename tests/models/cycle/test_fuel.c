#include "check_close.h"

#include <stddef.h>
#include <string.h>

#include "constants.h"
#include "fuel.h"

/* Atoms in the moles of a mixture, by element. */
struct atoms {
    double carbon, hydrogen, oxygen, nitrogen, argon;
};

static struct atoms count_atoms(const struct cg_fuel *fuel, const double *n)
{
    return (struct atoms){
        n[CG_CO2] + n[CG_CO] + fuel->carbon * n[CG_FUEL],
        2.0 * (n[CG_H2O] + n[CG_H2]) + fuel->hydrogen * n[CG_FUEL],
        2.0 * (n[CG_O2] + n[CG_CO2]) + n[CG_H2O] + n[CG_CO] +
            fuel->oxygen * n[CG_FUEL],
        2.0 * n[CG_N2], n[CG_AR]};
}

START_TEST(elements_are_conserved)
{
    const double lambdas[] = {0.5, 0.6, 0.737, 0.87, 0.999, 1.0, 1.001, 1.9};
    const double efficiencies[] = {0.0, 0.31, 0.97, 1.0};
    size_t count;
    const struct cg_fuel *fuels = cg_fuels(&count);
    for (size_t f = 0; f < count; f++)
        for (int l = 0; l < 8; l++)
            for (int e = 0; e < 4; e++) {
                double fresh[CG_SPECIES], burned[CG_SPECIES];
                cg_fuel_fresh(&fuels[f], lambdas[l], fresh);
                cg_fuel_burned(&fuels[f], lambdas[l], efficiencies[e], burned);
                struct atoms in = count_atoms(&fuels[f], fresh);
                struct atoms out = count_atoms(&fuels[f], burned);
                check_close(out.carbon, in.carbon, 1e-14, "C");
                check_close(out.hydrogen, in.hydrogen, 1e-14, "H");
                check_close(out.oxygen, in.oxygen, 1e-14, "O");
                check_close(out.nitrogen, in.nitrogen, 1e-15, "N");
                check_close(out.argon, in.argon, 1e-15, "Ar");
                for (int s = 0; s < CG_SPECIES; s++)
                    ck_assert_msg(burned[s] >= -1e-14, "%s lambda %g: %d < 0",
                                  fuels[f].name, lambdas[l], s);
            }
}
END_TEST

START_TEST(rich_products_obey_the_water_gas_constant)
{
    double n[CG_SPECIES];
    cg_fuel_burned(cg_fuel_find("gasoline"), 0.83, 0.96, n);
    check_close(n[CG_CO] * n[CG_H2O] / (n[CG_CO2] * n[CG_H2]), 3.5, 1e-12,
                "equilibrium constant asked for");
    cg_fuel_burned(cg_fuel_find("gasoline"), 0.83, 1.0, n);
    ck_assert(n[CG_O2] == 0.0);
}
END_TEST

/* The flame's oxygen is that of the fuel it reaches: products of the share
 * that burns are those of whole burning, the rest is fresh. */
START_TEST(what_does_not_burn_keeps_its_air)
{
    const double lambdas[] = {0.5, 0.8, 0.95, 1.3};
    for (int l = 0; l < 4; l++) {
        double fresh[CG_SPECIES], whole[CG_SPECIES], n[CG_SPECIES];
        const struct cg_fuel *fuel = cg_fuel_find("methanol");
        cg_fuel_fresh(fuel, lambdas[l], fresh);
        cg_fuel_burned(fuel, lambdas[l], 1.0, whole);
        cg_fuel_burned(fuel, lambdas[l], 0.8, n);
        for (int s = 0; s < CG_SPECIES; s++)
            check_within(n[s], 0.8 * whole[s] + 0.2 * fresh[s], 1e-14,
                         "definition");
    }
}
END_TEST

START_TEST(products_join_at_stoichiometric)
{
    double rich[CG_SPECIES], lean[CG_SPECIES];
    cg_fuel_burned(cg_fuel_find("e85"), 1.0 - 1e-9, 1.0, rich);
    cg_fuel_burned(cg_fuel_find("e85"), 1.0 + 1e-9, 1.0, lean);
    for (int s = 0; s < CG_SPECIES; s++)
        check_within(rich[s], lean[s], 1e-7, "no jump");
}
END_TEST

/* Enthalpy at 298.15 K per mole of fuel that a mixture carries [J]. */
static double enthalpy(const struct cg_fuel *fuel, const double *moles)
{
    struct cg_mixture mixture;
    struct cg_poly vapour;
    cg_fuel_poly(fuel, &vapour);
    cg_mixture_set(&mixture, moles, cg_fuel_molar_mass(fuel), &vapour);
    double mass = moles[CG_FUEL] * cg_fuel_molar_mass(fuel);
    for (int s = 0; s < CG_FUEL; s++)
        mass += moles[s] * cg_species_molar_mass((enum cg_species)s);
    return mass * cg_mixture_enthalpy(&mixture, 298.15);
}

START_TEST(burning_gives_the_heating_value)
{
    size_t count;
    const struct cg_fuel *fuels = cg_fuels(&count);
    for (size_t f = 0; f < count; f++) {
        double fresh[CG_SPECIES], burned[CG_SPECIES];
        cg_fuel_fresh(&fuels[f], 1.2, fresh);
        cg_fuel_burned(&fuels[f], 1.2, 1.0, burned);
        double heat = enthalpy(&fuels[f], fresh) - enthalpy(&fuels[f], burned);
        check_close(heat / cg_fuel_molar_mass(&fuels[f]),
                    fuels[f].heating_value + fuels[f].latent_heat, 1e-12,
                    "of the vapour");
    }
}
END_TEST

START_TEST(rich_burning_withholds_what_the_products_hold)
{
    const struct cg_fuel *fuel = cg_fuel_find("toluene_blend");
    double fresh[CG_SPECIES], burned[CG_SPECIES];
    cg_fuel_fresh(fuel, 0.79, fresh);
    cg_fuel_burned(fuel, 0.79, 0.95, burned);
    double vapour = cg_fuel_molar_mass(fuel) *
                    (fuel->heating_value + fuel->latent_heat);
    double held = burned[CG_CO] * cg_fuel_co_heat() +
                  burned[CG_H2] * cg_fuel_hydrogen_heat() +
                  burned[CG_FUEL] * vapour;
    check_close(enthalpy(fuel, fresh) - enthalpy(fuel, burned), vapour - held,
                1e-12, "first law");
    ck_assert(held > 0.15 * vapour);
}
END_TEST

START_TEST(vapour_is_one_curve_with_positive_cv)
{
    size_t count;
    const struct cg_fuel *fuels = cg_fuels(&count);
    for (size_t f = 0; f < count; f++) {
        struct cg_poly poly;
        struct cg_mixture vapour;
        double moles[CG_SPECIES] = {[CG_FUEL] = 1.0};
        cg_fuel_poly(&fuels[f], &poly);
        cg_mixture_set(&vapour, moles, cg_fuel_molar_mass(&fuels[f]), &poly);
        check_close(cg_mixture_enthalpy(&vapour, 1000.0),
                    cg_mixture_enthalpy(&vapour, 1000.0 * (1.0 - 1e-15)), 1e-9,
                    "one curve");
        double before = 0.0;
        for (double t = 150.0; t <= 6000.0; t += 10.0) {
            double cp = cg_mixture_cp(&vapour, t);
            ck_assert_msg(cp > 2.0 * vapour.gas_constant &&
                              cp >= before * (1.0 - 1e-12),
                          "%s at %g K: cp %g", fuels[f].name, t, cp);
            before = cp;
        }
    }
}
END_TEST

START_TEST(names_find_their_rows)
{
    size_t count;
    const struct cg_fuel *fuels = cg_fuels(&count);
    for (size_t f = 0; f < count; f++) {
        ck_assert_ptr_eq(cg_fuel_find(fuels[f].name), &fuels[f]);
        ck_assert(strlen(fuels[f].doc) > 0 && strlen(fuels[f].source) > 0);
    }
    ck_assert_ptr_null(cg_fuel_find("coal"));
    ck_assert_ptr_null(cg_fuel_find(""));
}
END_TEST

START_TEST(e85_is_mixed_from_its_parts)
{
    const struct cg_fuel *e85 = cg_fuel_find("e85");
    const struct cg_fuel *ethanol = cg_fuel_find("ethanol");
    const struct cg_fuel *gasoline = cg_fuel_find("gasoline");
    double e = 0.85 * ethanol->density, g = 0.15 * gasoline->density;
    double ne = e / cg_fuel_molar_mass(ethanol);
    double ng = g / cg_fuel_molar_mass(gasoline);
    check_close(e85->heating_value,
                (e * ethanol->heating_value + g * gasoline->heating_value) /
                    (e + g), 1e-3, "by mass");
    check_close(e85->carbon,
                (ne * ethanol->carbon + ng * gasoline->carbon) / (ne + ng),
                1e-3, "by moles");
    check_close(e85->hydrogen,
                (ne * ethanol->hydrogen + ng * gasoline->hydrogen) / (ne + ng),
                1e-3, "by moles");
    check_close(e85->oxygen, ne / (ne + ng), 1e-3, "by moles");
    check_close(e85->density, e + g, 1e-3, "by volume");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("fuels");
    TCase *tcase = tcase_create("fuel");
    tcase_add_test(tcase, elements_are_conserved);
    tcase_add_test(tcase, rich_products_obey_the_water_gas_constant);
    tcase_add_test(tcase, what_does_not_burn_keeps_its_air);
    tcase_add_test(tcase, products_join_at_stoichiometric);
    tcase_add_test(tcase, burning_gives_the_heating_value);
    tcase_add_test(tcase, rich_burning_withholds_what_the_products_hold);
    tcase_add_test(tcase, vapour_is_one_curve_with_positive_cv);
    tcase_add_test(tcase, names_find_their_rows);
    tcase_add_test(tcase, e85_is_mixed_from_its_parts);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
