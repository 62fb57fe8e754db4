/* The way of heat from groove over ring to bore, against what was measured;
 * crevices, the liner's share and the lands beside it. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "case_of.h"
#include "check_close.h"
#include "constants.h"
#include "gas_side.h"
#include "thermal_parts.h"

#define JSME                                                                 \
    "calibrated on: measured piston, ring and bore temperatures, Trans. JSME " \
    "29(201) 988, about 1963, abstract"
#define BRYAN                                                                \
    "rings 65 % as effective as lands and skirt: Bryan, SAE 450154 (1945), " \
    "abstract"
#define IRON_RING "rings.top.material=grey_iron_ring"
#define ONE_MIXTURE "fuel.lambda=1"
#define BIG_EIGHT CG_TEST_CONFIGS "/engines/big_eight.cfg"

static const char *const engines[] = {PLAIN_FOUR, BOOSTED_FOUR, IRON_SIX,
                                      BIG_EIGHT};
static const double loads[] = {0.25, 0.5, 0.75, 1.0};

/* Temperatures [K], heats [W] and resistances [K/W] of the top ring's way. */
struct way {
    double groove, ring, face, bore;
    double to_ring, to_bore; /* resistances, of flank and of film */
};

static struct cg_case held(const char *engine, double load)
{
    struct cg_case c = case_of(engine, NULL, 0);
    hold(&c, 1.0, load);
    c.duty.start = CG_START_SETTLED;
    return c;
}

/* Heat from a to b over the links that `from` and `to` bound [W]. */
static double heat_between(const struct cg_network *n,
                           const double *temperature, size_t from, size_t to,
                           size_t bore_end)
{
    double sum = 0.0;
    for (size_t i = 0; i < n->links; i++) {
        size_t a = n->link_a[i], b = n->link_b[i];
        if (a >= from && a < to && b < bore_end)
            sum += n->link_conductance[i] * (temperature[a] - temperature[b]);
    }
    return sum;
}

static size_t bore_end(const struct cg_thermal *thermal)
{
    return thermal->bore.grid.stations * thermal->bore.per_station;
}

static double bore_under(const struct cg_thermal *thermal,
                         const struct cg_ring_map *ring,
                         const double *temperature)
{
    double sum = 0.0, share = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        sum += ring->share[s] *
               temperature[cg_thermal_liner_node(thermal, s, 0)];
        share += ring->share[s];
    }
    return sum / share;
}

static struct way way_of(const struct cg_duty_run *run)
{
    const struct cg_thermal *thermal = run->thermal;
    const struct cg_ring_map *ring = &thermal->ring[CG_RING_TOP];
    const struct cg_network *n = thermal->network;
    const double *t = run->point[run->start].settled;
    struct way way = {.groove = t[thermal->piston.groove[CG_RING_TOP]],
                      .ring = cg_thermal_ring_mean(thermal, t, CG_RING_TOP),
                      .face = t[ring->face],
                      .bore = bore_under(thermal, ring, t)};
    double in = 0.0;
    size_t first = ring->chain.first;
    for (size_t i = 0; i < n->links; i++)
        if (n->link_a[i] == thermal->piston.groove[CG_RING_TOP] &&
            n->link_b[i] >= first && n->link_b[i] <= ring->face)
            in += n->link_conductance[i] * (way.groove - t[n->link_b[i]]);
    double out = heat_between(n, t, first, ring->face + 1, bore_end(thermal));
    way.to_ring = (way.groove - way.ring) / in;
    way.to_bore = (way.face - way.bore) / out;
    return way;
}

static struct way way_at(const char *engine, double load, const char *set)
{
    struct cg_case c = case_of(engine, set != NULL ? &set : NULL, set != NULL);
    hold(&c, 1.0, load);
    c.duty.start = CG_START_SETTLED;
    struct cg_duty_run *run = run_of(&c);
    const struct cg_operating_point *point = &run->point[run->start];
    cg_point_apply(point, point, 0.0, run->thermal);
    struct way way = way_of(run);
    cg_duty_run_free(run);
    return way;
}

static double ratio_of(const struct way *way)
{
    return (way->groove - way->ring) / (way->ring - way->bore);
}

/* (groove - ring) above (ring - bore) at every load, with a ring of iron as they
 * were; the groove's resistance well above that of the film, twice at least. */
START_TEST(ring_is_nearer_the_bore)
{
    for (size_t l = 0; l < COUNT_OF(loads); l++) {
        struct way way = way_at(engines[_i], loads[l], IRON_RING);
        printf("%s load %.2f: groove %.1f ring %.1f face %.1f bore %.1f C, "
               "ratio %.2f, flank %.3f film %.3f K/W\n",
               engines[_i], loads[l], way.groove - CG_ZERO_CELSIUS,
               way.ring - CG_ZERO_CELSIUS, way.face - CG_ZERO_CELSIUS,
               way.bore - CG_ZERO_CELSIUS, ratio_of(&way), way.to_ring,
               way.to_bore);
        check_least(ratio_of(&way), 1.0, JSME);
        check_least(way.to_ring / way.to_bore, 2.0, JSME);
    }
}
END_TEST

/* The ratio grows with load; the resistance to the bore falls.  At one mixture:
 * an engine that is enriched with load may bring no more heat at full load than
 * at three quarters, and then nothing moves. */
START_TEST(film_resistance_falls_with_load)
{
    struct way before = way_at(engines[_i], loads[0], ONE_MIXTURE);
    for (size_t l = 1; l < COUNT_OF(loads); l++) {
        struct way way = way_at(engines[_i], loads[l], ONE_MIXTURE);
        check_most(way.to_bore / before.to_bore, 0.99, JSME);
        check_least(ratio_of(&way) / ratio_of(&before), 1.0, JSME);
        before = way;
    }
}
END_TEST

/* The groove's resistance hardly hangs on load or the piston's metal. */
START_TEST(flank_resistance_stays)
{
    struct way low = way_at(engines[_i], 0.25, NULL);
    struct way full = way_at(engines[_i], 1.0, NULL);
    struct way other = way_at(engines[_i], 1.0, "piston.alloy=2618");
    check_close(full.to_ring, low.to_ring, 0.1, JSME);
    check_close(other.to_ring, full.to_ring, 0.1, JSME);
}
END_TEST

/* ---- shares ---- */

/* Heat per area and kelvin [W/(m2 K)] of a part of the piston, from metal at
 * `from` to the bore as its own nodes see it. */
struct effect {
    double heat, area_kelvin;
};

static void add_rings(const struct cg_case *c, const struct cg_duty_run *run,
                      struct effect *effect)
{
    const struct cg_thermal *thermal = run->thermal;
    const double *t = run->point[run->start].settled;
    for (int r = 0; r < CG_RINGS; r++) {
        const struct cg_ring_map *ring = &thermal->ring[r];
        effect->heat +=
            heat_between(thermal->network, t, ring->chain.first,
                         ring->face + 1, bore_end(thermal));
        effect->area_kelvin += CG_PI * c->engine.bore * c->ring[r].width *
                               (t[thermal->piston.groove[r]] -
                                bore_under(thermal, ring, t));
    }
}

static void add_lands_and_skirt(const struct cg_case *c,
                                const struct cg_duty_run *run,
                                struct effect *effect)
{
    const struct cg_piston_map *piston = &run->thermal->piston;
    const double *t = run->point[run->start].settled;
    double bore = 0.0;
    size_t stations = run->thermal->bore.grid.stations;
    for (size_t s = 0; s < stations; s++)
        bore += t[cg_thermal_liner_node(run->thermal, s, 0)] / (double)stations;
    size_t lands = 0;
    for (size_t i = piston->crown_cells; i < piston->cells; i++) {
        double heat =
            heat_between(run->thermal->network, t, piston->node[i],
                         piston->node[i] + 1, bore_end(run->thermal));
        if (heat == 0.0)
            continue;
        bool skirt = i >= piston->skirt_first;
        double height =
            skirt ? c->piston.skirt_length / (double)piston->skirt_cells
                  : 0.5 * (lands < 2   ? c->piston.top_land
                           : lands < 4 ? c->piston.second_land
                                       : c->piston.third_land);
        lands++;
        effect->heat += heat;
        effect->area_kelvin += CG_PI * c->engine.bore * height *
                               (skirt ? c->piston.skirt_share : 1.0) *
                               (t[piston->node[i]] - bore);
    }
}

/* Told, not asserted as published: the model's rings pass several times as much
 * as its lands and skirt, the measurement says less than as much. */
START_TEST(rings_beside_lands_and_skirt)
{
    struct cg_case c = held(engines[_i], 1.0);
    struct cg_duty_run *run = run_of(&c);
    struct effect rings = {0}, rest = {0};
    add_rings(&c, run, &rings);
    add_lands_and_skirt(&c, run, &rest);
    double ratio = rings.heat / rings.area_kelvin * rest.area_kelvin /
                   rest.heat;
    printf("%s: rings %.0f W, lands and skirt %.0f W; per area and kelvin "
           "rings over the rest %.2f (%s)\n",
           engines[_i], rings.heat, rest.heat, ratio, BRYAN);
    ck_assert_double_gt(rest.heat, 0.1 * rings.heat);
    cg_duty_run_free(run);
}
END_TEST

/* Whose heat the wall's is: from the last cycle at full load. */
START_TEST(crevices_and_liner)
{
    struct cg_case c = held(engines[_i], 1.0);
    struct cg_duty_run *run = run_of(&c);
    const struct cg_operating_point *point = &run->point[run->start];
    struct cg_error error = {CG_OK, ""};
    struct cg_cycle *cycle = run->workspace.cycle;
    ck_assert_int_eq(cg_cycle_run(&point->input, cycle, &error), CG_OK);
    double per_second = 0.5 * point->operating.speed;
    double wall = cycle->heat_head + cycle->heat_piston + cycle->heat_liner +
                  cycle->heat_crevice;
    printf("%s: crevices %.3f kW (%.1f cm3), piston %.2f, head %.2f, liner "
           "%.2f kW; liner %.1f %% of all, law at %.3f, wall %.2f %% of fuel\n",
           engines[_i], cycle->heat_crevice * per_second / 1e3,
           point->input.crevice.volume * 1e6,
           cycle->heat_piston * per_second / 1e3,
           cycle->heat_head * per_second / 1e3,
           cycle->heat_liner * per_second / 1e3, 100.0 * cycle->heat_liner / wall,
           cycle->residual.law_share, 100.0 * wall / cycle->fuel_energy);
    /* all of it arrives in the network */
    const struct cg_crevice_map *map = &run->thermal->crevice;
    double part = 0.0, power = 0.0;
    cg_point_apply(point, point, 0.0, run->thermal);
    for (size_t i = 0; i < map->sources; i++) {
        part += map->part[i];
        power += run->thermal->network->source_power[map->source + i];
    }
    check_close(part, 1.0, 1e-12, "by definition");
    check_close(power, cycle->heat_crevice * per_second, 0.01,
                "what the cycle loses the walls take");
    check_within(cycle->energy_residual, 0.0, 1e-6, "first law");
    cg_duty_run_free(run);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("way from ring to bore");
    TCase *all = tcase_create("way from ring to bore");
    int count = (int)COUNT_OF(engines);
    tcase_set_timeout(all, 300);
    tcase_add_loop_test(all, ring_is_nearer_the_bore, 0, count);
    tcase_add_loop_test(all, film_resistance_falls_with_load, 0, count);
    tcase_add_loop_test(all, flank_resistance_stays, 0, count);
    tcase_add_loop_test(all, rings_beside_lands_and_skirt, 0, count);
    tcase_add_loop_test(all, crevices_and_liner, 0, count);
    suite_add_tcase(suite, all);
    return check_run(suite);
}
