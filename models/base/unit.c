#include "unit.h"

#include <string.h>

#include "constants.h"

static const struct cg_unit units[] = {
    {CG_PLAIN, "", 1.0, 0.0},
    {CG_SHARE, "pct", 0.01, 0.0},
    {CG_LENGTH, "mm", 1e-3, 0.0},
    {CG_LENGTH, "um", 1e-6, 0.0},
    {CG_LENGTH, "in", CG_INCH, 0.0},
    {CG_LENGTH, "thou", CG_THOU, 0.0},
    {CG_PRESSURE, "kPa", 1e3, 0.0},
    {CG_PRESSURE, "bar", 1e5, 0.0},
    {CG_PRESSURE, "psi", CG_PSI, 0.0},
    {CG_PRESSURE, "MPa", 1e6, 0.0},
    {CG_TEMPERATURE, "C", 1.0, CG_ZERO_CELSIUS},
    {CG_TEMPERATURE, "F", 1.0 / 1.8, CG_ZERO_CELSIUS - 32.0 / 1.8},
    {CG_TEMPERATURE, "K", 1.0, 0.0},
    {CG_DIFFERENCE, "K", 1.0, 0.0},
    {CG_ROTATION, "rpm", 1.0 / 60.0, 0.0},
    {CG_ANGLE, "deg", 1.0, 0.0},
    {CG_TIME, "s", 1.0, 0.0},
    {CG_TIME, "min", 60.0, 0.0},
    {CG_TIME, "h", 3600.0, 0.0},
    {CG_COEFFICIENT, "W_m2K", 1.0, 0.0},
    {CG_COEFFICIENT, "kW_m2K", 1e3, 0.0},
    {CG_AIRSPEED, "m_s", 1.0, 0.0},
    {CG_AIRSPEED, "km_h", 1.0 / 3.6, 0.0},
    {CG_AIRSPEED, "mph", 0.44704, 0.0},
    {CG_FLOW, "g_s", 1e-3, 0.0},
    {CG_FLOW, "kg_h", 1.0 / 3600.0, 0.0},
    {CG_FLOW, "lb_min", CG_POUND / 60.0, 0.0},
    {CG_POWER, "kW", 1e3, 0.0},
    {CG_POWER, "hp", CG_HORSEPOWER, 0.0},
};

const struct cg_unit *cg_units(size_t *count)
{
    *count = sizeof units / sizeof units[0];
    return units;
}

const struct cg_unit *cg_unit_find(enum cg_dimension dimension,
                                   const char *suffix)
{
    for (size_t i = 0; i < sizeof units / sizeof units[0]; i++)
        if (units[i].dimension == dimension &&
            strcmp(units[i].suffix, suffix) == 0)
            return &units[i];
    return NULL;
}

double cg_unit_to_si(const struct cg_unit *unit, double value)
{
    return unit->scale * value + unit->offset;
}

double cg_unit_from_si(const struct cg_unit *unit, double si)
{
    return (si - unit->offset) / unit->scale;
}
