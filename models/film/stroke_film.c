#include "stroke_film.h"

#include <math.h>

/* At one instant; `part`: film over that of mid-stroke.  Adds its derivative by
 * the logarithm of the film to *slope. */
static double conductance(const struct cg_stroke_film *in, double part,
                          double pressure, double *slope)
{
    double film = part * in->film, oil = in->oil_conductivity / film, metal;
    if (!(film < CG_ASPERITY_REACH * in->asperity.roughness)) {
        *slope -= oil;
        return oil;
    }
    double least = cg_asperity_distance(&in->asperity, pressure);
    if (!(film > least))
        return in->oil_conductivity / least +
               cg_asperity_conductance(&in->asperity, in->face, in->bore,
                                       pressure);
    metal = cg_asperity_conductance(
        &in->asperity, in->face, in->bore,
        cg_asperity_pressure(&in->asperity, film));
    *slope += CG_ASPERITY_POWER * metal *
                  cg_asperity_slope(&in->asperity, film) -
              oil;
    return oil + metal;
}

double cg_stroke_film_conductance(const struct cg_stroke_film *in,
                                  size_t points, const double *speed,
                                  const double *pressure, double *slope)
{
    double fastest = 0.0, sum = 0.0, by_film = 0.0;
    for (size_t i = 0; i < points; i++)
        fastest = fmax(fastest, fabs(speed[i]));
    for (size_t i = 0; i < points; i++)
        sum += conductance(in, sqrt(fabs(speed[i]) / fastest), pressure[i],
                           &by_film);
    *slope = by_film / sum;
    return sum / (double)points;
}
