#include "constants.h"
#include "report_find_parts.h"
#include "show.h"

static const char *const ring_text[CG_RING_OIL] = {"top ring", "second ring"};

/* The film that heat crosses, by either law. */
static void tell_films(struct cg_report *report, const struct cg_case *c,
                       const struct cg_answer *answer)
{
    bool set = c->film_law == CG_FILM_CONSTANT;
    cg_report_row(report, "film_top", "Oil film, top ring",
                  cg_quantity(CG_SHOW_FILM, answer->film[CG_RING_TOP]));
    cg_report_row(report, "film_second", "Oil film, second ring",
                  cg_quantity(CG_SHOW_FILM, answer->film[CG_RING_SECOND]));
    cg_report_words(report, "film_law", "Oil film", "%s, %s",
                    set ? "as set (film_law constant)"
                        : "by Reynolds lubrication (film_law reynolds)",
                    c->cooling.oil_grade);
}

/* Least film, friction. */
static void tell_ring(struct cg_report *report, const struct cg_case *c,
                      const struct cg_answer *answer, int r)
{
    const struct cg_film_mean *mean = &answer->film_mean[r];
    double around = CG_PI * c->engine.bore;
    cg_report_say(
        report,
        "The film of the %s is least, %s, at %.0f deg, and mixed %.0f %% of "
        "the time; its friction is %.0f W, %.0f W of it where metals touch.",
        ring_text[r],
        cg_quantity_text(cg_quantity(CG_SHOW_FILM, mean->minimum),
                         cg_report_inch(report))
            .text,
        cg_ring_film_angle(mean->minimum_at), mean->mixed_share * 100.0,
        around * (mean->viscous_power + mean->boundary_power),
        around * mean->boundary_power);
    if (mean->minimum < c->ring[r].roughness)
        cg_report_say(report,
                      "At its least the %s's film is below the roughness: the "
                      "contact law, coarse, carries it there.",
                      ring_text[r]);
    if (mean->lifted_share > 0.0)
        cg_report_say(report,
                      "The gas holds the %s off the bore for %.0f %% of the "
                      "time: no film there.",
                      ring_text[r], mean->lifted_share * 100.0);
}

void cg_report_find_film(struct cg_report *report, const struct cg_case *c,
                         const struct cg_answer *answer)
{
    cg_report_part(report, "Oil film of the rings");
    tell_films(report, c, answer);
    if (c->film_law == CG_FILM_CONSTANT)
        return;
    for (int r = 0; r < CG_RING_OIL; r++)
        tell_ring(report, c, answer, r);
    cg_report_say(report,
                  "Assumed: as much oil ahead of the rings as "
                  "rings.oil_supply says, round bore, ring not twisted, gas "
                  "behind the rings by fixed shares of the cylinder's "
                  "pressure.");
    cg_report_figure(report, "film", "Oil film and friction of the rings",
                     "Film of top and second ring over crank angle, least near "
                     "the dead centres, and the top ring's friction.");
}
