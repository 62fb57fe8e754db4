#include "viscosity.h"

#include <math.h>

/* log10 log10 (nu + 0.7), nu in mm2/s. */
static double walther(double viscosity)
{
    return log10(log10(viscosity * 1e6 + 0.7));
}

double cg_viscosity_walther(double at_40, double at_100, double temperature)
{
    double x40 = log10(313.15), x100 = log10(373.15);
    double y40 = walther(at_40), y100 = walther(at_100);
    double x = log10(fmin(fmax(temperature, 233.15), 623.15));
    double level = y40 + (y100 - y40) * (x - x40) / (x100 - x40);
    return (pow(10.0, pow(10.0, level)) - 0.7) * 1e-6;
}
