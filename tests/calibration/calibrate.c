/* Finds the uncertain constants from the facts, law by law, and says how well
 * each fact is met.
 *
 *   calibrate FACTS            prints it
 *   calibrate FACTS LAWS       only laws whose gas law is LAWS
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "heat_transfer.h"
#include "learn.h"

enum { LAWS = 16 };

static void print_law(const struct facts *facts, const struct learned *l)
{
    size_t n = facts->constants;
    printf("\n%s, film %s: ln evidence %.2f; %.0f of %d draws count, %.0f at "
           "least; straight to %.2f of a fact's spread\n",
           l->law.gas, l->law.film, l->log_evidence, l->effective, DRAWS,
           l->worst_effective, l->bent);
    for (size_t k = 0; k < n; k++) {
        printf("  %-13s %9.4g  +-%5.1f %%  (before %9.4g +-%5.1f %%, moved %+.2f "
               "sd)  ",
               facts->constant[k].input, learned_value(facts, l, k),
               100.0 * learned_spread(facts, l, k), facts->constant[k].middle,
               100.0 * facts->constant[k].spread, l->mean[k]);
        for (size_t j = 0; j < k; j++)
            printf(" %5.2f", l->covariance[k][j] /
                                 sqrt(l->covariance[k][k] *
                                      l->covariance[j][j]));
        puts("");
    }
    printf("  %-13s %9.3f  a factor of %.2f either way\n", "scatter",
           exp(l->scatter), exp(l->scatter_sd));
}

static double scale_of(const struct fact *fact)
{
    return fact->sees == SEES_ENDS ? 1e3 : 1.0;
}

static void print_facts(const struct facts *facts, const struct learned *l)
{
    for (int held = 0; held < 2; held++) {
        printf("  %s:\n", held ? "checked against" : "calibrated on");
        for (size_t f = 0; f < facts->facts; f++) {
            const struct fact *fact = &facts->fact[f];
            const struct foreseen *s = &l->foreseen[f];
            double scale = scale_of(fact);
            if (fact->held != (held == 1))
                continue;
            printf("    %-24s seen %s%7.3f  foreseen %7.3f +-%6.3f ",
                   fact->name,
                   !fact->one_sided ? "" : fact->sees == SEES_ENDS ? "<" : ">",
                   fact->value * scale, s->mean * scale, s->sd * scale);
            if (fact->one_sided)
                printf("chance %.3f\n", s->chance);
            else
                printf("error %+.2f\n", fact_deviation(fact, s));
        }
    }
}

int main(int argc, char **argv)
{
    static struct facts facts;
    static struct learned learned[LAWS];
    static const char *const films[] = {"constant", "reynolds"};
    size_t gases, laws = 0;
    const struct cg_heat_transfer *gas = cg_heat_transfers(&gases);
    if (argc < 2) {
        fputs("calibrate FACTS [GAS_LAW [FILM_LAW]]\n", stderr);
        return 2;
    }
    facts_read(argv[1], &facts);
    for (size_t g = 0; g < gases; g++)
        for (size_t f = 0; f < 2; f++) {
            struct law law = {gas[g].name, films[f]};
            if ((argc > 2 && strcmp(argv[2], law.gas) != 0) ||
                (argc > 3 && strcmp(argv[3], law.film) != 0))
                continue;
            learn(&facts, &law, &learned[laws]);
            print_law(&facts, &learned[laws]);
            print_facts(&facts, &learned[laws]);
            fflush(stdout);
            laws++;
        }
    for (size_t i = 0; i < laws; i++)
        learned_free(&learned[i]);
    facts_free(&facts);
    return 0;
}
