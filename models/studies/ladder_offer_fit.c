/* What is offered for what fits and seals: gaps, rings, clearances, finish. */
#include <math.h>
#include <string.h>

#include "grit.h"
#include "ladder_offers.h"

/* How far a part is changed, and in which steps: common practice, no source. */
#define WIDTH_STEP 0.2e-3
#define WIDTH_LEAST 0.8e-3
#define SHARE_STEP 0.05
#define SHARE_LEAST 0.60
#define SHARE_MOST 0.90

/* What is asked for at the target or, where that is more, at less boost. */
void cg_offer_gaps(struct cg_offer_list *list, enum cg_ladder_part part)
{
    const struct cg_look_book *book = list->book;
    bool top = part == CG_LADDER_TOP_GAP;
    double least = 0.0;
    for (size_t i = 0; i < book->looks; i++)
        if (book->look[i].depth == CG_LOOK_GAPS &&
            book->look[i].boost <= list->look->boost)
            least = fmax(least, top ? book->look[i].point.file_to
                                    : book->look[i].second);
    if (!isnan(book->answer.file_to_top.file_to))
        cg_offer_add_number(
            list, top ? "rings.top.cold_gap" : "rings.second.cold_gap",
            cg_gap_round_up(least, list->c->margin.filing_step));
}

/* How far the loads that hang on no ring have come into a face's bands. */
static double face_use(const struct cg_face *face, const struct cg_look *look)
{
    return fmax(
        cg_choice_use(&face->peak_pressure, look->load[CG_LIMIT_PRESSURE]),
        cg_choice_use(&face->peak_rise, look->load[CG_LIMIT_RISE]));
}

/* How many of metal and face are other than the case's. */
static int others(const struct cg_case *c, const struct cg_material *metal,
                  const struct cg_face *face)
{
    return (strcmp(metal->name, c->ring[CG_RING_TOP].material) != 0) +
           (strcmp(face->name, c->ring_face[CG_RING_TOP].name) != 0);
}

/* The rings of the shelf in which so much is other, and that fit as far as it
 * does not hang on the ring, or are marginal. */
static void offer_rings_of(struct cg_offer_list *list, int other, bool fits)
{
    const struct cg_ladder_shelf *shelf = list->shelf;
    for (size_t i = 0; i < shelf->rings * shelf->faces; i++) {
        const struct cg_material *metal = &shelf->ring[i / shelf->faces];
        const struct cg_face *face = &shelf->face[i % shelf->faces];
        /* a face left out is the metal's own, so both are said */
        const struct cg_ladder_set set[2] = {
            cg_offer_name("rings.top.material", metal->name),
            cg_offer_name("rings.top.face", face->name)};
        double use = face_use(face, list->look);
        if (others(list->c, metal, face) == other && use < 1.0 &&
            (use < 0.0) == fits && cg_face_goes_on(face, metal))
            cg_offer_add(list, 2, set);
    }
}

/* What changes one thing comes first. */
void cg_offer_rings(struct cg_offer_list *list)
{
    for (int other = 1; other <= 2; other++) {
        offer_rings_of(list, other, true);
        offer_rings_of(list, other, false);
    }
}

void cg_offer_skirt(struct cg_offer_list *list)
{
    const struct cg_case *c = list->c;
    const struct cg_band *trade = &c->piston_material.skirt_per_bore;
    double bore = c->engine.bore, now = c->piston.skirt_clearance;
    double step = c->margin.filing_step;
    double middle = 0.5 * (trade->low + trade->high) * bore;
    double least =
        cg_gap_round_up(list->look->skirt.closure -
                            cg_skirt_overlap(c, list->look->skirt.temperature,
                                             c->margin.skirt_pressure),
                        step);
    double to[] = {middle, trade->high * bore, least};
    for (size_t i = 0; i < sizeof to / sizeof to[0]; i++)
        if (to[i] > now)
            cg_offer_add_number(list, "piston.skirt_clearance",
                                cg_gap_round_up(to[i], step));
}

void cg_offer_lands(struct cg_offer_list *list)
{
    const struct cg_case *c = list->c;
    static const char *const path[CG_RINGS] = {"piston.land_clearance",
                                               "piston.second_land_clearance",
                                               "piston.third_land_clearance"};
    const double now[CG_RINGS] = {c->piston.land_clearance,
                                  c->piston.second_land_clearance,
                                  c->piston.third_land_clearance};
    struct cg_ladder_set set[CG_OFFER_SETS];
    double more =
        cg_gap_round_up(-list->look->land_least, c->margin.filing_step) +
        c->margin.filing_step;
    for (int r = 0; r < CG_RINGS; r++)
        set[r] = cg_offer_number(path[r], now[r] + more);
    cg_offer_add(list, CG_RINGS, set);
}

/* The base stage coarser, class by class; the plateau stage shorter; or, where
 * there is no plateau yet, longer. */
void cg_offer_finish(struct cg_offer_list *list)
{
    const struct cg_finish_case *finish = &list->c->bore.finish;
    const struct cg_finish_verdict *verdict = &list->look->finish;
    for (double to = finish->plateau_share + SHARE_STEP;
         !verdict->plateau && to < SHARE_MOST + 1e-9; to += SHARE_STEP)
        cg_offer_add_number(list, "bore.finish.plateau_share", to);
    for (int i = 0; i < verdict->advices; i++)
        for (double to = finish->plateau_share - SHARE_STEP;
             verdict->advice[i].change == CG_PLATEAU_SHORTER &&
             to > SHARE_LEAST - 1e-9;
             to -= SHARE_STEP)
            cg_offer_add_number(list, "bore.finish.plateau_share", to);
    for (int grit = finish->base_grit, last = 0; grit != last;) {
        last = grit;
        grit = cg_grit_at_least(cg_grit_grain(grit) * (1.0 + 1e-6));
        if (grit < last)
            cg_offer_add_number(list, "bore.finish.base_grit", grit);
    }
}

void cg_offer_seating(struct cg_offer_list *list)
{
    const struct cg_case *c = list->c;
    const struct cg_answer *answer = &list->book->answer;
    double seated = answer->seating.gap, width = c->ring[CG_RING_TOP].width;
    if (answer->second_verdict.given && seated > answer->second_verdict.gap)
        cg_offer_add_number(list, "rings.second.cold_gap", seated);
    if (width - WIDTH_STEP > WIDTH_LEAST - 1e-9)
        cg_offer_add_number(list, "rings.top.width", width - WIDTH_STEP);
    if (c->seal.ports == CG_PORTS_NONE)
        cg_offer_add_number(list, "rings.top.ports", CG_PORTS_CROWN);
}
