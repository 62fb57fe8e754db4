#include "spray.h"

#include <math.h>

#include "constants.h"

#define MERCURY 133.322 /* a millimetre of it [Pa] */

const struct cg_fuel *cg_spray_alcohol(void)
{
    return cg_fuel_find("methanol");
}

static double antoine(double a, double b, double c, double temperature)
{
    return MERCURY * pow(10.0, a - b / (c + temperature - CG_ZERO_CELSIUS));
}

double cg_water_saturation(double temperature)
{
    return antoine(8.07131, 1730.63, 233.426, temperature);
}

double cg_alcohol_saturation(double temperature)
{
    return antoine(8.08097, 1582.27, 239.7, temperature);
}

void cg_evaporation_set(struct cg_evaporation *evaporation, double heat,
                        double from_deg, double to_deg)
{
    *evaporation = (struct cg_evaporation){heat, from_deg, to_deg};
}

/* Way through the window [0..1]. */
static double way(const struct cg_evaporation *evaporation, double angle_deg)
{
    double part = (angle_deg - evaporation->from_deg) /
                  (evaporation->to_deg - evaporation->from_deg);
    return fmin(fmax(part, 0.0), 1.0);
}

double cg_evaporation_rate(const struct cg_evaporation *evaporation,
                           double angle_deg)
{
    double part = way(evaporation, angle_deg);
    return evaporation->heat * (1.0 - cos(2.0 * CG_PI * part)) /
           (evaporation->to_deg - evaporation->from_deg);
}

static double taken(const struct cg_evaporation *evaporation, double angle_deg)
{
    double part = way(evaporation, angle_deg);
    return evaporation->heat * (part - sin(2.0 * CG_PI * part) / (2.0 * CG_PI));
}

double cg_evaporation_between(const struct cg_evaporation *evaporation,
                              double from_deg, double to_deg)
{
    if (!(evaporation->heat > 0.0))
        return 0.0;
    return taken(evaporation, to_deg) - taken(evaporation, from_deg);
}
