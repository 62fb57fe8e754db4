#include "svg_inline.h"

#include <assert.h>
#include <string.h>

#include "html_text.h"
#include "plain_text.h"
#include "svg_allowed.h"

#define BLANKS " \t\r\n"

enum { DEPTH = 64 }; /* of elements in each other; gnuplot's go to a dozen */

/* A drawing on its way into the page, or only looked at. */
struct copy {
    FILE *file; /* NULL: only looked at */
    const char *at, *mark;
    struct cg_span open[DEPTH]; /* names of the elements we are in */
    size_t depth;
};

static bool begins(const char *text, const char *with)
{
    return strncmp(text, with, strlen(with)) == 0;
}

static struct cg_span name_at(const char *at)
{
    return (struct cg_span){at, at + strcspn(at, BLANKS "=/>\"'<")};
}

static const char *over_blanks(const char *at)
{
    return at + strspn(at, BLANKS);
}

static void put(const struct copy *copy, const char *text, size_t length)
{
    if (copy->file != NULL)
        fwrite(text, 1, length, copy->file);
}

/* Takes NAME = 'VALUE', blanks around the sign allowed. */
static bool take_attribute(struct copy *copy, struct cg_span *name,
                           struct cg_span *value)
{
    *name = name_at(copy->at);
    const char *sign = over_blanks(name->end);
    if (name->end == name->at || *sign != '=')
        return false;
    const char *quote = over_blanks(sign + 1);
    if (*quote != '"' && *quote != '\'')
        return false;
    const char *end = strchr(quote + 1, *quote);
    if (end == NULL)
        return false;
    *value = (struct cg_span){quote + 1, end};
    copy->at = over_blanks(end + 1);
    return true;
}

/* An element's tag from its name on; *empty: it ends itself. */
static bool copy_tag(struct copy *copy, struct cg_span name, bool *empty)
{
    struct cg_span attribute, value;
    put(copy, name.at - 1, (size_t)(name.end - name.at) + 1);
    copy->at = over_blanks(name.end);
    while (*copy->at != '>' && *copy->at != '/')
        if (!take_attribute(copy, &attribute, &value) ||
            !cg_svg_attribute(copy->file, copy->mark, attribute, value))
            return false;
    *empty = *copy->at == '/';
    if (*empty)
        put(copy, copy->at++, 1);
    put(copy, ">", 1);
    return *copy->at++ == '>';
}

/* "</name>", the one opened last. */
static bool copy_end(struct copy *copy)
{
    struct cg_span name = name_at(copy->at + 2);
    struct cg_span open = copy->open[--copy->depth];
    size_t length = (size_t)(name.end - name.at);
    if (length != (size_t)(open.end - open.at) ||
        memcmp(name.at, open.at, length) != 0)
        return false;
    put(copy, copy->at, length + 2);
    put(copy, ">", 1);
    copy->at = over_blanks(name.end);
    return *copy->at++ == '>';
}

/* Passes over everything up to and with `closing`. */
static bool skip_past(struct copy *copy, const char *closing)
{
    const char *end = strstr(copy->at, closing);
    if (end != NULL)
        copy->at = end + strlen(closing);
    return end != NULL;
}

/* From a "<" on: one tag, or what is left out. */
static bool copy_markup(struct copy *copy)
{
    struct cg_span name = name_at(copy->at + 1);
    bool empty;
    if (begins(copy->at, "<!--"))
        return skip_past(copy, "-->");
    if (begins(copy->at, "<title>"))
        return skip_past(copy, "</title>");
    if (begins(copy->at, "<desc>"))
        return skip_past(copy, "</desc>");
    if (copy->at[1] == '/')
        return copy_end(copy);
    if (!cg_svg_element(name) || copy->depth == DEPTH ||
        !copy_tag(copy, name, &empty))
        return false;
    if (!empty)
        copy->open[copy->depth++] = name;
    return true;
}

/* All that is inside the root, to its end; nothing stands behind it. */
static bool copy_inside(struct copy *copy)
{
    while (copy->depth > 0) {
        struct cg_span text = {copy->at, copy->at + strcspn(copy->at, "<")};
        if (*text.end == '\0' || !cg_svg_text(text))
            return false;
        put(copy, text.at, (size_t)(text.end - text.at));
        copy->at = text.end;
        if (!copy_markup(copy))
            return false;
    }
    return *over_blanks(copy->at) == '\0';
}

/* Passes over the root's tag; *box: the value of its viewBox. */
static bool take_root(struct copy *copy, const char *svg, struct cg_span *box)
{
    struct cg_span name, value;
    const char *root = strstr(svg, "<svg");
    *box = (struct cg_span){svg, svg};
    if (root == NULL || !cg_span_is(name_at(root + 1), "svg"))
        return false;
    copy->open[copy->depth++] = name_at(root + 1);
    copy->at = over_blanks(copy->open[0].end);
    while (*copy->at != '>') {
        if (!take_attribute(copy, &name, &value) ||
            !cg_svg_root_attribute(name))
            return false;
        if (cg_span_is(name, "viewBox"))
            *box = value;
    }
    copy->at++;
    return box->end > box->at &&
           box->at + strspn(box->at, "0123456789. -") >= box->end;
}

static void put_root(const struct copy *copy, struct cg_span box,
                     const struct cg_svg_words *words)
{
    fprintf(copy->file,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"%.*s\" "
            "role=\"img\" aria-labelledby=\"%s-title\" "
            "aria-describedby=\"%s-words\">\n<title id=\"%s-title\">",
            (int)(box.end - box.at), box.at, copy->mark, copy->mark,
            copy->mark);
    cg_html_put(copy->file, words->title);
    fprintf(copy->file, "</title>\n<desc id=\"%s-words\">", copy->mark);
    cg_html_put(copy->file, words->words);
    fputs("</desc>\n", copy->file);
}

/* Whether text holds nothing but what a page may show, and its lines. */
static bool is_readable(const char *text)
{
    bool shown = true;
    while (*text != '\0' && shown) {
        size_t length = cg_plain_step(text, &shown);
        shown = shown || strchr(BLANKS, *text) != NULL;
        text += length;
    }
    return shown;
}

bool cg_svg_is_drawing(const char *svg)
{
    struct copy copy = {.mark = ""};
    struct cg_span box;
    return is_readable(svg) && take_root(&copy, svg, &box) &&
           copy_inside(&copy);
}

void cg_svg_inline(FILE *file, const char *svg,
                   const struct cg_svg_words *words)
{
    struct copy copy = {.file = file, .mark = words->mark};
    struct cg_span box;
    bool good = take_root(&copy, svg, &box);
    put_root(&copy, box, words);
    good = good && copy_inside(&copy);
    assert(good);
    (void)good;
}
