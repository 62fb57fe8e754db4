/* The network that thermal.c assembles, counted by hand: capacities at the
 * temperatures they are taken at, what lies between piston and bore, and how
 * friction parts. */
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "thermal.h"

static struct cg_thermal *thermal;

static void build(const struct cg_case *c)
{
    struct cg_error error;
    ck_assert_msg(cg_thermal_create(c, &thermal, &error) == CG_OK, "%s",
                  error.text);
}

/* Capacity of all nodes whose names begin so [J/K]. */
static double capacity_of(const char *name)
{
    const struct cg_network *n = thermal->network;
    double sum = 0.0;
    for (size_t i = 0; i < n->nodes; i++)
        if (strncmp(n->name[i], name, strlen(name)) == 0)
            sum += n->capacity[i];
    return sum;
}

/* A heat capacity of T [K] in J/(kg K), or of 1. */
static void set_heat(struct cg_material *material, bool rising)
{
    material->heat_capacity =
        (struct cg_curve){.points = 2,
                          .temperature = {200.0, 1000.0},
                          .value = {rising ? 200.0 : 1.0,
                                    rising ? 1000.0 : 1.0}};
}

START_TEST(heat_capacity_is_taken_where_the_header_says)
{
    static const struct {
        const char *node;
        double kelvin;
    } bodies[] = {{"crown", 473.15}, {"skirt", 473.15}, {"ring_top", 433.15},
                  {"ring_oil", 433.15}, {"liner", 393.15}, {"block", 393.15}};
    double at_one[COUNT_OF(bodies)];
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    for (int rising = 0; rising < 2; rising++) {
        set_heat(&c.piston_material, rising);
        for (int r = 0; r < CG_RINGS; r++)
            set_heat(&c.ring_material[r], rising);
        set_heat(&c.bore_material, rising);
        set_heat(&c.block_material, rising);
        build(&c);
        for (size_t i = 0; i < COUNT_OF(bodies); i++) {
            double now = capacity_of(bodies[i].node);
            ck_assert_double_gt(now, 0.0);
            if (rising)
                check_close(now / at_one[i], bodies[i].kelvin, 1e-12,
                            "thermal.h, reference temperatures");
            at_one[i] = now;
        }
        cg_thermal_free(thermal);
    }
}
END_TEST

START_TEST(rings_and_bore_weigh_what_they_should)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    build(&c);
    const struct cg_ring_case *ring = &c.ring[CG_RING_TOP];
    double outer = 0.5 * c.engine.bore, inner = outer - ring->depth;
    const struct cg_material *metal = &c.ring_material[CG_RING_TOP];
    check_close(capacity_of("ring_top"),
                metal->density * cg_curve_at(&metal->heat_capacity, 433.15) *
                    CG_PI * (outer * outer - inner * inner) * ring->width,
                1e-12, "density, heat capacity, volume");
    inner = outer;
    outer += c.bore.wall_thickness;
    metal = &c.bore_material;
    check_close(capacity_of("liner"),
                metal->density * cg_curve_at(&metal->heat_capacity, 393.15) *
                    CG_PI * (outer * outer - inner * inner) *
                    thermal->bore.grid.length,
                1e-12, "density, heat capacity, volume");
    cg_thermal_free(thermal);
}
END_TEST

/* Sum of the links from nodes named so to the bore surface [W/K]. */
static double links_to_bore(const char *name)
{
    const struct cg_network *n = thermal->network;
    double sum = 0.0;
    for (size_t i = 0; i < n->links; i++)
        if (strncmp(n->name[n->link_a[i]], name, strlen(name)) == 0 &&
            strncmp(n->name[n->link_b[i]], "liner", 5) == 0)
            sum += n->link_conductance[i];
    return sum;
}

START_TEST(piston_gives_heat_across_gas_and_oil)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    c.piston.skirt_length = 0.08 * c.engine.bore; /* stays in the bore */
    c.piston.crown_thickness = 3.0 * c.piston.top_land;
    build(&c);
    double around = CG_PI * c.engine.bore;
    check_close(links_to_bore("skirt"),
                0.13 / c.piston.skirt_film * c.piston.skirt_share * around *
                    c.piston.skirt_length,
                1e-9, "oil at 100 to 150 C, 0.13 W/(m K)");
    /* a thick crown leaves the lower 0.4 of the top land to the belt; hot, at
     * 200 and 120 C, the clearance is less */
    double closed = c.engine.bore *
                    (cg_material_strain(&c.piston_material, 473.15) -
                     cg_material_strain(&c.bore_material, 393.15));
    check_close(links_to_bore("top_land"),
                0.05 / (0.5 * (c.piston.land_clearance - closed)) * around *
                    0.4 * c.piston.top_land,
                0.01, "air at 650 K, 0.05 W/(m K)");
    cg_thermal_free(thermal);
}
END_TEST

START_TEST(friction_parts_sum_to_one)
{
    static const double part[] = {0.13, 0.09, 0.28, 0.50};
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    double sum = 0.0, shares = 0.0;
    build(&c);
    for (int i = 0; i <= CG_RINGS; i++) {
        check_close(cg_friction_part[i], part[i], 1e-12,
                    "common practice, no source");
        sum += cg_friction_part[i];
    }
    check_close(sum, 1.0, 1e-12, "all of it");
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        shares += thermal->bore.friction_share[s];
    check_band(shares, 0.85, 1.0, "all but what the skirt rubs below the bore");
    cg_thermal_free(thermal);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("thermal network, counted");
    TCase *all = tcase_create("thermal");
    tcase_add_test(all, heat_capacity_is_taken_where_the_header_says);
    tcase_add_test(all, rings_and_bore_weigh_what_they_should);
    tcase_add_test(all, piston_gives_heat_across_gas_and_oil);
    tcase_add_test(all, friction_parts_sum_to_one);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
