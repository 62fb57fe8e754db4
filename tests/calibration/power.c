/* Would a wrong constant be seen from outside? */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <gsl/gsl_cdf.h>

#include "calibration_report.h"
#include "uncertain.h"

static const struct wrong {
    const char *input;
    double factor;
} wrongs[] = {
    {"heat_factor", 0.7}, {"heat_factor", 1.3}, {"film", 0.5},
    {"film", 2.0},        {"flank", 0.5},       {"flank", 2.0},
    {"friction", 2.0},    {"undercrown", 0.5},  {"jet", 0.5},         {"coolant_film", 0.5},
    {"liner_share", 1.5},
};

/* A value's band is two spreads of its source's own either side. */
#define BAND 2.0

/* So many spreads a wrong constant must move a fact for it to see it. */
#define LEAST_MOVE 1.0

static size_t constant_of(const struct calibration *all, const char *name)
{
    size_t k = 0;
    while (k < all->facts.constants &&
           strcmp(all->facts.constant[k].input, name) != 0)
        k++;
    return k;
}

/* How far a fact is off what is foreseen of it, in spreads of its source
 * alone; beyond `limit` it is missed. */
struct off {
    double off, limit;
};

/* What is seen with law 0 at its means, the metals' mean. */
static double seen_at_means(const struct calibration *all,
                            const struct sight *sight, double y[METALS])
{
    double sum = 0.0;
    for (size_t m = 0; m < sight->metals; m++)
        sum += y[m] =
            sight_value(&all->facts, sight, m, all->learned[0].mean);
    return sum / (double)sight->metals;
}

/* The fact is foreseen from the others alone; `sight` with a wrong constant
 * moves that by as much as it moves what is seen at the means. */
static struct off off_of(const struct calibration *all, size_t f,
                         const struct sight *sight)
{
    const struct fact *fact = sight->fact;
    double right[METALS], y[METALS], chance = 0.0;
    double mean = seen_at_means(all, &all->learned[0].sight[f], right);
    double others = all->learned[0].foreseen[f].mean - mean;
    seen_at_means(all, sight, y);
    for (size_t m = 0; m < sight->metals; m++) {
        double off = (fact->value - y[m] - others) / fact->spread;
        if (!fact->one_sided)
            return (struct off){fabs(off), BAND};
        chance += gsl_cdf_ugaussian_P(fact->sees == SEES_ENDS ? off : -off) /
                  (double)sight->metals;
    }
    return (struct off){gsl_cdf_ugaussian_Qinv(fmin(fmax(chance, 1e-12),
                                                    1.0 - 1e-12)),
                        0.0};
}

/* Missed with the wrong constant, met without, and not by a hair: moved by a
 * spread at least. */
static bool sees_wrong(const struct calibration *all, size_t fact,
                       const struct off *right, const struct wrong *wrong)
{
    struct sight sight = all->learned[0].sight[fact];
    sight_spoil(&sight, wrong->input, wrong->factor);
    struct off off = off_of(all, fact, &sight);
    return right->off <= right->limit && off.off > off.limit &&
           off.off - right->off >= LEAST_MOVE;
}

/* Facts of one part that are met as foreseen, and missed with the wrong one. */
static void write_seen(const struct calibration *all, const struct wrong *wrong,
                       const struct off *right, bool held, FILE *out)
{
    const char *between = "";
    for (size_t f = 0; f < all->facts.facts; f++) {
        if (all->facts.fact[f].held != held ||
            !sees_wrong(all, f, &right[f], wrong))
            continue;
        fprintf(out, "%s%s", between, all->facts.fact[f].name);
        between = ", ";
    }
    fputs(*between == '\0' ? "none | " : " | ", out);
}

static void write_wrong(const struct calibration *all,
                        const struct wrong *wrong, const struct off *right,
                        FILE *out)
{
    fprintf(out, "| %s x %g | ", wrong->input, wrong->factor);
    if (constant_of(all, wrong->input) == all->facts.constants) {
        fputs("no such setting | | |\n", out);
        return;
    }
    write_seen(all, wrong, right, true, out);
    write_seen(all, wrong, right, false, out);
    fprintf(out, "%.1f |\n",
            fabs(log(wrong->factor)) /
                learned_spread(&all->facts, &all->learned[0],
                               constant_of(all, wrong->input)));
}

static void write_missed(const struct calibration *all, const struct off *right,
                         FILE *out)
{
    const char *between = " ";
    fputs("\nMissed as it stands:", out);
    for (size_t f = 0; f < all->facts.facts; f++)
        if (right[f].off > right[f].limit) {
            fprintf(out, "%s%s", between, all->facts.fact[f].name);
            between = ", ";
        }
    fprintf(out, "%s.\n", *between == ' ' ? " none" : "");
}

void report_power(const struct calibration *all, FILE *out)
{
    struct off right[FACTS];
    fputs("\nWould a wrong constant be seen?  Each fact is foreseen from the "
          "others alone: one\nthat turns from met to missed by its source's own "
          "band when a constant is made wrong,\nand moves by a spread of its "
          "source at least, sees it.  Last: how far off that is for all facts "
          "together, in\nspreads of the constant as calibrated.\n\n| wrong | "
          "held back, sees it | calibrated on, left out, sees it | spreads |\n"
          "|---|---|---|---|\n",
          out);
    for (size_t f = 0; f < all->facts.facts; f++)
        right[f] = off_of(all, f, &all->learned[0].sight[f]);
    for (size_t i = 0; i < sizeof wrongs / sizeof wrongs[0]; i++)
        write_wrong(all, &wrongs[i], right, out);
    write_missed(all, right, out);
}
