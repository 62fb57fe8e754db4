/* Ring materials and faces as shipped, against what is published of them. */
#include <string.h>

#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "material_library.h"

static struct cg_material_library library_of(void)
{
    struct cg_material_library library;
    struct cg_error error = {0};
    ck_assert_int_eq(
        cg_config_read_library(IRON_SIX, NULL, 0, &library, &error), CG_OK);
    return library;
}

static const struct cg_material *
ring_named(const struct cg_material_library *library, const char *name)
{
    for (size_t i = 0; i < library->rings; i++)
        if (strcmp(library->ring[i].name, name) == 0)
            return &library->ring[i];
    ck_abort_msg("no ring material %s", name);
    return NULL;
}

static const struct cg_face *
face_named(const struct cg_material_library *library, const char *name)
{
    for (size_t i = 0; i < library->faces; i++)
        if (strcmp(library->face[i].name, name) == 0)
            return &library->face[i];
    ck_abort_msg("no face %s", name);
    return NULL;
}

START_TEST(service_limit_of_spring_steel)
{
    struct cg_material_library library = library_of();
    /* Analysis and Design of Machine Elements, table 14.2: 55CrSi wire */
    ck_assert_double_eq_tol(ring_named(&library, "plain_steel")->hot_limit,
                            250.0 + CG_ZERO_CELSIUS, 1e-9);
    cg_material_library_free(&library);
}
END_TEST

/* No face is let beyond the heat at which it is known to change. */
static const struct {
    const char *face;
    double low, high; /* where the change begins [C] */
    const char *source;
} changes[] = {
    {"sprayed_molybdenum", 400.0, 500.0,
     "molybdenum oxidises in air above some 400 to 500 C; from memory"},
    {"chromium", 200.0, 320.0, "ASM Handbook vol. 5, hard chromium softens "
                               "above some 200 to 320 C; from memory"},
    {"nitrided", 500.0, 550.0, "gas nitriding is done at 500 to 550 C (ASM "
                               "Handbook vol. 4); from memory"},
    {"vapour_tin", 500.0, 550.0, "titanium nitride oxidises in air above some "
                                 "500 to 550 C; from memory"},
};

static double limit_of(const struct cg_material_library *library,
                       const char *face)
{
    return face_named(library, face)->temperature.high - CG_ZERO_CELSIUS;
}

START_TEST(at_the_heat_of_change)
{
    struct cg_material_library library = library_of();
    check_band(limit_of(&library, changes[_i].face), changes[_i].low,
               changes[_i].high, changes[_i].source);
    cg_material_library_free(&library);
}
END_TEST

START_TEST(below_the_heat_of_change)
{
    struct cg_material_library library = library_of();
    check_most(limit_of(&library, "vapour_crn"), 650.0,
               "chromium nitride oxidises in air above some 650 to 700 C; "
               "from memory");
    cg_material_library_free(&library);
}
END_TEST

/* Conductivities of the solid stuff: a coat is no better than that. */
START_TEST(coat_conducts_less_than_the_solid)
{
    struct cg_material_library library = library_of();
    check_most(face_named(&library, "sprayed_molybdenum")->conductivity, 138.0,
               "ASM Metals Handbook, molybdenum; from memory");
    check_most(face_named(&library, "chromium")->conductivity, 94.0,
               "ASM Metals Handbook, chromium; from memory");
    check_band(face_named(&library, "vapour_tin")->conductivity, 19.0, 29.0,
               "titanium nitride, 19 to 29; from memory");
    check_band(face_named(&library, "vapour_crn")->conductivity, 10.0, 20.0,
               "chromium nitride, 10 to 20; from memory");
    cg_material_library_free(&library);
}
END_TEST

/* Vickers hardness: vapour-deposited nitrides above nitrided steel above
 * chromium above sprayed molybdenum (bands from memory). */
START_TEST(order_of_hardness)
{
    static const char *const order[] = {"vapour_tin", "vapour_crn", "nitrided",
                                        "chromium", "sprayed_molybdenum"};
    struct cg_material_library library = library_of();
    for (size_t i = 1; i < COUNT_OF(order); i++)
        ck_assert_double_gt(face_named(&library, order[i - 1])->hardness,
                            face_named(&library, order[i])->hardness);
    cg_material_library_free(&library);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("faces");
    TCase *all = tcase_create("published values");
    tcase_set_timeout(all, 60);
    tcase_add_test(all, service_limit_of_spring_steel);
    tcase_add_loop_test(all, at_the_heat_of_change, 0, COUNT_OF(changes));
    tcase_add_test(all, below_the_heat_of_change);
    tcase_add_test(all, coat_conducts_less_than_the_solid);
    tcase_add_test(all, order_of_hardness);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
