#include <stdlib.h>

#include "check_close.h"

#include "constants.h"
#include "gas_side.h"

#define IDENTITY "by definition"

static const struct cg_crank crank = {0.0863, 0.0917, 0.1521, 10.37};
static const struct cg_bore_grid grid = {17, 0.1234};

/* Sides of the points, by the trapezoidal rule. */
static void set_sides(struct cg_cycle *cycle)
{
    cycle->sides = cycle->points;
    for (size_t i = 0; i < cycle->points; i++) {
        const struct cg_cycle_point *point = &cycle->point[i];
        double before = cycle->point[i > 0 ? i - 1 : i].crank_deg;
        double after =
            cycle->point[i + 1 < cycle->points ? i + 1 : i].crank_deg;
        cycle->side[i] = (struct cg_cycle_side){
            0.5 * (after - before), point->depth, point->coefficient,
            point->coefficient * point->temperature,
            point->coefficient * point->bore_temperature};
    }
}

/* A cycle sampled every `step` degrees; the gas is the caller's. */
static struct cg_cycle *cycle_of(const struct cg_crank *of, double step,
                                 double (*h)(double), double (*t)(double))
{
    struct cg_cycle *cycle = calloc(1, sizeof *cycle);
    ck_assert_ptr_nonnull(cycle);
    cycle->points = (size_t)(720.0 / step + 0.5) + 1;
    ck_assert_uint_le(cycle->points, CG_CYCLE_POINTS);
    for (size_t i = 0; i < cycle->points; i++) {
        struct cg_cycle_point *point = &cycle->point[i];
        point->crank_deg = -360.0 + step * (double)i;
        point->depth = cg_crank_depth(of, point->crank_deg);
        point->coefficient = h(point->crank_deg);
        point->temperature = t(point->crank_deg);
        point->bore_temperature = point->temperature;
    }
    set_sides(cycle);
    return cycle;
}

static double steady_h(double angle)
{
    (void)angle;
    return 713.7;
}

static double steady_t(double angle)
{
    (void)angle;
    return 1187.3;
}

/* Something with a peak a little after firing top dead centre. */
static double peaked_h(double angle)
{
    return 180.0 + 2400.0 * exp(-pow((angle - 11.3) / 31.7, 2.0));
}

static double peaked_t(double angle)
{
    return 410.0 + 1900.0 * exp(-pow((angle - 24.1) / 57.9, 2.0));
}

START_TEST(steady_gas_comes_back)
{
    struct cg_cycle *cycle = cycle_of(&crank, 0.5, steady_h, steady_t);
    struct cg_mean_gas gas[17], crown = cg_gas_side_crown(cycle);
    check_close(crown.coefficient, 713.7, 1e-13, IDENTITY);
    check_close(crown.temperature, 1187.3, 1e-13, IDENTITY);
    cg_gas_side_stations(cycle, &grid, gas);
    for (size_t s = 0; s < grid.stations; s++) {
        check_close(gas[s].temperature, 1187.3, 1e-12, IDENTITY);
        ck_assert_double_le(gas[s].coefficient, 713.7);
        if (s > 0)
            ck_assert_double_le(gas[s].coefficient,
                                gas[s - 1].coefficient + 1e-12);
    }
    free(cycle);
}
END_TEST

/* Harmonic motion uncovers depth x for the share 1 - acos(1 - 2 x/s)/pi of
 * the time: the mean over a station has a closed form. */
static double exposed_up_to(double x, double stroke)
{
    double u = 1.0 - 2.0 * fmin(fmax(x / stroke, 0.0), 1.0);
    /* integral of acos(u) du is u acos u - sqrt(1 - u2) */
    double area = 0.5 * stroke * (-sqrt(1.0 - u * u) + u * acos(u));
    return x + area / CG_PI; /* the constant cancels in differences */
}

START_TEST(exposure_in_closed_form)
{
    struct cg_crank harmonic = crank;
    harmonic.rod = 1e7;
    struct cg_cycle *cycle = cycle_of(&harmonic, 0.1, steady_h, steady_t);
    struct cg_bore_grid whole = {23, 0.0917};
    struct cg_mean_gas gas[23];
    cg_gas_side_stations(cycle, &whole, gas);
    double height = cg_station_height(&whole);
    for (size_t s = 0; s < whole.stations; s++) {
        double from = height * (double)s, to = from + height;
        double want = (exposed_up_to(to, 0.0917) -
                       exposed_up_to(from, 0.0917)) / height;
        check_within(gas[s].coefficient / 713.7, want, 2e-5,
                     "integral of the cosine law");
    }
    free(cycle);
}
END_TEST

/* Station by station over the whole cycle, against the one-pass sums. */
START_TEST(stations_against_plain_quadrature)
{
    struct cg_cycle *cycle = cycle_of(&crank, 1.0, peaked_h, peaked_t);
    /* uneven steps: leave out some points */
    size_t kept = 0;
    for (size_t i = 0; i < cycle->points; i++)
        if (i == 0 || i + 1 == cycle->points || i % 7 != 3)
            cycle->point[kept++] = cycle->point[i];
    cycle->points = kept;
    set_sides(cycle);
    struct cg_mean_gas gas[17];
    cg_gas_side_stations(cycle, &grid, gas);
    double height = cg_station_height(&grid);
    for (size_t s = 0; s < grid.stations; s++) {
        double h = 0.0, heat = 0.0;
        for (size_t i = 0; i + 1 < cycle->points; i++)
            for (size_t end = i; end <= i + 1; end++) {
                const struct cg_cycle_point *p = &cycle->point[end];
                double half = 0.5 * (cycle->point[i + 1].crank_deg -
                                     cycle->point[i].crank_deg);
                double bare = (p->depth - height * (double)s) / height;
                bare = fmin(fmax(bare, 0.0), 1.0);
                h += half * bare * p->coefficient / 720.0;
                heat += half * bare * p->coefficient * p->temperature / 720.0;
            }
        check_within(gas[s].coefficient, h, 1e-9, "trapezium rule");
        if (h > 0.0)
            check_close(gas[s].temperature, heat / h, 1e-11,
                        "trapezium rule");
    }
    free(cycle);
}
END_TEST

/* The bore has a gas of its own; the crown's stays. */
START_TEST(bore_sees_its_own_gas)
{
    struct cg_cycle *cycle = cycle_of(&crank, 1.0, peaked_h, steady_t);
    struct cg_mean_gas gas[17];
    for (size_t i = 0; i < cycle->points; i++)
        cycle->point[i].bore_temperature -= 200.0;
    set_sides(cycle);
    cg_gas_side_stations(cycle, &grid, gas);
    check_close(cg_gas_side_crown(cycle).temperature, 1187.3, 1e-12, IDENTITY);
    for (size_t s = 0; s < 10; s++)
        check_close(gas[s].temperature, 987.3, 1e-12, IDENTITY);
    free(cycle);
}
END_TEST

/* What the mean gas is for: the cycle-mean flux of any steady wall. */
START_TEST(mean_flux_of_any_wall)
{
    struct cg_cycle *cycle = cycle_of(&crank, 0.5, peaked_h, peaked_t);
    struct cg_mean_gas crown = cg_gas_side_crown(cycle);
    double plain = 0.0;
    for (double wall = 320.0; wall < 800.0; wall += 97.3) {
        double flux = 0.0;
        plain = 0.0;
        for (size_t i = 0; i + 1 < cycle->points; i++)
            for (size_t end = i; end <= i + 1; end++) {
                const struct cg_cycle_point *p = &cycle->point[end];
                flux += 0.25 * p->coefficient * (p->temperature - wall) / 720;
                plain += 0.25 * p->temperature / 720;
            }
        check_close(crown.coefficient * (crown.temperature - wall), flux,
                    1e-12, IDENTITY);
    }
    ck_assert_double_gt(crown.temperature, plain + 200.0);
    free(cycle);
}
END_TEST

START_TEST(covered_stations_see_no_gas)
{
    struct cg_cycle *cycle = cycle_of(&crank, 0.5, peaked_h, peaked_t);
    struct cg_mean_gas gas[17], crown = cg_gas_side_crown(cycle);
    cg_gas_side_stations(cycle, &grid, gas);
    double height = cg_station_height(&grid);
    size_t covered = 0;
    for (size_t s = 0; s < grid.stations; s++)
        if (height * (double)s >= crank.stroke) {
            ck_assert_double_eq(gas[s].coefficient, 0.0);
            ck_assert_double_eq(gas[s].temperature, crown.temperature);
            covered++;
        }
    ck_assert_uint_ge(covered, 3);
    free(cycle);
}
END_TEST

START_TEST(peak_flux)
{
    struct cg_cycle *cycle = cycle_of(&crank, 0.1, peaked_h, peaked_t);
    double most = 0.0;
    for (double angle = -360.0; angle < 360.0; angle += 0.01)
        most = fmax(most, peaked_h(angle) * (peaked_t(angle) - 471.0));
    check_close(cg_gas_side_peak_flux(cycle, 471.0), most, 1e-5,
                "direct search");
    free(cycle);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("gas side");
    TCase *all = tcase_create("gas side");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, steady_gas_comes_back);
    tcase_add_test(all, exposure_in_closed_form);
    tcase_add_test(all, stations_against_plain_quadrature);
    tcase_add_test(all, bore_sees_its_own_gas);
    tcase_add_test(all, mean_flux_of_any_wall);
    tcase_add_test(all, covered_stations_see_no_gas);
    tcase_add_test(all, peak_flux);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
