/* Fuels against handbook values: heating value, latent heat, density, heat
 * capacity of the vapour. */
#include "check_close.h"

#include "fuel.h"

#define HANDBOOK                                                            \
    "CRC Handbook of Chemistry and Physics, 25 C, from memory"
#define HEYWOOD_HEAT "J. B. Heywood (1988), table D.4, from memory"
#define HEYWOOD_CP "J. B. Heywood (1988), table 4.11, from memory"
#define STULL                                                               \
    "D. R. Stull, E. F. Westrum, G. C. Sinke (1969), from memory"

/* Heat of combustion to liquid water and heat of evaporation [kJ/mol]; 44.0 is
 * that of water. */
static const struct pure {
    const char *name;
    double molar_mass, hydrogen; /* [kg/kmol], atoms */
    double combustion, evaporation;
} methanol = {"methanol", 32.042, 4, 726.1, 37.43},
  ethanol = {"ethanol", 46.069, 6, 1366.8, 42.32},
  octane = {"iso_octane", 114.231, 18, 5461.3, 35.14},
  toluene = {"", 92.141, 8, 3910.3, 38.01},
  heptane = {"", 100.205, 16, 4817.0, 36.57};

static double lower_heat(const struct pure *fuel) /* of the liquid [J/kg] */
{
    return 1e6 * (fuel->combustion - 0.5 * fuel->hydrogen * 44.0) /
           fuel->molar_mass;
}

static double latent_heat(const struct pure *fuel)
{
    return 1e6 * fuel->evaporation / fuel->molar_mass;
}

START_TEST(heats_of_pure_fuels)
{
    const struct pure *const all[] = {&methanol, &ethanol, &octane};
    for (int i = 0; i < 3; i++) {
        const struct cg_fuel *fuel = cg_fuel_find(all[i]->name);
        check_close(fuel->heating_value, lower_heat(all[i]), 0.005, HANDBOOK);
        check_close(fuel->latent_heat, latent_heat(all[i]), 0.01, HANDBOOK);
        check_close(cg_fuel_molar_mass(fuel), 1e-3 * all[i]->molar_mass, 2e-4,
                    "IUPAC atomic weights (2013), from memory");
    }
}
END_TEST

/* Mass share of a liquid in a mixture, by volumes and densities. */
static double mass_share(double volume, double density, double other)
{
    return volume * density / (volume * density + (1.0 - volume) * other);
}

START_TEST(heats_of_mixed_fuels)
{
    const struct cg_fuel *race = cg_fuel_find("toluene_blend");
    double share = mass_share(0.84, 871, 688);
    check_close(race->heating_value,
                share * lower_heat(&toluene) +
                    (1 - share) * lower_heat(&heptane), 0.005, HANDBOOK);
    check_close(race->latent_heat,
                share * latent_heat(&toluene) +
                    (1 - share) * latent_heat(&heptane), 0.01, HANDBOOK);
    double moles = share / toluene.molar_mass /
                   (share / toluene.molar_mass +
                    (1 - share) / heptane.molar_mass);
    ck_assert_double_eq_tol(race->carbon, 7.0, 7e-9); /* as both parts */
    check_close(race->hydrogen, 8 * moles + 16 * (1 - moles), 0.002, HANDBOOK);

    const struct cg_fuel *gasoline = cg_fuel_find("gasoline");
    check_close(gasoline->heating_value, 44.0e6, 0.005, HEYWOOD_HEAT);
    check_close(gasoline->latent_heat, 305e3, 0.01, HEYWOOD_HEAT);
    check_close(gasoline->hydrogen / gasoline->carbon, 1.87, 0.002,
                HEYWOOD_CP);

    const struct cg_fuel *e85 = cg_fuel_find("e85");
    share = mass_share(0.85, 794, 745);
    check_close(e85->latent_heat,
                share * latent_heat(&ethanol) + (1 - share) * 305e3, 0.01,
                HANDBOOK);
}
END_TEST

START_TEST(density_at_15_C)
{
    static const struct {
        const char *name;
        double density;
    } at[] = {{"methanol", 796}, {"ethanol", 794}, {"iso_octane", 696},
              {"toluene_blend", 0.84 * 871 + 0.16 * 688}};
    for (int i = 0; i < 4; i++)
        check_close(cg_fuel_find(at[i].name)->density, at[i].density, 0.005,
                    "CRC Handbook of Chemistry and Physics, 15 C, from memory");
    check_band(cg_fuel_find("gasoline")->density, 720, 775,
               "EN 228 (2012), from memory");
}
END_TEST

static double cp_of(const char *name, double kelvin)
{
    const double *a = cg_fuel_find(name)->vapour_cp;
    return a[0] + a[1] * kelvin + a[2] * kelvin * kelvin;
}

/* Heywood's form, cal/(mol K) of T/1000. */
static double heywood_cp(const double a[5], double molar_mass, double kelvin)
{
    double t = 1e-3 * kelvin;
    return 4184 / molar_mass *
           (a[0] + a[1] * t + a[2] * t * t + a[3] * t * t * t + a[4] / (t * t));
}

START_TEST(vapour_of_hydrocarbons)
{
    static const double octane_cp[5] = {-0.55313, 181.62, -97.787, 20.402,
                                        -0.03095};
    static const double gasoline_cp[5] = {-24.078, 256.63, -201.68, 64.750,
                                          0.5808};
    for (double t = 300; t < 1001; t += t < 599 ? 300 : 400) {
        check_close(cp_of("iso_octane", t), heywood_cp(octane_cp, 114.231, t),
                    0.002, HEYWOOD_CP);
        check_close(cp_of("gasoline", t), heywood_cp(gasoline_cp, 114.83, t),
                    0.002, HEYWOOD_CP);
    }
}
END_TEST

/* [J/(mol K)] at 300, 600 and 1000 K. */
static const struct {
    const char *name;
    double molar_mass, cp[3];
} vapours[] = {{"methanol", 32.042, {44.1, 67.0, 89.5}},
               {"ethanol", 46.069, {65.7, 107.6, 141.9}},
               {"toluene_blend", 93.12, /* 0.8785 of toluene by moles */
                {0.8785 * 104.4 + 0.1215 * 166.7, 0.8785 * 197.5 + 0.1215 * 287,
                 0.8785 * 264.7 + 0.1215 * 384}}};

START_TEST(vapour_of_the_others)
{
    const double kelvin[3] = {300, 600, 1000};
    for (int k = 0; k < 3; k++)
        check_close(cp_of(vapours[_i].name, kelvin[k]),
                    1e3 * vapours[_i].cp[k] / vapours[_i].molar_mass, 0.006,
                    STULL);
}
END_TEST

START_TEST(vapour_of_e85)
{
    double share = mass_share(0.85, 794, 745);
    for (double t = 300; t < 1001; t += 100) {
        double mixed = share * cp_of("ethanol", t) +
                       (1 - share) * cp_of("gasoline", t);
        ck_assert_double_eq_tol(cp_of("e85", t), mixed, 0.002 * mixed);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("fuels");
    TCase *tcase = tcase_create("fuels");
    tcase_add_test(tcase, heats_of_pure_fuels);
    tcase_add_test(tcase, heats_of_mixed_fuels);
    tcase_add_test(tcase, density_at_15_C);
    tcase_add_test(tcase, vapour_of_hydrocarbons);
    tcase_add_loop_test(tcase, vapour_of_the_others, 0, 3);
    tcase_add_test(tcase, vapour_of_e85);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
