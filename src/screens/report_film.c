#include "report_film.h"

#include <stdio.h>

#include "constants.h"

static const char *const ring_text[CG_RING_OIL] = {"top ring", "second ring"};

/* 1 um or 40 uin, "3.7 um". */
static void print_film(double metres, bool inch)
{
    if (inch)
        printf("%.0f uin", metres / 25.4e-9);
    else
        printf("%.2g um", metres * 1e6);
}

static void print_constant(const struct cg_case *c,
                           const struct cg_answer *answer, bool inch)
{
    printf("  oil film as set (film_law constant), %s:", c->cooling.oil_grade);
    for (int r = 0; r < CG_RING_OIL; r++) {
        printf("%s %s ", r > 0 ? "," : "", ring_text[r]);
        print_film(answer->film[r], inch);
    }
    printf("\n");
}

/* Least film, the film heat crosses, friction. */
static void print_ring(const struct cg_case *c, const struct cg_answer *answer,
                       int r, bool inch)
{
    const struct cg_film_mean *mean = &answer->film_mean[r];
    double around = CG_PI * c->engine.bore;
    printf("    %-12s ", ring_text[r]);
    print_film(mean->minimum, inch);
    printf(" least, at %.0f deg; ", cg_ring_film_angle(mean->minimum_at));
    print_film(answer->film[r], inch);
    printf(" for heat; mixed %.0f %% of the time;\n"
           "                 friction %.0f W, %.0f W of it where metals "
           "touch\n",
           mean->mixed_share * 100.0,
           around * (mean->viscous_power + mean->boundary_power),
           around * mean->boundary_power);
}

static void print_notes(const struct cg_case *c,
                        const struct cg_answer *answer)
{
    for (int r = 0; r < CG_RING_OIL; r++)
        if (answer->film_mean[r].minimum < c->ring[r].roughness)
            printf("    at its least the %s's film is below the roughness: "
                   "the contact law, coarse,\n    carries it there\n",
                   ring_text[r]);
    for (int r = 0; r < CG_RING_OIL; r++)
        if (answer->film_mean[r].lifted_share > 0.0)
            printf("    the gas holds the %s off the bore for %.0f %% of the "
                   "time: no film there\n",
                   ring_text[r], answer->film_mean[r].lifted_share * 100.0);
    printf("    assumed: oil enough at every face (a starved film is "
           "thinner), round bore, ring not\n    twisted, gas behind the "
           "rings by fixed shares of the cylinder's pressure\n");
}

void cg_report_film(const struct cg_case *c, const struct cg_answer *answer,
                    bool inch)
{
    if (c->film_law == CG_FILM_CONSTANT) {
        print_constant(c, answer, inch);
        return;
    }
    printf("  oil film by Reynolds lubrication, %s (rings.film_law "
           "reynolds):\n",
           c->cooling.oil_grade);
    for (int r = 0; r < CG_RING_OIL; r++)
        print_ring(c, answer, r, inch);
    print_notes(c, answer);
}
