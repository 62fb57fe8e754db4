#include <stdio.h>
#include <string.h>

#include "answer.h"
#include "check_close.h"
#include "setting.h"
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

START_TEST(what_places_no_burn_has_no_spread)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        struct cg_case ruled, limited;
        fill(&ruled);
        ruled.piston.oil_jet = true;
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

/* A duty may give the coolant's temperature by segment; a builder who does
 * not know it to 4 K does not know it there either. */
START_TEST(coolant_moves_in_every_segment)
{
    size_t count;
    const struct cg_uncertain *inputs = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++) {
        struct cg_case c;
        fill(&c);
        c.duty.segments = 3;
        for (int s = 0; s < 3; s++)
            c.duty.segment[s] = (struct cg_segment){
                7.0, 80.0, 90.0, 0.3, 0.9, 1.1, s == 1 ? NAN : 361.0 + s,
                0.0};
        c.uncertainty.coolant_temperature = 4.3;
        struct cg_case base = c;
        cg_uncertain_move(&inputs[i], 1.0, &c);
        double by =
            inputs[i].field[0] ==
                    offsetof(struct cg_case, cooling.coolant_temperature)
                ? cg_uncertain_spread(&inputs[i], &c)
                : 0.0;
        for (int s = 0; s < 3; s += 2)
            check_within(c.duty.segment[s].coolant_temperature,
                         base.duty.segment[s].coolant_temperature + by, 1e-12,
                         inputs[i].name);
        ck_assert(isnan(c.duty.segment[1].coolant_temperature));
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
            bool in_cycle = field >= offsetof(struct cg_case, charge) &&
                            field < offsetof(struct cg_case, piston);
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
    tcase_add_test(all, what_places_no_burn_has_no_spread);
    tcase_add_test(all, moves_its_fields_and_no_other);
    tcase_add_test(all, coolant_moves_in_every_segment);
    tcase_add_test(all, there_and_back);
    tcase_add_test(all, cycle_inputs_are_marked);
    tcase_add_test(all, conditions_of_a_run);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
