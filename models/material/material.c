#include "material.h"

#include "constants.h"

#include <assert.h>

double cg_curve_at(const struct cg_curve *curve, double temperature)
{
    assert(curve->points >= 1 && curve->points <= CG_CURVE_POINTS);
    if (curve->points == 1)
        return curve->value[0];

    int low = 0;
    while (low < curve->points - 2 &&
           temperature >= curve->temperature[low + 1])
        low++;
    double start = curve->temperature[low];
    double share =
        (temperature - start) / (curve->temperature[low + 1] - start);
    /* Tables end where the measurements end: we hold, and do not extrapolate.
     * Written so that a NaN temperature comes out as NaN. */
    if (share < 0)
        share = 0;
    if (share > 1)
        share = 1;
    return (1 - share) * curve->value[low] + share * curve->value[low + 1];
}

double cg_material_strain(const struct cg_material *material,
                          double temperature)
{
    return cg_curve_at(&material->expansion, temperature) *
           (temperature - CG_COLD_TEMPERATURE);
}
