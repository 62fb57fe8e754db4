/* Drawings that the program makes: a page takes them whatever the words. */
#include <stdlib.h>
#include <string.h>

#include "check_close.h"
#include "report.h"
#include "svg_draw.h"
#include "svg_inline.h"

static const char *const words[] = {
    "plain", "a < b & c > d", "</text><script>alert(1)</script>",
    "it's \"quoted\"", "]]><!-- -->", "&e;", "l\xc3\xb6we", "\x1b[2J",
    "a\xe2\x80\xae", "cut \xff short"};

static char *drawing_of(const char *text)
{
    struct cg_draw draw;
    struct cg_point a = {10.0, 10.0}, b = {50.0, 40.0};
    const struct cg_point corner[] = {{0.0, 0.0}, {9.0, 0.0}, {9.0, 9.0}};
    cg_draw_begin(&draw, 100.0, 80.0, text, text);
    cg_draw_box(&draw, 1.0, 2.0, 3.0, -4.0, CG_GREY_DARK);
    cg_draw_area(&draw, corner, 3, CG_GREY_LIGHT);
    cg_draw_line(&draw, a, b, 2.0);
    cg_draw_dashes(&draw, a, b);
    cg_draw_arrow(&draw, a, b, 3.0);
    cg_draw_arrow(&draw, a, a, 3.0);
    cg_draw_span(&draw, a, b);
    cg_draw_circle(&draw, b, 8.0, 1.0);
    cg_draw_number(&draw, b, 4);
    cg_draw_words(&draw, a, 11.0, "%s", text);
    cg_draw_middle(&draw, a, 11.0, "%s", text);
    return cg_draw_end(&draw);
}

/* Whatever the words, it is one drawing of nothing but what a page takes, and
 * no tag comes of them. */
START_TEST(words_are_never_markup)
{
    char *svg = drawing_of(words[_i]);
    ck_assert_ptr_nonnull(svg);
    ck_assert(cg_svg_is_drawing(svg));
    ck_assert_ptr_null(strstr(svg, "<script"));
    ck_assert_ptr_null(strstr(svg, "nan"));
    ck_assert_ptr_null(strchr(svg, '\x1b'));
    free(svg);
}
END_TEST

/* A picture for a page: lengths below nothing are drawn as none. */
START_TEST(no_length_below_nothing)
{
    char *svg = drawing_of("plain");
    ck_assert_ptr_nonnull(strstr(svg, "height=\"0.00\""));
    ck_assert_ptr_null(strstr(svg, "height=\"-"));
    free(svg);
}
END_TEST

/* A drawing that memory ran out over makes the report say so. */
START_TEST(no_drawing_no_memory)
{
    struct cg_report *report;
    struct cg_error error = {0};
    ck_assert_int_eq(cg_report_create("t", "r", false, &report, &error), CG_OK);
    cg_report_drawing(report, "key", "<svg/>", "title", "words");
    ck_assert_int_eq(cg_report_status(report, &error), CG_OK);
    cg_report_drawing(report, "key", NULL, "title", "words");
    ck_assert_int_eq(cg_report_status(report, &error), CG_NO_MEMORY);
    cg_report_free(report);
}
END_TEST

int main(void)
{
    TCase *all = tcase_create("all");
    tcase_add_loop_test(all, words_are_never_markup, 0,
                        sizeof words / sizeof words[0]);
    tcase_add_test(all, no_length_below_nothing);
    tcase_add_test(all, no_drawing_no_memory);
    Suite *suite = suite_create("svg draw");
    suite_add_tcase(suite, all);
    return check_run(suite);
}
