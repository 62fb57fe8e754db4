/* What a drawing on a page may be made of: the elements, attributes and values
 * that gnuplot's svg terminal writes for the scripts in plots/, and svg_draw.c.  Names count
 * letter by letter; whatever is not listed is not allowed. */
#ifndef CG_SVG_ALLOWED_H
#define CG_SVG_ALLOWED_H

#include <stdbool.h>
#include <stdio.h>

/* The text from `at` up to, not with, `end`. */
struct cg_span {
    const char *at, *end;
};

bool cg_span_is(struct cg_span span, const char *text);

bool cg_svg_element(struct cg_span name);

/* Attributes of the root; the page writes its own in their place. */
bool cg_svg_root_attribute(struct cg_span name);

/* Writes ` name="value"` to `file` (NULL: only looks), an id and what refers to
 * one with `mark` before it; numbers of plots, which nothing refers to and
 * which come twice, fall away.  False, with anything written, where the
 * attribute or its value is not allowed: only ids inside the drawing are
 * referred to. */
bool cg_svg_attribute(FILE *file, const char *mark, struct cg_span name,
                      struct cg_span value);

/* Whether text between tags is allowed: its entities are known ones. */
bool cg_svg_text(struct cg_span text);

#endif
