/* No butting in series production: every engine's closure at its stock rating
 * stays below the smallest top ring gap its workshop manual allows, with
 * coldgap's defaults only.  The defaults are calibrated on these engines, so
 * they check nothing: the dossier counts them apart.
 *
 * Gaps are from the manuals named; bores, strokes and ratings from memory.
 * Where the defaults make more power at full load than the rating, load is
 * lowered until the rating is met: that is what "stock rating" means. */
#include <math.h>
#include <stdio.h>

#include "case_of.h"
#include "check_close.h"

static const struct engine {
    const char *source;
    double bore, stroke, ratio; /* mm, mm, 1 */
    int cylinders;
    double rpm, kilowatt;       /* rating */
    bool iron;                  /* block, bores cut in it; else liners cast in
                                   an aluminium block */
    double least_gap;           /* mm */
} engines[] = {
    {"Subaru Legacy service manual (2004), 2.0", 92.0, 75.0, 10.0, 4, 5600,
     103, false, 0.20},
    {"Subaru Legacy service manual (2004), 2.5", 99.5, 79.0, 10.0, 4, 5600,
     121, false, 0.20},
    {"Ford Mustang workshop manual (2006), V8-4.6L", 90.2, 90.0, 9.8, 8, 5750,
     224, false, 0.15},
    {"Ford Ranger workshop manual (2008), V6-4.0L", 100.4, 84.4, 9.7, 6, 5250,
     154, true, 0.20},
    {"Ford Focus workshop manual (2002), 2.0 SOHC", 84.8, 88.0, 9.35, 4, 5000,
     82, true, 0.25},
    {"Mercury Sable workshop manual (2000), 3.0 V6", 89.0, 80.0, 9.3, 6, 5250,
     116, true, 0.254},
    {"Nissan Frontier service manual (2001), VG33E", 91.5, 83.0, 8.9, 6, 4800,
     127, true, 0.21},
    {"Honda Accord service manual (2008), V6 3.5", 89.0, 93.0, 10.5, 6, 6200,
     200, false, 0.20},
    {"Mitsubishi Outlander workshop manual (2014), 2.4", 88.0, 97.0, 10.5, 4,
     6000, 124, false, 0.15},
};

static void describe(struct cg_case *c, const struct engine *engine)
{
    char bore[40], stroke[40], ratio[48], cylinders[40], speed[40], seat[40];
    snprintf(bore, sizeof bore, "engine.bore_mm=%g", engine->bore);
    snprintf(stroke, sizeof stroke, "engine.stroke_mm=%g", engine->stroke);
    snprintf(ratio, sizeof ratio, "engine.compression_ratio=%g",
             engine->ratio);
    snprintf(cylinders, sizeof cylinders, "engine.cylinders=%d",
             engine->cylinders);
    snprintf(speed, sizeof speed, "engine.speed_rpm=%g", engine->rpm);
    snprintf(seat, sizeof seat, "bore.seat=%s",
             engine->iron ? "parent" : "cast_in");
    const char *const set[] = {bore, stroke, ratio, cylinders, speed, seat};
    *c = case_of(CG_TEST_CONFIGS "/../tests/program/defaults.cfg", set,
                 COUNT_OF(set));
}

static double power_at(struct cg_case *c, double load)
{
    hold(c, 60.0, load);
    struct cg_duty_run *run = run_of(c);
    double power = run->point[run->start].performance.brake_power;
    cg_duty_run_free(run);
    return power;
}

static double load_for(struct cg_case *c, double watt)
{
    double low = 0.4, high = 1.0;
    if (power_at(c, high) <= watt)
        return high;
    for (int i = 0; i < 12; i++) {
        double middle = 0.5 * (low + high);
        if (power_at(c, middle) > watt)
            high = middle;
        else
            low = middle;
    }
    return high;
}

START_TEST(no_butting_at_the_smallest_gap)
{
    const struct engine *engine = &engines[_i];
    struct cg_case c;
    describe(&c, engine);
    c.duty.start = CG_START_SETTLED;
    hold(&c, 60.0, load_for(&c, engine->kilowatt * 1e3));
    double closure = extremes_of(&c).closure * 1e3;
    char source[96];
    snprintf(source, sizeof source, "calibrated on: %s", engine->source);
    check_most(closure, engine->least_gap, source);
}
END_TEST

/* Series engines run on the fuel they are sold for: none is called knocking at
 * its rating, and none is retarded far for it. */
START_TEST(no_knock_at_the_rating)
{
    struct cg_case c;
    describe(&c, &engines[_i]);
    c.duty.start = CG_START_SETTLED;
    hold(&c, 60.0, load_for(&c, engines[_i].kilowatt * 1e3));
    ck_assert(isnan(c.combustion.retard_deg_per_100kPa));
    struct cg_duty_run *run = run_of(&c);
    const struct cg_performance *at = &run->point[run->start].performance;
    printf("%s: burn %.1f deg late, knock integral %.2f\n", engines[_i].source,
           at->burn50_deg - c.combustion.burn50_deg, at->knock_integral);
    ck_assert_double_lt(at->knock_integral, CG_KNOCK_PREDICTED);
    ck_assert_double_gt(at->knock_integral, 0.05);
    ck_assert_double_lt(at->burn50_deg,
                        c.combustion.burn50_deg + CG_RETARD_MOST);
    cg_duty_run_free(run);
}
END_TEST

/* With equal constants the computed film is thicker than the one that is set,
 * and closes the gap more; each is calibrated by itself. */
START_TEST(flooded_film_closes_more)
{
    struct cg_case c;
    describe(&c, &engines[_i]);
    c.duty.start = CG_START_SETTLED;
    hold(&c, 60.0, load_for(&c, engines[_i].kilowatt * 1e3));
    double as_set = extremes_of(&c).closure;
    c.film_law = CG_FILM_REYNOLDS;
    double flooded = extremes_of(&c).closure;
    printf("%s: closure %.3f mm, film as set; %.3f mm, computed; smallest gap "
           "%.3f mm\n",
           engines[_i].source, as_set * 1e3, flooded * 1e3,
           engines[_i].least_gap);
    ck_assert_double_gt(flooded, as_set);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("production engines");
    TCase *all = tcase_create("workshop manuals");
    tcase_set_timeout(all, 120);
    tcase_add_loop_test(all, no_butting_at_the_smallest_gap, 0,
                        (int)COUNT_OF(engines));
    tcase_add_loop_test(all, no_knock_at_the_rating, 0,
                        (int)COUNT_OF(engines));
    tcase_add_loop_test(all, flooded_film_closes_more, 0,
                        (int)COUNT_OF(engines));
    suite_add_tcase(suite, all);
    return check_run(suite);
}
