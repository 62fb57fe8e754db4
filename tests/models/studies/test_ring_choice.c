/* Where a use first comes to a level; a study of rings without its runs. */
#include "check_close.h"
#include "ring_trial.h"

static const double boost[] = {0.0, 25e3, 50e3, 75e3, 100e3};

START_TEST(crossing)
{
    static const double rises[] = {-1.0, -0.5, 0.25, 0.75, 1.75};
    check_close(cg_choice_crossing(boost, rises, 5, 0.0), 25e3 + 50e3 / 3.0,
                1e-14, "straight between two points");
    check_close(cg_choice_crossing(boost, rises, 5, 1.0), 75e3 + 6250.0,
                1e-14, "the same for the upper end");
    ck_assert_double_eq(cg_choice_crossing(boost, rises, 5, 0.75), 75e3);
    ck_assert(isnan(cg_choice_crossing(boost, rises, 5, 2.0)));
    ck_assert_double_eq(cg_choice_crossing(boost, rises, 5, -2.0), 0.0);
}
END_TEST

/* A use that falls again has stopped fitting all the same. */
START_TEST(the_first_crossing_counts)
{
    static const double dips[] = {-1.0, 0.5, -0.5, -0.2, 0.4};
    check_close(cg_choice_crossing(boost, dips, 5, 0.0), 25e3 / 1.5, 1e-14,
                "straight between two points");
}
END_TEST

START_TEST(words)
{
    ck_assert_str_eq(cg_ring_verdict_text(CG_RING_FITS), "fits");
    ck_assert_str_eq(cg_ring_verdict_text(CG_RING_MARGINAL), "marginal");
    ck_assert_str_eq(cg_ring_verdict_text(CG_RING_UNFIT), "unfit");
}
END_TEST

static const struct cg_material steel = {.name = "steel", .kind = "steel",
                                         .hot_limit = 573.0,
                                         .hot_limit_high = 623.0};
static const struct cg_face on_iron = {.name = "plate", .on = {"iron"},
                                       .bases = 1};
static const struct cg_face on_steel = {.name = "coat", .on = {"steel"},
                                        .bases = 1};

START_TEST(nothing_to_choose_from)
{
    struct cg_case c = {0};
    struct cg_choice_study *study = NULL;
    struct cg_error error = {0};
    ck_assert_int_eq(
        cg_choice_begin(&c, &steel, 1, &on_iron, 1, &study, &error),
        CG_BAD_INPUT);
    ck_assert_str_eq(error.text, "rings: no face goes on any ring material");
    ck_assert_ptr_null(study);
}
END_TEST

/* The case's own boost stands once among the steps, wherever it lies. */
START_TEST(own_boost_among_the_steps)
{
    static const double own[] = {0.0, 10e3, 25e3, 599e3, 600e3, 640e3};
    for (size_t k = 0; k < sizeof own / sizeof own[0]; k++) {
        struct cg_case c = {.charge.boost = own[k]};
        struct cg_choice_study *study;
        size_t times = 0, steps = 25;
        ck_assert_int_eq(
            cg_choice_begin(&c, &steel, 1, &on_steel, 1, &study, NULL), CG_OK);
        for (size_t i = 0; i < study->rungs; i++) {
            times += study->rung[i].own;
            ck_assert(i == 0 ||
                      study->rung[i].boost > study->rung[i - 1].boost);
        }
        bool step = fmod(own[k], CG_CHOICE_STEP) == 0.0;
        ck_assert_uint_eq(times, 1);
        ck_assert_uint_eq(study->rungs, steps + (step ? 0 : 1));
        ck_assert_double_eq(study->rung[cg_choice_own_rung(study)].boost,
                            own[k]);
        ck_assert_uint_eq(cg_choice_items(study), study->rungs + 1);
        cg_choice_free(study);
    }
}
END_TEST

/* What failed on the way is the end's to tell. */
START_TEST(failures_are_told_at_the_end)
{
    struct cg_case c = {.charge.boost = 50e3};
    struct cg_choice_study *study;
    const struct cg_ring_choice *choices;
    size_t count;
    double reached;
    struct cg_error error = {0};
    ck_assert_int_eq(
        cg_choice_begin(&c, &steel, 1, &on_steel, 1, &study, NULL), CG_OK);
    study->rung[4].status = CG_NUMERICAL; /* beyond the own one */
    ck_assert_int_eq(
        cg_choice_end(study, &choices, &count, &reached, &error), CG_OK);
    ck_assert_double_eq(reached, 75e3);
    study->rung[1].status = CG_NUMERICAL; /* on the way to it */
    ck_assert_int_eq(
        cg_choice_end(study, &choices, &count, &reached, &error),
        CG_NUMERICAL);
    ck_assert_str_eq(error.text,
                     "rings: a boost of 25 kPa could not be computed");
    study->status[0] = cg_error_set(&study->error[0], CG_NUMERICAL, "a reason");
    ck_assert_int_eq(
        cg_choice_end(study, &choices, &count, &reached, &error),
        CG_NUMERICAL);
    ck_assert_str_eq(error.text, "a reason");
    cg_choice_free(study);
}
END_TEST

/* Equals stay in the order of the files, first by material, then by face. */
START_TEST(equals_keep_the_order_of_the_files)
{
    const struct cg_material metal[2] = {steel, steel};
    const struct cg_face face[2] = {on_steel, on_steel};
    struct cg_case c = {0};
    struct cg_choice_study *study;
    const struct cg_ring_choice *choices;
    size_t count;
    double reached;
    ck_assert_int_eq(cg_choice_begin(&c, metal, 2, face, 2, &study, NULL),
                     CG_OK);
    struct cg_ring_choice first = study->choice[0];
    study->choice[0] = study->choice[3]; /* out of order before it sorts */
    study->choice[3] = first;
    ck_assert_int_eq(cg_choice_end(study, &choices, &count, &reached, NULL),
                     CG_OK);
    ck_assert_uint_eq(count, 4);
    for (size_t i = 0; i < count; i++) {
        ck_assert_ptr_eq(choices[i].material, &metal[i / 2]);
        ck_assert_ptr_eq(choices[i].face, &face[i % 2]);
    }
    cg_choice_free(study);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ring choice");
    TCase *all = tcase_create("crossing");
    tcase_add_test(all, crossing);
    tcase_add_test(all, the_first_crossing_counts);
    tcase_add_test(all, words);
    TCase *study = tcase_create("study");
    tcase_add_test(study, nothing_to_choose_from);
    tcase_add_test(study, own_boost_among_the_steps);
    tcase_add_test(study, failures_are_told_at_the_end);
    tcase_add_test(study, equals_keep_the_order_of_the_files);
    suite_add_tcase(suite, study);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
