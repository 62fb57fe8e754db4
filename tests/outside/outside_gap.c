/* Ring closure in a bore against values worked by hand from the arc lengths
 * at published coefficients of expansion.  Lengths in mm. */
#include "check_close.h"

#include "constants.h"
#include "ring_gap.h"

static const char arcs[] = "arc lengths pi D and pi D - g, worked by hand";
static const char stainless[] =
    "BS EN 10088-1 (type 440, mean 20 to 200 C: 10.8e-6/K) against "
    "12.7e-6/K for 54SiCr6 (data sheet, mean to 200 C), by hand";

struct closure_row {
    double bore, gap;            /* [mm] */
    double ring, ring_rise;      /* [1/K], [K] */
    double wall, wall_rise;      /* [1/K], [K] */
    double hot, closure, simple; /* [mm] */
};

static const struct closure_row rows[] = {
    {86, 0.35, 11.5e-6, 160, 11e-6, 110, 0.180433, 0.169567, 0.170211},
    {86, 0.35, 12.7e-6, 180, 11e-6, 120, 0.089809, 0.260191, 0.260991},
    {86, 0.35, 12.7e-6, 180, 21.5e-6, 120, 0.430232, -0.080232, -0.079432},
};

static double hot_gap(const struct closure_row *row)
{
    return 1e3 * cg_gap_hot(row->bore / 1e3, row->gap / 1e3,
                            row->wall * row->wall_rise,
                            row->ring * row->ring_rise);
}

START_TEST(closure_row)
{
    const struct closure_row *row = &rows[_i];
    check_within(hot_gap(row), row->hot, 1e-6, arcs);
    check_within(row->gap - hot_gap(row), row->closure, 1e-6, arcs);
    /* The short form of the trade leaves out the growth of the gap itself. */
    double simple = CG_PI * row->bore *
                    (row->ring * row->ring_rise - row->wall * row->wall_rise);
    ck_assert_double_eq_tol(simple, row->simple, 1e-6);
    check_within(row->simple - (row->gap - hot_gap(row)),
                 row->gap * row->ring * row->ring_rise, 1e-6, arcs);
}
END_TEST

START_TEST(cold_gap_of_the_row)
{
    const struct closure_row *row = &rows[_i];
    check_within(1e3 * cg_gap_cold_for(row->bore / 1e3, row->hot / 1e3,
                                       row->wall * row->wall_rise,
                                       row->ring * row->ring_rise),
                 row->gap, 1e-6, arcs);
}
END_TEST

START_TEST(one_part_in_a_million_is_five_hundredths)
{
    /* 1e-6/K at 180 K and 86 mm: 0.0486 mm. */
    struct closure_row more = rows[1];
    more.ring += 1e-6;
    check_within(hot_gap(&rows[1]) - hot_gap(&more), 0.0486, 0.0001, arcs);
    /* as much as 21 K of ring temperature */
    struct closure_row hotter = rows[1];
    hotter.ring_rise += 0.0486 / (CG_PI * 86 * 12.7e-6);
    check_within(hot_gap(&hotter), hot_gap(&more), 0.0001, arcs);
}
END_TEST

START_TEST(stainless_ring_closes_a_third_less)
{
    struct closure_row chrome = rows[1];
    chrome.ring = 10.8e-6;
    double steel = rows[1].gap - hot_gap(&rows[1]);
    double less = 1 - (chrome.gap - hot_gap(&chrome)) / steel;
    check_within(less, 0.355, 0.0015, stainless);
}
END_TEST

int main(void)
{
    int count = (int)(sizeof rows / sizeof rows[0]);
    Suite *suite = suite_create("outside gap");
    TCase *tcase = tcase_create("gap");
    tcase_add_loop_test(tcase, closure_row, 0, count);
    tcase_add_loop_test(tcase, cold_gap_of_the_row, 0, count);
    tcase_add_test(tcase, one_part_in_a_million_is_five_hundredths);
    tcase_add_test(tcase, stainless_ring_closes_a_third_less);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
