/* The shipped materials, read by the program's own reader, against published
 * values: one row of material_values.h each. */
#include <stdio.h>
#include <string.h>

#include "../outside/material_values.h"
#include "case_of.h"
#include "check_close.h"
#include "constants.h"

/* The settings that name a material; the first that takes it is used. */
static const struct place {
    const char *set;
    size_t offset; /* of the material in the case */
} places[] = {
    {"rings.top.material", offsetof(struct cg_case, ring_material[0])},
    {"piston.alloy", offsetof(struct cg_case, piston_material)},
    {"bore.material", offsetof(struct cg_case, bore_material)},
    {"bore.block_material", offsetof(struct cg_case, block_material)},
};

static const struct {
    const char *names;
    size_t place;
} homes[] = {
    {" plain_steel nitrided_stainless grey_iron_ring ductile_iron_ring ", 0},
    {" 4032 2618 eutectic hypereutectic ", 1},
    {" grey_iron ductile_iron cgi ", 2},
    {" a390 a356 a319 ", 3},
};

static struct cg_material material_of(const char *name)
{
    char set[96], word[64];
    const char *const list = set;
    const struct place *place = NULL;
    struct cg_material material;
    snprintf(word, sizeof word, " %s ", name);
    for (size_t i = 0; i < COUNT_OF(homes); i++)
        if (strstr(homes[i].names, word) != NULL)
            place = &places[homes[i].place];
    ck_assert_msg(place != NULL, "%s: where is it used?", name);
    snprintf(set, sizeof set, "%s=%s", place->set, name);
    struct cg_case c = case_of(BOOSTED_FOUR, &list, 1);
    memcpy(&material, (const char *)&c + place->offset, sizeof material);
    ck_assert_str_eq(material.name, name);
    return material;
}

/* In the row's unit. */
static double property(const struct cg_material *material, const char *name,
                       double kelvin)
{
    if (strcmp(name, MV_EXPANSION) == 0)
        return cg_curve_at(&material->expansion, kelvin) * 1e6;
    if (strcmp(name, MV_CONDUCTIVITY) == 0)
        return cg_curve_at(&material->conductivity, kelvin);
    if (strcmp(name, MV_HEAT) == 0)
        return cg_curve_at(&material->heat_capacity, kelvin);
    ck_assert_str_eq(name, MV_MODULUS);
    return cg_curve_at(&material->modulus, kelvin) * 1e-9;
}

START_TEST(as_published)
{
    const struct material_value *row = &material_values[_i];
    struct cg_material material = material_of(row->material);
    double got = property(&material, row->property,
                          row->celsius + CG_ZERO_CELSIUS);
    /* Equal to the last digit, it was copied from that print: no check. */
    if (fabs(got - row->value) <= 1e-9 * row->value)
        return;
    char what[256];
    snprintf(what, sizeof what, "%s %s: %s", row->material, row->property,
             row->source);
    check_close(got, row->value, row->tolerance, what);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("materials");
    TCase *all = tcase_create("published values");
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, as_published, 0, MATERIAL_VALUES);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
