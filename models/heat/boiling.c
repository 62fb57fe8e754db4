#include "boiling.h"

#include <math.h>

#include "constants.h"

#define PASCAL_PER_MMHG 133.322387415

double cg_boiling_point(double pressure, double glycol)
{
    double water =
        1810.94 / (8.14019 - log10(pressure / PASCAL_PER_MMHG)) - 244.485;
    return water + 8.0 * (glycol / 0.5) * (glycol / 0.5) + CG_ZERO_CELSIUS;
}
