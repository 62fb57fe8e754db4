#include "growth.h"

#include <math.h>
#include <stddef.h>

#include "choke.h"
#include "geometry.h"
#include "ring_gap.h"

static struct cg_layer layer_at(const struct cg_material *material,
                                double expansion_scale, double inner,
                                double outer, double temperature)
{
    return (struct cg_layer){
        .inner = inner,
        .outer = outer,
        .modulus = cg_curve_at(&material->modulus, temperature),
        .poisson = material->poisson,
        .strain =
            expansion_scale * cg_material_strain(material, temperature)};
}

void cg_growth_station(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const double *temperature, size_t station,
                       struct cg_bore_growth *growth)
{
    double inner = 0.5 * c->engine.bore;
    double joint = inner + c->bore.wall_thickness;
    struct cg_layer liner =
        layer_at(&c->bore_material, c->scale.bore_expansion, inner, joint,
                 cg_thermal_liner_mean(thermal, temperature, station));
    if (!thermal->bore.has_block) {
        cg_bore_grow((enum cg_seat)c->bore.seat, &liner, NULL, 0.0, 0.0,
                     growth);
        return;
    }
    struct cg_layer block =
        layer_at(&c->block_material, c->scale.bore_expansion, joint,
                 joint + c->bore.block_thickness,
                 cg_thermal_block_mean(thermal, temperature, station));
    cg_bore_grow((enum cg_seat)c->bore.seat, &liner, &block,
                 0.5 * c->bore.interference, 0.0, growth);
}

void cg_growth_bore(const struct cg_case *c, const struct cg_thermal *thermal,
                    const double *temperature, double *strain)
{
    for (size_t s = 0; s < thermal->bore.grid.stations; s++) {
        struct cg_bore_growth growth;
        cg_growth_station(c, thermal, temperature, s, &growth);
        strain[s] = growth.radial / (0.5 * c->engine.bore);
        if (c->bore.choke.narrower > 0.0)
            strain[s] = cg_choke_strain(
                c, cg_station_depth(&thermal->bore.grid, s), strain[s]);
    }
}

double cg_growth_at_depth(const struct cg_thermal *thermal,
                          const double *strain, double depth)
{
    struct cg_between at = cg_thermal_between(thermal, depth);
    double upper = strain[at.station], lower = strain[at.station + 1];
    return upper + at.part * (lower - upper);
}

double cg_growth_ring(const struct cg_case *c,
                      const struct cg_thermal *thermal,
                      const double *temperature, enum cg_ring_place place)
{
    double mean = cg_thermal_ring_mean(thermal, temperature, place);
    return c->scale.ring_expansion *
           cg_material_strain(&c->ring_material[place], mean);
}

double cg_growth_least(const struct cg_thermal *thermal, const double *strain,
                       double from, double to, double *depth)
{
    const struct cg_bore_grid *grid = &thermal->bore.grid;
    double least = cg_growth_at_depth(thermal, strain, from), where = from;

    /* The bore's strain runs straight between stations, so its least value
     * lies at a station or at an end of the travel. */
    double end = cg_growth_at_depth(thermal, strain, to);
    if (end < least) {
        least = end;
        where = to;
    }
    for (size_t s = 0; s < grid->stations; s++) {
        double at = cg_station_depth(grid, s);
        if (at > from && at < to && strain[s] < least) {
            least = strain[s];
            where = at;
        }
    }
    if (depth != NULL)
        *depth = where;
    return least;
}

struct cg_closure cg_growth_closure(const struct cg_case *c,
                                    const struct cg_thermal *thermal,
                                    const double *strain, double ring_strain,
                                    enum cg_ring_place place,
                                    double minimum_hot_gap)
{
    double middle = cg_ring_turn(c, place);
    double top_strain = cg_growth_at_depth(thermal, strain, middle), where;
    double least = cg_growth_least(thermal, strain, middle,
                                   middle + c->engine.stroke, &where);
    double bore = c->engine.bore, taken = minimum_hot_gap + cg_choke_gap(c);
    return (struct cg_closure){
        cg_gap_cold_for(bore, minimum_hot_gap, least, ring_strain) - taken,
        where,
        cg_gap_cold_for(bore, minimum_hot_gap, top_strain, ring_strain) -
            taken};
}

double cg_growth_gap(const struct cg_case *c, double gap, double bore_strain,
                     double ring_strain)
{
    return cg_gap_hot(c->engine.bore, gap + cg_choke_gap(c), bore_strain,
                      ring_strain);
}
