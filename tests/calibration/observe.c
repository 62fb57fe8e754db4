#include "observe.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "constants.h"
#include "duty_run.h"
#include "growth.h"
#include "heat_balance.h"
#include "uncertain.h"

#define DEFAULTS CG_TEST_CONFIGS "/../tests/program/defaults.cfg"

/* Slopes between so many standard deviations up and down. */
#define STEP 0.5

enum { TEXT = 96, MOST_SETS = 2 * SETS + SETTINGS * CONSTANTS + 3 };

/* What a settled run shows. */
struct shown {
    double y, bmep, power, flux, fuel;
};

static void give_up(const char *who, const struct cg_error *error)
{
    fprintf(stderr, "%s: %s\n", who, error->text);
    exit(3);
}

static const struct cg_uncertain *row_named(const char *name)
{
    size_t count;
    const struct cg_uncertain *all = cg_uncertains(&count);
    for (size_t i = 0; i < count; i++)
        if (strcmp(all[i].name, name) == 0)
            return &all[i];
    fprintf(stderr, "%s: no uncertain input\n", name);
    exit(2);
}

static double *spread_of(const struct cg_uncertain *row, struct cg_case *c)
{
    return (double *)((char *)c + row->spread);
}

/* One case: defaults, the constants' middles, the law, the build, the metal. */
static struct cg_case read_case(const struct facts *facts,
                                const struct fact *fact, const struct law *law,
                                size_t metal, bool changed)
{
    char text[3][TEXT];
    const char *set[MOST_SETS];
    size_t n = 0, mine = 0;
    for (size_t k = 0; k < facts->constants; k++)
        for (size_t j = 0; j < facts->constant[k].settings; j++)
            set[n++] = facts->constant[k].setting[j];
    snprintf(text[mine], TEXT, "combustion.heat_transfer=%s", law->gas);
    set[n++] = text[mine++];
    snprintf(text[mine], TEXT, "rings.film_law=%s", law->film);
    set[n++] = text[mine++];
    if (fact->sees == SEES_ENDS) {
        snprintf(text[mine], TEXT, "rings.top.material=%s",
                 facts->metal[metal]);
        set[n++] = text[mine++];
    }
    for (size_t i = 0; i < fact->builds; i++)
        set[n++] = fact->build[i];
    for (size_t i = 0; changed && i < fact->changes; i++) {
        /* A setting may be given once: a change takes the build's place. */
        size_t key = strcspn(fact->change[i], "="), at = 0;
        while (at < n && (strncmp(set[at], fact->change[i], key) != 0 ||
                          set[at][key] != '='))
            at++;
        set[at] = fact->change[i];
        n += at == n;
    }
    struct cg_case c;
    struct cg_error error = {0};
    if (cg_config_read(DEFAULTS, set, n, &c, &error) != CG_OK)
        give_up(fact->name, &error);
    for (size_t k = 0; k < facts->constants; k++)
        *spread_of(row_named(facts->constant[k].input), &c) =
            facts->constant[k].spread;
    c.duty.start = CG_START_SETTLED;
    return c;
}

static void set_load(struct cg_case *c, double load)
{
    c->duty.segments = 1;
    c->duty.segment[0] = (struct cg_segment){
        1.0, c->engine.speed, c->engine.speed, load, load, 1.0, NAN,
        0.0, 0.0, 0.0};
}

static double closure_of(const struct cg_case *c, const struct cg_duty_run *run,
                         const double *temperature)
{
    double strain[CG_STATIONS];
    cg_growth_bore(c, run->thermal, temperature, strain);
    double ring = cg_growth_ring(c, run->thermal, temperature, CG_RING_TOP);
    return cg_growth_closure(c, run->thermal, strain, ring, CG_RING_TOP, 0.0)
        .closure;
}

/* Bore surface that the top ring meets, by time. */
static double bore_met(const struct cg_thermal *thermal,
                       const double *temperature)
{
    double sum = 0.0, weight = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        double share = thermal->ring[CG_RING_TOP].share[s];
        sum += share * temperature[cg_thermal_liner_node(thermal, s, 0)];
        weight += share;
    }
    return sum / weight;
}

static double ring_place(const struct cg_thermal *thermal, const double *t)
{
    double ring = cg_thermal_ring_mean(thermal, t, CG_RING_TOP);
    double above = t[thermal->piston.groove[CG_RING_TOP]] - ring;
    return log(above / (ring - bore_met(thermal, t)));
}

/* What coolant and oil carry off, friction in it, of the fuel [%]. */
static double carried_off(const struct cg_case *c,
                          const struct cg_duty_run *run)
{
    struct cg_heat_balance balance =
        cg_heat_balance_at(c, run->thermal, &run->point[run->start]);
    return 100.0 * (balance.coolant + balance.oil) / balance.fuel;
}

static double look(const struct sight *sight, const struct cg_case *c,
                   const struct cg_duty_run *run, const double *t)
{
    const struct cg_thermal *thermal = run->thermal;
    const struct cg_performance *p = &run->point[run->start].performance;
    switch (sight->fact->sees) {
    case SEES_ENDS:
        return closure_of(c, run, t);
    case SEES_CROWN:
        return t[thermal->piston.node[0]] - CG_ZERO_CELSIUS;
    case SEES_GROOVE:
        return t[thermal->piston.groove[CG_RING_TOP]] - CG_ZERO_CELSIUS;
    case SEES_LINER:
        return cg_thermal_bore_at(thermal, t, sight->fact->depth) -
               CG_ZERO_CELSIUS;
    case SEES_ABOVE_COOLANT:
        return cg_thermal_bore_at(thermal, t, sight->fact->depth) -
               c->cooling.coolant_temperature;
    case SEES_RING_PLACE:
        return ring_place(thermal, t);
    case SEES_WALLS:
        return carried_off(c, run);
    case SEES_BRAKE:
        return 100.0 * p->brake_power / p->fuel_power;
    case SEES_FLUX_EXPONENT:
        return 0.0;
    }
    return NAN;
}

/* Runs of the cases that others are near to: as built, as changed, and that
 * with more boost. */
struct near {
    struct cg_duty_run *run[3]; /* NULL: no such */
};

/* A settled run near another, or by itself (near NULL).  `same_gas`: nothing
 * moves the cycle. */
static struct cg_duty_run *run_of(const struct sight *sight,
                                  const struct cg_case *c,
                                  const struct cg_duty_run *near, bool same_gas)
{
    struct cg_duty_run *run;
    struct cg_error error = {0};
    enum cg_status status;
    if (near == NULL) {
        status = cg_duty_run_create(c, &run, &error);
    } else {
        status = cg_duty_run_lay_out(c, &run, &error);
        if (status == CG_OK)
            status = cg_duty_run_vary(c, near, same_gas ? near : NULL, run,
                                      &error);
    }
    if (status != CG_OK)
        give_up(sight->fact->name, &error);
    return run;
}

static struct shown show(const struct sight *sight, const struct cg_case *c,
                         const struct cg_duty_run *run)
{
    const struct cg_operating_point *point = &run->point[run->start];
    return (struct shown){
        .y = look(sight, c, run, point->settled),
        .bmep = point->performance.bmep,
        .power = point->performance.brake_power,
        .flux = point->performance.mean_flux,
        .fuel = point->performance.fuel_flow};
}

static struct shown settle(const struct sight *sight, const struct cg_case *at,
                           double load, const struct cg_duty_run *near,
                           bool same_gas)
{
    struct cg_case c = *at;
    set_load(&c, load);
    struct cg_duty_run *run = run_of(sight, &c, near, same_gas);
    struct shown shown = show(sight, &c, run);
    cg_duty_run_free(run);
    return shown;
}

/* Boost that moves bmep a little [Pa]. */
#define MORE_BOOST 10e3

static double changed_load(const struct fact *fact, double load)
{
    return fact->change_load > 0.0 ? fact->change_load : load;
}

/* y for cases moved alike, and the brake power as built [W]. */
static double value_of(const struct sight *sight, const struct cg_case *built,
                       const struct cg_case *changed, double load,
                       const struct near *near, bool same_gas, double *power)
{
    const struct fact *fact = sight->fact;
    struct shown a = settle(sight, built, load, near->run[0], same_gas);
    *power = a.power;
    if (!fact_changes(fact))
        return a.y;
    load = changed_load(fact, load);
    struct shown b = settle(sight, changed, load, near->run[1], same_gas);
    if (fact->sees == SEES_FLUX_EXPONENT)
        return log(b.flux / a.flux) / log(b.fuel / a.fuel);
    if (fact->per_bmep)
        return (b.y - a.y) / (b.bmep - a.bmep) * 1e5;
    if (!fact->constant_bmep)
        return b.y - a.y;
    struct cg_case more = *changed;
    more.charge.boost += MORE_BOOST;
    struct shown up = settle(sight, &more, load, near->run[2], same_gas);
    return b.y - a.y - (b.bmep - a.bmep) * (up.y - b.y) / (up.bmep - b.bmep);
}

/* The load of the stock rating, full load at most. */
static double load_of(const struct sight *sight, const struct cg_case *c)
{
    const struct fact *fact = sight->fact;
    if (fact->power == 0.0)
        return fact->load;
    double b = 1.0, pb = settle(sight, c, b, NULL, false).power;
    if (pb <= fact->power)
        return 1.0;
    double a = 0.8, pa = settle(sight, c, a, NULL, false).power;
    for (int i = 0; i < 8 && fabs(pa / fact->power - 1.0) > 1e-5; i++) {
        double next = a + (fact->power - pa) * (b - a) / (pb - pa);
        b = a;
        pb = pa;
        a = fmin(fmax(next, 0.2), 1.0);
        pa = settle(sight, c, a, NULL, false).power;
    }
    return a;
}

static void move(const struct facts *facts, const double *u,
                 struct cg_case *c)
{
    for (size_t k = 0; k < facts->constants; k++)
        cg_uncertain_move(row_named(facts->constant[k].input), u[k], c);
}

double sight_value(const struct facts *facts, const struct sight *sight,
                   size_t metal, const double *u)
{
    double power;
    const struct near none = {{NULL}};
    struct cg_case built = sight->built[metal], changed = sight->changed[metal];
    move(facts, u, &built);
    move(facts, u, &changed);
    return value_of(sight, &built, &changed, load_of(sight, &built), &none,
                    false, &power);
}

/* Where a fact is looked at: cases, the load that makes the stock rating, and
 * what a watt more or less does to y. */
struct stand {
    struct cg_case built, changed;
    struct near near;
    double load, value, power, per_watt;
};

/* Less load, to see what a watt does. */
#define LESS_LOAD 0.02

static void keep_run(const struct sight *sight, const struct cg_case *at,
                     double load, struct cg_duty_run **run)
{
    struct cg_case c = *at;
    set_load(&c, load);
    *run = run_of(sight, &c, NULL, false);
}

static void keep_runs(const struct sight *sight, struct stand *at)
{
    double load = changed_load(sight->fact, at->load);
    struct cg_case more = at->changed;
    more.charge.boost += MORE_BOOST;
    keep_run(sight, &at->built, at->load, &at->near.run[0]);
    if (fact_changes(sight->fact))
        keep_run(sight, &at->changed, load, &at->near.run[1]);
    if (sight->fact->constant_bmep)
        keep_run(sight, &more, load, &at->near.run[2]);
}

static void stand_at(const struct facts *facts, const struct sight *sight,
                     size_t metal, const double *u, struct stand *at)
{
    const struct near none = {{NULL}};
    double power;
    *at = (struct stand){.built = sight->built[metal],
                         .changed = sight->changed[metal]};
    move(facts, u, &at->built);
    move(facts, u, &at->changed);
    at->load = load_of(sight, &at->built);
    keep_runs(sight, at);
    at->value = value_of(sight, &at->built, &at->changed, at->load, &at->near,
                         true, &at->power);
    if (sight->fact->power == 0.0 || at->load == 1.0)
        return;
    double full = value_of(sight, &at->built, &at->changed, at->load, &none,
                           false, &at->power);
    double less = value_of(sight, &at->built, &at->changed,
                           at->load - LESS_LOAD, &none, false, &power);
    at->per_watt = (full - less) / (at->power - power);
}

static void stand_free(struct stand *at)
{
    for (int i = 0; i < 3; i++)
        cg_duty_run_free(at->near.run[i]);
}

/* y of moved cases at the power of the stand. */
static double moved_value(const struct sight *sight, const struct stand *at,
                          const struct cg_case *built,
                          const struct cg_case *changed, bool same_gas)
{
    double power, y = value_of(sight, built, changed, at->load, &at->near,
                               same_gas, &power);
    return y - at->per_watt * (power - at->power);
}

/* y with one constant moved by `by` more. */
static double constant_moved(const struct facts *facts,
                             const struct sight *sight, const struct stand *at,
                             size_t constant, double by)
{
    const struct cg_uncertain *row = row_named(facts->constant[constant].input);
    struct cg_case built = at->built, changed = at->changed;
    cg_uncertain_move(row, by, &built);
    cg_uncertain_move(row, by, &changed);
    return moved_value(sight, at, &built, &changed, !row->gas_side);
}

static double size_of(const struct sight *sight, double y, double coolant)
{
    switch (sight->fact->sees) {
    case SEES_CROWN:
        return fabs(y - coolant);
    case SEES_RING_PLACE:
        return fact_changes(sight->fact) ? 0.0 : 1.0;
    case SEES_FLUX_EXPONENT:
        return 0.0;
    default:
        return fabs(y);
    }
}

/* Whether an input is one of the constants, or adds to gap or bore alone. */
static bool is_known(const struct facts *facts, const struct cg_uncertain *row)
{
    bool known = row->direct;
    for (size_t k = 0; k < facts->constants; k++)
        known |= strcmp(facts->constant[k].input, row->name) == 0;
    return known;
}

static double nuisance_of(const struct facts *facts, const struct sight *sight,
                          const struct stand *at)
{
    size_t count;
    const struct cg_uncertain *rows = cg_uncertains(&count);
    double sum = 0.0;
    for (size_t i = 0; i < count; i++) {
        if (is_known(facts, &rows[i]) ||
            cg_uncertain_spread(&rows[i], &at->built) == 0.0)
            continue;
        struct cg_case built = at->built, changed = at->changed;
        cg_uncertain_move(&rows[i], 1.0, &built);
        cg_uncertain_move(&rows[i], 1.0, &changed);
        double shift = moved_value(sight, at, &built, &changed,
                                   !rows[i].gas_side) -
                       at->value;
        sum += shift * shift;
    }
    if (sight->fact->sees == SEES_WALLS)
        sum += facts->port_spread * facts->port_spread;
    return sqrt(sum);
}

void sight_straighten(const struct facts *facts, const struct sight *sight,
                      size_t metal, const double *u, bool with_nuisance,
                      struct straight *straight)
{
    struct stand at;
    stand_at(facts, sight, metal, u, &at);
    straight->value = at.value;
    for (size_t k = 0; k < facts->constants; k++) {
        double up = constant_moved(facts, sight, &at, k, STEP);
        double down = constant_moved(facts, sight, &at, k, -STEP);
        straight->slope[k] = (up - down) / (2.0 * STEP);
        straight->bend[k] = (up - 2.0 * at.value + down) / (STEP * STEP);
    }
    straight->size =
        size_of(sight, at.value,
                at.built.cooling.coolant_temperature - CG_ZERO_CELSIUS);
    if (with_nuisance)
        straight->nuisance = nuisance_of(facts, sight, &at);
    stand_free(&at);
}

double straight_at(const struct straight *straight, size_t constants,
                   const double *at, const double *u)
{
    double y = straight->value;
    for (size_t k = 0; k < constants; k++) {
        double d = u[k] - at[k];
        y += d * (straight->slope[k] + 0.5 * straight->bend[k] * d);
    }
    return y;
}

void sight_read(const struct facts *facts, const struct fact *fact,
                const struct law *law, struct sight *sight)
{
    sight->fact = fact;
    sight->metals = fact->sees == SEES_ENDS ? facts->metals : 1;
    for (size_t m = 0; m < sight->metals; m++) {
        sight->built[m] = read_case(facts, fact, law, m, false);
        sight->changed[m] = read_case(facts, fact, law, m, true);
    }
}

void sight_spoil(struct sight *sight, const char *input, double factor)
{
    const struct cg_uncertain *row = row_named(input);
    for (size_t m = 0; m < sight->metals; m++)
        for (int i = 0; i < CG_UNCERTAIN_FIELDS && row->field[i] != 0; i++) {
            *(double *)((char *)&sight->built[m] + row->field[i]) *= factor;
            *(double *)((char *)&sight->changed[m] + row->field[i]) *= factor;
        }
}
