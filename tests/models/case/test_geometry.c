/* Where the rings sit and how far the bore reaches, by hand. */
#include "check_close.h"

#include "geometry.h"

static struct cg_case piston(void)
{
    struct cg_case c = {.engine = {.bore = 0.086, .stroke = 0.090,
                                   .rod = 0.145, .compression_ratio = 9.5}};
    c.piston.top_land = 6.0e-3;
    c.piston.second_land = 4.0e-3;
    c.piston.third_land = 2.5e-3;
    c.ring[CG_RING_TOP].width = 1.2e-3;
    c.ring[CG_RING_SECOND].width = 1.5e-3;
    c.ring[CG_RING_OIL].width = 2.8e-3;
    c.ring[CG_RING_TOP].depth = 3.1e-3;
    return c;
}

START_TEST(offsets_add_up)
{
    struct cg_case c = piston();
    const char *const source = "lands and widths, by hand";
    check_within(cg_ring_offset(&c, CG_RING_TOP), 6.0e-3, 1e-15, source);
    check_within(cg_ring_offset(&c, CG_RING_SECOND), 11.2e-3, 1e-15, source);
    check_within(cg_ring_offset(&c, CG_RING_OIL), 15.2e-3, 1e-15, source);
    check_within(cg_skirt_offset(&c), 18.0e-3, 1e-15, source);
}
END_TEST

START_TEST(bore_reaches_a_tenth_of_its_diameter_below_the_rings)
{
    struct cg_case c = piston();
    check_within(cg_bore_length(&c), 0.090 + 0.018 + 0.0086, 1e-15,
                 "what geometry.h states, by hand");
}
END_TEST

START_TEST(radii_and_crank)
{
    struct cg_case c = piston();
    struct cg_crank crank = cg_case_crank(&c);
    check_within(cg_ring_outer_radius(&c), 0.043, 1e-15, "half the bore");
    check_within(cg_ring_inner_radius(&c, CG_RING_TOP), 0.0399, 1e-15,
                 "less the depth");
    ck_assert(crank.bore == 0.086 && crank.stroke == 0.090);
    ck_assert(crank.rod == 0.145 && crank.compression_ratio == 9.5);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("geometry");
    TCase *tcase = tcase_create("geometry");
    tcase_add_test(tcase, offsets_add_up);
    tcase_add_test(tcase, bore_reaches_a_tenth_of_its_diameter_below_the_rings);
    tcase_add_test(tcase, radii_and_crank);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
