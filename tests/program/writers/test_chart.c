/* Charts: axes with round ticks, scales, words that find room, and drawings that
 * a page takes whatever the values and names are. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "chart.h"
#include "chart_bars.h"
#include "chart_place.h"
#include "chart_scale.h"
#include "check_close.h"
#include "svg_inline.h"

/* Whether a step is 1, 2 or 5 times a power of ten. */
static bool is_round(double step)
{
    double digit = step / pow(10.0, floor(log10(step) + 1e-9));
    return fabs(digit - 1.0) < 1e-6 || fabs(digit - 2.0) < 1e-6 ||
           fabs(digit - 5.0) < 1e-6;
}

static const struct {
    struct cg_range range;
    int most, least_count;
} axes[] = {{{0.0, 0.437}, 7, 4},       {{0.0, 17.45}, 7, 4},
            {{6.9, 103.1}, 7, 4},       {{-0.213, 0.487}, 7, 4},
            {{0.0, 1275.3}, 6, 3},      {{119.9994, 120.0003}, 7, 3},
            {{-3.7e6, -1.1e6}, 5, 5},   {{0.0, 2.31e-5}, 7, 4},
            {{0.0, 250.0}, 7, 4},       {{0.1, 0.9}, 2, 1},
            {{-1.0, 1.0}, 99, 3},       {{0.0, 1.0}, 1, 1}};

/* Ticks are round, inside, as many as there is room for, evenly apart, and
 * their digits tell one from the next. */
START_TEST(ticks_are_round_and_inside)
{
    struct cg_range range = axes[_i].range;
    struct cg_ticks ticks = cg_ticks_in(range, axes[_i].most);
    double slack = 1e-6 * (range.high - range.low);
    char before[64] = "", text[64];
    ck_assert_int_ge(ticks.count, axes[_i].least_count);
    ck_assert_int_le(ticks.count, axes[_i].most < 2 ? 2 : axes[_i].most);
    for (int i = 0; i < ticks.count; i++) {
        ck_assert(ticks.value[i] >= range.low - slack &&
                  ticks.value[i] <= range.high + slack);
        snprintf(text, sizeof text, "%.*f", ticks.digits, ticks.value[i]);
        ck_assert_str_ne(text, before);
        ck_assert_double_eq_tol(strtod(text, NULL), ticks.value[i], slack);
        ck_assert_str_ne(text, "-0");
        memcpy(before, text, sizeof text);
        if (i > 0)
            ck_assert(is_round(ticks.value[i] - ticks.value[i - 1]));
    }
}
END_TEST

START_TEST(no_ticks_of_nothing)
{
    ck_assert_int_eq(cg_ticks_in((struct cg_range){1.0, 1.0}, 5).count, 0);
    ck_assert_int_eq(cg_ticks_in(cg_range_none(), 5).count, 0);
    ck_assert_int_eq(cg_ticks_in((struct cg_range){0.0, NAN}, 5).count, 0);
}
END_TEST

START_TEST(a_scale_meets_its_ends)
{
    struct cg_scale up = {{0.13, 0.58}, 266.0, 76.0};
    ck_assert_double_eq_tol(cg_scale_at(&up, 0.13), 266.0, 1e-9);
    ck_assert_double_eq_tol(cg_scale_at(&up, 0.58), 76.0, 1e-9);
    ck_assert_double_eq_tol(cg_scale_at(&up, 0.355), 171.0, 1e-9);
}
END_TEST

START_TEST(a_range_opens)
{
    struct cg_range none = cg_range_open(cg_range_none());
    struct cg_range one = cg_range_none(), zero = cg_range_none();
    ck_assert(none.low == 0.0 && none.high == 1.0);
    cg_range_add(&one, NAN);
    cg_range_add(&one, INFINITY);
    cg_range_add(&one, -2.5);
    one = cg_range_open(one);
    ck_assert(one.low < -2.5 && one.high > -2.5 && one.high < 0.0);
    cg_range_add(&zero, 0.0);
    zero = cg_range_open(zero);
    ck_assert(zero.low < 0.0 && zero.high > 0.0);
    struct cg_range wide = cg_range_wider((struct cg_range){0.0, 2.0}, 0.1);
    ck_assert(wide.low == 0.0 && fabs(wide.high - 2.2) < 1e-12);
}
END_TEST

START_TEST(lines_and_boxes)
{
    struct cg_box box = {10.0, 10.0, 20.0, 5.0};
    ck_assert(cg_box_crossed(box, (struct cg_point){0.0, 0.0},
                             (struct cg_point){40.0, 25.0}));
    ck_assert(cg_box_crossed(box, (struct cg_point){15.0, 0.0},
                             (struct cg_point){15.0, 40.0}));
    ck_assert(cg_box_crossed(box, (struct cg_point){12.0, 12.0},
                             (struct cg_point){13.0, 13.0}));
    ck_assert(!cg_box_crossed(box, (struct cg_point){0.0, 0.0},
                              (struct cg_point){40.0, 9.0}));
    ck_assert(!cg_box_crossed(box, (struct cg_point){31.0, 0.0},
                              (struct cg_point){31.0, 40.0}));
    ck_assert(!cg_box_crossed(box, (struct cg_point){NAN, 0.0},
                              (struct cg_point){15.0, 40.0}));
}
END_TEST

enum { MANY = 20000 };
static double across[MANY], up[MANY], low[MANY];

static double wave(size_t i) { return 3e-4 + 1e-4 * sin(0.01 * (double)i); }
static double level(size_t i) { (void)i; return 4.2e-4; }
static double nothing(size_t i) { (void)i; return 0.0; }
static double holes(size_t i) { return i % 5 == 2 ? NAN : wave(i); }
static double unknown(size_t i) { (void)i; return NAN; }
static double endless(size_t i) { return i % 3 == 0 ? INFINITY : wave(i); }
static double below(size_t i) { return -wave(i); }

static double (*const values[])(size_t i) = {wave,    level,   nothing, holes,
                                             unknown, endless, below};
static const size_t counts[] = {0, 1, 2, 7, 300, MANY};
static const char *const names[] = {
    "plain", "<b>&\"", "</text><script>alert(1)</script>", "]]><!-- -->",
    "\x1b[2J", "a\xe2\x80\xae", "cut \xff short", "",
    "a name that is by far too long for any chart of this breadth, and goes on "
    "and on until it would leave the page at the right"};

enum {
    VALUES = sizeof values / sizeof values[0],
    COUNTS = sizeof counts / sizeof counts[0],
    NAMES = sizeof names / sizeof names[0]
};

static void fill(size_t count, double (*at)(size_t i))
{
    for (size_t i = 0; i < count; i++) {
        across[i] = 0.05 * (double)i;
        up[i] = at(i);
        low[i] = 0.5 * at(i);
    }
}

static char *drawn(size_t count, const char *name)
{
    struct cg_chart chart = {
        .title = name,
        .head = name,
        .of = name,
        .words = name,
        .from_zero = true,
        .x = {name, CG_SHOW_TIME},
        .y = {name, CG_SHOW_GAP},
        .curve = {{across, up, count, CG_DASH_SOLID, name},
                  {across, low, count, CG_DASH_DASHED, name},
                  {across, low, count, CG_DASH_SPOTS, NULL}},
        .curves = count < 1000 ? 3 : 2,
        .band = {{across, low, up, count, CG_GREY_LIGHT, name}},
        .bands = 1,
        .mark = {{count > 0 ? across[count / 2] : NAN,
                  count > 0 ? up[count / 2] : NAN, NAN, name},
                 {count > 0 ? across[count / 2] : 0.0, 1e-4, 2e-4, name}},
        .marks = 2};
    return cg_chart_draw(&chart);
}

/* One drawing, of what a page takes, with no number that is none and no tag that
 * comes of a name. */
static void check_drawing(char *svg)
{
    ck_assert_ptr_nonnull(svg);
    ck_assert(cg_svg_is_drawing(svg));
    ck_assert_ptr_null(strstr(svg, "nan"));
    ck_assert_ptr_null(strstr(svg, "inf"));
    ck_assert_ptr_null(strstr(svg, "<b>"));
    ck_assert_ptr_null(strstr(svg, "<script"));
    ck_assert_ptr_null(strstr(svg, "<!--"));
    ck_assert_ptr_null(strchr(svg, '\x1b'));
    free(svg);
}

START_TEST(any_values_any_names)
{
    for (int k = 0; k < COUNTS; k++) {
        fill(counts[k], values[_i]);
        for (int n = 0; n < (counts[k] < 1000 ? NAMES : 2); n++)
            check_drawing(drawn(counts[k], names[n]));
    }
}
END_TEST

/* Many points are thinned, and what stands out stays: 1 of 20000. */
START_TEST(a_peak_is_not_lost)
{
    fill(MANY, level);
    up[12345] = 9e-4;
    char *svg = drawn(MANY, "plain");
    ck_assert_ptr_nonnull(svg);
    ck_assert_uint_lt(strlen(svg), 120000);
    fill(MANY, level);
    char *flat = drawn(MANY, "plain");
    ck_assert_ptr_nonnull(flat);
    /* the axis goes higher, and the curve up to it */
    ck_assert_ptr_nonnull(strstr(svg, ">0.8<"));
    ck_assert_ptr_null(strstr(flat, ">0.8<"));
    free(svg);
    free(flat);
}
END_TEST

/* No figure is larger than those of the head. */
START_TEST(the_head_is_largest)
{
    fill(300, wave);
    struct cg_chart chart = {.title = "Title",
                             .head = "File to 0.46 mm",
                             .of = "gap 0.31 mm",
                             .words = "",
                             .x = {"time", CG_SHOW_TIME},
                             .y = {"gap", CG_SHOW_GAP},
                             .curve = {{across, up, 300, CG_DASH_SOLID,
                                        "least 0.2 mm"}},
                             .curves = 1};
    char *svg = cg_chart_draw(&chart);
    double largest = 0.0, head = 0.0;
    ck_assert_ptr_nonnull(svg);
    for (char *at = svg; (at = strstr(at, "font-size=\"")) != NULL; at++) {
        double size = strtod(at + strlen("font-size=\""), NULL);
        const char *text = strchr(at, '>') + 1, *end = strchr(text, '<');
        ck_assert_double_ge(size, 10.0);
        if (strncmp(text, "File to", 7) == 0)
            head = size;
        else if (strcspn(text, "0123456789") < (size_t)(end - text))
            largest = fmax(largest, size);
    }
    ck_assert_double_gt(largest, 0.0);
    ck_assert_double_lt(largest, head);
    free(svg);
}
END_TEST

/* Words never lie on a curve or on each other; without room they are left. */
START_TEST(words_find_room)
{
    struct cg_point curve[200];
    struct cg_place place = {.frame = {0.0, 0.0, 280.0, 190.0}};
    for (int i = 0; i < 200; i++)
        curve[i] = (struct cg_point){1.4 * i, 90.0 + 60.0 * sin(0.05 * i)};
    cg_place_curve(&place, curve, 200);
    int placed = 0;
    for (int k = 0; k < 40; k++) {
        struct cg_box box =
            k % 2 == 0 ? cg_place_beside(&place, curve, 200, 60.0, 11.0)
                       : cg_place_around(&place, curve[5 * k], 40.0, 11.0);
        if (!(box.width > 0.0))
            continue;
        ck_assert(cg_place_free(&place, box, 0.0));
        cg_place_take(&place, box);
        ck_assert(!cg_place_free(&place, box, 0.0));
        placed++;
    }
    ck_assert_int_ge(placed, 4);
    ck_assert_int_lt(placed, 40);
    struct cg_box none = cg_place_beside(&place, curve, 200, 300.0, 11.0);
    ck_assert_double_eq(none.width, 0.0);
}
END_TEST

START_TEST(any_bars)
{
    struct cg_bars bars = {.title = names[_i],
                           .head = names[_i],
                           .of = names[_i],
                           .words = names[_i],
                           .length = names[_i],
                           .more = names[_i]};
    check_drawing(cg_bars_draw(&bars));
    static const double length[] = {0.4, -0.1, NAN, 0.0, INFINITY};
    for (int i = 0; i < 5; i++)
        bars.bar[bars.bars++] =
            (struct cg_bar){names[_i], names[_i], length[i], NAN};
    check_drawing(cg_bars_draw(&bars));
    bars.bar[1].more = 0.7;
    check_drawing(cg_bars_draw(&bars));
}
END_TEST

int main(void)
{
    TCase *all = tcase_create("all");
    tcase_set_timeout(all, 300);
    tcase_add_loop_test(all, ticks_are_round_and_inside, 0,
                        sizeof axes / sizeof axes[0]);
    tcase_add_test(all, no_ticks_of_nothing);
    tcase_add_test(all, a_scale_meets_its_ends);
    tcase_add_test(all, a_range_opens);
    tcase_add_test(all, lines_and_boxes);
    tcase_add_loop_test(all, any_values_any_names, 0, VALUES);
    tcase_add_test(all, a_peak_is_not_lost);
    tcase_add_test(all, the_head_is_largest);
    tcase_add_test(all, words_find_room);
    tcase_add_loop_test(all, any_bars, 0, NAMES);
    Suite *suite = suite_create("chart");
    suite_add_tcase(suite, all);
    return check_run(suite);
}
