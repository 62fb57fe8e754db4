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

void cg_figure_print(FILE *out, const struct cg_figure *figure)
{
    fprintf(out, "%s%s%s", figure->text, figure->unit[0] != '\0' ? " " : "",
            figure->unit);
}

static void print_formula(FILE *out, const struct cg_hand *hand)
{
    fprintf(out, "  %s = %s", hand->result.name, hand->root ? "sqrt " : "");
    for (size_t i = 0; i <= strlen(hand->operators); i++) {
        const struct cg_figure *figure = &hand->figure[i];
        if (i > 0)
            fprintf(out, " %c ", hand->operators[i - 1]);
        fprintf(out, "%s", figure->name != NULL ? figure->name : figure->text);
    }
    fprintf(out, "\n");
}

static void print_numbers(FILE *out, const struct cg_hand *hand)
{
    fprintf(out, " = %s", hand->root ? "sqrt " : "");
    for (size_t i = 0; i <= strlen(hand->operators); i++) {
        if (i > 0)
            fprintf(out, " %c ", hand->operators[i - 1]);
        cg_figure_print(out, &hand->figure[i]);
    }
    fprintf(out, " = ");
    cg_figure_print(out, &hand->result);
    fprintf(out, "\n");
}

void cg_hand_print(FILE *out, const struct cg_hand *hand)
{
    print_formula(out, hand);
    fprintf(out, "  %*s", (int)strlen(hand->result.name), "");
    print_numbers(out, hand);
}

void cg_hand_print_numbers(FILE *out, const struct cg_hand *hand)
{
    fprintf(out, "  %s", hand->result.name);
    print_numbers(out, hand);
}
