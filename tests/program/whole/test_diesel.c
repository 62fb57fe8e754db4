/* Engines fired by compression, as wholes: levels and gaps that others print,
 * what a gallery, a steel piston and a keystone ring do, and what boost does.
 */
#include "case_of.h"
#include "check_close.h"
#include "clearance.h"
#include "constants.h"
#include "operating.h"

#define REVERSAL                                                               \
    "measured near 200 C (+-25) where a diesel's top ring turns: NASA Lewis, " \
    "Research and Technology (1996), second hand"
#define WORKSHOP                                                               \
    "workshop minimum, TM 9-2320-289-34: 6.2 litre V8 diesel, unboosted, iron"

static struct cg_extremes settled(const char *file, const char *const *set,
                                  size_t sets)
{
    struct cg_case c = case_of(file, set, sets);
    c.duty.start = CG_START_SETTLED;
    hold(&c, 20.0, 1.0);
    return extremes_of(&c);
}

static struct cg_extremes boosted(const char *file, double boost)
{
    char text[64];
    const char *set[] = {text};
    snprintf(text, sizeof text, "charge.boost_kPa=%.9g", boost);
    return settled(file, set, 1);
}

/* The level is no engine's in particular: a heavy one's at its own rating. */
START_TEST(bore_where_the_ring_turns)
{
    double celsius =
        settled(TRUCK_SIX, NULL, 0).liner_top_max - CG_ZERO_CELSIUS;
    check_band(celsius, 175.0, 225.0, REVERSAL);
}
END_TEST

/* An engine in series does not touch at its minimum gap. */
START_TEST(workshop_minimum)
{
    static const char *const set[] = {
        "engine.bore_mm=101",    "engine.stroke_mm=97",
        "engine.speed_rpm=3600", "engine.compression_ratio=21",
        "charge.charger=none",   "charge.boost_kPa=0",
        "piston.gallery=false",  "rings.top.keystone_deg=0"};
    double closure = settled(PICKUP_EIGHT, set, COUNT_OF(set)).closure;
    check_most(1e3 * closure, 0.300, WORKSHOP);
    ck_assert(closure > 0.0);
}
END_TEST

/* More boost closes the gap more, slower than the air it brings. */
START_TEST(closure_over_boost)
{
    static const char *const files[] = {TRUCK_SIX, PICKUP_EIGHT};
    for (int f = 0; f < 2; f++) {
        double before = boosted(files[f], 0.0).closure, first = before;
        for (double boost = 100.0; boost <= 400.0; boost += 100.0) {
            double closure = boosted(files[f], boost).closure;
            ck_assert(closure > before);
            ck_assert(closure / first < 1.0 + boost / 101.325);
            before = closure;
        }
        ck_assert(before > 1.8 * first);
    }
}
END_TEST

/* A7 of the trade's piston handbooks, from memory: 25 to 50 K at the top
 * groove, held to twice either way. */
START_TEST(a_gallery_cools_the_groove)
{
    static const char *const none[] = {"piston.gallery=false"};
    static const char *const weak[] = {"piston.gallery_film_W_m2K=1500"};
    struct cg_extremes with = settled(PICKUP_EIGHT, NULL, 0);
    double less =
        settled(PICKUP_EIGHT, none, 1).groove_top_max - with.groove_top_max;
    ck_assert_msg(less > 12.5 && less < 100.0, "%g K", less);
    double weaker = settled(PICKUP_EIGHT, weak, 1).groove_top_max;
    ck_assert(weaker > with.groove_top_max);
}
END_TEST

/* Steel leads heat away worse and grows less. */
START_TEST(a_steel_piston)
{
    static const char *const steel[] = {"piston.alloy=steel_42crmo4"};
    struct cg_extremes is = settled(PICKUP_EIGHT, steel, 1);
    struct cg_extremes was = settled(PICKUP_EIGHT, NULL, 0);
    ck_assert(is.crown_max > was.crown_max + 20.0);
    ck_assert(is.clearance.land[0] > was.clearance.land[0]);
}
END_TEST

/* Its flank is longer by its slope; its groove closes where the piston grows
 * more than the bore. */
START_TEST(a_keystone_ring)
{
    struct cg_case c = case_of(PICKUP_EIGHT, NULL, 0);
    double opened = cg_clearance_keystone(&c, CG_RING_TOP, 0.002, 0.001);
    check_close(opened, 2.0 * tan(7.5 * CG_PI / 180.0) * 51.5e-6, 1e-9,
                "by hand");
    ck_assert(cg_clearance_keystone(&c, CG_RING_SECOND, 0.002, 0.001) == 0.0);
    static const char *const plain[] = {"rings.top.keystone_deg=0"};
    struct cg_extremes is = settled(PICKUP_EIGHT, NULL, 0);
    struct cg_extremes was = settled(PICKUP_EIGHT, plain, 1);
    ck_assert(is.clearance.side[CG_RING_TOP] < was.clearance.side[CG_RING_TOP]);
    ck_assert(is.ring_top_max > was.ring_top_max);
    ck_assert(is.ring_top_max < was.ring_top_max + 1.0);
}
END_TEST

/* Load sets the fuel, and no throttle the air. */
START_TEST(load_is_fuel)
{
    struct cg_case c = case_of(TRUCK_SIX, NULL, 0);
    struct cg_operating at = cg_operating_at(&c, c.engine.speed, 1.0);
    struct cg_charge_state full, charge;
    cg_operating_charge(&c, &at, &full);
    ck_assert(full.lambda == c.fuel.lambda);
    double before = c.fuel.lambda;
    for (double load = 0.9; load > -0.05; load -= 0.1) {
        at.load = fmax(load, 0.0);
        cg_operating_charge(&c, &at, &charge);
        ck_assert(charge.manifold_pressure >=
                  c.charge.ambient_pressure * (1.0 - 1e-12));
        ck_assert(charge.lambda > before || charge.lambda == CG_LAMBDA_MOST);
        double air = charge.manifold_pressure / charge.manifold_temperature /
                     (full.manifold_pressure / full.manifold_temperature);
        if (charge.lambda < CG_LAMBDA_MOST)
            check_close(air * full.lambda / charge.lambda, at.load, 1e-12,
                        "share of full load's fuel");
        before = charge.lambda;
    }
    ck_assert(before == CG_LAMBDA_MOST);
}
END_TEST

/* Chen and Flynn's own engine. */
START_TEST(friction)
{
    check_close(cg_friction_mep_compression(160e5, 10.0), 2.557e5, 1e-12,
                "by hand");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("diesel");
    TCase *tcase = tcase_create("diesel");
    tcase_set_timeout(tcase, 600);
    tcase_add_test(tcase, bore_where_the_ring_turns);
    tcase_add_test(tcase, workshop_minimum);
    tcase_add_test(tcase, closure_over_boost);
    tcase_add_test(tcase, a_gallery_cools_the_groove);
    tcase_add_test(tcase, a_steel_piston);
    tcase_add_test(tcase, a_keystone_ring);
    tcase_add_test(tcase, load_is_fuel);
    tcase_add_test(tcase, friction);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
