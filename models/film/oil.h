/* Engine oils by SAE grade: viscosity as a ring film sees it. */
#ifndef CG_OIL_H
#define CG_OIL_H

#include <stddef.h>

struct cg_oil {
    const char *name;     /* SAE J300 grade, "5W-30" or "40" */
    double at_40, at_100; /* kinematic viscosity at 40 and 100 C [m2/s] */
    double density;       /* at 15 C [kg/m3] */
    double high_shear;    /* viscosity at 150 C and 1e6 1/s [Pa s] */
};

/* All grades known; *count receives their number. */
const struct cg_oil *cg_oils(size_t *count);
/* The oil of that grade, or NULL. */
const struct cg_oil *cg_oil_find(const char *name);

/* Kinematic viscosity [m2/s] at little shear, by Walther (viscosity.h). */
double cg_oil_kinematic(const struct cg_oil *oil, double temperature);

/* Density [kg/m3]: falls by 0.64 kg/m3 for each kelvin above 15 C (common
 * practice, no source). */
double cg_oil_density(const struct cg_oil *oil, double temperature);

/* Dynamic viscosity [Pa s] in the film of a running ring, whose rate of shear
 * (m/s over um) is past 1e6 1/s: kinematic viscosity times density times the
 * share that is left at 150 C under such shear (high_shear), taken for the
 * same at every temperature.  Cannot fail. */
double cg_oil_sheared(const struct cg_oil *oil, double temperature);

#endif
