/* What is offered for what makes the heat and what bears it. */
#include <string.h>

#include "fuel.h"
#include "ladder_offers.h"
#include "outside.h"

/* How far a part is changed, and in which steps: common practice, no source. */
#define COOLER_MOST 0.90
#define COOLER_STEP 0.05
#define INJECTION_STEP 2.0
#define INJECTION_MOST 8.0
#define RATIO_STEP 0.5
#define RATIO_LESS 2.0
#define CAP_STEP 25e3
#define CAP_MOST 310e3 /* absolute [Pa] */
#define COOLANT_LEAST 353.15
#define FERROUS 6000.0 /* [kg/m3]; pistons of it are diesels' */
#define AIR_STEP 0.25
#define AIR_STEPS 2 /* up to half as fast again */

void cg_offer_cooler(struct cg_offer_list *list)
{
    double now = list->c->charge.cooler_effectiveness;
    for (double to = 0.70; to < COOLER_MOST + 1e-9; to += COOLER_STEP)
        if (to > now + 1e-9)
            cg_offer_add_number(list, "charge.cooler_effectiveness", to);
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
static void offer_fuels(struct cg_offer_list *list, bool cooled)
{
    const struct cg_fuel *fuel = next_fuel(list->c->fuel.octane);
    for (; fuel != NULL; fuel = next_fuel(fuel->octane)) {
        struct cg_ladder_set set[3] = {
            cg_offer_name("fuel.name", fuel->name),
            cg_offer_number("fuel.octane", fuel->octane),
            cg_offer_number("charge.cooler_effectiveness", COOLER_MOST)};
        cg_offer_add(list, cooled ? 3 : 2, set);
    }
}

static void offer_ratio(struct cg_offer_list *list, bool cooled)
{
    double now = list->c->engine.compression_ratio;
    for (double less = RATIO_STEP; less < RATIO_LESS + 1e-9;
         less += RATIO_STEP) {
        struct cg_ladder_set set[2] = {
            cg_offer_number("engine.compression_ratio", now - less),
            cg_offer_number("charge.cooler_effectiveness", COOLER_MOST)};
        cg_offer_add(list, cooled ? 2 : 1, set);
    }
}

void cg_offer_spark(struct cg_offer_list *list)
{
    bool room = list->c->charge.cooler_effectiveness < COOLER_MOST - 1e-9;
    cg_offer_cooler(list);
    offer_fuels(list, false);
    offer_ratio(list, false);
    if (room) {
        offer_fuels(list, true);
        offer_ratio(list, true);
    }
}

/* Later injection, then with it a lower ratio. */
void cg_offer_pressure(struct cg_offer_list *list)
{
    double from = list->c->combustion.injection_deg;
    double ratio = list->c->engine.compression_ratio;
    for (double less = 0.0; less < RATIO_LESS + 1e-9; less += 2.0 * RATIO_STEP)
        for (double late = INJECTION_STEP; late < INJECTION_MOST + 1e-9;
             late += INJECTION_STEP) {
            struct cg_ladder_set set[2] = {
                cg_offer_number("combustion.injection", from + late),
                cg_offer_number("engine.compression_ratio", ratio - less)};
            cg_offer_add(list, less > 0.0 ? 2 : 1, set);
        }
}

static void offer_jet(struct cg_offer_list *list)
{
    if (!list->c->piston.oil_jet)
        cg_offer_add_number(list, "piston.oil_jet", 1.0);
}

static void offer_alloys(struct cg_offer_list *list, bool jet)
{
    const struct cg_ladder_shelf *shelf = list->shelf;
    double now = list->c->piston_material.hot_limit;
    for (size_t i = 0; i < shelf->alloys; i++) {
        const struct cg_material *alloy = &shelf->alloy[i];
        if (!(alloy->hot_limit > now) ||
            (alloy->density > FERROUS &&
             list->c->combustion.ignition == CG_IGNITION_SPARK))
            continue;
        const struct cg_ladder_set set[2] = {
            cg_offer_name("piston.alloy", alloy->name),
            cg_offer_number("piston.oil_jet", 1.0)};
        cg_offer_add(list, jet ? 2 : 1, set);
    }
}

void cg_offer_piston(struct cg_offer_list *list)
{
    offer_jet(list);
    offer_alloys(list, false);
    if (!list->c->piston.oil_jet)
        offer_alloys(list, true);
    cg_offer_cooler(list);
}

void cg_offer_coolant(struct cg_offer_list *list)
{
    for (double to = list->c->cooling.coolant_pressure + CAP_STEP;
         to < CAP_MOST; to += CAP_STEP)
        cg_offer_add_number(list, "cooling.coolant_pressure", to);
    cg_offer_cooler(list);
}

void cg_offer_bore_oil(struct cg_offer_list *list)
{
    offer_jet(list);
    for (int i = 1; cg_air_cooled(list->c) && i <= AIR_STEPS; i++)
        cg_offer_add_number(list, "cooling.air_speed",
                            list->c->cooling.air.speed * (1.0 + i * AIR_STEP));
    if (!cg_air_cooled(list->c) &&
        list->c->cooling.coolant_temperature > COOLANT_LEAST + 1.0)
        cg_offer_add_number(list, "cooling.coolant", COOLANT_LEAST);
    cg_offer_cooler(list);
}
