/* What goes into a page: text that cannot become markup, and drawings that
 * stand by themselves. */
#include <stdio.h>
#include <string.h>

#include "check_close.h"
#include "html_text.h"
#include "svg_inline.h"

enum { BUFFER = 4096 };
static char buffer[BUFFER];

static FILE *begin(void)
{
    FILE *file = tmpfile();
    ck_assert_ptr_nonnull(file);
    return file;
}

static const char *end(FILE *file)
{
    rewind(file);
    size_t length = fread(buffer, 1, BUFFER - 1, file);
    buffer[length] = '\0';
    fclose(file);
    return buffer;
}

#define WRONG "?"

static const struct {
    const char *text, *html;
} texts[] = {
    {"", ""},
    {"plain, 86.5 mm", "plain, 86.5 mm"},
    {"<script>alert('1')</script>",
     "&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;"},
    {"a&b \"c\" &amp;", "a&amp;b &quot;c&quot; &amp;amp;"},
    {"line\nnext\ttab", "line\nnext\ttab"},
    {"\x01\x1b[31m\x7f", WRONG WRONG "[31m" WRONG},
    {"\xc2\xb5m \xe2\x82\xac \xf0\x9f\x94\xa7",
     "\xc2\xb5m \xe2\x82\xac \xf0\x9f\x94\xa7"},
    /* cut short, overlong, surrogate, too high, lone */
    {"\xc2", WRONG},
    {"\xe2\x82", WRONG WRONG},
    {"\xc0\xbc", WRONG WRONG},
    {"\xe0\x80\xbc", WRONG WRONG WRONG},
    {"\xed\xa0\x80", WRONG WRONG WRONG},
    {"\xf4\x90\x80\x80", WRONG WRONG WRONG WRONG},
    {"\x80<", WRONG "&lt;"},
    {"\xef\xbf\xbf", WRONG},
    /* C1, turned reading, line separator */
    {"\xc2\x9b" "31m\xc2\xa0", WRONG "31m\xc2\xa0"},
    {"a\xe2\x80\xae" "b\xe2\x81\xa6" "c\xe2\x80\xa8",
     "a" WRONG "b" WRONG "c" WRONG},
};

START_TEST(text_is_never_markup)
{
    FILE *file = begin();
    cg_html_put(file, texts[_i].text);
    ck_assert_str_eq(end(file), texts[_i].html);
}
END_TEST

static const char *inline_of(const char *svg, bool *taken)
{
    struct cg_svg_words words = {"f", "A \"title\"", "What <is> seen"};
    FILE *file = begin();
    *taken = cg_svg_is_drawing(svg);
    if (*taken)
        cg_svg_inline(file, svg, &words);
    return end(file);
}

#define OPEN "<?xml version='1.0'?><!-- made by -->\n<svg width=\"9\" "       \
             "viewBox=\"0 0 9 9\">"
#define HEAD                                                                  \
    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\" "          \
    "role=\"img\" aria-labelledby=\"f-title\" aria-describedby=\"f-words\">"  \
    "\n<title id=\"f-title\">A &quot;title&quot;</title>\n"                   \
    "<desc id=\"f-words\">What &lt;is&gt; seen</desc>\n"

static const struct {
    const char *what, *svg, *html; /* html NULL: not taken */
} drawings[] = {
    {"own title, comment", OPEN "<title>G</title><desc>5.4</desc><!-- <b> -->"
                                "<g></g></svg>",
     HEAD "<g></g></svg>"},
    {"ids are marked", OPEN "<path id='p'/><use xlink:href='#p' "
                            "fill=\"url(#p)\"/></svg>",
     HEAD "<path id=\"f-p\"/><use href=\"#f-p\" fill=\"url(#f-p)\"/></svg>"},
    {"plot numbers fall away", OPEN "<g id=\"gnuplot_plot_1\" ></g></svg>",
     HEAD "<g></g></svg>"},
    {"blanks around the sign", OPEN "<g fill = 'rgb(1, 2, 3)'></g></svg>",
     HEAD "<g fill=\"rgb(1, 2, 3)\"></g></svg>"},
    {"styles", OPEN "<g style='fill:none; stroke:rgb(1,2,3)'>"
                    "<g style='filter:url(#b)'></g></g></svg>",
     HEAD "<g style=\"fill:none;stroke:rgb(1,2,3)\">"
          "<g style=\"filter:url(#f-b)\"></g></g></svg>"},
    {"text stays", OPEN "<text>1 &lt; 2</text></svg>",
     HEAD "<text>1 &lt; 2</text></svg>"},
    {"script", OPEN "<script>x()</script></svg>", NULL},
    {"SCRIPT", OPEN "<SCRIPT>x()</SCRIPT></svg>", NULL},
    {"svg:script", OPEN "<svg:script>x()</svg:script></svg>", NULL},
    {"one in another", OPEN "<svg></svg></svg>", NULL},
    {"handlers", OPEN "<g onclick=\"x()\"></g></svg>", NULL},
    {"HANDLERS", OPEN "<g ONCLICK=\"x()\"></g></svg>", NULL},
    {"handlers after a slash", OPEN "<g/onclick=\"x()\"></g></svg>", NULL},
    {"handlers without quotes", OPEN "<g onclick=x()></g></svg>", NULL},
    {"ONLOAD of the root",
     "<svg viewBox='0 0 9 9' ONLOAD=\"x()\"></svg>", NULL},
    {"from outside", OPEN "<use xlink:href=\"https://x.example/a#p\"/></svg>",
     NULL},
    {"from a script", OPEN "<use xlink:href=\"javascript:x()\"/></svg>", NULL},
    {"another href", OPEN "<use href=\"#p\"/></svg>", NULL},
    {"a base of its own", OPEN "<g xml:base=\"https://x.example/\"></g></svg>",
     NULL},
    {"another kind of names", OPEN "<g xmlns=\"http://www.w3.org/1999/xhtml\">"
                                   "</g></svg>", NULL},
    {"fill from outside",
     OPEN "<g fill=\"url(https://x.example/a)\"></g></svg>", NULL},
    {"FILL from outside", OPEN "<g fill=\"URL(#p)\"></g></svg>", NULL},
    {"fill and more", OPEN "<g fill=\"url(#p) url(//x.example)\"></g></svg>",
     NULL},
    {"style from outside",
     OPEN "<g style=\"filter:url(//x.example)\"></g></svg>", NULL},
    {"style over the page", OPEN "<g style=\"position:fixed\"></g></svg>",
     NULL},
    {"style of another kind",
     OPEN "<g style=\"fill:none;@import 'a'\"></g></svg>", NULL},
    {"style in disguise", OPEN "<g style=\"fill:u\\72l(a)\"></g></svg>", NULL},
    {"set", OPEN "<set attributeName=\"href\" to=\"a\"/></svg>", NULL},
    {"link", OPEN "<a href=\"https://x.example\"></a></svg>", NULL},
    {"style sheet", OPEN "<style>g{}</style></svg>", NULL},
    {"a quote in the other quotes", OPEN "<g class='a\"b'></g></svg>", NULL},
    {"entity of its own", OPEN "<text>&e;</text></svg>", NULL},
    {"entity in a value", OPEN "<g fill=\"&#117;rl(a)\"></g></svg>", NULL},
    {"CDATA", OPEN "<text><![CDATA[<script>]]></text></svg>", NULL},
    {"doctype", OPEN "<!DOCTYPE svg [ ]></svg>", NULL},
    {"instruction", OPEN "<?php ?></svg>", NULL},
    {"crossed", OPEN "<g><text></g></text></svg>", NULL},
    {"closed early", OPEN "</svg><script></script></svg>", NULL},
    {"ESC", OPEN "<text>\x1b[2J</text></svg>", NULL},
    {"turned", OPEN "<text>a\xe2\x80\xae</text></svg>", NULL},
    {"image", OPEN "<image href=\"a.png\"/></svg>", NULL},
    {"HTML inside", OPEN "<foreignObject></foreignObject></svg>", NULL},
    {"cut short", OPEN "<g>", NULL},
    {"no viewBox", "<svg width=\"9\"></svg>", NULL},
    {"no drawing", "not a drawing", NULL},
    {"nothing", "", NULL},
};

START_TEST(drawing_stands_by_itself)
{
    bool taken;
    const char *html = inline_of(drawings[_i].svg, &taken);
    ck_assert_msg(taken == (drawings[_i].html != NULL), "%s: %s",
                  drawings[_i].what, taken ? "taken" : "not taken");
    ck_assert_str_eq(html, taken ? drawings[_i].html : "");
}
END_TEST

/* However a drawing is cut, it is refused or taken over without a crash. */
START_TEST(cut_drawings_do_no_harm)
{
    static const char whole[] = OPEN "<g id='a' fill = 'url(#a)' x=\"1\"/>"
                                     "<!-- c --><text>t</text></svg>";
    char cut[sizeof whole];
    bool taken;
    for (size_t i = 0; i < sizeof whole - 1; i++) {
        memcpy(cut, whole, sizeof cut);
        cut[i] = '\0';
        inline_of(cut, &taken);
        ck_assert(!taken);
        memcpy(cut, whole, sizeof cut);
        cut[i] = '\'';
        inline_of(cut, &taken);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("page");
    TCase *core = tcase_create("page");
    tcase_add_loop_test(core, text_is_never_markup, 0,
                        sizeof texts / sizeof texts[0]);
    tcase_add_loop_test(core, drawing_stands_by_itself, 0,
                        sizeof drawings / sizeof drawings[0]);
    tcase_add_test(core, cut_drawings_do_no_harm);
    suite_add_tcase(suite, core);
    return check_run(suite);
}
