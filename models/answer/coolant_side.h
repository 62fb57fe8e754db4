/* The wall that has coolant or fins behind it. */
#ifndef CG_COOLANT_SIDE_H
#define CG_COOLANT_SIDE_H

#include "thermal.h"

/* The hottest of it [K], of those of a run's stations that lie along the
 * jacket or the fins; of one shorter than a station, the one that holds its
 * middle. Cannot fail. */
double cg_coolant_side(const struct cg_case *c,
                       const struct cg_thermal *thermal,
                       const double *temperature);

#endif
