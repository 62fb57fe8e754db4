/* The reader of CSV text: what it takes, what it refuses, and where. */
#include <stdio.h>
#include <string.h>

#include "check_close.h"
#include "csv_text.h"

/* Rows of a text, cells joined by '|' and rows by '/', "!LINE" for trouble. */
static const char *rows_of(const char *text, char separator)
{
    static char out[1024];
    char copy[1024];
    struct cg_csv csv;
    struct cg_csv_record record;
    enum cg_csv_read read;
    snprintf(copy, sizeof copy, "%s", text);
    out[0] = '\0';
    const char *trouble = cg_csv_begin(&csv, copy);
    ck_assert_msg(trouble == NULL, "%s", trouble);
    ck_assert_int_eq(csv.separator, separator);
    while ((read = cg_csv_next(&csv, &record)) != CG_CSV_END) {
        size_t used = strlen(out);
        if (read == CG_CSV_TROUBLE) {
            snprintf(out + used, sizeof out - used, "!%u/", record.line);
            continue;
        }
        for (size_t i = 0; i < record.cells; i++) {
            used = strlen(out);
            snprintf(out + used, sizeof out - used, "%s%c", record.cell[i],
                     i + 1 < record.cells ? '|' : '/');
        }
    }
    return out;
}

static const struct {
    const char *what, *text;
    char separator;
    const char *rows;
} texts[] = {
    {"commas", "a,b\n1,2\n", ',', "a|b/1|2/"},
    {"no newline at the end", "a,b\n1,2", ',', "a|b/1|2/"},
    {"semicolons", "a;b\n1,5;2\n", ';', "a|b/1,5|2/"},
    {"tabs", "a\tb\n1\t\n", '\t', "a|b/1|/"},
    {"byte-order mark", "\xEF\xBB\xBF" "a,b\n1,2\n", ',', "a|b/1|2/"},
    {"CRLF", "a,b\r\n1,2\r\n", ',', "a|b/1|2/"},
    {"CR alone", "a,b\r1,2\r", ',', "a|b/1|2/"},
    {"empty cells", "a,b,c\n,,3\n1,,\n", ',', "a|b|c/||3/1||/"},
    {"outer blanks", " a , b\n 1 ,\t2 \n", ',', "a|b/1|2/"},
    {"quoted cells", "\"a\",\"b\"\n\"1\" , \"2\"\n", ',', "a|b/1|2/"},
    {"separator in quotes", "a,b\n\"1,5\",2\n", ',', "a|b/1,5|2/"},
    {"separator in a quoted header", "\"a;x\",b\n1,2\n", ',', "a;x|b/1|2/"},
    {"quote in quotes", "a,b\n\"1\"\"x\"\"\",2\n", ',', "a|b/1\"x\"|2/"},
    {"newline in quotes", "a,b\n\"1\n2\",3\n4\n", ',', "a|b/1\n2|3/4/"},
    {"empty quotes", "a,b\n\"\",2\n", ',', "a|b/|2/"},
    {"blanks in quotes stay", "a,b\n\" 1 \",2\n", ',', "a|b/ 1 |2/"},
    {"empty lines", "\n\na,b\n\n ,,\n1,2\n;;\n", ',', "a|b/1|2/"},
    {"remarks", "# x, y; z\na,b\n#\"\n1,2\n", ',', "a|b/1|2/"},
    {"a quoted remark", "\"# x; \"\"y\"\"\nz\",,\na,b\n1,2\n", ',',
     "a|b/1|2/"},
    {"an open quote", "a,b\n1,2\n3,\"4\n5,6\n", ',', "a|b/1|2/!3/"},
    {"text after quotes", "a,b\n\"1\"x,2\n3,4\n", ',', "a|b/!2/3|4/"},
    {"a quote inside", "a,b\n1\"x,2\n3,4\n", ',', "a|b/!2/3|4/"},
    {"trouble after lines in quotes", "a,b\n\"1\n\n\",2\n3\",4\n5,6", ',',
     "a|b/1\n\n|2/!5/5|6/"},
    {"trouble counts CRLF once", "a,b\r\n\"1\r\n2\",3\r\n4\",5\r\n", ',',
     "a|b/1\r\n2|3/!4/"},
};

START_TEST(texts_as_they_come)
{
    const char *got = rows_of(texts[_i].text, texts[_i].separator);
    ck_assert_msg(strcmp(got, texts[_i].rows) == 0, "%s: %s, expected %s",
                  texts[_i].what, got, texts[_i].rows);
}
END_TEST

START_TEST(no_header_or_no_one_separator)
{
    static const struct {
        const char *text, *says;
        unsigned line;
    } bad[] = {{"", "no header", 1},
               {"\xEF\xBB\xBF", "no header", 1},
               {"\n# only a remark\n,,\n", "no header", 4},
               {"cylinder\n1\n", "no separator", 1},
               {"\na,b;c\n1,2;3\n", "two separators", 2},
               {"a\tb,c\n", "two separators", 1}};
    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        char copy[64];
        struct cg_csv csv;
        snprintf(copy, sizeof copy, "%s", bad[i].text);
        const char *trouble = cg_csv_begin(&csv, copy);
        ck_assert_msg(trouble != NULL && strstr(trouble, bad[i].says) != NULL,
                      "text %zu: %s", i, trouble != NULL ? trouble : "read");
        ck_assert_uint_eq(csv.line, bad[i].line);
    }
}
END_TEST

START_TEST(cells_are_bounded)
{
    char text[CG_CSV_CELLS + 64] = "a", exact[CG_CSV_CELLS + 64] = "a";
    struct cg_csv csv;
    struct cg_csv_record record;
    memset(text + 1, ',', CG_CSV_CELLS);
    strcat(text, "z\n1,2\n");
    ck_assert_ptr_null(cg_csv_begin(&csv, text));
    ck_assert_int_eq(cg_csv_next(&csv, &record), CG_CSV_TROUBLE);
    ck_assert_int_eq(cg_csv_next(&csv, &record), CG_CSV_RECORD);
    ck_assert_uint_eq(record.line, 2);
    memset(exact + 1, ',', CG_CSV_CELLS - 1);
    ck_assert_ptr_null(cg_csv_begin(&csv, exact));
    ck_assert_int_eq(cg_csv_next(&csv, &record), CG_CSV_RECORD);
    ck_assert_uint_eq(record.cells, CG_CSV_CELLS);
}
END_TEST

/* Any bytes end: no hang, no cell outside the text. */
START_TEST(any_bytes_end)
{
    static const char bytes[] = "\",;\t\n\r #a1.\xEF\xBB\xBF\x80";
    unsigned state = 12345;
    for (int run = 0; run < 20000; run++) {
        char text[48];
        struct cg_csv csv;
        struct cg_csv_record record;
        size_t length = sizeof text - 1, rows = 0;
        for (size_t i = 0; i < length; i++) {
            state = state * 1103515245u + 12345u;
            text[i] = bytes[(state >> 16) % (sizeof bytes - 1)];
        }
        text[length] = '\0';
        if (cg_csv_begin(&csv, text) != NULL)
            continue;
        enum cg_csv_read read;
        while ((read = cg_csv_next(&csv, &record)) != CG_CSV_END) {
            ck_assert_uint_lt(++rows, sizeof text);
            for (size_t i = 0; read == CG_CSV_RECORD && i < record.cells; i++)
                ck_assert(record.cell[i] >= text &&
                          record.cell[i] + strlen(record.cell[i]) <=
                              text + length);
        }
        ck_assert_ptr_eq(csv.rest, text + length);
    }
}
END_TEST

static const struct {
    const char *cell;
    char separator;
    double value;
    char sign; /* 'x': refused */
} numbers[] = {
    {"86.5", ',', 86.5, '.'},     {"86,5", ';', 86.5, ','},
    {"86,5", '\t', 86.5, ','},    {"86.5", ';', 86.5, '.'},
    {"4", ',', 4.0, '\0'},        {"+.5", ',', 0.5, '.'},
    {"5.", ',', 5.0, '.'},        {"-0,25", ';', -0.25, ','},
    {"8.65E+01", ',', 86.5, '.'}, {"8,65e1", ';', 86.5, ','},
    {"86,5", ',', 0, 'x'},        {"1.086,5", ';', 0, 'x'},
    {"1,086.5", ';', 0, 'x'},     {"1.086.500", ';', 0, 'x'},
    {"1 086", ';', 0, 'x'},       {"1\xC2\xA0" "086", ';', 0, 'x'},
    {"1'086", ';', 0, 'x'},       {"nan", ',', 0, 'x'},
    {"inf", ',', 0, 'x'},         {"-Infinity", ',', 0, 'x'},
    {"1e999", ',', 0, 'x'},       {"0x1p3", ',', 0, 'x'},
    {"86.5mm", ',', 0, 'x'},      {"", ',', 0, 'x'},
    {".", ',', 0, 'x'},           {"-", ',', 0, 'x'},
    {"1e", ',', 0, 'x'},          {"--1", ',', 0, 'x'},
    {"86.5 ", ',', 0, 'x'},       {"#REF!", ',', 0, 'x'},
    {"00000000000000000000000000000000000000000001", ',', 0, 'x'},
};

START_TEST(numbers_as_they_come)
{
    double value = -1.0;
    char sign = '?';
    const char *trouble = cg_csv_number(numbers[_i].cell,
                                        numbers[_i].separator, &value, &sign);
    if (numbers[_i].sign == 'x') {
        ck_assert_msg(trouble != NULL, "%s was read", numbers[_i].cell);
        ck_assert_double_eq(value, -1.0);
        return;
    }
    ck_assert_msg(trouble == NULL, "%s: %s", numbers[_i].cell, trouble);
    ck_assert_double_eq(value, numbers[_i].value);
    ck_assert_int_eq(sign, numbers[_i].sign);
}
END_TEST

START_TEST(quoting_is_undone_by_reading)
{
    char cell[64], text[80], small[8];
    cg_csv_quote("a \"b\", c;\nd", cell, sizeof cell);
    snprintf(text, sizeof text, "x,y\n%s,2\n", cell);
    ck_assert_str_eq(rows_of(text, ','), "x|y/a \"b\", c;\nd|2/");
    cg_csv_quote("\"\"\"\"\"\"\"\"", small, sizeof small);
    ck_assert_uint_lt(strlen(small), sizeof small);
    cg_csv_quote("0123456789", small, sizeof small);
    ck_assert_uint_lt(strlen(small), sizeof small);
    ck_assert_int_eq(small[0], '"');
    ck_assert_int_eq(small[strlen(small) - 1], '"');
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("csv_text");
    TCase *tcase = tcase_create("csv_text");
    tcase_add_loop_test(tcase, texts_as_they_come, 0,
                        sizeof texts / sizeof texts[0]);
    tcase_add_test(tcase, no_header_or_no_one_separator);
    tcase_add_test(tcase, cells_are_bounded);
    tcase_add_test(tcase, any_bytes_end);
    tcase_add_loop_test(tcase, numbers_as_they_come, 0,
                        sizeof numbers / sizeof numbers[0]);
    tcase_add_test(tcase, quoting_is_undone_by_reading);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
