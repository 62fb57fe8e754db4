#include "check_close.h"

#include "cylinder.h"

#include <stddef.h>

/* An iron liner of 86 mm bore in an aluminium block, 95 K above cold. */
static const struct cg_layer iron = {43.0e-3, 49.0e-3, 110e9, 0.26,
                                     11.0e-6 * 95};
static const struct cg_layer aluminium = {49.0e-3, 59.0e-3, 71e9, 0.33,
                                          21.5e-6 * 95};

static struct cg_bore_growth grow(enum cg_seat seat, struct cg_layer liner,
                                  struct cg_layer block, double interference,
                                  double gas)
{
    bool joined = seat == CG_SEAT_CAST_IN || seat == CG_SEAT_PRESSED;
    struct cg_bore_growth growth;
    cg_bore_grow(seat, &liner, joined ? &block : NULL, interference, gas,
                 &growth);
    return growth;
}

START_TEST(area_mean_of_a_constant)
{
    const double values[3] = {2.385, 2.385, 2.385};
    check_close(cg_area_mean(0.043, 0.049, 3, values), 2.385, 1e-15, "same");
    check_close(cg_area_mean(0.0, 0.049, 1, values), 2.385, 1e-15, "disc");
}
END_TEST

START_TEST(area_mean_weighs_the_outside_more)
{
    /* Solid disc in two rings: areas 1 and 3. */
    const double values[2] = {10.0, 30.0};
    check_close(cg_area_mean(0.0, 0.05, 2, values), 25.0, 1e-14,
                "areas 1 to 3");
    /* Radii 1, 2, 3: areas 3 and 5. */
    check_close(cg_area_mean(0.02, 0.06, 2, values), (30.0 + 150.0) / 8, 1e-14,
                "areas 3 to 5");
}
END_TEST

START_TEST(uniform_heat_and_one_metal_is_free_growth)
{
    struct cg_layer inside = iron, outside = iron;
    outside.inner = 49.0e-3;
    outside.outer = 57.3e-3;
    for (int seat = CG_SEAT_PARENT; seat <= CG_SEAT_WET; seat++) {
        struct cg_bore_growth growth =
            grow((enum cg_seat)seat, inside, outside, 25e-6, 0);
        check_close(growth.radial, 11.0e-6 * 95 * 43.0e-3, 1e-12,
                    "alpha dT a for every seat");
        ck_assert(!growth.open);
    }
}
END_TEST

START_TEST(cold_and_unloaded_does_not_move)
{
    struct cg_layer liner = iron, block = aluminium;
    liner.strain = block.strain = 0;
    for (int seat = CG_SEAT_PARENT; seat <= CG_SEAT_WET; seat++)
        check_within(grow((enum cg_seat)seat, liner, block, 25e-6, 0).radial,
                     0.0, 1e-18, "the honed state is the reference");
}
END_TEST

START_TEST(cast_in_lies_between_the_free_growths)
{
    struct cg_bore_growth growth = grow(CG_SEAT_CAST_IN, iron, aluminium, 0, 0);
    check_band(growth.radial, iron.strain * 43.0e-3 * 1.1,
               aluminium.strain * 43.0e-3 * 0.9, "between liner and block");
    ck_assert_msg(growth.contact_pressure < 0, "the block pulls outward");
    ck_assert_msg(growth.hoop_stress > 0, "so the liner is in tension");
    ck_assert(!growth.open);
}
END_TEST

START_TEST(joint_moves_as_one)
{
    /* Both sides of the bonded joint, by the pressure returned. */
    double pressure = cg_joint_pressure(&iron, &aluminium, 13e-6);
    double joint = 49.0e-3;
    double liner =
        iron.strain * joint + cg_lame_displacement(&iron, 0, pressure, joint);
    double block = aluminium.strain * joint +
                   cg_lame_displacement(&aluminium, pressure, 0, joint);
    check_close(liner + 13e-6, block, 1e-12, "no step at the joint");
}
END_TEST

START_TEST(pressed_is_cast_in_while_the_joint_pushes)
{
    /* Linear: with contact kept, the interference drops out of the growth. */
    struct cg_bore_growth bonded = grow(CG_SEAT_CAST_IN, iron, aluminium, 0, 0);
    struct cg_bore_growth pressed =
        grow(CG_SEAT_PRESSED, iron, aluminium, 80e-6, 0);
    ck_assert(!pressed.open);
    ck_assert(pressed.contact_pressure > 0);
    ck_assert(pressed.hoop_stress < 0);
    check_close(pressed.radial, bonded.radial, 1e-12, "same change");
}
END_TEST

START_TEST(pressed_joint_opens_and_lets_the_liner_go)
{
    double interference = 25e-6;
    struct cg_layer cold_iron = iron, cold_block = aluminium;
    cold_iron.strain = cold_block.strain = 0;
    double assembly = cg_joint_pressure(&cold_iron, &cold_block, interference);
    /* Release of the assembly pressure: 2 p a b^2 / (E (b^2 - a^2)). */
    double release = 2 * assembly * 43.0e-3 * 49.0e-3 * 49.0e-3 /
                     (110e9 * (49.0e-3 * 49.0e-3 - 43.0e-3 * 43.0e-3));
    struct cg_bore_growth growth =
        grow(CG_SEAT_PRESSED, iron, aluminium, interference, 0);
    ck_assert(growth.open);
    ck_assert_double_eq(growth.contact_pressure, 0.0);
    ck_assert_double_eq(growth.hoop_stress, 0.0);
    check_close(growth.radial, iron.strain * 43.0e-3 + release, 1e-12,
                "own growth plus release");
}
END_TEST

START_TEST(opening_is_continuous)
{
    struct cg_layer block = aluminium;
    double interference = 25e-6;
    /* The block outgrows the liner by just the interference. */
    double edge = iron.strain + interference / 49.0e-3;
    block.strain = edge - 1e-9;
    struct cg_bore_growth before =
        grow(CG_SEAT_PRESSED, iron, block, interference, 0);
    block.strain = edge + 1e-9;
    struct cg_bore_growth after =
        grow(CG_SEAT_PRESSED, iron, block, interference, 0);
    ck_assert(!before.open);
    ck_assert(after.open);
    check_within(after.radial, before.radial, 43.0e-3 * 2e-9, "no jump");
}
END_TEST

START_TEST(gas_pressure_widens_every_seat)
{
    for (int seat = CG_SEAT_PARENT; seat <= CG_SEAT_WET; seat++) {
        double without =
            grow((enum cg_seat)seat, iron, aluminium, 25e-6, 0).radial;
        double with =
            grow((enum cg_seat)seat, iron, aluminium, 25e-6, 8e6).radial;
        ck_assert_msg(with > without, "seat %d", seat);
    }
    double alone = grow(CG_SEAT_WET, iron, aluminium, 0, 8e6).radial;
    struct cg_layer same = iron;
    same.inner = 49.0e-3;
    same.outer = 59.0e-3;
    ck_assert_msg(grow(CG_SEAT_CAST_IN, iron, same, 0, 8e6).radial < alone,
                  "a block helps to hold the pressure");
}
END_TEST

START_TEST(gas_pressure_can_close_an_open_joint)
{
    struct cg_layer block = aluminium;
    block.strain = iron.strain + 30e-6 / 49.0e-3; /* 30 um against 25 */
    ck_assert(grow(CG_SEAT_PRESSED, iron, block, 25e-6, 0).open);
    ck_assert(!grow(CG_SEAT_PRESSED, iron, block, 25e-6, 20e6).open);
}
END_TEST

START_TEST(soft_block_leaves_the_liner_alone)
{
    struct cg_layer block = aluminium;
    block.modulus = 1.0;
    check_close(grow(CG_SEAT_CAST_IN, iron, block, 0, 0).radial,
                iron.strain * 43.0e-3, 1e-9, "no block");
}
END_TEST

START_TEST(stiff_block_imposes_its_growth)
{
    struct cg_layer block = aluminium;
    block.modulus = 1e22;
    struct cg_bore_growth growth = grow(CG_SEAT_CAST_IN, iron, block, 0, 0);
    /* The liner's back must follow; Lame carries it to the bore by
     * u(a)/u(b) = 2 a b / ((a^2 + b^2) - nu (b^2 - a^2)). */
    double a = 43.0e-3, b = 49.0e-3;
    double carried = 2 * a * b / (a * a + b * b - 0.26 * (b * b - a * a));
    double want = iron.strain * a + (block.strain - iron.strain) * b * carried;
    check_close(growth.radial, want, 1e-9, "rigid block");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("cylinder");
    TCase *tcase = tcase_create("cylinder");
    tcase_add_test(tcase, area_mean_of_a_constant);
    tcase_add_test(tcase, area_mean_weighs_the_outside_more);
    tcase_add_test(tcase, uniform_heat_and_one_metal_is_free_growth);
    tcase_add_test(tcase, cold_and_unloaded_does_not_move);
    tcase_add_test(tcase, cast_in_lies_between_the_free_growths);
    tcase_add_test(tcase, joint_moves_as_one);
    tcase_add_test(tcase, pressed_is_cast_in_while_the_joint_pushes);
    tcase_add_test(tcase, pressed_joint_opens_and_lets_the_liner_go);
    tcase_add_test(tcase, opening_is_continuous);
    tcase_add_test(tcase, gas_pressure_widens_every_seat);
    tcase_add_test(tcase, gas_pressure_can_close_an_open_joint);
    tcase_add_test(tcase, soft_block_leaves_the_liner_alone);
    tcase_add_test(tcase, stiff_block_imposes_its_growth);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
