#include <math.h>
#include <stdio.h>
#include <string.h>

#include "answer.h"
#include "check_close.h"
#include "setting.h"
#include "operating.h"
#include "uncertain.h"

static void fill(struct cg_case *c)
{
    size_t count;
    const struct cg_setting *settings = cg_settings(&count);
    cg_case_begin(c);
    /* every number different, so that a wrong one cannot pass */
    for (size_t i = 0; i < count; i++)
        if (settings[i].kind == CG_REAL)
            cg_setting_put(&settings[i], c, 0.1 + 0.0137 * (double)i);
}

static double at(const struct cg_case *c, size_t offset)
{
    double value;
    memcpy(&value, (const char *)c + offset, sizeof value);
    return value;
}

static int fields_of(const struct cg_uncertain *input)
{
    int fields = 0;
    while (fields < CG_UNCERTAIN_FIELDS && input->field[fields] != 0)
        fields++;
    return fields;
}

START_TEST(every_spread_is_used_once)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    ck_assert_uint_eq(count,
                      offsetof(struct cg_uncertainty_case, other_laws) /
                          sizeof(double));
    ck_assert_uint_le(count, CG_INPUTS);
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < i; j++) {
            ck_assert_uint_ne(inputs[i].spread, inputs[j].spread);
            ck_assert_str_ne(inputs[i].name, inputs[j].name);
            ck_assert_str_ne(inputs[i].doc, inputs[j].doc);
        }
}
END_TEST

START_TEST(names_are_those_of_the_settings)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        char path[80];
        snprintf(path, sizeof path, "uncertainty.%s", inputs[i].name);
        const struct cg_setting *setting = cg_setting_find(path);
        ck_assert_msg(setting != NULL, "%s", path);
        ck_assert_uint_eq(setting->offset, inputs[i].spread);
        ck_assert_msg(inputs[i].relative ==
                          (setting->dimension == CG_SHARE),
                      "%s", path);
    }
}
END_TEST

/* Moves each input: its fields by the right amount, and nothing else. */
START_TEST(moves_its_fields_and_no_other)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        const struct cg_uncertain *input = &inputs[i];
        struct cg_case base, moved;
        fill(&base);
        moved = base;
        bool of_knock = strcmp(input->name, "octane") == 0 ||
                        strcmp(input->name, "knock_delay") == 0;
        base.piston.oil_jet = true; /* else nothing is not known of it */
        if (cg_uncertain_foreign(input, &base))
            base.cooling.medium = CG_MEDIUM_AIR;
        if (of_knock) /* fill sets the rule of retard, which rules them out */
            base.combustion.retard_deg_per_100kPa = NAN;
        moved = base;
        double spread = cg_uncertain_spread(input, &base);
        ck_assert_double_eq(spread, at(&base, input->spread));
        cg_uncertain_move(input, 1.7, &moved);
        ck_assert_msg(input->direct == (fields_of(input) == 0), "%s",
                      input->name);
        for (int f = 0; f < fields_of(input); f++) {
            double was = at(&base, input->field[f]);
            double want = input->relative ? was * exp(1.7 * spread)
                                          : was + 1.7 * spread;
            check_close(at(&moved, input->field[f]), want, 1e-14,
                        input->name);
            memcpy((char *)&moved + input->field[f], &was, sizeof was);
        }
        ck_assert_msg(memcmp(&base, &moved, sizeof base) == 0,
                      "%s moves something else", input->name);
    }
}
END_TEST

/* Either the knock limit places the burn or the rule; the other's inputs are
 * not run for. */
START_TEST(what_is_not_there_has_no_spread)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    struct cg_case without;
    fill(&without);
    without.piston.oil_jet = false;
    for (size_t i = 0; i < count; i++)
        if (strcmp(inputs[i].name, "jet") == 0)
            ck_assert_double_eq(cg_uncertain_spread(&inputs[i], &without), 0.0);
}
END_TEST

/* Coolant or fins: of five inputs each engine knows its own alone. */
START_TEST(what_does_not_cool_has_no_spread)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    struct cg_case wet;
    fill(&wet);
    struct cg_case air = wet;
    air.cooling.medium = CG_MEDIUM_AIR;
    int of_coolant = 0, of_fins = 0;
    for (size_t i = 0; i < count; i++) {
        bool fins = strstr(inputs[i].name, "fins") != NULL;
        bool coolant = strstr(inputs[i].name, "coolant") != NULL;
        ck_assert(cg_uncertain_foreign(&inputs[i], &wet) == fins);
        ck_assert(cg_uncertain_foreign(&inputs[i], &air) == coolant);
        if (fins)
            ck_assert_double_eq(cg_uncertain_spread(&inputs[i], &wet), 0.0);
        if (coolant)
            ck_assert_double_eq(cg_uncertain_spread(&inputs[i], &air), 0.0);
        of_fins += fins;
        of_coolant += coolant;
    }
    ck_assert_int_eq(of_fins, 2);
    ck_assert_int_eq(of_coolant, 3);
}
END_TEST

START_TEST(what_places_no_burn_has_no_spread)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        struct cg_case ruled, limited;
        fill(&ruled);
        ruled.piston.oil_jet = true;
        if (cg_uncertain_foreign(&inputs[i], &ruled))
            ruled.cooling.medium = CG_MEDIUM_AIR;
        limited = ruled;
        limited.combustion.retard_deg_per_100kPa = NAN;
        bool of_rule = strcmp(inputs[i].name, "retard") == 0;
        bool of_knock = strcmp(inputs[i].name, "octane") == 0 ||
                        strcmp(inputs[i].name, "knock_delay") == 0;
        ck_assert(of_knock == (cg_uncertain_spread(&inputs[i], &ruled) == 0.0));
        ck_assert(of_rule == (cg_uncertain_spread(&inputs[i], &limited) == 0.0));
    }
}
END_TEST

/* A duty may give the coolant's temperature itself, and a logged one oil, air,
 * mixture and burn too; a builder who does not know one to 4 K does not know it
 * there either. */
START_TEST(what_a_duty_gives_moves_too)
{
    static const struct {
        const char *name;
        size_t moved; /* in the operating point of a course */
        bool relative;
    } rows[] = {
        {"coolant", offsetof(struct cg_operating, coolant_temperature), false},
        {"cylinder_coolant", offsetof(struct cg_operating, coolant_temperature),
         false},
        {"oil", offsetof(struct cg_operating, oil_temperature), false},
        {"charge", offsetof(struct cg_operating, air_temperature), false},
        {"burn50", offsetof(struct cg_operating, burn50_deg), false},
        {"cylinder_mixture", offsetof(struct cg_operating, lambda), true}};
    const double of[CG_CHANNELS] = {80.0, 0.9, 1.0, 361.0,
                                    0.9,  14.0, 378.0, 330.0, NAN, NAN};
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
            struct cg_case c;
            fill(&c);
            struct cg_operating before = cg_operating_of(&c, of);
            double by = cg_uncertain_spread(&inputs[i], &c);
            cg_uncertain_move(&inputs[i], 1.0, &c);
            struct cg_operating after = cg_operating_of(&c, of);
            double a = *(double *)((char *)&before + rows[r].moved);
            double b = *(double *)((char *)&after + rows[r].moved);
            bool same_place = false;
            for (size_t k = 0; k < sizeof rows / sizeof rows[0]; k++)
                same_place = same_place ||
                             (strcmp(rows[k].name, inputs[i].name) == 0 &&
                              rows[k].moved == rows[r].moved);
            double to = !same_place        ? a
                        : rows[r].relative ? a * exp(by)
                                           : a + by;
            ck_assert_msg(fabs(b - to) <= 1e-12, "%s", inputs[i].name);
        }
}
END_TEST

START_TEST(there_and_back)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        struct cg_case base, c;
        fill(&base);
        c = base;
        cg_uncertain_move(&inputs[i], 2.3, &c);
        cg_uncertain_move(&inputs[i], -2.3, &c);
        for (int f = 0; f < fields_of(&inputs[i]); f++)
            check_close(at(&c, inputs[i].field[f]),
                        at(&base, inputs[i].field[f]), 1e-13, inputs[i].name);
    }
}
END_TEST

/* What the cycle reads must be marked, or it would not be run anew. */
START_TEST(cycle_inputs_are_marked)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        for (int f = 0; f < fields_of(&inputs[i]); f++) {
            size_t field = inputs[i].field[f];
            bool in_cycle = (field >= offsetof(struct cg_case, charge) &&
                             field < offsetof(struct cg_case, piston)) ||
                            field == offsetof(struct cg_case, moved.air) ||
                            field == offsetof(struct cg_case,
                                              moved.burn50_deg) ||
                            field == offsetof(struct cg_case, scale.lambda);
            ck_assert_msg(inputs[i].gas_side == in_cycle, "%s",
                          inputs[i].name);
        }
}
END_TEST

/* A run's own conditions, by name; all else is the engine's. */
START_TEST(conditions_of_a_run)
{
    static const char *const own[] = {"boost", "coolant", "oil", "charge"};
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        bool condition = false;
        for (size_t k = 0; k < sizeof own / sizeof own[0]; k++)
            condition |= strcmp(inputs[i].name, own[k]) == 0;
        ck_assert_msg(cg_uncertain_is_condition(&inputs[i]) == condition,
                      "%s", inputs[i].name);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("uncertain");
    TCase *all = tcase_create("uncertain");
    tcase_add_test(all, every_spread_is_used_once);
    tcase_add_test(all, names_are_those_of_the_settings);
    tcase_add_test(all, what_is_not_there_has_no_spread);
    tcase_add_test(all, what_does_not_cool_has_no_spread);
    tcase_add_test(all, what_places_no_burn_has_no_spread);
    tcase_add_test(all, moves_its_fields_and_no_other);
    tcase_add_test(all, what_a_duty_gives_moves_too);
    tcase_add_test(all, there_and_back);
    tcase_add_test(all, cycle_inputs_are_marked);
    tcase_add_test(all, conditions_of_a_run);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
