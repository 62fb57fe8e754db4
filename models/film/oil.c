#include "oil.h"

#include <string.h>

#include "viscosity.h"

/* Typical values of their grades (common practice, no source), inside the
 * limits of SAE J300 (2015) for 100 C and for high shear at 150 C (tested).
 * The straight grades have no polymer that shear could line up. */
static const struct cg_oil oils[] = {
    {"0W-16", 35.0e-6, 7.1e-6, 842.0, 2.40e-3},
    {"0W-20", 44.0e-6, 8.4e-6, 843.0, 2.70e-3},
    {"5W-20", 49.0e-6, 8.5e-6, 850.0, 2.70e-3},
    {"0W-30", 56.0e-6, 10.3e-6, 845.0, 3.00e-3},
    {"5W-30", 64.0e-6, 10.9e-6, 852.0, 3.10e-3},
    {"10W-30", 68.0e-6, 10.6e-6, 862.0, 3.10e-3},
    {"0W-40", 76.0e-6, 13.6e-6, 846.0, 3.60e-3},
    {"5W-40", 85.0e-6, 14.0e-6, 853.0, 3.65e-3},
    {"10W-40", 95.0e-6, 14.4e-6, 863.0, 3.80e-3},
    {"15W-40", 110.0e-6, 14.7e-6, 875.0, 4.10e-3},
    {"15W-50", 128.0e-6, 18.0e-6, 870.0, 4.60e-3},
    {"20W-50", 160.0e-6, 18.3e-6, 882.0, 4.80e-3},
    {"10W-60", 162.0e-6, 23.5e-6, 860.0, 5.40e-3},
    {"30", 98.0e-6, 11.2e-6, 885.0, 3.36e-3},
    {"40", 145.0e-6, 14.6e-6, 890.0, 4.16e-3},
    {"50", 215.0e-6, 19.2e-6, 894.0, 5.19e-3},
    {"60", 310.0e-6, 24.5e-6, 897.0, 6.28e-3},
};

const struct cg_oil *cg_oils(size_t *count)
{
    *count = sizeof oils / sizeof oils[0];
    return oils;
}

const struct cg_oil *cg_oil_find(const char *name)
{
    for (size_t i = 0; i < sizeof oils / sizeof oils[0]; i++)
        if (strcmp(oils[i].name, name) == 0)
            return &oils[i];
    return NULL;
}

double cg_oil_kinematic(const struct cg_oil *oil, double temperature)
{
    return cg_viscosity_walther(oil->at_40, oil->at_100, temperature);
}

double cg_oil_density(const struct cg_oil *oil, double temperature)
{
    return oil->density - 0.64 * (temperature - 288.15);
}

static double unsheared(const struct cg_oil *oil, double temperature)
{
    return cg_oil_kinematic(oil, temperature) *
           cg_oil_density(oil, temperature);
}

double cg_oil_sheared(const struct cg_oil *oil, double temperature)
{
    return unsheared(oil, temperature) * oil->high_shear /
           unsheared(oil, 423.15);
}
