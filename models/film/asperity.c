#include "asperity.h"

#include <math.h>

#include "constants.h"

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
    return asperity->stiffness * 4.4086e-5 * pow(overlap, 6.804);
}
