#include "asperity.h"

#include <math.h>

#include "constants.h"

/* The fit to F: factor and power. */
static const double fit_factor = 4.4086e-5, fit_power = 6.804;

struct cg_asperity cg_asperity_of(double roughness, double modulus_a,
                                  double modulus_b)
{
    const double density = 0.05, sharpness = 0.01, poisson = 0.3;
    double modulus = 1.0 / ((1.0 - poisson * poisson) *
                            (1.0 / modulus_a + 1.0 / modulus_b));
    return (struct cg_asperity){roughness,
                                16.0 * sqrt(2.0) * CG_PI / 15.0 * density *
                                    density * sqrt(sharpness) * modulus};
}

double cg_asperity_pressure(const struct cg_asperity *asperity, double film)
{
    double overlap = CG_ASPERITY_REACH - film / asperity->roughness;
    if (!(overlap > 0.0))
        return 0.0;
    return asperity->stiffness * fit_factor * pow(overlap, fit_power);
}

double cg_asperity_slope(const struct cg_asperity *asperity, double film)
{
    return -fit_power * film / (CG_ASPERITY_REACH * asperity->roughness - film);
}

double cg_asperity_distance(const struct cg_asperity *asperity,
                            double pressure)
{
    const double least = 0.01; /* in roughnesses */
    double overlap =
        pow(pressure / (asperity->stiffness * fit_factor), 1.0 / fit_power);
    return asperity->roughness * fmax(CG_ASPERITY_REACH - overlap, least);
}

double cg_asperity_conductance(const struct cg_asperity *asperity,
                               double conductivity_a, double conductivity_b,
                               double pressure)
{
    const double slope = 0.1, hardness = 2.5e9;
    double k = 2.0 * conductivity_a * conductivity_b /
               (conductivity_a + conductivity_b);
    if (!(pressure > 0.0))
        return 0.0;
    return 1.25 * k * slope / asperity->roughness *
           pow(pressure / hardness, CG_ASPERITY_POWER);
}
