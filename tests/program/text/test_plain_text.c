/* Text from outside on its way to a reader: shown, never obeyed. */
#include <string.h>

#include "check_close.h"
#include "plain_text.h"

static const struct {
    const char *text, *plain, *word; /* word: of a shell */
} texts[] = {
    {"out", "out", "out"},
    {"/a/b-1.2,x=+3@%:", "/a/b-1.2,x=+3@%:", "/a/b-1.2,x=+3@%:"},
    {"", "", "''"},
    {"-o", "-o", "./'-o'"},
    {"two words", "two words", "'two words'"},
    {"a'b", "a'b", "'a'\\''b'"},
    {"''", "''", "''\\'''\\'''"},
    {"$(x) `y` \"z\" \\n ~ * ;", "$(x) `y` \"z\" \\n ~ * ;",
     "'$(x) `y` \"z\" \\n ~ * ;'"},
    {"l\xc3\xb6we \xf0\x9f\x94\xa7", "l\xc3\xb6we \xf0\x9f\x94\xa7",
     "'l\xc3\xb6we \xf0\x9f\x94\xa7'"},
    {"a\nb\tc\x1b[2J\x7f", "a?b?c?[2J?", "'a?b?c?[2J?'"},
    {"\xc2\x9b" "2J\xc2\xa0", "?2J\xc2\xa0", "'?2J\xc2\xa0'"},
    {"a\xe2\x80\xae" "b\xe2\x81\xa9" "c\xe2\x80\xa9", "a?b?c?", "'a?b?c?'"},
    {"\xff\xc0\x9b\xe2\x82", "?????", "'?????" "'"},
};

START_TEST(nothing_acts)
{
    const char *text = texts[_i].text;
    ck_assert_str_eq(cg_plain(text).text, texts[_i].plain);
    ck_assert_str_eq(cg_plain_word(text).text, texts[_i].word);
    ck_assert(cg_plain_is(text) == (strcmp(text, texts[_i].plain) == 0));
    ck_assert(cg_plain_is(texts[_i].plain));
}
END_TEST

/* However long, within its room, and the quotes closed. */
START_TEST(long_texts_end)
{
    char text[2 * CG_PLAIN_LENGTH];
    memset(text, '\'', sizeof text);
    text[sizeof text - 1] = '\0';
    struct cg_plain plain = cg_plain(text), word = cg_plain_word(text);
    ck_assert_uint_eq(strlen(plain.text), CG_PLAIN_LENGTH - 1);
    ck_assert_str_eq(plain.text + CG_PLAIN_LENGTH - 4, "...");
    ck_assert_uint_lt(strlen(word.text), CG_PLAIN_LENGTH);
    ck_assert_uint_eq(strlen(word.text) % 4, 2); /* '\'' each, in quotes */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("plain text");
    TCase *tcase = tcase_create("plain text");
    tcase_add_loop_test(tcase, nothing_acts, 0,
                        (int)(sizeof texts / sizeof texts[0]));
    tcase_add_test(tcase, long_texts_end);
    suite_add_tcase(suite, tcase);
    return check_run(suite);
}
