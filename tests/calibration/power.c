/* Would a wrong constant be seen from outside? */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <gsl/gsl_cdf.h>

#include "report.h"
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

/* A one-sided fact is missed where it is less likely than not. */
#define LIKELY 0.5

static bool is_input(const char *name)
{
    size_t count;
    const struct cg_uncertain *all = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(all[i].name, name) == 0)
            return true;
    return false;
}

/* Whether the model with these cases misses a fact, by the source's own
 * spread alone. */
static bool misses(const struct calibration *all, const struct sight *sight)
{
    const struct fact *fact = sight->fact;
    double chance = 0.0;
    for (size_t m = 0; m < sight->metals; m++) {
        double y = sight_value(&all->facts, sight, m, all->learned[0].mean);
        double off = (fact->value - y) / fact->spread;
        if (!fact->one_sided)
            return fabs(off) > BAND;
        chance += gsl_cdf_ugaussian_P(fact->sees == SEES_ENDS ? off : -off) /
                  (double)sight->metals;
    }
    return chance < LIKELY;
}

static bool misses_if(const struct calibration *all, size_t fact,
                      const struct wrong *wrong)
{
    struct sight sight = all->learned[0].sight[fact];
    sight_spoil(&sight, wrong->input, wrong->factor);
    return misses(all, &sight);
}

/* Facts held back that are met as calibrated, and missed with the wrong one. */
static void write_wrong(const struct calibration *all,
                        const struct wrong *wrong, const bool *missed,
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
        if (!all->facts.fact[f].held || missed[f] ||
            !misses_if(all, f, wrong))
            continue;
        fprintf(out, "%s%s", between, all->facts.fact[f].name);
        between = ", ";
        seen = true;
    }
    fputs(seen ? " |\n" : "nothing outside sees it |\n", out);
}

void report_power(const struct calibration *all, FILE *out)
{
    bool missed[FACTS] = {false};
    fputs("\nOf the facts held back, those that turn from met to missed when a "
          "constant is made wrong:\n\n| wrong | seen by |\n|---|---|\n",
          out);
    for (size_t f = 0; f < all->facts.facts; f++)
        missed[f] = misses(all, &all->learned[0].sight[f]);
    for (size_t i = 0; i < sizeof wrongs / sizeof wrongs[0]; i++)
        write_wrong(all, &wrongs[i], missed, out);
    fputs("\nMissed as calibrated:", out);
    for (size_t f = 0; f < all->facts.facts; f++)
        if (missed[f] && all->facts.fact[f].held)
            fprintf(out, " %s", all->facts.fact[f].name);
    fputs(".\n", out);
}
