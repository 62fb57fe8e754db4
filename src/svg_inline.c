#include "svg_inline.h"

#include <assert.h>
#include <string.h>

#include "html_text.h"

#define BLANKS " \t\r\n"

/* What has no business in a drawing: with one of these it is not taken. */
static const char *const refused[] = {"script", "style", "foreignObject",
                                      "image", "a", "iframe"};

/* The span of text from `at` up to, not with, `end`. */
struct span {
    const char *at, *end;
};

/* A drawing on its way into the page. */
struct copy {
    FILE *file;
    const char *at, *mark;
};

static bool begins(const char *text, const char *with)
{
    return strncmp(text, with, strlen(with)) == 0;
}

static bool is(struct span name, const char *text)
{
    size_t length = (size_t)(name.end - name.at);
    return length == strlen(text) && memcmp(name.at, text, length) == 0;
}

static struct span name_at(const char *at)
{
    return (struct span){at, at + strcspn(at, BLANKS "=/>\"'<")};
}

static bool is_plain(const char *svg)
{
    for (const char *at = strchr(svg, '<'); at != NULL;
         at = strchr(at + 1, '<'))
        for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++)
            if (is(name_at(at + 1), refused[i]))
                return false;
    return strstr(svg, "</svg>") != NULL;
}

/* The value of the root's viewBox; empty when there is none. */
static struct span view_box(const char *root)
{
    const char *end = strchr(root, '>');
    const char *at = strstr(root, "viewBox=\"");
    if (end == NULL || at == NULL || at > end)
        return (struct span){root, root};
    at += strlen("viewBox=\"");
    return (struct span){at, at + strspn(at, "0123456789. -")};
}

/* Ends an attribute's value; the quote around it may have been another. */
static void put_value(FILE *file, const char *at, const char *end)
{
    for (; at < end; at++)
        if (*at == '"')
            fputs("&quot;", file);
        else
            fputc(*at, file);
    fputc('"', file);
}

/* An id is marked; gnuplot's numbers of its plots, which nothing refers to and
 * which come twice, fall away.  So does what refers to anywhere outside, and
 * what a browser would act on. */
static void put_attribute(struct copy *copy, struct span name,
                          struct span value)
{
    bool href = is(name, "href") || is(name, "xlink:href");
    if (begins(name.at, "on") || begins(name.at, "xmlns") ||
        (is(name, "id") && begins(value.at, "gnuplot_")) ||
        (href && value.at[0] != '#'))
        return;
    fprintf(copy->file, " %.*s=\"",
            href ? 4 : (int)(name.end - name.at), href ? "href" : name.at);
    if (is(name, "id")) {
        fprintf(copy->file, "%s-", copy->mark);
    } else if (href) {
        fprintf(copy->file, "#%s-", copy->mark);
        value.at += 1;
    } else if (begins(value.at, "url(#")) {
        fprintf(copy->file, "url(#%s-", copy->mark);
        value.at += 5;
    }
    put_value(copy->file, value.at, value.end);
}

/* Finds NAME = 'VALUE' at `at`, blanks around the sign allowed; *past is what
 * comes after it. */
static bool attribute_at(const char *at, struct span *name,
                         struct span *value, const char **past)
{
    *name = name_at(at);
    const char *sign = name->end + strspn(name->end, BLANKS);
    if (name->end == name->at || *sign != '=')
        return false;
    const char *quote = sign + 1 + strspn(sign + 1, BLANKS);
    if (*quote != '"' && *quote != '\'')
        return false;
    const char *end = strchr(quote + 1, *quote);
    if (end == NULL)
        return false;
    *value = (struct span){quote + 1, end};
    *past = end + 1;
    return true;
}

/* Copies a tag from after its name to its end; what is no attribute falls
 * away. */
static void copy_attributes(struct copy *copy)
{
    while (*copy->at != '\0' && *copy->at != '>') {
        struct span name, value;
        const char *past;
        if (attribute_at(copy->at, &name, &value, &past)) {
            put_attribute(copy, name, value);
            copy->at = past;
        } else {
            if (copy->at[0] == '/' && copy->at[1] == '>')
                fputc('/', copy->file);
            copy->at++;
        }
    }
}

/* Passes over everything up to and with `closing`. */
static void skip_past(struct copy *copy, const char *closing)
{
    const char *end = strstr(copy->at, closing);
    copy->at = end != NULL ? end + strlen(closing)
                           : copy->at + strlen(copy->at);
}

/* From a "<" on: one tag, or what is left out. */
static void copy_markup(struct copy *copy)
{
    struct span name = name_at(copy->at + 1);
    if (begins(copy->at, "<!--")) {
        skip_past(copy, "-->");
    } else if (is(name, "title")) {
        skip_past(copy, "</title>");
    } else if (is(name, "desc")) {
        skip_past(copy, "</desc>");
    } else if (copy->at[1] == '/') {
        name = name_at(copy->at + 2);
        fprintf(copy->file, "</%.*s", (int)(name.end - name.at), name.at);
        copy->at = name.end;
    } else {
        fprintf(copy->file, "<%.*s", (int)(name.end - name.at), name.at);
        copy->at = name.end;
        copy_attributes(copy);
    }
}

static void put_root(const struct copy *copy, struct span box,
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

bool cg_svg_is_drawing(const char *svg)
{
    const char *root = strstr(svg, "<svg");
    if (root == NULL || !is_plain(root))
        return false;
    struct span box = view_box(root);
    return box.end > box.at;
}

void cg_svg_inline(FILE *file, const char *svg,
                   const struct cg_svg_words *words)
{
    assert(cg_svg_is_drawing(svg));
    const char *root = strstr(svg, "<svg");
    struct copy copy = {file, strchr(root, '>') + 1, words->mark};
    put_root(&copy, view_box(root), words);
    while (*copy.at != '\0') {
        size_t text = strcspn(copy.at, "<");
        fwrite(copy.at, 1, text, file);
        copy.at += text;
        if (*copy.at == '<')
            copy_markup(&copy);
    }
}
