#include "wiebe.h"

#include <math.h>

static const double usual_exponent = 3.0;

struct cg_wiebe cg_wiebe_from_burn(double burn50_deg, double duration_deg)
{
    const double a = 6.908, exponent = usual_exponent;
    double at10 = pow(-log1p(-0.1) / a, 1.0 / exponent);
    double at50 = pow(-log1p(-0.5) / a, 1.0 / exponent);
    double at90 = pow(-log1p(-0.9) / a, 1.0 / exponent);
    double duration = duration_deg / (at90 - at10);
    return (struct cg_wiebe){burn50_deg - at50 * duration, duration, a,
                             exponent};
}

/* t to the exponent; the usual exponent needs no pow. */
static double power(double t, double exponent)
{
    return exponent == usual_exponent ? t * t * t : pow(t, exponent);
}

double cg_wiebe_burned(const struct cg_wiebe *wiebe, double angle_deg)
{
    double t = (angle_deg - wiebe->start_deg) / wiebe->duration_deg;
    if (t <= 0.0)
        return 0.0;
    return -expm1(-wiebe->a * power(t, wiebe->exponent));
}

double cg_wiebe_rate(const struct cg_wiebe *wiebe, double angle_deg)
{
    double t = (angle_deg - wiebe->start_deg) / wiebe->duration_deg;
    if (t <= 0.0)
        return 0.0;
    double reach = wiebe->a * power(t, wiebe->exponent);
    return wiebe->exponent * reach / t / wiebe->duration_deg * exp(-reach);
}

double cg_wiebe_angle(const struct cg_wiebe *wiebe, double burned)
{
    return wiebe->start_deg +
           wiebe->duration_deg *
               pow(-log1p(-burned) / wiebe->a, 1.0 / wiebe->exponent);
}
