#include "check_close.h"

#include "constants.h"
#include "sweep_share.h"

#define IDENTITY "by definition"

enum { STATIONS = 29 };
static const struct cg_crank crank = {0.0863, 0.0917, 0.1521, 10.37};
static const double offset = 0.0067, height = 0.0013;

static void share_time(const struct cg_crank *of,
                       const struct cg_bore_grid *grid, double from,
                       double high, double *share)
{
    struct cg_stroke stroke;
    cg_stroke_set(&stroke, of);
    cg_share_time(&stroke, grid, from, high, share);
}

static void share_path(const struct cg_crank *of,
                       const struct cg_bore_grid *grid, double from,
                       double high, double *share)
{
    struct cg_stroke stroke;
    cg_stroke_set(&stroke, of);
    cg_share_path(&stroke, grid, from, high, share);
}

static double sum_of(const double *share)
{
    double sum = 0.0;
    for (size_t s = 0; s < STATIONS; s++)
        sum += share[s];
    return sum;
}

static double mean_depth(const struct cg_bore_grid *grid, const double *share)
{
    double sum = 0.0;
    for (size_t s = 0; s < STATIONS; s++)
        sum += share[s] * cg_station_depth(grid, s);
    return sum;
}

START_TEST(stations_fill_the_bore)
{
    const struct cg_bore_grid grid = {STATIONS, 0.1234};
    check_close(cg_station_height(&grid) * STATIONS, 0.1234, 1e-14, IDENTITY);
    check_close(cg_station_depth(&grid, 0), 0.5 * cg_station_height(&grid),
                1e-14, IDENTITY);
    check_close(cg_station_depth(&grid, STATIONS - 1),
                0.1234 - 0.5 * cg_station_height(&grid), 1e-14, IDENTITY);
}
END_TEST

START_TEST(shares_sum_to_one_inside_the_bore)
{
    const struct cg_bore_grid grid = {STATIONS, 0.1234};
    double time[STATIONS], path[STATIONS];
    share_time(&crank, &grid, offset, height, time);
    share_path(&crank, &grid, offset, height, path);
    check_close(sum_of(time), 1.0, 1e-12, IDENTITY);
    check_close(sum_of(path), 1.0, 1e-12, IDENTITY);
    for (size_t s = 0; s < STATIONS; s++) {
        ck_assert_double_ge(time[s], 0.0);
        ck_assert_double_ge(path[s], 0.0);
    }
}
END_TEST

/* A skirt that hangs out of the bore at the bottom leaves that share out:
 * with harmonic motion, the share of time above depth x is acos(1-2x/s)/pi. */
START_TEST(what_leaves_the_bore_is_left_out)
{
    struct cg_crank harmonic = crank;
    harmonic.rod = 1e7;
    const struct cg_bore_grid grid = {STATIONS, 0.0917};
    double share[STATIONS];
    for (double below = 0.003; below < 0.09; below += 0.0117) {
        share_time(&harmonic, &grid, below, 1e-9, share);
        double inside = acos(1.0 - 2.0 * (0.0917 - below) / 0.0917) / CG_PI;
        check_within(sum_of(share), inside, 1.01 / 180.0,
                     "cosine law, one crank degree");
    }
}
END_TEST

/* Distribution function of depth under harmonic motion, and its integral. */
static double integral_of_time(double x)
{
    double stroke = crank.stroke;
    double u = 1.0 - 2.0 * fmin(fmax(x / stroke, 0.0), 1.0);
    double inside = 0.5 * stroke * (sqrt(1.0 - u * u) - u * acos(u)) / CG_PI;
    return inside + fmax(x - stroke, 0.0);
}

/* Exact shares for the way depths are laid on stations: in proportion to
 * nearness to the two station middles.  Second difference of the integral. */
static double exact_share(const struct cg_bore_grid *grid, size_t s,
                          double from)
{
    double h = cg_station_height(grid);
    double x = cg_station_depth(grid, s) - from;
    return (integral_of_time(x + h) - 2.0 * integral_of_time(x) +
            integral_of_time(x - h)) / h;
}

START_TEST(dwell_at_the_ends_is_the_arcsine_law)
{
    struct cg_crank harmonic = crank;
    harmonic.rod = 1e7;
    const struct cg_bore_grid grid = {STATIONS, 0.1234};
    double share[STATIONS];
    share_time(&harmonic, &grid, offset, 1e-9, share);
    size_t top = 0, bottom = 0;
    for (size_t s = 1; s + 1 < STATIONS; s++) {
        double want = exact_share(&grid, s, offset);
        check_within(share[s], want, 3e-4, "integral of the arcsine density");
        if (s < STATIONS / 2 && share[s] > share[top])
            top = s;
        if (s >= STATIONS / 2 && share[s] > share[bottom])
            bottom = s;
    }
    /* the dwell: at either turn far more than the middle's share */
    size_t middle = (top + bottom) / 2;
    ck_assert_double_gt(share[top], 2.5 * share[middle]);
    ck_assert_double_gt(share[bottom], 2.5 * share[middle]);
    ck_assert_double_lt(fabs(cg_station_depth(&grid, top) - offset),
                        cg_station_height(&grid));
}
END_TEST

START_TEST(harmonic_motion_is_symmetric)
{
    struct cg_crank harmonic = crank;
    harmonic.rod = 1e7;
    const struct cg_bore_grid grid = {STATIONS, 0.1234};
    double centred = 0.5 * (0.1234 - 0.0917 - height);
    double time[STATIONS], path[STATIONS];
    share_time(&harmonic, &grid, centred, height, time);
    share_path(&harmonic, &grid, centred, height, path);
    for (size_t s = 0; s < STATIONS; s++) {
        check_within(time[s], time[STATIONS - 1 - s], 1e-9, "symmetry");
        check_within(path[s], path[STATIONS - 1 - s], 1e-9, "symmetry");
    }
}
END_TEST

/* A real rod keeps the piston longer at the bottom than at the top. */
START_TEST(short_rod_dwells_at_the_bottom)
{
    const struct cg_bore_grid grid = {STATIONS, 0.1234};
    double share[STATIONS];
    share_time(&crank, &grid, offset, height, share);
    double upper = 0.0, half = offset + 0.5 * (height + crank.stroke);
    for (size_t s = 0; s < STATIONS; s++)
        if (cg_station_depth(&grid, s) < half)
            upper += share[s];
    check_band(upper, 0.40, 0.48, "slider-crank: less time in the upper half");
    double sum = 0.0;
    for (int a = 0; a < 100000; a++)
        sum += cg_crank_depth(&crank, 180.0 * (a + 0.5) / 100000);
    check_close(mean_depth(&grid, share),
                sum / 100000 + offset + 0.5 * height, 1e-5,
                "mean depth over crank time");
}
END_TEST

/* Rubbing path is the same at every depth, whatever the rod. */
START_TEST(path_is_even_along_the_stroke)
{
    const struct cg_bore_grid grid = {STATIONS, 0.1234};
    double share[STATIONS];
    share_path(&crank, &grid, offset, height, share);
    double even = cg_station_height(&grid) / crank.stroke;
    for (size_t s = 0; s < STATIONS; s++) {
        double depth = cg_station_depth(&grid, s);
        double spare = 1.5 * cg_station_height(&grid);
        if (depth > offset + height + spare &&
            depth < offset + crank.stroke - spare)
            check_close(share[s], even, 0.01, "even path");
        if (depth < offset - spare ||
            depth > offset + height + crank.stroke + spare)
            ck_assert_double_eq(share[s], 0.0);
    }
    check_close(mean_depth(&grid, share),
                offset + 0.5 * (height + crank.stroke), 1e-4,
                "even path about the middle");
}
END_TEST

START_TEST(one_station_takes_all)
{
    const struct cg_bore_grid grid = {1, 0.1234};
    double share[1];
    share_time(&crank, &grid, offset, height, share);
    check_close(share[0], 1.0, 1e-12, IDENTITY);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sweep share");
    TCase *all = tcase_create("sweep share");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, stations_fill_the_bore);
    tcase_add_test(all, shares_sum_to_one_inside_the_bore);
    tcase_add_test(all, what_leaves_the_bore_is_left_out);
    tcase_add_test(all, dwell_at_the_ends_is_the_arcsine_law);
    tcase_add_test(all, harmonic_motion_is_symmetric);
    tcase_add_test(all, short_rod_dwells_at_the_bottom);
    tcase_add_test(all, path_is_even_along_the_stroke);
    tcase_add_test(all, one_station_takes_all);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
