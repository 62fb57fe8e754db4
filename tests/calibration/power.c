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
    {"friction", 2.0},    {"undercrown", 0.5},  {"coolant_film", 0.5},
    {"liner_share", 1.5},
};

/* A value's band is two spreads of its source's own either side. */
#define BAND 2.0

/* So many spreads a wrong constant must move a fact for it to see it. */
#define LEAST_MOVE 1.0

static bool is_input(const char *name)
{
    size_t count;
    const struct cg_uncertain *all = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(all[i].name, name) == 0)
            return true;
    return false;
}

/* How far the model with these cases is off a fact, in spreads of its source
 * alone; beyond `limit` it is missed. */
struct off {
    double off, limit;
};

static struct off off_of(const struct calibration *all,
                         const struct sight *sight)
{
    const struct fact *fact = sight->fact;
    double chance = 0.0;
    for (size_t m = 0; m < sight->metals; m++) {
        double y = sight_value(&all->facts, sight, m, all->learned[0].mean);
        double off = (fact->value - y) / fact->spread;
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
    struct off off = off_of(all, &sight);
    return right->off <= right->limit && off.off > off.limit &&
           off.off - right->off >= LEAST_MOVE;
}

/* Facts held back that are met as calibrated, and missed with the wrong one. */
static void write_wrong(const struct calibration *all,
                        const struct wrong *wrong, const struct off *right,
                        FILE *out)
{
    const char *between = "";
    bool seen = false;
    fprintf(out, "| %s x %g | ", wrong->input, wrong->factor);
    if (!is_input(wrong->input)) {
        fputs("no such setting |\n", out);
        return;
    }
    for (size_t f = 0; f < all->facts.facts; f++) {
        if (!all->facts.fact[f].held ||
            !sees_wrong(all, f, &right[f], wrong))
            continue;
        fprintf(out, "%s%s", between, all->facts.fact[f].name);
        between = ", ";
        seen = true;
    }
    fputs(seen ? " |\n" : "nothing outside sees it |\n", out);
}

void report_power(const struct calibration *all, FILE *out)
{
    struct off right[FACTS];
    fputs("\nOf the facts held back, those that turn from met to missed when a "
          "constant is made\nwrong, and move by a spread of their source at "
          "least:\n\n| wrong | seen by |\n|---|---|\n",
          out);
    for (size_t f = 0; f < all->facts.facts; f++)
        right[f] = off_of(all, &all->learned[0].sight[f]);
    for (size_t i = 0; i < sizeof wrongs / sizeof wrongs[0]; i++)
        write_wrong(all, &wrongs[i], right, out);
    fputs("\nMissed as calibrated:", out);
    const char *none = " none";
    for (size_t f = 0; f < all->facts.facts; f++)
        if (all->facts.fact[f].held && right[f].off > right[f].limit) {
            fprintf(out, " %s", all->facts.fact[f].name);
            none = "";
        }
    fprintf(out, "%s.\n", none);
}
