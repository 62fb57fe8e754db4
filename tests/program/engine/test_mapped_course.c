/* Courses that are run by a map of operating points. */
#include <math.h>

#include "case_of.h"
#include "check_close.h"
#include "course_error.h"
#include "course_refine.h"

enum { ROWS = 181 };

/* A winding minute and a half; `apart`: also through a channel that says
 * nothing of this engine, whose cooler does not soak, in steps of a cell, so
 * that a map has more corners than there are rows. */
static struct cg_course *winding(bool apart, struct cg_course **list)
{
    struct cg_course *course = NULL;
    ck_assert_int_eq(cg_course_create(list, ROWS, &course, NULL), CG_OK);
    for (; course->rows < ROWS; course->rows++) {
        double t = 0.5 * (double)course->rows;
        struct cg_course_row row = {.time = t,
                                    .of = {85.0 + 12.0 * sin(0.31 * t),
                                           0.75 + 0.25 * cos(0.5 * t), NAN, NAN,
                                           NAN, NAN, NAN, NAN, NAN}};
        if (course->rows == 1) /* the first is held */
            row = (struct cg_course_row){t,
                                         {course->row[0].of[0],
                                          course->row[0].of[1], NAN, NAN, NAN,
                                          NAN, NAN, NAN, NAN}};
        row.of[CG_CHANNEL_SOAK] = apart ? 0.5 * (double)course->rows : NAN;
        course->row[course->rows] = row;
    }
    return course;
}

static struct cg_case winding_case(struct cg_course *course)
{
    struct cg_case c = case_of(BOOSTED_FOUR, NULL, 0);
    c.duty.segments = 0;
    c.duty.course = course;
    c.duty.start = CG_START_SETTLED;
    return c;
}

static struct cg_extremes went(const struct cg_case *c, struct cg_duty_run *run,
                               struct cg_heat_ledger *ledger)
{
    struct cg_extremes extremes;
    struct cg_error error = {0};
    enum cg_status status =
        cg_answer_extremes(c, run, 0.0, NULL, NULL, &extremes, ledger, &error);
    ck_assert_msg(status == CG_OK, "%s", error.text);
    return extremes;
}

/* Heat closes also where the start is held as it was settled. */
START_TEST(heat_closes)
{
    struct cg_course *list = NULL;
    struct cg_case c = winding_case(winding(false, &list));
    struct cg_duty_run *run = run_of(&c);
    struct cg_heat_ledger ledger;
    ck_assert(run->mapped);
    (void)went(&c, run, &ledger);
    ck_assert_double_le(fabs(ledger.residual), 1e-9);
    cg_duty_run_free(run);
    cg_courses_free(list);
}
END_TEST

/* What is said of thinning and of the map is what they do. */
START_TEST(error_as_stated)
{
    struct cg_course *list = NULL, *thin = winding(false, &list);
    struct cg_case c = winding_case(winding(true, &list));
    struct cg_duty_run *run = run_of(&c);
    struct cg_course_error said;
    struct cg_error error = {0};
    ck_assert(!run->mapped);
    double whole = went(&c, run, NULL).closure;
    cg_duty_run_free(run);
    ck_assert_int_eq(cg_course_thin(c.engine.speed, &cg_thin_usual, thin, NULL),
                     CG_OK);
    c.duty.course = thin;
    run = run_of(&c);
    double taken = went(&c, run, NULL).closure;
    ck_assert(run->mapped);
    ck_assert_int_eq(cg_course_error_find(&c, run, &said, &error), CG_OK);
    printf("%zu of %zu rows, %zu points: off %.3f um, said %.3f and %.3f\n",
           said.rows, said.all, said.points, 1e6 * (taken - whole),
           1e6 * said.thinned, 1e6 * said.between);
    ck_assert_double_le(fabs(taken - whole), said.thinned + said.between);
    cg_duty_run_free(run);
    cg_courses_free(list);
}
END_TEST

/* One that its usual map leaves more out of than is allowed is run finer, until
 * it is less; and is then as near to the run by every row. */
START_TEST(finer_where_it_needs)
{
    struct cg_course *list = NULL, *thin = winding(false, &list);
    struct cg_case c = winding_case(winding(true, &list));
    struct cg_duty_run *run = run_of(&c);
    struct cg_course_error said;
    struct cg_error error = {0};
    double whole = went(&c, run, NULL).closure;
    cg_duty_run_free(run);
    ck_assert_int_eq(cg_course_thin(c.engine.speed, &cg_thin_usual, thin, NULL),
                     CG_OK);
    c.duty.course = thin;
    c.courses = list;
    ck_assert_int_eq(cg_course_refine(&c, &error), CG_OK);
    const struct cg_course_fine *fine = &c.duty.course->fine;
    ck_assert(c.duty.course != thin);
    ck_assert_int_ge(fine->times, 1);
    ck_assert_double_gt(fine->before, CG_COURSE_ALLOWED);
    ck_assert(c.duty.left.known);
    run = run_of(&c);
    double taken = went(&c, run, NULL).closure;
    struct cg_course_left left = c.duty.left;
    c.duty.left.known = false; /* worked out anew */
    ck_assert_int_eq(cg_course_error_find(&c, run, &said, &error), CG_OK);
    ck_assert_double_eq_tol(said.between, left.between, 1e-12);
    ck_assert_double_eq_tol(said.thinned, left.thinned, 1e-12);
    ck_assert_double_le(said.thinned, CG_COURSE_ALLOWED);
    ck_assert_double_le(said.between, CG_COURSE_ALLOWED);
    ck_assert_double_le(fabs(taken - whole), CG_COURSE_ALLOWED);
    printf("finer %d times, %zu points: %.3f um before, %.3f after, off %.3f\n",
           fine->times, said.points, 1e6 * fine->before,
           1e6 * fmax(said.thinned, said.between), 1e6 * (taken - whole));
    cg_duty_run_free(run);
    cg_courses_free(c.courses);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("mapped_course");
    TCase *tests = tcase_create("mapped_course");
    tcase_set_timeout(tests, 600);
    tcase_add_test(tests, heat_closes);
    tcase_add_test(tests, error_as_stated);
    tcase_add_test(tests, finer_where_it_needs);
    suite_add_tcase(suite, tests);
    return check_run(suite);
}
