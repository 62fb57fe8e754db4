#include "stroke_film.h"

#include <math.h>

/* At one instant; `part`: film over that of mid-stroke. */
static double conductance(const struct cg_stroke_film *in, double part,
                          double pressure)
{
    double film = part * in->film, contact = 0.0;
    if (film < CG_ASPERITY_REACH * in->asperity.roughness) {
        double least = cg_asperity_distance(&in->asperity, pressure);
        contact = film > least ? cg_asperity_pressure(&in->asperity, film)
                               : pressure;
        film = fmax(film, least);
    }
    return in->oil_conductivity / film +
           cg_asperity_conductance(&in->asperity, in->face, in->bore, contact);
}

double cg_stroke_film_conductance(const struct cg_stroke_film *in,
                                  size_t points, const double *speed,
                                  const double *pressure)
{
    double fastest = 0.0, sum = 0.0;
    for (size_t i = 0; i < points; i++)
        fastest = fmax(fastest, fabs(speed[i]));
    for (size_t i = 0; i < points; i++)
        sum +=
            conductance(in, sqrt(fabs(speed[i]) / fastest), pressure[i]);
    return sum / (double)points;
}
