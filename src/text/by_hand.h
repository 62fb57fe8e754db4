/* Arithmetic as on a pocket calculator: every figure is worth exactly what is
 * printed of it, and a line is worked from left to right, so that whoever keys
 * in the printed numbers gets the printed result.
 *
 *   struct cg_hand growth = cg_hand_work("growth", "mm", 3, "xx/",
 *                               CG_FIGURES(arc, expansion, rise, million));
 *   cg_hand_add(&text, &growth, true);
 *
 *   growth = arc x expansion x rise / 1000000
 *          = 271.75 mm x 12.20 x 159 C / 1000000 = 0.527 mm
 */
#ifndef CG_BY_HAND_H
#define CG_BY_HAND_H

#include <stdbool.h>

#include "quantity.h"

enum { CG_HAND_FIGURES = 8 };

/* A printed number. */
struct cg_figure {
    const char *name; /* in the formula; NULL: a plain number */
    const char *unit; /* "" for none */
    double value;     /* exactly what text says */
    char text[24];
};

/* `digits` of the functions below: so many decimals, or when negative, so many
 * digits that count (-3: 0.0527, 5.27, 527). */

/* A figure rounded as it is printed.  Strings are not copied.  Cannot fail. */
struct cg_figure cg_figure_of(const char *name, double value, int digits,
                              const char *unit);

/* A whole or short number of the formula itself, such as 2 or 0.685. */
struct cg_figure cg_figure_plain(double value);

/* The same figure under another name.  Cannot fail. */
struct cg_figure cg_figure_named(const char *name, struct cg_figure figure);

/* A line: figures, the operators between them, and the rounded result. */
struct cg_hand {
    struct cg_figure figure[CG_HAND_FIGURES], result;
    char operators[CG_HAND_FIGURES]; /* text: "x", "/", "+" or "-" each */
    bool root;                       /* square root of figure[0] */
};

#define CG_FIGURES(...)                                                        \
    (const struct cg_figure[])                                                 \
    {                                                                          \
        __VA_ARGS__                                                            \
    }

/* Works a line out: strlen(operators) + 1 figures, at most CG_HAND_FIGURES.
 * Operators are all of "x/" or all of "+-" (asserted), so that calculators with
 * and without precedence agree.  Cannot fail. */
struct cg_hand cg_hand_work(const char *name, const char *unit, int digits,
                            const char *operators,
                            const struct cg_figure *figures);
struct cg_hand cg_hand_root(const char *name, const char *unit, int digits,
                            const struct cg_figure *of);

/* Lines of worked sums. */
struct cg_hand_text {
    char text[4096];
};

/* Adds a sum: formula and numbers, two lines, or the numbers alone, one line.
 * What does not fit is cut off. */
void cg_hand_add(struct cg_hand_text *out, const struct cg_hand *hand,
                 bool formula);

/* "271.75 mm": a figure with its unit. */
struct cg_text cg_figure_text(const struct cg_figure *figure);

#endif
