#include "brought_check.h"

#include <math.h>

#include "brought.h"
#include "fresh.h"
#include "nitrous.h"
#include "spray.h"

#define COLDEST 230.0       /* before the valve: case_check.c [K] */
#define COLDEST_ENTRY 130.0 /* as if entering: likewise [K] */
#define AIR_CP 1005.0       /* [J/(kg K)] */
#define AIR_CV (AIR_CP / 1.4)
#define LEAST_AIR 0.5       /* of its room: common practice, no source */
#define MOST_WATER 1.0      /* over fuel by mass: likewise */
#define LEAST_FUEL 0.1      /* the engine's own, of the need: likewise */

/* What is wrong at some point of the engine, once each. */
struct troubles {
    bool crowded, cold, cold_entry, cold_closed, soaked, drowned, no_fuel;
};

static void look_at(const struct cg_case *c, const struct cg_operating *at,
                    struct troubles *found)
{
    struct cg_cycle_input in;
    struct cg_charge_state charge;
    struct cg_error unused;
    cg_operating_charge(c, at, &charge);
    const struct cg_brought *brought = &charge.brought;
    if (!(brought->nitrous + brought->water + brought->alcohol > 0.0) ||
        cg_operating_cycle_input(c, at, &in, &unused) != CG_OK)
        return;
    if (!(cg_brought_air_left(c, &charge) >= LEAST_AIR)) {
        found->crowded = true;
        return; /* the rest means little */
    }
    double air = cg_fresh_air(&in);
    double need = air / in.lambda + cg_nitrous_oxygen_as_air() *
                                        brought->nitrous /
                                        brought->nitrous_lambda;
    double met = brought->alcohol * cg_fuel_stoichiometric(cg_spray_alcohol());
    double own = (need - met) / cg_fuel_stoichiometric(in.fuel);
    double taken =
        in.latent_charge * own * in.fuel->latent_heat + brought->entering;
    found->no_fuel |= !(met <= (1.0 - LEAST_FUEL) * need);
    found->drowned |= brought->water > MOST_WATER * (own + brought->alcohol);
    found->cold |= charge.manifold_temperature < COLDEST;
    double entry = charge.manifold_temperature - taken / (AIR_CP * air);
    found->cold_entry |= entry < COLDEST_ENTRY;
    found->cold_closed |=
        entry - brought->closed / (AIR_CV * air) < COLDEST_ENTRY;
    found->soaked |= cg_brought_humidity(c, &charge) > 1.0;
}

/* Every load, as it runs without nitrous. */
static struct troubles look_at_spray(const struct cg_case *c)
{
    struct troubles found = {.crowded = false};
    for (int i = 0; i <= 10; i++) {
        struct cg_operating at = cg_operating_at(c, c->engine.speed, 0.1 * i);
        look_at(c, &at, &found);
    }
    return found;
}

/* Wherever that duty has nitrous on, and at rated speed and full load. */
static void look_at_duty(const struct cg_case *c,
                         const struct cg_duty_case *duty,
                         struct troubles *found)
{
    const struct cg_course *course = duty->course;
    double most = cg_duty_nitrous(duty);
    for (size_t i = 0; course != NULL && i < course->rows; i++) {
        struct cg_operating at = cg_operating_of(c, course->row[i].of);
        if (at.nitrous > 0.0)
            look_at(c, &at, found);
    }
    for (int i = 0; course == NULL && i < 2 * duty->segments; i++) {
        const struct cg_segment *s = &duty->segment[i / 2];
        struct cg_operating at =
            cg_operating_at(c, i % 2 == 0 ? s->speed : s->speed_end,
                            i % 2 == 0 ? s->load : s->load_end);
        at.nitrous = s->nitrous;
        if (at.nitrous > 0.0)
            look_at(c, &at, found);
    }
    struct cg_operating full = cg_operating_at(c, c->engine.speed, 1.0);
    full.nitrous = most;
    if (most > 0.0)
        look_at(c, &full, found);
}

static struct troubles look_at_nitrous(const struct cg_case *c)
{
    struct troubles found = {.crowded = false};
    look_at_duty(c, &c->duty, &found);
    for (int i = 0; i < c->survive.duties; i++)
        look_at_duty(c, &c->survive.duty[i], &found);
    return found;
}

static bool any_on(const struct cg_case *c)
{
    bool on = cg_duty_nitrous(&c->duty) > 0.0;
    for (int i = 0; i < c->survive.duties; i++)
        on = on || cg_duty_nitrous(&c->survive.duty[i]) > 0.0;
    return on;
}

struct list {
    size_t count;
    struct cg_case_problem *problem;
};

static void complain_if(struct list *list, bool wrong, const char *path,
                        const char *other, double limit, const char *text)
{
    if (wrong && list->count < CG_BROUGHT_PROBLEMS)
        list->problem[list->count++] =
            (struct cg_case_problem){path, other, text, limit};
}

static void check_nitrous(const struct cg_case *c, struct list *list)
{
    const char *path =
        c->nitrous.power > 0.0 ? "nitrous.power" : "nitrous.flow";
    bool both = c->nitrous.flow > 0.0 && c->nitrous.power > 0.0;
    bool none = any_on(c) && !(cg_brought_nitrous(c) > 0.0);
    complain_if(list, both, "nitrous.power", "nitrous.flow", NAN,
                "does not go with nitrous.flow, one of the two is allowed");
    complain_if(list, none, "nitrous.flow", "duty.name", NAN,
                "a duty has nitrous on, but there is none; allowed: "
                "nitrous.flow or nitrous.power above 0");
    if (both || none)
        return;
    struct troubles found = look_at_nitrous(c);
    complain_if(list, found.crowded, path, "charge.boost", NAN,
                "leaves the air less than half of its room where a duty has "
                "it on; allowed: less of it, or on at a higher speed and load");
    complain_if(list, found.cold || found.cold_entry, path, "nitrous.bottle",
                NAN,
                "cools the charge below what the gas laws hold for (-43 C "
                "before the valve); allowed: less of it, gas, or on at a "
                "higher speed and load");
    complain_if(list, found.drowned || found.no_fuel || found.soaked, path,
                "spray.flow", NAN,
                "leaves the spray too little air or warmth where both are on; "
                "allowed: less of it, or less spray");
}

/* The most that may evaporate before the valve. */
static double most_before(const struct cg_case *c)
{
    struct cg_case with = *c;
    double low = 0.0, high = c->spray.before;
    for (int i = 0; i < 40; i++) {
        with.spray.before = 0.5 * (low + high);
        if (look_at_spray(&with).soaked)
            high = with.spray.before;
        else
            low = with.spray.before;
    }
    return low;
}

static void check_spray(const struct cg_case *c, struct list *list)
{
    const struct cg_spray_case *spray = &c->spray;
    if (!(spray->flow > 0.0))
        return;
    bool shares = spray->before + spray->closed > 1.0 + 1e-12;
    complain_if(list, shares, "spray.closed", "spray.before",
                1.0 - spray->before,
                "beside what evaporates before the valve must be at most");
    if (shares)
        return;
    struct troubles found = look_at_spray(c);
    complain_if(list, found.crowded || found.drowned, "spray.flow",
                "charge.boost", NAN,
                "is more water than there is fuel; allowed: less of it");
    complain_if(list, found.no_fuel, "spray.flow", "fuel.lambda", NAN,
                "brings more than 90 % of what the mixture burns as alcohol; "
                "allowed: less of it, or less spray.alcohol");
    bool cold = found.cold || found.cold_entry;
    if (found.crowded || found.drowned || found.no_fuel)
        return;
    complain_if(list, found.soaked, "spray.before", "spray.flow",
                found.soaked ? most_before(c) : NAN,
                "is more vapour than the air before the valve can hold; must "
                "be at most");
    complain_if(list, cold && !found.soaked, "spray.flow", "charge.evaporation",
                NAN,
                "cools the charge below what the gas laws hold for; allowed: "
                "less of it, or more of it evaporated after the intake has "
                "closed");
    complain_if(list, found.cold_closed && !cold && !found.soaked,
                "spray.closed", "spray.flow", NAN,
                "cools the closed cylinder below what the gas laws hold for; "
                "allowed: less of it, or a smaller spray.flow");
}

size_t cg_brought_check(const struct cg_case *c,
                        struct cg_case_problem problem[CG_BROUGHT_PROBLEMS])
{
    struct list list = {0, problem};
    check_nitrous(c, &list);
    if (list.count == 0)
        check_spray(c, &list);
    return list.count;
}
