#include "ladder_offer.h"

#include <math.h>
#include <string.h>

#include "fuel.h"
#include "grit.h"
#include "outside.h"

/* How far a part is changed, and in which steps: common practice, no source. */
#define COOLER_MOST 0.90
#define COOLER_STEP 0.05
#define RATIO_STEP 0.5
#define RATIO_LESS 2.0
#define CAP_STEP 25e3
#define CAP_MOST 310e3 /* absolute [Pa] */
#define COOLANT_LEAST 353.15
#define AIR_STEP 0.25
#define AIR_STEPS 2 /* up to half as fast again */
#define WIDTH_STEP 0.2e-3
#define WIDTH_LEAST 0.8e-3
#define SHARE_STEP 0.05
#define SHARE_LEAST 0.60
#define SHARE_MOST 0.90

struct list {
    const struct cg_case *c;
    const struct cg_ladder_shelf *shelf;
    const struct cg_look_book *book;
    const struct cg_look *look;
    struct cg_offer *offer;
    size_t offers;
};

static struct cg_ladder_set number(const char *path, double to)
{
    return (struct cg_ladder_set){path, to, NULL};
}

static struct cg_ladder_set named(const char *path, const char *name)
{
    return (struct cg_ladder_set){path, 0.0, name};
}

static void add(struct list *list, size_t sets, const struct cg_ladder_set *set)
{
    if (list->offers == CG_OFFERS)
        return;
    struct cg_offer *offer = &list->offer[list->offers++];
    offer->sets = sets;
    memcpy(offer->set, set, sets * sizeof *set);
}

static void add_number(struct list *list, const char *path, double to)
{
    struct cg_ladder_set set = number(path, to);
    add(list, 1, &set);
}

/* What is asked for at the target or, where that is more, at less boost. */
static void offer_gaps(struct list *list, enum cg_ladder_part part)
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
        add_number(list, top ? "rings.top.cold_gap" : "rings.second.cold_gap",
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
static void offer_rings_of(struct list *list, int other, bool fits)
{
    const struct cg_ladder_shelf *shelf = list->shelf;
    for (size_t i = 0; i < shelf->rings * shelf->faces; i++) {
        const struct cg_material *metal = &shelf->ring[i / shelf->faces];
        const struct cg_face *face = &shelf->face[i % shelf->faces];
        /* a face left out is the metal's own, so both are said */
        const struct cg_ladder_set set[2] = {
            named("rings.top.material", metal->name),
            named("rings.top.face", face->name)};
        double use = face_use(face, list->look);
        if (others(list->c, metal, face) == other && use < 1.0 &&
            (use < 0.0) == fits && cg_face_goes_on(face, metal))
            add(list, 2, set);
    }
}

/* What changes one thing comes first. */
static void offer_rings(struct list *list)
{
    for (int other = 1; other <= 2; other++) {
        offer_rings_of(list, other, true);
        offer_rings_of(list, other, false);
    }
}

static void offer_cooler(struct list *list)
{
    double now = list->c->charge.cooler_effectiveness;
    for (double to = 0.70; to < COOLER_MOST + 1e-9; to += COOLER_STEP)
        if (to > now + 1e-9)
            add_number(list, "charge.cooler_effectiveness", to);
}

/* The fuel of least octane above that; NULL: none.  What only the octane scale
 * is made with is nobody's fuel. */
static const struct cg_fuel *next_fuel(double octane)
{
    size_t count;
    const struct cg_fuel *fuel = cg_fuels(&count), *next = NULL;
    for (size_t i = 0; i < count; i++)
        if (fuel[i].octane > octane + 1e-9 &&
            strcmp(fuel[i].name, "iso_octane") != 0 &&
            (next == NULL || fuel[i].octane < next->octane))
            next = &fuel[i];
    return next;
}

/* Fuels of more octane, and a lower ratio; each with the best cooler too. */
static void offer_fuels(struct list *list, bool cooled)
{
    const struct cg_fuel *fuel = next_fuel(list->c->fuel.octane);
    for (; fuel != NULL; fuel = next_fuel(fuel->octane)) {
        struct cg_ladder_set set[3] = {
            named("fuel.name", fuel->name), number("fuel.octane", fuel->octane),
            number("charge.cooler_effectiveness", COOLER_MOST)};
        add(list, cooled ? 3 : 2, set);
    }
}

static void offer_ratio(struct list *list, bool cooled)
{
    double now = list->c->engine.compression_ratio;
    for (double less = RATIO_STEP; less < RATIO_LESS + 1e-9;
         less += RATIO_STEP) {
        struct cg_ladder_set set[2] = {
            number("engine.compression_ratio", now - less),
            number("charge.cooler_effectiveness", COOLER_MOST)};
        add(list, cooled ? 2 : 1, set);
    }
}

static void offer_spark(struct list *list)
{
    bool room = list->c->charge.cooler_effectiveness < COOLER_MOST - 1e-9;
    offer_cooler(list);
    offer_fuels(list, false);
    offer_ratio(list, false);
    if (room) {
        offer_fuels(list, true);
        offer_ratio(list, true);
    }
}

static void offer_jet(struct list *list)
{
    if (!list->c->piston.oil_jet)
        add_number(list, "piston.oil_jet", 1.0);
}

static void offer_alloys(struct list *list, bool jet)
{
    const struct cg_ladder_shelf *shelf = list->shelf;
    double now = list->c->piston_material.hot_limit;
    for (size_t i = 0; i < shelf->alloys; i++) {
        if (!(shelf->alloy[i].hot_limit > now))
            continue;
        const struct cg_ladder_set set[2] = {
            named("piston.alloy", shelf->alloy[i].name),
            number("piston.oil_jet", 1.0)};
        add(list, jet ? 2 : 1, set);
    }
}

static void offer_piston(struct list *list)
{
    offer_jet(list);
    offer_alloys(list, false);
    if (!list->c->piston.oil_jet)
        offer_alloys(list, true);
    offer_cooler(list);
}

static void offer_skirt(struct list *list)
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
            add_number(list, "piston.skirt_clearance",
                       cg_gap_round_up(to[i], step));
}

static void offer_lands(struct list *list)
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
        set[r] = number(path[r], now[r] + more);
    add(list, CG_RINGS, set);
}

/* The base stage coarser, class by class; the plateau stage shorter; or, where
 * there is no plateau yet, longer. */
static void offer_finish(struct list *list)
{
    const struct cg_finish_case *finish = &list->c->bore.finish;
    const struct cg_finish_verdict *verdict = &list->look->finish;
    for (double to = finish->plateau_share + SHARE_STEP;
         !verdict->plateau && to < SHARE_MOST + 1e-9; to += SHARE_STEP)
        add_number(list, "bore.finish.plateau_share", to);
    for (int i = 0; i < verdict->advices; i++)
        for (double to = finish->plateau_share - SHARE_STEP;
             verdict->advice[i].change == CG_PLATEAU_SHORTER &&
             to > SHARE_LEAST - 1e-9;
             to -= SHARE_STEP)
            add_number(list, "bore.finish.plateau_share", to);
    for (int grit = finish->base_grit, last = 0; grit != last;) {
        last = grit;
        grit = cg_grit_at_least(cg_grit_grain(grit) * (1.0 + 1e-6));
        if (grit < last)
            add_number(list, "bore.finish.base_grit", grit);
    }
}

static void offer_coolant(struct list *list)
{
    for (double to = list->c->cooling.coolant_pressure + CAP_STEP;
         to < CAP_MOST; to += CAP_STEP)
        add_number(list, "cooling.coolant_pressure", to);
    offer_cooler(list);
}

static void offer_bore_oil(struct list *list)
{
    offer_jet(list);
    for (int i = 1; cg_air_cooled(list->c) && i <= AIR_STEPS; i++)
        add_number(list, "cooling.air_speed",
                   list->c->cooling.air.speed * (1.0 + i * AIR_STEP));
    if (!cg_air_cooled(list->c) &&
        list->c->cooling.coolant_temperature > COOLANT_LEAST + 1.0)
        add_number(list, "cooling.coolant", COOLANT_LEAST);
    offer_cooler(list);
}

static void offer_seating(struct list *list)
{
    const struct cg_case *c = list->c;
    const struct cg_answer *answer = &list->book->answer;
    double seated = answer->seating.gap, width = c->ring[CG_RING_TOP].width;
    if (answer->second_verdict.given && seated > answer->second_verdict.gap)
        add_number(list, "rings.second.cold_gap", seated);
    if (width - WIDTH_STEP > WIDTH_LEAST - 1e-9)
        add_number(list, "rings.top.width", width - WIDTH_STEP);
    if (c->seal.ports == CG_PORTS_NONE)
        add_number(list, "rings.top.ports", CG_PORTS_CROWN);
}

size_t cg_offers(const struct cg_case *c, const struct cg_ladder_shelf *shelf,
                 enum cg_ladder_part part, const struct cg_look_book *book,
                 const struct cg_look *look, struct cg_offer offer[CG_OFFERS])
{
    struct list list = {c, shelf, book, look, offer, 0};
    static void (*const by_part[CG_LADDER_PARTS])(struct list *) = {
        [CG_LADDER_RING_FACE] = offer_rings,
        [CG_LADDER_RING_METAL] = offer_rings,
        [CG_LADDER_SEATING] = offer_seating,
        [CG_LADDER_FINISH] = offer_finish,
        [CG_LADDER_PISTON] = offer_piston,
        [CG_LADDER_SKIRT] = offer_skirt,
        [CG_LADDER_LANDS] = offer_lands,
        [CG_LADDER_BORE_OIL] = offer_bore_oil,
        [CG_LADDER_COOLANT] = offer_coolant,
        [CG_LADDER_SPARK] = offer_spark,
        [CG_LADDER_CHARGE] = offer_cooler};
    if (by_part[part] == NULL)
        offer_gaps(&list, part);
    else
        by_part[part](&list);
    return list.offers;
}

/* What stands behind a name. */
static void look_up(const struct cg_ladder_set *set,
                    const struct cg_ladder_shelf *shelf, struct cg_case *c)
{
    for (size_t i = 0; i < shelf->rings; i++)
        if (strcmp(set->path, "rings.top.material") == 0 &&
            strcmp(shelf->ring[i].name, set->name) == 0)
            c->ring_material[CG_RING_TOP] = shelf->ring[i];
    for (size_t i = 0; i < shelf->faces; i++)
        if (strcmp(set->path, "rings.top.face") == 0 &&
            strcmp(shelf->face[i].name, set->name) == 0)
            c->ring_face[CG_RING_TOP] = shelf->face[i];
    for (size_t i = 0; i < shelf->alloys; i++)
        if (strcmp(set->path, "piston.alloy") == 0 &&
            strcmp(shelf->alloy[i].name, set->name) == 0)
            c->piston_material = shelf->alloy[i];
}

void cg_offer_make(const struct cg_offer *offer,
                   const struct cg_ladder_shelf *shelf, struct cg_case *c)
{
    if (c->piston.skirt_taken) /* it goes with the alloy */
        c->piston.skirt_clearance = NAN;
    for (size_t i = 0; i < offer->sets; i++) {
        const struct cg_ladder_set *set = &offer->set[i];
        const struct cg_setting *setting = cg_setting_find(set->path);
        if (set->name == NULL) {
            cg_setting_put(setting, c, set->to);
            continue;
        }
        strcpy((char *)c + setting->offset, set->name);
        look_up(set, shelf, c);
    }
    cg_case_choose_skirt(c);
}
