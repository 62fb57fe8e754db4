/* Statuses: their words, exit codes and the record of an error. */
#include <string.h>

#include "check_close.h"
#include "status.h"

/* As the README promises them to scripts. */
static const struct {
    enum cg_status status;
    int code;
    const char *text;
} row[] = {{CG_OK, 0, "done"},
           {CG_NOT_SAFE, 1, "done, and the answer is: not safe"},
           {CG_BAD_INPUT, 2, "bad usage or input"},
           {CG_NUMERICAL, 3, "the computation failed"},
           {CG_STOPPED, 3, "stopped before the end"},
           {CG_NO_MEMORY, 3, "out of memory"},
           {CG_FILE, 4, "a file could not be read or written"}};

START_TEST(words_and_exit_codes)
{
    for (size_t i = 0; i < sizeof row / sizeof row[0]; i++) {
        ck_assert_int_eq(cg_status_exit(row[i].status), row[i].code);
        ck_assert_str_eq(cg_status_text(row[i].status), row[i].text);
    }
}
END_TEST

/* A number that is none of them, as a broken caller may pass. */
START_TEST(a_number_that_is_no_status)
{
    enum cg_status none = (enum cg_status)99;
    ck_assert_str_eq(cg_status_text(none), "unknown status");
    ck_assert_int_eq(cg_status_exit(none), 3);
}
END_TEST

START_TEST(the_record)
{
    struct cg_error error = {CG_OK, "before"};
    ck_assert_int_eq(
        cg_error_set(&error, CG_BAD_INPUT, "%s: %d is %s", "x", 7, "odd"),
        CG_BAD_INPUT);
    ck_assert_int_eq(error.status, CG_BAD_INPUT);
    ck_assert_str_eq(error.text, "x: 7 is odd");
    ck_assert_int_eq(cg_error_set(NULL, CG_FILE, "no one reads"), CG_FILE);
}
END_TEST

/* A line too long is cut, and still a string. */
START_TEST(a_long_line_is_cut)
{
    struct cg_error error;
    const size_t space = sizeof error.text;
    char words[2000];
    memset(words, 'w', sizeof words - 1);
    words[sizeof words - 1] = '\0';
    (void)cg_error_set(&error, CG_NUMERICAL, "%s", words);
    ck_assert_uint_eq(strlen(error.text), space - 1);
    ck_assert_mem_eq(error.text, words, space - 1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("status");
    TCase *all = tcase_create("status");
    tcase_add_test(all, words_and_exit_codes);
    tcase_add_test(all, a_number_that_is_no_status);
    tcase_add_test(all, the_record);
    tcase_add_test(all, a_long_line_is_cut);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
