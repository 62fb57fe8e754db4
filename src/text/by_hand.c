#include "by_hand.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_DECIMALS = 7 };

/* Decimals that show so many digits that count. */
static int decimals_of(double value, int counting)
{
    if (value == 0.0 || !isfinite(value))
        return counting - 1;
    double decimals = counting - 1 - floor(log10(fabs(value)));
    return (int)fmin(fmax(decimals, 0.0), MOST_DECIMALS);
}

struct cg_figure cg_figure_of(const char *name, double value, int digits,
                              const char *unit)
{
    struct cg_figure figure = {.name = name, .unit = unit};
    int decimals = digits < 0 ? decimals_of(value, -digits) : digits;
    snprintf(figure.text, sizeof figure.text, "%.*f", decimals, value);
    figure.value = strtod(figure.text, NULL);
    if (figure.value == 0.0) /* no "-0.000" */
        snprintf(figure.text, sizeof figure.text, "%.*f", decimals, 0.0);
    return figure;
}

struct cg_figure cg_figure_plain(double value)
{
    struct cg_figure figure = {.name = NULL, .unit = "", .value = value};
    snprintf(figure.text, sizeof figure.text, "%.8g", value);
    return figure;
}

struct cg_figure cg_figure_named(const char *name, struct cg_figure figure)
{
    figure.name = name;
    return figure;
}

static double apply(double left, char operation, double right)
{
    switch (operation) {
    case 'x':
        return left * right;
    case '/':
        return left / right;
    case '+':
        return left + right;
    default:
        return left - right;
    }
}

struct cg_hand cg_hand_work(const char *name, const char *unit, int digits,
                            const char *operators,
                            const struct cg_figure *figures)
{
    struct cg_hand hand = {.root = false};
    size_t count = strlen(operators);
    assert(count >= 1 && count < CG_HAND_FIGURES);
    assert(strspn(operators, "x/") == count ||
           strspn(operators, "+-") == count);
    memcpy(hand.operators, operators, count + 1);
    memcpy(hand.figure, figures, (count + 1) * sizeof *figures);
    double value = figures[0].value;
    for (size_t i = 0; i < count; i++)
        value = apply(value, operators[i], figures[i + 1].value);
    hand.result = cg_figure_of(name, value, digits, unit);
    return hand;
}

struct cg_hand cg_hand_root(const char *name, const char *unit, int digits,
                            const struct cg_figure *of)
{
    struct cg_hand hand = {.root = true, .figure[0] = *of};
    hand.result = cg_figure_of(name, sqrt(of->value), digits, unit);
    return hand;
}

struct cg_text cg_figure_text(const struct cg_figure *figure)
{
    struct cg_text out;
    snprintf(out.text, sizeof out.text, "%s%s%s", figure->text,
             figure->unit[0] != '\0' ? " " : "", figure->unit);
    return out;
}

static void add(struct cg_hand_text *out, const char *words)
{
    size_t used = strlen(out->text);
    snprintf(out->text + used, sizeof out->text - used, "%s", words);
}

/* " = sqrt a", " = a x b", by names where the figures have them or by the
 * numbers with their units. */
static void add_side(struct cg_hand_text *out, const struct cg_hand *hand,
                     bool names)
{
    char operation[] = " x ";
    add(out, hand->root ? " = sqrt " : " = ");
    for (size_t i = 0; i <= strlen(hand->operators); i++) {
        const struct cg_figure *figure = &hand->figure[i];
        if (i > 0) {
            operation[1] = hand->operators[i - 1];
            add(out, operation);
        }
        if (!names)
            add(out, cg_figure_text(figure).text);
        else
            add(out, figure->name != NULL ? figure->name : figure->text);
    }
}

void cg_hand_add(struct cg_hand_text *out, const struct cg_hand *hand,
                 bool formula)
{
    add(out, "  ");
    add(out, hand->result.name);
    if (formula) {
        add_side(out, hand, true);
        add(out, "\n  ");
        for (size_t i = 0; i < strlen(hand->result.name); i++)
            add(out, " ");
    }
    add_side(out, hand, false);
    add(out, " = ");
    add(out, cg_figure_text(&hand->result).text);
    add(out, "\n");
}
