#include "coolant_side.h"

#include <math.h>

#include "outside.h"

/* Whether a station's middle has coolant or fins behind it. */
static bool is_wet(const struct cg_outside *outside,
                   const struct cg_bore_grid *grid, size_t station)
{
    double half = 0.5 * fmax(outside->length, cg_station_height(grid));
    double middle = outside->top + 0.5 * outside->length;
    return fabs(cg_station_depth(grid, station) - middle) <= half;
}

double cg_coolant_side(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const double *temperature)
{
    const struct cg_outside outside = cg_outside_of(c);
    size_t outer = thermal->bore.per_station - 1;
    double most = 0.0;
    for (size_t s = 0; s < thermal->bore.grid.stations; s++)
        if (is_wet(&outside, &thermal->bore.grid, s))
            most = fmax(most,
                        temperature[cg_thermal_liner_node(thermal, s, outer)]);
    return most;
}
