/* Water and engine oil against published tables. */
#include "check_close.h"

#include "boiling.h"
#include "constants.h"
#include "viscosity.h"

#define STEAM                                                                \
    "steam tables, W. Wagner and A. Pruss, IAPWS formulation 1995; from "    \
    "memory"

static const struct steam {
    double kilopascal, celsius;
} steam[] = {
    {70.18, 90.0}, {101.325, 99.97}, {101.42, 100.0}, {143.38, 110.0},
    {198.67, 120.0}, {270.28, 130.0}, {361.54, 140.0},
};

START_TEST(water_boils)
{
    check_within(cg_boiling_point(steam[_i].kilopascal * 1e3, 0.0) -
                     CG_ZERO_CELSIUS,
                 steam[_i].celsius, 0.3, STEAM);
}
END_TEST

/* An unused engine oil; the two points that Walther's law needs lie between
 * rows and are taken on the straight line of log viscosity between them. */
#define OIL                                                                  \
    "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, table " \
    "A.5, engine oil (unused); from memory"

static const struct oil {
    double kelvin, viscosity; /* [K], [1e-6 m2/s] */
} oils[] = {
    {290, 1120}, {300, 550}, {310, 288}, {320, 161}, {330, 96.6}, {340, 61.7},
    {350, 41.7}, {360, 29.7}, {370, 22.0}, {380, 16.9}, {390, 13.3},
    {400, 10.6}, {410, 8.52}, {420, 6.94}, {430, 5.83},
};

static double between(int row, double kelvin)
{
    const struct oil *a = &oils[row], *b = &oils[row + 1];
    double part = (kelvin - a->kelvin) / (b->kelvin - a->kelvin);
    return 1e-6 * a->viscosity * pow(b->viscosity / a->viscosity, part);
}

START_TEST(oil_thins)
{
    double got = cg_viscosity_walther(between(2, 313.15), between(8, 373.15),
                                      oils[_i].kelvin);
    check_close(got, oils[_i].viscosity * 1e-6, 0.08, OIL);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("fluids");
    TCase *all = tcase_create("tables");
    tcase_add_loop_test(all, water_boils, 0,
                        (int)(sizeof steam / sizeof steam[0]));
    tcase_add_loop_test(all, oil_thins, 0,
                        (int)(sizeof oils / sizeof oils[0]));
    suite_add_tcase(suite, all);
    return check_run(suite);
}
