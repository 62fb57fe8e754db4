#include <math.h>
#include <string.h>

#include "case_ready.h"
#include "check_close.h"
#include "setting.h"

static void set_flat(struct cg_curve *curve, double value)
{
    *curve = (struct cg_curve){.points = 1, .temperature = {300.0},
                               .value = {value}};
}

/* Round numbers of an iron; only that they are there matters here. */
static struct cg_material iron(void)
{
    struct cg_material metal = {.density = 7200.0, .poisson = 0.26,
                                .hot_limit = 600.0};
    set_flat(&metal.expansion, 11e-6);
    set_flat(&metal.conductivity, 45.0);
    set_flat(&metal.heat_capacity, 480.0);
    set_flat(&metal.modulus, 110e9);
    return metal;
}

static struct cg_case good(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.bore = 0.086;
    c.engine.stroke = 0.086;
    c.engine.speed = 100.0;
    c.bore.seat = CG_SEAT_PARENT;
    c.duty.segments = 1;
    c.duty.segment[0] = (struct cg_segment){10.0, 60.0, 100.0, 0.5, 1.0, 1.0,
                                            NAN,  0.0,  0.0,   0.0};
    c.piston_material = c.bore_material = iron();
    for (int ring = 0; ring < CG_RINGS; ring++)
        c.ring_material[ring] = iron();
    return c;
}

/* The case must be refused, with a line that names `path`. */
static void refused(struct cg_case c, const char *path)
{
    struct cg_error error = {CG_OK, ""};
    ck_assert_msg(cg_case_ready(&c, &error) == CG_BAD_INPUT,
                  "%s: not refused", path);
    ck_assert_msg(strstr(error.text, path) == error.text, "%s: told as %s",
                  path, error.text);
}

START_TEST(a_good_case_is_completed)
{
    struct cg_case c = good();
    struct cg_error error = {CG_OK, ""};
    ck_assert(isnan(c.engine.rod));
    ck_assert_msg(cg_case_ready(&c, &error) == CG_OK, "%s", error.text);
    check_close(c.engine.rod, 1.65 * 0.086, 1e-12, "default of engine.rod");
}
END_TEST

START_TEST(what_is_required_is_missed)
{
    struct cg_case c = good();
    c.engine.bore = NAN;
    refused(c, "engine.bore");
    c = good();
    c.engine.speed = NAN;
    refused(c, "engine.speed");
}
END_TEST

/* Every number of the table, below and above its band and as NaN. */
START_TEST(every_band_is_kept)
{
    size_t count, tried = 0;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++) {
        const struct cg_setting *at = &settings[i];
        const struct cg_unit *unit = cg_unit_find(at->dimension, at->unit);
        double past = 0.01 * (at->high - at->low);
        struct cg_case c = good();
        if (at->kind != CG_REAL && at->kind != CG_COUNT)
            continue;
        if (at->kind == CG_COUNT)
            past = 1.0;
        cg_setting_put(at, &c, cg_unit_to_si(unit, at->high + past));
        refused(c, at->path);
        cg_setting_put(at, &c, cg_unit_to_si(unit, at->low - past));
        refused(c, at->path);
        if (at->kind == CG_REAL && at->rule == CG_FIXED) {
            cg_setting_put(at, &c, NAN);
            refused(c, at->path);
        }
        tried++;
    }
    ck_assert_uint_gt(tried, 60);
}
END_TEST

START_TEST(names_and_choices_are_known)
{
    struct cg_case c = good();
    strcpy(c.fuel.name, "water");
    refused(c, "fuel.name");
    c = good();
    strcpy(c.combustion.heat_transfer, "guess");
    refused(c, "combustion.heat_transfer");
    c = good();
    c.bore.seat = 9;
    refused(c, "bore.seat");
    c.bore.seat = -1;
    refused(c, "bore.seat");
}
END_TEST

START_TEST(segments_are_looked_at)
{
    static const double bad[][8] = {
        {0.0, 60.0, 60.0, 1.0, 1.0, 1.0, NAN, 0.0},
        {10.0, 0.0, 60.0, 1.0, 1.0, 1.0, NAN, 0.0},
        {10.0, 60.0, 160.0, 1.0, 1.0, 1.0, NAN, 0.0},
        {10.0, 60.0, 60.0, 1.1, 1.0, 1.0, NAN, 0.0},
        {10.0, 60.0, 60.0, 1.0, -0.1, 1.0, NAN, 0.0},
        {10.0, 60.0, 60.0, 1.0, 1.0, 0.0, NAN, 0.0},
        {10.0, 60.0, 60.0, 1.0, 1.0, 1.0, 90.0, 0.0},
        {NAN, 60.0, 60.0, 1.0, 1.0, 1.0, NAN, 0.0},
        {10.0, 60.0, 60.0, 1.0, 1.0, 1.0, NAN, 1.05},
        {10.0, 60.0, 60.0, 1.0, 1.0, 1.0, NAN, 2.3},
    };
    struct cg_case c = good();
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        const double *b = bad[i];
        c.duty.segment[0] =
            (struct cg_segment){b[0], b[1], b[2], b[3],
                                b[4], b[5], b[6], b[7], 0.0, 0.0};
        refused(c, "duty.segments[0]");
    }
    c = good();
    c.duty.segment[0].nitrous = 1.1;
    refused(c, "duty.segments[0]");
    c.duty.segments = 0;
    refused(c, "duty.segments");
    c.duty.segments = CG_SEGMENTS + 1;
    refused(c, "duty.segments");

    struct cg_course_row row[2] = {{0.0, {60.0, 1.0, NAN, NAN, NAN, NAN, NAN,
                                          NAN, NAN, NAN}},
                                   {5.0, {60.0, 1.0, 1.2, 350.0, 0.9, 12.0,
                                          370.0, 330.0, 0.5, NAN}}};
    struct cg_course course = {.rows = 2, .row = row};
    struct cg_error error;
    c.duty.course = &course;
    ck_assert_int_eq(cg_case_ready(&c, &error), CG_OK);
    course.rows = 1;
    refused(c, "duty.course");
    course.rows = 2;
    row[1].time = -1.0;
    refused(c, "duty.course");
    row[1].time = 5.0;
    row[1].of[CG_CHANNEL_LAMBDA] = 2.5;
    refused(c, "duty.course");
}
END_TEST

START_TEST(metals_are_looked_at)
{
    struct cg_case c = good();
    c.ring_material[CG_RING_SECOND].expansion.points = 0;
    refused(c, "rings.second.material");
    c = good();
    c.piston_material.conductivity.value[0] = NAN;
    refused(c, "piston.alloy");
    c = good();
    c.bore_material.modulus.points = 2; /* the second at 0 K: falling */
    c.bore_material.modulus.value[1] = 1e9;
    refused(c, "bore.material");
    c = good();
    c.bore_material.density = 0.0;
    refused(c, "bore.material");
    c = good();
    c.bore.seat = CG_SEAT_PRESSED; /* and no block is there */
    refused(c, "bore.block_material");
    c.block_material = iron();
    ck_assert(cg_case_ready(&c, NULL) == CG_OK);
}
END_TEST

START_TEST(parts_that_do_not_fit_are_told)
{
    struct cg_case c = good();
    c.engine.rod = 0.04; /* shorter than the crank's throw allows */
    refused(c, "engine.rod");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("case_ready");
    TCase *tests = tcase_create("case_ready");
    tcase_add_test(tests, a_good_case_is_completed);
    tcase_add_test(tests, what_is_required_is_missed);
    tcase_add_test(tests, every_band_is_kept);
    tcase_add_test(tests, names_and_choices_are_known);
    tcase_add_test(tests, segments_are_looked_at);
    tcase_add_test(tests, metals_are_looked_at);
    tcase_add_test(tests, parts_that_do_not_fit_are_told);
    suite_add_tcase(suite, tests);
    return check_run(suite);
}
