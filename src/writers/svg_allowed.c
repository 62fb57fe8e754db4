#include "svg_allowed.h"

#include <stddef.h>
#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof(list)[0])
#define LETTERS "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
#define ID_LETTERS LETTERS "_-"
/* No quote, sign of markup, colon or backslash is among them. */
#define VALUE_LETTERS LETTERS "#,.+-%() \t\r\n"
#define BLANKS " \t\r\n"

static const char *const elements[] = {
    "g",       "path",    "text", "tspan",  "use",     "rect",       "circle",
    "polygon", "pattern", "defs", "filter", "feFlood", "feComposite"};

static const char *const root_attributes[] = {"width", "height", "viewBox",
                                              "xmlns", "xmlns:xlink"};

/* Besides id, xlink:href and style. */
static const char *const attributes[] = {
    "x", "y", "dy", "cx", "cy", "r", "width", "height", "d", "points",
    "transform", "class", "fill", "stroke", "color", "stroke-width",
    "stroke-linecap", "stroke-linejoin", "stroke-dasharray", "font-family",
    "font-size", "text-anchor", "shape-rendering", "xml:space", "patternUnits",
    "filterUnits", "flood-color", "flood-opacity", "in", "in2", "operator",
    "result"};

static const char *const properties[] = {"fill", "stroke", "filter"};

static const char *const entities[] = {"&amp;", "&lt;", "&gt;", "&quot;",
                                       "&apos;", "&#39;"};

bool cg_span_is(struct cg_span span, const char *text)
{
    size_t length = (size_t)(span.end - span.at);
    return length == strlen(text) && memcmp(span.at, text, length) == 0;
}

static bool is_among(struct cg_span span, const char *const *list, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (cg_span_is(span, list[i]))
            return true;
    return false;
}

static bool is_of(struct cg_span span, const char *letters)
{
    return span.end > span.at && span.at + strspn(span.at, letters) >= span.end;
}

static bool begins(struct cg_span span, const char *with)
{
    size_t length = strlen(with);
    return (size_t)(span.end - span.at) >= length &&
           memcmp(span.at, with, length) == 0;
}

static void put(FILE *file, const char *from, const char *to)
{
    if (file != NULL)
        fwrite(from, 1, (size_t)(to - from), file);
}

static void put_text(FILE *file, const char *text)
{
    put(file, text, text + strlen(text));
}

bool cg_svg_element(struct cg_span name)
{
    return is_among(name, elements, COUNT(elements));
}

bool cg_svg_root_attribute(struct cg_span name)
{
    return is_among(name, root_attributes, COUNT(root_attributes));
}

/* An id with its mark, between `before` and `after`. */
static bool put_id(FILE *file, const char *mark, const char *before,
                   struct cg_span id, const char *after)
{
    put_text(file, before);
    put_text(file, mark);
    put_text(file, "-");
    put(file, id.at, id.end);
    put_text(file, after);
    return is_of(id, ID_LETTERS);
}

/* Brackets with something before them that loads nothing. */
static bool calls_well(struct cg_span value)
{
    static const char *const known[] = {"rgb", "translate", "scale", "rotate"};
    struct cg_span word = {value.at, value.at};
    for (; word.end < value.end; word.end++) {
        if (*word.end == '(' && !is_among(word, known, COUNT(known)))
            return false;
        if (strchr(LETTERS, *word.end) == NULL)
            word.at = word.end + 1;
    }
    return true;
}

/* Colours, numbers, paths, words: or url(#id) and nothing else. */
static bool put_value(FILE *file, const char *mark, struct cg_span value)
{
    if (begins(value, "url(#") && value.end[-1] == ')') {
        struct cg_span id = {value.at + strlen("url(#"), value.end - 1};
        return put_id(file, mark, "url(#", id, ")");
    }
    put(file, value.at, value.end);
    return is_of(value, VALUE_LETTERS) && calls_well(value);
}

/* One "fill:none" of a style. */
static bool put_declaration(FILE *file, const char *mark, struct cg_span whole)
{
    struct cg_span name = {whole.at, whole.at + strcspn(whole.at, ":;")};
    if (name.end >= whole.end || !is_among(name, properties, COUNT(properties)))
        return false;
    put(file, name.at, name.end + 1);
    return put_value(file, mark, (struct cg_span){name.end + 1, whole.end});
}

static bool put_style(FILE *file, const char *mark, struct cg_span style)
{
    bool good = true;
    while (style.at < style.end && good) {
        const char *end = style.at + strcspn(style.at, ";");
        if (end > style.end)
            end = style.end;
        good = put_declaration(file, mark, (struct cg_span){style.at, end});
        style.at = end;
        if (style.at < style.end) {
            put_text(file, ";");
            style.at += 1 + strspn(style.at + 1, BLANKS);
        }
    }
    return good;
}

bool cg_svg_attribute(FILE *file, const char *mark, struct cg_span name,
                      struct cg_span value)
{
    bool good = false, link = cg_span_is(name, "xlink:href");
    if (cg_span_is(name, "id") && begins(value, "gnuplot_"))
        return true;
    put_text(file, " ");
    put(file, name.at + (link ? strlen("xlink:") : 0), name.end);
    put_text(file, "=\"");
    if (cg_span_is(name, "id"))
        good = put_id(file, mark, "", value, "");
    else if (link && begins(value, "#"))
        good = put_id(file, mark, "#",
                      (struct cg_span){value.at + 1, value.end}, "");
    else if (cg_span_is(name, "style"))
        good = put_style(file, mark, value);
    else if (is_among(name, attributes, COUNT(attributes)))
        good = put_value(file, mark, value);
    put_text(file, "\"");
    return good;
}

bool cg_svg_text(struct cg_span text)
{
    for (; text.at < text.end; text.at++) {
        bool known = *text.at != '&';
        for (size_t i = 0; i < COUNT(entities) && !known; i++)
            known = begins(text, entities[i]);
        if (!known)
            return false;
    }
    return true;
}
