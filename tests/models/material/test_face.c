/* Ring faces: what goes on what, and the coat's resistance. */
#include <string.h>

#include "check_close.h"
#include "face.h"

static struct cg_face face_on(const char *first, const char *second)
{
    struct cg_face face = {.bases = 2, .hardness = NAN, .conductivity = 23.0};
    strcpy(face.on[0], first);
    strcpy(face.on[1], second);
    return face;
}

START_TEST(goes_on_kinds_and_names)
{
    struct cg_material steel = {.name = "mine", .kind = "steel"};
    struct cg_face coat = face_on("iron", "steel");
    struct cg_face special = face_on("iron", "mine");
    struct cg_face other = face_on("iron", "nitriding_steel");
    ck_assert(cg_face_goes_on(&coat, &steel));
    ck_assert(cg_face_goes_on(&special, &steel));
    ck_assert(!cg_face_goes_on(&other, &steel));
    coat.bases = 1; /* what stands beyond the count does not count */
    ck_assert(!cg_face_goes_on(&coat, &steel));
}
END_TEST

START_TEST(resistance_of_a_slab)
{
    struct cg_face face = face_on("iron", "steel");
    ck_assert_double_eq(cg_face_resistance(&face), 0.0);
    face.thickness = 1.38e-4;
    check_close(cg_face_resistance(&face), 6e-6, 1e-14, "thickness over k");
}
END_TEST

START_TEST(hardness_is_the_metals_without_a_coat)
{
    struct cg_material iron = {.hardness = 251.0};
    struct cg_face face = face_on("iron", "steel");
    ck_assert_double_eq(cg_face_hardness(&face, &iron), 251.0);
    face.hardness = 1850.0;
    ck_assert_double_eq(cg_face_hardness(&face, &iron), 1850.0);
    ck_assert_str_eq(cg_face_hardness_class(251.0), "soft");
    ck_assert_str_eq(cg_face_hardness_class(500.0), "medium");
    ck_assert_str_eq(cg_face_hardness_class(900.0), "hard");
    ck_assert_str_eq(cg_face_hardness_class(1850.0), "very hard");
    ck_assert_str_eq(cg_face_hardness_class(349.0), "soft");
    ck_assert_str_eq(cg_face_hardness_class(350.0), "medium");
    ck_assert_str_eq(cg_face_hardness_class(699.0), "medium");
    ck_assert_str_eq(cg_face_hardness_class(700.0), "hard");
    ck_assert_str_eq(cg_face_hardness_class(1199.0), "hard");
    ck_assert_str_eq(cg_face_hardness_class(1200.0), "very hard");
    ck_assert_str_eq(cg_face_hardness_class(NAN), "unknown");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("face");
    TCase *all = tcase_create("face");
    tcase_add_test(all, goes_on_kinds_and_names);
    tcase_add_test(all, resistance_of_a_slab);
    tcase_add_test(all, hardness_is_the_metals_without_a_coat);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
