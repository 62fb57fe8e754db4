#include "report_rings.h"

#include <math.h>
#include <stdio.h>

#include "cautions.h"
#include "constants.h"
#include "show.h"

enum { LINE = 78 };

static void print_head(const struct cg_case *c, const char *config,
                       const struct cg_ring_choice *any, bool inch)
{
    printf("coldgap rings %s\n\n", config);
    printf("Engine   %d cylinders, %s x %s, boost %s; duty %s\n",
           c->engine.cylinders, cg_show_length(c->engine.bore, inch).text,
           cg_show_length(c->engine.stroke, inch).text,
           cg_show_boost(c->charge.boost, inch).text, c->duty.name);
    const double psi = CG_PSI;
    printf(inch ? "Loads    peak pressure %.0f psi, rise at most %.0f psi/deg "
                  "(burn alone, no knock)\n"
                : "Loads    peak pressure %.0f bar, rise at most %.1f bar/deg "
                  "(burn alone, no knock)\n",
           any->load[CG_LIMIT_PRESSURE] / (inch ? psi : 1e5),
           any->load[CG_LIMIT_RISE] / (inch ? psi : 1e5));
    printf("Tension  left after %g h at the duty's hottest (Larson-Miller)\n\n",
           c->ring[CG_RING_TOP].service / 3600.0);
}

/* Whole words that fit on a line, indented; the rest on the next. */
static void print_wrapped(const char *text)
{
    size_t column = 0;
    for (const char *word = text; *word != '\0';) {
        size_t length = 0;
        while (word[length] != '\0' && word[length] != ' ')
            length++;
        if (column > 0 && column + 1 + length > LINE) {
            printf("\n");
            column = 0;
        }
        printf("%s%.*s", column == 0 ? "    " : " ", (int)length, word);
        column += length + (column == 0 ? 4 : 1);
        word += length;
        while (*word == ' ')
            word++;
    }
    printf("\n");
}

static void print_ring(const struct cg_ring_choice *ring, double reached,
                       bool inch)
{
    char reason[CG_REASON], stops[64];
    bool never = ring->stops_fitting >= reached;
    snprintf(stops, sizeof stops, "%s%s",
             never ? ">" : "",
             cg_show_boost(never ? reached : ring->stops_fitting, inch).text);
    printf("%c %-18s %-18s %8s %5s %2.0f %% %8s %s\n", ring->own ? '*' : ' ',
           ring->material->name, ring->face->name,
           cg_show_length_up(ring->cold_gap, inch).text,
           cg_show_temperature(ring->ring, inch).text,
           ring->tension_left.low * 100.0, stops,
           cg_ring_verdict_text(ring->verdict));
    cg_ring_reason(ring, inch, reason);
    print_wrapped(reason);
}

static void print_faces(const struct cg_rings_answer *answer, bool inch)
{
    printf("Hardness class, what the coat adds to the ring's temperature, and "
           "where the ring\nloses its tension\n");
    for (size_t i = 0; i < answer->rings; i++) {
        const struct cg_ring_choice *ring = &answer->ring[i];
        double hardness = cg_face_hardness(ring->face, ring->material);
        const struct cg_band *hot = &ring->limit[CG_LIMIT_RING_HEAT];
        printf("  %-18s %-18s %-9s %+5.1f %s  %s to %s\n",
               ring->material->name, ring->face->name,
               cg_face_hardness_class(hardness),
               ring->coat_effect * (inch ? 1.8 : 1.0), inch ? "F" : "K",
               cg_show_temperature(hot->low, inch).text,
               cg_show_temperature(hot->high, inch).text);
    }
    printf("\n");
}

static void print_rings(const struct cg_rings_answer *answer, bool inch)
{
    printf("  %-18s %-18s %8s %5s %4s %8s %s\n", "top ring", "face",
           "cold gap", "ring", "left", "stops at", "verdict");
    for (size_t i = 0; i < answer->rings; i++)
        print_ring(&answer->ring[i], answer->reached, inch);
    printf("  * the config's own.  left: tension.  stops at: boost where it "
           "leaves `fits`.\n\n");
}

static void print_pistons(const struct cg_rings_answer *answer, bool inch)
{
    printf("Piston alloys: cold skirt clearance by the same margin, and what "
           "the trade fits\n");
    for (size_t i = 0; i < answer->alloys; i++) {
        const struct cg_alloy_choice *a = &answer->alloy[i];
        printf("%c %-14s %-9s (closure %s)", a->own ? '*' : ' ',
               a->alloy->name, cg_show_length_up(a->skirt.cold, inch).text,
               cg_show_length(a->skirt.closure, inch).text);
        if (!isnan(a->skirt.trade.low))
            printf("  trade %s to %s",
                   cg_show_length(a->skirt.trade.low, inch).text,
                   cg_show_length(a->skirt.trade.high, inch).text);
        printf("\n");
    }
    printf("  The trade's figures are common practice, no source; the piston "
           "maker's wins.\n\n");
}

const char *cg_rings_left_out(void)
{
    return "Limits are bands, most of them common practice without a "
           "source: see\nring_materials.cfg and ring_faces.cfg.  Left out: "
           "knock, which multiplies the\npressure rise at once; how face "
           "and bore run together; how well a coat is made.";
}

void cg_report_rings(const struct cg_case *c, const char *config,
                     const struct cg_rings_answer *answer, bool inch,
                     bool quiet, double seconds)
{
    if (!quiet)
        print_head(c, config, &answer->ring[0], inch);
    print_rings(answer, inch);
    if (!quiet) {
        print_faces(answer, inch);
        print_pistons(answer, inch);
        printf("%s\n", cg_rings_left_out());
        if (c->charge.charger == CG_CHARGER_NONE)
            printf("This engine has no charger; higher boosts are looked at "
                   "as if it had a turbine.\n");
    }
    cg_cautions_print(stdout);
    printf("\n");
    if (!quiet)
        printf("Computed in %.0f ms.\n", seconds * 1e3);
}
