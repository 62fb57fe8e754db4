#include "check_close.h"

#include "joint.h"

static const struct cg_bore_case bore = {.joint_coefficient = 14300.0,
                                         .open_joint_coefficient = 1370.0};

START_TEST(coefficient_follows_pressure)
{
    ck_assert_double_eq(cg_joint_coefficient(&bore, -3e6), 1370.0);
    ck_assert_double_eq(cg_joint_coefficient(&bore, 0.0), 1370.0);
    check_close(cg_joint_coefficient(&bore, 0.5e6),
                1370.0 + 0.25 * (14300.0 - 1370.0), 1e-14, "the header's law");
    check_close(cg_joint_coefficient(&bore, 2e6), 14300.0, 1e-14,
                "the header's law");
    check_close(cg_joint_coefficient(&bore, 90e6), 14300.0, 1e-14,
                "the header's law");
}
END_TEST

/* Pressure falls as the joint conducts better, by so much per doubling. */
static double pressure_at(double coefficient, double level, double fall)
{
    return level - fall * log2(coefficient / 1370.0);
}

/* The answer is the same whatever the start, and it is found in few steps
 * even where a switch would flap for ever. */
START_TEST(finds_the_coefficient_that_asks_for_itself)
{
    for (double level = 0.1e6; level < 8e6; level *= 1.37)
        for (double fall = 0.0; fall < 3e6; fall += 0.41e6) {
            struct cg_joint joint;
            double apart = 1.0;
            int steps = 0;
            cg_joint_begin(&bore, &joint);
            ck_assert_double_eq(joint.coefficient, 14300.0);
            while (apart > 1e-6 && steps++ < 60)
                apart = cg_joint_step(
                    cg_joint_coefficient(
                        &bore, pressure_at(joint.coefficient, level, fall)),
                    &joint);
            ck_assert_msg(apart <= 1e-6, "level %g fall %g: %g apart", level,
                          fall, apart);
            double low = 1370.0, high = 14300.0; /* by halving */
            for (int i = 0; i < 60; i++) {
                double middle = 0.5 * (low + high);
                double asked = cg_joint_coefficient(
                    &bore, pressure_at(middle, level, fall));
                if (asked > middle)
                    low = middle;
                else
                    high = middle;
            }
            check_close(joint.coefficient, low, 1e-5, "bisection");
        }
}
END_TEST

START_TEST(stays_between_its_ends)
{
    struct cg_joint joint;
    cg_joint_begin(&bore, &joint);
    for (int i = 0; i < 20; i++) {
        cg_joint_step(i % 3 == 0 ? 1370.0 : 14300.0, &joint);
        check_band(joint.coefficient, 1370.0, 14300.0, "its two ends");
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("joint");
    TCase *all = tcase_create("joint");
    tcase_add_test(all, coefficient_follows_pressure);
    tcase_add_test(all, finds_the_coefficient_that_asks_for_itself);
    tcase_add_test(all, stays_between_its_ends);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
