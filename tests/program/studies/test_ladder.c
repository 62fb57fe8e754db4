/* The ladder against those that know a limit, and its changes as values. */
#include "case_of.h"
#include "ceiling.h"
#include "check_close.h"
#include "ladder.h"
#include "ladder_look.h"

enum { MOST_ANSWERS = 50 }; /* that a ladder of a shipped engine may take */

static const char *const settled[] = {"margin.duties=", "duty.name=settled",
                                      "rings.top.cold_gap_mm=0.42"};

static struct cg_material_library library;

static void read_library(void)
{
    struct cg_error error = {0};
    enum cg_status status =
        cg_config_read_library(IRON_SIX, NULL, 0, &library, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
}

static void free_library(void)
{
    cg_material_library_free(&library);
}

static struct cg_ladder_count count; /* of the last one */

static struct cg_ladder *ladder_of(const struct cg_case *c, double target)
{
    struct cg_ladder *ladder;
    struct cg_error error = {0};
    count = (struct cg_ladder_count){.answers = 0};
    struct cg_ladder_shelf shelf = {library.ring,   library.alloy,
                                    library.face,   library.rings,
                                    library.alloys, library.faces};
    enum cg_status status =
        cg_ladder_create(c, target, &shelf, &count, &ladder, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return ladder;
}

static struct cg_case six(size_t sets)
{
    return case_of(IRON_SIX, settled, sets);
}

static const struct cg_ladder_change *change_of(const struct cg_ladder *ladder,
                                                const char *path)
{
    for (size_t i = 0; i < ladder->changes; i++)
        if (strcmp(ladder->change[i].setting->path, path) == 0)
            return &ladder->change[i];
    return NULL;
}

/* A gap stops where its ceiling is; the one that is offered holds past the
 * target, by no more than the filing step. */
START_TEST(gap_as_ceiling_says)
{
    struct cg_case c = six(3);
    struct cg_ladder *ladder = ladder_of(&c, 180e3);
    struct cg_ceiling ceiling;
    ck_assert_int_eq(cg_ceiling_find(&c, 0.42e-3, &ceiling, NULL), CG_OK);
    const struct cg_ladder_stop *stop = &ladder->before.stop[CG_LADDER_TOP_GAP];
    ck_assert_double_le(fabs(stop->stands - ceiling.boost),
                        CG_LADDER_TOLERANCE);
    ck_assert(ladder->stands);
    const struct cg_ladder_change *change =
        change_of(ladder, "rings.top.cold_gap");
    ck_assert_ptr_nonnull(change);
    ck_assert_double_eq(change->was, 0.42e-3);
    ck_assert(change->part == CG_LADDER_TOP_GAP && change->fits);
    ck_assert(!(change->holds_to < 180e3));
    double least = ladder->after.answer.file_to_top.at_least;
    ck_assert_double_ge(change->now, least * (1.0 - 1e-9));
    ck_assert_double_lt(change->now, least + c.margin.filing_step);
    ck_assert(change->price.leak > 0.0);
    cg_ladder_free(ladder);
}
END_TEST

/* The ring that is offered is on the shelf, goes together, and stands what the
 * own one does not. */
START_TEST(ring_of_the_shelf)
{
    struct cg_case c = six(2);
    struct cg_ladder *ladder = ladder_of(&c, 180e3);
    const struct cg_ladder_change *face = change_of(ladder, "rings.top.face");
    ck_assert_ptr_nonnull(face);
    ck_assert_str_eq(face->was_name, "bare");
    ck_assert_str_eq(face->now_name,
                     ladder->changed.ring_face[CG_RING_TOP].name);
    ck_assert(cg_face_goes_on(&ladder->changed.ring_face[CG_RING_TOP],
                              &ladder->changed.ring_material[CG_RING_TOP]));
    ck_assert(ladder->before.stop[CG_LADDER_RING_FACE].stands < 180e3);
    ck_assert(!(ladder->after.stop[CG_LADDER_RING_FACE].fits < 180e3));
    cg_ladder_free(ladder);
}
END_TEST

/* What stands a boost stands less, with the same rungs; less still asks for
 * nothing; and all of it for no more answers than are promised. */
START_TEST(less_boost_less_to_do)
{
    struct cg_case c = six(3);
    struct cg_ladder *high = ladder_of(&c, 180e3);
    ck_assert_uint_le(count.answers, MOST_ANSWERS);
    struct cg_ladder *low = ladder_of(&c, 100e3);
    struct cg_ladder *least = ladder_of(&c, 15e3);
    for (int part = 0; part < CG_LADDER_PARTS; part++) {
        double a = high->before.stop[part].fits;
        double b = low->before.stop[part].fits;
        if (a < 100e3 || b < 100e3)
            ck_assert_double_le(fabs(a - b), 2.0 * CG_LADDER_TOLERANCE);
    }
    ck_assert_uint_le(low->changes, high->changes);
    ck_assert_uint_eq(least->changes, 0);
    ck_assert(high->stands && low->stands && least->stands);
    cg_ladder_free(high);
    cg_ladder_free(low);
    cg_ladder_free(least);
}
END_TEST

/* The changes as values make the changed case of the one asked about. */
START_TEST(changes_are_values)
{
    struct cg_case c = six(3);
    struct cg_ladder *ladder = ladder_of(&c, 180e3);
    ck_assert_uint_gt(ladder->changes, 1);
    for (size_t i = 0; i < ladder->changes; i++) {
        const struct cg_ladder_change *change = &ladder->change[i];
        const char *name =
            (const char *)&ladder->changed + change->setting->offset;
        if (change->setting->kind == CG_NAME)
            ck_assert_str_eq(name, change->now_name);
        else
            ck_assert_double_eq(
                cg_setting_get(change->setting, &ladder->changed), change->now);
        ck_assert(i == 0 || ladder->change[i - 1].from <= change->from);
        ck_assert_double_lt(change->from, 180e3);
    }
    /* in the same case, and in one that evidence has not moved */
    struct cg_case made = c;
    made.combustion.heat_factor *= 0.9;
    cg_ladder_make(ladder, &made);
    ck_assert_double_eq(made.combustion.heat_factor,
                        0.9 * ladder->changed.combustion.heat_factor);
    ck_assert_double_eq(made.charge.boost, 180e3);
    ck_assert_int_eq(made.charge.charger, ladder->changed.charge.charger);
    ck_assert_str_eq(made.ring_face[CG_RING_TOP].name,
                     ladder->changed.ring_face[CG_RING_TOP].name);
    ck_assert_double_eq(made.ring[CG_RING_TOP].cold_gap,
                        ladder->changed.ring[CG_RING_TOP].cold_gap);
    cg_ladder_free(ladder);
}
END_TEST

static struct cg_look_book *book_of(const struct cg_case *c)
{
    struct cg_look_book *book;
    struct cg_error error = {0};
    count = (struct cg_ladder_count){.answers = 0};
    ck_assert_int_eq(cg_look_begin(c, 0.0, NULL, &count, &book, &error), CG_OK);
    return book;
}

/* A score that is no number passes for no good one. */
START_TEST(no_number_is_no_score)
{
    struct cg_case c = six(2);
    struct cg_look_book *book = book_of(&c);
    const struct cg_look *look;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_look_at(book, 50e3, CG_LOOK_CHARGE, &look, &error),
                     CG_OK);
    book->core.oil = NAN;
    ck_assert_int_eq(cg_look_at(book, 80e3, CG_LOOK_CHARGE, &look, &error),
                     CG_NUMERICAL);
    ck_assert_str_eq(error.text, "ladder: bore_finish at 80 kPa cannot be judged");
    free(book);
}
END_TEST

START_TEST(a_boost_too_many_is_told)
{
    struct cg_case c = six(2);
    struct cg_look_book *book = book_of(&c);
    const struct cg_look *look;
    struct cg_error error = {0};
    for (book->looks = 0; book->looks < CG_LOOKS; book->looks++)
        book->look[book->looks] = (struct cg_look){
            .boost = 100.0 * (double)book->looks, .depth = CG_LOOK_GAPS};
    ck_assert_int_eq(cg_look_at(book, 300.0, CG_LOOK_GAPS, &look, &error),
                     CG_OK);
    ck_assert_ptr_eq(look, &book->look[3]);
    ck_assert_int_eq(cg_look_at(book, 350.0, CG_LOOK_GAPS, &look, &error),
                     CG_NUMERICAL);
    free(book);
}
END_TEST

START_TEST(order_of_boost)
{
    enum cg_ladder_part order[CG_LADDER_PARTS];
    static struct cg_ladder_climb climb;
    for (int part = 0; part < CG_LADDER_PARTS; part++)
        climb.stop[part].fits = NAN;
    climb.stop[CG_LADDER_COOLANT].fits = 50e3;
    climb.stop[CG_LADDER_TOP_GAP].fits = 80e3;
    climb.stop[CG_LADDER_SKIRT].fits = 0.0;
    cg_ladder_order(&climb, order);
    ck_assert_int_eq(order[0], CG_LADDER_SKIRT);
    ck_assert_int_eq(order[1], CG_LADDER_COOLANT);
    ck_assert_int_eq(order[2], CG_LADDER_TOP_GAP);
    ck_assert_int_eq(order[3], CG_LADDER_SECOND_GAP);
    ck_assert_int_eq(order[CG_LADDER_PARTS - 1], CG_LADDER_CHARGE);
}
END_TEST

START_TEST(targets)
{
    struct cg_case c = case_of(PLAIN_FOUR, settled, 2);
    struct cg_ladder_shelf none = {.rings = 0};
    struct cg_ladder *ladder = NULL;
    ck_assert_int_eq(cg_ladder_create(&c, -1.0, &none, &count, &ladder, NULL),
                     CG_BAD_INPUT);
    ck_assert_int_eq(cg_ladder_create(&c, NAN, &none, &count, &ladder, NULL),
                     CG_BAD_INPUT);
    ck_assert_ptr_null(ladder);
    ladder = ladder_of(&c, 0.0);
    ck_assert_int_eq(ladder->changed.charge.charger, CG_CHARGER_NONE);
    cg_ladder_free(ladder);
    ladder = ladder_of(&c, 30e3);
    ck_assert_int_eq(ladder->changed.charge.charger, CG_CHARGER_TURBINE);
    ck_assert_double_eq(ladder->changed.charge.boost, 30e3);
    cg_ladder_free(ladder);
    cg_ladder_free(NULL);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ladder");
    TCase *all = tcase_create("ladder");
    tcase_set_timeout(all, 300);
    tcase_add_unchecked_fixture(all, read_library, free_library);
    tcase_add_test(all, gap_as_ceiling_says);
    tcase_add_test(all, ring_of_the_shelf);
    tcase_add_test(all, less_boost_less_to_do);
    tcase_add_test(all, changes_are_values);
    tcase_add_test(all, no_number_is_no_score);
    tcase_add_test(all, a_boost_too_many_is_told);
    tcase_add_test(all, order_of_boost);
    tcase_add_test(all, targets);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
