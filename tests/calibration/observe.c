#include "observe.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "config.h"
#include "constants.h"
#include "duty_run.h"
#include "growth.h"
#include "uncertain.h"

#define DEFAULTS CG_TEST_CONFIGS "/../tests/program/defaults.cfg"

/* Slopes between so many standard deviations up and down. */
#define STEP 0.5

enum { TEXT = 96, MOST_SETS = 2 * SETS + 4 * CONSTANTS + 4 };

/* What a settled run shows. */
struct shown {
    double y, bmep, power, flux, fuel, coolant;
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
    char text[MOST_SETS][TEXT];
    const char *set[MOST_SETS];
    size_t n = 0, mine = 0;
    for (size_t k = 0; k < facts->constants; k++)
        for (size_t j = 0; j < facts->constant[k].settings; j++) {
            snprintf(text[mine], TEXT, "%s=%.9g",
                     facts->constant[k].setting[j], facts->constant[k].middle);
            set[n++] = text[mine++];
        }
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
        1.0, c->engine.speed, c->engine.speed, load, load, 1.0, NAN};
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

static double friction_pct(const struct cg_case *c,
                           const struct cg_performance *p)
{
    double swept = CG_PI / 4 * c->engine.bore * c->engine.bore *
                   c->engine.stroke * c->engine.cylinders;
    return 100.0 * p->fmep * swept * c->engine.speed / 2.0 / p->fuel_power;
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
        return 100.0 * p->wall_heat_share + friction_pct(c, p) + sight->port;
    case SEES_BRAKE:
        return 100.0 * p->brake_power / p->fuel_power;
    case SEES_FLUX_EXPONENT:
        return 0.0;
    }
    return NAN;
}

static struct shown settle(const struct sight *sight, const struct cg_case *at,
                           double load)
{
    struct cg_case c = *at;
    struct cg_duty_run *run;
    struct cg_error error = {0};
    set_load(&c, load);
    if (cg_duty_run_create(&c, &run, &error) != CG_OK)
        give_up(sight->fact->name, &error);
    const struct cg_operating_point *point = &run->point[run->start];
    struct shown shown = {
        .y = look(sight, &c, run, point->settled),
        .bmep = point->performance.bmep,
        .power = point->performance.brake_power,
        .flux = point->performance.mean_flux,
        .fuel = point->performance.fuel_flow,
        .coolant = c.cooling.coolant_temperature - CG_ZERO_CELSIUS};
    cg_duty_run_free(run);
    return shown;
}

/* Boost that moves bmep a little [Pa]. */
#define MORE_BOOST 10e3

/* y for cases moved alike. */
static double value_of(const struct sight *sight, const struct cg_case *built,
                       const struct cg_case *changed, double load)
{
    const struct fact *fact = sight->fact;
    struct shown a = settle(sight, built, load);
    if (!fact_changes(fact))
        return a.y;
    struct shown b = settle(
        sight, changed, fact->change_load > 0.0 ? fact->change_load : load);
    if (fact->sees == SEES_FLUX_EXPONENT)
        return log(b.flux / a.flux) / log(b.fuel / a.fuel);
    if (fact->per_bmep)
        return (b.y - a.y) / (b.bmep - a.bmep) * 1e5;
    if (!fact->constant_bmep)
        return b.y - a.y;
    struct cg_case more = *changed;
    more.charge.boost += MORE_BOOST;
    struct shown up = settle(sight, &more, load);
    return b.y - a.y - (b.bmep - a.bmep) * (up.y - b.y) / (up.bmep - b.bmep);
}

/* The load of the stock rating, full load at most. */
static double load_of(const struct sight *sight, const struct cg_case *c)
{
    const struct fact *fact = sight->fact;
    if (fact->power == 0.0)
        return fact->load;
    double b = 1.0, pb = settle(sight, c, b).power;
    if (pb <= fact->power)
        return 1.0;
    double a = 0.8, pa = settle(sight, c, a).power;
    for (int i = 0; i < 8 && fabs(pa / fact->power - 1.0) > 1e-5; i++) {
        double next = a + (fact->power - pa) * (b - a) / (pb - pa);
        b = a;
        pb = pa;
        a = fmin(fmax(next, 0.2), 1.0);
        pa = settle(sight, c, a).power;
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
    struct cg_case built = sight->built[metal], changed = sight->changed[metal];
    move(facts, u, &built);
    move(facts, u, &changed);
    return value_of(sight, &built, &changed, load_of(sight, &built));
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
                          const struct cg_case *built,
                          const struct cg_case *changed, double load,
                          double value)
{
    size_t count;
    const struct cg_uncertain *rows = cg_uncertains(&count);
    double sum = 0.0;
    for (size_t i = 0; i < count; i++) {
        if (is_known(facts, &rows[i]) ||
            cg_uncertain_spread(&rows[i], built) == 0.0)
            continue;
        struct cg_case b = *built, c = *changed;
        cg_uncertain_move(&rows[i], 1.0, &b);
        cg_uncertain_move(&rows[i], 1.0, &c);
        double shift = value_of(sight, &b, &c, load) - value;
        sum += shift * shift;
    }
    if (sight->fact->sees == SEES_WALLS)
        sum += facts->port_spread * facts->port_spread;
    return sqrt(sum);
}

void sight_straighten(const struct facts *facts, const struct sight *sight,
                      size_t metal, const double *at, bool with_nuisance,
                      struct straight *straight)
{
    double u[CONSTANTS];
    struct cg_case built = sight->built[metal], changed = sight->changed[metal];
    memcpy(u, at, facts->constants * sizeof *u);
    straight->value = sight_value(facts, sight, metal, u);
    for (size_t k = 0; k < facts->constants; k++) {
        u[k] = at[k] + STEP;
        double up = sight_value(facts, sight, metal, u);
        u[k] = at[k] - STEP;
        double down = sight_value(facts, sight, metal, u);
        u[k] = at[k];
        straight->slope[k] = (up - down) / (2.0 * STEP);
        straight->bend[k] =
            (up - 2.0 * straight->value + down) / (STEP * STEP);
    }
    straight->size =
        size_of(sight, straight->value,
                built.cooling.coolant_temperature - CG_ZERO_CELSIUS);
    if (!with_nuisance)
        return;
    move(facts, at, &built);
    move(facts, at, &changed);
    straight->nuisance =
        nuisance_of(facts, sight, &built, &changed, load_of(sight, &built),
                    straight->value);
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
    sight->port = facts->port;
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
