/* A logged run: what is read from a file, and the course it becomes. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "check_close.h"
#include "log_course.h"
#include "setting.h"

#define LOG "test_log.csv"

static struct cg_problems problems;
static struct cg_log_column column[CG_LOGGED];

static void ask(const char *key, const char *heading)
{
    enum cg_logged quantity;
    const struct cg_unit *unit;
    ck_assert_msg(cg_log_key(key, &quantity, &unit), "%s", key);
    column[quantity].unit = unit;
    snprintf(column[quantity].heading, CG_HEADING_LENGTH, "%s", heading);
    snprintf(column[quantity].key, CG_NAME_LENGTH, "%s", key);
}

static void ask_usual(void)
{
    memset(column, 0, sizeof column);
    ask("time_s", "t");
    ask("speed_rpm", "n");
    ask("boost_kPa", "p");
}

static struct cg_case engine(void)
{
    struct cg_case c;
    cg_case_begin(&c);
    c.engine.speed = 100.0;
    c.charge.boost = 1e5;
    strcpy(c.fuel.name, "gasoline");
    return c;
}

/* The course of a text; NULL where it is refused. */
static struct cg_course *course_of(const char *text, struct cg_course **list)
{
    struct cg_case c = engine();
    struct cg_course *course = NULL;
    struct cg_error error = {CG_OK, ""};
    FILE *file = fopen(LOG, "w");
    ck_assert_ptr_nonnull(file);
    fputs(text, file);
    fclose(file);
    memset(&problems, 0, sizeof problems);
    ck_assert_int_eq(
        cg_log_read(LOG, &c, column, list, &course, &problems, &error), CG_OK);
    ck_assert_msg((course != NULL) == (problems.count == 0), "%s",
                  problems.line[0]);
    remove(LOG);
    return course;
}

static void at(const struct cg_course *course, double time,
               enum cg_course_channel k, double want)
{
    double of[CG_CHANNELS];
    cg_course_at(course, time, of);
    ck_assert_msg(fabs(of[k] - want) < 1e-9,
                  "%g s, channel %d: %.12g, not "
                  "%.12g",
                  time, (int)k, of[k], want);
}

/* The same run, as one table or another writes it. */
START_TEST(tables_of_any_kind)
{
    static const char *const same[] = {
        "t,n,p\n0,3000,50\n1,4800,100\n2,6000,100\n",
        "t;other;n;p\n0,0;x;3000,0;50,0\n1,0;;4800;100\n2,0;y;6000;1e2\n",
        "Logger 5\nday\t3\n\nn\tt\tp\r\n3000\t0\t50\r\n4800\t1\t100\r\n"
        "6000\t2\t100\r\n",
        "# t   n p\n# a remark\n 0   3000 50\n 1 4800  100 \n\n2 6000 100\n",
        "\xEF\xBB\xBF\"t\",\"n\",\"p\"\ns,rpm,kPa\n\"0\",3000,50\n"
        "1,4800,100\n1,4800,100\n2,6000,100\n"};
    for (size_t i = 0; i < sizeof same / sizeof same[0]; i++) {
        struct cg_course *list = NULL, *course;
        ask_usual();
        course = course_of(same[i], &list);
        ck_assert_msg(course != NULL, "text %zu: %s", i, problems.line[0]);
        at(course, 0.0, CG_CHANNEL_SPEED, 50.0);
        at(course, 0.5, CG_CHANNEL_SPEED, 65.0);
        at(course, 2.0, CG_CHANNEL_SPEED, 100.0);
        at(course, 1.0, CG_CHANNEL_LOAD, 1.0);
        cg_courses_free(list);
    }
}
END_TEST

/* Gauge or absolute, by any unit, or in per cent: the same load. */
START_TEST(load_by_any_pressure)
{
    static const struct {
        const char *key, *text;
    } rows[] = {{"boost_kPa", "t n p\n0 3000 40\n1 6000 100\n"},
                {"boost_bar", "t n p\n0 3000 0.4\n1 6000 1\n"},
                {"boost_psi", "t n p\n0 3000 5.80150951\n1 6000 14.5037738\n"},
                {"manifold_kPa", "t n p\n0 3000 141.325\n1 6000 201.325\n"},
                {"load_pct", "t n p\n0 3000 63.926048\n1 6000 100\n"}};
    struct cg_case c = engine();
    double whole = c.charge.ambient_pressure + 1e5 - c.charge.closed_throttle;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct cg_course *list = NULL, *course;
        memset(column, 0, sizeof column);
        ask("time_s", "t");
        ask("speed_rpm", "n");
        ask(rows[i].key, "p");
        course = course_of(rows[i].text, &list);
        ck_assert_msg(course != NULL, "%s", problems.line[0]);
        ck_assert_double_eq_tol(course->row[0].of[CG_CHANNEL_LOAD],
                                1.0 - 6e4 / whole, 1e-6);
        ck_assert_double_eq_tol(course->row[1].of[CG_CHANNEL_LOAD], 1.0, 1e-6);
        cg_courses_free(list);
    }
}
END_TEST

/* Gasoline's own ratio is lambda 1; what the model does not run is held, and
 * counted. */
START_TEST(mixture_and_burn)
{
    struct cg_course *list = NULL, *course;
    ask_usual();
    ask("air_fuel_ratio", "afr");
    ask("burn50_deg", "ca");
    ask("coolant_F", "w");
    ask("nitrous_pct", "gas");
    course = course_of("t,n,p,afr,ca,w,gas\n0,3000,50,14.7,12,194,-2\n"
                       "1,4000,60,11.76,14,194,40\n2,5000,-80,60,70,203,101\n",
                       &list);
    ck_assert_msg(course != NULL, "%s", problems.line[0]);
    const double *first = course->row[0].of;
    ck_assert_double_eq_tol(first[CG_CHANNEL_LAMBDA], 1.0, 0.02);
    ck_assert_double_eq_tol(course->row[1].of[CG_CHANNEL_LAMBDA] /
                                first[CG_CHANNEL_LAMBDA],
                            0.8, 1e-9);
    ck_assert_double_eq_tol(first[CG_CHANNEL_COOLANT], 363.15, 1e-9);
    ck_assert_double_eq(course->row[2].of[CG_CHANNEL_LAMBDA], 1.8);
    ck_assert_double_eq(course->row[2].of[CG_CHANNEL_BURN50], 60.0);
    ck_assert_double_eq(course->row[2].of[CG_CHANNEL_LOAD], 0.0);
    ck_assert_double_eq(first[CG_CHANNEL_NITROUS], 0.0);
    ck_assert_double_eq(course->row[1].of[CG_CHANNEL_NITROUS], 0.4);
    ck_assert_double_eq(course->row[2].of[CG_CHANNEL_NITROUS], 1.0);
    ck_assert_uint_eq(course->log.held, 2);
    ck_assert(isnan(first[CG_CHANNEL_OIL]));
    cg_courses_free(list);
}
END_TEST

START_TEST(gaps_are_filled_straight)
{
    struct cg_course *list = NULL, *course;
    ask_usual();
    ask("coolant_C", "w");
    course = course_of("t,n,p,w\n0,3000,50,\n0.5,4000,,\n1,,-,90\n"
                       "1.5,6000,80,\n2.5,6600,100,nan\n",
                       &list);
    ck_assert_msg(course != NULL, "%s", problems.line[0]);
    ck_assert_uint_eq(course->log.filled[CG_CHANNEL_SPEED], 1);
    ck_assert_uint_eq(course->log.filled[CG_CHANNEL_LOAD], 2);
    ck_assert_uint_eq(course->log.filled[CG_CHANNEL_COOLANT], 4);
    ck_assert_uint_eq(course->log.taken, 5);
    at(course, 1.0, CG_CHANNEL_SPEED, 5000.0 / 60.0);
    double of[CG_CHANNELS];
    cg_course_at(course, 1.0, of);
    ck_assert_double_eq_tol(of[CG_CHANNEL_LOAD],
                            course->row[0].of[CG_CHANNEL_LOAD] +
                                0.4 *
                                    (1.0 - course->row[0].of[CG_CHANNEL_LOAD]),
                            1e-9);
    at(course, 2.5, CG_CHANNEL_COOLANT, 363.15);
    cg_courses_free(list);
}
END_TEST

/* Idling and standing at both ends: a second before is kept, ten after, and
 * nothing of an engine that stands. */
START_TEST(idle_ends_are_trimmed)
{
    char text[4096] = "t,n,p\n";
    struct cg_course *list = NULL, *course;
    size_t used = strlen(text);
    for (int i = 0; i <= 80; i++) {
        bool runs = i >= 20 && i <= 40, stands = i < 4 || i > 76;
        used += (size_t)snprintf(text + used, sizeof text - used,
                                 "%.1f,%d,%d\n", 100.0 + 0.5 * i,
                                 runs     ? 4000 + 50 * i
                                 : stands ? 0
                                          : 850,
                                 runs ? 60 : -70);
    }
    ask_usual();
    course = course_of(text, &list);
    ck_assert_msg(course != NULL, "%s", problems.line[0]);
    ck_assert_double_eq_tol(course->log.begin, 109.0, 1e-9);
    ck_assert_double_eq_tol(course->log.idle_begin, 9.0, 1e-9);
    ck_assert_double_eq_tol(course->log.idle_end, 10.0, 1e-9);
    ck_assert_double_eq_tol(course->row[course->rows - 1].time, 21.0, 1e-9);
    ck_assert_uint_eq(course->log.lines, 81);
    cg_courses_free(list);
}
END_TEST

/* A line that is wrong is told with its number, and nothing is taken. */
START_TEST(lines_are_told)
{
    static const struct {
        const char *text, *says;
    } rows[] = {
        {"t,n,p\n0,3000,50\n1,4000,60\n0.9,5000,70\n",
         LOG ":4: error: t: goes back, from 1 to 0.9; times must rise"},
        {"t,n,p\n0,3000,50\n1,fast,60\n", LOG ":3: error: n: not a number"},
        {"t,n,p\n0,3000,50\n1,4000,700\n", LOG ":3: error: p: cannot be"},
        {"t,n,p\n0,3000,50\n1,4000\n", LOG ":3: error: 2 cells"},
        {"t,n,boots\n0,3000,50\n1,4000,60\n",
         LOG ":1: error: p: no such heading for boost_kPa"},
        {"t,n,p,n\n0,3000,50,1\n1,4000,60,1\n",
         LOG ":1: error: n: stands twice"},
        {"t;n;p\n0;3000;5,5\n1;4000;5.5\n",
         LOG ":3: error: p: a decimal point here, a decimal comma in line 2"},
        {"t,n,p\n0,3000,50\n3,4000,60\n",
         LOG ":3: error: t: 3 s after the line before"},
        {"t,n,p\n0,3000,50\r1,9000,100\n2,3000,50\n3,3000,50\n",
         LOG ":2: error: a carriage return inside the line"},
        {"t,n,p\r0,3000,50\r1,9000,100\r",
         LOG ":1: error: a carriage return inside the line"},
        {"t,n,p\ns,rpm,kPa\nx,3000rpm,y\n1,4000,60\n2,4000,60\n",
         LOG ":3: error: no number in this line; one line of units"},
        {"t,n,p\ns,rpm\nfast,faster\n1,4000,60\n2,4000,60\n",
         LOG ":3: error: no number in this line; one line of units"},
        {"t,n,p\n0,3000,50\n1,4000,60,\n",
         LOG ":3: error: 4 cells, the line of headings has 3; nothing follows "
             "the last separator, it is one too many"},
        {"t,n,p\n0,3000,50,1\n1,4000,60\n",
         LOG ":2: error: 4 cells, the line of headings has 3; decimal commas"},
        {"t;n;p\n0;3.000;-50\n1;4.000;-50\n",
         LOG ":2: error: n: stands throughout, 4 rpm and"},
        {"t;n;p\n0;1100;-50\n1;1200;-50\n",
         LOG ":2: error: n: idles throughout, 1200 rpm and"},
        {"t,n,p\n", LOG ": error: no run"},
        {"", LOG ": error: t: no line of headings"}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct cg_course *list = NULL;
        ask_usual();
        ck_assert_ptr_null(course_of(rows[i].text, &list));
        ck_assert_uint_ge(problems.count, 1);
        ck_assert_msg(
            strncmp(problems.line[0], rows[i].says, strlen(rows[i].says)) == 0,
            "%s\nnot\n%s", problems.line[0], rows[i].says);
        cg_courses_free(list);
    }
}
END_TEST

/* Times too coarse for the log, of which most rows would be lost; one that
 * stumbles is read, and what is left out is counted. */
START_TEST(repeated_times_are_counted)
{
    char text[4096] = "t,n,p\n";
    struct cg_course *list = NULL, *course;
    size_t used = strlen(text);
    for (int i = 0; i < 60; i++)
        used += (size_t)snprintf(text + used, sizeof text - used,
                                 "%d,%d,100\n", i / 10, 4000 + 10 * i);
    ask_usual();
    ck_assert_ptr_null(course_of(text, &list));
    ck_assert_uint_eq(problems.count, 1);
    static const char says[] =
        LOG ":3: error: t: the time of the line before again, with other "
            "values, in 54 of 60 lines; 5 % of them are allowed";
    ck_assert_msg(strncmp(problems.line[0], says, strlen(says)) == 0, "%s",
                  problems.line[0]);
    used = strlen(strcpy(text, "t,n,p\n"));
    for (int i = 0; i < 60; i++)
        used += (size_t)snprintf(text + used, sizeof text - used,
                                 "%d,%d,100\n", i == 20 ? 19 : i,
                                 4000 + 10 * i);
    course = course_of(text, &list);
    ck_assert_msg(course != NULL, "%s", problems.line[0]);
    ck_assert_uint_eq(course->log.repeated, 1);
    ck_assert_uint_eq(course->log.lines, 60);
    cg_courses_free(list);
}
END_TEST

/* Editors of other systems: what a file is to be saved as. */
START_TEST(not_a_text)
{
    static const struct {
        const char *text;
        size_t length;
        const char *says;
    } rows[] = {{"\xFF\xFEt\0,\0n\0", 8,
                 LOG ":1: a zero byte, not a text file; text in UTF-16 is to "
                     "be saved as UTF-8"},
                {"t,n,p\r0,3000,50\r", 16,
                 LOG ":1: a line of more than 8191 letters, with carriage "
                     "returns inside; lines that end with LF or CR LF"}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct cg_case c = engine();
        struct cg_course *list = NULL, *course = NULL;
        struct cg_error error = {CG_OK, ""};
        FILE *file = fopen(LOG, "w");
        ck_assert_ptr_nonnull(file);
        for (int k = 0; k < 600; k++)
            fwrite(rows[i].text, 1, rows[i].length, file);
        fclose(file);
        ask_usual();
        memset(&problems, 0, sizeof problems);
        ck_assert_int_eq(
            cg_log_read(LOG, &c, column, &list, &course, &problems, &error),
            CG_BAD_INPUT);
        ck_assert_msg(
            strncmp(error.text, rows[i].says, strlen(rows[i].says)) == 0, "%s",
            error.text);
        remove(LOG);
        cg_courses_free(list);
    }
}
END_TEST

/* The highest beside the run, in the time taken alone; the engine as it was in
 * the seconds before, at nearly the highest load. */
START_TEST(highest_of_a_column)
{
    static const char text[] = "t n p e\n0 3000 0 -\n2 4200 100 800\n"
                               "3 4800 100 nan\n4 5400 100 880\n"
                               "5 3000 -40 900\n6 3000 -40 700\n";
    static const char idles[] = "t n p e\n0 900 -70 1200\n1.5 900 -70 700\n"
                                "3 6000 100 800\n4 6000 100 790\n";
    struct cg_course *list = NULL, *course;
    ask_usual();
    column[CG_LOGGED_FOUND] = (struct cg_log_column){
        cg_unit_find(CG_TEMPERATURE, "C"), "e", "column_C"};
    course = course_of(text, &list);
    ck_assert_msg(course != NULL, "%s", problems.line[0]);
    const struct cg_log_highest *highest = &course->log.highest;
    ck_assert_double_eq_tol(highest->value, 1173.15, 1e-9);
    ck_assert_double_eq_tol(highest->time, 5.0, 1e-12);
    ck_assert_double_eq_tol(highest->of[CG_CHANNEL_SPEED], 80.0, 1e-9);
    ck_assert_double_eq_tol(highest->of[CG_CHANNEL_LOAD], 1.0, 1e-9);
    ck_assert(isnan(highest->of[CG_CHANNEL_OIL]));
    cg_courses_free(list);
    list = NULL;
    course = course_of(idles, &list);
    ck_assert_msg(course != NULL, "%s", problems.line[0]);
    ck_assert_double_eq_tol(course->log.highest.value, 1073.15, 1e-9);
    cg_courses_free(list);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("log");
    TCase *tests = tcase_create("log");
    tcase_add_test(tests, tables_of_any_kind);
    tcase_add_test(tests, load_by_any_pressure);
    tcase_add_test(tests, mixture_and_burn);
    tcase_add_test(tests, gaps_are_filled_straight);
    tcase_add_test(tests, idle_ends_are_trimmed);
    tcase_add_test(tests, highest_of_a_column);
    tcase_add_test(tests, lines_are_told);
    tcase_add_test(tests, repeated_times_are_counted);
    tcase_add_test(tests, not_a_text);
    suite_add_tcase(suite, tests);
    return check_run(suite);
}
