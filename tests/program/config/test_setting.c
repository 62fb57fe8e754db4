/* The table of settings, and the words and checks built upon it. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case_check.h"
#include "check_close.h"
#include "nearest.h"
#include "setting.h"
#include "setting_key.h"

/* An engine on which the defaults that follow bore and stroke make sense. */
static void sample_case(struct cg_case *c)
{
    cg_case_begin(c);
    c->engine.bore = 86e-3;
    c->engine.stroke = 86e-3;
    c->engine.speed = 6500.0 / 60.0;
    ck_assert_ptr_null(cg_case_complete(c));
}

static size_t size_of(const struct cg_setting *setting)
{
    switch (setting->kind) {
    case CG_REAL:
        return sizeof(double);
    case CG_SWITCH:
        return sizeof(bool);
    case CG_NAME:
        return CG_NAME_LENGTH;
    case CG_WORDS:
        return CG_WORDS_LENGTH;
    case CG_COUNT:
    case CG_CHOICE:
        break;
    }
    return sizeof(int);
}

START_TEST(rows_are_complete)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    ck_assert_uint_gt(count, 100);
    for (size_t i = 0; i < count; i++) {
        const struct cg_setting *s = &settings[i];
        ck_assert_msg(cg_unit_find(s->dimension, s->unit) != NULL,
                      "%s: unit %s is not of its dimension", s->path, s->unit);
        ck_assert_msg(s->doc[0] != '\0' && s->source[0] != '\0',
                      "%s: doc or source is empty", s->path);
        ck_assert_msg(s->offset + size_of(s) <= sizeof(struct cg_case),
                      "%s: outside the case", s->path);
        ck_assert_ptr_eq(cg_setting_find(s->path), s);
        if (s->kind == CG_REAL || s->kind == CG_COUNT)
            ck_assert_msg(s->low < s->high, "%s: band", s->path);
        bool free_text = s->kind == CG_NAME && s->rule == CG_OPTIONAL;
        if (s->kind == CG_NAME || s->kind == CG_WORDS || s->kind == CG_CHOICE)
            ck_assert_msg(s->text != NULL && (s->text[0] == '\0') == free_text,
                          "%s: text", s->path);
    }
}
END_TEST

START_TEST(fields_do_not_overlap)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < i; j++) {
            const struct cg_setting *a = &settings[i], *b = &settings[j];
            ck_assert_msg(a->offset + size_of(a) <= b->offset ||
                              b->offset + size_of(b) <= a->offset,
                          "%s and %s share a field", a->path, b->path);
        }
}
END_TEST

START_TEST(defaults_are_inside_their_bands)
{
    struct cg_case c;
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    sample_case(&c);
    for (size_t i = 0; i < count; i++) {
        const struct cg_setting *s = &settings[i];
        double value = cg_setting_get(s, &c);
        if (s->kind == CG_NAME || s->kind == CG_WORDS || s->rule == CG_OPTIONAL)
            continue;
        if (s->rule == CG_PER_ALLOY)
            value = s->fallback * c.engine.bore;
        const struct cg_unit *unit = cg_unit_find(s->dimension, s->unit);
        check_band(cg_unit_from_si(unit, value), s->low - 1e-9,
                   s->high + 1e-9, s->path);
    }
}
END_TEST

START_TEST(values_come_back)
{
    struct cg_case c;
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    cg_case_begin(&c);
    for (size_t i = 0; i < count; i++) {
        if (settings[i].kind == CG_NAME || settings[i].kind == CG_WORDS)
            continue;
        cg_setting_put(&settings[i], &c, 1.0);
        ck_assert_msg(cg_setting_get(&settings[i], &c) == 1.0, "%s",
                      settings[i].path);
    }
}
END_TEST

START_TEST(choices_match_their_enums)
{
    const struct cg_setting *seat = cg_setting_find("bore.seat");
    ck_assert_int_eq(cg_setting_choice(seat, "parent"), CG_SEAT_PARENT);
    ck_assert_int_eq(cg_setting_choice(seat, "cast_in"), CG_SEAT_CAST_IN);
    ck_assert_int_eq(cg_setting_choice(seat, "pressed"), CG_SEAT_PRESSED);
    ck_assert_int_eq(cg_setting_choice(seat, "wet"), CG_SEAT_WET);
    ck_assert_int_eq(cg_setting_choice(seat, "cast"), -1);
    const struct cg_setting *start = cg_setting_find("duty.start");
    ck_assert_int_eq(cg_setting_choice(start, "cold"), CG_START_COLD);
    ck_assert_int_eq(cg_setting_choice(start, "cruise"), CG_START_CRUISE);
    ck_assert_int_eq(cg_setting_choice(start, "settled"), CG_START_SETTLED);
    const struct cg_setting *charger = cg_setting_find("charge.charger");
    ck_assert_int_eq(cg_setting_choice(charger, "none"), CG_CHARGER_NONE);
    ck_assert_int_eq(cg_setting_choice(charger, "turbine"),
                     CG_CHARGER_TURBINE);
    ck_assert_int_eq(cg_setting_choice(charger, "belt"), CG_CHARGER_BELT);
}
END_TEST

/* Every key in every unit is found again, as itself. */
START_TEST(keys_resolve)
{
    size_t count, unit_count;
    const struct cg_setting *settings = cg_settings(&count);
    const struct cg_unit *units = cg_units(&unit_count);
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < unit_count; j++) {
            char path[128], trouble[512];
            struct cg_key key;
            if (units[j].dimension != settings[i].dimension)
                continue;
            cg_key_write(&settings[i], &units[j], true, path, sizeof path);
            ck_assert_msg(cg_key_find(path, &key, trouble, sizeof trouble),
                          "%s: %s", path, trouble);
            ck_assert_ptr_eq(key.setting, &settings[i]);
            ck_assert_ptr_eq(key.unit, &units[j]);
        }
}
END_TEST

START_TEST(distances)
{
    ck_assert_uint_eq(cg_edit_distance("", ""), 0);
    ck_assert_uint_eq(cg_edit_distance("", "ring"), 4);
    ck_assert_uint_eq(cg_edit_distance("bost", "boost"), 1);
    ck_assert_uint_eq(cg_edit_distance("boosst", "boost"), 1);
    ck_assert_uint_eq(cg_edit_distance("boast", "boost"), 1);
    ck_assert_uint_eq(cg_edit_distance("bosot", "boost"), 1);
    ck_assert_uint_eq(cg_edit_distance("kitten", "sitting"), 3);
    const char *const names[] = {"woschni", "hohenberg", "annand"};
    char list[64];
    cg_nearest_list("hohenburg", names, 3, list, sizeof list);
    ck_assert_str_eq(list, "hohenberg, woschni, annand");
    ck_assert(cg_near("bost_kPa", "boost_kPa") && cg_near("laod", "load"));
    ck_assert(cg_near("afr", "lambda"));
    ck_assert(!cg_near("notes", "bore_mm") && !cg_near("c", "a"));
    cg_nearest_hint("hohenburg", names, 3, list, sizeof list);
    ck_assert_str_eq(list, "the nearest is hohenberg");
    cg_nearest_hint("x", names, 3, list, sizeof list);
    ck_assert_str_eq(list, "allowed: annand, woschni, hohenberg");
    char small[12];
    cg_nearest_list("hohenburg", names, 3, small, sizeof small);
    ck_assert_uint_lt(strlen(small), sizeof small);
}
END_TEST

START_TEST(a_usual_engine_makes_sense)
{
    struct cg_case c;
    struct cg_case_problem problem[CG_CASE_PROBLEMS];
    sample_case(&c);
    ck_assert_uint_eq(cg_case_check(&c, problem), 0);
    cg_case_begin(&c); /* nearly everything missing: no complaint either */
    ck_assert_uint_eq(cg_case_check(&c, problem), 0);
}
END_TEST

/* Pushes one setting after the other out of all sense, both ways: what is
 * said must name real settings, and the limit told must be one that is kept. */
START_TEST(complaints_name_settings)
{
    size_t count, complaints = 0;
    const struct cg_setting *settings = cg_settings(&count);
    for (size_t i = 0; i < 2 * count; i++) {
        const struct cg_setting *s = &settings[i / 2];
        struct cg_case c;
        struct cg_case_problem problem[CG_CASE_PROBLEMS];
        if (s->kind != CG_REAL)
            continue;
        sample_case(&c);
        cg_setting_put(s, &c, cg_unit_to_si(cg_unit_find(s->dimension, s->unit),
                                            i % 2 == 0 ? s->low : s->high));
        size_t found = cg_case_check(&c, problem);
        complaints += found;
        for (size_t j = 0; j < found; j++) {
            const struct cg_setting *at = cg_setting_find(problem[j].path);
            ck_assert_msg(at != NULL, "%s", problem[j].path);
            ck_assert_msg(problem[j].other == NULL ||
                              cg_setting_find(problem[j].other) != NULL,
                          "%s", problem[j].other);
            ck_assert_msg(strlen(problem[j].text) > 10, "%s", s->path);
        }
        /* one at fault by itself is cured by a value just inside the limit */
        if (found != 1 || strcmp(problem[0].path, s->path) != 0)
            continue;
        double limit = problem[0].limit;
        double inside = i % 2 == 0 ? limit * 1.001 : limit * 0.999;
        cg_setting_put(s, &c, inside);
        ck_assert_msg(cg_case_check(&c, problem) == 0, "%s: %g is not inside",
                      s->path, limit);
    }
    ck_assert_uint_gt(complaints, 20);
}
END_TEST

/* Sizes of units by definition. */
START_TEST(sizes_of_units)
{
    static const struct {
        enum cg_dimension dimension;
        const char *unit;
        double size;
    } list[] = {{CG_PRESSURE, "kPa", 1e3}, {CG_PRESSURE, "MPa", 1e6},
                {CG_PRESSURE, "bar", 1e5}, {CG_TIME, "min", 60.0},
                {CG_TIME, "h", 3600.0},    {CG_LENGTH, "in", 25.4e-3},
                {CG_FLOW, "g_s", 1e-3},    {CG_FLOW, "kg_h", 1.0 / 3600.0},
                {CG_POWER, "kW", 1e3}};
    for (size_t i = 0; i < sizeof list / sizeof list[0]; i++) {
        const struct cg_unit *unit =
            cg_unit_find(list[i].dimension, list[i].unit);
        ck_assert_ptr_nonnull(unit);
        check_close(cg_unit_to_si(unit, 1.0), list[i].size, 1e-14,
                    "BIPM, The International System of Units (2019); the inch "
                    "by definition");
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("setting");
    TCase *tcase = tcase_create("setting");
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, rows_are_complete);
    tcase_add_test(tcase, fields_do_not_overlap);
    tcase_add_test(tcase, defaults_are_inside_their_bands);
    tcase_add_test(tcase, values_come_back);
    tcase_add_test(tcase, choices_match_their_enums);
    tcase_add_test(tcase, keys_resolve);
    tcase_add_test(tcase, distances);
    tcase_add_test(tcase, a_usual_engine_makes_sense);
    tcase_add_test(tcase, complaints_name_settings);
    tcase_add_test(tcase, sizes_of_units);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
