#include "check_close.h"

#include "boiling.h"

START_TEST(rises_with_pressure_and_glycol)
{
    for (double pressure = 60e3; pressure < 400e3; pressure *= 1.17)
        for (double glycol = 0.0; glycol < 0.55; glycol += 0.1) {
            double here = cg_boiling_point(pressure, glycol);
            ck_assert_double_gt(cg_boiling_point(pressure * 1.01, glycol),
                                here);
            ck_assert_double_gt(cg_boiling_point(pressure, glycol + 0.05),
                                here);
        }
}
END_TEST

START_TEST(glycol_adds_by_the_square_of_its_share)
{
    double water = cg_boiling_point(141.7e3, 0.0);
    check_within(cg_boiling_point(141.7e3, 0.5) - water, 8.0, 1e-9,
                 "the model's own rule");
    check_within(cg_boiling_point(141.7e3, 0.25) - water, 2.0, 1e-9,
                 "the model's own rule");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("boiling");
    TCase *all = tcase_create("boiling");
    tcase_add_test(all, rises_with_pressure_and_glycol);
    tcase_add_test(all, glycol_adds_by_the_square_of_its_share);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
