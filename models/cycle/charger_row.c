#include "charger_row.h"

#include <math.h>

#define AIR_CP 1005.0            /* [J/(kg K)], 300 K: NASA TM-4513 mixture */
#define AIR_EXPONENT (0.4 / 1.4) /* (gamma - 1)/gamma of air */

static double stage(double temperature, double ratio, double efficiency)
{
    return temperature * (pow(ratio, AIR_EXPONENT) - 1.0) / efficiency;
}

struct cg_charged cg_charger_row(const struct cg_charger_row *row,
                                 double ambient, double ratio)
{
    double first = row->chargers > 1 ? pow(ratio, row->split) : ratio;
    double rise = stage(ambient, first, row->efficiency[0]);
    struct cg_charged out = {
        rise, {AIR_CP * rise, 0.0}, {first - 1.0, ratio - first}};
    if (row->chargers > 1) {
        double left = (1.0 - row->between) * rise;
        double more = stage(ambient + left, ratio / first, row->efficiency[1]);
        out.rise = left + more;
        out.work[1] = AIR_CP * more;
    }
    return out;
}
