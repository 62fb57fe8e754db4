#include "relaxation.h"

#include <math.h>

#include "constants.h"

#define LARSON_MILLER_C 20.0
#define HOUR 3600.0
#define LIMIT_TIME (100.0 * HOUR)
#define LIMIT_LEFT 0.9
#define PARAMETER_SCALE 1750.0

double cg_larson_miller(double temperature, double time)
{
    return temperature * (LARSON_MILLER_C + log10(time / HOUR));
}

double cg_larson_miller_time(double parameter, double temperature)
{
    return HOUR * pow(10.0, parameter / temperature - LARSON_MILLER_C);
}

double cg_softening_time(double hot_limit, double temperature)
{
    return cg_larson_miller_time(cg_larson_miller(hot_limit, LIMIT_TIME),
                                 temperature);
}

static double left(double hot_limit, double parameter)
{
    double over = parameter - cg_larson_miller(hot_limit, LIMIT_TIME);
    return exp(log(LIMIT_LEFT) * exp(over / PARAMETER_SCALE));
}

struct cg_band cg_relaxation_left(const struct cg_material *material,
                                  double temperature, double time)
{
    double parameter = cg_larson_miller(temperature, time);
    return (struct cg_band){left(material->hot_limit, parameter),
                            left(material->hot_limit_high, parameter)};
}

double cg_relaxation_pressure(const struct cg_material *material,
                              double cold_pressure, double temperature,
                              double time)
{
    return cold_pressure *
           cg_relaxation_left(material, temperature, time).low *
           cg_curve_at(&material->modulus, temperature) /
           cg_curve_at(&material->modulus, CG_COLD_TEMPERATURE);
}
