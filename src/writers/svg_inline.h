/* A drawing of gnuplot's as part of an HTML page. */
#ifndef CG_SVG_INLINE_H
#define CG_SVG_INLINE_H

#include <stdbool.h>
#include <stdio.h>

struct cg_svg_words {
    const char *mark;  /* put before every id, so that none is there twice */
    const char *title; /* the short name */
    const char *words; /* what is to be seen, for those who do not see it */
};

/* Whether the text is a drawing that can be taken over: well nested, and made
 * of nothing but what gnuplot writes (svg_allowed.h). */
bool cg_svg_is_drawing(const char *svg);

/* Writes the text of an SVG file as one <svg> element that stands by itself:
 * its prolog, comments and its own titles and description fall away, it is
 * scaled by its viewBox, is one image with title and words to a screen reader,
 * and refers to nothing outside.  It must be a drawing; cannot fail. */
void cg_svg_inline(FILE *file, const char *svg,
                   const struct cg_svg_words *words);

#endif
