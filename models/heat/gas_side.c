#include "gas_side.h"

#include <math.h>

struct cg_mean_gas cg_gas_side_crown(const struct cg_cycle *cycle)
{
    double width = 0.0, h = 0.0, heat = 0.0;
    for (size_t i = 0; i < cycle->sides; i++) {
        const struct cg_cycle_side *side = &cycle->side[i];
        width += side->width;
        h += side->width * side->coefficient;
        heat += side->width * side->heat;
    }
    return (struct cg_mean_gas){h / width, heat / h};
}

/* The crown's edge at depth d uncovers the stations above it whole, and part
 * of one.  The part is put at that station and the remainder at the one above,
 * so that summing from the bottom up gives every station its whole: one pass
 * over the cycle instead of one for each station. */
static void deposit(const struct cg_bore_grid *grid,
                    const struct cg_cycle_side *side, struct cg_mean_gas *gas)
{
    double h = side->width * side->coefficient;
    double heat = side->width * side->bore_heat;
    double place = fmin(side->depth / cg_station_height(grid),
                        (double)grid->stations);
    size_t last = grid->stations - 1;
    size_t s = (size_t)place < last ? (size_t)place : last;
    double part = place - (double)s;
    gas[s].coefficient += part * h;
    gas[s].temperature += part * heat;
    if (s > 0) {
        gas[s - 1].coefficient += (1.0 - part) * h;
        gas[s - 1].temperature += (1.0 - part) * heat;
    }
}

void cg_gas_side_stations(const struct cg_cycle *cycle,
                          const struct cg_bore_grid *grid,
                          struct cg_mean_gas *gas)
{
    struct cg_mean_gas crown = cg_gas_side_crown(cycle);
    for (size_t s = 0; s < grid->stations; s++)
        gas[s] = (struct cg_mean_gas){0.0, 0.0};
    double h = 0.0, heat = 0.0, width = 0.0;
    for (size_t i = 0; i < cycle->sides; i++) {
        deposit(grid, &cycle->side[i], gas);
        width += cycle->side[i].width;
    }
    for (size_t s = grid->stations; s-- > 0;) {
        h += gas[s].coefficient;
        heat += gas[s].temperature;
        gas[s].coefficient = h / width;
        gas[s].temperature = h > 0.0 ? heat / h : crown.temperature;
    }
}

double cg_gas_side_peak_flux(const struct cg_cycle *cycle,
                             double wall_temperature)
{
    double peak = 0.0;
    for (size_t i = 0; i < cycle->points; i++) {
        const struct cg_cycle_point *point = &cycle->point[i];
        peak = fmax(peak, point->coefficient *
                              (point->temperature - wall_temperature));
    }
    return peak;
}
